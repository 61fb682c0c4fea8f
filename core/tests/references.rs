//! Published and independently computed figures, one module per source.
#![allow(clippy::unwrap_used)]

#[path = "references/oeis.rs"]
mod oeis;
