//! The checks of `cargo xtask test`: each runs to its end, whatever the one before it said.

pub mod bench;

use std::cell::OnceCell;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};
use std::time::Instant;

use anyhow::{Result, anyhow, bail};

use crate::browser::Browser;
use crate::dist::{self, Files};
use crate::engines::ENGINES;
use crate::report::{self, Counts, Outcome};
use crate::toolchain::WasmTarget;
use crate::{browser, deny, exiftool, node, project, python, run, say, serve, wasm_runner};

/// A check by name.
struct Step {
    name: &'static str,
    /// Whether it is run when no step is named.
    is_usual: bool,
    about: &'static str,
    run: fn(&Kit) -> Result<Counts>,
}

const STEPS: [Step; 11] = [
    Step {
        name: "format",
        is_usual: true,
        about: "Layout of the code (cargo fmt --check)",
        run: format,
    },
    Step {
        name: "lint",
        is_usual: true,
        about: "Lints, natively (cargo clippy)",
        run: lint,
    },
    Step {
        name: "lint-page",
        is_usual: true,
        about: "Lints, for the browser (cargo clippy)",
        run: lint_page,
    },
    Step {
        name: "deny",
        is_usual: true,
        about: "Licences, versions and sources of what is depended on (cargo deny)",
        run: |_| deny::check(),
    },
    Step {
        name: "native",
        is_usual: true,
        about: "Native tests and documentation examples (cargo test)",
        run: native,
    },
    Step {
        name: "outside",
        is_usual: true,
        about: "Pictures and notes made by other programs (scikit-image, exiftool)",
        run: outside,
    },
    Step {
        name: "wasm",
        is_usual: true,
        about: "WebAssembly tests in Chromium",
        run: wasm,
    },
    Step {
        name: "build",
        is_usual: true,
        about: "The finished site",
        run: build,
    },
    Step {
        name: "twice",
        is_usual: true,
        about: "The same site from another folder, byte for byte",
        run: twice,
    },
    Step {
        name: "journeys",
        is_usual: true,
        about: "Journeys through the finished site in Chromium",
        run: journeys,
    },
    Step {
        name: "engines",
        is_usual: false,
        about: "The main walks in Chromium, Firefox and WebKit",
        run: engines,
    },
];

/// Runs the steps named by the options, or all of them; what follows `--` narrows the journeys.
pub fn test(options: &[&str]) -> Result<ExitCode> {
    let (names, filter) = match options.iter().position(|option| *option == "--") {
        Some(at) => (&options[..at], &options[at + 1..]),
        None => (options, &[] as &[&str]),
    };
    if let Some(unknown) = names
        .iter()
        .find(|name| STEPS.iter().all(|step| step.name != **name))
    {
        let known: Vec<&str> = STEPS.iter().map(|step| step.name).collect();
        return Err(say::advice(
            format!("There is no step `{unknown}`."),
            format!("choose among these: {}", known.join(", ")),
        ));
    }
    let kit = Kit {
        filter: filter.iter().map(|word| (*word).to_owned()).collect(),
        ..Kit::default()
    };
    let chosen = STEPS.iter().filter(|step| match names {
        [] => step.is_usual,
        names => names.contains(&step.name),
    });
    let outcomes: Vec<Outcome> = chosen.map(|step| one(step, &kit)).collect();
    Ok(if report::close(&outcomes) {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    })
}

fn one(step: &Step, kit: &Kit) -> Outcome {
    say::step(&format!("[{}] {}", step.name, step.about));
    let begun = Instant::now();
    let counts = (step.run)(kit).unwrap_or_else(|error| {
        say::trouble(&error);
        Counts {
            failed: 1,
            ..Counts::default()
        }
    });
    let outcome = Outcome {
        name: step.name,
        counts,
        passed: counts.failed == 0,
        time: begun.elapsed(),
    };
    say::note(format!(
        "[{}] took {}",
        step.name,
        say::seconds(outcome.time)
    ));
    outcome
}

/// What several steps need: got when first asked for, and once only, also when it cannot be had.
#[derive(Default)]
struct Kit {
    target: OnceCell<Result<WasmTarget, String>>,
    browser: OnceCell<Result<Browser, String>>,
    site: OnceCell<Result<Files, String>>,
    filter: Vec<String>,
}

impl Kit {
    fn target(&self) -> Result<&WasmTarget> {
        once(&self.target, WasmTarget::find_or_install)
    }

    fn browser(&self) -> Result<&Browser> {
        once(&self.browser, Browser::find_or_install)
    }

    /// What narrows the tests of one module.
    fn filter_within(&self, module: &str) -> Vec<String> {
        match self.filter.as_slice() {
            [] => vec![format!("{module}::")],
            words => words
                .iter()
                .map(|word| format!("{module}::{word}"))
                .collect(),
        }
    }

