//! How much a picture tells about the depths of a key's cuts.

use super::camera::View;
use super::footprint::overlaps;
use crate::assumptions::Assumption;
use crate::key::{Family, Geometry};
use crate::units::OutOfRange;

/// The Fisher information of a key's depths in a picture, in mm^-2: a symmetric matrix with one row
/// for each cut. Cuts that blur into each other share information.
///
/// A depth moves the blade's edge across the picture, along the blade by its footprint. With the
/// contrast-to-noise ratio q a pixel, pixels g wide and a blur of b, the entry of cuts i and j is
/// `(q/g)² · ∫ (w_i∗G_b)(w_j∗G_b) dx · 1/(2·√π·b)`: the last factor is the square of a blurred
/// step's slope, integrated across the edge.
///
/// Source: A. Gatherer, "The Cramer Rao Bound for Discrete-Time Edge Position", Stanford
/// CSL-TR-93-560, 1993, for one edge; extended to several cuts here and checked by simulation.
#[derive(Clone, Debug, PartialEq)]
pub struct DepthInformation {
    /// Entries by distance between cuts; the matrix has equal diagonals.
    by_distance: Vec<f64>,
    /// Precision of what is known of each depth beforehand, in mm^-2.
    prior: f64,
}

impl DepthInformation {
    /// What `view` tells about the depths of a key with this geometry. A view without contrast, with
    /// one that is no number, or with a blur as large as numbers go, tells nothing.
    ///
    /// # Errors
    /// [`OutOfRange`] where no key has these dimensions: see [`Geometry::is_possible`].
    pub fn of(geometry: &Geometry, view: &View) -> Result<Self, OutOfRange> {
        if geometry.is_possible() {
            Ok(Self::of_possible(geometry, view))
        } else {
            Err(OutOfRange)
        }
    }

    /// The same for a family, whose dimensions are possible ones.
    pub(super) fn of_family(family: Family, view: &View) -> Self {
        Self::of_possible(family.geometry(), view)
    }

    fn of_possible(geometry: &Geometry, view: &View) -> Self {
        let cuts = usize::from(geometry.cuts);
        // A blur or pixel of no width would tell infinitely much; no picture is that sharp.
        let blur = view.blur.get().max(SMALLEST_MM);
        let pixel = view.ground_sample.get().max(SMALLEST_MM);
        let contrast = view.usable_contrast();
        let density = contrast / pixel;
        let across = density * density / (2.0 * ROOT_OF_PI * blur);
        let mut by_distance = vec![0.0; cuts];
        if across > 0.0 && across.is_finite() && contrast > 0.0 {
            for (entry, overlap) in by_distance.iter_mut().zip(overlaps(geometry, blur)) {
                *entry = across * overlap;
            }
        }
        let (step, levels) = (geometry.step.get(), f64::from(geometry.depths));
        Self {
            by_distance,
            prior: 12.0 / (step * step * (levels * levels - 1.0)),
        }
    }

    /// The entry of two cuts, counted from 0; 0 for cuts the key does not have.
    pub fn entry(&self, cut: usize, other: usize) -> f64 {
        if cut.max(other) >= self.by_distance.len() {
            return 0.0;
        }
        self.by_distance
            .get(cut.abs_diff(other))
            .copied()
            .unwrap_or(0.0)
    }

    /// One precision, in mm^-2, that stands for the whole matrix.
    ///
    /// With the precision Λ = 12/(step²·(depths²−1)) of what is known beforehand, it is the
    /// precision that, alike and independent for every cut, would leave the same volume of doubt:
    /// `Λ·expm1((1/n)·Σ ln1p(γ·λᵢ/Λ))` over the eigenvalues λᵢ. The factor γ is
    /// [`Assumption::SteepFlanks`]. Falls smoothly to 0 and never below.
    ///
    /// Checked by full inference over every key of an invented family, from crisp to a blur wider
    /// than the cuts' spacing: without γ it is right to 0.4 bit for the whole key, with it up to
    /// 1.2 bits above what leaks.
    pub fn precision(&self) -> f64 {
        let (cuts, prior) = (self.by_distance.len(), self.prior);
        if cuts == 0 || !prior.is_finite() || prior <= 0.0 {
            return 0.0;
        }
        let scale = Assumption::SteepFlanks.value() / prior;
        let excess = log_determinant_of_one_plus(cuts, |i, j| scale * self.entry(i, j));
        prior * libm::expm1(excess / cuts as f64)
    }
}

/// The logarithm of the determinant of 1 + X for a positive semidefinite X, by elimination. Pivots
/// are kept as their excess over 1, so that a small X keeps all its digits.
///
/// A program of this alone takes 9.1 kB of WebAssembly, optimised for size; with the general library
/// nalgebra 0.34 it takes 12.0 kB by Cholesky factors, which lose a small X beside the 1, and
/// 25.4 kB by eigenvalues.
fn log_determinant_of_one_plus(size: usize, x: impl Fn(usize, usize) -> f64) -> f64 {
    let mut factor = vec![0.0; size * size];
    let mut excess = vec![0.0; size];
    let mut sum = 0.0;
    for column in 0..size {
        for row in column..size {
            let earlier: f64 = (0..column)
                .filter_map(|k| {
                    let pivot = 1.0 + excess.get(k)?;
                    Some(factor.get(row * size + k)? * factor.get(column * size + k)? * pivot)
                })
                .sum();
            let left: f64 = x(row, column) - earlier;
            if row == column {
                // Rounding may carry what is nearly nothing below it.
                let left = left.max(0.0);
                if let Some(slot) = excess.get_mut(column) {
                    *slot = left;
                }
                sum += libm::log1p(left);
            } else if let Some(slot) = factor.get_mut(row * size + column) {
                *slot = left / (1.0 + excess.get(column).copied().unwrap_or(0.0));
            }
        }
    }
    sum
}

