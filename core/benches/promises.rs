//! What the core promises of its speed, measured and held: a whole assessment takes less than a
//! millisecond, and the mutual information of a reading is faster than a general quadrature and
//! agrees with it. `cargo xtask bench`; fails where a promise is broken.
//!
//! The comparison needs Python with SciPy, named by `SELF_CHECK_PYTHON`; without it one line says so.

#[path = "../tests/common/mod.rs"]
mod common;

use self_check_core::assess::assess;
use self_check_core::reading::information_per_cut;
use std::hint::black_box;
use std::io::Write as _;
use std::process::{Command, ExitCode, Stdio};
use std::time::{Duration, Instant};

fn main() -> ExitCode {
    let kept = [assessment_is_quick(), information_beats_quadrature()];
    if kept.into_iter().all(|kept| kept) {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

const LONGEST_ASSESSMENT: Duration = Duration::from_millis(1);

fn assessment_is_quick() -> bool {
    let answers = common::much_at_once();
    let took = median(1000, || {
        black_box(assess(black_box(&answers), None));
    });
    let kept = took < LONGEST_ASSESSMENT;
    let verdict = if kept { "kept" } else { "BROKEN" };
    println!(
        "whole assessment: {:.1} µs, promised under {} µs: {verdict}",
        micros(took),
        LONGEST_ASSESSMENT.as_micros()
    );
    kept
}

/// Depths, and step over standard deviation.
fn cases() -> impl Iterator<Item = (u8, f64)> {
    [2, 4, 6, 9, 10, 12]
        .into_iter()
        .flat_map(|levels| [0.1, 0.5, 1.0, 2.0, 4.0, 8.0, 20.0].map(|ratio| (levels, ratio)))
}

fn information_beats_quadrature() -> bool {
    let Some(python) = std::env::var_os("SELF_CHECK_PYTHON") else {
        println!("against SciPy: skipped, no Python with SciPy is named by SELF_CHECK_PYTHON");
        return true;
    };
    let theirs = match quadrature(Command::new(python)) {
        Ok(theirs) => theirs,
        Err(error) => {
            println!("against SciPy: FAILED, {error}");
            return false;
        }
    };
    println!("mutual information of one cut, SciPy's quad beside this crate:");
    println!("levels  ratio      bits          difference    SciPy     core   times faster");
    let (mut whole_theirs, mut whole_ours, mut largest) = (0.0, 0.0, 0.0_f64);
    for ((levels, ratio), (their_bits, their_seconds)) in cases().zip(theirs) {
        // The fastest of many runs on either side: other work on the machine only slows them.
        let took = fastest(50, || {
            black_box(information_per_cut(black_box(levels), black_box(ratio)));
        });
        let bits = information_per_cut(levels, ratio).get();
        let difference = bits - their_bits;
        largest = largest.max(difference.abs());
        whole_theirs += their_seconds * 1e6;
        whole_ours += micros(took);
        println!(
            "{levels:>6} {ratio:>6} {bits:>14.10} {difference:>14.1e} {:>7.0} µs {:>6.1} µs {:>10.1}",
            their_seconds * 1e6,
            micros(took),
            their_seconds * 1e6 / micros(took),
        );
    }
    println!(
        "against SciPy: {:.1} times faster over all cases, largest difference {largest:.1e} bits",
        whole_theirs / whole_ours
    );
    let kept = largest < LARGEST_DIFFERENCE && whole_ours < whole_theirs;
    if !kept {
        println!("against SciPy: BROKEN, promised faster and within {LARGEST_DIFFERENCE:e} bits");
    }
    kept
}

/// What both are asked for.
const LARGEST_DIFFERENCE: f64 = 1e-9;

/// Bits and seconds for every case, by the script beside this file.
fn quadrature(mut python: Command) -> Result<Vec<(f64, f64)>, String> {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/benches/quad.py");
    let mut child = python
        .arg(script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|error| format!("Python did not start: {error}"))?;
    let questions: String = cases()
        .map(|(levels, ratio)| format!("{levels} {ratio}\n"))
        .collect();
    if let Some(mut input) = child.stdin.take() {
        let sent = input.write_all(questions.as_bytes());
        sent.map_err(|error| format!("Python took no questions: {error}"))?;
    }
    let output = child
        .wait_with_output()
        .map_err(|error| error.to_string())?;
    let answers: Vec<(f64, f64)> = String::from_utf8_lossy(&output.stdout)
        .lines()
        .filter_map(|line| {
            let (bits, seconds) = line.split_once(' ')?;
            Some((bits.parse().ok()?, seconds.parse().ok()?))
        })
        .collect();
    if output.status.success() && answers.len() == cases().count() {
        Ok(answers)
    } else {
        Err(format!("the script ended with {}", output.status))
    }
}

fn median(runs: usize, work: impl FnMut()) -> Duration {
    let times = sorted_times(runs, work);
    times.get(runs / 2).copied().unwrap_or_default()
}

fn fastest(runs: usize, work: impl FnMut()) -> Duration {
    sorted_times(runs, work)
        .first()
        .copied()
        .unwrap_or_default()
}

fn sorted_times(runs: usize, mut work: impl FnMut()) -> Vec<Duration> {
    work();
    let mut times: Vec<Duration> = (0..runs)
        .map(|_| {
            let begun = Instant::now();
            work();
            begun.elapsed()
        })
        .collect();
    times.sort();
    times
}

fn micros(time: Duration) -> f64 {
    time.as_secs_f64() * 1e6
}
