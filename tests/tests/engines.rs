//! The main walks through the site in browsers of other makes: `cargo xtask test engines`.

use self_check_tests::engine::{Engine, Tab, site, walk_in};
use self_check_tests::{Host, Result, one_file};
use thirtyfour::Key;

const START: &str = "How private is your key?";
const LOOK_OVER: &str = "Look over your answers";
const WHO: &str = "Who has this key, or has had it?";

/// One test for each make.
macro_rules! in_each {
    ($($name:ident;)*) => {
        mod firefox { $(#[test] fn $name() -> super::Result<()> { super::$name(super::Engine::Firefox) })* }
        mod webkit { $(#[test] fn $name() -> super::Result<()> { super::$name(super::Engine::WebKit) })* }
    };
}

in_each! {
    example_has_a_result;
    check_is_gone_through_by_hand_and_by_keys;
    second_program_comes_and_title_and_focus_follow;
    reload_back_and_leaving_bring_no_answer_back;
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
        tab.press("Leave now").await?;
        tab.wait("an empty page is there", async || {
            Ok(tab.text("return location.href;").await? == "about:blank")
        })
        .await?;
        tab.back().await?;
        tab.settle().await?;
        assert_eq!(ticked(tab).await?, 0, "after leaving");
        let text = tab.text("return document.body.innerText;").await?;
        assert!(!text.contains("short let"), "{text}");

        tab.open("").await?;
        tab.arrive(START).await?;
        assert_eq!(ticked(tab).await?, 0, "after coming again");
        let kept = tab
            .run("return [document.cookie, localStorage.length, sessionStorage.length].join();")
            .await?;
        assert_eq!(kept, ",0,0");
        Ok(())
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
    walk_in(engine, &site, async |tab| {
        to_the_examples_result(tab).await?;
        tab.press("How to check this page").await?;
        tab.see("This is the page as one file").await?;
        let fetched = tab
            .run("return performance.getEntriesByType('resource').filter(entry => !entry.name.startsWith('data:')).length;")
            .await?;
        assert_eq!(fetched, 0);
        tab.press("Leave now").await?;
        tab.wait("an empty page is there", async || {
            Ok(tab.text("return location.href;").await? == "about:blank")
        })
        .await
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
        tab.press("Leave now").await?;
        tab.wait("an empty page is there", async || {
            Ok(tab.text("return location.href;").await? == "about:blank")
        })
        .await?;
        host.restore();
        tab.open("").await?;
        let kept = tab.run("return (await caches.keys()).length;").await?;
        assert_eq!(kept, 0);
        Ok(())
    })
}
