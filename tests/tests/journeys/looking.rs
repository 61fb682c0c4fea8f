//! Looking at a page in several ways, and at one page of every kind.

use self_check_tests::given::{Kind, Picture};
use self_check_tests::{Look, Page, Result, Scheme};

use crate::walking::{LOOK_OVER, arrive, heading, open_all, to_the_examples_result};
use crate::{keys, picture};

/// In the dark.
pub const DARK: Look = Look {
    scheme: Scheme::Dark,
    ..Look::DESKTOP
};

/// Looks at the page in the dark, on a narrow screen and by day, with everything unfolded.
pub async fn look(page: &Page) -> Result<()> {
    open_all(page).await?;
    page.set_look(DARK).await?;
    page.must_have_contrast().await?;
    for look in [Look::NARROW, Look::DESKTOP] {
        page.set_look(look).await?;
        page.must_be_accessible().await?;
        fits(page, &format!("{look:?}")).await?;
    }
    let level_ones = page
        .run("return document.querySelectorAll('h1').length;")
        .await?;
    let heading = heading(page).await?;
    assert_eq!(level_ones, 1, "headings of the first level at “{heading}”");
    Ok(())
}

/// Fails if anything has to be read by moving sideways.
pub async fn fits(page: &Page, how: &str) -> Result<()> {
    let fits = page.fits_its_width().await?;
    assert!(fits, "“{}” with {how}", heading(page).await?);
    Ok(())
}

/// Goes by one page of each kind, with everything unfolded: of both programs, keys and doors and a marked picture among
/// them, and of the check a question with its error, the look over the answers, a result and the safety page.
pub async fn on_each_kind_of_page(
    page: &Page,
    look: impl AsyncFn(&Page) -> Result<()>,
) -> Result<()> {
    let look = async || {
        open_all(page).await?;
        look(page).await
    };
    for fragment in [
        "",
        "#/learn",
        "#/learn/1",
        "#/distance",
        "#/ruler",
        "#/about",
        "#/keys",
        "#/nowhere",
    ] {
        page.open_at(fragment).await?;
        page.wait_until("a heading is there", async || {
            Ok(!heading(page).await?.is_empty())
        })
        .await?;
        look().await?;
    }

    page.open_at("#/check/0").await?;
    page.click("button", "Continue").await?;
    page.wait_for_text("There is a problem").await?;
    look().await?;
    for (start, title) in [
        (
            "There is a number on my key",
            "Is anything stamped on the metal?",
        ),
        ("A key is missing", "What to do in the next hour"),
        ("Worried about a person?", "Your safety comes first"),
        ("Try it with an example", LOOK_OVER),
    ] {
        page.open().await?;
        page.click("link", start).await?;
        arrive(page, title).await?;
        look().await?;
    }
    to_the_examples_result(page).await?;
    look().await?;

    keys::to_the_examples_board(page).await?;
    look().await?;
    page.click("button", "Edit key: front door, workshop")
        .await?;
    page.wait_until("the form has the focus", async || {
        Ok(page.focused_id().await? == "form-title")
    })
    .await?;
    look().await?;
    page.click("button", "Leave it as it was").await?;
    for link in keys::PAGES {
        page.click("link", keys::link_from_the_board(link)).await?;
        arrive(page, link).await?;
        look().await?;
    }

    let given = Picture::new(Kind::Clear)?;
    picture::at_the_page(page).await?;
    look().await?;
    picture::checked(page, &given).await?;
    page.click("button", "Make the copy").await?;
    page.wait_for_text("A second look").await?;
    look().await
}
