//! What is said to the person at the terminal: steps by name, and troubles in pairs (what happened, what to do).

use std::fmt::{self, Display, Formatter};
use std::io::{IsTerminal, Write};
use std::time::Duration;

/// Names a step that is about to begin.
pub fn step(name: &str) {
    println!("\n== {name}");
    flush();
}

/// One line within a step.
pub fn note(line: impl Display) {
    println!("   {line}");
    flush();
}

/// A sign of life while a long step prints nothing itself.
pub fn still_busy(what: &str, since: Duration) {
    // On a terminal the cursor may stand at the end of cargo's progress bar.
    let start = if std::io::stderr().is_terminal() {
        "\r\x1b[K"
    } else {
        ""
    };
    eprintln!("{start}   ... still busy: {what} ({})", seconds(since));
}

/// A duration as people read it: `8.4 s`, `2 min 05 s`.
pub fn seconds(time: Duration) -> String {
    let whole = time.as_secs();
    if whole < 60 {
        format!("{:.1} s", time.as_secs_f64())
    } else {
        format!("{} min {:02} s", whole / 60, whole % 60)
    }
}

/// A trouble of which both halves are known.
#[derive(Debug)]
struct Trouble {
    happened: String,
    do_this: String,
}

impl Display for Trouble {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        write!(f, "{}\n  What to do: {}", self.happened, self.do_this)
    }
}

impl std::error::Error for Trouble {}

/// An error that says what happened and what to do.
pub fn advice(happened: impl Into<String>, do_this: impl Into<String>) -> anyhow::Error {
    Trouble {
        happened: happened.into(),
        do_this: do_this.into(),
    }
    .into()
}

/// The same error with one more thing that may be done about it.
pub fn or_else(error: anyhow::Error, do_this: &str) -> anyhow::Error {
    match error.downcast::<Trouble>() {
        Ok(Trouble {
            happened,
            do_this: first,
        }) => advice(happened, format!("{first}\n  Or: {do_this}")),
        Err(error) => advice(format!("{error:#}"), do_this),
    }
}

/// Prints an error with what led to it.
pub fn trouble(error: &anyhow::Error) {
    flush();
    eprintln!("\nStopped: {error}");
    for cause in error.chain().skip(1) {
        eprintln!("  because: {cause}");
    }
}

fn flush() {
    // A closed pipe (`cargo xtask test | head`) is not this program's trouble.
    let _ = std::io::stdout().flush();
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_is_told_in_seconds_then_in_minutes() {
        assert_eq!(seconds(Duration::from_millis(8_449)), "8.4 s");
        assert_eq!(seconds(Duration::from_secs(125)), "2 min 05 s");
    }

    #[test]
    fn trouble_tells_both_halves() {
        let text = advice("Port 80 is taken.", "choose another.").to_string();
        assert_eq!(text, "Port 80 is taken.\n  What to do: choose another.");
    }

    #[test]
    fn second_advice_follows_the_first() {
        let error = or_else(advice("No browser.", "get one."), "name one.");
        assert_eq!(
            error.to_string(),
            "No browser.\n  What to do: get one.\n  Or: name one."
        );
        let error = or_else(anyhow::anyhow!("apt-get failed."), "name one.");
        assert_eq!(
            error.to_string(),
            "apt-get failed.\n  What to do: name one."
        );
    }
}
