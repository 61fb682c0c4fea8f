//! The package manager of Debian and Ubuntu.

use std::process::Command;

use anyhow::{Result, bail};

use crate::{project, run, say};

/// Installs packages, after saying which; removes none.
pub fn install(what: &str, packages: &[&str]) -> Result<()> {
    let by_hand = format!("apt-get install {}", packages.join(" "));
    if !run::is_there("apt-get") {
        return Err(say::advice(
            format!(
                "{what}: not on this machine, and it is no Debian or Ubuntu, whose packages could be installed here."
            ),
            format!(
                "install {what} as your system does it (elsewhere the packages are: {})",
                packages.join(", ")
            ),
        ));
    }
    let Some(prefix) = root_prefix() else {
        return Err(say::advice(
            format!("{what}: not on this machine, and installing needs root."),
            format!("run `sudo {by_hand}`, then run this again."),
        ));
    };
    say::note(format!(
        "Installing {what} from the system's packages, as root: {}",
        [prefix.as_slice(), &[by_hand.as_str()]].concat().join(" ")
    ));
    update()?;
    let mut install = apt_get(&["install", "-y", "--no-install-recommends", "--no-remove"])?;
    let log = project::log(&format!("apt-{}", packages[0]));
    run::logged(&by_hand, install.args(packages), &log, None)
}

/// Asks the system's servers what packages there are. A machine that never asked knows of none.
pub fn update() -> Result<()> {
    let mut update = apt_get(&["update"])?;
    run::logged(
        "apt-get update",
        &mut update,
        &project::log("apt-update"),
        None,
    )
}

fn apt_get(arguments: &[&str]) -> Result<Command> {
    let Some(mut words) = root_prefix() else {
        bail!("the system's packages can be installed by root alone");
    };
    words.push("apt-get");
    let mut command = Command::new(words[0]);
    command
        .args(&words[1..])
        .args(arguments)
        .env("DEBIAN_FRONTEND", "noninteractive");
    Ok(command)
}

/// What to put before a command that needs root: nothing for root, `sudo` where it asks no password.
fn root_prefix() -> Option<Vec<&'static str>> {
    if run::answer(Command::new("id").arg("-u"))? == "0" {
        return Some(Vec::new());
    }
    run::answer(Command::new("sudo").args(["-n", "true"])).map(|_| vec!["sudo", "-n"])
}
