//! Browsers of other makes, driven by what all drivers have in common (the WebDriver standard). What Chromium's own
//! protocol tells beyond that is not asked for here.

use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use thirtyfour::{By, Capabilities, Key, WebDriver};
use tokio::runtime::Builder;

use crate::Result;

static COUNT: AtomicU32 = AtomicU32::new(0);

/// How long a page or a driver may take to do what is waited for.
const PATIENCE: Duration = Duration::from_secs(20);

/// A make of browser.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    /// Blink, in Chromium: the same walks as in the others.
    Chromium,
    /// Gecko, in Firefox.
    Firefox,
    /// WebKit, in its own small browser for GTK.
    WebKit,
}

/// Walks through the site at `site` in a fresh browser of this make.
pub fn walk_in(
    engine: Engine,
    site: &str,
    walk: impl AsyncFnOnce(&Tab) -> Result<()>,
) -> Result<()> {
    let runtime = Builder::new_current_thread().enable_all().build()?;
    let running = Running::start(engine)?;
    let capabilities: Capabilities = serde_json::from_value(engine.capabilities())?;
    let driver = runtime.block_on(WebDriver::new(&*running.address, capabilities))?;
    let tab = Tab {
        driver,
        site: site.to_owned(),
    };
    let walked = catch_unwind(AssertUnwindSafe(|| runtime.block_on(walk(&tab))));
    runtime.block_on(tab.driver.quit())?;
    walked.unwrap_or_else(|panic| resume_unwind(panic))
}

/// Where `cargo xtask test` serves the site.
pub fn site() -> Result<String> {
    std::env::var("SELF_CHECK_ADDRESS")
        .map_err(|_| "SELF_CHECK_ADDRESS is not set: run this by `cargo xtask test engines`".into())
}

impl Engine {
    fn capabilities(self) -> Value {
        match self {
            Self::Chromium => json!({
                "browserName": "chrome",
                "goog:chromeOptions": {
                    "binary": named("CHROMIUM", "/usr/bin/chromium"),
                    "args": ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic"],
                },
            }),
            Self::Firefox => json!({
                "browserName": "firefox",
                "moz:firefoxOptions": {
                    "binary": named("FIREFOX", "/usr/bin/firefox-esr"),
                    "args": ["-headless"],
                },
            }),
            Self::WebKit => json!({
                "webkitgtk:browserOptions": {
                    "binary": named("MINIBROWSER", "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser"),
                    "args": ["--automation"],
                },
            }),
        }
    }

    fn driver(self) -> String {
        match self {
            Self::Chromium => named("CHROMEDRIVER", "chromedriver"),
            Self::Firefox => named("GECKODRIVER", "geckodriver"),
            Self::WebKit => named("WEBKITDRIVER", "WebKitWebDriver"),
        }
    }
}

fn named(variable: &str, usual: &str) -> String {
    std::env::var(variable).unwrap_or_else(|_| usual.to_owned())
}

/// A driver, the screen that WebKit draws on where nobody looks, and a home of their own. All go with the value.
struct Running {
    children: Vec<Child>,
    home: PathBuf,
    address: String,
}

