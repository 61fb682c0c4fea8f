//! The page in the browser: opening it, asking the browser about it, and waiting.

use std::cell::{Cell, Ref, RefCell};
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use thirtyfour::WebDriver;

use crate::record::event_in;
use crate::{Look, Record, Result};

/// Whether an address is that of the page itself, by either of its names.
fn is_page(url: &str) -> bool {
    let path = url.split('#').next().unwrap_or_default();
    path.ends_with('/') || path.ends_with("/index.html")
}

/// Whether an address is one of these, whatever the page's own name is.
fn is_among(url: &str, known: &[String]) -> bool {
    is_page(url) || known.iter().any(|other| other == url)
}

/// How long a page may take to do what a journey waits for.
const PATIENCE: Duration = Duration::from_secs(30);

/// The page, as one person sees it.
pub struct Page {
    pub(crate) driver: WebDriver,
    pub(crate) look: RefCell<Look>,
    record: RefCell<Record>,
    /// How many keys have been pressed.
    pub(crate) presses: Cell<usize>,
    /// The address of the site, ending in `/`.
    pub site: String,
}

impl Page {
    pub(crate) fn new(driver: WebDriver, site: &str, look: Look) -> Self {
        Self {
            driver,
            look: RefCell::new(look),
            record: RefCell::default(),
            presses: Cell::new(0),
            site: site.to_owned(),
        }
    }

    /// Opens the site and waits until the check is there, or until it has given up.
    pub async fn open(&self) -> Result<()> {
        self.open_at("").await
    }

    /// Opens the site at a path or fragment, for example `#/learn`.
    pub async fn open_at(&self, tail: &str) -> Result<()> {
        // From a page that is open already, a new fragment alone would load nothing.
        self.leave_behind().await?;
        self.load_only(tail).await?;
        self.settle().await
    }

    /// Leaves the page; what it asks for on going counts as asked late.
    async fn leave_behind(&self) -> Result<()> {
        self.driver.goto("about:blank").await?;
        self.read_logs(|record| &mut record.after_ready).await
    }

    /// Loads the page anew, as the browser's own button does.
    pub async fn reload(&self) -> Result<()> {
        self.read_logs(|record| &mut record.after_ready).await?;
        self.driver.refresh().await?;
        self.settle().await
    }

    /// Loads the site without waiting for the check, which a browser without scripts never starts.
    pub async fn load_only(&self, tail: &str) -> Result<()> {
        self.driver.goto(format!("{}{tail}", self.site)).await?;
        self.read_logs(|record| &mut record.while_loading).await
    }

    /// How far the check has come: `starting`, `slow`, `ready` or `failed`; empty without scripts.
    pub async fn state(&self) -> Result<String> {
        self.text_of("document.documentElement.dataset.check ?? ''")
            .await
    }

    /// How far the second program has come: `loading`, `ready` or `failed`; empty while nobody has asked for it.
    pub async fn rooms_state(&self) -> Result<String> {
        self.text_of("document.documentElement.dataset.rooms ?? ''")
            .await
    }

    /// Takes up what was asked since the last look as loads of the page by the browser's own ways, `times` over: each the
    /// same files as the first load, and nothing else.
    pub async fn loaded_on_the_way(&self, times: usize) -> Result<()> {
        let first = self.urls(|record| &record.while_loading);
        let begun = self.record.borrow().while_loading.len();
        self.read_logs(|record| &mut record.while_loading).await?;
        let later: Vec<String> = self.urls(|record| &record.while_loading).split_off(begun);
        let unknown: Vec<&String> = later.iter().filter(|url| !is_among(url, &first)).collect();
        let pages = later.iter().filter(|url| is_page(url)).count();
        match unknown.is_empty() && pages <= times {
            true => Ok(()),
            false => Err(format!("{pages} loads, and beside them {unknown:?}").into()),
        }
    }

    fn urls(&self, list: fn(&Record) -> &Vec<crate::Request>) -> Vec<String> {
        let record = self.record.borrow();
        list(&record)
            .iter()
            .map(|request| request.url.clone())
            .collect()
    }

    async fn settle(&self) -> Result<()> {
        self.wait_until("the check is there or has given up", async || {
            Ok(matches!(&*self.state().await?, "ready" | "failed"))
        })
        .await?;
        self.wait_until(
            "the second program is there, if it was asked for",
            async || Ok(self.rooms_state().await? != "loading"),
        )
        .await?;
        self.read_logs(|record| &mut record.while_loading).await
    }

