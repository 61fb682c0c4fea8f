//! Every figure that steers the secrecy model and is not a dimension of a key or a property of a
//! scene: as data, with its source, so that a page can list what the model assumes.

use crate::sources::{self, Source};

/// A number with its unit and its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// The number, in `unit`.
    pub value: f64,
    /// What it counts.
    pub unit: Unit,
    /// Where it comes from.
    pub source: &'static Source,
}

/// What a [`Figure`] counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Millimetres at the key, or of a lens.
    Millimetres,
    /// Metres.
    Metres,
    /// Pixels of the picture.
    Pixels,
    /// A plain ratio.
    Ratio,
    /// A number of things.
    Count,
}

/// One assumption of the secrecy model. Words for it are found by matching on this.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Assumption {
    /// Blur of lens, focus and sensor together, as a standard deviation in pixels: sharper than most
    /// pictures. Doubling it takes 4 to 26 in a hundred off the distance at which a hundred tries
    /// give an even chance, by scene and observer.
    LensBlur,
    /// Wavelength of the light. Doubling it doubles the diffraction blur.
    Wavelength,
    /// The Gaussian that best fits the bright spot of a diffraction-limited lens has a standard
    /// deviation of this many wavelengths times distance over aperture.
    DiffractionSpot,
    /// What real, steep flanks add to the information, so that the estimate errs on the cautious
    /// side. By simulation it does for a cutter with sides at a right angle and a shallowest cut half
    /// a millimetre below the uncut edge; of keys cut a millimetre deeper throughout it tells up to
    /// half a bit too little where the blur nears the spacing. Doubling it acts as 1.4 times the
    /// contrast.
    SteepFlanks,
    /// How well a person marks an edge in a picture, as a standard deviation in pixels: a guess at
    /// careful work by eye. In good light it is what limits; doubling it takes a third to a half off
    /// the distance, by scene.
    FloorOfPerson,
    /// The same for a careful person with software.
    FloorOfSoftware,
    /// Error of scale and of the key's pose, at the key. Doubling it to 0.14 mm would let the
    /// first guess of a ten-depth key be right about four times in ten at most, however near.
    PoseAndScale,
    /// Contrast is never taken to exceed the noise by more than this, whatever the number of frames:
    /// no picture is that clean. Doubling it changes no scene.
    ContrastCap,
    /// Height of a character stamped on a bow.
    CharacterHeight,
    /// Pixels across a character's height from which it could be read: a guess at where digits that
    /// run together can still be told apart, on the cautious side. Doubling it halves the distance,
    /// and takes more off it where the key moves.
    CouldBeRead,
    /// Pixels across a character's height from which it is easily read: a guess at twice the least.
    /// Doubling it halves the distance, and takes more off it where the key moves.
    EasilyRead,
    /// The published figure for recognising a shape in every second case, for comparison.
    Identification,
    /// Error of a caliper's reading of one cut, as a standard deviation. Doubled, the first guess
    /// would still be right 99 times in 100.
    CaliperError,
    /// Spread that one copying adds to each cut.
    CopySpread,
    /// Shift that one copying adds to each cut: traced copies come out deeper. Doubling it brings the
    /// number of copies in a row that still work from three down to one.
    CopyDrift,
    /// How far a cut may be off before the cylinder no longer turns.
    CutTolerance,
    /// As many trial keys as fit in a pocket. It marks a place on a scale; nothing follows from it.
    PocketfulOfKeys,
}

impl Assumption {
    /// Every assumption, in the order in which a page lists them.
    pub const ALL: [Self; 17] = [
        Self::LensBlur,
        Self::Wavelength,
        Self::DiffractionSpot,
        Self::SteepFlanks,
        Self::FloorOfPerson,
        Self::FloorOfSoftware,
        Self::PoseAndScale,
        Self::ContrastCap,
        Self::CharacterHeight,
        Self::CouldBeRead,
        Self::EasilyRead,
        Self::Identification,
        Self::CaliperError,
        Self::CopySpread,
        Self::CopyDrift,
        Self::CutTolerance,
        Self::PocketfulOfKeys,
    ];

    /// The number, its unit and its source.
    pub const fn figure(self) -> Figure {
        const fn figure(value: f64, unit: Unit, source: &'static Source) -> Figure {
            Figure {
                value,
                unit,
                source,
            }
        }
        match self {
            Self::LensBlur => figure(0.7, Unit::Pixels, &sources::PICTURE_SHARPNESS),
            Self::Wavelength => figure(5.5e-4, Unit::Millimetres, &sources::DIFFRACTION),
            Self::DiffractionSpot => figure(0.42, Unit::Ratio, &sources::DIFFRACTION),
            Self::SteepFlanks => figure(1.4, Unit::Ratio, &sources::FLANK_SIMULATION),
            Self::FloorOfPerson => figure(0.2, Unit::Pixels, &sources::MARKING_SKILL),
            Self::FloorOfSoftware => figure(0.1, Unit::Pixels, &sources::MARKING_SKILL),
            Self::PoseAndScale => figure(0.07, Unit::Millimetres, &sources::POSE_AND_SCALE),
            Self::ContrastCap => figure(100.0, Unit::Ratio, &sources::PICTURE_SHARPNESS),
            Self::CharacterHeight => figure(2.5, Unit::Millimetres, &sources::STAMPED_CHARACTERS),
            Self::CouldBeRead => figure(5.0, Unit::Pixels, &sources::DIGIT_LEGIBILITY),
            Self::EasilyRead => figure(10.0, Unit::Pixels, &sources::DIGIT_LEGIBILITY),
            Self::Identification => figure(12.8, Unit::Pixels, &sources::JOHNSON),
            Self::CaliperError => figure(0.03, Unit::Millimetres, &sources::CALIPER_READING),
            Self::CopySpread => figure(0.0254, Unit::Millimetres, &sources::KEY_MACHINE_ERROR),
            Self::CopyDrift => figure(0.0254, Unit::Millimetres, &sources::COPY_DRIFT),
            Self::CutTolerance => figure(0.127, Unit::Millimetres, &sources::LOCK_SLACK),
            Self::PocketfulOfKeys => figure(10.0, Unit::Count, &sources::POCKETFUL),
        }
    }

    /// Whether what a camera tells rests on it; the others are about keys in the hand and the scale
    /// of numbers.
    pub const fn is_of_sight(self) -> bool {
        match self {
            Self::LensBlur
            | Self::Wavelength
            | Self::DiffractionSpot
            | Self::SteepFlanks
            | Self::FloorOfPerson
            | Self::FloorOfSoftware
            | Self::PoseAndScale
            | Self::ContrastCap
            | Self::CharacterHeight
            | Self::CouldBeRead
            | Self::EasilyRead
            | Self::Identification => true,
            Self::CaliperError
            | Self::CopySpread
            | Self::CopyDrift
            | Self::CutTolerance
            | Self::PocketfulOfKeys => false,
        }
    }

    /// The number alone.
    pub const fn value(self) -> f64 {
        self.figure().value
    }
}
