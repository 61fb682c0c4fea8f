//! The page. It shows what `self_check_core` computes and keeps nothing.
//!
//! It is two programs, so that a first visit loads only what it needs: [`check`] is loaded with the
//! page, [`rooms`] when one of its pages is first opened. Both are made of the same parts.

pub mod check;
pub mod rooms;

mod browser;
mod copy;
mod drawing;
mod example;
mod pages;
mod route;
mod session;
mod ui;

pub use browser::Host;
