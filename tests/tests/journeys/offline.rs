//! Kept for use without a network: only when asked, whole or not at all, never two versions at once, and gone by
//! "Leave now".

use std::time::Duration;

use self_check_tests::{Host, Look, Page, Result, journey_at, troubled_journey_at};

use crate::walking::{arrive, heading, to_the_examples_result};

const ABOUT: &str = "How to check this page";
const START: &str = "How private is your key?";
const KEEP: &str = "Keep this page for use without a network";
const MARK: &str = "the-second-version";

/// The names of this origin's caches and the scopes of its workers.
const KEPT: &str = "
    const workers = await navigator.serviceWorker.getRegistrations();
    return [...await caches.keys(), ...workers.map(worker => worker.scope)];";

async fn kept(page: &Page) -> Result<Vec<String>> {
    Ok(serde_json::from_value(page.run(KEPT).await?)?)
}

async fn keep(page: &Page) -> Result<()> {
    page.open_at("#/about").await?;
    arrive(page, ABOUT).await?;
    page.click("button", KEEP).await?;
    page.wait_for_text("This page is kept in this browser")
        .await?;
    assert_eq!(focused(page).await?, "Keep it no longer");
    Ok(())
}

/// The words of what has the focus.
async fn focused(page: &Page) -> Result<String> {
    let words = page.run("return document.activeElement.textContent;");
    Ok(words.await?.as_str().unwrap_or_default().to_owned())
}

#[test]
fn storing_and_removing_are_told_and_keep_the_focus() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::PHONE, async |page| {
        page.open_at("#/about").await?;
        arrive(page, ABOUT).await?;
        host.slow_down(Duration::from_secs(1));
        page.click("button", KEEP).await?;
        page.wait_for_text("Storing the page").await?;
        assert_eq!(focused(page).await?, KEEP);
        let disabled = "return document.activeElement.getAttribute('aria-disabled');";
        assert_eq!(page.run(disabled).await?, "true");
        page.must_be_accessible().await?;
        page.wait_for_text("This page is kept in this browser")
            .await?;
        assert_eq!(focused(page).await?, "Keep it no longer");
        let told = "return [...document.querySelectorAll('[role=status]')].filter(told => told.querySelector('button')).length;";
        assert_eq!(page.run(told).await?, 0, "what is read out is text alone");
        host.restore();
        // The browser asks for these by itself; that is no fault of the page.
        page.run("return (await fetch(document.querySelector('link[rel=manifest]').href)).status;")
            .await?;
        page.click("button", "Look again").await?;
        page.wait_for_text("the kept page’s name and icons").await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("There should be none"), "{text}");
        page.click("button", "Keep it no longer").await?;
        page.wait_for_text("no longer kept").await?;
        assert_eq!(focused(page).await?, KEEP);

        host.refuse("503 Service Unavailable");
        page.click("button", KEEP).await?;
        page.wait_for_text("did not keep the page").await?;
        assert_eq!(focused(page).await?, "Try again");
        assert_eq!(kept(page).await?, Vec::<String>::new());
        Ok(())
    })
}

#[test]
fn nothing_is_kept_unasked() -> Result<()> {
    let host = Host::under("/")?;
    journey_at(&host.address, Look::PHONE, async |page| {
        to_the_examples_result(page).await?;
        page.click("link", ABOUT).await?;
        arrive(page, ABOUT).await?;
        page.find("button", KEEP).await?;
        assert_eq!(kept(page).await?, Vec::<String>::new());
        let manifests = "return document.querySelectorAll('link[rel=manifest]').length;";
        assert_eq!(page.run(manifests).await?, 0);
        page.must_be_accessible().await
    })
}

