//! Small tools from the npm registry, under target/tools: the optimiser for WebAssembly, the accessibility checker, and
//! what the page is measured against.

use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;

use crate::{apt, project, run, say};

/// binaryen: its wasm-opt halves the size of the page's program.
const BINARYEN: Package = Package {
    name: "binaryen",
    version: "132.0.0",
    file: "bin/wasm-opt",
};

/// axe-core: the accessibility checker the journeys run on every page.
const AXE: Package = Package {
    name: "axe-core",
    version: "4.14.1",
    file: "axe.min.js",
};

/// survey-core and survey-js-ui: a general library for questionnaires, which the page is measured against.
const SURVEY: [Package; 2] = [
    Package {
        name: "survey-core",
        version: "2.5.38",
        file: "survey.core.min.js",
    },
    Package {
        name: "survey-js-ui",
        version: "2.5.38",
        file: "survey-js-ui.min.js",
    },
];

struct Package {
    name: &'static str,
    version: &'static str,
    file: &'static str,
}

/// `wasm-opt`, a script for Node.js; nothing where there is no Node.js or no network.
pub fn wasm_opt() -> Option<PathBuf> {
    match find_or_install().and_then(|()| BINARYEN.fetched()) {
        Ok(program) => Some(program),
        Err(error) => {
            say::note(format!(
                "Going on without wasm-opt: the page works the same and is about twice the size. {error}"
            ));
            None
        }
    }
}

/// The source of the accessibility checker, which the journeys need.
pub fn axe() -> Result<PathBuf> {
    find_or_install()?;
    AXE.fetched()
}

/// The folders of both parts of the library for questionnaires.
pub fn survey() -> Result<[PathBuf; 2]> {
    find_or_install()?;
    let [core, view] = &SURVEY;
    for part in [core, view] {
        part.fetched()?;
    }
    Ok([core.folder(), view.folder()])
}

/// Installs Node.js if it is missing.
fn find_or_install() -> Result<()> {
    if run::is_there("node") && run::is_there("npm") {
        return Ok(());
    }
    apt::install("Node.js with npm", &["nodejs", "npm"])
}

impl Package {
    fn folder(&self) -> PathBuf {
        project::tools().join("node_modules").join(self.name)
    }

    fn fetched(&self) -> Result<PathBuf> {
        let folder = self.folder();
        let file = folder.join(self.file);
        if !run::is_there("node") {
            return Err(say::advice(
                format!("{} needs Node.js.", self.name),
                "install Node.js 20 or newer with npm, then run this again.",
            ));
        }
        let about = std::fs::read_to_string(folder.join("package.json")).unwrap_or_default();
        if file.exists() && about.contains(&format!("\"version\": \"{}\"", self.version)) {
            return Ok(file);
        }
        say::note(format!(
            "Fetching {} {} from the npm registry",
            self.name, self.version
        ));
        let mut npm = Command::new(if cfg!(windows) { "npm.cmd" } else { "npm" });
        npm.args([
            "install",
            "--no-audit",
            "--no-fund",
            "--ignore-scripts",
            "--prefix",
        ])
        .arg(project::tools())
        .arg(format!("{}@{}", self.name, self.version));
        run::logged("npm install", &mut npm, &project::log(self.name), None)?;
        Ok(file)
    }
}
