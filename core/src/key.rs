//! Kinds of cut key: how many cuts, how many depths, how far apart. Families are named by what
//! they are. No depth of any cut and no height of a blade is stored: steps and spacing are all that
//! the secrecy model needs, so no type here can hold a key's own pattern.

mod dimensions;

pub use dimensions::Dimension;

use crate::differs::{CutRule, count_of_family};
use crate::sources::{self, Source};
use crate::units::{Bits, Keys, Millimetres, Probability};

/// A family of keys whose patterns can be counted.
///
/// ```
/// use self_check_core::key::Family;
/// let family = Family::from_id("ten-depth-five-cuts").ok_or("no such family")?;
/// // Common practice: 0.699 in from the shoulder to the fourth cut, to the thousandth.
/// let fourth = family.geometry().cut_position(4).ok_or("no such cut")?;
/// assert!((fourth.get() / 25.4 - 0.699).abs() < 0.001);
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    /// Five cuts, each one of ten depths.
    TenDepthFiveCuts,
    /// Six cuts, each one of ten depths.
    TenDepthSixCuts,
    /// Five cuts, each one of six depths.
    SixDepthFiveCuts,
    /// European profile with five cuts.
    EuropeanFiveCuts,
    /// European profile with six cuts.
    EuropeanSixCuts,
}

/// What is known about the family: one of them, or none in particular.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FamilyChoice {
    /// This family.
    Known(Family),
    /// Any of the families: a result is the range over all of them.
    NotSure,
}

/// What an owner can see of a key's family without counting or measuring anything: the face of its
/// lock.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LockFace {
    /// A round one.
    Round,
    /// The outline of a European profile cylinder.
    EuropeanProfile,
    /// Not known.
    #[default]
    NotSure,
}

/// The dimensions that all keys of a family share.
#[derive(Debug, PartialEq)]
pub struct Geometry {
    /// Number of cut positions.
    pub cuts: u8,
    /// Number of depths a cut can have.
    pub depths: u8,
    /// Difference between one depth and the next.
    pub step: Millimetres,
    /// From the shoulder to the centre of the first cut.
    pub first_cut: Millimetres,
    /// From the centre of one cut to the centre of the next.
    pub pitch: Millimetres,
    /// Width of the flat at the root of a cut.
    pub flat: Millimetres,
    /// Largest allowed difference between the depths of neighbouring cuts, in steps.
    pub max_step: u8,
    /// Where the figures above come from.
    pub source: &'static Source,
    /// Shoulder to tip. Only gives a picture its scale.
    pub blade_length: Millimetres,
    /// Share by which the blade may be shorter or longer.
    pub blade_length_tolerance: Probability,
    /// Where the blade length comes from.
    pub blade_source: &'static Source,
}

impl Family {
    /// Every family, in the order in which a page lists them.
    pub const ALL: [Self; 5] = [
        Self::TenDepthFiveCuts,
        Self::TenDepthSixCuts,
        Self::SixDepthFiveCuts,
        Self::EuropeanFiveCuts,
        Self::EuropeanSixCuts,
    ];

    /// Stable name for files and examples.
    pub const fn id(self) -> &'static str {
        match self {
            Self::TenDepthFiveCuts => "ten-depth-five-cuts",
            Self::TenDepthSixCuts => "ten-depth-six-cuts",
            Self::SixDepthFiveCuts => "six-depth-five-cuts",
            Self::EuropeanFiveCuts => "european-five-cuts",
            Self::EuropeanSixCuts => "european-six-cuts",
        }
    }

    /// The family with this [`Family::id`].
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|family| family.id() == id)
    }

    /// The dimensions that all its keys share.
    pub const fn geometry(self) -> &'static Geometry {
        match self {
            Self::TenDepthFiveCuts => &TEN_DEPTH_FIVE_CUTS,
            Self::TenDepthSixCuts => &TEN_DEPTH_SIX_CUTS,
            Self::SixDepthFiveCuts => &SIX_DEPTH_FIVE_CUTS,
            Self::EuropeanFiveCuts => &EUROPEAN_FIVE_CUTS,
            Self::EuropeanSixCuts => &EUROPEAN_SIX_CUTS,
        }
    }

    /// Which patterns the family allows.
    pub const fn cut_rule(self) -> CutRule {
        let geometry = self.geometry();
        CutRule::new(
            geometry.cuts as u32,
            geometry.depths as u32,
            geometry.max_step as u32,
        )
    }
}

