//! From a measured picture to what is left of the key's secret.

use super::Caveat;
use super::measure::Measurement;
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

/// How readable a key is, and whether that is sure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Judgement {
    /// The band.
    pub readable: Readable,
    /// Whether it is the same for all that the measurement leaves open.
    pub is_sure: bool,
}

impl Judgement {
    /// Nothing can be told.
    pub const CANNOT_TELL: Self = Self {
        readable: Readable::CannotTell,
        is_sure: false,
    };

    /// What can be said where either may hold: the worse of both, sure where they agree. Where either
    /// cannot be told, that is all.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        if [self.readable, other.readable].contains(&Readable::CannotTell) {
            return Self::CANNOT_TELL;
        }
        Self {
            readable: self.readable.max(other.readable),
            is_sure: self.is_sure && other.is_sure && self.readable == other.readable,
        }
    }
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
        self.view_off_by(family, Factors::NONE)
    }

    fn view_off_by(&self, family: Family, factors: Factors) -> View {
        let pixel = 1.0 / (factors.scale * self.scale(family).pixels_per_mm);
        let blur = self.blur_px().unwrap_or(Assumption::LensBlur.value());
        let cap = Assumption::ContrastCap.value();
        let contrast_to_noise = if self.is_too_small() {
            cap
        } else {
            (self.contrast() / (factors.noise * self.noise())).min(cap)
        };
        let length = |value: f64| Millimetres::new(value).unwrap_or(Millimetres::LARGEST);
        View {
            ground_sample: length(pixel),
            blur: length(factors.blur * blur * pixel),
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

    /// How readable the key is if it is of `family`, and whether that is sure.
    ///
    /// The band is the worse of both observers', the blade as short as its tolerance allows, which
    /// makes the picture larger. It is sure where all that the measurement leaves open comes to the
    /// same band: observer, and scale, blur and noise as far off as they may be, to either side.
    ///
    /// Of a strip too small to be measured only the most that it could tell is known, so that
    /// [`Readable::No`] alone can be sure, and [`Readable::Yes`] cannot be told. Where no edge was
    /// found, or a cover lies, nothing can.
    ///
    /// Where it may be of one family or another, [`Judgement::or`] says what can be said of both.
    pub fn judge(&self, family: Family) -> Judgement {
        let is_hidden = [Caveat::NoUsableEdge, Caveat::OneColour];
        if is_hidden
            .iter()
            .any(|caveat| self.caveats().contains(caveat))
        {
            return Judgement::CANNOT_TELL;
        }
        let range = |factors| {
            let view = self.view_off_by(family, factors);
            view.range(FamilyChoice::Known(family))
        };
        let (clear, faint) = self.may_be_off_by(family);
        let readable = band(family, &range(Factors::cautious(family)).fewest);
        let most = band(family, &range(clear).fewest);
        if self.is_too_small() {
            return match readable {
                Readable::Yes => Judgement::CANNOT_TELL,
                _ => Judgement {
                    readable,
                    is_sure: most == Readable::No,
                },
            };
        }
        let least = band(family, &range(faint).most);
        let rests_on_little = self.caveats().contains(&Caveat::FewEdges);
        Judgement {
            readable,
            is_sure: !rests_on_little && most == readable && least == readable,
        }
    }

    /// By what scale, blur and noise may be off together: where the picture tells the most, and where
    /// it tells the least.
    fn may_be_off_by(&self, family: Family) -> (Factors, Factors) {
        let scale = self.scale(family);
        let share = (scale.uncertainty / scale.pixels_per_mm).min(MOST_OFF);
        let blur = (0.5 * self.blur_spread()).clamp(BLUR_OFF, MOST_OFF);
        let holds = |caveat| self.caveats().contains(&caveat);
        let more_if = |caveat, factor| if holds(caveat) { factor } else { 1.0 };
        let (least_noise, most_noise) = if holds(Caveat::Compressed) {
            COMPRESSED_NOISE_OFF
        } else {
            NOISE_OFF
        };
        let clear = Factors {
            scale: 1.0 + share,
            blur: 1.0 - blur,
            noise: least_noise,
        };
        let faint = Factors {
            scale: 1.0 - share,
            blur: (1.0 + blur) * more_if(Caveat::Sharpened, SHARPENED_BLUR_OFF),
            noise: most_noise * more_if(Caveat::Clipped, CLIPPED_NOISE_OFF),
        };
        (clear, faint)
    }
}

/// What figures are multiplied by to see what else they may be.
#[derive(Clone, Copy, Debug)]
struct Factors {
    scale: f64,
    blur: f64,
    noise: f64,
}

impl Factors {
    const NONE: Self = Self {
        scale: 1.0,
        blur: 1.0,
        noise: 1.0,
    };

    /// The blade as short as its tolerance allows.
    fn cautious(family: Family) -> Self {
        Self {
            scale: 1.0 / (1.0 - family.geometry().blade_length_tolerance.get()),
            ..Self::NONE
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

/// By what a measured blur may be off, as a share: as far as those of rendered keys are allowed to be
/// (`core/tests/outside/rendered.rs`), or half the range of the middle half of all edges where that is
/// more. Our assumption.
const BLUR_OFF: f64 = 0.12;

/// Nothing is taken to be off by more than this share: marks of a strip of a few pixels would be.
const MOST_OFF: f64 = 0.5;

/// Edges of a sharpened picture read up to a third too crisp (a trial on simulated pictures).
const SHARPENED_BLUR_OFF: f64 = 1.35;

/// Real over estimated noise, least and most: as far as those of rendered keys are allowed to be, and of
/// a trial on compressed pictures.
const NOISE_OFF: (f64, f64) = (0.75, 1.25);
const COMPRESSED_NOISE_OFF: (f64, f64) = (0.7, 1.6);

/// Plain black and white have no noise of their own and lower the estimate; our assumption.
const CLIPPED_NOISE_OFF: f64 = 2.0;
