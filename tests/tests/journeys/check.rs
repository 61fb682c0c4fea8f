//! The check, from the start page to the result.

use self_check_tests::{Look, Page, Result, journey};

use crate::walking::{
    CALM, LOOK_OVER, NOT_SURE, answer, arrive, heading, not_sure_to_the_end, tick,
};

const NOBODY: &str = "As far as you know, nobody outside your home has had your key.";

#[test]
fn whole_check_by_pointer_ends_with_nothing_to_do() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        arrive(page, "What brings you here?").await?;
        answer(page, &["I want to look at my keys"]).await?;
        for (question, labels) in CALM {
            assert_eq!(heading(page).await?, question);
            answer(page, labels).await?;
        }
        arrive(page, LOOK_OVER).await?;
        page.click("link", "See the result").await?;
        arrive(page, NOBODY).await?;
        let text = page.visible_text().await?;
        assert!(
            text.contains("Nothing in your answers gave the key away"),
            "{text}"
        );
        assert!(!text.contains("Have the lock rekeyed"), "{text}");
        Ok(())
    })
}

#[test]
fn whole_check_by_keyboard_alone() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.tab_to("link", "Check a key").await?;
        page.press("Enter").await?;
        arrive(page, "What brings you here?").await?;
        by_keys(page, "radio", "I want to look at my keys").await?;
        for (question, labels) in CALM {
            let role = if page.all("radio").await?.is_empty() {
                "checkbox"
            } else {
                "radio"
            };
            let focused = page.focused().await?;
            assert_eq!(
                (&*focused.role, &*focused.name),
                ("heading", question),
                "focus after “Continue”"
            );
            for label in labels {
                by_keys(page, role, label).await?;
            }
        }
        arrive(page, LOOK_OVER).await?;
        page.tab_to("link", "See the result").await?;
        page.press("Enter").await?;
        arrive(page, NOBODY).await
    })
}

/// Ticks one choice by keys and goes on by keys.
async fn by_keys(page: &Page, role: &str, label: &str) -> Result<()> {
    let before = heading(page).await?;
    if role == "radio" {
        // One tab stop for the whole group; the arrows move within it and choose.
        let first = page.all("radio").await?.remove(0);
        page.tab_to("radio", &first.name).await?;
        page.press("Space").await?;
        let wanted = page.find("radio", label).await?;
        for _ in 0..12 {
            if page.focused().await?.name == wanted.name {
                break;
            }
            page.press("ArrowDown").await?;
        }
        assert_eq!(page.focused().await?.name, wanted.name);
    } else {
        page.tab_to(role, label).await?;
        page.press("Space").await?;
    }
    assert!(
        page.focus_shows().await?,
        "the focus on {label:?} is to be seen"
    );
    page.tab_to("button", "Continue").await?;
    assert!(
        page.focus_shows().await?,
        "the focus on “Continue” is to be seen"
    );
    page.press("Enter").await?;
    page.wait_until("the next page is there", async || {
        Ok(heading(page).await? != before)
    })
    .await
}

#[test]
fn early_answer_is_changed_and_later_ones_stand() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        answer(page, &["I want to look at my keys"]).await?;
        for (_, labels) in CALM {
            answer(page, labels).await?;
        }
        page.click("link", "Change What does the key open?").await?;
        arrive(page, "What does the key open?").await?;
        answer(page, &["The door of my house", "A garage, shed or gate"]).await?;
        arrive(page, LOOK_OVER).await?;
        let text = page.visible_text().await?;
        assert!(text.contains("A garage, shed or gate"), "{text}");
        assert!(text.contains("A second lock with another key"), "{text}");

        // Back and Forward of the browser lose nothing either.
        page.back().await?;
        arrive(page, "What does the key open?").await?;
        page.forward().await?;
        arrive(page, LOOK_OVER).await?;
        page.click("link", "See the result").await?;
        arrive(page, NOBODY).await
    })
}