impl Running {
    fn start(engine: Engine) -> Result<Self> {
        let number = COUNT.fetch_add(1, Ordering::Relaxed);
        let home = std::env::temp_dir().join(format!(
            "self-check-{engine:?}-{}-{number}",
            std::process::id()
        ));
        std::fs::create_dir_all(&home)?;
        let port = free_port()?;
        let mut running = Self {
            children: Vec::new(),
            home,
            address: format!("http://127.0.0.1:{port}"),
        };
        let mut driver = Command::new(engine.driver());
        driver
            .arg(format!("--port={port}"))
            .env("HOME", &running.home)
            .env("TMPDIR", &running.home);
        if engine == Engine::WebKit {
            driver.env("DISPLAY", running.screen()?);
        }
        running.spawn(&mut driver)?;
        let begun = Instant::now();
        while TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_err() {
            if begun.elapsed() > PATIENCE {
                return Err(format!("{} was never ready", engine.driver()).into());
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        Ok(running)
    }

    fn spawn(&mut self, command: &mut Command) -> Result<()> {
        let program = command.get_program().to_string_lossy().into_owned();
        let child = command
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|error| format!("{program} could not be started: {error}"))?;
        self.children.push(child);
        Ok(())
    }

    /// Starts a screen without a monitor; gives its name.
    fn screen(&mut self) -> Result<String> {
        let mut child = Command::new("Xvfb")
            .args([
                "-displayfd",
                "1",
                "-screen",
                "0",
                "1280x1024x24",
                "-nolisten",
                "tcp",
            ])
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|error| format!("Xvfb could not be started: {error}"))?;
        let output = child.stdout.take();
        self.children.push(child);
        let mut name = String::new();
        BufReader::new(output.ok_or("the screen says no name")?).read_line(&mut name)?;
        Ok(format!(":{}", name.trim()))
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        for child in self.children.iter_mut().rev() {
            let _ = child.kill();
            let _ = child.wait();
        }
        let _ = std::fs::remove_dir_all(&self.home);
    }
}

fn free_port() -> Result<u16> {
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
    Ok(listener.local_addr()?.port())
}

/// A script that may wait for something. Only some drivers let a plain one.
fn waiting(script: &str) -> String {
    format!("return (async () => {{ {script} }})();")
}

/// The page in such a browser.
pub struct Tab {
    driver: WebDriver,
    site: String,
}

impl Tab {
    /// Opens the site at a fragment, anew, and waits until the check is there or has given up.
    pub async fn open(&self, tail: &str) -> Result<()> {
        self.driver.goto("about:blank").await?;
        self.driver.goto(format!("{}{tail}", self.site)).await?;
        self.settle().await
    }

    /// Loads the page anew.
    pub async fn reload(&self) -> Result<()> {
        self.driver.refresh().await?;
        self.settle().await
    }

    /// Goes back, as the browser's own button does.
    pub async fn back(&self) -> Result<()> {
        Ok(self.driver.back().await?)
    }

    /// Waits until the check is there, or the tab shows nothing of the site.
    pub async fn settle(&self) -> Result<()> {
        let settled = async || Ok(matches!(&*self.state().await?, "ready" | "failed" | "gone"));
        let waited = self.wait("the check is there", settled).await;
        match waited {
            Ok(()) => Ok(()),
            Err(error) => Err(format!("{error}; it is {:?}", self.state().await?).into()),
        }
    }

    /// How far the check has come, and where it was opened; `gone` where nothing of the site is shown.
    async fn state(&self) -> Result<String> {
        self.text(
            "const state = document.documentElement.dataset.check;
             if (document.querySelector('#app, #list') === null) return 'gone';
             return state === 'ready' || state === 'failed' ? state : `${state} at ${location.href}, ${document.readyState}`;",
        )
        .await
    }

    /// Runs a script in the page; `return` gives its value back.
    pub async fn run(&self, script: &str) -> Result<Value> {
        let done = self.driver.execute(waiting(script), Vec::new()).await?;
        Ok(done.json().clone())
    }

    /// The text a script returns.
    pub async fn text(&self, script: &str) -> Result<String> {
        let value = self.run(script).await?;
        Ok(value.as_str().unwrap_or_default().to_owned())
    }

    /// The heading of the page.
    pub async fn heading(&self) -> Result<String> {
        self.text("return document.querySelector('main h1')?.textContent ?? '';")
            .await
    }

    /// Waits for the page with this heading.
    pub async fn arrive(&self, wanted: &str) -> Result<()> {
        self.wait(&format!("the page “{wanted}” is there"), async || {
            Ok(self.heading().await? == wanted)
        })
        .await
    }