#[test]
fn page_that_is_kept_works_without_a_network_until_leave_now() -> Result<()> {
    let host = Host::under("/home/keys/")?;
    troubled_journey_at(&host.address, Look::PHONE, async |page| {
        keep(page).await?;
        let names = kept(page).await?;
        assert_eq!(names.len(), 2, "one cache and one worker: {names:?}");
        assert!(
            names.iter().all(|name| name.contains(&host.address)),
            "{names:?}"
        );
        page.must_be_accessible().await?;

        host.cut();
        to_the_examples_result(page).await?;
        page.click("link", "Learn").await?;
        arrive(page, "Learn").await?;
        page.open_at("#/distance").await?;
        arrive(page, "Who could read it from where").await?;
        let icon = page
            .run("const manifest = await (await fetch(document.querySelector('link[rel=manifest]').href)).json();
                  return (await fetch(manifest.icons[0].src)).headers.get('content-type');")
            .await?;
        assert_eq!(
            icon, "image/svg+xml",
            "what an installed page needs is kept too"
        );

        page.click("button", "Leave now").await?;
        page.wait_until("an empty page is there", async || {
            Ok(page.run("return location.href;").await? == "about:blank")
        })
        .await?;
        host.restore();
        page.open().await?;
        page.wait_until("nothing is kept", async || Ok(kept(page).await?.is_empty()))
            .await
    })
}

#[test]
fn page_that_is_left_while_it_is_being_stored_is_not_kept() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::PHONE, async |page| {
        page.open_at("#/about").await?;
        arrive(page, ABOUT).await?;
        // Longer than the page waits when it is left: it is gone before the worker is there.
        host.slow_down(Duration::from_millis(1500));
        page.click("button", KEEP).await?;
        page.click("button", "Leave now").await?;
        page.wait_until("an empty page is there", async || {
            Ok(page.run("return location.href;").await? == "about:blank")
        })
        .await?;
        host.restore();
        // Time for the worker, and then for all that it would store.
        tokio::time::sleep(Duration::from_secs(4)).await;
        page.open().await?;
        assert_eq!(kept(page).await?, Vec::<String>::new());
        Ok(())
    })
}

#[test]
fn what_is_kept_can_be_removed_alone() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::DESKTOP, async |page| {
        keep(page).await?;
        // A cache of another site at this origin stays.
        page.run("await caches.open('another site');").await?;
        page.click("button", "Keep it no longer").await?;
        page.find("button", KEEP).await?;
        assert_eq!(kept(page).await?, ["another site"]);

        page.click("button", KEEP).await?;
        page.wait_for_text("This page is kept in this browser")
            .await?;
        host.cut();
        page.open().await?;
        assert_eq!(page.state().await?, "ready", "kept once more, and whole");
        Ok(())
    })
}

/// Puts another version of the page on the host, in one step or with a page that does not fit its sum.
async fn publish(page: &Page, host: &Host, is_whole: bool) -> Result<()> {
    let old = host.text("index.html")?;
    let new = old.replace("<body>", &format!("<body data-version=\"{MARK}\">"));
    assert_ne!(old, new);
    let sum = |text: &str| {
        let text = serde_json::Value::from(text).to_string();
        format!(
            "const sum = await crypto.subtle.digest('SHA-256', new TextEncoder().encode({text}));
             return 'sha256-' + btoa(String.fromCharCode(...new Uint8Array(sum)));"
        )
    };
    let old_sum = page.run(&sum(&old)).await?;
    let new_sum = page.run(&sum(&new)).await?;
    let (Some(old_sum), Some(new_sum)) = (old_sum.as_str(), new_sum.as_str()) else {
        return Err("the browser worked out no sum".into());
    };
    let worker = host.text("worker.js")?;
    assert!(
        worker.contains(old_sum),
        "the worker knows the page by its sum"
    );
    let worker = worker
        .replace(old_sum, new_sum)
        .replace("const VERSION = \"", "const VERSION = \"2-");
    host.put("worker.js", &worker);
    if is_whole {
        host.put("index.html", &new);
    }
    Ok(())
}

async fn version(page: &Page) -> Result<String> {
    let version = page
        .run("return document.body.dataset.version ?? '';")
        .await?;
    Ok(version.as_str().unwrap_or_default().to_owned())
}

