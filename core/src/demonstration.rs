//! The only key patterns the product knows: invented ones, written here, for drawings and for the
//! picture a camera would take of them.
//!
//! A pattern cannot be built from outside this file, so nothing a person enters can become one.

mod outline;
mod picture;

pub use picture::Picture;

use crate::key::{Family, Geometry};
use crate::sight::View;

/// An invented pattern of cuts.
///
/// ```
/// use self_check_core::demonstration::DemonstrationPattern;
/// let pattern = DemonstrationPattern::DEMONSTRATION;
/// assert_eq!(pattern.depths().len(), usize::from(pattern.geometry().cuts));
/// ```
///
/// # What cannot become one
/// Nothing that a person enters. The fields are closed to building and to change:
///
/// ```compile_fail,E0451
/// use self_check_core::{demonstration::DemonstrationPattern, key::Family};
/// let family = Family::TenDepthFiveCuts;
/// let pattern = DemonstrationPattern { family, depths: &[1, 2, 3, 4, 5] };
/// ```
/// ```compile_fail,E0451
/// use self_check_core::demonstration::DemonstrationPattern;
/// let model = DemonstrationPattern::DEMONSTRATION;
/// let pattern = DemonstrationPattern { depths: &[1, 2, 3, 4, 5], ..model };
/// ```
/// ```compile_fail,E0616
/// use self_check_core::demonstration::DemonstrationPattern;
/// let mut pattern = DemonstrationPattern::DEMONSTRATION;
/// pattern.depths = &[1, 2, 3, 4, 5];
/// ```
///
/// Its depths can be read, not written:
///
/// ```compile_fail,E0594
/// use self_check_core::demonstration::DemonstrationPattern;
/// let pattern = DemonstrationPattern::DEMONSTRATION;
/// pattern.depths()[0] = 1;
/// ```
///
/// No depths turn into one, no text is read as one, and no record holds one:
///
/// ```compile_fail,E0277
/// use self_check_core::demonstration::DemonstrationPattern;
/// let pattern: DemonstrationPattern = [1_u8, 2, 3, 4, 5].as_slice().into();
/// ```
/// ```compile_fail,E0277
/// use self_check_core::demonstration::DemonstrationPattern;
/// let pattern = DemonstrationPattern::try_from(vec![1_u8, 2, 3, 4, 5]);
/// ```
/// ```compile_fail,E0277
/// use self_check_core::demonstration::DemonstrationPattern;
/// let pattern = "12345".parse::<DemonstrationPattern>();
/// ```
/// ```compile_fail,E0277
/// use self_check_core::demonstration::DemonstrationPattern;
/// let pattern: DemonstrationPattern = serde_json::from_str("[1, 2, 3, 4, 5]").unwrap();
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DemonstrationPattern {
    family: Family,
    depths: &'static [u8],
}

impl DemonstrationPattern {
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
    pub const SIX_DEPTH: Self = Self {
        family: Family::SixDepthFiveCuts,
        depths: &[2, 4, 1, 5, 3],
    };

    /// Every pattern there is.
    pub const ALL: [Self; 5] = [
        Self::DEMONSTRATION,
        Self::HIDDEN_CUT,
        Self::OTHER,
        Self::EUROPEAN,
        Self::SIX_DEPTH,
    ];

    /// The family whose rules it keeps.
    pub const fn family(self) -> Family {
        self.family
    }

    /// The dimensions of its family.
    pub const fn geometry(self) -> &'static Geometry {
        self.family.geometry()
    }

    /// The depth at each position, in steps below the blank's edge, shoulder first.
    pub const fn depths(self) -> &'static [u8] {
        self.depths
    }

    /// The positions, counted from 1, that show no cut of their own.
    pub fn hidden(self) -> impl Iterator<Item = u8> {
        let cuts = (1..).zip(self.depths);
        cuts.filter(|&(_, &depth)| depth == 0).map(|(cut, _)| cut)
    }

    /// The whole key as a camera records it, bow to the left and cuts upward: sampled, blurred and
    /// noisy by the figures of `view`, the same from which the view's reading follows. The noise is
    /// a fixed pattern, the same at every call.
    ///
    /// ```
    /// use self_check_core::{demonstration::DemonstrationPattern, sight::Scene};
    /// let scene = Scene::PhoneAcrossRoom;
    /// let view = scene.camera().view(scene.usual_distance());
    /// let picture = DemonstrationPattern::DEMONSTRATION.picture(&view);
    /// assert_eq!(picture.shades.len(), picture.width * picture.height);
    /// ```
    pub fn picture(self, view: &View) -> Picture {
        picture::of(self, view)
    }
}

#[cfg(test)]
mod closed;
#[cfg(test)]
mod tests;
