//! Where along the blade the picture changes when one cut changes its depth.

use crate::distribution::{normal_below, normal_density};
use crate::key::Geometry;

/// Overlaps of the blurred footprints of two cuts, in mm, for cuts 0, 1, 2, … places apart.
///
/// The footprint of a cut is 1 on its flat and falls in a straight line to 0 at its neighbours'
/// flats, as the blade's edge does; the first and last cut have neighbours of known depth. Blurred
/// footprints have a closed form, and the trapezoid rule over their product converges geometrically,
/// so that half a standard deviation between points gives all digits.
pub(super) fn overlaps(geometry: &Geometry, blur_mm: f64) -> Vec<f64> {
    let cuts = usize::from(geometry.cuts);
    let footprint = Footprint::new(geometry);
    if blur_mm > WIDEST_BLUR * footprint.pitch {
        return (0..cuts)
            .map(|apart| footprint.overlap_of_spots(apart as f64, blur_mm))
            .collect();
    }
    // A blur far below the flanks' length changes nothing here: at this floor the overlap is off
    // by one part in a thousand at most.
    let blur = blur_mm.max(SHARPEST_BLUR * footprint.pitch);
    // Whole numbers of points from cut to cut, so that one set of values serves every pair.
    let points_a_pitch = libm::ceil(2.0 * footprint.pitch / blur);
    let spacing = footprint.pitch / points_a_pitch;
    let reach = libm::ceil((footprint.foot + TAIL * blur) / spacing) as i32;
    let half: Vec<f64> = (0..=reach)
        .map(|point| footprint.blurred(f64::from(point) * spacing, blur))
        .collect();
    let at = |point: i32| {
        half.get(point.unsigned_abs() as usize)
            .copied()
            .unwrap_or(0.0)
    };
    (0..cuts)
        .map(|apart| {
            let shift = (apart as f64 * points_a_pitch) as i32;
            let sum: f64 = (shift - reach..=reach)
                .map(|point| at(point) * at(point - shift))
                .sum();
            sum * spacing
        })
        .collect()
}

struct Footprint {
    pitch: f64,
    /// From the centre to where the flat ends.
    flat: f64,
    /// From the centre to where the neighbour's flat begins.
    foot: f64,
}

impl Footprint {
    fn new(geometry: &Geometry) -> Self {
        let pitch = geometry.pitch.get();
        let flat = 0.5 * geometry.flat.get();
        Self {
            pitch,
            flat,
            foot: pitch - flat,
        }
    }

    /// The footprint at `x` from its centre after a Gaussian blur: its flanks are differences of
    /// four ramps, and a blurred ramp is t·Φ(t/b) + b·φ(t/b).
    fn blurred(&self, x: f64, blur: f64) -> f64 {
        let ramp = |t: f64| t * normal_below(t / blur) + blur * normal_density(t / blur);
        let flank = self.foot - self.flat;
        let rising = ramp(x + self.foot) - ramp(x + self.flat);
        let falling = ramp(x - self.flat) - ramp(x - self.foot);
        (rising - falling) / flank
    }

    /// The overlap where the blur is so wide that only the footprint's area and variance matter; its
    /// area is the pitch, being a box of that width blurred by one of the flanks' width.
    fn overlap_of_spots(&self, apart: f64, blur: f64) -> f64 {
        let flank = self.foot - self.flat;
        let own = (self.pitch * self.pitch + flank * flank) / 12.0;
        let variance = 2.0 * (blur * blur + own);
        let spread = variance.sqrt();
        let distance = apart * self.pitch;
        self.pitch * self.pitch * normal_density(distance / spread) / spread
    }
}

/// Beyond so many pitches of blur a footprint is a spot.
const WIDEST_BLUR: f64 = 8.0;

/// Below this share of the pitch a blur no longer changes the overlap.
const SHARPEST_BLUR: f64 = 0.0125;

/// Standard deviations after which a blurred footprint is nothing.
const TAIL: f64 = 6.5;

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::key::Family;

    /// Straight summation of footprints blurred point by point.
    fn by_summation(geometry: &Geometry, blur: f64, apart: f64) -> f64 {
        let footprint = Footprint::new(geometry);
        let sharp = |x: f64| {
            let x = x.abs();
            ((footprint.foot - x) / (footprint.foot - footprint.flat)).clamp(0.0, 1.0)
        };
        let step = 0.02_f64.min(blur / 4.0);
        let reach = ((6.0 * blur) / step) as i32;
        let blurred = |x: f64| -> f64 {
            let offsets = (-reach..=reach).map(|k| f64::from(k) * step);
            offsets
                .map(|u| sharp(x - u) * normal_density(u / blur) / blur * step)
                .sum()
        };
        let range = ((footprint.foot + 7.0 * blur) / step) as i32;
        (-range..=range)
            .map(|k| f64::from(k) * step)
            .map(|x| blurred(x) * blurred(x - apart * footprint.pitch) * step)
            .sum()
    }

    #[test]
    fn overlaps_equal_summation() {
        for family in [Family::TenDepthFiveCuts, Family::SixDepthFiveCuts] {
            let geometry = family.geometry();
            for blur in [0.1, 0.5, 2.0] {
                let found = overlaps(geometry, blur);
                for apart in [0_usize, 1, 2] {
                    let expected = by_summation(geometry, blur, apart as f64);
                    let found = found[apart];
                    assert!(
                        (found - expected).abs() < 2e-4,
                        "{blur} {apart}: {found} {expected}"
                    );
                }
            }
        }
    }

    #[test]
    fn overlaps_pass_smoothly_into_those_of_spots() {
        for family in Family::ALL {
            let geometry = family.geometry();
            let edge = WIDEST_BLUR * geometry.pitch.get();
            let inside = overlaps(geometry, edge);
            let outside = overlaps(geometry, edge * (1.0 + 1e-12));
            for (inside, outside) in inside.iter().zip(&outside) {
                assert!((inside / outside - 1.0).abs() < 1e-5, "{inside} {outside}");
            }
        }
    }

    #[test]
    fn overlaps_of_sharp_footprints_have_their_closed_form() {
        let geometry = Family::EuropeanFiveCuts.geometry();
        let (pitch, flat) = (geometry.pitch.get(), geometry.flat.get());
        let flank = pitch - flat;
        let found = overlaps(geometry, 1e-9);
        // On the flat 1, on each flank a third of its length; with the neighbour a sixth.
        assert!((found[0] / (flat + 2.0 * flank / 3.0) - 1.0).abs() < 1e-3);
        assert!((found[1] / (flank / 6.0) - 1.0).abs() < 1e-2);
        assert!(found[2].abs() < 1e-3);
    }
}
