//! An independent program that reads and writes what pictures tell beside the picture.

use crate::{apt, run, say};

/// Its name; one line says why where it cannot be had.
pub fn find_or_install() -> Option<&'static str> {
    const NAME: &str = "exiftool";
    let is_there = || run::answer(std::process::Command::new(NAME).arg("-ver")).is_some();
    if is_there() {
        return Some(NAME);
    }
    if let Err(error) = apt::install("exiftool", &["libimage-exiftool-perl"]) {
        say::note(error);
    }
    if is_there() {
        return Some(NAME);
    }
    say::note("Without exiftool, the checks against it are left out.");
    None
}