/// Smaller than any wavelength of light.
const SMALLEST_MM: f64 = 1e-4;

/// √π.
const ROOT_OF_PI: f64 = 1.772_453_850_905_516;

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::units::Millimetres;
    use proptest::prelude::*;

    const A_KEY: Geometry = Geometry {
        cuts: 5,
        depths: 10,
        step: Millimetres::literal(0.4),
        first_cut: Millimetres::literal(6.0),
        pitch: Millimetres::literal(4.0),
        flat: Millimetres::literal(1.0),
        max_step: 7,
        source: &crate::sources::EUROPEAN_KEY_DIMENSIONS,
        blade_length: Millimetres::literal(30.0),
        blade_length_tolerance: crate::units::Probability::ONE,
        blade_source: &crate::sources::BLADE_LENGTHS,
    };

    fn millimetres(value: f64) -> Millimetres {
        Millimetres::new(value).unwrap()
    }

    fn any_length() -> impl Strategy<Value = f64> {
        let wild = proptest::sample::select(vec![0.0, f64::MIN_POSITIVE, 101.0, f64::MAX]);
        prop_oneof![3 => 0.01_f64..60.0, 1 => (-300.0_f64..300.0).prop_map(libm::exp), 1 => wild]
    }

    /// As a share of the pitch.
    fn any_flat() -> impl Strategy<Value = f64> {
        let wild = proptest::sample::select(vec![0.0, 0.99, 1.0 - 1e-15, 1.0, 1.5, f64::MAX]);
        prop_oneof![3 => 0.0_f64..1.0, 1 => wild]
    }

    #[test]
    fn dimensions_that_no_key_has_are_refused() {
        let view = View {
            ground_sample: millimetres(0.1),
            blur: millimetres(0.1),
            contrast_to_noise: 20.0,
        };
        let wider = |pitch, flat| Geometry {
            pitch: millimetres(pitch),
            flat: millimetres(flat),
            ..A_KEY
        };
        for geometry in [
            wider(f64::MAX, 1.0),
            wider(100.1, 1.0),
            wider(4.0, 4.0),
            wider(4.0, 5.0),
            wider(0.0, 0.0),
            Geometry {
                step: millimetres(f64::MAX),
                ..A_KEY
            },
            Geometry {
                step: millimetres(0.0),
                ..A_KEY
            },
        ] {
            assert_eq!(DepthInformation::of(&geometry, &view), Err(OutOfRange));
        }
        assert!(DepthInformation::of(&wider(4.0, 0.0), &view).is_ok());
    }

    #[test]
    fn log_determinant_of_two_by_two_has_its_closed_form() {
        for (a, b, c) in [(1.0, 0.5, 2.0), (1e-12, 1e-13, 3e-12), (1e9, 9.9e8, 1e9)] {
            let entries = [[a, b], [b, c]];
            let found = log_determinant_of_one_plus(2, |i, j| entries[i][j]);
            let exact = libm::log1p(a + c + (a * c - b * b));
            assert!((found / exact - 1.0).abs() < 1e-9, "{found} {exact}");
        }
    }

    proptest! {
        #[test]
        fn precision_is_finite_and_never_negative(
            log_pixel in -12.0_f64..300.0, log_blur in -12.0_f64..300.0, contrast in -1.0_f64..1e3,
        ) {
            for family in Family::ALL {
                let view = View {
                    ground_sample: Millimetres::new(libm::exp(log_pixel)).unwrap(),
                    blur: Millimetres::new(libm::exp(log_blur)).unwrap(),
                    contrast_to_noise: contrast,
                };
                let precision = DepthInformation::of_family(family, &view).precision();
                prop_assert!(precision.is_finite() && precision >= 0.0, "{precision}");
            }
        }

        /// Whatever stands in the fields: an error, or a matrix of finite entries of which no two
        /// cuts share more than either has alone.
        #[test]
        fn any_geometry_is_refused_or_told_of(
            cuts in 0_u8..12, depths in 0_u8..=255,
            step in any_length(), pitch in any_length(), flat in any_flat(),
            log_pixel in -12.0_f64..5.0, log_blur in -12.0_f64..5.0,
        ) {
            let geometry = Geometry {
                cuts,
                depths,
                step: millimetres(step),
                pitch: millimetres(pitch),
                flat: millimetres((flat * pitch).min(f64::MAX)),
                ..A_KEY
            };
            let view = View {
                ground_sample: millimetres(libm::exp(log_pixel)),
                blur: millimetres(libm::exp(log_blur)),
                contrast_to_noise: 30.0,
            };
            let Ok(told) = DepthInformation::of(&geometry, &view) else {
                let possible = step > 0.0 && step <= 100.0 && pitch > 0.0 && pitch <= 100.0;
                prop_assert!(!possible || flat > 0.98);
                return Ok(());
            };
            let alone = told.entry(0, 0);
            for other in 0..usize::from(cuts) {
                let shared = told.entry(0, other);
                prop_assert!(shared.is_finite() && shared.abs() <= alone * (1.0 + 1e-6));
            }
            let precision = told.precision();
            prop_assert!(precision.is_finite() && precision >= 0.0, "{precision}");
        }
    }
}
