//! The dimensions of a family as figures that a page can list, and which dimensions a key can have.

use super::Geometry;
use crate::assumptions::{Figure, Unit};

/// One of the dimensions that steer how many keys are left. Words for it are found by matching on
/// this.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dimension {
    /// Number of cuts.
    Cuts,
    /// Number of depths a cut can have.
    Depths,
    /// Difference between one depth and the next.
    Step,
    /// From the centre of one cut to the centre of the next.
    Pitch,
    /// Width of the flat at the root of a cut.
    Flat,
    /// Largest allowed difference between neighbouring cuts, in steps.
    LargestStep,
}

impl Geometry {
    /// Every dimension that steers how many keys are left, with its unit and source, for a page to
    /// list. Where the cuts lie on the blade, and how long it is, steers nothing.
    pub fn figures(&self) -> [(Dimension, Figure); 6] {
        let figure = |dimension, value, unit| {
            let source = self.source;
            (
                dimension,
                Figure {
                    value,
                    unit,
                    source,
                },
            )
        };
        [
            figure(Dimension::Cuts, self.cuts.into(), Unit::Count),
            figure(Dimension::Depths, self.depths.into(), Unit::Count),
            figure(Dimension::Step, self.step.get(), Unit::Millimetres),
            figure(Dimension::Pitch, self.pitch.get(), Unit::Millimetres),
            figure(Dimension::Flat, self.flat.get(), Unit::Millimetres),
            figure(Dimension::LargestStep, self.max_step.into(), Unit::Count),
        ]
    }

    /// Whether a key can have these dimensions: steps and spacing of some width, neither wider than
    /// a hand, and between two flats something of a flank. What a picture tells is computed for such
    /// keys alone.
    pub const fn is_possible(&self) -> bool {
        let (step, pitch, flat) = (self.step.get(), self.pitch.get(), self.flat.get());
        step > 0.0
            && step <= WIDEST_MM
            && pitch > 0.0
            && pitch <= WIDEST_MM
            && flat <= WIDEST_FLAT * pitch
    }
}

/// Our assumption: no key is so large that its cuts are farther apart.
const WIDEST_MM: f64 = 100.0;

/// Our assumption: no flat takes more of the spacing. Narrower flanks would also lose their digits
/// as differences of what is nearly equal.
const WIDEST_FLAT: f64 = 0.99;
