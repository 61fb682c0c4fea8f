//! Every page under an accessibility checker, by day and by night and on a narrow screen, and with
//! larger text.

use self_check_tests::{Look, Page, Result, Scheme, journey};

use crate::walking::{NOT_SURE, answer, arrive, heading, tick};

const DARK: Look = Look {
    scheme: Scheme::Dark,
    ..Look::DESKTOP
};

/// Looks at the page as it stands in three ways.
async fn look(page: &Page) -> Result<()> {
    for look in [Look::DESKTOP, DARK, Look::NARROW] {
        page.set_look(look).await?;
        page.must_be_accessible()
            .await
            .map_err(|fault| format!("{look:?}: {fault}"))?;
        assert!(
            page.fits_its_width().await?,
            "{:?} at {}",
            look,
            heading(page).await?
        );
    }
    page.set_look(Look::DESKTOP).await
}

#[test]
fn every_question_page_is_accessible() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        look(page).await?;
        page.click("link", "Check a key").await?;
        arrive(page, "What brings you here?").await?;
        page.click("button", "Continue").await?;
        page.wait_for_text("There is a problem").await?;
        look(page).await?;
        answer(page, &["There is a number on my key"]).await?;
        let mut seen = 0;
        while heading(page).await? != "Look over your answers" {
            look(page).await?;
            seen += 1;
            let choice = match &*heading(page).await? {
                "Is anything stamped on the metal?" => "Four or more digits",
                "What kind of number is it?" => "It is only on the keys to this lock",
                _ => NOT_SURE,
            };
            named_as_a_group(page).await?;
            answer(page, &[choice]).await?;
        }
        assert_eq!(seen, 13);
        look(page).await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("Do this").await?;
        open_all(page).await?;
        look(page).await
    })
}

/// The choices are a group that bears the question's name.
async fn named_as_a_group(page: &Page) -> Result<()> {
    let question = heading(page).await?;
    let groups = [page.names("group").await?, page.names("radiogroup").await?].concat();
    assert!(
        groups.iter().any(|name| name.starts_with(&question)),
        "{question}: {groups:?}"
    );
    Ok(())
}

async fn open_all(page: &Page) -> Result<()> {
    page.run("document.querySelectorAll('details').forEach(d => d.open = true);")
        .await?;
    Ok(())
}

#[test]
fn every_page_beside_the_questions_is_accessible() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        for (start, wanted) in [
            ("A key is missing", "What to do in the next hour"),
            ("Worried about a person?", "Your safety comes first"),
        ] {
            page.open().await?;
            page.click("link", start).await?;
            arrive(page, wanted).await?;
            look(page).await?;
        }
        answer(page, &[]).await?;
        tick(page, NOT_SURE).await?;
        for fragment in ["#/learn", "#/about", "#/distance", "#/ruler", "#/nowhere"] {
            page.open_at(fragment).await?;
            page.wait_until("a heading is there", async || {
                Ok(!heading(page).await?.is_empty())
            })
            .await?;
            open_all(page).await?;
            look(page).await?;
        }
        for n in 1..=9 {
            page.open_at(&format!("#/learn/{n}")).await?;
            page.wait_until("a heading is there", async || {
                Ok(!heading(page).await?.is_empty())
            })
            .await?;
            open_all(page).await?;
            look(page).await?;
        }
        Ok(())
    })
}

#[test]
fn text_at_twice_its_size_stays_on_the_page() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        for fragment in ["", "#/check/0", "#/learn/1", "#/distance", "#/ruler"] {
            page.open_at(fragment).await?;
            twice_as_large(page).await?;
            assert!(page.fits_its_width().await?, "{fragment}");
        }
        page.open().await?;
        page.click("link", "Try it with an example").await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("Do this").await?;
        open_all(page).await?;
        twice_as_large(page).await?;
        assert!(page.fits_its_width().await?, "the result");
        page.set_look(Look::PHONE).await?;
        assert!(page.fits_its_width().await?, "the result on a phone");
        Ok(())
    })
}

/// Text at twice its size in a window that stays as it is, as a reader's own setting makes it: the
/// page measures all its text by the root's.
async fn twice_as_large(page: &Page) -> Result<()> {
    let sizes = page
        .run(
            "const size = () => parseFloat(getComputedStyle(document.querySelector('main p')).fontSize);
             const before = size();
             document.documentElement.style.fontSize = '200%';
             return size() / before;",
        )
        .await?;
    assert_eq!(sizes, 2.0, "the text has grown");
    Ok(())
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
        for _ in 0..30 {
            page.press("ArrowRight").await?;
        }
        page.wait_until("the sentence has changed", async || {
            Ok(said().await? != before)
        })
        .await?;
        page.click("radio", "Doorbell camera").await?;
        page.wait_for_text("Doorbell camera,").await
    })
}
