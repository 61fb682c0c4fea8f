//! The same source in another folder gives the same bytes.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::dist::Files;
use crate::{dist, node, project, run, say};

/// What a build does not start from.
const NOT_SOURCE: [&str; 3] = ["target", "dist", ".git"];

/// Builds a copy of this clone in another folder, with nothing of what is compiled here, and compares every file.
pub fn compare(files: &Files) -> Result<()> {
    let folder = Folder::new()?;
    let other = folder.0.join("another/place of its own");
    project::copy(&project::root(), &other, &NOT_SOURCE)?;
    if dist::is_optimised(files) {
        node::hand_over_wasm_opt(&other)?;
    }
    say::note(format!("Building once more in {}", other.display()));
    let mut build = Command::new(std::env::current_exe()?);
    build
        .args(["build", "--unweighed"])
        .current_dir(&other)
        .env("CARGO_MANIFEST_DIR", other.join("xtask"))
        .env_remove("CARGO_TARGET_DIR");
    run::shown("Building once more", &mut build)?;
    let again = self_check_site::read(&other.join("dist"))?;
    let is_optimised = dist::is_optimised(files);
    if is_optimised != dist::is_optimised(&again) {
        bail!(
            "Only one of the two builds could be optimised, so they cannot be compared: wasm-opt was not there for the {}.",
            if is_optimised { "second" } else { "first" }
        );
    }
    let names = files.keys().chain(again.keys());
    let mut different: Vec<&str> = names
        .filter(|name| files.get(*name) != again.get(*name))
        .map(String::as_str)
        .collect();
    different.dedup();
    if !different.is_empty() {
        bail!(
            "The same source gave other bytes in another folder: {}",
            different.join(", ")
        );
    }
    say::note(format!("{} files, byte for byte the same", files.len()));
    Ok(())
}

/// A folder for the time being.
struct Folder(PathBuf);

impl Folder {
    fn new() -> Result<Self> {
        let path = std::env::temp_dir().join(format!("self-check-twice-{}", std::process::id()));
        fs::create_dir_all(&path).with_context(|| format!("cannot make {}", path.display()))?;
        Ok(Self(path))
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}
