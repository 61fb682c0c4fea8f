//! How keys and doors grow, up to a small estate: 500 doors, 2,000 copies, 300 holders. Before
//! measuring, every operation is held to its promise. `cargo xtask bench`.

#[path = "../tests/household/estate.rs"]
mod estate;
#[path = "../tests/household/operations.rs"]
mod operations;

use std::time::{Duration, Instant};

use divan::{Bencher, black_box};
use estate::{Size, estate};
use operations::{COMPARE, lose, operations, planned};
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
    for operation in operations(home) {
        let promise = match operation.name {
            COMPARE => PROMISE_OF_COMPARING,
            _ => PROMISE,
        };
        let (shortest, worked) = fastest(&operation.run);
        assert!(worked, "{} did nothing", operation.name);
        assert!(shortest <= promise, "{} took {shortest:?}", operation.name);
        println!("{}: {shortest:?}", operation.name);
    }
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
