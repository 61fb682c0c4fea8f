//! Where things are: the clone's folders, and the versions its files pin.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

/// The target every build of the page is for.
pub const WASM: &str = "wasm32-unknown-unknown";

/// The root of the clone.
pub fn root() -> PathBuf {
    // Cargo sets the variable whenever it runs this program, so a clone may be moved after it was built.
    let here = std::env::var_os("CARGO_MANIFEST_DIR")
        .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
    here.parent().map_or(here.clone(), Path::to_path_buf)
}

/// What the build leaves: cargo's folder.
pub fn target() -> PathBuf {
    root().join("target")
}

/// Tools that belong to this clone.
pub fn tools() -> PathBuf {
    target().join("tools")
}

/// Where a set-up step keeps what its program said.
pub fn log(name: &str) -> PathBuf {
    tools().join("logs").join(format!("{name}.log"))
}

/// Cargo of the toolchain the clone is worked on with, in the clone's root.
pub fn cargo() -> Command {
    let mut command = Command::new("cargo");
    command.current_dir(root());
    command
}

/// Copies a folder, but for what is named so in it.
pub fn copy(from: &Path, to: &Path, without: &[&str]) -> Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        let name = entry.file_name();
        if without.iter().any(|other| name == *other) {
            continue;
        }
        let (from, to) = (entry.path(), to.join(&name));
        if entry.file_type()?.is_dir() {
            copy(&from, &to, &[])?;
        } else {
            std::fs::copy(&from, &to).with_context(|| format!("cannot copy {}", from.display()))?;
        }
    }
    Ok(())
}

/// The version of a package in Cargo.lock.
pub fn locked_version(package: &str) -> Result<String> {
    let lock =
        std::fs::read_to_string(root().join("Cargo.lock")).context("cannot read Cargo.lock")?;
    version_in(&lock, package).with_context(|| format!("Cargo.lock has no package {package}"))
}

fn version_in(lock: &str, package: &str) -> Option<String> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock.lines().skip_while(|line| *line != name);
    lines.next()?;
    let version = lines.next()?.strip_prefix("version = \"")?;
    Some(version.strip_suffix('"')?.to_owned())
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn locked_version_is_the_one_under_the_name() {
        let lock = "[[package]]\nname = \"a-b\"\nversion = \"1.0.0\"\n\n[[package]]\nname = \"a\"\nversion = \"2.1.3\"\n";
        assert_eq!(version_in(lock, "a").unwrap(), "2.1.3");
        assert_eq!(version_in(lock, "c"), None);
    }

    #[test]
    fn bundler_and_library_are_locked_to_one_version() {
        assert_eq!(
            locked_version("wasm-bindgen").unwrap(),
            locked_version("wasm-bindgen-cli-support").unwrap()
        );
    }
}
