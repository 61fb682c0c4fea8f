//! A key in somebody's hands: it can be gauged, measured or copied, and copies of copies drift.

use crate::assumptions::Assumption;
use crate::distribution::normal_below;
use crate::key::Family;
use crate::reading::Reading;
use crate::sources::{self, Source};
use crate::units::{Keys, Millimetres, OutOfRange, Probability};

/// How a key in the hand is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HandReading {
    /// A stepped gauge, seconds for a trained person: every cut for certain.
    Gauge,
    /// Calipers, a minute for anyone careful.
    Calipers,
}

impl HandReading {
    /// Every way, quickest first.
    pub const ALL: [Self; 2] = [Self::Gauge, Self::Calipers];

    /// What is left of the secret of a key of `family`: one key, or all but one.
    ///
    /// ```
    /// use self_check_core::{hand::HandReading, key::Family};
    /// let left = HandReading::Calipers.reading(Family::SixDepthFiveCuts).keys_left;
    /// assert!(left.get() < 1.001);
    /// ```
    pub fn reading(self, family: Family) -> Reading {
        match self {
            Self::Gauge => Reading::one_of(family, Keys::ONE),
            Self::Calipers => Reading::at(family, CALIPER_ERROR),
        }
    }

    /// Where the claim comes from.
    pub const fn source(self) -> &'static Source {
        match self {
            Self::Gauge => &sources::GAUGE_READING,
            Self::Calipers => Assumption::CaliperError.figure().source,
        }
    }
}

/// What copying does to a cut. Every copy is cut from the one before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Copying {
    /// Standard deviation that each copying adds to each cut.
    pub spread: Millimetres,
    /// By how much each copying cuts deeper.
    pub drift: Millimetres,
    /// How far a cut may be off, either way, before the cylinder no longer turns.
    pub tolerance: Millimetres,
}

impl Copying {
    /// A traced copy by an ordinary machine, for a lock with ordinary slack. No rate has been
    /// published: the spread is from memory, the drift ours. Doubling the drift brings the number of
    /// copies that still work from three down to about one.
    pub const ORDINARY: Self = Self {
        spread: Millimetres::literal(Assumption::CopySpread.value()),
        drift: Millimetres::literal(Assumption::CopyDrift.value()),
        tolerance: Millimetres::literal(Assumption::CutTolerance.value()),
    };

    /// Probability that all `cuts` cuts of a copy of a copy, so many `generations` from the
    /// original, are still within the tolerance.
    ///
    /// Assumes that the errors of different cuts and copies are independent and normal: after g
    /// copies their standard deviation is the spread times √g and their mean the drift times g. An
    /// original, with no copying at all, always works.
    ///
    /// ```
    /// use self_check_core::hand::Copying;
    /// let works = Copying::ORDINARY.chance_all_cuts_fit(3, 5).get();
    /// assert!((works - 0.515_527).abs() < 1e-6);
    /// ```
    pub fn chance_all_cuts_fit(&self, generations: u32, cuts: u8) -> Probability {
        let copies = f64::from(generations);
        let spread = self.spread.get() * copies.sqrt();
        let drift = self.drift.get() * copies;
        let tolerance = self.tolerance.get();
        let one = if spread > 0.0 {
            // As a difference of tails: the mass far out on one side keeps its digits.
            let upper = normal_below((tolerance - drift) / spread);
            let lower = normal_below((-tolerance - drift) / spread);
            upper - lower
        } else if drift <= tolerance {
            1.0
        } else {
            0.0
        };
        Probability::nearest(libm::pow(one.max(0.0), f64::from(cuts)))
    }

    /// The most generations of copies of which at least the share `chance` still works; `None`
    /// where it never runs out.
    ///
    /// # Errors
    /// [`OutOfRange`] for a chance of 0 or 1, which are reached never or at once.
    pub fn generations_that_fit(
        &self,
        cuts: u8,
        chance: Probability,
    ) -> Result<Option<u32>, OutOfRange> {
        if chance == Probability::ZERO || chance == Probability::ONE {
            return Err(OutOfRange);
        }
        let fits = |generations| self.chance_all_cuts_fit(generations, cuts) >= chance;
        Ok((0..MOST_GENERATIONS).find(|&generations| !fits(generations + 1)))
    }
}

/// More copies in a row than anyone has cut.
const MOST_GENERATIONS: u32 = 1000;

const CALIPER_ERROR: Millimetres = Millimetres::literal(Assumption::CaliperError.value());

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_key_in_the_hand_counts_as_read() {
        for family in Family::ALL {
            for way in HandReading::ALL {
                let reading = way.reading(family);
                assert!(reading.keys_left.get() < 1.001);
                assert_eq!(reading.tries_even_chance, Keys::ONE);
                assert!(reading.first_guess.get() > 0.999);
            }
        }
    }

    #[test]
    fn original_always_fits_and_certain_copies_fail_all_at_once() {
        assert_eq!(
            Copying::ORDINARY.chance_all_cuts_fit(0, 5),
            Probability::ONE
        );
        let certain = Copying {
            spread: Millimetres::literal(0.0),
            ..Copying::ORDINARY
        };
        assert_eq!(certain.chance_all_cuts_fit(5, 5), Probability::ONE);
        assert_eq!(certain.chance_all_cuts_fit(6, 5), Probability::ZERO);
    }

    #[test]
    fn generations_that_fit_end_where_the_chance_falls_below() {
        let half = Probability::new(0.5).unwrap();
        let generations = Copying::ORDINARY.generations_that_fit(5, half);
        assert_eq!(generations, Ok(Some(3)));
        let still = Copying {
            spread: Millimetres::literal(0.0),
            drift: Millimetres::literal(0.0),
            ..Copying::ORDINARY
        };
        assert_eq!(still.generations_that_fit(5, half), Ok(None));
        assert_eq!(
            still.generations_that_fit(5, Probability::ONE),
            Err(OutOfRange)
        );
    }

    proptest! {
        #[test]
        fn copies_of_copies_never_fit_better(
            spread in 0.0_f64..0.2, drift in 0.0_f64..0.1, tolerance in 0.0_f64..0.3,
            generations in 0_u32..40, cuts in 1_u8..8,
        ) {
            let copying = Copying {
                spread: Millimetres::new(spread).unwrap(),
                drift: Millimetres::new(drift).unwrap(),
                tolerance: Millimetres::new(tolerance).unwrap(),
            };
            let now = copying.chance_all_cuts_fit(generations, cuts);
            prop_assert!(copying.chance_all_cuts_fit(generations + 1, cuts).get() <= now.get() + 1e-12);
            prop_assert!(copying.chance_all_cuts_fit(generations, cuts + 1) <= now);
        }
    }
}
