//! The measurements of `cargo xtask bench`, and the tables that are computed in advance.

use anyhow::{Result, bail};

use super::{Kit, tests, walker};
use crate::{project, python, rivals, run, say, serve};

/// Measures all parts, or the named ones, and fails where a promise of speed is broken.
pub fn all(names: &[&str]) -> Result<()> {
    const PARTS: [(&str, Measure); 4] = [
        ("core", core),
        ("browser", in_the_browser),
        ("board", board),
        ("frames", frames),
    ];
    if let Some(unknown) = names
        .iter()
        .find(|name| PARTS.iter().all(|(part, _)| part != *name))
    {
        return Err(say::advice(
            format!("There is nothing to measure named `{unknown}`."),
            "choose among these: core, browser, board, frames".to_owned(),
        ));
    }
    let kit = Kit::default();
    let mut broken = Vec::new();
    for (name, measure) in PARTS {
        if (names.is_empty() || names.contains(&name)) && !measure(&kit)? {
            broken.push(name);
        }
    }
    match broken.is_empty() {
        true => Ok(()),
        false => bail!("A promise of speed was broken: {}.", broken.join(", ")),
    }
}

/// Measures one part; whether it kept its promises.
type Measure = fn(&Kit) -> Result<bool>;

/// The core, natively.
fn core(_: &Kit) -> Result<bool> {
    needs("core/benches", "The core has no benchmarks.")?;
    let mut cargo = project::cargo();
    cargo.args(["bench", "--package", "self-check-core"]);
    if let Some(python) = python::SCIPY.find_or_install() {
        cargo.env("SELF_CHECK_PYTHON", python);
    }
    run::shown("Measuring the core", &mut cargo)?;
    Ok(true)
}

/// The core, compiled as the page is.
fn in_the_browser(kit: &Kit) -> Result<bool> {
    let mut cargo = kit.target()?.cargo("test");
    cargo
        .args(["--release", "--package", "self-check-core"])
        .args(["--test", "speed_in_the_browser", "--"])
        .args(["--include-ignored", "--nocapture"]);
    kit.run_in_browser(&mut cargo)?;
    say::step("Measure the core in Chromium, compiled as the page is");
    Ok(tests(&mut cargo)?.failed == 0)
}

/// The finished page, with a small estate on its board.
fn board(kit: &Kit) -> Result<bool> {
    let mut cargo = project::cargo();
    cargo
        .args(["test", "--package", "self-check-tests"])
        .args(["--test", "journeys", "--"])
        .args(["--ignored", "--nocapture", "--test-threads=1"]);
    kit.walk_in(&mut cargo)?;
    say::step("Measure the finished page in Chromium");
    Ok(tests(&mut cargo)?.failed == 0)
}

/// How the distance page keeps up with its slider.
fn frames(kit: &Kit) -> Result<bool> {
    let mut cargo = walker("frames");
    kit.walk_in(&mut cargo)?;
    say::step("Measure the frames of the distance page in Chromium");
    run::shown("Measuring the frames", &mut cargo)?;
    Ok(true)
}

/// Measures the page's work on large pictures, beside the browser's own.
pub fn pictures() -> Result<()> {
    let kit = Kit::default();
    let mut cargo = walker("large-pictures");
    kit.walk_in(&mut cargo)?;
    say::step("Large pictures");
    run::shown("Measuring large pictures", &mut cargo)
}

/// Measures the page in the browser, beside the least that yew can be and beside a general library for questionnaires.
pub fn page() -> Result<()> {
    let kit = Kit::default();
    let site = kit.site()?.clone();
    let hello = rivals::hello(kit.target()?)?;
    let survey = rivals::survey()?;
    let mut cargo = walker("speed");
    kit.browser()?.name_to(&mut cargo);
    cargo
        .env("SELF_CHECK_ADDRESS", serve::packed_in_background(site)?)
        .env("SELF_CHECK_HELLO", serve::packed_in_background(hello)?)
        .env("SELF_CHECK_SURVEY", serve::packed_in_background(survey)?);
    say::step("Measure the page in Chromium");
    run::shown("Measuring the page", &mut cargo)
}

/// Computes the tables of readings anew and writes them over those in `core/src/reading/tables.rs`.
pub fn tables() -> Result<()> {
    needs(
        "core/examples/tables.rs",
        "The core has no program that writes its tables.",
    )?;
    let mut cargo = project::cargo();
    cargo.args([
        "run",
        "--release",
        "--package",
        "self-check-core",
        "--example",
        "tables",
    ]);
    run::shown("Writing the tables", &mut cargo)
}

fn needs(path: &str, happened: &str) -> Result<()> {
    if project::root().join(path).exists() {
        return Ok(());
    }
    Err(say::advice(
        happened,
        format!("update this clone; {path} is where they are."),
    ))
}
