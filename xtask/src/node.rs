//! Small tools from the npm registry, under target/tools: the optimiser for WebAssembly, the accessibility checker, and
//! what the page is measured against. `xtask/npm/package-lock.json` names each by version and sum; npm refuses any other.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::Value;

use crate::{apt, project, run, say};

/// binaryen: its wasm-opt halves the size of the page's program.
const BINARYEN: Package = Package {
    name: "binaryen",
    file: "bin/wasm-opt",
    part: Part::Build,
};

/// axe-core: the accessibility checker the journeys run on every page.
const AXE: Package = Package {
    name: "axe-core",
    file: "axe.min.js",
    part: Part::Journeys,
};

/// age-encryption: another program of the standard that locked files follow, written by the standard's author. The journeys
/// have it open the page's files, and the page its.
const AGE: Package = Package {
    name: "age-encryption",
    file: "dist/index.js",
    part: Part::Journeys,
};

/// survey-core and survey-js-ui: a general library for questionnaires, which the page is measured against.
const SURVEY: [Package; 2] = [
    Package {
        name: "survey-core",
        file: "survey.core.min.js",
        part: Part::Measuring,
    },
    Package {
        name: "survey-js-ui",
        file: "survey-js-ui.min.js",
        part: Part::Measuring,
    },
];

/// The oldest Node.js that the tools run on.
const OLDEST_NODE: u32 = 20;

/// What a package is for. Each part is fetched together with those before it.
#[derive(Clone, Copy)]
enum Part {
    Build,
    Journeys,
    Measuring,
}

impl Part {
    /// The kinds of package in `package.json` that it does without.
    fn omitted(self) -> &'static [&'static str] {
        match self {
            Self::Build => &["--omit=dev", "--omit=optional"],
            Self::Journeys => &["--omit=optional"],
            Self::Measuring => &[],
        }
    }
}

struct Package {
    name: &'static str,
    file: &'static str,
    part: Part,
}

/// `wasm-opt`, a script for Node.js; nothing where there is no Node.js or no network.
pub fn wasm_opt() -> Option<PathBuf> {
    match BINARYEN.fetched() {
        Ok(program) => Some(program),
        Err(error) => {
            say::note(format!(
                "Going on without wasm-opt: the page works the same and is about twice the size. {error}"
            ));
            None
        }
    }
}

/// The optimiser's version.
pub fn wasm_opt_version() -> Result<String> {
    let lock = read(&locked().join("package-lock.json"))?;
    let version = BINARYEN.told_in(&lock, "version");
    Ok(format!(
        "{} {}",
        BINARYEN.name,
        version.context("no version")?
    ))
}

/// Gives another clone the optimiser that this one has.
pub fn hand_over_wasm_opt(other: &Path) -> Result<()> {
    let (from, to) = (
        modules(&project::tools()),
        modules(&other.join("target/tools")),
    );
    std::fs::create_dir_all(&to)?;
    std::fs::copy(from.join(INSTALLED), to.join(INSTALLED))?;
    project::copy(&from.join(BINARYEN.name), &to.join(BINARYEN.name), &[])
}

/// The source of the accessibility checker, which the journeys need.
pub fn axe() -> Result<PathBuf> {
    AXE.fetched()
}

/// The folders of both parts of the library for questionnaires.
pub fn survey() -> Result<[PathBuf; 2]> {
    let [core, view] = &SURVEY;
    for part in [core, view] {
        part.fetched()?;
    }
    Ok([core.folder(), view.folder()])
}

/// The module of the other program for locked files, which the journeys need.
pub fn age() -> Result<PathBuf> {
    AGE.fetched()
}

/// Where npm notes what it has installed, by version and sum.
const INSTALLED: &str = ".package-lock.json";

fn locked() -> PathBuf {
    project::root().join("xtask/npm")
}

fn modules(tools: &Path) -> PathBuf {
    tools.join("node_modules")
}

fn read(file: &Path) -> Result<Value> {
    let text =
        std::fs::read_to_string(file).with_context(|| format!("cannot read {}", file.display()))?;
    serde_json::from_str(&text).with_context(|| format!("{} is no JSON", file.display()))
}

fn npm() -> Command {
    Command::new(if cfg!(windows) { "npm.cmd" } else { "npm" })
}

/// Installs Node.js if it is missing.
fn find_or_install() -> Result<()> {
    if !(run::is_there("node") && run::answer(npm().arg("--version")).is_some()) {
        apt::install("Node.js with npm", &["nodejs", "npm"])?;
    }
    let version = run::answer(Command::new("node").arg("--version")).unwrap_or_default();
    if major(&version).is_some_and(|major| major >= OLDEST_NODE) {
        return Ok(());
    }
    Err(say::advice(
        format!("The Node.js here is `{version}`, which is too old."),
        format!("install Node.js {OLDEST_NODE} or newer with npm, then run this again."),
    ))
}

/// `20` of `v20.19.2`.
fn major(version: &str) -> Option<u32> {
    version.strip_prefix('v')?.split('.').next()?.parse().ok()
}

impl Package {
    fn folder(&self) -> PathBuf {
        modules(&project::tools()).join(self.name)
    }

    /// What a lock file tells of this package.
    fn told_in<'a>(&self, lock: &'a Value, what: &str) -> Option<&'a str> {
        lock["packages"][format!("node_modules/{}", self.name)][what].as_str()
    }

    fn fetched(&self) -> Result<PathBuf> {
        find_or_install()?;
        let file = self.folder().join(self.file);
        let lock = read(&locked().join("package-lock.json"))?;
        let sum = self.told_in(&lock, "integrity");
        let installed = read(&modules(&project::tools()).join(INSTALLED)).unwrap_or_default();
        if file.exists() && sum.is_some() && self.told_in(&installed, "integrity") == sum {
            return Ok(file);
        }
        say::note(format!(
            "Fetching {} {} from the npm registry",
            self.name,
            self.told_in(&lock, "version").unwrap_or_default()
        ));
        std::fs::create_dir_all(project::tools())?;
        for name in ["package.json", "package-lock.json"] {
            std::fs::copy(locked().join(name), project::tools().join(name))?;
        }
        let mut npm = npm();
        npm.current_dir(project::tools())
            .args(["ci", "--no-audit", "--no-fund", "--ignore-scripts"])
            .args(self.part.omitted());
        run::logged("npm ci", &mut npm, &project::log(self.name), None)?;
        Ok(file)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn every_package_has_its_sum_and_no_place_in_the_lock_file() {
        let lock = read(&locked().join("package-lock.json")).unwrap();
        for package in [&BINARYEN, &AXE, &AGE, &SURVEY[0], &SURVEY[1]] {
            let sum = package.told_in(&lock, "integrity");
            assert!(
                sum.is_some_and(|sum| sum.starts_with("sha512-")),
                "{}",
                package.name
            );
        }
        for (name, about) in lock["packages"].as_object().unwrap() {
            assert!(name.is_empty() || about["integrity"].is_string(), "{name}");
            assert!(
                about["resolved"].is_null(),
                "{name}: whichever registry npm is told to use"
            );
        }
    }

    #[test]
    fn major_version_of_node_is_read() {
        assert_eq!(major("v20.19.2"), Some(20));
        assert_eq!(major(""), None);
    }
}