    /// Waits until a text is to be seen.
    pub async fn see(&self, text: &str) -> Result<()> {
        self.wait(&format!("the page shows “{text}”"), async || {
            Ok(self
                .text("return document.body.innerText;")
                .await?
                .contains(text))
        })
        .await
    }

    /// Clicks the link, button or box whose words or name begin with these, where a person would.
    pub async fn press(&self, words: &str) -> Result<()> {
        let find = format!(
            "const words = {};
             const all = [...document.querySelectorAll('a[href], button, label, summary')].filter(one => one.getClientRects().length > 0);
             const name = one => one.getAttribute('aria-label') ?? '';
             return all.find(one => one.textContent.trim() === words) ?? all.find(one => name(one) === words)
                 ?? all.find(one => one.textContent.trim().startsWith(words)) ?? null;",
            Value::from(words)
        );
        self.wait(&format!("there is “{words}”"), async || {
            Ok(!self.run(&find).await?.is_null())
        })
        .await?;
        let into_view = format!(
            "const found = (() => {{ {find} }})();
             found.scrollIntoView({{ block: 'center', behavior: 'instant' }});
             return found;"
        );
        let found = self.driver.execute(waiting(&into_view), Vec::new()).await?;
        Ok(found.element()?.click().await?)
    }

    /// Presses Tab or Enter.
    pub async fn key(&self, key: Key) -> Result<()> {
        let keys = self
            .driver
            .action_chain()
            .send_keys(key.value().to_string());
        Ok(keys.perform().await?)
    }

    /// Chooses a file in the field with this id.
    pub async fn choose_file_in(&self, id: &str, file: &Path) -> Result<()> {
        let field = self.driver.find(By::Id(id)).await?;
        Ok(field.send_keys(file.to_string_lossy()).await?)
    }

    /// Drags the mouse over the first element that a selector finds, from one place to another, both in shares of its
    /// width and height.
    pub async fn drag_on(&self, selector: &str, from: (f64, f64), to: (f64, f64)) -> Result<()> {
        let into_view = format!(
            "const element = document.querySelector({selector:?});
             element.scrollIntoView({{ block: 'center', behavior: 'instant' }});
             const box = element.getBoundingClientRect();
             return [box.left, box.top, box.width, box.height];"
        );
        let [left, top, width, height]: [f64; 4] =
            serde_json::from_value(self.run(&into_view).await?)?;
        let place = |(x, y): (f64, f64)| {
            let (x, y) = (left + x * width, top + y * height);
            (x.round() as i64, y.round() as i64)
        };
        let (from, to) = (place(from), place(to));
        let chain = self.driver.action_chain().move_to(from.0, from.1);
        let chain = chain.click_and_hold().move_to(to.0, to.1).release();
        Ok(chain.perform().await?)
    }

    /// Closes the tab and opens another at the address where it stood, as a browser does that brings tabs back.
    pub async fn close_and_open_again(&self) -> Result<()> {
        let address = self.text("return location.href;").await?;
        let closed = self.driver.window().await?;
        let opened = self.driver.new_tab().await?;
        self.driver.switch_to_window(closed).await?;
        self.driver.close_window().await?;
        self.driver.switch_to_window(opened).await?;
        self.driver.goto(address).await?;
        self.settle().await
    }

    /// Makes the window this wide, as far as the browser lets it.
    pub async fn widen(&self, width: u32) -> Result<()> {
        Ok(self.driver.set_window_rect(0, 0, width, 900).await?)
    }

    /// Waits until something holds, and says what did not if it never does.
    pub async fn wait(&self, what: &str, holds: impl AsyncFn() -> Result<bool>) -> Result<()> {
        let begun = Instant::now();
        while !holds().await? {
            if begun.elapsed() > PATIENCE {
                return Err(format!("waited {PATIENCE:?} in vain until {what}").into());
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Ok(())
    }
}
