//! Whole journeys through the finished site, in a real browser, as a person with a keyboard, a mouse or a screen reader
//! goes through it.
//!
//! `cargo xtask test journeys` builds and serves the site, finds the browser, and runs `tests/journeys/`. A journey is
//! a test function that calls [`journey`]:
//!
//! ```no_run
//! use self_check_tests::{Look, Result, journey};
//!
//! # fn main() -> Result<()> {
//! journey(Look::PHONE, async |page| {
//!     page.open().await?;
//!     page.click("link", "Check a key").await?;
//!     page.wait_for_text("Step 1").await?;
//!     page.press("Tab").await
//! })
//! # }
//! ```
//!
//! Whatever else it checks, each journey fails if the page asked anything of another origin, asked anything at all once it
//! was ready (but for its own second program, when one of that program's pages was opened), or wrote a single line to the browser's console (a broken content policy shows there).

mod accessibility;
mod acting;
mod driver;
pub mod engine;
mod files;
pub mod given;
mod host;
mod journey;
mod kept;
mod look;
mod page;
mod picture;
mod reading;
mod record;
mod told;

pub use host::{Host, one_file};
pub use journey::{journey, journey_at, troubled_journey, troubled_journey_at};
pub use kept::KEPT;
pub use look::{Look, Scheme};
pub use page::Page;
pub use reading::Node;
pub use record::{Record, Request};
pub use told::Region;

/// What goes wrong on a journey, in words.
pub type Trouble = Box<dyn std::error::Error + Send + Sync>;

/// The outcome of a part of a journey.
pub type Result<T> = std::result::Result<T, Trouble>;
