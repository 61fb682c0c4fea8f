//! The distance page: what follows the slider, and what the page says its numbers rest on.

use self_check_tests::{Look, Page, Result, journey};

use crate::walking::{arrive, choose_scene, open_all};

const DISTANCE: &str = "Who could read it from where";

/// The picture in the canvas, as an address that holds all of it.
async fn picture(page: &Page) -> Result<String> {
    let shades = page
        .run("return document.querySelector('.recorded canvas').toDataURL();")
        .await?;
    Ok(shades.as_str().unwrap_or_default().to_owned())
}

async fn you(page: &Page) -> Result<String> {
    let place = page
        .run("return document.querySelector('.chart-you').getAttribute('d');")
        .await?;
    Ok(place.as_str().unwrap_or_default().to_owned())
}

#[test]
fn picture_mark_and_words_follow_the_slider_and_the_lines_stay() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open_at("#/distance").await?;
        arrive(page, DISTANCE).await?;
        page.tab_to("slider", "Distance:").await?;
        page.run(
            "window.line = document.querySelector('.chart-line-1');
             window.changes = 0;
             new MutationObserver(all => changes += all.length)
                 .observe(line, { attributes: true });",
        )
        .await?;
        let mut seen = vec![(picture(page).await?, you(page).await?)];
        for key in ["ArrowRight", "ArrowRight", "End", "Home"] {
            page.press(key).await?;
            page.wait_until("the picture has followed", async || {
                Ok(picture(page).await? != seen[seen.len() - 1].0)
            })
            .await?;
            let now = (picture(page).await?, you(page).await?);
            assert!(!seen.contains(&now), "{key} shows what was shown before");
            assert_ne!(now.1, seen[seen.len() - 1].1, "the mark has moved");
            seen.push(now);
        }
        page.wait_for_text("0.3\u{a0}m (1\u{a0}ft) away").await?;
        let kept = page
            .run("return changes === 0 && line === document.querySelector('.chart-line-1');")
            .await?;
        assert_eq!(
            kept, true,
            "the lines are not drawn anew while the slider moves"
        );
        Ok(())
    })
}

#[test]
fn every_figure_behind_the_numbers_can_be_seen_with_its_source() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/distance").await?;
        arrive(page, DISTANCE).await?;
        choose_scene(page, "Camera").await?;
        page.wait_for_text("a dot is 4 mm wide").await?;
        let caption = page
            .run("return document.querySelector('.chart-figure figcaption').textContent;")
            .await?;
        let caption = caption.as_str().unwrap_or_default();
        assert!(caption.contains("EN 1303"), "{caption}");
        open_all(page).await?;
        for text in [
            "equally likely",
            "Depths (how deep it is)",
            "0.381 mm",
            "3.967 mm",
            "0.79 mm",
            "maximum adjacent cut of common pin tumbler keys",
            "as two pictures of one edge",
        ] {
            page.wait_for_text(text).await?;
        }
        let text = page.visible_text().await?;
        assert!(!text.contains("Error of a caliper"), "{text}");
        page.must_be_accessible().await
    })
}
