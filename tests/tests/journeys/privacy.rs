//! What the page asks for, and what it never does.

use self_check_tests::{Look, Result, journey};

/// Everything the page needs comes at once: itself, its style, three files of the program, and its icon at most.
const MOST_FILES: usize = 6;

#[test]
fn page_starts_and_keeps_to_itself() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        assert_eq!(page.state().await?, "ready");
        let headings = page.names("heading").await?;
        assert!(!headings.is_empty(), "the program shows a heading");
        let record = page.record().await?;
        let requests = &record.while_loading;
        assert!(
            requests
                .iter()
                .any(|request| request.url.ends_with(".wasm")),
            "the record sees the program's own request, so it would see others: {requests:?}"
        );
        // The browser may ask for the icon once for the tab and once for itself.
        let mut files: Vec<&str> = requests.iter().map(|request| &*request.url).collect();
        files.sort_unstable();
        files.dedup();
        assert!(files.len() <= MOST_FILES, "{requests:?}");
        Ok(())
    })
}

#[test]
fn record_sees_a_request_and_a_broken_policy() -> Result<()> {
    // The other journeys rest on an empty record. Here something is made to happen, so that an empty one means something.
    self_check_tests::troubled_journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.run("fetch('late.txt');").await?;
        page.run("document.body.setAttribute('style', 'color: red');")
            .await?;
        page.run("new Image().src = 'late.png';").await?;
        page.wait_until("the requests are recorded", async || {
            Ok(page.record().await?.after_ready.len() >= 2)
        })
        .await?;
        page.wait_until("the broken policy is in the console", async || {
            let record = page.record().await?;
            Ok(record
                .console
                .iter()
                .any(|line| line.contains("Content Security Policy")))
        })
        .await?;
        let complaints = page.record().await?.complaints(&page.site);
        assert!(complaints.len() >= 3, "{complaints:?}");
        Ok(())
    })
}

#[test]
fn policy_stops_a_request_to_another_origin() -> Result<()> {
    self_check_tests::troubled_journey(Look::DESKTOP, async |page| {
        page.open().await?;
        let outcome = page
            .run("return fetch('http://127.0.0.1:9/').then(() => 'reached', () => 'stopped');")
            .await?;
        assert_eq!(outcome, "stopped");
        page.wait_until("the policy is named as the reason", async || {
            let record = page.record().await?;
            Ok(record
                .console
                .iter()
                .any(|line| line.contains("connect-src")))
        })
        .await
    })
}