    /// Looks at the page in another way from now on.
    pub async fn set_look(&self, look: Look) -> Result<()> {
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            look.metrics(look.height),
        )
        .await?;
        self.cdp("Emulation.setEmulatedMedia", look.media()).await?;
        self.look.replace(look);
        Ok(())
    }

    /// Sets the size of ordinary text in the browser's own settings, for pages opened from now on; 16 unless set.
    pub async fn set_text_size(&self, pixels: u32) -> Result<()> {
        let sizes = json!({ "fontSizes": { "standard": pixels, "fixed": pixels } });
        self.cdp("Page.setFontSizes", sizes).await?;
        Ok(())
    }

    /// Turns scripts on or off for pages opened from now on.
    pub async fn set_scripts(&self, on: bool) -> Result<()> {
        self.cdp(
            "Emulation.setScriptExecutionDisabled",
            json!({ "value": !on }),
        )
        .await?;
        Ok(())
    }

    /// Refuses what matches one of these, for example `*.wasm`, as a filter on the way might.
    pub async fn block(&self, patterns: &[&str]) -> Result<()> {
        self.cdp("Network.enable", json!({})).await?;
        self.cdp("Network.setBlockedURLs", json!({ "urls": patterns }))
            .await?;
        Ok(())
    }

    /// Cuts the line to the network, or restores it.
    pub async fn set_offline(&self, offline: bool) -> Result<()> {
        self.set_network(offline, 0).await
    }

    /// Lets every answer of the network come later by so many milliseconds.
    pub async fn set_latency(&self, milliseconds: u32) -> Result<()> {
        self.set_network(false, milliseconds).await
    }

    async fn set_network(&self, offline: bool, latency: u32) -> Result<()> {
        self.cdp("Network.enable", json!({})).await?;
        let limits = json!({ "offline": offline, "latency": latency, "downloadThroughput": -1, "uploadThroughput": -1 });
        self.cdp("Network.emulateNetworkConditions", limits).await?;
        Ok(())
    }

    /// What the browser has recorded up to now.
    pub async fn record(&self) -> Result<Ref<'_, Record>> {
        self.read_logs(|record| &mut record.after_ready).await?;
        Ok(self.record.borrow())
    }

    /// Takes up the browser's new log entries; reading empties its logs.
    async fn read_logs(&self, list: fn(&mut Record) -> &mut Vec<crate::Request>) -> Result<()> {
        let events = self.driver.get_log("performance").await?;
        let lines = self.driver.get_log("browser").await?;
        let mut record = self.record.borrow_mut();
        for event in events.iter().filter_map(|event| event_in(&event.message)) {
            record.take(event, list);
        }
        let lines = lines
            .into_iter()
            .map(|line| format!("{} {}", line.level, line.message));
        record.console.extend(lines);
        Ok(())
    }

    /// Runs a script in the page; `return` gives its value back.
    pub async fn run(&self, script: &str) -> Result<Value> {
        let done = self.driver.execute(script, Vec::new()).await?;
        Ok(done.json().clone())
    }

    /// Runs a script that calls its last argument with the answer once it has one.
    pub async fn run_waiting(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        let done = self.driver.execute_async(script, arguments).await?;
        Ok(done.json().clone())
    }

    pub(crate) async fn text_of(&self, expression: &str) -> Result<String> {
        let value = self.run(&format!("return {expression};")).await?;
        Ok(value.as_str().unwrap_or_default().to_owned())
    }

    /// Sends a command of the browser's own protocol.
    pub async fn cdp(&self, method: &str, parameters: Value) -> Result<Value> {
        let answer = self.driver.cdp().send_raw(method, parameters).await;
        answer.map_err(|error| format!("{method}: {error}").into())
    }

    /// Waits until something holds, and says what did not if it never does.
    pub async fn wait_until(
        &self,
        what: &str,
        holds: impl AsyncFn() -> Result<bool>,
    ) -> Result<()> {
        let begun = Instant::now();
        while !holds().await? {
            if begun.elapsed() > PATIENCE {
                return Err(format!("waited {PATIENCE:?} in vain until {what}").into());
            }
            tokio::time::sleep(Duration::from_millis(40)).await;
        }
        Ok(())
    }
}
