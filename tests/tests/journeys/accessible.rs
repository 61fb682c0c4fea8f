//! Every page under an accessibility checker, by day, by night and on a narrow screen; and what a screen reader is given.

use self_check_tests::given::{Kind, Picture};
use self_check_tests::{Look, Page, Result, journey};

use crate::keeping::{IS_OFF, put_a_home};
use crate::looking::look;
use crate::walking::{
    LOOK_OVER, NOT_SURE, answer, arrive, choose_scene, heading, not_sure_to_the_end,
    to_the_examples_result,
};
use crate::{keys, picture};

#[test]
fn every_question_page_is_accessible() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        look(page).await?;
        page.click("link", "Check a key").await?;
        arrive(page, "What brings you here?").await?;
        has_a_named_group_of_named_choices(page, "radio").await?;
        look(page).await?;
        page.click("button", "Continue").await?;
        page.wait_for_text("There is a problem").await?;
        look(page).await?;

        // A number that is a code: no other path has more questions.
        let mut seen = 1;
        answer(page, &["There is a number on my key"]).await?;
        while heading(page).await? != LOOK_OVER {
            let kind = kind_of_choices(page).await?;
            has_a_named_group_of_named_choices(page, kind).await?;
            look(page).await?;
            seen += 1;
            let choice = match &*heading(page).await? {
                "Is anything stamped on the metal?" => "Four or more digits",
                "What kind of number is it?" => "It is only on the keys to this lock",
                _ => NOT_SURE,
            };
            answer(page, &[choice]).await?;
        }
        look(page).await?;

        // The one question that this path leaves out.
        page.open().await?;
        page.click("link", "A key is missing").await?;
        arrive(page, "What to do in the next hour").await?;
        look(page).await?;
        answer(page, &[]).await?;
        arrive(page, "How did the key go missing?").await?;
        has_a_named_group_of_named_choices(page, "radio").await?;
        look(page).await?;
        assert_eq!(seen + 1, 15, "questions looked at");
        Ok(())
    })
}

async fn kind_of_choices(page: &Page) -> Result<&'static str> {
    let is_radio = page.all("checkbox").await?.is_empty();
    Ok(if is_radio { "radio" } else { "checkbox" })
}

/// What a screen reader is given of a question: a group by the question's name, and in it boxes of one kind, each by the
/// words that stand beside it.
async fn has_a_named_group_of_named_choices(page: &Page, kind: &str) -> Result<()> {
    let question = heading(page).await?;
    let groups = page.names("group").await?;
    assert!(groups.contains(&question), "{question}: {groups:?}");
    let labels = page
        .run(
            "return [...document.querySelectorAll('main .opt b')].map(label => label.textContent);",
        )
        .await?;
    let labels: Vec<&str> = labels
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|label| label.as_str())
        .collect();
    let names = page.names(kind).await?;
    assert!(names.len() >= 3, "{question}: {names:?}");
    assert_eq!(
        names.len(),
        labels.len(),
        "{question}: {names:?} {labels:?}"
    );
    for (name, label) in names.iter().zip(labels) {
        assert!(
            name.starts_with(label),
            "{question}: {name:?} is beside {label:?}"
        );
    }
    Ok(())
}

#[test]
fn every_kind_of_result_is_accessible() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        to_the_examples_result(page).await?;
        look(page).await?;
        page.click("checkbox", "…the lock is set to a new key")
            .await?;
        page.wait_for_text("What would then be left").await?;
        look(page).await?;

        page.open().await?;
        page.click("link", "Worried about a person?").await?;
        arrive(page, "Your safety comes first").await?;
        look(page).await?;
        not_sure_to_the_end(page).await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("The key can wait").await?;
        look(page).await?;
        page.click("button", "Show what the answers say").await?;
        page.wait_for_text("every rule").await?;
        look(page).await?;

        // Stolen, a tenant's, with the address: the most urgent result, with a letter to the landlord.
        page.open().await?;
        page.click("link", "A key is missing").await?;
        answer(page, &[]).await?;
        answer(page, &["Stolen or taken"]).await?;
        answer(page, &["The door of my house"]).await?;
        answer(page, &["A private landlord"]).await?;
        answer(page, &["An address or flat number"]).await?;
        not_sure_to_the_end(page).await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("A letter").await?;
        look(page).await
    })
}

