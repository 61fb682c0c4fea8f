//! One case for each figure that must come out alike, bit for bit, natively and in the browser.

use self_check_core::demonstration::DemonstrationPattern;
use self_check_core::differs::{CutRule, count};
use self_check_core::hand::{Copying, HandReading};
use self_check_core::key::Family;
use self_check_core::reading::{
    Reading, Sample, StepOverSigma, information_per_cut, sampled, sampled_bits_leaked,
};
use self_check_core::sight::{DepthInformation, Observer, Scene};
use self_check_core::units::Metres;
use std::fmt::Write as _;

/// Every case as a line of text: its name, then the bits of each result in hexadecimal.
pub fn table() -> String {
    let mut table = Table::default();
    table.counting();
    table.reading();
    table.seeing();
    table.handling();
    table.text
}

#[derive(Default)]
struct Table {
    text: String,
}

impl Table {
    fn case(&mut self, name: &str, results: &[f64]) {
        self.text.push_str(name);
        for result in results {
            let _ = write!(self.text, ",{:016x}", result.to_bits());
        }
        self.text.push('\n');
    }

    fn counting(&mut self) {
        for cuts in [3, 5, 7] {
            for max_step in [2, 5, 7, u32::MAX] {
                let rule = CutRule::new(cuts, 10, max_step);
                let keys = count(&rule).map_or(0.0, |keys| keys as f64);
                let limited = count(&rule.sharing_at_most(3)).map_or(0.0, |keys| keys as f64);
                self.case(&format!("count {cuts} {max_step}"), &[keys, limited]);
            }
        }
    }

    fn reading(&mut self) {
        for levels in 2..=12 {
            for ratio in [0.01, 0.1, 0.7, 1.0, 2.5, 6.0, 13.0, 20.0] {
                let bits = information_per_cut(levels, ratio).get();
                self.case(&format!("cut {levels} {ratio}"), &[bits]);
            }
        }
        for family in Family::ALL {
            for ratio in [0.0, 0.003, 0.05, 0.31, 0.9, 1.7, 3.1, 5.9, 11.99, 40.0] {
                let ratio = StepOverSigma::new(ratio).unwrap_or(StepOverSigma::NOTHING);
                let name = format!("reading {} {}", family.id(), ratio.get());
                self.case(&name, &figures(&Reading::of(family, ratio)));
            }
        }
        let sample = Sample {
            points: 24,
            shifts: 2,
            seed: 4,
        };
        for ratio in [0.2, 1.0, 3.0] {
            for cuts in [4, 5, 6] {
                let rule = CutRule::new(cuts, 10, 7);
                let bits = sampled_bits_leaked(&rule, ratio, &sample);
                let bits = bits.map_or(f64::NAN, |estimate| estimate.value);
                self.case(&format!("sampled bits {cuts} {ratio}"), &[bits]);
            }
            // No rule at all, by the largest number there is.
            let free = sampled_bits_leaked(&CutRule::new(3, 4, u32::MAX), ratio, &sample);
            let free = free.map_or(f64::NAN, |estimate| estimate.value);
            self.case(&format!("sampled bits without a rule {ratio}"), &[free]);
            let all = sampled(&CutRule::new(5, 9, 5), ratio, &sample).map_or([f64::NAN; 5], |s| {
                [
                    s.bits_leaked.standard_error,
                    s.log2_tries_even_chance.value,
                    s.first_guess.value,
                    s.within_three.value,
                    s.within_ten.value,
                ]
            });
            self.case(&format!("sampled {ratio}"), &all);
        }
    }

    fn seeing(&mut self) {
        for scene in Scene::ALL {
            let legible = scene.legibility();
            self.case(
                &format!("legibility {}", scene.id()),
                &[
                    legible.could_be_read.get(),
                    legible.easily_read.get(),
                    legible.published.get(),
                ],
            );
            for metres in [0.3, 2.0, 17.0, 120.0, 5000.0] {
                let Ok(distance) = Metres::new(metres) else {
                    continue;
                };
                for observer in Observer::ALL {
                    let found = scene.reading(distance, Family::EuropeanSixCuts, observer);
                    let sigma = found.sigma.map_or(f64::INFINITY, |sigma| sigma.get());
                    let mut results = vec![found.view.blur.get(), sigma];
                    results.extend(figures(&found.reading));
                    self.case(
                        &format!("sight {} {metres} {observer:?}", scene.id()),
                        &results,
                    );
                }
                let view = scene.camera().view(distance);
                let geometry = Family::SixDepthFiveCuts.geometry();
                let precision =
                    DepthInformation::of(geometry, &view).map_or(f64::NAN, |told| told.precision());
                self.case(&format!("precision {} {metres}", scene.id()), &[precision]);
            }
            let view = scene.camera().view(scene.usual_distance());
            for (number, pattern) in (1..).zip(DemonstrationPattern::ALL) {
                let picture = pattern.picture(&view);
                let sum = picture.shades.iter().zip(1_u32..).map(|(&shade, place)| {
                    // Places count, so that shades cannot be swapped unseen.
                    f64::from(shade) * f64::from(place % 65_521)
                });
                let name = format!("picture {} {number}", scene.id());
                self.case(&name, &[picture.width as f64, sum.sum()]);
            }
        }
    }

    fn handling(&mut self) {
        for generations in 0..12 {
            let fit = Copying::ORDINARY.chance_all_cuts_fit(generations, 5).get();
            self.case(&format!("copies {generations}"), &[fit]);
        }
        for family in Family::ALL {
            let reading = HandReading::Calipers.reading(family);
            self.case(&format!("calipers {}", family.id()), &figures(&reading));
        }
    }
}

fn figures(reading: &Reading) -> [f64; 6] {
    [
        reading.bits_leaked.get(),
        reading.keys_left.get(),
        reading.tries_even_chance.get(),
        reading.first_guess.get(),
        reading.within_three.get(),
        reading.within_ten.get(),
    ]
}
