//! How keys and doors grow, up to a small estate: 500 doors, 2,000 copies, 300 holders. Before
//! measuring, every operation is held to its promise. `cargo xtask bench`.

#[path = "../tests/household/estate.rs"]
mod estate;

use std::time::{Duration, Instant};

use divan::{Bencher, black_box};
use estate::{Size, estate};
use self_check_core::household::*;

/// What any one operation may take natively on the small estate. In a page it may take 50 ms;
/// compiled for size to WebAssembly, it took up to three times as long as natively (a reading of
/// the record) and mostly less than twice.
const PROMISE: Duration = Duration::from_millis(5);

/// What comparing may take: three plans and three groupings side by side.
const PROMISE_OF_COMPARING: Duration = Duration::from_millis(15);

const SIZES: [usize; 4] = [12, 25, 50, 100];

fn main() -> Result<(), Refusal> {
    hold_the_promise(&estate(Size::SMALL_ESTATE)?);
    divan::main();
    Ok(())
}

fn hold_the_promise(home: &Household) {
    let Some(((key, _), (holder, _))) = home.keys().next().zip(home.holders().next()) else {
        return;
    };
    let text = file::export(home).unwrap_or_default();
    let history = History::of(home.clone());
    held("move a copy", || home.with(give(key, holder)).is_ok());
    held("lose a ring", || home.with(lose(holder)).is_ok());
    held("record a step", || history.with(lose(holder)).is_ok());
    held("reach of a ring", || home.reach_of_ring(holder).is_ok());
    held("reach of everybody", || {
        !home.reach_of_everybody().is_empty()
    });
    held("gaps", || !gaps(home).is_empty());
    for &grouping in Grouping::ALL {
        let plan = planned(home, grouping);
        held(grouping.id(), || !planned(home, grouping).is_empty());
        held("carry out", || plan.carried_out(home).is_ok());
        held("brief", || {
            brief(home, &plan, BriefChoices::default()).is_ok()
        });
    }
    held("export", || file::export(home).is_ok());
    held("import", || file::import(text.as_bytes()).is_ok());
    held_to("compare", PROMISE_OF_COMPARING, || compare(home).len() == 3);
}

/// The fastest of several runs, so that a busy machine does not break the promise.
fn fastest(work: impl Fn() -> bool) -> (Duration, bool) {
    let runs = (0..20).map(|_| {
        let start = Instant::now();
        let worked = black_box(work());
        (start.elapsed(), worked)
    });
    runs.min().unwrap_or((Duration::MAX, false))
}

fn held(name: &str, work: impl Fn() -> bool) {
    held_to(name, PROMISE, work);
}

fn held_to(name: &str, promise: Duration, work: impl Fn() -> bool) {
    let (shortest, worked) = fastest(work);
    assert!(worked, "{name} did nothing");
    assert!(shortest <= promise, "{name} took {shortest:?}");
    println!("{name}: {shortest:?}");
}

fn give(key: KeyId, to: HolderId) -> Change {
    Change::Give { key, to, copies: 1 }
}

fn lose(holder: HolderId) -> Change {
    let loss = Loss::NearHome;
    Change::LoseRing { holder, loss }
}

fn planned(home: &Household, grouping: Grouping) -> Plan {
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    plan(home, choices)
}

fn sized(hundredths: usize) -> Household {
    estate(Size::hundredths(hundredths)).unwrap_or_default()
}

/// One change, by hundredths of the small estate.
#[divan::bench(args = SIZES)]
fn lose_a_ring(bencher: Bencher, hundredths: usize) {
    let home = sized(hundredths);
    let holder = home.holders().next().map(|(holder, _)| holder);
    bencher.bench_local(|| home.with(lose(holder?)).ok());
}

/// What opens to each person.
#[divan::bench(args = SIZES)]
fn reach_of_everybody(bencher: Bencher, hundredths: usize) {
    let home = sized(hundredths);
    bencher.bench_local(|| black_box(&home).reach_of_everybody());
}

/// The plan as the doors are grouped now.
#[divan::bench(args = SIZES)]
fn plan_as_now(bencher: Bencher, hundredths: usize) {
    let home = sized(hundredths);
    bencher.bench_local(|| planned(black_box(&home), Grouping::AsNow));
}

/// The plan that groups the doors by need.
#[divan::bench(args = SIZES)]
fn plan_by_need(bencher: Bencher, hundredths: usize) {
    let home = sized(hundredths);
    bencher.bench_local(|| planned(black_box(&home), Grouping::ByNeed));
}

/// All groupings side by side.
#[divan::bench(args = SIZES)]
fn compare_groupings(bencher: Bencher, hundredths: usize) {
    let home = sized(hundredths);
    bencher.bench_local(|| compare(black_box(&home)));
}

/// Writing the record.
#[divan::bench(args = SIZES)]
fn export_record(bencher: Bencher, hundredths: usize) {
    let home = sized(hundredths);
    bencher.bench_local(|| file::export(black_box(&home)));
}

/// Reading it.
#[divan::bench(args = SIZES)]
fn import_record(bencher: Bencher, hundredths: usize) {
    let text = file::export(&sized(hundredths)).unwrap_or_default();
    bencher.bench_local(|| file::import(black_box(text.as_bytes())));
}
