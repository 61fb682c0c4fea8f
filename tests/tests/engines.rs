//! The main walks through the site in browsers of three makes: `cargo xtask test engines`.

use self_check_tests::engine::{Engine, Tab, site, walk_in};
use self_check_tests::given::{Kind, Picture};
use self_check_tests::{Host, KEPT, Result, one_file};
use thirtyfour::Key;

const START: &str = "How private is your key?";
const LOOK_OVER: &str = "Look over your answers";
const BOARD: &str = "Two keys could be in wrong hands";
const MISSING: &str = "This page could not be loaded";
const WHO: &str = "Who has this key, or has had it?";

/// One test for each make.
macro_rules! in_each {
    ($($name:ident;)*) => {
        mod chromium { $(#[test] fn $name() -> super::Result<()> { super::$name(super::Engine::Chromium) })* }
        mod firefox { $(#[test] fn $name() -> super::Result<()> { super::$name(super::Engine::Firefox) })* }
        mod webkit { $(#[test] fn $name() -> super::Result<()> { super::$name(super::Engine::WebKit) })* }
    };
}

in_each! {
    example_has_a_result;
    check_is_gone_through_by_hand_and_by_keys;
    second_program_comes_and_title_and_focus_follow;
    reload_back_and_leaving_bring_no_answer_back;
    tab_that_is_opened_again_brings_no_answer_back;
    keys_and_doors_are_undone_planned_kept_and_left;
    picture_is_checked_and_dropped;
    list_comes_where_the_program_is_missing;
    what_cannot_be_fetched_kept_or_stored_is_told;
    page_forbids_itself_what_it_says;
    pages_fit_a_narrow_window;
    one_file_works_from_disk;
    page_is_kept_for_use_without_a_network;
}

async fn ticked(tab: &Tab) -> Result<u64> {
    let count = tab
        .run("return document.querySelectorAll('input:checked').length;")
        .await?;
    Ok(count.as_u64().unwrap_or(u64::MAX))
}

/// From the start page to the first answer of a path.
async fn one_answer(tab: &Tab) -> Result<()> {
    tab.open("").await?;
    tab.press("Someone had my key").await?;
    tab.arrive(WHO).await?;
    tab.press("Guests of a short let").await?;
    assert!(ticked(tab).await? > 0, "the tick is taken");
    tab.press("Continue").await?;
    tab.wait("another page is there", async || {
        Ok(tab.heading().await? != WHO)
    })
    .await
}

async fn to_the_examples_result(tab: &Tab) -> Result<()> {
    tab.open("").await?;
    tab.arrive(START).await?;
    tab.press("Try it with an example").await?;
    tab.arrive(LOOK_OVER).await?;
    tab.press("See the result").await?;
    tab.see("Take it along").await
}

fn example_has_a_result(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, to_the_examples_result)
}

fn check_is_gone_through_by_hand_and_by_keys(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, async |tab| {
        one_answer(tab).await?;
        let mut pages = 0;
        while tab.heading().await? != LOOK_OVER {
            let before = tab.heading().await?;
            // "Not sure" is the last box of every question; a page to read has none.
            tab.run("[...document.querySelectorAll('main .opts input')].at(-1)?.focus();")
                .await?;
            if tab
                .run("return document.activeElement.matches('.opts input');")
                .await?
                == true
            {
                tab.key(Key::Space).await?;
            }
            tab.press("Continue").await?;
            tab.wait("the next page is there", async || {
                Ok(tab.heading().await? != before)
            })
            .await?;
            pages += 1;
            assert!(pages < 30, "{pages} pages");
        }
        assert!(pages >= 8, "{pages} pages");
        tab.press("See the result").await?;
        tab.wait("a result is there", async || {
            let title = tab.text("return document.title;").await?;
            Ok(title == "Your result · House Key Self-Check")
        })
        .await
    })
}

fn second_program_comes_and_title_and_focus_follow(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, async |tab| {
        tab.open("").await?;
        for page in [
            "Learn",
            "Who could read it from where",
            "How to check this page",
        ] {
            tab.press(page).await?;
            tab.arrive(page).await?;
            tab.wait("title and focus have followed", async || {
                let found = tab
                    .text("return document.title + '|' + (document.activeElement.matches('main h1') ? document.activeElement.textContent : '');")
                    .await?;
                Ok(found == format!("{page} · House Key Self-Check|{page}"))
            })
            .await?;
        }
        tab.back().await?;
        tab.arrive("Who could read it from where").await
    })
}

fn reload_back_and_leaving_bring_no_answer_back(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, async |tab| {
        one_answer(tab).await?;
        tab.reload().await?;
        tab.see("This page keeps no answers").await?;
        assert_eq!(ticked(tab).await?, 0, "after loading anew");

        one_answer(tab).await?;
        tab.run("location.href = 'index.html?other';").await?;
        tab.wait("the other page is there", async || {
            Ok(tab.text("return location.search;").await? == "?other")
        })
        .await?;
        tab.settle().await?;
        tab.back().await?;
        tab.wait("the first is back", async || {
            Ok(tab.text("return location.search;").await?.is_empty())
        })
        .await?;
        tab.settle().await?;
        tab.arrive(START).await?;
        assert_eq!(ticked(tab).await?, 0, "after going back");

        one_answer(tab).await?;
        leave(tab).await?;
        tab.back().await?;
        tab.settle().await?;
        assert_eq!(ticked(tab).await?, 0, "after leaving");
        let text = tab.text("return document.body.innerText;").await?;
        assert!(!text.contains("short let"), "{text}");

        tab.open("").await?;
        tab.arrive(START).await?;
        assert_eq!(ticked(tab).await?, 0, "after coming again");
        keeps_nothing(tab).await
    })
}

/// Fails if the browser keeps anything for the site: no cookie, record, copy or worker.
async fn keeps_nothing(tab: &Tab) -> Result<()> {
    assert_eq!(tab.text(KEPT).await?, "");
    Ok(())
}

async fn leave(tab: &Tab) -> Result<()> {
    tab.press("Leave now").await?;
    tab.wait("an empty page is there", async || {
        Ok(tab.text("return location.href;").await? == "about:blank")
    })
    .await
}

fn tab_that_is_opened_again_brings_no_answer_back(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, async |tab| {
        one_answer(tab).await?;
        tab.close_and_open_again().await?;
        tab.see("This page keeps no answers").await?;
        assert_eq!(ticked(tab).await?, 0);
        keeps_nothing(tab).await
    })
}

/// From the example's board by a lost ring, undone and done again, to the plan.
async fn to_a_plan(tab: &Tab) -> Result<()> {
    tab.press("Keys and doors").await?;
    tab.arrive("Keys and doors").await?;
    tab.press("Try it with an example").await?;
    tab.arrive(BOARD).await?;
    tab.press("This ring is lost: Lodger").await?;
    tab.see("Lodger: lost keys").await?;
    tab.arrive("Three keys could be in wrong hands").await?;
    tab.press("Undo").await?;
    tab.arrive(BOARD).await?;
    tab.press("Redo").await?;
    tab.arrive("Three keys could be in wrong hands").await?;
    tab.press("What to do").await?;
    tab.arrive("What to do").await?;
    tab.see("Have a locksmith see to").await
}

fn keys_and_doors_are_undone_planned_kept_and_left(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, async |tab| {
        tab.open("").await?;
        to_a_plan(tab).await?;

        // An invented home is not kept; one of one's own is, until one leaves.
        tab.open("#/keys").await?;
        tab.see("Nothing is kept on this device.").await?;
        tab.press("Put it on the board").await?;
        tab.arrive("No key here is known to be in wrong hands")
            .await?;
        tab.press("Keep every change on this device").await?;
        tab.see("Your doors, keys and people are kept on this device.")
            .await?;
        tab.close_and_open_again().await?;
        tab.arrive("No key here is known to be in wrong hands")
            .await?;
        assert_ne!(tab.text(KEPT).await?, "");
        leave(tab).await?;
        tab.open("").await?;
        keeps_nothing(tab).await
    })
}

