//! The browser that the journeys are walked in, and the driver that moves it.

use std::path::Path;
use std::process::Command;

use anyhow::Result;

use crate::{apt, run, say};

/// What it is called: on the search path, or where macOS keeps programs.
const BROWSERS: [&str; 6] = [
    "chromium",
    "chromium-browser",
    "google-chrome",
    "chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/// Families that app/styles/tokens.css names, and their packages. Where a line ends, and so how many pages a result takes
/// on paper, depends on them: with any others the journeys would measure another page.
const FONTS: [(&str, &str); 2] = [
    ("Noto Sans", "fonts-noto-core"),
    ("P052", "fonts-urw-base35"),
];

const BY_HAND: &str = "install Chromium and the ChromeDriver of the same version, or name them: \
    CHROMIUM=/path/to/chromium CHROMEDRIVER=/path/to/chromedriver cargo xtask test";

/// A browser and its driver.
pub struct Browser {
    /// The program that shows pages.
    pub chromium: String,
    /// The program that drives it.
    pub driver: String,
}

impl Browser {
    /// The pair on this machine, after installing it if there was none.
    pub fn find_or_install() -> Result<Self> {
        say::step("A browser");
        let browser = Self::find_or_install_pair()?;
        find_or_install_fonts();
        Ok(browser)
    }

    fn find_or_install_pair() -> Result<Self> {
        if let Some(found) = Self::find() {
            return found.checked();
        }
        let packages = ["chromium", "chromium-driver", "fonts-dejavu"];
        apt::install("Chromium with its driver", &packages)
            .map_err(|error| say::or_else(error, BY_HAND))?;
        match Self::find() {
            Some(found) => found.checked(),
            None => Err(say::advice(
                "Chromium's packages brought no browser and driver.",
                BY_HAND,
            )),
        }
    }

    /// Gives a command the names of both.
    pub fn name_to(&self, command: &mut Command) {
        command
            .env("CHROMIUM", &self.chromium)
            .env("CHROMEDRIVER", &self.driver);
    }

    fn find() -> Option<Self> {
        let named = |variable: &str| {
            std::env::var(variable)
                .ok()
                .filter(|value| !value.is_empty())
        };
        let chromium =
            named("CHROMIUM").or_else(|| BROWSERS.into_iter().find_map(on_search_path))?;
        let driver = named("CHROMEDRIVER").or_else(|| on_search_path("chromedriver"))?;
        Some(Self { chromium, driver })
    }

    /// A driver moves only a browser of its own version.
    fn checked(self) -> Result<Self> {
        let version =
            |program: &str| run::answer(Command::new(program).arg("--version")).unwrap_or_default();
        let (browser, driver) = (version(&self.chromium), version(&self.driver));
        if major(&browser).is_none() || major(&browser) != major(&driver) {
            return Err(say::advice(
                format!(
                    "{} says `{browser}` and {} says `{driver}`: these two do not fit.",
                    self.chromium, self.driver
                ),
                BY_HAND,
            ));
        }
        say::note(&browser);
        Ok(self)
    }
}

/// The page can be looked at in other fonts too, so a machine that cannot get these is told and goes on.
fn find_or_install_fonts() {
    let known = run::answer(Command::new("fc-list").args([":", "family"])).unwrap_or_default();
    let missing = FONTS.iter().filter(|(family, _)| !known.contains(family));
    let packages: Vec<&str> = missing.map(|(_, package)| *package).collect();
    if packages.is_empty() {
        return;
    }
    if let Err(error) = apt::install("The page's fonts", &packages) {
        say::note(format!(
            "Going on with other fonts; text may break at other places on paper. {error}"
        ));
    }
}

/// Finds or installs `pdftotext`, by which a printed page is read back.
pub fn find_or_install_pdf_reader() -> Result<()> {
    if on_search_path("pdftotext").is_some() {
        return Ok(());
    }
    apt::install("A reader of printed pages", &["poppler-utils"]).map_err(|error| {
        say::or_else(
            error,
            "install poppler-utils, which brings pdftotext, then run this again.",
        )
    })
}

/// Where a program of this name is found. A name that is a whole path is looked for there alone.
pub fn on_search_path(program: &str) -> Option<String> {
    let path = std::env::var_os("PATH")?;
    let file = format!("{program}{}", std::env::consts::EXE_SUFFIX);
    let found = std::env::split_paths(&path)
        .map(|folder| folder.join(&file))
        .find(|file| Path::is_file(file))?;
    Some(found.to_string_lossy().into_owned())
}

/// `156` of `Chromium 156.0.8078.73 built on Debian`.
fn major(version: &str) -> Option<u32> {
    let number = version
        .split_whitespace()
        .find(|word| word.starts_with(|c: char| c.is_ascii_digit()))?;
    number.split('.').next()?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn major_version_is_read_from_both_programs() {
        assert_eq!(
            major("Chromium 156.0.8078.73 built on Debian GNU/Linux 12 (bookworm)"),
            Some(156)
        );
        assert_eq!(
            major("ChromeDriver 156.0.8078.73 (abc-refs/heads/main@{#1})"),
            Some(156)
        );
        assert_eq!(major(""), None);
    }
}
