//! Keys and doors kept: as a file, on the device, and not at all any more.

mod device;
mod emptying;
mod files;
mod safety;
mod tabs;

use self_check_tests::{Page, Result};

use crate::walking::choose_by_id;

const PAGE: &str = "#/keys";
/// What the switch says.
const SWITCH: &str = "Keep every change on this device";
pub const IS_OFF: &str = "Nothing is kept on this device.";
const IS_KEPT: &str = "Your doors, keys and people are kept on this device.";

/// What an empty board holds.
const NOTHING: &str = "";

/// The line that says how much is on the board; [`NOTHING`] where there is no board yet.
async fn holds(page: &Page) -> Result<String> {
    let text = page
        .run("return document.querySelector('.keys-head .note')?.textContent.trim() ?? '';")
        .await?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

async fn wait_to_hold(page: &Page, wanted: &str) -> Result<()> {
    page.wait_until(&format!("the page holds {wanted:?}"), async || {
        Ok(holds(page).await? == wanted)
    })
    .await
}

/// Waits until the page holds something else than before; gives what.
async fn wait_for_other_than(page: &Page, before: &str) -> Result<String> {
    page.wait_until("the page holds something else", async || {
        Ok(holds(page).await? != before)
    })
    .await?;
    holds(page).await
}

/// Puts an ordinary home of one door on the empty board; gives what it then holds.
pub async fn put_a_home(page: &Page) -> Result<String> {
    page.click("button", "Put it on the board").await?;
    wait_for_other_than(page, NOTHING).await
}

/// The page with an ordinary home on it, of which nothing is kept; gives what it then holds.
async fn with_a_home(page: &Page) -> Result<String> {
    page.open_at(PAGE).await?;
    page.wait_for_text(IS_OFF).await?;
    put_a_home(page).await
}

/// Adds a shed and gives what the page then holds.
async fn with_a_shed_more(page: &Page) -> Result<String> {
    let before = holds(page).await?;
    page.click("button", "Add a door").await?;
    page.wait_for_text("What kind of door?").await?;
    choose_by_id(page, "door-kind", "shed").await?;
    page.click("button", "Save").await?;
    wait_for_other_than(page, &before).await
}

async fn keep_it(page: &Page) -> Result<()> {
    page.click("switch", SWITCH).await?;
    page.wait_for_text(IS_KEPT).await
}
