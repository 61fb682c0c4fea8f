//! The edition in one file, opened from disk.

use self_check_tests::{Look, Result, journey_at, one_file};

use crate::walking::{arrive, to_the_examples_result};

#[test]
fn one_file_has_everything_and_asks_for_nothing() -> Result<()> {
    let site = format!("file://{}", one_file()?.display());
    journey_at(&site, Look::PHONE, async |page| {
        page.set_offline(true).await?;
        to_the_examples_result(page).await?;
        page.must_be_accessible().await?;
        page.click("link", "Sharpen the number").await?;
        arrive(page, "Count along the key").await?;
        page.click("link", "Learn").await?;
        arrive(page, "Learn").await?;
        page.click("link", "Who could read it from where").await?;
        arrive(page, "Who could read it from where").await?;
        page.click("link", "How to check this page").await?;
        arrive(page, "How to check this page").await?;
        page.wait_for_text("This is the page as one file").await?;
        page.wait_for_text("cannot be kept here").await?;
        let build = site.trim_end_matches(".html").rsplit('-').next();
        page.wait_for_text(&format!(
            "This page is build {}.",
            build.unwrap_or_default()
        ))
        .await?;
        let text = page.visible_text().await?;
        assert!(
            !text.contains("second part"),
            "there is nothing to fetch: {text}"
        );
        page.must_be_accessible().await?;
        page.back().await?;
        arrive(page, "Who could read it from where").await?;
        let record = page.record().await?;
        let asked: Vec<&str> = record
            .while_loading
            .iter()
            .chain(&record.after_ready)
            .map(|request| &*request.url)
            .collect();
        assert_eq!(asked, [site.as_str()], "only the file itself was read");
        Ok(())
    })
}

/// Other files opened by the same browser could read it.
#[test]
fn one_file_keeps_no_keys_and_doors() -> Result<()> {
    let site = format!("file://{}", one_file()?.display());
    journey_at(&site, Look::PHONE, async |page| {
        page.open_at("#/keys").await?;
        page.click("button", "Put it on the board").await?;
        page.wait_for_text("A page opened from a file keeps nothing here")
            .await?;
        assert_eq!(page.names("switch").await?, Vec::<String>::new());
        page.must_be_accessible().await
    })
}

#[test]
fn one_file_can_send_nothing() -> Result<()> {
    let site = format!("file://{}", one_file()?.display());
    self_check_tests::troubled_journey_at(&site, Look::DESKTOP, async |page| {
        page.open().await?;
        let outcome = page
            .run("return fetch('http://127.0.0.1:9/').then(() => 'reached', () => 'stopped');")
            .await?;
        assert_eq!(outcome, "stopped");
        page.wait_until("the policy is named as the reason", async || {
            let record = page.record().await?;
            let mut lines = record.console.iter();
            Ok(lines.any(|line| line.contains("connect-src 'none'")))
        })
        .await
    })
}

#[test]
fn leave_now_works_in_the_one_file() -> Result<()> {
    let site = format!("file://{}", one_file()?.display());
    journey_at(&site, Look::PHONE, async |page| {
        to_the_examples_result(page).await?;
        page.click("button", "Leave now").await?;
        page.wait_until("an empty page is there", async || {
            Ok(page.run("return location.href;").await? == "about:blank")
        })
        .await
    })
}
