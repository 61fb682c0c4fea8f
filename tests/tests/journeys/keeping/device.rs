//! "Keep on this device", and what it does where the browser will not.

use self_check_tests::{Look, Page, Result, journey};

use super::{
    IS_KEPT, IS_OFF, NOTHING, PAGE, SWITCH, holds, keep_it, put_a_home, wait_to_hold, with_a_home,
    with_a_shed_more,
};
use crate::forgetting::keeps_nothing;
use crate::walking::arrive;

#[test]
fn nothing_is_kept_unless_asked_for() -> Result<()> {
    journey(Look::PHONE, async |page| {
        with_a_home(page).await?;
        with_a_shed_more(page).await?;
        keeps_nothing(page).await?;
        page.reload().await?;
        wait_to_hold(page, NOTHING).await?;
        keeps_nothing(page).await
    })
}

#[test]
fn what_is_kept_outlasts_a_reload_until_it_is_turned_off() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        with_a_home(page).await?;
        keep_it(page).await?;
        let more = with_a_shed_more(page).await?;
        page.wait_for_text(IS_KEPT).await?;
        page.reload().await?;
        wait_to_hold(page, &more).await?;
        page.wait_for_text(IS_KEPT).await?;
        page.click("switch", SWITCH).await?;
        page.wait_for_text(IS_OFF).await?;
        assert_eq!(holds(page).await?, more, "the page itself is left alone");
        page.wait_until("the database is gone", async || {
            Ok(page.run(self_check_tests::KEPT).await? == "")
        })
        .await?;
        page.reload().await?;
        wait_to_hold(page, NOTHING).await?;
        page.wait_for_text(IS_OFF).await
    })
}

/// Makes what the browser offers for keeping fail in one way.
async fn break_storage(page: &Page, script: &str) -> Result<()> {
    page.run(script).await?;
    Ok(())
}

#[test]
fn storage_that_is_denied_is_told_and_nothing_is_lost() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        for script in [
            "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };",
            "Object.defineProperty(window, 'indexedDB', { value: undefined });",
        ] {
            let home = with_a_home(page).await?;
            break_storage(page, script).await?;
            page.click("switch", SWITCH).await?;
            page.wait_for_text("does not let the page keep anything")
                .await?;
            assert_eq!(holds(page).await?, home);
            let more = with_a_shed_more(page).await?;
            page.wait_for_text("does not let the page keep anything")
                .await?;
            page.click("button", "Try again").await?;
            page.wait_for_text("does not let the page keep anything")
                .await?;
            assert_eq!(holds(page).await?, more);
            page.must_be_accessible().await?;
            // From another page too the warning's link leads to the panel.
            for from in [None, Some("What it costs")] {
                if let Some(from) = from {
                    page.click("link", from).await?;
                    arrive(page, from).await?;
                }
                page.click("link", "See “Keep it for later”").await?;
                page.wait_until("the panel has the focus", async || {
                    Ok(page.focused_id().await? == "keep")
                })
                .await?;
            }
        }
        Ok(())
    })
}

#[test]
fn storage_that_is_full_is_told_and_kept_when_there_is_room() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        // The browser asks for its limit anew only while it has found no room yet, so the limit comes first.
        page.open_at(PAGE).await?;
        page.set_storage_limit(Some(1)).await?;
        with_a_home(page).await?;
        page.click("switch", SWITCH).await?;
        page.wait_for_text(NO_ROOM).await?;
        let more = with_a_shed_more(page).await?;
        page.wait_for_text(NO_ROOM).await?;
        assert_eq!(holds(page).await?, more);
        page.set_storage_limit(None).await?;
        page.click("button", "Try again").await?;
        page.wait_for_text(IS_KEPT).await?;
        page.reload().await?;
        wait_to_hold(page, &more).await
    })
}

const NO_ROOM: &str = "There is no room left on this device";

#[test]
fn what_was_kept_stays_when_there_is_no_room_for_more() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let home = with_a_home(page).await?;
        keep_it(page).await?;
        let full = "IDBObjectStore.prototype.put = () => { throw new DOMException('no', 'QuotaExceededError'); };";
        break_storage(page, full).await?;
        let more = with_a_shed_more(page).await?;
        page.wait_for_text(NO_ROOM).await?;
        assert_eq!(holds(page).await?, more);
        page.reload().await?;
        wait_to_hold(page, &home).await?;
        page.wait_for_text(IS_KEPT).await
    })
}

/// Writes `value` where the page keeps its record, as an older or broken program might.
async fn keep_by_hand(page: &Page, version: u32, value: &str) -> Result<()> {
    let script = format!(
        "const done = await new Promise((resolve, reject) => {{
            const request = indexedDB.open('self-check', {version});
            request.onerror = () => reject(request.error);
            request.onupgradeneeded = () => {{
                if (!request.result.objectStoreNames.contains('records')) request.result.createObjectStore('records');
            }};
            request.onsuccess = () => {{
                const change = request.result.transaction('records', 'readwrite');
                change.objectStore('records').put({value}, '1');
                change.oncomplete = () => {{ request.result.close(); resolve(true); }};
            }};
        }}); return done;"
    );
    assert_eq!(page.run(&script).await?, true);
    Ok(())
}

/// The text of the record as it is kept.
async fn kept_text(page: &Page) -> Result<String> {
    let text = page
        .run(
            "return await new Promise((resolve) => {
                const request = indexedDB.open('self-check');
                request.onsuccess = () => {
                    const read = request.result.transaction('records').objectStore('records').get('1');
                    read.onsuccess = () => { request.result.close(); resolve(JSON.stringify(read.result?.text ?? read.result)); };
                };
            });",
        )
        .await?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

#[test]
fn kept_record_that_cannot_be_read_stays_until_the_person_chooses() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let cases = [
            (
                "{ mark: 0.5, text: '{\"version\":1,' }",
                1,
                "It ends too early",
                true,
            ),
            (
                "{ mark: 0.5, text: '{\"version\":7,\"record\":\"keys-and-doors\"}' }",
                1,
                "another version of this page",
                true,
            ),
            ("{ rooms: 3 }", 1, "that this page did not write", false),
            (
                "{ mark: 0.5, text: 'x' }",
                2,
                "by a later version of this page",
                false,
            ),
        ];
        for (value, version, told, can_be_replaced) in cases {
            page.open_at("#/about").await?;
            page.run("await new Promise(done => { const r = indexedDB.deleteDatabase('self-check'); r.onsuccess = done; });")
                .await?;
            keep_by_hand(page, version, value).await?;
            let before = kept_text(page).await?;
            page.open_at(PAGE).await?;
            page.wait_for_text(told).await?;
            page.must_be_accessible().await?;
            put_a_home(page).await?;
            let held = with_a_shed_more(page).await?;
            assert_eq!(kept_text(page).await?, before, "{told}: not written over");
            page.click("button", "Leave both as they are").await?;
            page.wait_for_text("What is kept stays as it is").await?;
            with_a_shed_more(page).await?;
            assert_eq!(kept_text(page).await?, before, "{told}: left as it is");
            if can_be_replaced {
                page.click("switch", SWITCH).await?;
                page.click("button", "Keep what is on this page instead")
                    .await?;
                page.wait_for_text(IS_KEPT).await?;
                let now = holds(page).await?;
                assert_ne!(now, held);
                page.reload().await?;
                wait_to_hold(page, &now).await?;
            }
        }
        Ok(())
    })
}
