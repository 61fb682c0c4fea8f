//! From a measured picture to what is left of the key's secret.

use super::measure::Measurement;
use super::{Caveat, Marks};
use crate::assumptions::Assumption;
use crate::key::{Family, FamilyChoice};
use crate::sight::{Observer, SightRange, SightReading, View};
use crate::units::Millimetres;

/// How well a stranger could read a key in a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Readable {
    /// Nearly every key of its kind would still have to be tried.
    No,
    /// It cannot be told; the caveats say why.
    CannotTell,
    /// Less than a tenth of its kind is left to try.
    Partly,
    /// Fewer than a hundred keys are left to try.
    Yes,
}

/// How large a key is in a picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Pixels to a millimetre, for a blade of the family's usual length.
    pub pixels_per_mm: f64,
    /// By how much that may be off to either side, blades and marks taken together.
    pub uncertainty: f64,
}

impl Measurement {
    /// The scale of the picture if the key is of `family`. Uncertain by the tolerance of blade
    /// lengths and by two pixels for each mark, by squares.
    pub fn scale(&self, family: Family) -> Scale {
        let geometry = family.geometry();
        let pixels_per_mm = self.length_px / geometry.blade_length.get();
        let marks = 2.0_f64.sqrt() * MARK_PX / self.length_px;
        let share = libm::hypot(geometry.blade_length_tolerance.get(), marks);
        Scale {
            pixels_per_mm,
            uncertainty: share * pixels_per_mm,
        }
    }

    /// The key as this picture shows it, in the same terms as a scene's camera would.
    ///
    /// Where the strip is too small to be measured, the picture is taken to be as sharp as
    /// [`Assumption::LensBlur`] allows and as clean as [`Assumption::ContrastCap`] does, so that the
    /// reading is the most that it could tell. Where no edge was found, it tells nothing.
    pub fn view(&self, family: Family) -> View {
        self.view_at(self.scale(family).pixels_per_mm)
    }

    fn view_at(&self, pixels_per_mm: f64) -> View {
        let pixel = 1.0 / pixels_per_mm;
        let blur = self.blur_px().unwrap_or(Assumption::LensBlur.value());
        let cap = Assumption::ContrastCap.value();
        let contrast_to_noise = if self.length_px < Marks::SHORTEST {
            cap
        } else {
            (self.contrast() / self.noise()).min(cap)
        };
        let length = |value: f64| Millimetres::new(value).unwrap_or(Millimetres::LARGEST);
        View {
            ground_sample: length(pixel),
            blur: length(blur * pixel),
            contrast_to_noise,
        }
    }

    /// What `observer` reads of a key of `family`.
    pub fn reading(&self, family: Family, observer: Observer) -> SightReading {
        self.view(family).reading(family, observer)
    }

    /// The range of what `observer` reads, over the families of `choice`.
    pub fn range(&self, choice: FamilyChoice, observer: Observer) -> SightRange {
        SightRange::over(
            choice
                .families()
                .map(|family| self.reading(family, observer)),
        )
        // A choice always has a family; this only spares a panic.
        .unwrap_or_else(|| SightRange::only(self.reading(Family::ALL[0], observer)))
    }

    /// How readable the key is: the worst over the families of `choice` and over both observers, the
    /// blade as short as its tolerance allows, which makes the picture larger.
    ///
    /// Of a strip too small to be measured only the most that it could tell is known: a band short of
    /// [`Readable::Yes`] then still holds. Where no edge was found nothing does.
    pub fn readable(&self, choice: FamilyChoice) -> Readable {
        if self.caveats().contains(&Caveat::NoUsableEdge) {
            return Readable::CannotTell;
        }
        let bands = choice.families().flat_map(|family| {
            let shortest = 1.0 - family.geometry().blade_length_tolerance.get();
            let view = self.view_at(self.scale(family).pixels_per_mm / shortest);
            Observer::ALL.map(|observer| band(family, &view.reading(family, observer)))
        });
        match bands.max() {
            Some(Readable::Yes) if self.caveats().contains(&Caveat::TooSmall) => {
                Readable::CannotTell
            }
            Some(worst) => worst,
            None => Readable::CannotTell,
        }
    }
}

fn band(family: Family, reading: &SightReading) -> Readable {
    let left = reading.reading.keys_left.get();
    if left < READABLE_KEYS {
        Readable::Yes
    } else if left < PARTLY_SHARE * family.keys().get() {
        Readable::Partly
    } else {
        Readable::No
    }
}

/// Below the least number that the European standard asks of any lock.
const READABLE_KEYS: f64 = 100.0;

/// A tenth: with more left, guessing is hardly quicker than for a key never seen.
const PARTLY_SHARE: f64 = 0.1;

/// How far off a mark may be, as a standard deviation in pixels; our assumption for a mark set by a
/// finger with a loupe.
const MARK_PX: f64 = 2.0;
