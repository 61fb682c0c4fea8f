//! Pixel densities to which video surveillance is planned.

use crate::sources::{self, Source};
use crate::units::Millimetres;

/// A task of video surveillance, planned by the number of pixels to a metre at the target.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PixelDensity {
    /// Someone is there.
    Detect,
    /// What they wear and do.
    Observe,
    /// Someone known.
    Recognise,
    /// Who it is, beyond reasonable doubt.
    Identify,
}

impl PixelDensity {
    /// Every task, coarsest first.
    pub const ALL: [Self; 4] = [Self::Detect, Self::Observe, Self::Recognise, Self::Identify];

    /// Pixels to a metre, by EN 62676-4.
    pub const fn pixels_per_metre(self) -> f64 {
        match self {
            Self::Detect => 25.0,
            Self::Observe => 62.5,
            Self::Recognise => 125.0,
            Self::Identify => 250.0,
        }
    }

    /// Width of a pixel at the target.
    ///
    /// ```
    /// use self_check_core::sight::PixelDensity;
    /// assert_eq!(PixelDensity::Identify.ground_sample().get(), 4.0);
    /// ```
    pub const fn ground_sample(self) -> Millimetres {
        Millimetres::literal(1000.0 / self.pixels_per_metre())
    }

    /// Where the densities come from.
    pub const fn source(self) -> &'static Source {
        &sources::EN_62676_4
    }
}
