//! The finished site as a server sees it: its files, the headers that are published with it, and what is answered. The
//! server of `xtask` and the hosts of the journeys are both made of it, so that what is tried is what is published.

mod answer;
mod headers;

use std::collections::BTreeMap;
use std::io;
use std::path::Path;

pub use answer::{Answer, answer, read_request};
pub use headers::{HEADERS, headers_for};

/// The files of a site, by their path in it; its parts are joined by `/`.
pub type Files = BTreeMap<String, Vec<u8>>;

/// Reads a folder and all below it.
pub fn read(folder: &Path) -> io::Result<Files> {
    let mut files = Files::new();
    collect(folder, "", &mut files)?;
    Ok(files)
}

fn collect(folder: &Path, prefix: &str, files: &mut Files) -> io::Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            collect(&entry.path(), &format!("{name}/"), files)?;
        } else {
            files.insert(name, std::fs::read(entry.path())?);
        }
    }
    Ok(())
}