#[test]
fn nothing_chosen_is_said_and_leads_to_the_choices() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        arrive(page, "What brings you here?").await?;
        page.click("button", "Continue").await?;
        page.wait_for_text("There is a problem").await?;
        assert!(
            page.title().await?.starts_with("Error: "),
            "{}",
            page.title().await?
        );
        let inside = page
            .run("return !!document.activeElement.closest('.error-summary');")
            .await?;
        assert_eq!(inside, true, "the summary has the focus");
        assert_eq!(heading(page).await?, "What brings you here?");
        answer(page, &[NOT_SURE]).await?;
        assert!(!page.title().await?.starts_with("Error: "));
        Ok(())
    })
}

#[test]
fn choice_that_stands_alone_clears_the_others() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "There is a number on my key").await?;
        arrive(page, "Is anything stamped on the metal?").await?;
        for (label, ticked) in [
            ("Four or more digits", 1),
            ("Something too worn", 2),
            ("Nothing", 1),
            (NOT_SURE, 1),
        ] {
            tick(page, label).await?;
            page.wait_until(
                &format!("{ticked} boxes are ticked after “{label}”"),
                async || {
                    let count = page
                        .run("return document.querySelectorAll('main input:checked').length;")
                        .await?;
                    Ok(count == ticked)
                },
            )
            .await?;
        }
        Ok(())
    })
}

#[test]
fn not_sure_all_the_way_reads_calm() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        let met = not_sure_to_the_end(page).await?;
        assert!(met.len() >= 11, "{met:?}");
        page.click("link", "See the result").await?;
        arrive(
            page,
            "There is too little to go on yet, and that is no cause for alarm.",
        )
        .await?;
        let find_out = page
            .run("return document.querySelectorAll('.find-out > li').length;")
            .await?;
        assert!(
            (1..=3).contains(&find_out.as_u64().unwrap_or(0)),
            "{find_out}"
        );
        let urgent = page
            .run("return document.querySelectorAll('.when-today, .when-soon').length;")
            .await?;
        assert_eq!(urgent, 0);
        Ok(())
    })
}

#[test]
fn direct_starts_lead_to_their_own_question() -> Result<()> {
    journey(Look::PHONE, async |page| {
        for (start, first) in [
            ("A key is missing", "What to do in the next hour"),
            ("I shared a picture", "Where could a picture of the key be?"),
            (
                "We just moved in",
                "Has the lock been changed since you moved in?",
            ),
            ("Someone had my key", "Who has this key, or has had it?"),
            (
                "There is a number on my key",
                "Is anything stamped on the metal?",
            ),
            ("Worried about a person?", "Your safety comes first"),
        ] {
            page.open().await?;
            page.click("link", start).await?;
            arrive(page, first).await?;
            let met = not_sure_to_the_end(page).await?;
            page.click("link", "See the result").await?;
            page.wait_until(
                &format!("the result of “{start}” is there"),
                async || Ok(heading(page).await? != LOOK_OVER),
            )
            .await?;
            assert!(met.len() >= 8, "{start}: {met:?}");
        }
        Ok(())
    })
}

#[test]
fn every_kind_of_key_has_a_result() -> Result<()> {
    const KIND: &str = "What kind of key is it?";
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Check a key").await?;
        not_sure_to_the_end(page).await?;
        let mut numbers = 0;
        for kind in [
            "Cuts along one edge",
            "Cuts along both edges",
            "Small round hollows",
            "A round tube",
            "stem",
            "simple",
            "A thick plastic head",
            "card",
        ] {
            page.click("link", &format!("Change {KIND}")).await?;
            arrive(page, KIND).await?;
            let labels = page.names("radio").await?;
            let label = labels
                .iter()
                .find(|label| label.to_lowercase().contains(&kind.to_lowercase()))
                .ok_or(format!("no kind like {kind:?} in {labels:?}"))?;
            page.click("radio", label).await?;
            page.click("button", "Continue").await?;
            arrive(page, LOOK_OVER).await?;
            page.click("link", "See the result").await?;
            page.wait_until("the result is there", async || {
                Ok(heading(page).await? != LOOK_OVER)
            })
            .await?;
            let has_number = page
                .run("return !!document.querySelector('main .rule');")
                .await?;
            numbers += i32::from(has_number == true);
            page.click("link", "Change my answers").await?;
            arrive(page, LOOK_OVER).await?;
        }
        assert_eq!(numbers, 2, "only keys with cuts along an edge are counted");
        Ok(())
    })
}

