//! The driver program, started afresh for each journey, and the folder its browser lives in.

use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};

use serde_json::{Value, json};

use crate::Result;

/// Flags without which Chromium would talk to the world behind the page's back, or not start at all for root.
const FLAGS: [&str; 10] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--hide-scrollbars",
    // A walk at random goes to hundreds of addresses a second; the browser would leave some out.
    "--disable-ipc-flooding-protection",
];

static COUNT: AtomicU32 = AtomicU32::new(0);

/// A running driver. It and its browser's folder go with the value.
pub struct Driver {
    child: Child,
    profile: PathBuf,
    /// Where it listens.
    pub address: String,
}

impl Driver {
    /// Starts the driver at a port of its own choice. On a busy machine it now and then ends before it is ready; then it
    /// is started again, twice at most.
    pub fn start() -> Result<Self> {
        Self::start_once()
            .or_else(|_| Self::start_once())
            .or_else(|_| Self::start_once())
    }

    fn start_once() -> Result<Self> {
        let number = COUNT.fetch_add(1, Ordering::Relaxed);
        let profile = std::env::temp_dir().join(format!(
            "self-check-browser-{}-{number}",
            std::process::id()
        ));
        std::fs::create_dir_all(&profile)?;
        let program = named("CHROMEDRIVER", "chromedriver");
        let mut child = Command::new(&program)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|error| format!("{program} could not be started: {error}. `cargo xtask test journeys` installs it."))?;
        let output = child.stdout.take();
        let mut driver = Self {
            child,
            profile,
            address: String::new(),
        };
        let output = output.ok_or("the driver's output is not there")?;
        let mut lines = BufReader::new(output).lines();
        let port = lines
            .by_ref()
            .map_while(std::result::Result::ok)
            .find_map(|line| port_in(&line))
            .ok_or("the driver ended before it was ready")?;
        // It goes on talking; a full pipe would stop it.
        std::thread::spawn(move || lines.for_each(drop));
        driver.address = format!("http://127.0.0.1:{port}");
        Ok(driver)
    }

    /// What to ask the driver for: this browser, in an empty folder, with both of its records kept.
    pub fn capabilities(&self) -> Value {
        let mut flags: Vec<String> = FLAGS.iter().map(|flag| (*flag).to_owned()).collect();
        flags.push(format!("--user-data-dir={}", self.profile.display()));
        json!({
            "browserName": "chrome",
            "goog:chromeOptions": { "binary": named("CHROMIUM", "/usr/bin/chromium"), "args": flags },
            "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
        })
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}

fn named(variable: &str, usual: &str) -> String {
    std::env::var(variable).unwrap_or_else(|_| usual.to_owned())
}

/// The number in `ChromeDriver was started successfully on port 43651.`
fn port_in(line: &str) -> Option<u16> {
    let (_, tail) = line.split_once("started successfully on port ")?;
    tail.trim_end_matches('.').parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn port_is_read_from_the_drivers_greeting() {
        assert_eq!(
            port_in("ChromeDriver was started successfully on port 43651."),
            Some(43651)
        );
        assert_eq!(port_in("Starting ChromeDriver 156.0 on port 0"), None);
    }
}
