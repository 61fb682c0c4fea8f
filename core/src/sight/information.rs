//! How much a picture tells about the depths of a key's cuts.

use super::camera::View;
use super::footprint::overlaps;
use crate::assumptions::Assumption;
use crate::key::Geometry;
use crate::units::Millimetres;

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
}

impl DepthInformation {
    /// What `view` tells about the depths of a key with this geometry. A view without contrast, with
    /// one that is no number, or with a blur as large as numbers go, tells nothing.
    pub fn of(geometry: &Geometry, view: &View) -> Self {
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
        Self { by_distance }
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

    /// One precision, in mm^-2, that stands for the whole matrix where depths lie `step` apart and
    /// there are `depths` of them.
    ///
    /// With the precision Λ = 12/(step²·(depths²−1)) of what is known beforehand, it is the
    /// precision that, alike and independent for every cut, would leave the same volume of doubt:
    /// `Λ·expm1((1/n)·Σ ln1p(γ·λᵢ/Λ))` over the eigenvalues λᵢ. The factor γ is
    /// [`Assumption::SteepFlanks`]. Falls smoothly to 0 and never below.
    ///
    /// Checked by full inference over every key of an invented family, from crisp to a blur wider
    /// than the cuts' spacing: without γ it is right to 0.4 bit for the whole key, with it up to
    /// 1.2 bits above what leaks.
    pub fn precision(&self, step: Millimetres, depths: u8) -> f64 {
        let cuts = self.by_distance.len();
        let levels = f64::from(depths);
        let prior = 12.0 / (step.get() * step.get() * (levels * levels - 1.0));
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
    use proptest::prelude::*;

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
            for family in crate::key::Family::ALL {
                let geometry = family.geometry();
                let view = View {
                    ground_sample: Millimetres::new(libm::exp(log_pixel)).unwrap(),
                    blur: Millimetres::new(libm::exp(log_blur)).unwrap(),
                    contrast_to_noise: contrast,
                };
                let information = DepthInformation::of(geometry, &view);
                let precision = information.precision(geometry.step, geometry.depths);
                prop_assert!(precision.is_finite() && precision >= 0.0, "{precision}");
            }
        }
    }
}