#[test]
fn safety_branch_hides_the_level_and_offers_nothing_to_keep() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Worried about a person?").await?;
        arrive(page, "Your safety comes first").await?;
        page.click("link", "Continue").await?;
        feared_person_to_the_end(page).await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("The key can wait").await?;
        let text = page.visible_text().await?.to_lowercase();
        for word in [
            "print",
            "copy as text",
            "no longer private",
            "in doubt",
            "cannot be told yet",
            "copies back",
            "count the copies",
        ] {
            assert!(!text.contains(word), "“{word}” in {text}");
        }
        let levels = page
            .run("return document.querySelectorAll('main .level').length;")
            .await?;
        assert_eq!(levels, 0);
        page.click("button", "Show").await?;
        page.wait_for_text("No longer private").await
    })
}

/// A mark with a time in it could make somebody act before they have a plan.
#[test]
fn safety_branch_sets_no_time_for_anything() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "I shared a picture").await?;
        answer(page, &["In public"]).await?;
        feared_person_to_the_end(page).await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("The key can wait").await?;
        let marks = page
            .run("return [...document.querySelectorAll('.todo .when')].map(mark => mark.textContent);")
            .await?;
        let marks: Vec<String> = serde_json::from_value(marks)?;
        assert!(marks.len() > 2, "{marks:?}");
        assert_eq!(marks[0], "When it is safe for you");
        assert!(
            marks[1..].iter().all(|mark| mark == "With the service"),
            "{marks:?}"
        );
        let text = page.visible_text().await?;
        for time in ["Within days", "Before the day ends", "Worth finding out"] {
            assert!(!text.contains(time), "{time}: {text}");
        }
        Ok(())
    })
}

#[test]
fn example_says_that_it_is_one_and_gives_way() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Try it with an example").await?;
        arrive(page, LOOK_OVER).await?;
        page.wait_for_text("invented home").await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("invented home").await?;
        page.wait_for_text("groups of people outside your home")
            .await?;
        page.click("button", "Check my own key").await?;
        arrive(page, "What brings you here?").await?;
        let ticked = page
            .run("return document.querySelectorAll('main input:checked').length;")
            .await?;
        assert_eq!(ticked, 0);
        Ok(())
    })
}

#[test]
fn following_the_advice_shows_what_would_be_left() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Try it with an example").await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("What if, from today").await?;
        let before = page
            .run("return document.querySelector('.what-if [role=status]').textContent;")
            .await?;
        assert_eq!(before, "");
        for box_to_tick in page.names("checkbox").await? {
            page.click("checkbox", &box_to_tick).await?;
        }
        page.wait_until("the key is private again", async || {
            let now = page
                .run("return document.querySelector('.what-if [role=status] .level')?.textContent;")
                .await?;
            Ok(now == "Private")
        })
        .await
    })
}

/// Answers every page left with a feared person, a picture that shows the place, or "not sure".
async fn feared_person_to_the_end(page: &Page) -> Result<()> {
    while heading(page).await? != LOOK_OVER {
        let boxes = page.names("checkbox").await?;
        let named = |start: &str| boxes.iter().find(|name| name.starts_with(start));
        let told = named("A former partner").or(named("A picture that shows"));
        let label = told.map_or(NOT_SURE, String::as_str);
        match page.all("radio").await?.len() + boxes.len() {
            0 => page.click("link", "Continue").await?,
            _ => answer(page, &[label]).await?,
        }
    }
    Ok(())
}
