//! Zoomed, touched, read from right to left, and told to a screen reader.

use self_check_tests::{Look, Page, Result, journey};

use crate::walking::{arrive, heading, open_all, to_the_examples_result};

/// What 200 % and 400 % of zoom leave of a window of 1280 pixels.
const ZOOMED: [Look; 2] = [
    Look {
        width: 640,
        height: 450,
        ..Look::DESKTOP
    },
    Look::NARROW,
];

/// Goes by one page of each kind.
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
        look(page).await?;
    }
    to_the_examples_result(page).await?;
    look(page).await
}

#[test]
fn every_kind_of_page_is_told_well() -> Result<()> {
    journey(Look::NARROW, async |page| {
        on_each_kind_of_page(page, async |page| {
            open_all(page).await?;
            page.must_be_told_well().await
        })
        .await
    })
}

#[test]
fn targets_are_large_enough_for_a_finger() -> Result<()> {
    journey(Look::PHONE, async |page| {
        on_each_kind_of_page(page, async |page| {
            open_all(page).await?;
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
fn zoomed_pages_need_no_moving_sideways() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        on_each_kind_of_page(page, async |page| {
            open_all(page).await?;
            for look in ZOOMED {
                page.set_look(look).await?;
                assert!(
                    page.fits_its_width().await?,
                    "“{}” at {look:?}",
                    heading(page).await?
                );
            }
            page.set_look(Look::DESKTOP).await
        })
        .await
    })
}

#[test]
fn pages_turn_for_a_script_that_runs_from_the_right() -> Result<()> {
    journey(Look::PHONE, async |page| {
        on_each_kind_of_page(page, async |page| {
            open_all(page).await?;
            let gap = "const box = document.querySelector('main h1').getBoundingClientRect(); return [box.left, innerWidth - box.right];";
            let before: [f64; 2] = serde_json::from_value(page.run(gap).await?)?;
            page.run("document.documentElement.dir = 'rtl';").await?;
            assert!(page.fits_its_width().await?, "“{}”", heading(page).await?);
            let after: [f64; 2] = serde_json::from_value(page.run(gap).await?)?;
            let [left, right] = before;
            assert!(
                (left - after[1]).abs() < 1.5 && (right - after[0]).abs() < 1.5,
                "“{}” is mirrored: {before:?} {after:?}", heading(page).await?
            );
            page.run("document.documentElement.dir = 'ltr';").await?;
            Ok(())
        })
        .await?;
        arrive(page, &heading(page).await?).await
    })
}

/// The least that a reader may set without losing anything (WCAG 2.2, criterion 1.4.12).
const SPACED: &str = "
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-block-end: 2em !important; }');
    document.adoptedStyleSheets = [sheet];";

#[test]
fn text_with_more_space_fits() -> Result<()> {
    journey(Look::PHONE, async |page| {
        on_each_kind_of_page(page, async |page| {
            open_all(page).await?;
            page.run(SPACED).await?;
            assert!(page.fits_its_width().await?, "“{}”", heading(page).await?);
            Ok(())
        })
        .await
    })
}
