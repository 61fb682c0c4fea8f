//! From a lost key to what is done about it: what is asked, in which order it stands, and what is
//! claimed only where it was said.

use self_check_tests::{Look, Page, Result, journey};

use crate::walking::{arrive, choose, choose_by_id};

const EMPTY: &str = "Keys and doors";
const CALM: &str = "No key here is known to be in wrong hands";
const ONE_OUT: &str = "One key could be in wrong hands";

/// An ordinary home by the quick start: this way of doors, two residents and a neighbour.
pub async fn home(page: &Page, doors: &str) -> Result<()> {
    page.open_at("#/keys").await?;
    arrive(page, EMPTY).await?;
    page.click("radio", doors).await?;
    choose(page, "Resident", "2").await?;
    choose(page, "Neighbour", "1").await?;
    page.click("button", "Put it on the board").await?;
    arrive(page, CALM).await
}

/// Whether the parts stand on the page one after the other.
async fn stand_in_this_order(page: &Page, parts: &[&str]) -> Result<()> {
    let text = page.visible_text().await?;
    let mut from = 0;
    for part in parts {
        let at = text[from..].find(part);
        assert!(at.is_some(), "{part:?} is missing after {from}: {text}");
        from += at.unwrap_or(0);
    }
    Ok(())
}

#[test]
fn fresh_loss_asks_how_before_it_says_how_soon() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(page, "Two doors, one key for both").await?;
        page.click("button", "This ring is lost: Neighbour").await?;
        arrive(page, ONE_OUT).await?;
        let text = page.visible_text().await?;
        assert!(text.contains("It depends on how it went missing"), "{text}");
        assert!(!text.contains("When convenient"), "{text}");
        page.click("link", "See what to do now: Neighbour").await?;
        arrive(page, "What to do").await?;
        stand_in_this_order(
            page,
            &[
                "First say how it went missing",
                "First: until the locks are changed",
                "Front door: someone stays in",
                "It depends on how it went missing",
                "Have a locksmith see to 2 locks",
                "Destroy the old keys",
            ],
        )
        .await?;
        choose_by_id(page, "said-0", "stolen").await?;
        page.wait_for_text("Report it to the police").await?;
        stand_in_this_order(
            page,
            &[
                "Report it to the police",
                "Look after the door until the lock is changed",
                "Front door: someone stays in",
                "Ask your insurer",
                "Have a locksmith see to 2 locks",
                "Destroy the old keys",
            ],
        )
        .await?;
        let text = page.visible_text().await?;
        assert!(
            !text.contains("It depends on how it went missing"),
            "it is said now: {text}"
        );
        page.click("link", "What it costs").await?;
        arrive(page, "What it costs").await?;
        page.wait_for_text("A visit in ordinary hours or, if it cannot wait")
            .await
    })
}

#[test]
fn key_not_given_back_is_called_so_and_not_cut_again() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        home(page, "Two doors, one key for both").await?;
        page.click("button", "This ring is lost: Neighbour").await?;
        arrive(page, ONE_OUT).await?;
        choose(page, "How did it go missing? (Neighbour)", "Not given back").await?;
        page.wait_for_text("Neighbour: keys not given back").await?;
        page.wait_for_text("Copies: 3, 1 not given back").await?;
        page.click("link", "See what to do now: Neighbour").await?;
        arrive(page, "What to do").await?;
        page.wait_for_text("2 copies: 1 each for Resident 1, Resident 2")
            .await
    })
}

#[test]
fn ways_that_come_to_the_same_are_said_to() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(page, "One door").await?;
        page.click("link", "Which doors should share a key").await?;
        arrive(page, "Which doors should share a key").await?;
        let same = "all three ways come to the same. Keep it as it is now.";
        page.wait_for_text(same).await?;
        page.click("link", "The board").await?;
        arrive(page, CALM).await?;
        page.click("button", "Add a door").await?;
        page.click("button", "Save").await?;
        page.wait_for_text("Doors: 2.").await?;
        page.click("link", "Which doors should share a key").await?;
        arrive(page, "Which doors should share a key").await?;
        page.wait_for_text("Three ways of sharing keys").await?;
        let text = page.visible_text().await?;
        assert!(!text.contains(same), "{text}");
        Ok(())
    })
}

#[test]
fn comparison_draws_and_counts_the_same_keys_and_says_what_is_missing() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(
            page,
            "A flat, and the building’s door with a key of its own",
        )
        .await?;
        page.click("button", "This ring is lost: Neighbour").await?;
        arrive(page, "Two keys could be in wrong hands").await?;
        page.click("link", "Which doors should share a key").await?;
        arrive(page, "Which doors should share a key").await?;
        page.wait_for_text("As now: 2 keys").await?;
        page.wait_for_text("not yours to change").await?;
        page.wait_for_text("2 missing keys count as if they were back")
            .await?;
        let counts = page
            .run("return [document.querySelectorAll('.way')[0].querySelectorAll('.way-keys > li').length, ...[0, 1].map(row => Number(document.querySelectorAll('.table')[0].querySelectorAll('tbody tr')[row].querySelector('td').textContent))].join();")
            .await?;
        assert_eq!(
            counts, "2,2,2",
            "drawn; different keys; most that one carries"
        );
        Ok(())
    })
}

