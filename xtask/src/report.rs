//! What came of the checks: counts read from the test runners' own lines, and the closing line.

use std::time::Duration;

use crate::say;

/// Passed, failed and skipped checks.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Counts {
    /// Checks that passed.
    pub passed: u32,
    /// Checks that failed.
    pub failed: u32,
    /// Checks that a runner skipped.
    pub skipped: u32,
}

impl Counts {
    /// Adds what a line says, if it is the closing line of a test runner, for example
    /// `test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.31s`.
    pub fn read_line(&mut self, line: &str) {
        let Some((_, tail)) = line.split_once("test result: ") else {
            return;
        };
        let count = |name: &str| -> u32 {
            let part = tail
                .split([';', '.'])
                .find(|part| part.trim_end().ends_with(name));
            part.and_then(|part| part.split_whitespace().next()?.parse().ok())
                .unwrap_or(0)
        };
        self.passed += count(" passed");
        self.failed += count(" failed");
        self.skipped += count(" ignored");
    }

    /// Adds another's counts.
    pub fn add(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
        self.skipped += other.skipped;
    }
}

/// One step and what came of it.
pub struct Outcome {
    /// Its name, as `cargo xtask test NAME` takes it.
    pub name: &'static str,
    /// What it counted.
    pub counts: Counts,
    /// Whether all of it passed.
    pub passed: bool,
    /// How long it took.
    pub time: Duration,
}

impl Outcome {
    /// What a step counts for: its tests, or itself if it runs none or failed before any did. A step that was skipped
    /// counts for nothing else.
    fn counted(&self) -> Counts {
        let mut counts = self.counts;
        if !self.passed && counts.failed == 0 {
            counts.failed = 1;
        } else if counts == Counts::default() {
            counts.passed = 1;
        }
        counts
    }
}

/// Prints the steps with their times, the failed ones by name, and last the closing line. Gives whether all passed.
pub fn close(outcomes: &[Outcome]) -> bool {
    say::step("Summary");
    let mut total = Counts::default();
    for outcome in outcomes {
        let counts = outcome.counted();
        total.add(counts);
        let word = if outcome.passed { "passed" } else { "FAILED" };
        say::note(format!(
            "{word}  {:<10} {:>4} passed, {} failed, {} skipped  {:>12}",
            outcome.name,
            counts.passed,
            counts.failed,
            counts.skipped,
            say::seconds(outcome.time)
        ));
    }
    let failed: Vec<&str> = outcomes
        .iter()
        .filter(|outcome| !outcome.passed)
        .map(|outcome| outcome.name)
        .collect();
    println!();
    if !failed.is_empty() {
        println!("Failed: {}", failed.join(", "));
    }
    println!("{}", closing_line(total));
    failed.is_empty()
}

fn closing_line(total: Counts) -> String {
    let skipped = if total.skipped > 0 {
        format!(", {} skipped", total.skipped)
    } else {
        String::new()
    };
    format!("{} passed, {} failed{skipped}", total.passed, total.failed)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outcome(counts: Counts, passed: bool) -> Outcome {
        Outcome {
            name: "trial",
            counts,
            passed,
            time: Duration::ZERO,
        }
    }

    #[test]
    fn closing_lines_of_runners_are_summed() {
        let mut counts = Counts::default();
        for line in [
            "running 12 tests",
            "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 3 filtered out; finished in 0.31s",
            "test result: FAILED. 4 passed; 2 failed; 0 ignored; 0 filtered out; finished in 0.02s",
        ] {
            counts.read_line(line);
        }
        assert_eq!(
            counts,
            Counts {
                passed: 16,
                failed: 2,
                skipped: 1
            }
        );
    }

    #[test]
    fn step_without_tests_counts_as_one() {
        assert_eq!(outcome(Counts::default(), true).counted().passed, 1);
        assert_eq!(outcome(Counts::default(), false).counted().failed, 1);
    }

    #[test]
    fn step_that_broke_off_counts_its_passed_tests_and_one_failure() {
        let counts = Counts {
            passed: 3,
            ..Counts::default()
        };
        assert_eq!(
            outcome(counts, false).counted(),
            Counts {
                passed: 3,
                failed: 1,
                skipped: 0
            }
        );
    }

    #[test]
    fn closing_line_is_plain() {
        assert_eq!(
            closing_line(Counts {
                passed: 5,
                failed: 1,
                skipped: 0
            }),
            "5 passed, 1 failed"
        );
        assert_eq!(
            closing_line(Counts {
                passed: 5,
                failed: 0,
                skipped: 2
            }),
            "5 passed, 0 failed, 2 skipped"
        );
    }
}
