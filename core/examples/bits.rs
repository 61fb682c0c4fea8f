//! Writes `core/tests/data/bits.csv`, the table with which `tests/wasm_agrees.rs` compares. To be run
//! natively after a change that is meant to change figures.

#[path = "../tests/wasm_agrees/cases.rs"]
mod cases;

use std::process::ExitCode;

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/bits.csv");

fn main() -> ExitCode {
    match std::fs::write(FILE, cases::table()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{FILE} cannot be written: {error}");
            ExitCode::from(2)
        }
    }
}
