//! Where safety comes first, and of an invented home, nothing is kept or offered to be kept.

use self_check_tests::{KEPT, Look, Page, Result, journey};

use super::{IS_KEPT, IS_OFF, PAGE, keep_it, put_a_home, wait_to_hold, with_a_home};
use crate::forgetting::keeps_nothing;
use crate::walking::{arrive, to_the_safety_result};

/// From the page that is open to keys and doors, by way of a check that tells of a feared person.
async fn by_way_of_the_safety_branch(page: &Page) -> Result<()> {
    to_the_safety_result(page).await?;
    page.click("link", "Keys and doors").await?;
    page.wait_for_text("Your safety comes first").await
}

async fn offers_nothing_to_keep(page: &Page) -> Result<()> {
    let text = page.visible_text().await?;
    for offer in ["Keep", "keep", "Save", "Passphrase", "Open a saved file"] {
        assert!(!text.contains(offer), "{offer}: {text}");
    }
    Ok(())
}

#[test]
fn on_the_safety_branch_nothing_is_kept_saved_or_opened() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open_at(PAGE).await?;
        page.wait_for_text(IS_OFF).await?;
        by_way_of_the_safety_branch(page).await?;
        offers_nothing_to_keep(page).await?;
        put_a_home(page).await?;
        offers_nothing_to_keep(page).await?;
        keeps_nothing(page).await?;
        page.click("button", "Empty everything").await?;
        page.wait_for_text("Emptied.").await?;
        offers_nothing_to_keep(page).await
    })
}

#[test]
fn what_was_kept_before_is_neither_shown_nor_written_over_there_and_emptied_in_one_press()
-> Result<()> {
    journey(Look::DESKTOP, async |page| {
        with_a_home(page).await?;
        keep_it(page).await?;
        page.open().await?;
        by_way_of_the_safety_branch(page).await?;
        page.wait_for_text("Start from a home like yours").await?;
        offers_nothing_to_keep(page).await?;
        assert_ne!(page.run(KEPT).await?, "", "it is still there");
        page.click("button", "Empty everything").await?;
        page.wait_for_text("Emptied.").await?;
        keeps_nothing(page).await
    })
}

#[test]
fn invented_home_is_neither_saved_nor_kept_and_takes_the_place_of_nothing() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let mine = with_a_home(page).await?;
        keep_it(page).await?;
        // Back to the empty board, which is kept as well, and on to the example.
        page.click("button", "Undo").await?;
        arrive(page, "Keys and doors").await?;
        page.wait_for_text(IS_KEPT).await?;
        page.click("button", "Redo").await?;
        wait_to_hold(page, &mine).await?;
        page.wait_for_text(IS_KEPT).await?;
        page.open_at("#/about").await?;
        page.open_at(PAGE).await?;
        wait_to_hold(page, &mine).await?;

        page.click("button", "Empty everything").await?;
        page.wait_for_text("Emptied.").await?;
        page.click("button", "Try it with an example").await?;
        page.wait_for_text("This home is invented").await?;
        let buttons = page.names("button").await?;
        assert!(
            !buttons.iter().any(|name| name.starts_with("Save")),
            "{buttons:?}"
        );
        assert!(page.names("switch").await?.is_empty());
        keeps_nothing(page).await
    })
}
