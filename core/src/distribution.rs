//! The normal distribution.

/// Probability that a standard normal value is at most `z`.
pub(crate) fn normal_below(z: f64) -> f64 {
    0.5 * libm::erfc(-z * core::f64::consts::FRAC_1_SQRT_2)
}

/// Density of the standard normal distribution at `z`.
pub(crate) fn normal_density(z: f64) -> f64 {
    libm::exp(-0.5 * z * z) * INVERSE_ROOT_OF_TAU
}

/// 1/√(2π).
const INVERSE_ROOT_OF_TAU: f64 = 0.398_942_280_401_432_7;
