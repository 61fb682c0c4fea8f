//! Counts the keys of a family: `differs -- DEPTHS CUTS MAX_STEP` prints one integer.

use self_check_core::differs::{CountError, CutRule, count};
use std::process::ExitCode;

fn main() -> ExitCode {
    match answer(&std::env::args().skip(1).collect::<Vec<_>>()) {
        Ok(keys) => {
            println!("{keys}");
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

fn answer(arguments: &[String]) -> Result<u128, String> {
    let [depths, cuts, max_step] = arguments else {
        return Err("Three whole numbers are needed: DEPTHS CUTS MAX_STEP, such as 10 5 7.".into());
    };
    let rule = CutRule::new(
        whole("CUTS", cuts)?,
        whole("DEPTHS", depths)?,
        whole("MAX_STEP", max_step)?,
    );
    count(&rule).map_err(|error| {
        match error {
            CountError::NoCuts => "CUTS must be at least 1: a key without cuts is a blank.",
            CountError::NoDepths => "DEPTHS must be at least 1.",
            CountError::Overflow => {
                "The count does not fit into 128 bits. Give fewer cuts or depths."
            }
            CountError::TooLarge => "The count would need too much memory. Give fewer depths.",
        }
        .into()
    })
}

fn whole(name: &str, text: &str) -> Result<u32, String> {
    text.parse()
        .map_err(|_| format!("{name} must be a whole number from 0 to {}.", u32::MAX))
}
