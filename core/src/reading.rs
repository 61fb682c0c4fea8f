//! A noisy reading of the cuts: how much it tells, how many keys it leaves to try, and how soon an
//! onlooker who tries the likeliest keys first finds the right one.
//!
//! What a reading leaks depends only on the family and on the ratio of the depth step to the
//! reading's standard deviation, so [`Reading`] looks it up in tables that [`sampled`] filled.

mod best_first;
mod chain;
mod levels;
mod posterior;
mod sample;
mod sampled;
mod success;
mod table;
mod tables;

pub use levels::information_per_cut;
pub use sample::Sample;
pub use sampled::{Estimate, Sampled, sampled, sampled_bits_leaked};
pub use table::{GRID_POINTS, LARGEST_STANDARD_ERROR, largest_standard_errors, ratio_of_row};

use crate::differs::CountError;
use crate::key::Family;
use crate::units::{Bits, Keys, Millimetres, OutOfRange, Probability};
use core::fmt;

/// The depth step over the standard deviation of a reading's error: 0 for no reading at all,
/// infinite for a perfect one.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct StepOverSigma(f64);

/// What readings of all cuts of a key leave of its secret, on average over keys and errors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Information about the key, never more than [`Family::secrecy`].
    pub bits_leaked: Bits,
    /// Perplexity of what onlookers still believe: as uncertain as if so many keys were equally
    /// likely. Most onlookers succeed within so many tries, so this is not the number to show.
    pub keys_left: Keys,
    /// So many tries, likeliest key first, succeed in one case of two. Not necessarily whole.
    pub tries_even_chance: Keys,
    /// Probability that the likeliest key is the right one.
    pub first_guess: Probability,
    /// Probability that the right key is among the three likeliest.
    pub within_three: Probability,
    /// Probability that the right key is among the ten likeliest.
    pub within_ten: Probability,
}

/// Why a reading could not be computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadingError {
    /// The rule's keys cannot be counted.
    Count(CountError),
    /// Limits on shared or different depths are not rules between neighbours.
    NotAChain,
    /// More cuts, depths or keys than the recursion holds exactly.
    TooManyKeys,
    /// A sample needs points and at least two shifts.
    SampleTooSmall,
}

impl StepOverSigma {
    /// Nothing is read.
    pub const NOTHING: Self = Self(0.0);
    /// Every cut is read without error.
    pub const PERFECT: Self = Self(f64::INFINITY);

    /// A ratio; errs when `value` is negative or not a number.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        if value >= 0.0 {
            Ok(Self(value))
        } else {
            Err(OutOfRange)
        }
    }

    /// The ratio for a family's step and a reading with standard deviation `sigma`.
    pub fn of(family: Family, sigma: Millimetres) -> Self {
        if sigma.get() > 0.0 {
            Self(family.geometry().step.get() / sigma.get())
        } else {
            Self::PERFECT
        }
    }

    /// The ratio as a plain number, possibly infinite.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// Two independent readings of one key taken together: precisions add, so squares do.
    ///
    /// ```
    /// use self_check_core::reading::StepOverSigma;
    /// let both = StepOverSigma::new(3.0)?.and(StepOverSigma::new(4.0)?);
    /// assert_eq!(both.get(), 5.0);
    /// # Ok::<(), self_check_core::units::OutOfRange>(())
    /// ```
    pub fn and(self, other: Self) -> Self {
        Self((self.0 * self.0 + other.0 * other.0).sqrt())
    }
}

impl Reading {
    /// What a reading with standard deviation `sigma` leaves of a key of `family`.
    ///
    /// Good to 0.01 bit, from tables; constant time.
    ///
    /// ```
    /// use self_check_core::{key::Family, reading::Reading, units::Millimetres};
    /// // Calipers: every cut is read for certain.
    /// let family = Family::TenDepthFiveCuts;
    /// let reading = Reading::at(family, Millimetres::new(0.03)?);
    /// assert_eq!(reading.tries_even_chance.get(), 1.0);
    /// assert!(reading.keys_left.get() < 1.001);
    /// # Ok::<(), self_check_core::units::OutOfRange>(())
    /// ```
    pub fn at(family: Family, sigma: Millimetres) -> Self {
        Self::of(family, StepOverSigma::of(family, sigma))
    }

    /// The same for a ratio of step and standard deviation.
    pub fn of(family: Family, ratio: StepOverSigma) -> Self {
        table::look_up(family, ratio.get())
    }

    /// What is left when nothing is seen: every key of the family is as likely as any other.
    pub fn nothing(family: Family) -> Self {
        Self::one_of(family, family.keys())
    }

    /// What is left when one of `keys` equally likely keys must be the right one; more than the
    /// family has count as all of them.
    pub fn one_of(family: Family, keys: Keys) -> Self {
        let keys = keys.get().min(family.keys().get());
        let within = |tries: f64| Probability::nearest(tries / keys);
        Self {
            bits_leaked: Bits::nearest(family.secrecy().get() - libm::log2(keys)),
            keys_left: Keys::nearest(keys),
            tries_even_chance: Keys::nearest(keys / 2.0),
            first_guess: within(1.0),
            within_three: within(3.0),
            within_ten: within(10.0),
        }
    }

    /// What is left when `cuts` cuts read "between two depths" and all others for certain: two
    /// keys for each such cut, so reading between two depths does not protect. The adjacent cut
    /// rule may leave fewer.
    ///
    /// ```
    /// use self_check_core::{key::Family, reading::Reading};
    /// let reading = Reading::between_two_depths(Family::TenDepthFiveCuts, 3);
    /// assert_eq!(reading.keys_left.get(), 8.0);
    /// ```
    pub fn between_two_depths(family: Family, cuts: u8) -> Self {
        let cuts = cuts.min(family.geometry().cuts);
        Self::one_of(family, Keys::nearest(libm::exp2(f64::from(cuts))))
    }
}

impl fmt::Display for ReadingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Count(error) => error.fmt(f),
            Self::NotAChain => f.write_str("not a rule between neighbours"),
            Self::TooManyKeys => f.write_str("too many keys"),
            Self::SampleTooSmall => f.write_str("sample too small"),
        }
    }
}

impl core::error::Error for ReadingError {}
