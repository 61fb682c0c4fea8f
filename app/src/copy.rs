//! Every word of the product, found from ids by exhaustive `match`: a missing text does not
//! compile, and a second language is a second file beside [`en`].
//!
//! Numbers are rounded here, with the words that carry them.

/// Named texts, and the list of them for the tests of the words.
macro_rules! texts {
    ($($(#[$doc:meta])* $name:ident = $text:literal;)*) => {
        $($(#[$doc])* pub const $name: &str = $text;)*
        /// Every text above, for the tests of the words.
        #[cfg(test)]
        pub const ALL: &[&str] = &[$($name),*];
    };
}

pub mod en;
mod listed;
mod shapes;

pub use en::*;
pub use listed::Listed;
pub use shapes::*;

#[cfg(test)]
mod tests;
