//! From how far a character stamped on a key can be read.

use super::camera::Camera;
use super::scenes::Scene;
use crate::assumptions::Assumption;
use crate::units::Metres;

/// Distances up to which a stamped character can be read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Legibility {
    /// It could be read up to here: the cautious distance.
    pub could_be_read: Metres,
    /// It is easily read up to here.
    pub easily_read: Metres,
    /// Up to here by J. Johnson's published figure, beside the two above for comparison.
    pub published: Metres,
}

impl Scene {
    /// From how far a code on a key can be read in this scene.
    pub fn legibility(self) -> Legibility {
        self.camera().legibility()
    }
}

impl Camera {
    /// From how far this camera can read a stamped character of ordinary height.
    ///
    /// A character is legible by the number of pixels across its height, pixels being no smaller
    /// than what the blur leaves of them: the blur over [`Assumption::LensBlur`]. Where smear alone
    /// exceeds that, or where there is no contrast, the character is not read at any distance, which
    /// is 0. How much contrast there is plays no part beyond that.
    pub fn legibility(&self) -> Legibility {
        Legibility {
            could_be_read: self.distance_with_pixels(Assumption::CouldBeRead.value()),
            easily_read: self.distance_with_pixels(Assumption::EasilyRead.value()),
            published: self.distance_with_pixels(Assumption::Identification.value()),
        }
    }

    /// The distance at which the blur is as large as that of a lens whose pixels are a character's
    /// height over `pixels`. Lens and diffraction grow with the distance, the smear does not.
    fn distance_with_pixels(&self, pixels: f64) -> Metres {
        let lens = Assumption::LensBlur.value();
        let allowed = lens * Assumption::CharacterHeight.value() / pixels;
        let smear_squared = self.smear.get() * self.smear.get() / 12.0;
        let left = allowed * allowed - smear_squared;
        if left <= 0.0 || self.contrast_of_all_frames() <= 0.0 {
            return Metres::ZERO;
        }
        let growth = libm::hypot(
            lens * self.pixel_at_unit_distance(),
            self.spot_at_unit_distance(),
        );
        Metres::new(left.sqrt() / growth / 1000.0).unwrap_or(Metres::ZERO)
    }
}
