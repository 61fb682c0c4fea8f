//! Whether the page as it stands can be used by everybody: the checker axe-core, what a screen reader is told, and the
//! size of what is to be pressed.

use std::fmt::{self, Display, Formatter};

use serde_json::{Value, json};

use crate::{Page, Result};

/// A rule of the checker that the page breaks.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Fault {
    /// The rule, for example `color-contrast`.
    rule: String,
    /// What the rule asks for.
    help: String,
    /// The elements that break it, as selectors, each with the checker's reason.
    places: Vec<String>,
}

impl Display for Fault {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.rule, self.help)?;
        self.places
            .iter()
            .try_for_each(|place| write!(f, "\n    {place}"))
    }
}

/// Runs all rules, or the named ones alone.
const RUN: &str = r#"
    const [rules, done] = arguments;
    const only = rules.length > 0 ? { runOnly: rules } : {};
    axe.run(document, { resultTypes: ["violations"], ...only }).then(
        (results) => done({ violations: results.violations.map((v) => ({
            rule: v.id, help: v.help,
            places: v.nodes.map((n) => n.target.join(" ") + " (" + n.failureSummary + ")"),
        })), passes: results.passes.length }),
        (error) => done({ error: String(error) }));
"#;

impl Page {
    /// Every rule the page breaks, in the look it has now, of all rules or of the named ones.
    async fn accessibility_faults(&self, rules: &[&str]) -> Result<Vec<Fault>> {
        // The checker is long: it is sent once to each document.
        if self.run("return typeof axe;").await? != "object" {
            let path = std::env::var("SELF_CHECK_AXE").map_err(
                |_| "SELF_CHECK_AXE is not set: run the journeys by `cargo xtask test journeys`",
            )?;
            self.run(&std::fs::read_to_string(path)?).await?;
        }
        let answer = self.driver.execute_async(RUN, vec![json!(rules)]).await?;
        let answer = answer.json();
        if answer["passes"].as_u64().unwrap_or(0) == 0 {
            return Err(format!("the accessibility checker looked at nothing: {answer}").into());
        }
        let faults = answer["violations"].as_array().into_iter().flatten();
        Ok(faults.map(read).collect())
    }

    /// Fails if the page breaks a rule of the checker, if it is not told well, or if a target is too small.
    pub async fn must_be_accessible(&self) -> Result<()> {
        let mut faults = self.faults_of_the_checker(&[]).await?;
        faults.extend(self.faults_in_what_is_told().await?);
        let small = self.small_targets().await?;
        faults.extend(
            small
                .into_iter()
                .map(|target| format!("too small: {target}")),
        );
        self.none_of(&faults).await
    }

    /// Fails if a text has too little contrast: all that can differ between light and dark.
    pub async fn must_have_contrast(&self) -> Result<()> {
        let faults = self.faults_of_the_checker(&["color-contrast"]).await?;
        self.none_of(&faults).await
    }

    async fn faults_of_the_checker(&self, rules: &[&str]) -> Result<Vec<String>> {
        let faults = self.accessibility_faults(rules).await?;
        Ok(faults.iter().map(Fault::to_string).collect())
    }

    async fn none_of(&self, faults: &[String]) -> Result<()> {
        if faults.is_empty() {
            return Ok(());
        }
        let look = *self.look.borrow();
        let heading = self.text_of("document.querySelector('h1')?.textContent ?? ''");
        Err(format!("“{}” at {look:?}: {}", heading.await?, faults.join("\n")).into())
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
