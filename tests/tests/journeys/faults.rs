//! What may go wrong around the page, and a walk at random.

use self_check_tests::{Look, Page, Result, journey, troubled_journey};
use serde_json::json;

use crate::forgetting::keeps_nothing;
use crate::walking::{LOOK_OVER, answer, arrive, not_sure_to_the_end, to_the_examples_result};

/// Has a script run before the page's own from the next load on.
async fn before_the_page(page: &Page, script: &str) -> Result<()> {
    page.cdp("Page.enable", json!({})).await?;
    page.cdp(
        "Page.addScriptToEvaluateOnNewDocument",
        json!({ "source": script }),
    )
    .await?;
    Ok(())
}

#[test]
fn check_works_where_every_store_and_worker_is_forbidden() -> Result<()> {
    journey(Look::PHONE, async |page| {
        before_the_page(
            page,
            "for (const name of ['localStorage', 'sessionStorage', 'indexedDB', 'caches'])
                 Object.defineProperty(globalThis, name, { get() { throw new DOMException('forbidden', 'SecurityError'); } });
             Object.defineProperty(Navigator.prototype, 'serviceWorker', { get() { return {
                 getRegistration: () => Promise.reject(new DOMException('forbidden', 'SecurityError')),
                 register: () => Promise.reject(new DOMException('forbidden', 'SecurityError')),
             }; } });",
        )
        .await?;
        to_the_examples_result(page).await?;
        page.click("link", "How to check this page").await?;
        page.wait_for_text("The page cannot be kept here").await?;
        page.click("button", "Leave now").await?;
        left(page).await
    })
}

#[test]
fn keeping_that_fails_is_told() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        before_the_page(
            page,
            "if (globalThis.ServiceWorkerContainer) ServiceWorkerContainer.prototype.register = () => Promise.reject(new TypeError('forbidden'));",
        )
        .await?;
        page.open_at("#/about").await?;
        page.click("button", "Keep this page for use without a network")
            .await?;
        page.wait_for_text("Your browser did not keep the page")
            .await?;
        page.must_be_accessible().await?;
        page.find("button", "Try again").await?;
        keeps_nothing(page).await
    })
}

#[test]
fn wrong_clock_changes_nothing() -> Result<()> {
    let mut results = Vec::new();
    for clock in ["0", "4102444800000"] {
        journey(Look::DESKTOP, async |page| {
            before_the_page(
                page,
                &format!("Date.now = () => {clock}; globalThis.Date = class extends Date {{ constructor() {{ super({clock}); }} }};"),
            )
            .await?;
            to_the_examples_result(page).await?;
            results.push(page.visible_text().await?);
            Ok(())
        })?;
    }
    assert_eq!(results[0], results[1]);
    Ok(())
}

#[test]
fn tab_that_is_ended_in_the_middle_brings_no_answer_back() -> Result<()> {
    troubled_journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Someone had my key").await?;
        arrive(page, "Who has this key, or has had it?").await?;
        answer(page, &["Guests of a short let"]).await?;
        // The browser restores a tab by its address and its history, as it does after it was ended for want of memory.
        let history = page.cdp("Page.getNavigationHistory", json!({})).await?;
        let last = history["currentIndex"].as_u64().unwrap_or(0) as usize;
        let address = history["entries"][last]["url"].as_str().unwrap_or_default();
        assert!(address.ends_with("#/check/2"), "{address}");
        let tail = address.strip_prefix(&page.site).unwrap_or_default();
        page.open_at(tail).await?;
        page.wait_for_text("This page keeps no answers").await?;
        let ticked = page
            .run("return document.querySelectorAll('input:checked').length;")
            .await?;
        assert_eq!(ticked, 0);
        keeps_nothing(page).await
    })
}

async fn left(page: &Page) -> Result<()> {
    page.wait_until("an empty page is there", async || {
        Ok(page.run("return location.href;").await? == "about:blank")
    })
    .await
}

/// How many walks are made, each from the start page: on an ordinary run, in about 25 seconds, and with the variable
/// `SELF_CHECK_ALL_WALKS` set. How many at a time, and how many moves each has. A move is a press on anything that can be
/// pressed. What was answered stays, so that the walks come by every page.
const WALKS: u64 = 250;
const ALL_WALKS: u64 = 10_000;
const AT_A_TIME: u64 = 50;
const MOVES: u64 = 6;

