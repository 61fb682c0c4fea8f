//! A demonstration key: an invented pattern in an invented numbering, and how a camera would record
//! it. Patterns come from a fixed list and cannot be set, so no key of anyone's can be drawn.

mod outline;
mod picture;

pub use picture::Picture;

use crate::sight::View;

/// A demonstration key. No system numbers or spaces its cuts like this.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DemonstrationPattern {
    /// Cuts that go up and down.
    Waves,
    /// Cuts that get deeper towards the tip.
    Stairs,
    /// Shallow cuts around a deep one.
    Valley,
}

impl DemonstrationPattern {
    /// Every pattern.
    pub const ALL: [Self; 3] = [Self::Waves, Self::Stairs, Self::Valley];

    /// Stable name for tests.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Waves => "waves",
            Self::Stairs => "stairs",
            Self::Valley => "valley",
        }
    }

    /// The key as a camera records it: sampled, blurred and noisy by the figures of `view`. The
    /// noise is a fixed pattern, the same at every call.
    ///
    /// ```
    /// use self_check_core::{demonstration::DemonstrationPattern, sight::Scene};
    /// let scene = Scene::PhoneAcrossRoom;
    /// let view = scene.camera().view(scene.usual_distance());
    /// let picture = DemonstrationPattern::Waves.picture(&view);
    /// assert_eq!(picture.shades.len(), picture.width * picture.height);
    /// ```
    pub fn picture(self, view: &View) -> Picture {
        picture::of(self, view)
    }
}

#[cfg(test)]
mod tests;