impl Family {
    /// How many keys the family has: an upper bound on what its makers use.
    ///
    /// ```
    /// use self_check_core::key::Family;
    /// assert_eq!(Family::TenDepthFiveCuts.differs(), 79_666); // as the transfer matrix of the rule gives
    /// ```
    pub const fn differs(self) -> u64 {
        match self {
            Self::TenDepthFiveCuts => const { TEN_DEPTH_FIVE_CUTS.differs() },
            Self::TenDepthSixCuts => const { TEN_DEPTH_SIX_CUTS.differs() },
            Self::SixDepthFiveCuts => const { SIX_DEPTH_FIVE_CUTS.differs() },
            Self::EuropeanFiveCuts => const { EUROPEAN_FIVE_CUTS.differs() },
            Self::EuropeanSixCuts => const { EUROPEAN_SIX_CUTS.differs() },
        }
    }

    /// [`Family::differs`] as a number of keys to try.
    pub fn keys(self) -> Keys {
        Keys::nearest(self.differs() as f64)
    }

    /// How secret a key is before anyone has seen it: the logarithm of the number of keys.
    pub fn secrecy(self) -> Bits {
        self.keys().to_bits()
    }
}

impl FamilyChoice {
    /// Every choice a page offers, "not sure" last.
    pub const ALL: [Self; 6] = [
        Self::Known(Family::TenDepthFiveCuts),
        Self::Known(Family::TenDepthSixCuts),
        Self::Known(Family::SixDepthFiveCuts),
        Self::Known(Family::EuropeanFiveCuts),
        Self::Known(Family::EuropeanSixCuts),
        Self::NotSure,
    ];

    /// Stable name for files and examples.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Known(family) => family.id(),
            Self::NotSure => "not-sure",
        }
    }

    /// The choice with this [`FamilyChoice::id`].
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|choice| choice.id() == id)
    }

    /// The families a result has to cover; never empty.
    pub fn families(self) -> impl Iterator<Item = Family> {
        Family::ALL.into_iter().filter(move |&family| match self {
            Self::Known(known) => family == known,
            Self::NotSure => true,
        })
    }
}

impl LockFace {
    /// Every face a page offers, "not sure" last.
    pub const ALL: [Self; 3] = [Self::Round, Self::EuropeanProfile, Self::NotSure];

    /// The families whose locks look so; never empty.
    pub const fn families(self) -> &'static [Family] {
        match self {
            Self::Round => &[
                Family::TenDepthFiveCuts,
                Family::TenDepthSixCuts,
                Family::SixDepthFiveCuts,
            ],
            Self::EuropeanProfile => &[Family::EuropeanFiveCuts, Family::EuropeanSixCuts],
            Self::NotSure => &Family::ALL,
        }
    }
}

impl Geometry {
    const fn differs(&self) -> u64 {
        count_of_family(self.cuts, self.depths, self.max_step)
    }

    /// From the shoulder to the centre of cut number `cut`, counted from 1 at the shoulder; `None`
    /// when the family has no such cut.
    pub fn cut_position(&self, cut: u8) -> Option<Millimetres> {
        if cut == 0 || cut > self.cuts {
            return None;
        }
        let offset = f64::from(cut - 1) * self.pitch.get();
        Millimetres::new(self.first_cut.get() + offset).ok()
    }

    /// The positions of all cuts, shoulder first.
    pub fn cut_positions(&self) -> impl Iterator<Item = Millimetres> + '_ {
        (1..=self.cuts).filter_map(|cut| self.cut_position(cut))
    }
}

const TEN_DEPTH_FIVE_CUTS: Geometry = Geometry {
    cuts: 5,
    depths: 10,
    step: Millimetres::literal(0.381),
    first_cut: Millimetres::literal(5.867),
    pitch: Millimetres::literal(3.967),
    flat: Millimetres::literal(0.79),
    max_step: 7,
    source: &sources::TRADE_KEY_DIMENSIONS,
    blade_length: Millimetres::literal(28.0),
    blade_length_tolerance: BLADE_LENGTH_TOLERANCE,
    blade_source: &sources::BLADE_LENGTHS,
};

const TEN_DEPTH_SIX_CUTS: Geometry = Geometry {
    cuts: 6,
    depths: 10,
    step: Millimetres::literal(0.381),
    first_cut: Millimetres::literal(5.867),
    pitch: Millimetres::literal(3.967),
    flat: Millimetres::literal(0.79),
    max_step: 7,
    source: &sources::TRADE_KEY_DIMENSIONS,
    blade_length: Millimetres::literal(32.0),
    blade_length_tolerance: BLADE_LENGTH_TOLERANCE,
    blade_source: &sources::BLADE_LENGTHS,
};

