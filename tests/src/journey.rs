//! One journey: a fresh browser, a walk through the page, and what must hold at the end of each.

use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::path::{Path, PathBuf};

use thirtyfour::{Capabilities, WebDriver};
use tokio::runtime::{Builder, Runtime};

use crate::driver::Driver;
use crate::{Look, Page, Result, picture};

/// Walks through the page in a fresh browser. At the end the page must have kept to itself: no request to another
/// origin, none at all once it was ready but for its own second program when that was opened, and an empty console.
///
/// When a journey fails, a picture of where it stood and the page's text are left in `target/journeys/`.
pub fn journey(look: Look, walk: impl AsyncFnOnce(&Page) -> Result<()>) -> Result<()> {
    journey_at(&site()?, look, walk)
}

/// The same through a page that is served elsewhere.
pub fn journey_at(
    site: &str,
    look: Look,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    travel(site, look, walk, async |page| {
        let complaints = page.record().await?.complaints(&page.site);
        match complaints.is_empty() {
            true => Ok(()),
            false => Err(format!(
                "the page did not keep to itself:\n{}",
                complaints.join("\n")
            )
            .into()),
        }
    })
}

/// A journey on which something is made to fail on purpose, so that the browser has reason to complain. Even then the
/// page asks nothing of another origin.
pub fn troubled_journey(look: Look, walk: impl AsyncFnOnce(&Page) -> Result<()>) -> Result<()> {
    troubled_journey_at(&site()?, look, walk)
}

/// The same through a page that is served elsewhere.
pub fn troubled_journey_at(
    site: &str,
    look: Look,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    travel(site, look, walk, async |page| {
        let record = page.record().await?;
        let foreign = record.foreign(&page.site);
        match foreign.is_empty() {
            true => Ok(()),
            false => Err(format!("the page asked another origin: {foreign:?}").into()),
        }
    })
}

/// Where `cargo xtask test` serves the site.
fn site() -> Result<String> {
    std::env::var("SELF_CHECK_ADDRESS").map_err(|_| {
        "SELF_CHECK_ADDRESS is not set: run the journeys by `cargo xtask test journeys`".into()
    })
}

fn travel(
    site: &str,
    look: Look,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
    end: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    let runtime = Builder::new_current_thread().enable_all().build()?;
    let driver = Driver::start()?;
    let page = runtime.block_on(arrive(&driver, site, look))?;
    // A failed assertion must not leave a browser behind: it goes on once the browser is closed.
    let walked = catch_unwind(AssertUnwindSafe(|| {
        runtime.block_on(async {
            walk(&page).await?;
            end(&page).await
        })
    }));
    if !matches!(walked, Ok(Ok(()))) {
        runtime.block_on(leave_traces(&page));
    }
    close(&runtime, page)?;
    walked.unwrap_or_else(|panic| resume_unwind(panic))
}

async fn arrive(driver: &Driver, site: &str, look: Look) -> Result<Page> {
    let capabilities: Capabilities = serde_json::from_value(driver.capabilities())?;
    let browser = WebDriver::new(&*driver.address, capabilities).await?;
    let page = Page::new(browser, site, look);
    page.set_look(look).await?;
    Ok(page)
}

fn close(runtime: &Runtime, page: Page) -> Result<()> {
    Ok(runtime.block_on(page.driver.quit())?)
}

/// Leaves what helps to understand a failure. What cannot be had is done without: the failure itself is the news.
async fn leave_traces(page: &Page) {
    let name = std::thread::current()
        .name()
        .unwrap_or("journey")
        .replace("::", "-");
    let folder = traces();
    if let Ok(content) = page.whole_picture().await {
        let _ = picture::write(&folder.join(format!("{name}.png")), &content);
    }
    let text = page.visible_text().await.unwrap_or_default();
    let record = page
        .record()
        .await
        .map(|record| format!("{record:#?}"))
        .unwrap_or_default();
    let _ = picture::write(
        &folder.join(format!("{name}.txt")),
        format!("{text}\n\n{record}\n").as_bytes(),
    );
    eprintln!("Where it stood: {}", folder.join(name).display());
}

fn traces() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/journeys")
}
