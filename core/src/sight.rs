//! A key seen by a camera: from distance and lens to the error with which its cuts can be read.
//!
//! The steps are: how large a pixel is at the key and how blurred ([`View`]), how much the picture
//! tells about each cut's depth ([`DepthInformation`]), what an [`Observer`] makes of it
//! ([`SightReading`]). Focus and tilt are taken as perfect.

mod camera;
mod footprint;
mod information;
mod legibility;
mod scenes;
mod surveillance;

pub use camera::{Camera, FrameShape, View};
pub use information::DepthInformation;
pub use legibility::Legibility;
pub use scenes::{Property, Scene};
pub use surveillance::PixelDensity;

use crate::assumptions::Assumption;
use crate::key::{Family, FamilyChoice};
use crate::reading::{Reading, StepOverSigma};
use crate::units::{Metres, Millimetres};

/// Who reads the picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Observer {
    /// A person who marks the cuts by eye.
    Person,
    /// A careful person with software.
    Software,
}

/// What an observer reads of a key in a picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SightReading {
    /// How large a pixel is and how blurred the picture is at the key.
    pub view: View,
    /// Standard deviation of a cut's reading; `None` where the picture tells nothing at all.
    pub sigma: Option<Millimetres>,
    /// What that leaves of the secret.
    pub reading: Reading,
}

/// The range of what can be read over observers, and over families where the family is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SightRange {
    /// The reading that leaves the fewest tries for an even chance.
    pub fewest: SightReading,
    /// The reading that leaves the most.
    pub most: SightReading,
}

impl Observer {
    /// Every observer, the less skilled first.
    pub const ALL: [Self; 2] = [Self::Person, Self::Software];

    /// How well the observer marks an edge, as a standard deviation in pixels.
    pub const fn floor_pixels(self) -> f64 {
        match self {
            Self::Person => Assumption::FloorOfPerson.value(),
            Self::Software => Assumption::FloorOfSoftware.value(),
        }
    }
}

impl Scene {
    /// What `observer` reads of a key of `family` at this distance.
    ///
    /// ```
    /// use self_check_core::{key::Family, sight::{Observer, Scene}, units::Metres};
    /// let scene = Scene::PhoneAtNextTable;
    /// let near = scene.reading(Metres::new(1.0)?, Family::TenDepthFiveCuts, Observer::Person);
    /// assert!(near.reading.keys_left.get() < 10.0);
    /// let far = scene.reading(Metres::new(20.0)?, Family::TenDepthFiveCuts, Observer::Person);
    /// assert!(far.reading.keys_left.get() > 79_666.0 / 2.0);
    /// # Ok::<(), self_check_core::units::OutOfRange>(())
    /// ```
    pub fn reading(self, distance: Metres, family: Family, observer: Observer) -> SightReading {
        self.camera().view(distance).reading(family, observer)
    }

    /// The range of readings over both observers and over the families of `choice`.
    pub fn range(self, distance: Metres, choice: FamilyChoice) -> SightRange {
        self.camera().view(distance).range(choice)
    }
}

impl View {
    /// What `observer` reads of a key of `family` in this picture.
    ///
    /// The variance of a reading is the picture's own, plus the observer's when marking an edge,
    /// plus that of the key's scale and pose.
    pub fn reading(&self, family: Family, observer: Observer) -> SightReading {
        let information = DepthInformation::of_family(family, self);
        self.reading_with(&information, family, observer)
    }

    /// The range of readings over both observers and over the families of `choice`.
    pub fn range(&self, choice: FamilyChoice) -> SightRange {
        let mut range: Option<SightRange> = None;
        for family in choice.families() {
            let information = DepthInformation::of_family(family, self);
            for observer in Observer::ALL {
                let next = self.reading_with(&information, family, observer);
                range = Some(range.map_or_else(|| SightRange::only(next), |r| r.widened(next)));
            }
        }
        // A choice always has a family; this only spares a panic.
        range.unwrap_or_else(|| SightRange::only(self.reading(Family::ALL[0], Observer::Person)))
    }

    fn reading_with(
        &self,
        information: &DepthInformation,
        family: Family,
        observer: Observer,
    ) -> SightReading {
        let sigma = self.sigma(information.precision(), observer);
        let ratio = sigma.map_or(StepOverSigma::NOTHING, |sigma| {
            StepOverSigma::of(family, sigma)
        });
        SightReading {
            view: *self,
            sigma,
            reading: Reading::of(family, ratio),
        }
    }

    /// Standard deviation of a reading from its precision in mm^-2; `None` without precision.
    fn sigma(&self, precision: f64, observer: Observer) -> Option<Millimetres> {
        if precision.is_nan() || precision <= 0.0 {
            return None;
        }
        let floor = observer.floor_pixels() * self.ground_sample.get();
        let pose = Assumption::PoseAndScale.value();
        let variance = 1.0 / precision + floor * floor + pose * pose;
        Millimetres::new(variance.sqrt()).ok()
    }
}

impl SightRange {
    const fn only(reading: SightReading) -> Self {
        Self {
            fewest: reading,
            most: reading,
        }
    }

    fn widened(self, next: SightReading) -> Self {
        let tries = |reading: &SightReading| reading.reading.tries_even_chance;
        // Where tries are equal, the guesses tell the readings apart.
        let leaves_fewer = |a: &SightReading, b: &SightReading| {
            (tries(a), b.reading.first_guess) < (tries(b), a.reading.first_guess)
        };
        Self {
            fewest: if leaves_fewer(&next, &self.fewest) {
                next
            } else {
                self.fewest
            },
            most: if leaves_fewer(&self.most, &next) {
                next
            } else {
                self.most
            },
        }
    }
}

#[cfg(test)]
mod tests;
