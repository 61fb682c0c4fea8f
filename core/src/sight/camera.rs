//! A camera and what it makes of a key at a distance.

use crate::assumptions::Assumption;
use crate::units::{Metres, Millimetres};

/// A camera pointed straight at a key, in focus.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    /// Focal length of the lens that shows the same field on full frame, by the diagonal.
    pub equivalent_focal_length: Millimetres,
    /// Pixels across the longer side of the picture.
    pub pixels_across: u32,
    /// Shape of the picture.
    pub frame: FrameShape,
    /// Width of the lens's opening.
    pub aperture: Millimetres,
    /// Height of the step from ground to metal over the noise's standard deviation, per pixel and
    /// frame.
    pub contrast_to_noise: f64,
    /// How far the key's image moves during the exposure, at the key.
    pub smear: Millimetres,
    /// Number of frames that can be taken together.
    pub frames: u32,
}

/// Shape of a picture: the width of the full frame that has the same diagonal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FrameShape {
    /// 4:3, most phones.
    FourToThree,
    /// 3:2, most cameras.
    ThreeToTwo,
    /// 16:9, video.
    SixteenToNine,
}

/// A key as a picture shows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Width of a pixel at the key.
    pub ground_sample: Millimetres,
    /// Standard deviation of the blur at the key, the pixel's own included.
    pub blur: Millimetres,
    /// Height of the step over the noise's standard deviation, per pixel, all frames together. For a
    /// reading, what is negative or not a number counts as no contrast, and what exceeds
    /// [`Assumption::ContrastCap`] as the cap.
    pub contrast_to_noise: f64,
}

impl Camera {
    /// What the camera shows of a key at `distance`. Distances below 5 cm, nearer than lenses focus,
    /// count as 5 cm.
    ///
    /// The pixel at the key is the frame's width times the distance over focal length and number of
    /// pixels. The blur adds, by squares: lens, focus and sensor together, a fixed number of pixels;
    /// the Gaussian nearest to the diffraction spot of the aperture; and the smear, whose standard
    /// deviation is its length over √12.
    ///
    /// A camera without pixels, focal length or aperture shows nothing: its pixel or its blur is as
    /// large as numbers go. So does one whose contrast is negative or not a number.
    pub fn view(&self, distance: Metres) -> View {
        let distance_mm = distance.to_millimetres().get().max(NEAREST_MM);
        let pixel = self.pixel_at_unit_distance() * distance_mm;
        let spot = self.spot_at_unit_distance() * distance_mm;
        let lens = Assumption::LensBlur.value() * pixel;
        let smear = self.smear.get() / ROOT_OF_12;
        View {
            ground_sample: finite_millimetres(pixel),
            blur: finite_millimetres(libm::hypot(libm::hypot(lens, spot), smear)),
            contrast_to_noise: self.contrast_of_all_frames(),
        }
    }

    /// Contrast over noise of all frames together: never negative, never above the cap.
    pub(super) fn contrast_of_all_frames(&self) -> f64 {
        contrast_of_frames(self.contrast_to_noise, self.frames)
    }

    /// The distance at which a pixel has this width at the key.
    pub fn distance_of(&self, ground_sample: Millimetres) -> Metres {
        let distance = ground_sample.get() / self.pixel_at_unit_distance() / 1000.0;
        Metres::new(distance.min(f64::MAX)).unwrap_or(Metres::ZERO)
    }

    /// Width of a pixel at the key for each unit of distance.
    pub(super) fn pixel_at_unit_distance(&self) -> f64 {
        let pixels = f64::from(self.pixels_across);
        self.frame.width_on_full_frame().get() / (self.equivalent_focal_length.get() * pixels)
    }

    /// Standard deviation of the diffraction spot at the key for each unit of distance.
    pub(super) fn spot_at_unit_distance(&self) -> f64 {
        Assumption::DiffractionSpot.value() * Assumption::Wavelength.value() / self.aperture.get()
    }
}

impl FrameShape {
    /// Width of the frame of this shape whose diagonal is that of full frame, 43.27 mm, to three
    /// digits.
    pub const fn width_on_full_frame(self) -> Millimetres {
        match self {
            Self::FourToThree => Millimetres::literal(34.6),
            Self::ThreeToTwo => Millimetres::literal(36.0),
            Self::SixteenToNine => Millimetres::literal(37.7),
        }
    }
}

impl View {
    /// The contrast that counts: never negative, never above the cap.
    pub(super) fn usable_contrast(&self) -> f64 {
        contrast_of_frames(self.contrast_to_noise, 1)
    }
}

/// Noise of independent frames averages out; the cap holds for all of them together. The comparison
/// comes first: the smaller of a cap and what is not a number would be the cap.
fn contrast_of_frames(contrast_to_noise: f64, frames: u32) -> f64 {
    let contrast = contrast_to_noise * f64::from(frames).sqrt();
    if contrast > 0.0 {
        contrast.min(Assumption::ContrastCap.value())
    } else {
        0.0
    }
}

fn finite_millimetres(value: f64) -> Millimetres {
    Millimetres::new(value).unwrap_or(Millimetres::LARGEST)
}

/// Our assumption: nearer than this no everyday lens focuses.
const NEAREST_MM: f64 = 50.0;

/// √12: a uniform smear's length over its standard deviation.
const ROOT_OF_12: f64 = 3.464_101_615_137_754_6;
