//! Fills the tables that readings are looked up in. Writes `core/src/reading/tables.rs`; run it with
//! `--release`, it takes some minutes. `-- --points N` takes another number of sample points.

use self_check_core::key::Family;
use self_check_core::reading::{Estimate, GRID_POINTS, Sample, Sampled, ratio_of_row, sampled};
use std::fmt::Write as _;
use std::process::ExitCode;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/src/reading/tables.rs");

fn main() -> ExitCode {
    match sample().and_then(|sample| write_tables(&sample)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

fn sample() -> Result<Sample, String> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match arguments.as_slice() {
        [] => Ok(Sample::TABLES),
        [flag, points] if flag == "--points" => Ok(Sample {
            points: points.parse().map_err(|_| "N must be a whole number.")?,
            ..Sample::TABLES
        }),
        _ => Err("Only --points N is understood.".into()),
    }
}

fn write_tables(sample: &Sample) -> Result<(), String> {
    let rows = computed_rows(sample)?;
    let mut text = String::new();
    let mut errors = String::new();
    for (family, rows) in Family::ALL.into_iter().zip(rows.chunks(GRID_POINTS)) {
        let table = table(rows);
        let _ = writeln!(text, "    // {}", family.id());
        let _ = writeln!(text, "    [");
        for row in table.rows {
            let _ = writeln!(text, "        {row:?},");
        }
        let _ = writeln!(text, "    ],");
        let _ = writeln!(errors, "    {:?}, // {}", table.errors, family.id());
    }
    let file = format!(
        "//! Filled by `cargo run --release -p self-check-core --example tables`; never edited by hand.
//!
//! Sample: {} points in each of {} shifts, seed {}.

use super::table::{{COLUMNS, GRID_POINTS, Row}};

/// Families in the order of `Family::ALL`.
#[rustfmt::skip]
pub(super) const STANDARD_ERRORS: [[f32; COLUMNS]; 5] = [
{errors}];

/// Families in the order of `Family::ALL`, one row for each ratio of the grid.
#[rustfmt::skip]
pub(super) const ROWS: [[Row; GRID_POINTS]; 5] = [
{text}];
",
        sample.points, sample.shifts, sample.seed
    );
    std::fs::write(FILE, file).map_err(|error| format!("{FILE} cannot be written: {error}"))
}

/// One result for each family and ratio, worked off by as many threads as the machine runs.
fn computed_rows(sample: &Sample) -> Result<Vec<Sampled>, String> {
    let jobs: Vec<(Family, f64)> = Family::ALL
        .into_iter()
        .flat_map(|family| (0..GRID_POINTS).map(move |row| (family, ratio_of_row(row))))
        .collect();
    let next = AtomicUsize::new(0);
    let results = Mutex::new(vec![None; jobs.len()]);
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                while let Some((family, ratio)) = jobs.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let result = sampled(&family.cut_rule(), *ratio, sample);
                    eprintln!("{} {ratio:.4}", family.id());
                    let place = jobs.iter().position(|job| job == &(*family, *ratio));
                    let mut results = results.lock().unwrap_or_else(PoisonError::into_inner);
                    if let Some(slot) = place.and_then(|place| results.get_mut(place)) {
                        *slot = Some(result);
                    }
                }
            });
        }
    });
    let results = results.into_inner().unwrap_or_else(PoisonError::into_inner);
    results
        .into_iter()
        .map(|result| {
            let result = result.ok_or("A thread stopped before its work was done.")?;
            result.map_err(|error| error.to_string())
        })
        .collect()
}

struct Table {
    rows: Vec<[f32; 5]>,
    errors: [f32; 5],
}

/// The columns of one family. What a reading tells cannot fall as the reading gets better, so a
/// fall within the sample's error is levelled.
fn table(rows: &[Sampled]) -> Table {
    let mut table = Table {
        rows: Vec::with_capacity(rows.len()),
        errors: [0.0; 5],
    };
    let mut best = [0.0, f64::INFINITY, 0.0, 0.0, 0.0];
    for row in rows {
        let estimates: [Estimate; 5] = [
            row.bits_leaked,
            row.log2_tries_even_chance,
            row.first_guess,
            row.within_three,
            row.within_ten,
        ];
        for (error, estimate) in table.errors.iter_mut().zip(&estimates) {
            *error = error.max(estimate.standard_error as f32);
        }
        for (column, (best, estimate)) in best.iter_mut().zip(&estimates).enumerate() {
            *best = if column == 1 {
                best.min(estimate.value)
            } else {
                best.max(estimate.value)
            };
        }
        let [bits, tries, first, three, ten] = best;
        table.rows.push(
            [bits, tries, first.log2(), three.log2(), ten.log2()].map(|value| {
                // Six digits after the point are far below the sample's error.
                ((value * 1e6).round() / 1e6) as f32
            }),
        );
    }
    table
}
