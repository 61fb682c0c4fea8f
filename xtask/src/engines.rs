//! Browsers for the walks that are asked for by `cargo xtask test engines`: Chromium, Firefox, and WebKit.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};

use crate::browser::{Browser, on_search_path};
use crate::tool::Tool;
use crate::{apt, say};

/// A make of browser, by the name of its tests.
pub struct Engine {
    /// The name.
    pub name: &'static str,
    /// Finds or installs it and tells a command where its parts are.
    pub name_to: fn(&mut Command) -> Result<()>,
}

/// All of them.
pub const ENGINES: [Engine; 3] = [
    Engine {
        name: "chromium",
        name_to: chromium,
    },
    Engine {
        name: "firefox",
        name_to: firefox,
    },
    Engine {
        name: "webkit",
        name_to: webkit,
    },
];

fn chromium(command: &mut Command) -> Result<()> {
    Browser::find_or_install()?.name_to(command);
    Ok(())
}

fn firefox(command: &mut Command) -> Result<()> {
    say::step("Firefox and its driver");
    let find = || {
        ["firefox-esr", "firefox"]
            .into_iter()
            .find_map(on_search_path)
    };
    let browser = match find() {
        Some(browser) => browser,
        None => {
            apt::install("Firefox", &["firefox-esr"])?;
            find().context("the package brought no Firefox")?
        }
    };
    let driver = match on_search_path("geckodriver") {
        Some(driver) => driver,
        None => {
            let driver = Tool {
                package: "geckodriver",
                program: "geckodriver",
                version: "0.37.1",
                options: &["--locked", "--debug"],
                takes: "two minutes",
            };
            driver.find_or_build()?.to_string_lossy().into_owned()
        }
    };
    command.env("FIREFOX", browser).env("GECKODRIVER", driver);
    Ok(())
}

fn webkit(command: &mut Command) -> Result<()> {
    say::step("WebKit and its driver");
    let find = || Some((on_search_path("WebKitWebDriver")?, mini_browser()?));
    let (driver, browser) = match find() {
        Some(found) if on_search_path("Xvfb").is_some() => found,
        _ => {
            apt::install("WebKit", &["webkit2gtk-driver", "xvfb"])?;
            find().context("the packages brought no WebKit")?
        }
    };
    command
        .env("WEBKITDRIVER", driver)
        .env("MINIBROWSER", browser);
    Ok(())
}

/// WebKit's own small browser. It lies beside the library, outside of the search path.
fn mini_browser() -> Option<PathBuf> {
    let machines = std::fs::read_dir("/usr/lib").ok()?.flatten();
    let places = machines.flat_map(|machine| {
        ["webkitgtk-6.0", "webkit2gtk-4.1"]
            .map(|kind| machine.path().join(kind).join("MiniBrowser"))
    });
    places.into_iter().find(|place| place.is_file())
}
