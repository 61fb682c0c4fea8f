//! The result on paper: at most two pages, with everything a person needs from it.

use std::process::Command;

use self_check_tests::{Look, Page, Result, journey};

use crate::walking::{LOOK_OVER, answer, heading, to_the_examples_result};

/// Pages and text of a printed document, read back by an independent program, in the order in which it was written.
pub fn read_back(document: &[u8], name: &str) -> Result<(usize, String)> {
    let file = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&file, document)?;
    let output = Command::new("pdftotext")
        .arg("-raw")
        .arg(&file)
        .arg("-")
        .output()?;
    let text = String::from_utf8(output.stdout)?;
    // The program ends each page by a form feed.
    Ok((text.matches('\u{c}').count(), words(&text)))
}

/// Words without regard to how lines are broken.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Every line of the list of what to do, as its number, urgency and name stand on paper.
async fn actions(page: &Page) -> Result<Vec<String>> {
    let lines = page
        .run(
            "return [...document.querySelectorAll('.todo > li')].map((item, index) =>
                 [index + 1, item.querySelector('.when').textContent, item.querySelector('h3').textContent].join(' '));",
        )
        .await?;
    let lines: Vec<String> = serde_json::from_value(lines)?;
    Ok(lines.iter().map(|line| words(line)).collect())
}

/// Prints the result and reads it back; returns how many things there are to do.
async fn has_all_on_two_pages(page: &Page, name: &str) -> Result<usize> {
    let headline = words(&heading(page).await?);
    let (pages, text) = read_back(&page.print().await?, name)?;
    assert!((1..=2).contains(&pages), "{pages} pages: {text}");
    assert!(text.contains(&headline), "{headline}: {text}");
    let actions = actions(page).await?;
    for action in &actions {
        assert!(text.contains(action), "{action:?} is not on paper: {text}");
    }
    for only_on_screen in [
        "Leave now",
        "Copy as text",
        "What if, from today",
        "Forget my",
    ] {
        assert!(
            !text.contains(only_on_screen),
            "{only_on_screen:?} is on paper"
        );
    }
    Ok(actions.len())
}

#[test]
fn result_prints_on_two_pages_with_all_that_is_to_do() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        to_the_examples_result(page).await?;
        let actions = has_all_on_two_pages(page, "example.pdf").await?;
        assert!(actions >= 4, "{actions}");
        Ok(())
    })
}

#[test]
fn longest_list_prints_on_two_pages_too() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        answer(page, &["I want to look at my keys"]).await?;
        while heading(page).await? != LOOK_OVER {
            let troubles = troubles(page).await?;
            let troubles: Vec<&str> = troubles.iter().map(String::as_str).collect();
            answer(page, &troubles).await?;
        }
        page.click("link", "See the result").await?;
        page.wait_for_text("Take it along").await?;
        let actions = has_all_on_two_pages(page, "longest.pdf").await?;
        assert!(actions >= 10, "{actions}");
        Ok(())
    })
}

/// The choices of this question that bring something to do, all together where several can be ticked.
async fn troubles(page: &Page) -> Result<Vec<String>> {
    const ONE_OF_SEVERAL: [&str; 5] = [
        "A private landlord",
        "Yes, but I do not know where each new key is",
        "I never counted them",
        "Cuts along one edge",
        "It is only on the keys to this lock",
    ];
    /// These stand alone, or lead to another kind of result.
    const LEFT_OUT: [&str; 7] = [
        "Nothing",
        "Nowhere",
        "I am not sure",
        "Words that ask not to copy it",
        "A car or other vehicle",
        "A place of work",
        "A former partner",
    ];
    let radios = page.names("radio").await?;
    if !radios.is_empty() {
        let fits = |label: &&str| radios.iter().any(|name| name.starts_with(*label));
        let label = ONE_OF_SEVERAL.into_iter().find(fits);
        let label = label.ok_or(format!("none of {radios:?} is known"))?;
        return Ok(vec![label.to_owned()]);
    }
    let boxes = page.names("checkbox").await?.into_iter();
    Ok(boxes
        .filter(|name| !LEFT_OUT.iter().any(|label| name.starts_with(label)))
        .collect())
}
