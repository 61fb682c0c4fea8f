//! What the dependencies are allowed to be: `deny.toml`, held by cargo-deny.

use std::time::Duration;

use anyhow::Result;

use crate::report::Counts;
use crate::tool::Tool;
use crate::{project, run, say};

/// On a closed network the list of known faults cannot be had; waiting longer brings nothing.
const LIST_LIMIT: Duration = Duration::from_secs(60);

/// Holds licences, versions and sources to `deny.toml`; and known faults, where the public list of them can be had.
pub fn check() -> Result<Counts> {
    let program = Tool {
        package: "cargo-deny",
        program: "cargo-deny",
        version: "0.20.2",
        options: &["--locked", "--debug"],
        takes: "four minutes",
    }
    .find_or_build()?;
    let deny = |words: &[&str]| {
        let mut command = std::process::Command::new(&program);
        command.current_dir(project::root()).args(words);
        command
    };
    let mut rules = deny(&["check", "licenses", "bans", "sources"]);
    run::shown("The check of licences, versions and sources", &mut rules)?;
    let mut counts = Counts {
        passed: 3,
        ..Counts::default()
    };
    let log = project::log("advisories");
    let mut fetch = deny(&["fetch", "db"]);
    match run::logged(
        "The list of known faults",
        &mut fetch,
        &log,
        Some(LIST_LIMIT),
    ) {
        Ok(()) => {
            let mut faults = deny(&["check", "--disable-fetch", "advisories"]);
            run::shown("The check of known faults", &mut faults)?;
            counts.passed += 1;
        }
        Err(_) => {
            say::note("The public list of known faults cannot be had here: that check is skipped.");
            counts.skipped += 1;
        }
    }
    Ok(counts)
}