#[test]
fn needs_are_claimed_only_where_they_were_said() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        home(page, "Two doors, one key for both").await?;
        page.wait_for_text("You have not said who needs which door")
            .await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("Everybody opens what they need"), "{text}");
        page.click("button", "Say who needs which door").await?;
        page.wait_until("the sheet has the focus", async || {
            Ok(page.focused_id().await? == "form-title")
        })
        .await?;
        page.must_be_accessible().await?;
        let sheet = page
            .run("return [...document.querySelectorAll('form .tick-list')].map(list => list.querySelector('legend').textContent + ' ' + list.querySelectorAll(':checked').length).join();")
            .await?;
        assert_eq!(
            sheet,
            "Resident 1 needs 2,Resident 2 needs 2,Neighbour needs 2"
        );
        page.click("button", "Save").await?;
        page.wait_for_text("Everybody opens what they need, and nothing else.")
            .await
    })
}

#[test]
fn one_key_for_two_doors_and_two_keys_are_told_apart() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(page, "Two doors, one key for both").await?;
        page.wait_for_text("1 key, for front door and back door")
            .await?;
        page.click("button", "Undo").await?;
        home(page, "Two doors, a key for each").await?;
        page.wait_for_text("2 keys: one for front door; one for back door")
            .await?;
        // Every button of a door says in words what it changes.
        let words = page
            .run("return [...document.querySelectorAll('.leaves > li:first-child button')].map(b => b.textContent.trim()).join();")
            .await?;
        assert_eq!(words, "Edit lock,Edit door,Add a lock,Add another way in");
        let names = page.names("button").await?;
        for name in ["Edit lock: Front door", "Edit door: Front door"] {
            assert!(names.iter().any(|known| known == name), "{name}: {names:?}");
        }
        Ok(())
    })
}

#[test]
fn way_to_the_plan_stands_on_the_first_screen_of_a_phone() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(page, "Two doors, a key for each").await?;
        page.click("button", "This ring is lost: Neighbour").await?;
        arrive(page, "Two keys could be in wrong hands").await?;
        let bottom = page
            .run("const link = [...document.querySelectorAll('a')].find(a => a.textContent === 'See what to do');
                  return link.getBoundingClientRect().bottom + scrollY - innerHeight;")
            .await?;
        let below = bottom.as_f64().ok_or("no link to the plan")?;
        assert!(below <= 0.0, "the link ends {below} below the first screen");
        Ok(())
    })
}

/// Adds another way in of this kind to the front door.
async fn with_a_way(page: &Page, kind: &str) -> Result<()> {
    page.click("button", "Add another way in: Front door")
        .await?;
    choose(page, "What opens the door without a key?", kind).await?;
    page.click("button", "Save").await?;
    page.wait_for_text("Changed. You can undo it.").await
}

#[test]
fn code_that_somebody_has_is_changed_today_and_the_key_safe_emptied_first() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(page, "One door").await?;
        page.click("button", "Add another way in: Front door")
            .await?;
        choose(page, "What opens the door without a key?", "Key safe").await?;
        page.click("checkbox", "Front door").await?;
        page.click("button", "Save").await?;
        page.wait_for_text("In it: front door").await?;
        page.click("button", "Someone else has it now: Key safe at front door")
            .await?;
        arrive(page, "One key could be in wrong hands").await?;
        let text = page.visible_text().await?;
        assert!(text.contains("Today"), "{text}");
        page.must_be_accessible().await?;
        page.click("link", "See what to do").await?;
        arrive(page, "What to do").await?;
        stand_in_this_order(
            page,
            &[
                "Today",
                "Take the key out of the key safe",
                "Look whether each key is still there, and count.",
                "Change the code of the key safe",
            ],
        )
        .await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("When convenient"), "{text}");
        page.must_be_accessible().await
    })
}

#[test]
fn remote_is_lost_looked_for_and_turns_up() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        home(page, "One door").await?;
        with_a_way(page, "Remote").await?;
        let remote = "Remote, fob or card at front door";
        page.click("button", &format!("One is lost: {remote}"))
            .await?;
        arrive(page, "A remote could be in wrong hands").await?;
        page.click("link", "See what to do").await?;
        arrive(page, "What to do").await?;
        page.wait_for_text("Have the remote or card that is out deleted")
            .await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("code"), "a remote has none: {text}");
        choose_by_id(page, "said-0", "mislaid-indoors").await?;
        page.wait_for_text("Look again indoors").await?;
        page.click("link", "The board").await?;
        arrive(page, CALM).await?;
        page.click("button", &format!("It has turned up: {remote}"))
            .await?;
        page.wait_for_text("Changed. You can undo it.").await?;
        let names = page.names("button").await?;
        let lost = format!("One is lost: {remote}");
        assert!(names.contains(&lost), "{names:?}");
        Ok(())
    })
}

#[test]
fn buildings_door_stays_open_to_the_lost_key_until_its_manager_has_acted() -> Result<()> {
    journey(Look::PHONE, async |page| {
        home(page, "A flat, and the building").await?;
        page.click("button", "This ring is lost: Neighbour").await?;
        arrive(page, "Two keys could be in wrong hands").await?;
        choose(page, "How did it go missing? (Neighbour)", "Not given back").await?;
        page.click("link", "See what to do now: Neighbour").await?;
        arrive(page, "What to do").await?;
        stand_in_this_order(
            page,
            &[
                "Ask for the copies back",
                "Have a locksmith see to one lock",
                "Destroy the old keys",
                "Once others have changed their lock",
            ],
        )
        .await?;
        let buttons = page.names("button").await?;
        assert!(!buttons.iter().any(|name| name == "All of this is done"));
        page.click("button", "Our own part is done").await?;
        page.wait_for_text("The rest is for others to do.").await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("no key here is known"), "{text}");
        page.click(
            "button",
            "The manager or owner of the key system has done it",
        )
        .await?;
        page.wait_for_text("All of it is done: no key here").await
    })
}
