//! How the page is looked at: the window, and what the reader has asked of the system.

use serde_json::{Value, json};

/// Light or dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scheme {
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
}

/// A window and its reader's wishes. Start from a constant and change what matters:
/// `Look { scheme: Scheme::Dark, ..Look::PHONE }`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Look {
    /// Width of the window in CSS pixels.
    pub width: u32,
    /// Height of the window in CSS pixels.
    pub height: u32,
    /// Device pixels to a CSS pixel; 2 for pictures that are to be printed.
    pub pixels: u32,
    /// The colour scheme asked for.
    pub scheme: Scheme,
    /// Whether less motion is asked for.
    pub reduced_motion: bool,
    /// Whether the system forces its own colours.
    pub forced_colours: bool,
    /// Whether the page is laid out for paper.
    pub on_paper: bool,
}

impl Look {
    /// A window on a computer.
    pub const DESKTOP: Self = Self {
        width: 1280,
        height: 900,
        pixels: 1,
        scheme: Scheme::Light,
        reduced_motion: false,
        forced_colours: false,
        on_paper: false,
    };

    /// A common phone.
    pub const PHONE: Self = Self {
        width: 390,
        height: 844,
        ..Self::DESKTOP
    };

    /// The narrowest window to be served: also what 400 % zoom leaves of [`Look::DESKTOP`] (WCAG 2.2, criterion 1.4.10).
    pub const NARROW: Self = Self {
        width: 320,
        height: 640,
        ..Self::DESKTOP
    };

    /// Parameters of `Emulation.setDeviceMetricsOverride` for this window, or for one of another height.
    pub(crate) fn metrics(&self, height: u32) -> Value {
        json!({ "width": self.width, "height": height, "deviceScaleFactor": self.pixels, "mobile": false })
    }

    /// Parameters of `Emulation.setEmulatedMedia`.
    pub(crate) fn media(&self) -> Value {
        let scheme = match self.scheme {
            Scheme::Light => "light",
            Scheme::Dark => "dark",
        };
        let motion = if self.reduced_motion {
            "reduce"
        } else {
            "no-preference"
        };
        let forced = if self.forced_colours {
            "active"
        } else {
            "none"
        };
        json!({
            "media": if self.on_paper { "print" } else { "" },
            "features": [
                { "name": "prefers-color-scheme", "value": scheme },
                { "name": "prefers-reduced-motion", "value": motion },
                { "name": "forced-colors", "value": forced },
            ],
        })
    }
}
