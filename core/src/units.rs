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

/// A number outside the range its unit allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange;

impl Millimetres {
    /// A length; errs when `value` is negative, infinite or not a number.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        finite_and_not_negative(value).map(Self)
    }

    /// The length as a plain number of millimetres.
    pub const fn get(self) -> f64 {
        self.0
    }
}

impl Bits {
    /// An amount of information; errs when `value` is negative, infinite or not a number.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        finite_and_not_negative(value).map(Self)
    }

    /// The amount as a plain number of bits.
    pub const fn get(self) -> f64 {
        self.0
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
