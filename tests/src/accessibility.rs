//! The accessibility checker axe-core, run in the page as it stands.

use std::fmt::{self, Display, Formatter};

use serde_json::Value;

use crate::{Page, Result};

/// A rule of the checker that the page breaks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The rule, for example `color-contrast`.
    pub rule: String,
    /// What the rule asks for.
    pub help: String,
    /// The elements that break it, as selectors, each with the checker's reason.
    pub places: Vec<String>,
}

impl Display for Fault {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.rule, self.help)?;
        self.places
            .iter()
            .try_for_each(|place| write!(f, "\n    {place}"))
    }
}

const RUN: &str = r#"
    const done = arguments[0];
    axe.run(document, { resultTypes: ["violations"] }).then(
        (results) => done({ violations: results.violations.map((v) => ({
            rule: v.id, help: v.help,
            places: v.nodes.map((n) => n.target.join(" ") + " (" + n.failureSummary + ")"),
        })), passes: results.passes.length }),
        (error) => done({ error: String(error) }));
"#;

impl Page {
    /// Every rule the page breaks, in the look it has now.
    pub async fn accessibility_faults(&self) -> Result<Vec<Fault>> {
        let path = std::env::var("SELF_CHECK_AXE").map_err(
            |_| "SELF_CHECK_AXE is not set: run the journeys by `cargo xtask test journeys`",
        )?;
        self.run(&std::fs::read_to_string(path)?).await?;
        let answer = self.driver.execute_async(RUN, Vec::new()).await?;
        let answer = answer.json();
        if answer["passes"].as_u64().unwrap_or(0) == 0 {
            return Err(format!("the accessibility checker looked at nothing: {answer}").into());
        }
        let faults = answer["violations"].as_array().into_iter().flatten();
        Ok(faults.map(read).collect())
    }

    /// Fails if the page breaks any rule.
    pub async fn must_be_accessible(&self) -> Result<()> {
        let faults = self.accessibility_faults().await?;
        if faults.is_empty() {
            return Ok(());
        }
        let list: Vec<String> = faults.iter().map(Fault::to_string).collect();
        Err(format!("{:?}: {}", *self.look.borrow(), list.join("\n")).into())
    }
}

fn read(fault: &Value) -> Fault {
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    Fault {
        rule: text(&fault["rule"]),
        help: text(&fault["help"]),
        places: fault["places"]
            .as_array()
            .into_iter()
            .flatten()
            .map(text)
            .collect(),
    }
}
