//! Computes how exposed a house key is, and what follows from it.
#![warn(missing_docs)]

pub mod answers;
pub mod differs;
pub mod key;
pub mod path;
pub mod questions;
pub mod sources;
pub mod units;
