//! Zoomed, touched, read from right to left, and told to a screen reader.

use self_check_tests::{Look, Page, Result, journey};

use crate::walking::{heading, open_all, to_the_examples_result};

/// What 200 % and 400 % of zoom leave of a window of 1280 pixels.
const ZOOMED: [Look; 2] = [
    Look {
        width: 640,
        height: 450,
        ..Look::DESKTOP
    },
    Look::NARROW,
];

/// Goes by one page of each kind, with everything unfolded.
async fn on_each_kind_of_page(page: &Page, look: impl AsyncFn(&Page) -> Result<()>) -> Result<()> {
    for fragment in [
        "",
        "#/check/0",
        "#/learn",
        "#/learn/1",
        "#/distance",
        "#/ruler",
        "#/about",
    ] {
        page.open_at(fragment).await?;
        page.wait_until("a heading is there", async || {
            Ok(!heading(page).await?.is_empty())
        })
        .await?;
        open_all(page).await?;
        look(page).await?;
    }
    to_the_examples_result(page).await?;
    open_all(page).await?;
    look(page).await
}

#[test]
fn pages_are_told_well_and_their_targets_are_large_enough() -> Result<()> {
    journey(Look::NARROW, async |page| {
        on_each_kind_of_page(page, async |page| {
            page.must_be_told_well().await?;
            let small = page.small_targets().await?;
            assert_eq!(small, Vec::<String>::new(), "at “{}”", heading(page).await?);
            Ok(())
        })
        .await?;
        // The measure finds what is too small.
        page.run("document.querySelector('main').append(Object.assign(document.createElement('button'), { className: 'tiny' }));
                  const sheet = new CSSStyleSheet(); sheet.replaceSync('.tiny { all: unset; inline-size: 9px; block-size: 9px; display: block; }');
                  document.adoptedStyleSheets.push(sheet);")
            .await?;
        assert_eq!(page.small_targets().await?.len(), 1);
        Ok(())
    })
}

#[test]
fn pages_fit_zoomed_turned_and_with_more_space() -> Result<()> {
    journey(Look::PHONE, async |page| {
        on_each_kind_of_page(page, async |page| {
            for look in ZOOMED {
                page.set_look(look).await?;
                fits(page, &format!("{look:?}")).await?;
            }
            page.set_look(Look::PHONE).await?;
            is_mirrored_from_the_right(page).await?;
            page.run(SPACED).await?;
            fits(page, "more space").await
        })
        .await
    })
}

async fn fits(page: &Page, how: &str) -> Result<()> {
    let fits = page.fits_its_width().await?;
    assert!(fits, "“{}” with {how}", heading(page).await?);
    Ok(())
}

/// As for a language that is written from the right: the heading keeps its distance to the side where it begins.
async fn is_mirrored_from_the_right(page: &Page) -> Result<()> {
    let gaps = "const box = document.querySelector('main h1').getBoundingClientRect(); return [box.left, innerWidth - box.right];";
    let [left, right]: [f64; 2] = serde_json::from_value(page.run(gaps).await?)?;
    page.run("document.documentElement.dir = 'rtl';").await?;
    fits(page, "a script from the right").await?;
    let turned: [f64; 2] = serde_json::from_value(page.run(gaps).await?)?;
    assert!(
        (left - turned[1]).abs() < 1.5 && (right - turned[0]).abs() < 1.5,
        "“{}”: {left} and {right} became {turned:?}",
        heading(page).await?
    );
    page.run("document.documentElement.dir = 'ltr';").await?;
    Ok(())
}

/// The least that a reader may set without losing anything (WCAG 2.2, criterion 1.4.12).
const SPACED: &str = "
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-block-end: 2em !important; }');
    document.adoptedStyleSheets = [sheet];";
