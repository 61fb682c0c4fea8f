//! Where the focus goes on the board once the press that was used is gone: on to what comes next, never out of
//! the page.

use self_check_tests::{Look, Page, Result, journey};

use crate::losses;
use crate::walking::{answer, arrive, choose_by_id, not_sure_to_the_end};

const CALM: &str = "No key here is known to be in wrong hands";
const CHANGED: &str = "Changed. You can undo it.";

/// Two doors with a key each; two residents and a neighbour.
async fn home(page: &Page) -> Result<()> {
    losses::home(page, "Two doors, a key for each").await
}

/// Waits until the element with this id, or an id that begins so where it ends in a dash, has the focus.
async fn goes_to(page: &Page, id: &str) -> Result<()> {
    page.wait_until(&format!("the focus is on {id:?}"), async || {
        let focused = page.focused_id().await?;
        Ok(focused == id || id.ends_with('-') && focused.starts_with(id))
    })
    .await
}

/// Opens a form and presses "Remove" in it.
async fn remove(page: &Page, opener: &str, name: &str) -> Result<()> {
    page.click("button", opener).await?;
    goes_to(page, "form-title").await?;
    page.click("button", &format!("Remove: {name}")).await?;
    page.wait_for_text(CHANGED).await
}

#[test]
fn what_is_removed_leaves_the_focus_in_its_part_of_the_board() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        home(page).await?;
        remove(page, "Edit key: back door", "The key to back door").await?;
        goes_to(page, "keys").await?;
        remove(page, "Edit key: front door", "The key to front door").await?;
        goes_to(page, "keys").await?;
        remove(page, "Edit person: Neighbour", "Neighbour").await?;
        goes_to(page, "people").await?;
        remove(page, "Edit lock: Back door", "Back door").await?;
        goes_to(page, "change-door-").await?;
        remove(page, "Edit door: Back door", "Back door").await?;
        goes_to(page, "doors").await
    })
}

#[test]
fn what_is_lost_and_turns_up_keeps_the_focus_beside_it() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(page).await?;
        page.click("button", "This ring is lost: Neighbour").await?;
        goes_to(page, "lost-").await?;
        page.click("button", "It has turned up: Neighbour").await?;
        page.wait_until("the focus is on the person", async || {
            let focused = page.focused().await?;
            Ok(focused.role == "heading" && focused.name == "Neighbour")
        })
        .await?;

        // One of two copies is lost alone, then the rest of the ring in another way.
        page.run("document.querySelectorAll('.copies').forEach(d => d.open = true);")
            .await?;
        page.click("button", "This copy is lost: Front door, Neighbour")
            .await?;
        goes_to(page, "copy-lost-").await?;
        let list = page.focused_id().await?;
        choose_by_id(page, &list, "stolen").await?;
        page.click("button", "This ring is lost: Neighbour").await?;
        goes_to(page, "lost-").await?;
        page.click(
            "button",
            "It has turned up: Neighbour: 1 key, for back door",
        )
        .await?;
        page.wait_until("the focus is on what is still lost", async || {
            Ok(page.focused().await?.name == "Neighbour: lost keys")
        })
        .await?;

        // A remote: its presses are others each time.
        page.click("button", "Add another way in: Front door")
            .await?;
        choose_by_id(page, "way-kind", "remote").await?;
        page.click("button", "Save").await?;
        goes_to(page, "add-way-").await?;
        let remote = "Remote, fob or card at front door";
        page.click("button", &format!("One is lost: {remote}"))
            .await?;
        goes_to(page, "way-lost-").await?;
        page.click("button", &format!("The lost one no longer works: {remote}"))
            .await?;
        goes_to(page, "change-way-").await
    })
}

#[test]
fn focus_of_a_lost_remote_goes_to_whose_it_was() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        home(page).await?;
        page.click("button", "Add another way in: Front door")
            .await?;
        choose_by_id(page, "way-kind", "remote").await?;
        page.click("checkbox", "Resident 1").await?;
        page.click("checkbox", "Resident 2").await?;
        page.click("button", "Save").await?;
        goes_to(page, "add-way-").await?;
        let remote = "Remote, fob or card at front door";
        page.click("button", &format!("One is lost: {remote}"))
            .await?;
        goes_to(page, "way-whose-").await?;
        arrive(page, "A remote could be in wrong hands").await?;
        let asked = page.focused().await?.name;
        assert_eq!(asked, format!("Whose was it? ({remote})"));
        page.must_be_accessible().await?;
        page.press("ArrowDown").await?;
        page.wait_for_text("Resident 1: lost remote").await?;
        // The list stays under the hand, so that the keys go on to the next person.
        goes_to(page, "way-whose-").await?;
        page.press("ArrowDown").await?;
        page.wait_for_text("Resident 2: lost remote").await?;
        goes_to(page, "way-whose-").await?;
        page.click("link", "See what to do").await?;
        arrive(page, "What to do").await?;
        page.wait_for_text("Resident 2").await?;
        page.must_be_accessible().await
    })
}

