//! What the dependencies are allowed to be: `deny.toml`, held by cargo-deny.

use std::time::{Duration, Instant};

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
    let begun = Instant::now();
    let fetched = run::logged(
        "The list of known faults",
        &mut fetch,
        &log,
        Some(LIST_LIMIT),
    );
    if let Err(error) = fetched {
        let said = std::fs::read_to_string(&log).unwrap_or_default();
        if begun.elapsed() < LIST_LIMIT && !is_for_want_of_a_network(&said) {
            return Err(error);
        }
        say::note(format!(
            "The public list of known faults cannot be had here: that check is skipped. {error}"
        ));
        counts.skipped += 1;
    } else {
        let mut faults = deny(&["check", "--disable-fetch", "advisories"]);
        run::shown("The check of known faults", &mut faults)?;
        counts.passed += 1;
    }
    Ok(counts)
}

/// Whether what cargo-deny said of a failure is that the list could not be fetched. Any other failure is one of the check.
fn is_for_want_of_a_network(said: &str) -> bool {
    said.contains("failed to fetch")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_failed_download_is_let_pass() {
        let closed = "[ERROR] failed to fetch database: failed to fetch advisory database with cli: failed to clone\n\
                      fatal: unable to access: Could not resolve host";
        assert!(is_for_want_of_a_network(closed));
        for other in [
            "",
            "[ERROR] failed to deserialize config from 'deny.toml'",
            "error: unexpected argument 'db' found",
        ] {
            assert!(!is_for_want_of_a_network(other), "{other}");
        }
    }
}
