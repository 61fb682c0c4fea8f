//! The only key patterns that are ever drawn: invented ones, written here.
//!
//! A pattern cannot be built from outside this file, so nothing a person enters can become one.

use self_check_core::key::{Family, Geometry};

/// An invented pattern of cuts for drawings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrawnPattern {
    family: Family,
    depths: &'static [u8],
}

impl DrawnPattern {
    /// The demonstration key.
    pub const DEMONSTRATION: Self = Self {
        family: Family::TenDepthFiveCuts,
        depths: &[4, 7, 2, 8, 5],
    };
    /// A key whose third position shows no cut: the depth there is the blank's own edge, and its
    /// neighbours' flanks meet above it.
    pub const HIDDEN_CUT: Self = Self {
        family: Family::TenDepthFiveCuts,
        depths: &[3, 6, 0, 7, 4],
    };
    /// Another key, to stand beside the demonstration key.
    pub const OTHER: Self = Self {
        family: Family::TenDepthFiveCuts,
        depths: &[6, 3, 8, 5, 7],
    };
    /// A key of the European profile.
    pub const EUROPEAN: Self = Self {
        family: Family::EuropeanFiveCuts,
        depths: &[3, 5, 2, 6, 4],
    };
    /// A key of the six-depth family: wide flats, some eaten by a neighbour's flank.
    #[cfg(test)]
    pub const SIX_DEPTH: Self = Self {
        family: Family::SixDepthFiveCuts,
        depths: &[2, 4, 1, 5, 3],
    };

    /// Every pattern that is drawn.
    #[cfg(test)]
    pub const ALL: [Self; 5] = [
        Self::DEMONSTRATION,
        Self::HIDDEN_CUT,
        Self::OTHER,
        Self::EUROPEAN,
        Self::SIX_DEPTH,
    ];

    /// The dimensions of its family.
    pub fn geometry(self) -> &'static Geometry {
        self.family.geometry()
    }

    /// The depth at each position, in steps, shoulder first.
    pub fn depths(self) -> &'static [u8] {
        self.depths
    }

    /// The positions, counted from 1, that show no cut of their own.
    pub fn hidden(self) -> impl Iterator<Item = u8> {
        (1..=self.geometry().cuts).filter(move |&cut| self.depths[usize::from(cut - 1)] == 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_pattern_keeps_its_familys_rules() {
        for pattern in DrawnPattern::ALL {
            let geometry = pattern.geometry();
            assert_eq!(pattern.depths().len(), usize::from(geometry.cuts));
            assert!(
                pattern
                    .depths()
                    .iter()
                    .all(|&depth| depth < geometry.depths)
            );
            assert!(
                pattern
                    .depths()
                    .windows(2)
                    .all(|pair| pair[0].abs_diff(pair[1]) <= geometry.max_step)
            );
        }
    }

    #[test]
    fn hidden_cut_lies_between_two_deep_neighbours() {
        let hidden: Vec<u8> = DrawnPattern::HIDDEN_CUT.hidden().collect();
        assert_eq!(hidden, [3]);
        assert_eq!(DrawnPattern::DEMONSTRATION.hidden().count(), 0);
    }
}