/// Checks a picture from the chooser to a copy.
async fn check_a_picture(tab: &Tab, picture: &Picture) -> Result<()> {
    tab.choose_file_in("picture-file", picture.path()).await?;
    tab.wait("the picture can be marked", async || {
        Ok(tab.text("return document.activeElement.id;").await? == "picture-told")
    })
    .await?;
    for (mark, end) in [(0.3, 0.5), (0.7, 0.5)].into_iter().zip(picture.ends()) {
        tab.drag_on(".stage-over", mark, end).await?;
    }
    tab.press("Round, also where it sits in a knob").await?;
    tab.press("Check this picture").await?;
    tab.see("What makes it safer").await?;
    let band = "return document.querySelector('#picture-outcome').textContent;";
    assert_eq!(tab.text(band).await?, "Readable");
    tab.press("Make the copy").await?;
    tab.see("The covered part is one plain colour").await
}

fn picture_is_checked_and_dropped(engine: Engine) -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    walk_in(engine, &site()?, async |tab| {
        tab.open("#/picture").await?;
        tab.arrive("Check a picture").await?;
        check_a_picture(tab, &picture).await?;
        tab.press("Learn").await?;
        tab.arrive("Learn").await?;
        tab.wait("nothing is left of the picture", async || {
            let canvases = tab.run("return document.querySelectorAll('canvas').length;");
            Ok(canvases.await? == 0)
        })
        .await?;
        keeps_nothing(tab).await
    })
}