/// Pages by their headings that the walks come by at least: all of the start, the ways to read and most questions.
const FEWEST_PAGES: u64 = 20;

/// Walks at random, always the same: the seed is fixed, and the generator is that of Numerical Recipes. It stops at the
/// first thing that is wrong and says what. It presses neither what leaves the page nor what stores or fetches anything.
const WALK: &str = r"
    globalThis.walk ??= { seed: 20260101, moves: 0, pages: new Set() };
    window.print = () => {};
    const next = below => { walk.seed = (Math.imul(walk.seed, 1664525) + 1013904223) >>> 0; return Math.floor(walk.seed / 2 ** 32 * below); };
    const turn = () => new Promise(done => { const { port1, port2 } = new MessageChannel(); port1.onmessage = done; port2.postMessage(0); });
    const never = /^(Leave now|Keep this page|Keep it no longer|Download|Copy)/;
    const addresses = /^#\/(|check\/\d+|learn|learn\/\d+|distance|picture|ruler|about|keys|keys\/[1-4])$/;
    for (let i = 0; i < COUNT; i++) {
        location.hash = '#/';
        await turn();
        for (let move = 0; move < MOVES; move++) {
            const all = [...document.querySelectorAll('a[href], button, input, summary, option')].filter(one => !never.test(one.textContent.trim()) && !one.matches('[type=file]'));
            const one = all[next(all.length)];
            if (one.type === 'range') {
                one.value = next(1000) / 1000 * (one.max - one.min) + Number(one.min);
                one.dispatchEvent(new InputEvent('input', { bubbles: true }));
            } else if (one.matches('option')) {
                one.selected = true;
                one.closest('select').dispatchEvent(new Event('change', { bubbles: true }));
            } else one.click();
            walk.moves += 1;
            await turn();
            walk.pages.add(document.querySelector('main h1')?.textContent);
            const ticked = [...document.querySelectorAll('.opt:has(:checked) b')].map(b => b.textContent);
            const said = document.title + decodeURIComponent(location.href) + JSON.stringify(history.state);
            const wrong = document.documentElement.dataset.check !== 'ready' ? 'it has stopped'
                : !addresses.test(location.hash) ? 'an address that is none'
                : document.querySelector('main h1')?.textContent === 'There is no such page' ? 'a page that is none'
                : ticked.some(answer => answer.length > 6 && said.includes(answer)) ? 'an answer in title or address'
                : document.querySelectorAll('main').length !== 1 ? 'not one page' : '';
            if (wrong) return `${wrong} after ${walk.moves} moves, the last on ${one.outerHTML.slice(0, 120)} at ${location.hash}`;
        }
    }
    return walk.pages.size;";

#[test]
fn walks_at_random_meet_no_fault_and_leave_no_trace() -> Result<()> {
    journey(Look::PHONE, async |page| {
        // The second program is there from the start, so that no move asks for anything.
        page.open_at("#/learn").await?;
        arrive(page, "Learn").await?;
        let script = WALK
            .replace("COUNT", &AT_A_TIME.to_string())
            .replace("MOVES", &MOVES.to_string());
        let begun = std::time::Instant::now();
        let (mut walks, mut pages) = (0, 0);
        let wanted = match std::env::var_os("SELF_CHECK_ALL_WALKS") {
            Some(_) => ALL_WALKS,
            None => WALKS,
        };
        while walks < wanted {
            let outcome = page.run(&script).await?;
            pages = outcome.as_u64().ok_or_else(|| outcome.to_string())?;
            walks += AT_A_TIME;
            keeps_nothing(page).await?;
        }
        println!(
            "{walks} walks at random by {pages} pages in {:.0} s",
            begun.elapsed().as_secs_f64()
        );
        assert!(pages >= FEWEST_PAGES, "{pages} pages");
        // What was met at random still works.
        page.open().await?;
        page.click("link", "Check a key").await?;
        not_sure_to_the_end(page).await?;
        arrive(page, LOOK_OVER).await
    })
}
