//! Zoomed, touched, read from right to left, and told to a screen reader.

use self_check_tests::{Look, Page, Result, journey};

use crate::looking::{fits, on_each_kind_of_page};
use crate::walking::heading;

/// What 200 % and 400 % of zoom leave of a window of 1280 pixels.
const ZOOMED: [Look; 2] = [
    Look {
        width: 640,
        height: 450,
        ..Look::DESKTOP
    },
    Look::NARROW,
];

/// Every look at a page rests on these: [`Page::must_be_accessible`].
#[test]
fn what_is_told_badly_or_too_small_is_noticed() -> Result<()> {
    journey(Look::NARROW, async |page| {
        for (fault, wanted) in [
            (
                "main.append(Object.assign(document.createElement('button'), { className: 'tiny', ariaLabel: 'x' }));",
                "too small",
            ),
            (
                "main.append(document.createElement('button'));",
                "a button has no name",
            ),
            (
                "main.append(document.createElement('h4'));",
                "is of level 4 after",
            ),
            (
                "main.append(Object.assign(document.createElement('nav'), { ariaLabel: 'Pages' }), Object.assign(document.createElement('nav'), { ariaLabel: 'Pages' }));",
                "ways to other pages",
            ),
            (
                "main.append(Object.assign(document.createElement('p'), { role: 'status', hidden: false, className: 'gone' }));",
                "meant to be read out",
            ),
            (
                "main.append(Object.assign(document.createElement('h2'), { textContent: 'Low', className: 'high' }));",
                "headings are read as",
            ),
        ] {
            page.open().await?;
            page.must_be_accessible().await?;
            page.run(&format!(
                "const sheet = new CSSStyleSheet();
                 sheet.replaceSync('.tiny {{ all: unset; inline-size: 9px; block-size: 9px; display: block; }} .gone {{ display: none; }} .high {{ position: absolute; inset-block-start: 0; }}');
                 document.adoptedStyleSheets = [sheet];
                 const main = document.querySelector('main'); {fault}"
            ))
            .await?;
            let told = page.must_be_accessible().await;
            let told = told.err().map(|error| error.to_string());
            assert!(
                told.as_ref().is_some_and(|told| told.contains(wanted)),
                "{wanted}: {told:?}"
            );
        }
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
            fits(page, "more space").await?;
            page.run("document.adoptedStyleSheets = [];").await?;
            Ok(())
        })
        .await
    })
}

/// How far the site's name and the longest line of the heading are from the left and from the right.
const GAPS: &str = "
    return ['.name', 'main h1'].map(selector => {
        const words = document.createRange();
        words.selectNodeContents(document.querySelector(selector));
        const { left, right } = words.getBoundingClientRect();
        return [left, innerWidth - right];
    });";

/// As for a language that is written from the right: words keep their distance to the side where they begin.
async fn is_mirrored_from_the_right(page: &Page) -> Result<()> {
    let gaps: [[f64; 2]; 2] = serde_json::from_value(page.run(GAPS).await?)?;
    page.run("document.documentElement.dir = 'rtl';").await?;
    fits(page, "a script from the right").await?;
    let turned: [[f64; 2]; 2] = serde_json::from_value(page.run(GAPS).await?)?;
    let heading = heading(page).await?;
    for ([left, right], turned) in gaps.into_iter().zip(turned) {
        assert!(
            (left - turned[1]).abs() < 1.5 && (right - turned[0]).abs() < 1.5,
            "“{heading}”: {left} and {right} became {turned:?}"
        );
    }
    // A name that stood in the middle would be the same on both sides.
    let [left, right] = gaps[0];
    assert!((left - right).abs() > 10.0, "“{heading}”: {gaps:?}");
    page.run("document.documentElement.dir = 'ltr';").await?;
    Ok(())
}

/// The least that a reader may set without losing anything (WCAG 2.2, criterion 1.4.12).
const SPACED: &str = "
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-block-end: 2em !important; }');
    document.adoptedStyleSheets = [sheet];";