#[test]
fn every_page_to_read_is_accessible() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/learn").await?;
        arrive(page, "Learn").await?;
        let links = page
            .run("return [...document.querySelectorAll('main .contents a')].map(a => a.hash);")
            .await?;
        let links: Vec<String> = serde_json::from_value(links)?;
        assert!(links.len() >= 5, "{links:?}");
        let others = ["#/learn", "#/about", "#/picture", "#/ruler", "#/nowhere"].map(str::to_owned);
        for address in others.iter().chain(&links) {
            page.open_at(address).await?;
            page.wait_until("a heading is there", async || {
                Ok(!heading(page).await?.is_empty())
            })
            .await?;
            look(page).await?;
        }
        Ok(())
    })
}

#[test]
fn keeping_is_accessible_with_every_message() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/keys").await?;
        page.wait_for_text(IS_OFF).await?;
        look(page).await?;
        put_a_home(page).await?;
        look(page).await?;
        page.click("button", "Save a locked file").await?;
        page.wait_for_text("Make the passphrase longer").await?;
        look(page).await?;
        page.click("button", "Empty everything").await?;
        page.wait_for_text("Emptied.").await?;
        look(page).await
    })
}

#[test]
fn distance_moves_by_keys_and_says_so() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/distance").await?;
        arrive(page, "Who could read it from where").await?;
        let said = async || {
            page.run("return document.querySelector('.seen').textContent;")
                .await
        };
        let before = said().await?;
        let slider = page.all("slider").await?.remove(0);
        page.tab_to("slider", &slider.name).await?;
        assert!(page.focus_shows().await?);
        for _ in 0..30 {
            page.press("ArrowRight").await?;
        }
        page.wait_until("the sentence has changed", async || {
            Ok(said().await? != before)
        })
        .await?;
        choose_scene(page, "Doorbell").await?;
        page.wait_for_text("Doorbell camera,").await
    })
}

/// Does something by hand, and waits until words on it are read out.
async fn reads_out(page: &Page, role: &str, name: &str, words: &str) -> Result<()> {
    let before = page.regions().await?;
    page.click(role, name).await?;
    page.must_be_read_out(&before, words).await
}

#[test]
fn what_changes_in_the_check_is_read_out() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open_at("#/check/0").await?;
        reads_out(page, "button", "Continue", "There is a problem").await?;
        to_the_examples_result(page).await?;
        let what_if = "…the lock is set to a new key";
        reads_out(page, "checkbox", what_if, "What would then be left").await?;
        let wish =
            serde_json::json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
        page.cdp("Browser.grantPermissions", wish).await?;
        reads_out(page, "button", "Copy as text", "Copied.").await?;
        page.open_at("#/ruler").await?;
        let slider = page.all("slider").await?.remove(0);
        page.tab_to("slider", &slider.name).await?;
        page.press("Home").await?;
        let before = page.regions().await?;
        page.press("End").await?;
        page.must_be_read_out(&before, "too small").await
    })
}

#[test]
fn what_changes_on_the_board_is_read_out() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        keys::to_the_examples_board(page).await?;
        // What was lost takes the focus, and so is read by itself.
        page.click("button", "This ring is lost: Lodger").await?;
        page.wait_for_text("Lodger: lost keys").await?;
        reads_out(page, "button", "Undo", "Undone").await?;
        page.click("link", "See what to do").await?;
        arrive(page, "What to do").await?;
        reads_out(page, "button", "All of this is done", "It is noted").await?;
        page.open_at("#/keys").await?;
        page.wait_for_text(IS_OFF).await?;
        put_a_home(page).await?;
        let wish = "Save a locked file";
        reads_out(page, "button", wish, "Make the passphrase longer").await?;
        // The board is gone with what was on it; the words come into a region of the page that is left.
        page.click("button", "Empty everything").await?;
        page.wait_for_text("Emptied.").await?;
        let regions = page.regions().await?;
        let told = regions
            .iter()
            .find(|region| region.words.contains("Emptied."));
        assert!(
            told.is_some_and(|told| told.urgency == "polite"),
            "{regions:?}"
        );
        Ok(())
    })
}

#[test]
fn what_changes_about_a_picture_is_read_out() -> Result<()> {
    let given = Picture::new(Kind::Clear)?;
    let wrong = given.folder().join("letter.jpg");
    std::fs::write(&wrong, b"Dear neighbour")?;
    journey(Look::DESKTOP, async |page| {
        picture::at_the_page(page).await?;
        let before = page.regions().await?;
        page.choose_file_in("picture-file", &wrong).await?;
        page.must_be_read_out(&before, "not a picture").await?;
        picture::checked(page, &given).await?;
        page.find("button", "Remove cover 1").await?;
        reads_out(page, "button", "Remove cover 1", "Nothing is covered").await
    })
}
