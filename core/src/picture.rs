//! A key in a picture that exists already: how well a stranger could read it there.
//!
//! The person marks the two ends of the blade, never a cut ([`Marks`]). In the strip between them
//! the picture is measured, not the key ([`Measuring`]): how blurred its edges are, how strong
//! beside the noise ([`Measurement`]). These three figures and the scale enter the model of
//! [`crate::sight`] as those of any camera would, and what comes out is what is left of the secret
//! ([`Measurement::range`]) and how readable that is ([`Measurement::judge`]).
//!
//! # What is absent
//!
//! Nothing here gives a position or a height along the blade. A tool that could read keys would be no
//! help to those whose keys they are, so the measurement is built not to be one, and its interface not
//! to become one: an edge's place is known only while it is fitted, inside a private function; each
//! figure that leaves is a median over the whole strip; what is kept of a strip has one size, whatever
//! is in it. (Whoever holds a picture can look at it, here as anywhere. This module does not help.)
//!
//! Parts of the search cannot be named from outside, nor what it found be looked at:
//!
//! ```compile_fail,E0603
//! use self_check_core::picture::edges::Search;
//! ```
//! ```compile_fail,E0603
//! use self_check_core::picture::step::fit;
//! ```
//! ```compile_fail,E0616
//! fn look(measuring: &self_check_core::picture::Measuring) -> usize { measuring.searches.len() }
//! ```
//! ```compile_fail,E0616
//! fn look(found: &self_check_core::picture::Measurement) -> bool { found.edges.is_some() }
//! ```
//!
//! The same lines compile with what may be asked:
//!
//! ```
//! use self_check_core::picture::Marks;
//! fn look(found: &self_check_core::picture::Measurement) -> bool { found.blur_px().is_some() }
//! ```
//!
//! `core/tests/picture/interface.rs` holds every name and function of this module to a list.

mod edges;
mod level;
mod marks;
mod measure;
mod noise;
mod readable;
mod step;

pub use marks::{MarkError, Marks, Point, Rectangle, Size};
pub use measure::{Measurement, Measuring, WrongRows};
pub use readable::{Judgement, Readable, Scale};

use crate::sources::{self, Source};

/// What may make the figures of a picture differ from the truth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caveat {
    /// Fewer than [`Marks::SHORTEST`] pixels lie between the marks: too few to measure edges. The
    /// figures are then those of the best picture of this size, so that less is left than is said.
    TooSmall,
    /// No edge stands out of the noise. The figures are then those of a picture that shows nothing;
    /// that none was found does not prove that there is none.
    NoUsableEdge,
    /// All along the marks, and farther to either side than a blade with cuts can fill, the picture has
    /// one plain colour: a cover lies there, or the marks are beside the key. Edges around it are not a
    /// key's, so nothing can be told.
    OneColour,
    /// Scale comes from the blade's usual length, which differs from key to key, and from marks set
    /// by hand.
    ScaleFromBladeLength,
    /// Few edges could be fitted: the medians rest on little.
    FewEdges,
    /// Edges are blurred unalike: not all of the key is in focus, or some edges are soft themselves.
    UnevenBlur,
    /// Edges overshoot, as those of sharpened pictures do: these read up to a third too crisp.
    Sharpened,
    /// The file is compressed with loss, which hides noise and detail. Real noise was 0.85 to 1.6
    /// times the estimate in a trial.
    Compressed,
    /// Parts are plain black or plain white: noise and edges there are cut off.
    Clipped,
}

impl Caveat {
    /// Every caveat.
    pub const ALL: [Self; 9] = [
        Self::TooSmall,
        Self::NoUsableEdge,
        Self::OneColour,
        Self::ScaleFromBladeLength,
        Self::FewEdges,
        Self::UnevenBlur,
        Self::Sharpened,
        Self::Compressed,
        Self::Clipped,
    ];

    /// Stable name for examples.
    pub const fn id(self) -> &'static str {
        match self {
            Self::TooSmall => "too-small",
            Self::NoUsableEdge => "no-usable-edge",
            Self::OneColour => "one-colour",
            Self::ScaleFromBladeLength => "scale-from-blade-length",
            Self::FewEdges => "few-edges",
            Self::UnevenBlur => "uneven-blur",
            Self::Sharpened => "sharpened",
            Self::Compressed => "compressed",
            Self::Clipped => "clipped",
        }
    }
}

/// What the bands rest on: what a page may name beside one.
pub const SOURCES: [&Source; 2] = [&sources::PICTURE_BANDS, &sources::BLADE_LENGTHS];

/// How the figures are measured. Beside a band these would tell what makes for a better picture of a
/// key, so they stand among all sources alone.
pub const METHOD: [&Source; 2] = [&sources::PICTURE_MEASUREMENT, &sources::NOISE_ESTIMATION];
