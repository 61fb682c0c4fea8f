//! Rust for the browser: finds a compiler that can build for WebAssembly, or gets one.
//!
//! Three ways, tried in this order; what an earlier run installed is found again by looking, so a second run asks nobody:
//!
//! 1. the toolchain the clone is worked on with already has the target;
//! 2. a Debian or Ubuntu Rust that a run before this one installed beside it is there;
//! 3. `rustup target add`; and where that download is closed, the system's own packages.

use std::path::PathBuf;
use std::process::Command;
use std::time::Duration;

use anyhow::{Context, Result};

use crate::project::{self, WASM};
use crate::system_rust::SystemRust;
use crate::{run, say};

/// On a closed network `rustup target add` may wait for ever; the download itself is about 20 MB.
const RUSTUP_LIMIT: Duration = Duration::from_secs(90);

/// A way to compile for the browser.
pub struct WasmTarget {
    system: Option<SystemRust>,
}

impl WasmTarget {
    /// The way this machine has, after installing one if it had none.
    pub fn find_or_install() -> Result<Self> {
        say::step("Rust for the browser");
        if toolchain_has_target() {
            return Ok(Self { system: None });
        }
        if let Some(found) = SystemRust::find() {
            say::note(format!("{WASM} through {}", found.version()));
            return Ok(Self {
                system: Some(found),
            });
        }
        say::note(format!(
            "This Rust cannot build for {WASM} yet: `rustup target add {WASM}` gets what it lacks (20 MB)."
        ));
        match rustup_target_add() {
            Ok(()) if toolchain_has_target() => {
                say::note("rustup has got it.");
                return Ok(Self { system: None });
            }
            Ok(()) => say::note("rustup was content, but the target's library is still missing."),
            Err(error) => say::note(format!("{error}")),
        }
        match SystemRust::install() {
            Ok(installed) => Ok(Self {
                system: Some(installed),
            }),
            Err(error) => Err(say::advice(
                format!(
                    "There is no Rust for {WASM} here. The system's own packages did not help: {error}"
                ),
                format!(
                    "run `rustup target add {WASM}` on a network that reaches Rust's download server, then run this again."
                ),
            )),
        }
    }

    /// `cargo SUBCOMMAND ... --target wasm32-unknown-unknown`, with what this way of compiling needs.
    ///
    /// The settings are put on this one command, never on this program's own environment: a compiler meant for the
    /// browser must not find its way into the builds of native tests.
    pub fn cargo(&self, subcommand: &str) -> Command {
        let mut command = match &self.system {
            None => project::cargo(),
            Some(system) => system.cargo(),
        };
        command.arg(subcommand);
        self.for_browser(command)
    }

    /// Where [`WasmTarget::cargo`] leaves what it builds. Two compilers in one folder would rebuild each other's work.
    pub fn target_dir(&self) -> PathBuf {
        match self.system {
            None => project::target(),
            Some(_) => project::target().join("system-rust"),
        }
    }

    /// Clippy for the page; without it, the compiler's own check and its warnings.
    pub fn clippy(&self) -> Command {
        match &self.system {
            None => self.cargo("clippy"),
            Some(system) => match system.cargo_clippy() {
                Some(clippy) => self.for_browser(clippy),
                None => {
                    say::note(
                        "The system's Rust comes without clippy: the compiler's own warnings have to do.",
                    );
                    self.cargo("check")
                }
            },
        }
    }

    /// What the compiler calls itself.
    pub fn version(&self) -> Result<String> {
        run::answer(self.rustc().arg("--version")).context("rustc does not tell its version")
    }

    fn rustc(&self) -> Command {
        let mut rustc = match &self.system {
            None => Command::new("rustc"),
            Some(system) => system.rustc(),
        };
        rustc.current_dir(project::root());
        rustc
    }

    fn for_browser(&self, mut command: Command) -> Command {
        command
            .args(["--target", WASM, "--target-dir"])
            .arg(self.target_dir())
            .env("CARGO_ENCODED_RUSTFLAGS", flags(self.standard_library()));
        command
    }

    /// Where the sources of the standard library lie if they are installed, and what they are called where they are not.
    fn standard_library(&self) -> Option<(PathBuf, String)> {
        let sysroot = run::answer(self.rustc().args(["--print", "sysroot"]))?;
        let about = run::answer(self.rustc().arg("-vV"))?;
        let commit = about
            .lines()
            .find_map(|line| line.strip_prefix("commit-hash: "))?;
        let folder = PathBuf::from(sysroot).join("lib/rustlib/src/rust");
        Some((folder, format!("/rustc/{commit}")))
    }
}

fn toolchain_has_target() -> bool {
    let mut rustc = Command::new("rustc");
    rustc
        .current_dir(project::root())
        .args(["--print", "target-libdir", "--target", WASM]);
    let Some(folder) = run::answer(&mut rustc) else {
        return false;
    };
    std::fs::read_dir(folder).is_ok_and(|entries| {
        entries
            .flatten()
            .any(|entry| entry.file_name().to_string_lossy().starts_with("libcore-"))
    })
}

fn rustup_target_add() -> Result<()> {
    let mut rustup = Command::new("rustup");
    rustup
        .current_dir(project::root())
        .args(["target", "add", WASM]);
    run::logged(
        "rustup target add",
        &mut rustup,
        &project::log("rustup-target-add"),
        Some(RUSTUP_LIMIT),
    )
}

/// Code carries the place of its source in panic messages. These flags keep the builder's folders out of the page, and
/// its bytes the same wherever it is built.
fn flags(standard_library: Option<(PathBuf, String)>) -> String {
    let cargo_home = std::env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| std::env::home_dir().map(|home| home.join(".cargo")));
    let registries = cargo_home.iter().flat_map(|home| {
        let folders = std::fs::read_dir(home.join("registry/src"));
        folders
            .into_iter()
            .flatten()
            .flatten()
            .map(|entry| entry.path())
    });
    // Where two fit, the later one counts. A crate's folder is called by its name and version, whichever registry it is from.
    let registries = registries.map(|folder| (folder, String::new()));
    let places = cargo_home
        .iter()
        .cloned()
        .map(|home| (home, "/cargo".to_owned()));
    let places = places
        .chain(registries)
        .chain(standard_library)
        .chain([(project::root(), ".".to_owned())]);
    let remaps = places.map(|(from, to)| format!("--remap-path-prefix={}={to}", from.display()));
    // Cargo's own mark between flags, since a folder's name may have blanks.
    remaps.collect::<Vec<String>>().join("\u{1f}")
}
