//! What stands around the check: the way past the frame, the way out, addresses, and taking the
//! result along.

use self_check_tests::{Look, Result, journey};

use crate::walking::{answer, arrive, heading, not_sure_to_the_end, tick, to_the_examples_result};

const FIRST: &str = "What brings you here?";
const START: &str = "How private is your key?";

#[test]
fn skip_link_is_first_and_moves_focus_past_the_frame() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.press("Tab").await?;
        assert_eq!(page.focused().await?.name, "Skip to the page");
        page.press("Enter").await?;
        assert_eq!(page.focused_id().await?, "main");
        page.press("Tab").await?;
        assert_eq!(page.focused().await?.name, "Check a key");
        assert_eq!(page.run("return location.hash;").await?, "#/");
        Ok(())
    })
}

#[test]
fn leave_now_is_the_third_stop_of_every_page_and_works_by_keyboard() -> Result<()> {
    journey(Look::PHONE, async |page| {
        for fragment in [
            "",
            "#/learn",
            "#/learn/1",
            "#/about",
            "#/distance",
            "#/ruler",
            "#/check/0",
        ] {
            page.open_at(fragment).await?;
            for _ in 0..3 {
                page.press("Tab").await?;
            }
            assert_eq!(page.focused().await?.name, "Leave now", "at {fragment:?}");
        }
        page.press("Enter").await?;
        page.wait_until("an empty page is there", async || {
            Ok(page.run("return location.href;").await? == "about:blank")
        })
        .await
    })
}

#[test]
fn leave_now_stays_in_reach_at_the_end_of_a_long_page() -> Result<()> {
    journey(Look::PHONE, async |page| {
        to_the_examples_result(page).await?;
        page.run("scrollTo(0, document.body.scrollHeight);").await?;
        let in_reach = page
            .run(
                "const box = document.querySelector('.leave').getBoundingClientRect();
                 return scrollY > innerHeight && box.top >= 0 && box.bottom <= innerHeight;",
            )
            .await?;
        assert_eq!(in_reach, true);
        Ok(())
    })
}

#[test]
fn fragment_that_is_no_address_leads_to_the_start() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/learn").await?;
        arrive(page, "Learn").await?;
        page.run("location.hash = 'main';").await?;
        arrive(page, START).await?;
        page.open_at("#main").await?;
        arrive(page, START).await?;
        assert_eq!(page.state().await?, "ready", "the program has not stopped");
        Ok(())
    })
}

#[test]
fn address_beyond_the_answers_leads_to_the_first_open_question() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        answer(page, &["I want to look at my keys"]).await?;
        arrive(page, "What does the key open?").await?;
        page.run("location.hash = '#/check/12';").await?;
        page.wait_until("the address is the open question's", async || {
            Ok(page.run("return location.hash;").await? == "#/check/1")
        })
        .await?;
        assert_eq!(heading(page).await?, "What does the key open?");
        Ok(())
    })
}

#[test]
fn ticks_not_yet_confirmed_outlast_back_and_forward() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        answer(page, &["I want to look at my keys"]).await?;
        arrive(page, "What does the key open?").await?;
        tick(page, "A mailbox").await?;
        tick(page, "A garage, shed or gate").await?;
        page.back().await?;
        arrive(page, FIRST).await?;
        page.forward().await?;
        arrive(page, "What does the key open?").await?;
        let ticked = page
            .run("return [...document.querySelectorAll('main .opt:has(:checked) b')].map(b => b.textContent).join('; ');")
            .await?;
        assert_eq!(ticked, "A garage, shed or gate; A mailbox");
        Ok(())
    })
}

#[test]
fn person_who_makes_uneasy_leads_to_safety_before_the_next_question() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Someone had my key").await?;
        arrive(page, "Who has this key, or has had it?").await?;
        answer(page, &["A former partner"]).await?;
        arrive(page, "Your safety comes first").await
    })
}

#[test]
fn forgetting_at_the_result_leads_to_an_empty_start() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "A key is missing").await?;
        not_sure_to_the_end(page).await?;
        page.click("link", "See the result").await?;
        page.click("button", "Forget my answers").await?;
        page.click("button", "No, keep them").await?;
        page.click("button", "Forget my answers").await?;
        page.click("button", "Yes, forget them").await?;
        arrive(page, START).await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("it begins here"), "nothing was lost: {text}");
        assert!(!text.contains("Go on with your check"), "{text}");
        page.click("link", "Check a key").await?;
        arrive(page, FIRST).await?;
        let ticked = page
            .run("return document.querySelectorAll('main input:checked').length;")
            .await?;
        assert_eq!(ticked, 0);
        Ok(())
    })
}

#[test]
fn start_page_leads_back_to_a_check_that_was_begun() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        answer(page, &["I want to look at my keys"]).await?;
        answer(page, &["The door of my house"]).await?;
        page.click("link", "House Key Self-Check").await?;
        arrive(page, START).await?;
        page.click("link", "Go on with your check").await?;
        arrive(page, "Who decides about this lock?").await
    })
}

#[test]
fn check_goes_on_without_a_network() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.set_offline(true).await?;
        page.click("link", "Check a key").await?;
        not_sure_to_the_end(page).await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("Worth finding out").await?;
        page.set_offline(false).await
    })
}

#[test]
fn copied_text_says_the_result_and_the_caution() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let wish =
            serde_json::json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
        page.cdp("Browser.grantPermissions", wish).await?;
        to_the_examples_result(page).await?;
        let headline = heading(page).await?;
        page.wait_for_text("Other programs on this device may keep what you copy")
            .await?;
        page.click("button", "Copy as text").await?;
        page.wait_for_text("Copied.").await?;
        let copied = page.run("return navigator.clipboard.readText();").await?;
        let copied = copied.as_str().unwrap_or_default();
        assert!(copied.contains(&headline), "{copied}");
        assert!(copied.contains("Do this, in this order"), "{copied}");
        assert!(
            copied.contains("a locksmith you have checked come first"),
            "{copied}"
        );
        Ok(())
    })
}

#[test]
fn text_is_there_to_copy_by_hand_where_the_browser_refuses() -> Result<()> {
    journey(Look::PHONE, async |page| {
        to_the_examples_result(page).await?;
        page.run("Object.defineProperty(navigator, 'clipboard', { value: undefined });")
            .await?;
        page.click("button", "Copy as text").await?;
        page.wait_for_text("copy it yourself").await?;
        let text = page
            .run("return document.getElementById('as-text').value;")
            .await?;
        let text = text.as_str().unwrap_or_default();
        assert!(text.contains("Do this, in this order"), "{text}");
        page.must_be_accessible().await
    })
}

#[test]
fn back_from_another_page_brings_no_answer_back() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Someone had my key").await?;
        answer(page, &["Guests of a short let"]).await?;
        // As a link or a bookmark would; the browser may keep this page whole for "Back".
        page.run("location.href = 'index.html';").await?;
        page.wait_until("the other page is there", async || {
            let href = page.run("return location.href;").await?;
            Ok(href
                .as_str()
                .is_some_and(|href| href.ends_with("index.html#/")))
        })
        .await?;
        page.back().await?;
        arrive(page, START).await?;
        let ticked = page
            .run("return document.querySelectorAll('input:checked').length;")
            .await?;
        assert_eq!(ticked, 0);
        // Going there and back loads the page twice, each time whole and nothing beside it.
        page.loaded_on_the_way(2).await
    })
}
