//! The result on paper: at most two pages, with everything a person needs from it.

use std::path::Path;
use std::process::Command;

use self_check_tests::{Look, Result, journey};

use crate::walking::{arrive, heading};

/// Pages and text of a printed document, read back by an independent program.
fn read_back(document: &[u8]) -> Result<(usize, String)> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let file = folder.join("result.pdf");
    std::fs::write(&file, document)?;
    let output = Command::new("pdftotext")
        .arg("-layout")
        .arg(&file)
        .arg("-")
        .output()?;
    let text = String::from_utf8(output.stdout)?;
    // The program ends each page by a form feed.
    Ok((text.matches('\u{c}').count(), text))
}

/// Words without regard to how lines are broken.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn result_prints_on_two_pages_with_all_that_is_to_do() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Try it with an example").await?;
        arrive(page, "Look over your answers").await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("Do this").await?;
        let headline = heading(page).await?;
        let actions = page
            .run("return [...document.querySelectorAll('.todo h3')].map(h => h.textContent).join('|');")
            .await?;
        let urgencies = page
            .run("return [...document.querySelectorAll('.todo .when')].map(w => w.textContent.trim()).join('|');")
            .await?;
        let (pages, text) = read_back(&page.print().await?)?;
        let text = words(&text);
        assert!(pages <= 2, "{pages} pages");
        assert!(text.contains(&words(&headline)), "{headline}: {text}");
        let listed = |list: &serde_json::Value| -> Vec<String> {
            list.as_str()
                .unwrap_or_default()
                .split('|')
                .map(words)
                .collect()
        };
        let (actions, urgencies) = (listed(&actions), listed(&urgencies));
        assert!(
            actions.len() >= 4 && actions.len() == urgencies.len(),
            "{actions:?} {urgencies:?}"
        );
        for word in actions.iter().chain(&urgencies) {
            assert!(text.contains(word), "{word:?} is not on paper: {text}");
        }
        for button in ["Leave now", "Print", "What if, from today"] {
            assert!(!text.contains(button), "{button:?} is on paper");
        }
        Ok(())
    })
}
