//! Journeys through the finished site; see the crate's documentation for how to write one.

#[path = "journeys/list.rs"]
mod list;
#[path = "journeys/privacy.rs"]
mod privacy;
