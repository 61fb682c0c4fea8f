//! Quantities that carry their unit in the type.

use core::fmt;

/// A length in millimetres; finite and not negative.
///
/// ```
/// use self_check_core::units::Millimetres;
/// assert_eq!(Millimetres::new(53.98)?.get(), 53.98); // ISO/IEC 7810 ID-1, short side
/// assert!(Millimetres::new(-1.0).is_err());
/// # Ok::<(), self_check_core::units::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Millimetres(f64);

/// An amount of information in bits; finite and not negative.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Bits(f64);

/// A distance in metres; finite and not negative.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Metres(f64);

/// A probability or a share, from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Probability(f64);

/// A number of keys, at least 1 and finite. It may be fractional where it is a mean.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Keys(f64);

/// A number outside the range its unit allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange;

impl Millimetres {
    /// As long as numbers go.
    pub(crate) const LARGEST: Self = Self(f64::MAX);

    /// A length; errs when `value` is negative, infinite or not a number.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        finite_and_not_negative(value).map(Self)
    }

    /// The length as a plain number of millimetres.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// A length written in this crate; a wrong one does not compile in a constant.
    pub(crate) const fn literal(value: f64) -> Self {
        assert!(value.is_finite() && value >= 0.0);
        Self(value)
    }
}

impl Bits {
    /// An amount of information; errs when `value` is negative, infinite or not a number.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        finite_and_not_negative(value).map(Self)
    }

    /// The amount nearest to a computed `value`, which rounding may have carried below nothing.
    /// Not a number counts as nothing.
    pub(crate) const fn nearest(value: f64) -> Self {
        Self(if value > 0.0 {
            value.min(f64::MAX)
        } else {
            0.0
        })
    }

    /// The amount as a plain number of bits.
    pub const fn get(self) -> f64 {
        self.0
    }
}

impl Metres {
    /// No distance at all.
    pub const ZERO: Self = Self(0.0);

    /// A distance; errs when `value` is negative, infinite or not a number.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        finite_and_not_negative(value).map(Self)
    }

    /// The distance as a plain number of metres.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// A distance written in this crate; a wrong one does not compile in a constant.
    pub(crate) const fn literal(value: f64) -> Self {
        assert!(value.is_finite() && value >= 0.0);
        Self(value)
    }

    /// The same distance in millimetres; the largest distances stay finite.
    pub fn to_millimetres(self) -> Millimetres {
        Millimetres((self.0 * 1000.0).min(f64::MAX))
    }
}

impl Probability {
    /// Never.
    pub const ZERO: Self = Self(0.0);
    /// Always.
    pub const ONE: Self = Self(1.0);

    /// A probability; errs when `value` is not a number from 0 to 1.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        if (0.0..=1.0).contains(&value) {
            Ok(Self(value))
        } else {
            Err(OutOfRange)
        }
    }

    /// The probability nearest to a computed `value`, which rounding may have carried past an end.
    /// Not a number counts as never.
    pub(crate) const fn nearest(value: f64) -> Self {
        Self(if value > 0.0 { value.min(1.0) } else { 0.0 })
    }

    /// The probability as a plain number from 0 to 1.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// A share written in this crate; a wrong one does not compile in a constant.
    pub(crate) const fn literal(value: f64) -> Self {
        assert!(value >= 0.0 && value <= 1.0);
        Self(value)
    }
}

impl Keys {
    /// A single key: nothing is left to try.
    pub const ONE: Self = Self(1.0);

    /// A number of keys; errs when `value` is below 1, infinite or not a number.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        if value.is_finite() && value >= 1.0 {
            Ok(Self(value))
        } else {
            Err(OutOfRange)
        }
    }

    /// The number of keys nearest to a computed `value`: at least 1 and finite. Not a number counts
    /// as a single key, the cautious answer.
    pub(crate) const fn nearest(value: f64) -> Self {
        Self(if value > 1.0 {
            value.min(f64::MAX)
        } else {
            1.0
        })
    }

    /// The number of keys as a plain number.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// What it takes to tell one of so many equally likely keys.
    pub fn to_bits(self) -> Bits {
        Bits(libm::log2(self.0))
    }
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("out of range")
    }
}

impl core::error::Error for OutOfRange {}

fn finite_and_not_negative(value: f64) -> Result<f64, OutOfRange> {
    if value.is_finite() && value >= 0.0 {
        Ok(value)
    } else {
        Err(OutOfRange)
    }
}
