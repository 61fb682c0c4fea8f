//! Nothing is left: by "Empty everything", with the browser's own word for it, and by "Leave now".

use self_check_tests::{KEPT, Look, Page, Result, journey, troubled_journey};

use super::{IS_KEPT, IS_OFF, NOTHING, PAGE, holds, keep_it, wait_to_hold, with_a_home};
use crate::forgetting::keeps_nothing;

/// The rows of what is left, as they are shown.
async fn rows(page: &Page) -> Result<String> {
    let rows = page
        .run(
            "return [...document.querySelectorAll('.keep-proof dt')]
                 .map(name => name.textContent + ': ' + name.nextElementSibling.textContent).join('; ');",
        )
        .await?;
    Ok(rows.as_str().unwrap_or_default().to_owned())
}

const NOTHING_LEFT: &str = "Doors and keys: none; Databases: none; Other entries: none; Cookies: none; \
    Stored parts of the page itself: none";

#[test]
fn empty_everything_leaves_nothing_and_shows_what_the_browser_says() -> Result<()> {
    journey(Look::PHONE, async |page| {
        with_a_home(page).await?;
        keep_it(page).await?;
        assert_ne!(page.run(KEPT).await?, "", "something is kept");
        page.click("button", "Empty everything").await?;
        page.wait_for_text("Emptied.").await?;
        assert_eq!(holds(page).await?, NOTHING);
        let top = page
            .run("return document.querySelector('.keep-proof').getBoundingClientRect().top;")
            .await?;
        assert!(
            top.as_f64().is_some_and(|top| (0.0..800.0).contains(&top)),
            "the proof is seen at once: {top}"
        );
        assert_eq!(rows(page).await?, NOTHING_LEFT);
        keeps_nothing(page).await?;
        page.reload().await?;
        wait_to_hold(page, NOTHING).await?;
        page.wait_for_text(IS_OFF).await
    })
}

#[test]
fn what_is_left_is_read_and_not_taken_for_granted() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        with_a_home(page).await?;
        keep_it(page).await?;
        page.run(
            "localStorage.setItem('other', '1'); document.cookie = 'other=1';
             IDBFactory.prototype.deleteDatabase = () => { throw new DOMException('no', 'SecurityError'); };",
        )
        .await?;
        page.click("button", "Empty everything").await?;
        page.wait_for_text("the browser did not take away what was kept")
            .await?;
        let rows = rows(page).await?;
        assert_eq!(
            rows,
            "Doors and keys: still there; Databases: 1; Other entries: 1; Cookies: 1; \
             Stored parts of the page itself: none"
        );
        page.must_be_accessible().await
    })
}

async fn leave_by(page: &Page, role: &str) -> Result<()> {
    page.click(role, "Leave now").await?;
    page.wait_until("an empty page is there", async || {
        Ok(page.run("return location.href;").await? == "about:blank")
    })
    .await
}

#[test]
fn leave_now_takes_away_what_is_kept() -> Result<()> {
    journey(Look::PHONE, async |page| {
        with_a_home(page).await?;
        keep_it(page).await?;
        leave_by(page, "button").await?;
        page.open_at("#/about").await?;
        keeps_nothing(page).await?;
        page.open_at(PAGE).await?;
        page.wait_for_text(IS_OFF).await
    })
}

#[test]
fn leave_now_takes_away_what_is_kept_where_the_second_program_was_never_fetched() -> Result<()> {
    journey(Look::PHONE, async |page| {
        let home = with_a_home(page).await?;
        keep_it(page).await?;
        page.open().await?;
        assert_eq!(page.rooms_state().await?, "", "it has not been fetched");
        assert_ne!(page.run(KEPT).await?, "", "something is kept");
        leave_by(page, "button").await?;
        page.open_at("#/about").await?;
        keeps_nothing(page).await?;
        page.open_at(PAGE).await?;
        page.wait_for_text(IS_OFF).await?;
        assert_ne!(holds(page).await?, home);
        Ok(())
    })
}

#[test]
fn leave_now_on_the_list_takes_away_what_is_kept() -> Result<()> {
    troubled_journey(Look::PHONE, async |page| {
        with_a_home(page).await?;
        keep_it(page).await?;
        page.block(&["*/check-*.wasm"]).await?;
        page.open().await?;
        assert_eq!(page.state().await?, "failed");
        assert_ne!(page.run(KEPT).await?, "", "something is kept");
        leave_by(page, "link").await?;
        page.block(&[]).await?;
        page.open_at("#/about").await?;
        keeps_nothing(page).await
    })
}

#[test]
fn leaving_tells_another_tab_and_takes_nothing_from_it() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let home = with_a_home(page).await?;
        keep_it(page).await?;
        let first = page.tab().await?;
        page.open_tab().await?;
        page.open_at("#/about").await?;
        leave_by(page, "button").await?;
        page.go_to_tab(&first).await?;
        page.wait_for_text("was taken away, in another tab").await?;
        assert_eq!(holds(page).await?, home);
        keeps_nothing(page).await?;
        keep_it(page).await?;
        page.wait_for_text(IS_KEPT).await
    })
}
