//! One cut read with Gaussian error: how much the reading tells.

use crate::distribution::normal_density;
use crate::units::Bits;
use core::f64::consts::LN_2;

/// Information that one reading with Gaussian error gives about one of `levels` equally likely
/// depths, spaced `step_over_sigma` standard deviations apart.
///
/// Valid for any number of levels, which the type holds to 255, and any ratio that is not negative;
/// good to 1e-9 for 2 to 12 levels and ratios up to 20. A single level or none, a negative ratio and
/// not a number count as no information. The work grows with the square of the levels.
///
/// Assumes that the error is the same at every depth.
///
/// Source: the mutual information of M-level signals in Gaussian noise, as G. Ungerboeck, IEEE
/// Transactions on Information Theory 28(1), 1982, plots it; checked against 40-digit quadrature.
///
/// ```
/// use self_check_core::reading::information_per_cut;
/// let bits = information_per_cut(2, 1.0).get();
/// assert!((bits - 0.160_747_219_796).abs() < 1e-9);
/// ```
pub fn information_per_cut(levels: u8, step_over_sigma: f64) -> Bits {
    if levels < 2 {
        return Bits::nearest(0.0);
    }
    let most = libm::log2(f64::from(levels));
    let prior = vec![1.0 / f64::from(levels); usize::from(levels)];
    Bits::nearest((information_nats(&prior, step_over_sigma) / LN_2).min(most))
}

/// The same for depths that are not equally likely, in nats: minus the mean logarithm of the ratio
/// of the reading's density to its density at the true depth.
///
/// The trapezoid rule converges geometrically here: the integrand is analytic up to the zeros of
/// the density, π/ratio away from the real line, so that at a ratio of 20 the error is below
/// exp(−2π·(π/20)·32), far less than 1e-12; beyond nine standard deviations the weight is below
/// 1e-17.
pub(super) fn information_nats(prior: &[f64], ratio: f64) -> f64 {
    if ratio.is_nan() || ratio <= 0.0 {
        return 0.0;
    }
    let levels = prior.len();
    if ratio > LARGEST_RATIO {
        return entropy_nats(prior);
    }
    let reach = levels as i32 - 1;
    let mut excess = vec![0.0; 2 * levels - 1];
    let mut sum = 0.0;
    for node in -NODES..=NODES {
        let z = f64::from(node) / NODES_PER_SIGMA;
        for (slot, apart) in excess.iter_mut().zip(-reach..=reach) {
            let shift = f64::from(apart) * ratio;
            *slot = libm::expm1(-shift * (0.5 * shift + z));
        }
        let mut mean = 0.0;
        for (level, weight) in prior.iter().enumerate() {
            // Entry level − other + reach of `excess` belongs to the pair (level, other).
            let others = excess.iter().skip(level).take(levels);
            let mixed: f64 = prior.iter().rev().zip(others).map(|(p, e)| p * e).sum();
            mean -= weight * libm::log1p(mixed);
        }
        sum += normal_density(z) * mean;
    }
    (sum / NODES_PER_SIGMA).max(0.0)
}

/// Entropy of a distribution, in nats.
pub(super) fn entropy_nats(distribution: &[f64]) -> f64 {
    -distribution
        .iter()
        .filter(|&&p| p > 0.0)
        .map(|&p| p * libm::log(p))
        .sum::<f64>()
}

const NODES_PER_SIGMA: f64 = 32.0;
const NODES: i32 = 9 * 32;

/// Beyond this ratio a wrong depth is never chosen within the precision of the numbers.
const LARGEST_RATIO: f64 = 40.0;

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn information_at_the_limits_is_none_or_all() {
        for levels in 2..=12 {
            let all = libm::log2(f64::from(levels));
            assert_eq!(information_per_cut(levels, 0.0).get(), 0.0);
            assert_eq!(information_per_cut(levels, f64::NAN).get(), 0.0);
            assert_eq!(information_per_cut(levels, -1.0).get(), 0.0);
            for ratio in [20.0, 39.0, 41.0, 1e9, f64::INFINITY] {
                assert!((information_per_cut(levels, ratio).get() - all).abs() < 1e-12);
            }
        }
        assert_eq!(information_per_cut(1, 3.0).get(), 0.0);
        assert_eq!(information_per_cut(0, 3.0).get(), 0.0);
    }

    /// Levels half a standard deviation apart are as good as continuous, and so many of them are as
    /// good as endless: a uniform signal's entropy less that of the error, but for its two ends.
    #[test]
    fn information_of_the_most_levels_is_that_of_a_uniform_signal() {
        let width = 255.0 * 0.5;
        let error = 0.5 * libm::log2(core::f64::consts::TAU * core::f64::consts::E);
        let found = information_per_cut(u8::MAX, 0.5).get();
        let endless = libm::log2(width) - error;
        // Each end blurs a few standard deviations out of 127, which adds a little.
        assert!(
            found > endless && found < endless + 0.03,
            "{found} {endless}"
        );
        let all = libm::log2(255.0);
        assert!((information_per_cut(u8::MAX, 20.0).get() - all).abs() < 1e-9);
    }

    #[test]
    fn information_of_unequal_levels_lies_below_their_entropy() {
        let prior = [0.5, 0.25, 0.125, 0.125];
        let most = entropy_nats(&prior);
        assert!((most / LN_2 - 1.75).abs() < 1e-12);
        assert!(information_nats(&prior, 1.0) < most);
        assert!((information_nats(&prior, 30.0) - most).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn information_grows_with_the_ratio_and_stays_within_its_bounds(
            levels in 2_u8..13, ratio in 0.01_f64..20.0, more in 0.01_f64..2.0,
        ) {
            let near = information_per_cut(levels, ratio).get();
            let nearer = information_per_cut(levels, ratio + more).get();
            prop_assert!(near >= 0.0 && nearer <= libm::log2(f64::from(levels)));
            prop_assert!(nearer >= near - 1e-12);
            // Never more than a Gaussian signal of the same variance would tell.
            let spread = (f64::from(levels) * f64::from(levels) - 1.0) / 12.0 * ratio * ratio;
            prop_assert!(near <= 0.5 * libm::log2(1.0 + spread) + 1e-12);
        }
    }
}
