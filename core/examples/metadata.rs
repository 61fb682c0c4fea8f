//! What a picture's file tells beside the picture: `metadata -- FILE` prints whether it tells the
//! place, the time, the device and anything else, a line each. What it tells is never printed.

use self_check_core::metadata::PictureFile;
use std::process::ExitCode;

fn main() -> ExitCode {
    match lines() {
        Ok(lines) => {
            println!("{lines}");
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

fn lines() -> Result<String, String> {
    let path = std::env::args().nth(1).ok_or("One word is needed: FILE.")?;
    let bytes = std::fs::read(&path).map_err(|error| format!("{path} cannot be read: {error}."))?;
    let file = PictureFile::read(&bytes).map_err(|error| format!("{path}: {error}."))?;
    let yes_or_no = |told: bool| if told { "yes" } else { "no" };
    let told = file.metadata;
    Ok(format!(
        "place {}\ntime {}\ndevice {}\nothers {}",
        yes_or_no(told.place.is_some()),
        yes_or_no(told.has_time),
        yes_or_no(told.has_device),
        yes_or_no(told.has_others)
    ))
}