#[test]
fn new_version_comes_with_the_network_and_is_then_the_one_kept() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::DESKTOP, async |page| {
        keep(page).await?;
        let first = kept(page).await?;
        publish(page, &host, true).await?;
        page.open().await?;
        assert_eq!(
            version(page).await?,
            MARK,
            "with a network nobody has an old page"
        );
        page.wait_until("the second version is whole, and waits", async || {
            let waits =
                "return (await navigator.serviceWorker.getRegistration()).waiting !== null;";
            Ok(page.run(waits).await? == true)
        })
        .await?;
        // The worker of the second version takes over once no page of the first is open: at this visit, or a later one
        // where the browser is slow to notice.
        page.wait_until("the first version is gone", async || {
            page.open().await?;
            Ok(!kept(page).await?.contains(&first[0]))
        })
        .await?;
        host.cut();
        page.open().await?;
        assert_eq!(version(page).await?, MARK);
        assert_eq!(page.state().await?, "ready");
        Ok(())
    })
}

/// Has the browser look for a new worker, and tells what became of it.
const UPDATE: &str = "
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update();
    const worker = registration.installing ?? registration.waiting;
    if (worker === null) return 'no new worker';
    if (worker.state === 'installing') await new Promise(done => worker.addEventListener('statechange', done));
    return worker.state;";

#[test]
fn worker_that_fails_leaves_what_the_one_before_it_keeps() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::DESKTOP, async |page| {
        keep(page).await?;
        let first = kept(page).await?;
        // As if the two had one store: the same files under the same version, of which one is missing.
        let worker = host.text("worker.js")?;
        host.put("worker.js", &format!("{worker}// mended"));
        host.take_away("icon");
        assert_eq!(page.run(UPDATE).await?, "redundant");
        assert_eq!(kept(page).await?, first);
        host.cut();
        page.open().await?;
        assert_eq!(page.state().await?, "ready");
        Ok(())
    })
}

#[test]
fn what_is_kept_stands_in_for_a_server_in_trouble_and_for_no_other_answer() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::DESKTOP, async |page| {
        keep(page).await?;
        // Another page by the same worker: which of the two is shown tells where it came from.
        let old = host.text("index.html")?;
        let new = old.replace("<body>", &format!("<body data-version=\"{MARK}\">"));
        host.put("index.html", &new);
        page.open().await?;
        assert_eq!(
            version(page).await?,
            MARK,
            "with a network it comes from there"
        );
        host.refuse("503 Service Unavailable");
        page.open().await?;
        assert_eq!(version(page).await?, "", "the server fails");
        for status in ["404 Not Found", "410 Gone"] {
            host.refuse(status);
            page.load_only("").await?;
            let text = page.run("return document.body.textContent.trim();").await?;
            assert_eq!(text, status, "a page that was taken down is down");
        }
        host.slow_down(Duration::from_secs(20));
        page.open().await?;
        assert_eq!(version(page).await?, "", "longer than a person's patience");
        Ok(())
    })
}

#[test]
fn half_a_version_is_never_kept() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::DESKTOP, async |page| {
        keep(page).await?;
        let first = kept(page).await?;
        publish(page, &host, false).await?;
        assert_eq!(
            page.run(UPDATE).await?,
            "redundant",
            "a page that does not fit its sum is refused"
        );
        assert_eq!(kept(page).await?, first);
        host.cut();
        page.open().await?;
        assert_eq!(version(page).await?, "");
        assert_eq!(page.state().await?, "ready");
        Ok(())
    })
}

#[test]
fn open_page_gets_the_parts_of_its_own_version() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::DESKTOP, async |page| {
        keep(page).await?;
        page.open().await?;
        arrive(page, START).await?;
        publish(page, &host, true).await?;
        host.take_away("rooms-");
        page.click("link", "Learn").await?;
        arrive(page, "Learn").await
    })
}

#[test]
fn nothing_is_offered_to_keep_where_a_person_is_feared() -> Result<()> {
    let host = Host::under("/")?;
    journey_at(&host.address, Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Worried about a person?").await?;
        arrive(page, "Your safety comes first").await?;
        page.click("link", ABOUT).await?;
        arrive(page, ABOUT).await?;
        page.wait_for_text("Nothing to keep or to download is offered")
            .await?;
        let buttons = page.names("button").await?;
        assert!(!buttons.contains(&KEEP.to_owned()), "{buttons:?}");
        let links = page.names("link").await?;
        assert!(
            !links.iter().any(|link| link.contains("Download")),
            "{links:?}"
        );
        assert!(!heading(page).await?.is_empty());
        Ok(())
    })
}
