//! Every word of the product, found from ids by exhaustive `match`: a missing text does not
//! compile, and a second language is a second file beside [`en`].
//!
//! Numbers are rounded here, with the words that carry them.

pub mod en;
mod shapes;

pub use en::*;
pub use shapes::*;

#[cfg(test)]
mod tests;