fn list_comes_where_the_program_is_missing(engine: Engine) -> Result<()> {
    let host = Host::under("/")?;
    host.take_away("check-");
    walk_in(engine, &host.address, async |tab| {
        tab.open("").await?;
        tab.see("The guided check could not start in this browser.")
            .await?;
        tab.see("Check your house key with this list").await
    })
}

fn what_cannot_be_fetched_kept_or_stored_is_told(engine: Engine) -> Result<()> {
    let host = Host::under("/")?;
    host.take_away("worker.js");
    walk_in(engine, &host.address, async |tab| {
        one_answer(tab).await?;
        let here = tab.heading().await?;
        host.cut();
        tab.press("Learn").await?;
        tab.arrive(MISSING).await?;
        tab.see("Your answers are still here").await?;
        host.restore();
        tab.press("Try again").await?;
        tab.arrive("Learn").await?;
        tab.back().await?;
        tab.arrive(&here).await?;

        tab.press("How to check this page").await?;
        tab.press("Keep this page for use without a network")
            .await?;
        tab.see("did not keep the page").await?;
        keeps_nothing(tab).await?;

        tab.open("").await?;
        // Firefox shows a driver's scripts a copy of the page's own window, but for this name.
        tab.run("Object.defineProperty(window.wrappedJSObject ?? window, 'indexedDB', { value: undefined });")
            .await?;
        tab.press("Keys and doors").await?;
        tab.arrive("Keys and doors").await?;
        tab.press("Put it on the board").await?;
        tab.arrive("No key here is known to be in wrong hands")
            .await?;
        tab.press("Keep every change on this device").await?;
        tab.see("does not let the page keep anything").await
    })
}

fn page_forbids_itself_what_it_says(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, async |tab| {
        tab.open("").await?;
        let outcome = tab
            .run(
                "let policy = '';
                 addEventListener('securitypolicyviolation', event => policy = event.effectiveDirective);
                 const outcome = await fetch('http://127.0.0.1:9/').then(() => 'reached', () => 'stopped');
                 await new Promise(done => setTimeout(done, 300));
                 return outcome + ' by ' + policy;",
            )
            .await?;
        assert_eq!(outcome, "stopped by connect-src");
        Ok(())
    })
}

fn pages_fit_a_narrow_window(engine: Engine) -> Result<()> {
    walk_in(engine, &site()?, async |tab| {
        tab.widen(480).await?;
        for tail in [
            "",
            "#/check/0",
            "#/learn",
            "#/distance",
            "#/ruler",
            "#/about",
            "#/keys",
            "#/picture",
        ] {
            tab.open(tail).await?;
            tab.wait("a heading is there", async || {
                Ok(!tab.heading().await?.is_empty())
            })
            .await?;
            let too_wide = tab
                .run("return document.documentElement.scrollWidth - document.documentElement.clientWidth;")
                .await?;
            assert_eq!(too_wide, 0, "at {tail:?}");
        }
        to_the_examples_result(tab).await
    })
}

fn one_file_works_from_disk(engine: Engine) -> Result<()> {
    let site = format!("file://{}", one_file()?.display());
    let picture = Picture::new(Kind::Clear)?;
    walk_in(engine, &site, async |tab| {
        to_the_examples_result(tab).await?;
        to_a_plan(tab).await?;
        tab.open("#/picture").await?;
        tab.arrive("Check a picture").await?;
        check_a_picture(tab, &picture).await?;
        tab.press("How to check this page").await?;
        tab.see("This is the page as one file").await?;
        let fetched = tab
            .run("return performance.getEntriesByType('resource').filter(entry => !entry.name.startsWith('data:')).length;")
            .await?;
        assert_eq!(fetched, 0);
        leave(tab).await
    })
}

fn page_is_kept_for_use_without_a_network(engine: Engine) -> Result<()> {
    let host = Host::under("/keys/")?;
    walk_in(engine, &host.address, async |tab| {
        tab.open("#/about").await?;
        tab.press("Keep this page for use without a network")
            .await?;
        tab.see("This page is kept in this browser").await?;
        host.cut();
        to_the_examples_result(tab).await?;
        tab.press("Learn").await?;
        tab.arrive("Learn").await?;
        assert_ne!(tab.text(KEPT).await?, "");
        leave(tab).await?;
        host.restore();
        tab.open("").await?;
        keeps_nothing(tab).await
    })
}
