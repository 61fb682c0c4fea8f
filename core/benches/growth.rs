//! How the work grows: counting, reading, sight and the whole assessment. `cargo xtask bench`.

#[path = "../tests/common/mod.rs"]
mod common;

use divan::{Bencher, black_box};
use self_check_core::answers::Answers;
use self_check_core::assess::assess;
use self_check_core::demonstration::DemonstrationPattern;
use self_check_core::differs::{CutRule, count};
use self_check_core::key::{Family, FamilyChoice};
use self_check_core::questions::Choice;
use self_check_core::reading::{
    Reading, Sample, StepOverSigma, information_per_cut, sampled, sampled_bits_leaked,
};
use self_check_core::sight::{Scene, SightRange};
use self_check_core::units::Metres;

fn main() {
    divan::main();
}

/// Keys of ten depths whose neighbours differ by at most seven, by number of cuts.
#[divan::bench(args = [4, 8, 16, 32])]
fn count_by_cuts(cuts: u32) -> Option<u128> {
    count(black_box(&CutRule::new(cuts, 10, 7))).ok()
}

/// Keys of five cuts, by number of depths.
#[divan::bench(args = [5, 10, 20, 40, 80])]
fn count_by_depths(depths: u32) -> Option<u128> {
    count(black_box(&CutRule::new(5, depths, depths / 2))).ok()
}

/// The same with limits on shared and on different depths, by number of cuts.
#[divan::bench(args = [4, 5, 6, 7])]
fn count_with_limits(cuts: u32) -> Option<u128> {
    let rule = CutRule::new(cuts, 10, 7)
        .sharing_at_most(3)
        .with_at_least(3);
    count(black_box(&rule)).ok()
}

/// Mutual information of one cut's reading, by number of depths.
#[divan::bench(args = [2, 4, 8, 12])]
fn one_cut_by_depths(depths: u8) -> f64 {
    information_per_cut(black_box(depths), black_box(3.0)).get()
}

/// Bits leaked under the adjacent cut rule, directly, by number of sample points in each of eight
/// shifts. The table takes the place of this on the page.
#[divan::bench(args = [64, 128, 256, 512])]
fn whole_key_by_points(points: u32) -> Option<f64> {
    bits_leaked(&CutRule::new(5, 10, 7), points)
}

/// The same at 64 points, by number of cuts.
#[divan::bench(args = [3, 4, 5, 6, 7])]
fn whole_key_by_cuts(cuts: u32) -> Option<f64> {
    bits_leaked(&CutRule::new(cuts, 10, 7), 64)
}

/// The same at 64 points, by number of depths.
#[divan::bench(args = [4, 6, 8, 10, 12])]
fn whole_key_by_depths(depths: u32) -> Option<f64> {
    bits_leaked(&CutRule::new(5, depths, depths - 2), 64)
}

/// Everything the tables hold, directly, by number of sample points in each of eight shifts.
#[divan::bench(args = [8, 16, 32], sample_count = 20)]
fn tries_and_guesses_by_points(points: u32) -> Option<f64> {
    let rule = CutRule::new(5, 10, 7);
    let found = sampled(black_box(&rule), black_box(2.0), &sample(points)).ok()?;
    Some(found.log2_tries_even_chance.value)
}

/// The same figures from the tables.
#[divan::bench]
fn table(bencher: Bencher) {
    bencher
        .with_inputs(|| StepOverSigma::new(2.345).unwrap_or(StepOverSigma::NOTHING))
        .bench_values(|ratio| Reading::of(Family::TenDepthFiveCuts, ratio));
}

/// What a scene leaves of one family, near and far, for both observers.
#[divan::bench(args = [0.5, 5.0, 50.0, 500.0])]
fn scene_by_distance(bencher: Bencher, metres: f64) {
    let choice = FamilyChoice::Known(Family::TenDepthFiveCuts);
    bencher
        .with_inputs(|| Metres::new(metres).ok())
        .bench_values(|distance| Some(Scene::LongLens.range(distance?, choice)));
}

/// The same over all families.
#[divan::bench]
fn scene_of_any_family() -> SightRange {
    let scene = black_box(Scene::PhoneAtNextTable);
    scene.range(scene.usual_distance(), FamilyChoice::NotSure)
}

/// The demonstration key as that camera records it.
#[divan::bench(args = [0.5, 5.0, 50.0, 500.0])]
fn picture_by_distance(bencher: Bencher, metres: f64) {
    let camera = Scene::LongLens.camera();
    bencher
        .with_inputs(|| Metres::new(metres).ok())
        .bench_values(|distance| {
            Some(DemonstrationPattern::DEMONSTRATION.picture(&camera.view(distance?)))
        });
}

/// From answers to advice, by how much has happened to the key.
#[divan::bench(args = ["calm", "seen", "all at once"])]
fn whole_assessment(bencher: Bencher, story: &str) {
    use Choice::*;
    let changes: &[Choice] = match story {
        "seen" => &[FourOrMoreDigits, OnlyThisLock, CarriedInView, NotChanged],
        "all at once" => &[
            KeyMissing,
            StolenOrTaken,
            NotChanged,
            NeverCounted,
            HelperNow,
            ShortLetGuests,
            FourOrMoreDigits,
            OnlyThisLock,
            CarriedInView,
            PicturePublic,
            AddressOnRingOrKey,
        ],
        _ => &[],
    };
    let answers: Answers = common::but(changes);
    bencher.bench_local(|| assess(black_box(&answers), None));
}

fn bits_leaked(rule: &CutRule, points: u32) -> Option<f64> {
    let found = sampled_bits_leaked(black_box(rule), black_box(2.0), &sample(points)).ok()?;
    Some(found.value)
}

const fn sample(points: u32) -> Sample {
    Sample {
        points,
        shifts: 8,
        seed: 1,
    }
}