const SIX_DEPTH_FIVE_CUTS: Geometry = Geometry {
    cuts: 5,
    depths: 6,
    step: Millimetres::literal(0.584),
    first_cut: Millimetres::literal(6.27),
    pitch: Millimetres::literal(3.81),
    flat: Millimetres::literal(2.13),
    max_step: 4,
    source: &sources::TRADE_KEY_DIMENSIONS,
    blade_length: Millimetres::literal(28.0),
    blade_length_tolerance: BLADE_LENGTH_TOLERANCE,
    blade_source: &sources::BLADE_LENGTHS,
};

const EUROPEAN_FIVE_CUTS: Geometry = Geometry {
    cuts: 5,
    depths: 9,
    step: Millimetres::literal(0.5),
    first_cut: Millimetres::literal(4.5),
    pitch: Millimetres::literal(4.0),
    flat: Millimetres::literal(0.9),
    max_step: 5,
    source: &sources::EUROPEAN_KEY_DIMENSIONS,
    blade_length: Millimetres::literal(30.0),
    blade_length_tolerance: BLADE_LENGTH_TOLERANCE,
    blade_source: &sources::BLADE_LENGTHS,
};

const EUROPEAN_SIX_CUTS: Geometry = Geometry {
    cuts: 6,
    depths: 9,
    step: Millimetres::literal(0.5),
    first_cut: Millimetres::literal(4.5),
    pitch: Millimetres::literal(4.0),
    flat: Millimetres::literal(0.9),
    max_step: 5,
    source: &sources::EUROPEAN_KEY_DIMENSIONS,
    blade_length: Millimetres::literal(33.0),
    blade_length_tolerance: BLADE_LENGTH_TOLERANCE,
    blade_source: &sources::BLADE_LENGTHS,
};

/// What every family keeps; another does not compile.
const _: () = {
    let mut number = 0;
    while number < Family::ALL.len() {
        assert!(Family::ALL[number].geometry().is_possible());
        number += 1;
    }
};

/// Blades of one family are cut to slightly different lengths. Doubling it doubles the doubt about
/// a picture's scale and changes nothing else.
const BLADE_LENGTH_TOLERANCE: Probability = Probability::literal(0.07);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn family_id_round_trips() {
        for family in Family::ALL {
            assert_eq!(Family::from_id(family.id()), Some(family));
        }
        for choice in FamilyChoice::ALL {
            assert_eq!(FamilyChoice::from_id(choice.id()), Some(choice));
        }
        assert_eq!(Family::from_id("not-sure"), None);
    }

    #[test]
    fn differs_equal_the_general_count() {
        for family in Family::ALL {
            let counted = crate::differs::count(&family.cut_rule());
            assert_eq!(counted, Ok(u128::from(family.differs())));
        }
    }

    #[test]
    fn not_sure_covers_every_family() {
        assert!(FamilyChoice::NotSure.families().eq(Family::ALL));
        let known = FamilyChoice::Known(Family::SixDepthFiveCuts);
        assert!(known.families().eq([Family::SixDepthFiveCuts]));
    }

    #[test]
    fn every_cut_lies_between_shoulder_and_tip() {
        for family in Family::ALL {
            let geometry = family.geometry();
            let shortest =
                geometry.blade_length.get() * (1.0 - geometry.blade_length_tolerance.get());
            assert_eq!(geometry.cut_positions().count(), usize::from(geometry.cuts));
            for position in geometry.cut_positions() {
                assert!(position.get() + geometry.flat.get() / 2.0 < shortest);
            }
            assert_eq!(geometry.cut_position(0), None);
            assert_eq!(geometry.cut_position(geometry.cuts + 1), None);
        }
    }

    #[test]
    fn positions_of_the_five_cut_families_cannot_tell_them_apart() {
        let ten = Family::TenDepthFiveCuts.geometry();
        let six = Family::SixDepthFiveCuts.geometry();
        let largest = ten
            .cut_positions()
            .zip(six.cut_positions())
            .map(|(a, b)| (a.get() - b.get()).abs())
            .fold(0.0, f64::max);
        // Less than half of the widest flat: within what a marked picture can tell.
        assert!((largest - 0.403).abs() < 0.001, "{largest}");
    }

    #[test]
    fn metric_dimensions_match_the_inch_figures_of_the_trade() {
        let ten = Family::TenDepthFiveCuts.geometry();
        let six = Family::SixDepthFiveCuts.geometry();
        for (millimetres, inches) in [
            (ten.step, 0.015),
            (ten.first_cut, 0.231),
            (ten.pitch, 0.1562),
            (ten.flat, 0.031),
            (six.step, 0.023),
            (six.first_cut, 0.247),
            (six.pitch, 0.150),
            (six.flat, 0.084),
        ] {
            // Millimetres are given to two or three decimals.
            assert!((millimetres.get() - inches * 25.4).abs() < 0.005);
        }
    }
}
