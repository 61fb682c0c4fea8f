//! What a reader has asked of the system: less motion, or its own few colours.

use self_check_tests::{Look, Page, Result, journey};

use crate::walking::{NOT_SURE, answer, arrive, heading, tick, to_the_examples_result};

/// The longest time anything on the page takes to move or fade, in milliseconds.
const LONGEST_MOTION: &str = "
    const times = list => list.split(',').map(t => parseFloat(t) * (t.trim().endsWith('ms') ? 1 : 1000));
    return Math.max(...[...document.querySelectorAll('*')].flatMap(e => {
        const style = getComputedStyle(e);
        const runs = style.animationName === 'none' ? [] : times(style.animationDuration);
        return [0, ...times(style.transitionDuration), ...runs];
    }));";

async fn longest_motion(page: &Page) -> Result<f64> {
    let longest = page.run(LONGEST_MOTION).await?;
    longest.as_f64().ok_or("no time was measured".into())
}

#[test]
fn nothing_moves_where_less_motion_is_asked_for() -> Result<()> {
    let still = Look {
        reduced_motion: true,
        ..Look::PHONE
    };
    journey(still, async |page| {
        to_the_examples_result(page).await?;
        assert!(longest_motion(page).await? < 1.0, "on the result");
        let scrolls = page
            .run("return getComputedStyle(document.documentElement).scrollBehavior;")
            .await?;
        assert_eq!(scrolls, "auto");
        page.set_look(Look::PHONE).await?;
        assert!(
            longest_motion(page).await? > 1.0,
            "something moves where nothing is asked, or the measure measures nothing"
        );
        page.set_look(still).await?;
        page.open_at("#/distance").await?;
        assert!(longest_motion(page).await? < 1.0, "on the chart");
        Ok(())
    })
}

#[test]
fn forced_colours_leave_every_state_to_be_seen() -> Result<()> {
    let forced = Look {
        forced_colours: true,
        ..Look::PHONE
    };
    journey(forced, async |page| {
        page.open().await?;
        let drawn = page
            .run("return [...document.querySelectorAll('main svg .contour')].some(e => getComputedStyle(e).stroke !== getComputedStyle(document.body).backgroundColor);")
            .await?;
        assert_eq!(drawn, true, "the drawing stands out from the page");
        page.click("link", "There is a number on my key").await?;
        arrive(page, "Is anything stamped on the metal?").await?;
        let empty = look_of_first_row(page).await?;
        assert_eq!(look_of_first_row(page).await?, empty);
        tick(page, "Nothing").await?;
        assert_ne!(
            look_of_first_row(page).await?,
            empty,
            "the tick is to be seen"
        );
        page.press("Tab").await?;
        assert!(page.focus_shows().await?, "the focus is to be seen");
        page.must_be_accessible().await?;
        answer(page, &[NOT_SURE]).await?;
        assert!(!heading(page).await?.is_empty());
        to_the_examples_result(page).await?;
        page.must_be_accessible().await
    })
}

/// What the first choice and its box look like, by the styles that the browser uses, forced colours and all.
async fn look_of_first_row(page: &Page) -> Result<String> {
    let look = page
        .run(
            "const row = document.querySelector('.opt'), box = row.querySelector('input');
             const painted = (element, part) => { const style = getComputedStyle(element, part);
                 return [style.backgroundColor, style.backgroundImage, style.borderColor, style.borderWidth, style.content, style.transform, style.opacity].join(); };
             return [painted(row), painted(box), painted(box, '::before'), painted(box, '::after')].join('|');",
        )
        .await?;
    Ok(look.as_str().unwrap_or_default().to_owned())
}