    fn site(&self) -> Result<&Files> {
        once(&self.site, || dist::build(self.target()?))
    }
}

fn once<T>(cell: &OnceCell<Result<T, String>>, make: impl FnOnce() -> Result<T>) -> Result<&T> {
    let made = cell.get_or_init(|| make().map_err(|error| format!("{error:#}")));
    made.as_ref().map_err(|text| anyhow!(text.clone()))
}

fn format(_: &Kit) -> Result<Counts> {
    plain(project::cargo().args(["fmt", "--all", "--check"]))
}

/// What needs a browser or other programs is asked for by name: a plain `cargo test` leaves it out, and so does
/// `--all-targets`.
fn lint(_: &Kit) -> Result<Counts> {
    let mut sum = Counts::default();
    for targets in [
        ["--workspace", "--all-targets"].as_slice(),
        &[
            "--package",
            "self-check-tests",
            "--test",
            "journeys",
            "--test",
            "engines",
        ],
        &["--package", "self-check-core", "--test", "outside"],
    ] {
        let mut clippy = project::cargo();
        let clippy = clippy.arg("clippy").args(targets);
        sum.add(plain(clippy.args(["--", "-D", "warnings"]))?);
    }
    Ok(sum)
}

fn lint_page(kit: &Kit) -> Result<Counts> {
    let mut clippy = kit.target()?.clippy();
    plain(clippy.args(["--package", "self-check-app", "--", "-D", "warnings"]))
}

/// One package after the other: together, their dependencies would be built with the features of all, and once more for
/// whoever is run alone, as this program and the journeys are.
fn native(_: &Kit) -> Result<Counts> {
    let mut sum = Counts::default();
    for package in [
        "self-check-core",
        "self-check-app",
        "self-check-site",
        "self-check-tests",
        "xtask",
    ] {
        let mut cargo = project::cargo();
        cargo.args(["test", "--no-fail-fast", "--package", package]);
        sum.add(tests(&mut cargo)?);
    }
    Ok(sum)
}

/// What other programs make, read by the core. Where one of them cannot be had, its part is skipped and a line says so.
fn outside(_: &Kit) -> Result<Counts> {
    let mut sum = Counts::default();
    let python = python::SCIKIT_IMAGE.find_or_install();
    let exiftool = exiftool::find_or_install();
    for (part, is_there) in [
        ("rendered::", python.is_some()),
        ("notes::", python.is_some() && exiftool.is_some()),
    ] {
        if !is_there {
            sum.skipped += 1;
            continue;
        }
        let mut cargo = project::cargo();
        cargo.args(["test", "--package", "self-check-core", "--test", "outside"]);
        cargo.args(["--", part]);
        if let Some(python) = &python {
            cargo.env("SELF_CHECK_PYTHON", python);
        }
        if let Some(exiftool) = &exiftool {
            cargo.env("SELF_CHECK_EXIFTOOL", exiftool);
        }
        sum.add(tests(&mut cargo)?);
    }
    Ok(sum)
}

fn wasm(kit: &Kit) -> Result<Counts> {
    let mut sum = Counts::default();
    let target = kit.target()?;
    let packages = [("self-check-core", "core"), ("self-check-app", "app")];
    let selections =
        packages.map(|(package, folder)| (package, wasm_tests_in(&project::root().join(folder))));
    if selections.iter().all(|(_, selection)| selection.is_empty()) {
        bail!("No WebAssembly test was found in core/tests, app/tests or app/src.");
    }
    for (package, selection) in selections
        .iter()
        .filter(|(_, selection)| !selection.is_empty())
    {
        let mut cargo = target.cargo("test");
        cargo
            .args(["--no-fail-fast", "--package", package])
            .args(selection);
        kit.run_in_browser(&mut cargo)?;
        sum.add(tests(&mut cargo)?);
    }
    Ok(sum)
}

/// Cargo's options for the parts of a package that hold WebAssembly tests.
fn wasm_tests_in(package: &Path) -> Vec<String> {
    let holds_one = |file: &PathBuf| {
        std::fs::read_to_string(file).is_ok_and(|text| text.contains("#[wasm_bindgen_test"))
    };
    let mut options: Vec<String> = rust_files(&package.join("tests"), false)
        .iter()
        .filter(|file| holds_one(file))
        .filter_map(|file| Some(format!("--test={}", file.file_stem()?.to_str()?)))
        .collect();
    options.sort();
    if rust_files(&package.join("src"), true).iter().any(holds_one) {
        let kind = if package.join("src/lib.rs").exists() {
            "--lib"
        } else {
            "--bins"
        };
        options.push(kind.to_owned());
    }
    options
}