#[test]
fn focus_goes_to_the_parts_of_the_board_and_to_the_sum() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open_at("#/keys").await?;
        page.click("button", "Try it with an example").await?;
        arrive(page, "Two keys could be in wrong hands").await?;
        for (part, id) in [("Doors", "doors"), ("Keys", "keys"), ("People", "people")] {
            page.run(&format!(
                "[...document.querySelectorAll('nav a')].find(a => a.textContent === '{part}').focus();"
            ))
            .await?;
            page.press("Enter").await?;
            goes_to(page, id).await?;
        }
        page.click("button", "This ring is lost: Lodger").await?;
        page.wait_for_text(CHANGED).await?;
        page.click("link", "What it costs").await?;
        arrive(page, "What it costs").await?;
        page.wait_until("what was said on the board is not said again", async || {
            Ok(!page.visible_text().await?.contains(CHANGED))
        })
        .await?;
        page.click("button", "Work out the sum").await?;
        goes_to(page, "total").await?;
        page.wait_for_text("Nothing was changed.").await?;
        let heard = page
            .run(
                "const sum = document.activeElement, at = sum.getBoundingClientRect();
                 return at.top >= 0 && at.bottom <= innerHeight ? sum.textContent : 'out of view';",
            )
            .await?;
        let heard = heard.as_str().unwrap_or_default().to_owned();
        assert!(heard.starts_with("Sum of what is known: "), "{heard}");
        page.must_be_accessible().await
    })
}

#[test]
fn form_outlasts_a_search_and_what_no_longer_fits_it_leaves_the_focus_there() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        home(page).await?;
        page.click("button", "Add a door").await?;
        choose_by_id(page, "door-kind", "store").await?;
        choose_by_id(page, "door-count", "14").await?;
        page.click("button", "Save").await?;
        goes_to(page, "add-door").await?;
        page.click("button", "Edit door: Store 3").await?;
        page.click("textbox", "Your own word").await?;
        page.type_text("lamps").await?;
        page.run("document.getElementById('find-doors').focus();")
            .await?;
        page.type_text("store 5").await?;
        page.wait_for_text("1 of 1 shown.").await?;
        let draft = page
            .run("return document.getElementById('door-label')?.value ?? '';")
            .await?;
        assert_eq!(draft, "lamps", "the form and what is written in it stay");
        page.must_be_accessible().await?;
        page.click("button", "Save").await?;
        page.wait_for_text(CHANGED).await?;
        goes_to(page, "doors").await?;
        // The last press for more rows goes with them.
        page.run(
            "const find = document.getElementById('find-doors'); find.focus(); find.select();",
        )
        .await?;
        page.press("Delete").await?;
        page.wait_for_text("12 of 16 shown.").await?;
        page.run("document.querySelector('[aria-labelledby=keys] > .row > .press-quiet').click();")
            .await?;
        goes_to(page, "change-key-").await?;
        page.click("button", "Show 4 more").await?;
        goes_to(page, "change-door-").await
    })
}

/// A check that was not begun from a key of the board, to its result and over.
async fn another_check(page: &Page) -> Result<()> {
    answer(page, &[]).await?;
    answer(page, &["Stolen or taken"]).await?;
    answer(page, &["The door of my house"]).await?;
    not_sure_to_the_end(page).await?;
    page.click("link", "See the result").await?;
    page.click("button", "Take this over into keys and doors")
        .await
}

#[test]
fn another_check_than_the_one_begun_asks_for_its_key() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        home(page).await?;
        page.click("button", "Check this key: Back door").await?;
        arrive(page, "What brings you here?").await?;
        page.back().await?;
        arrive(page, CALM).await?;
        page.run("location.hash = '#/';").await?;
        page.click("link", "A key is missing").await?;
        another_check(page).await?;
        arrive(page, CALM).await?;
        page.wait_for_text("Which key did you check?").await?;

        // Nothing is chosen beforehand.
        page.click("button", "Take the result over").await?;
        goes_to(page, "error-summary").await?;
        assert!(page.title().await?.starts_with("Error: "));
        page.must_be_accessible().await?;
        choose_by_id(page, "waiting-key", "new").await?;
        page.click("button", "Take the result over").await?;
        page.wait_for_text("is now with this key:").await?;
        goes_to(page, "key-").await?;
        assert!(!page.title().await?.starts_with("Error: "));
        let found = page
            .run("return [...document.querySelectorAll('.hooks > li')].map(li => li.textContent.includes('Found: old copies')).join();")
            .await?;
        assert_eq!(found, "false,false,true", "no other key has the finding");

        // A check of another key leaves what waits waiting; that can be let go.
        page.run("location.hash = '#/';").await?;
        page.click("link", "Go on").await?;
        page.click("button", "Take this over into keys and doors")
            .await?;
        page.wait_for_text("Which key did you check?").await?;
        page.click("button", "Check this key: Back door").await?;
        arrive(page, "What brings you here?").await?;
        page.back().await?;
        page.wait_for_text("Which key did you check?").await?;
        page.click("button", "Do not take it over").await?;
        page.wait_for_text("The result of that check is not taken over.")
            .await?;
        goes_to(page, "keys").await
    })
}
