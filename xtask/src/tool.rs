//! Programs for checks that are built from the registry, once for each version. They are kept outside the clone, where the
//! next clone finds them.

use std::path::PathBuf;

use anyhow::{Context, Result};

use crate::{project, run, say};

/// A program to build.
pub struct Tool<'a> {
    /// The package that it is in.
    pub package: &'a str,
    /// Its own name.
    pub program: &'a str,
    /// Its version.
    pub version: &'a str,
    /// What cargo is to be told beside that.
    pub options: &'a [&'a str],
    /// How long building takes on two processors.
    pub takes: &'a str,
}

impl Tool<'_> {
    /// Where the program is, after building it if it is not there.
    pub fn find_or_build(&self) -> Result<PathBuf> {
        let Self {
            package,
            program,
            version,
            ..
        } = self;
        let home = cache()?.join(format!("{package}-{version}"));
        let place = home
            .join("bin")
            .join(format!("{program}{}", std::env::consts::EXE_SUFFIX));
        if place.exists() {
            say::note(format!("{program} {version}"));
            return Ok(place);
        }
        say::note(format!(
            "Building {program} {version}: about {}, once",
            self.takes
        ));
        let mut cargo = project::cargo();
        cargo
            .args(["install", package, "--bin", program, "--version", version])
            .args(self.options)
            .arg("--root")
            .arg(&home)
            // Nobody looks into these programs.
            .env("CARGO_PROFILE_DEV_DEBUG", "0");
        run::shown(&format!("Building {program}"), &mut cargo)?;
        Ok(place)
    }
}

fn cache() -> Result<PathBuf> {
    let base = std::env::var_os("XDG_CACHE_HOME")
        .filter(|value| !value.is_empty())
        .map(PathBuf::from)
        .or_else(|| std::env::home_dir().map(|home| home.join(".cache")))
        .context("there is no home folder to keep the built tool in; set XDG_CACHE_HOME")?;
    Ok(base.join("house-key-self-check"))
}
