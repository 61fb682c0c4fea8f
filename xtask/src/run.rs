//! Running other programs: their output shown, kept in a log, or read line by line, and never a long silence.

use std::fs::File;
use std::io::{BufRead, BufReader, ErrorKind, Write};
use std::path::Path;
use std::process::{Child, Command, ExitStatus, Stdio};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::thread;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};

use crate::say;

/// How long a program may be silent before a sign of life is printed in its place.
const HEARTBEAT: Duration = Duration::from_secs(20);

/// Runs a program whose output belongs on the terminal.
pub fn shown(what: &str, command: &mut Command) -> Result<()> {
    let status = read(what, command, |_| {})?;
    if !status.success() {
        bail!("{what} failed ({status}); its own words stand above.");
    }
    Ok(())
}

/// Runs a program, passes its standard output on, and hands each line of it to `on_line`.
pub fn read(
    what: &str,
    command: &mut Command,
    mut on_line: impl FnMut(&str),
) -> Result<ExitStatus> {
    let mut child = start(what, command.stdin(Stdio::null()).stdout(Stdio::piped()))?;
    let output = child.stdout.take().context("standard output is piped")?;
    let (sender, lines) = mpsc::channel();
    let reader = thread::spawn(move || {
        for line in BufReader::new(output).split(b'\n') {
            let Ok(line) = line else { break };
            if sender
                .send(String::from_utf8_lossy(&line).into_owned())
                .is_err()
            {
                break;
            }
        }
    });
    let begun = Instant::now();
    loop {
        match lines.recv_timeout(HEARTBEAT) {
            Ok(line) => {
                let _ = writeln!(std::io::stdout(), "{line}");
                on_line(&line);
            }
            Err(RecvTimeoutError::Timeout) => say::still_busy(what, begun.elapsed()),
            Err(RecvTimeoutError::Disconnected) => break,
        }
    }
    let _ = reader.join();
    wait(what, &mut child, None)
}

/// Runs a talkative program with its output in a log file; shows the end of the log if it fails.
pub fn logged(
    what: &str,
    command: &mut Command,
    log: &Path,
    limit: Option<Duration>,
) -> Result<()> {
    if let Some(folder) = log.parent() {
        std::fs::create_dir_all(folder)?;
    }
    let file = File::create(log).with_context(|| format!("cannot write {}", log.display()))?;
    command
        .stdin(Stdio::null())
        .stdout(file.try_clone()?)
        .stderr(file);
    let mut child = start(what, command)?;
    let status = wait(what, &mut child, limit)?;
    if !status.success() {
        let text = std::fs::read_to_string(log).unwrap_or_default();
        for line in last_lines(&text, 15) {
            say::note(format!("| {line}"));
        }
        bail!(
            "{what} failed ({status}); all it said is in {}.",
            log.display()
        );
    }
    Ok(())
}

/// What a short question to a program answers, or nothing if it is not there or refuses.
pub fn answer(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).output().ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// Whether a program of this name can be started from the search path.
pub fn is_there(program: &str) -> bool {
    answer(Command::new(program).arg("--version")).is_some()
}

fn start(what: &str, command: &mut Command) -> Result<Child> {
    let program = command.get_program().to_string_lossy().into_owned();
    command.spawn().map_err(|error| match error.kind() {
        ErrorKind::NotFound => say::advice(
            format!("{what} needs the program `{program}`, which is not on this machine."),
            format!(
                "install `{program}` so that it is found on the search path, then run this again."
            ),
        ),
        _ => anyhow::Error::new(error).context(format!("{what}: `{program}` could not be started")),
    })
}

fn wait(what: &str, child: &mut Child, limit: Option<Duration>) -> Result<ExitStatus> {
    let begun = Instant::now();
    let mut told = Duration::ZERO;
    loop {
        if let Some(status) = child.try_wait()? {
            return Ok(status);
        }
        let waited = begun.elapsed();
        if limit.is_some_and(|limit| waited > limit) {
            child.kill()?;
            child.wait()?;
            bail!("{what} had no result after {}.", say::seconds(waited));
        }
        if waited - told >= HEARTBEAT {
            say::still_busy(what, waited);
            told = waited;
        }
        thread::sleep(Duration::from_millis(50));
    }
}

fn last_lines(text: &str, count: usize) -> Vec<&str> {
    let lines: Vec<&str> = text.lines().collect();
    lines[lines.len().saturating_sub(count)..].to_vec()
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn missing_program_is_named_with_what_to_do() {
        let error = shown(
            "The trial",
            &mut Command::new("a-program-that-nobody-ships"),
        )
        .unwrap_err();
        let text = error.to_string();
        assert!(text.contains("`a-program-that-nobody-ships`"), "{text}");
        assert!(text.contains("What to do:"), "{text}");
    }

    #[cfg(unix)]
    #[test]
    fn program_that_hangs_is_ended_at_its_limit() {
        let log = std::env::temp_dir().join(format!("self-check-run-{}.log", std::process::id()));
        let begun = Instant::now();
        let limit = Some(Duration::from_millis(200));
        let error = logged("The nap", Command::new("sleep").arg("30"), &log, limit).unwrap_err();
        std::fs::remove_file(log).unwrap();
        assert!(error.to_string().contains("had no result"), "{error}");
        assert!(begun.elapsed() < Duration::from_secs(10));
    }

    #[test]
    fn end_of_a_log_is_its_last_lines() {
        assert_eq!(last_lines("a\nb\nc", 2), ["b", "c"]);
        assert_eq!(last_lines("a", 2), ["a"]);
    }
}
