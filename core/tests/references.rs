//! Published and independently computed figures, one module per source.
#![allow(clippy::unwrap_used)]

#[path = "references/copying.rs"]
mod copying;
#[path = "references/imaging.rs"]
mod imaging;
#[path = "references/oeis.rs"]
mod oeis;
#[path = "references/optical_decoding.rs"]
mod optical_decoding;
#[path = "references/sight.rs"]
mod sight;
#[path = "references/signalling.rs"]
mod signalling;
#[path = "references/standards.rs"]
mod standards;
