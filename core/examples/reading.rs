//! What one cut's reading tells: `reading -- DEPTHS STEP_OVER_SIGMA` prints bits per cut.

use self_check_core::reading::information_per_cut;
use std::process::ExitCode;

fn main() -> ExitCode {
    match answer(&std::env::args().skip(1).collect::<Vec<_>>()) {
        Ok(bits) => {
            println!("{bits:.10}");
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

fn answer(arguments: &[String]) -> Result<f64, String> {
    let [depths, ratio] = arguments else {
        return Err("Two numbers are needed: DEPTHS STEP_OVER_SIGMA, such as 10 4.".into());
    };
    let depths: u8 = depths
        .parse()
        .ok()
        .filter(|depths| (2..=64).contains(depths))
        .ok_or("DEPTHS must be a whole number from 2 to 64.")?;
    let ratio: f64 = ratio
        .parse()
        .ok()
        .filter(|ratio: &f64| *ratio >= 0.0)
        .ok_or("STEP_OVER_SIGMA must be a number that is not negative.")?;
    Ok(information_per_cut(depths, ratio).get())
}