fn rust_files(folder: &Path, deep: bool) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder)
        .into_iter()
        .flatten()
        .flatten()
        .map(|entry| entry.path());
    entries
        .flat_map(|path| match path.is_dir() {
            true if deep => rust_files(&path, deep),
            false if path.extension().is_some_and(|ending| ending == "rs") => vec![path],
            _ => Vec::new(),
        })
        .collect()
}

fn build(kit: &Kit) -> Result<Counts> {
    if !dist::is_optimised(kit.site()?) {
        bail!(
            "The site was built without wasm-opt, so what it weighs could not be held to anything. Why stands above."
        );
    }
    Ok(Counts {
        passed: 1,
        ..Counts::default()
    })
}

fn twice(kit: &Kit) -> Result<Counts> {
    crate::twice::compare(kit.site()?)?;
    Ok(Counts {
        passed: 1,
        ..Counts::default()
    })
}

fn journeys(kit: &Kit) -> Result<Counts> {
    let mut cargo = project::cargo();
    cargo
        .args([
            "test",
            "--package",
            "self-check-tests",
            "--test",
            "journeys",
            "--",
            // A browser has several processes of its own; more at once only wait for each other.
            "--test-threads=2",
        ])
        .args(&kit.filter);
    browser::find_or_install_pdf_reader()?;
    kit.walk_in(&mut cargo)?;
    if let Some(exiftool) = exiftool::find_or_install() {
        cargo.env("SELF_CHECK_EXIFTOOL", exiftool);
    }
    tests(&mut cargo)
}

/// A make that cannot be had here is told and counts as a failure: whoever names this step asks for it.
fn engines(kit: &Kit) -> Result<Counts> {
    let address = serve::in_background(kit.site()?.clone())?;
    let mut sum = Counts::default();
    for engine in &ENGINES {
        let mut cargo = project::cargo();
        cargo
            .args([
                "test",
                "--package",
                "self-check-tests",
                "--test",
                "engines",
                "--",
            ])
            .arg("--test-threads=2")
            .args(kit.filter_within(engine.name))
            .env("SELF_CHECK_ADDRESS", &address)
            .env("SELF_CHECK_DIST", project::root().join("dist"));
        match (engine.name_to)(&mut cargo) {
            Ok(()) => sum.add(tests(&mut cargo)?),
            Err(error) => {
                say::trouble(&error);
                sum.failed += 1;
            }
        }
    }
    Ok(sum)
}

impl Kit {
    /// Has cargo run WebAssembly in Chromium.
    fn run_in_browser(&self, cargo: &mut Command) -> Result<()> {
        cargo
            .env(
                "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER",
                wasm_runner::find_or_build()?,
            )
            .env("WASM_BINDGEN_USE_BROWSER", "1");
        self.browser()?.name_to(cargo);
        Ok(())
    }

    /// Serves the site and tells a command where it is and what to look at it with.
    fn walk_in(&self, command: &mut Command) -> Result<()> {
        // What may be missing comes before minutes of building.
        self.browser()?.name_to(command);
        command
            .env("SELF_CHECK_AXE", node::axe()?)
            .env("SELF_CHECK_AGE", node::age()?)
            .env("SELF_CHECK_DIST", project::root().join("dist"))
            .env(
                "SELF_CHECK_ADDRESS",
                serve::in_background(self.site()?.clone())?,
            );
        Ok(())
    }
}

/// A step that is one check.
fn plain(command: &mut Command) -> Result<Counts> {
    run::shown("The check", command)?;
    Ok(Counts {
        passed: 1,
        ..Counts::default()
    })
}

/// A step that runs tests: counted by the runners' own lines. A run without a single test is a failure.
fn tests(command: &mut Command) -> Result<Counts> {
    let mut counts = Counts::default();
    let status = run::read("The tests", command, |line| counts.read_line(line))?;
    let ran_none = counts.passed + counts.failed == 0;
    if ran_none {
        say::note("No test ran: that counts as a failure.");
    }
    if ran_none || (!status.success() && counts.failed == 0) {
        counts.failed = 1;
    }
    Ok(counts)
}

/// Takes the pictures for the documentation from the real page.
pub fn take_pictures() -> Result<()> {
    let kit = Kit::default();
    let mut cargo = walker("pictures");
    cargo.args(["--", "docs/pictures"]);
    kit.walk_in(&mut cargo)?;
    say::step("Take the pictures");
    run::shown("Taking the pictures", &mut cargo)
}

/// Runs a program that walks through the page.
fn walker(name: &str) -> Command {
    let mut cargo = project::cargo();
    cargo.args(["run", "--package", "self-check-tests", "--bin", name]);
    cargo
}
