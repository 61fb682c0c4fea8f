//! Computes how exposed a house key is, and what follows from it.
#![warn(missing_docs)]

pub mod advice;
pub mod answers;
pub mod assess;
pub mod assumptions;
pub mod demonstration;
pub mod differs;
mod distribution;
pub mod exposure;
mod facts;
pub mod grades;
pub mod hand;
pub mod household;
pub mod key;
pub mod metadata;
pub mod order;
pub mod path;
pub mod picture;
pub mod questions;
pub mod reading;
pub mod regions;
pub mod sight;
pub mod sources;
pub mod units;
pub mod verdict;
pub mod what_if;
