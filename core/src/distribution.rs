//! The normal distribution, and fixed numbers that look drawn by chance.

/// Probability that a standard normal value is at most `z`.
pub(crate) fn normal_below(z: f64) -> f64 {
    0.5 * libm::erfc(-z * core::f64::consts::FRAC_1_SQRT_2)
}

/// Density of the standard normal distribution at `z`.
pub(crate) fn normal_density(z: f64) -> f64 {
    libm::exp(-0.5 * z * z) * INVERSE_ROOT_OF_TAU
}

/// The finishing steps of a 64-bit mixing function: every bit of the input moves every bit of the
/// output. The same input gives the same output on every machine.
pub(crate) const fn scramble(mut bits: u64) -> u64 {
    bits = bits.wrapping_add(0x9e37_79b9_7f4a_7c15);
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

/// A fixed value for each input, nearly standard normal over many inputs: the sum of four even
/// parts of its scrambled bits.
pub(crate) fn scatter(input: u64) -> f64 {
    let bits = scramble(input);
    let parts = (bits & 0xffff) + (bits >> 16 & 0xffff) + (bits >> 32 & 0xffff) + (bits >> 48);
    (parts as f64 / 65_536.0 - 2.0) * ROOT_OF_3
}

const ROOT_OF_3: f64 = 1.732_050_807_568_877_2;

/// 1/√(2π).
const INVERSE_ROOT_OF_TAU: f64 = 0.398_942_280_401_432_7;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn normal_distribution_agrees_with_handbook_values() {
        // Two-sided 5 % and one-sided 0.1 %, to the four decimals that tables print.
        assert!((normal_below(1.959_964) - 0.975).abs() < 1e-7);
        assert!((normal_below(-3.090_232) - 0.001).abs() < 1e-8);
        assert!((normal_density(0.0) - 0.398_942_28).abs() < 1e-8);
    }

    #[test]
    fn scatter_has_the_mean_and_spread_of_the_normal_distribution() {
        let count = 100_000_u64;
        let mean: f64 = (0..count).map(scatter).sum::<f64>() / count as f64;
        let square: f64 = (0..count).map(|k| scatter(k).powi(2)).sum::<f64>() / count as f64;
        // Four standard errors of each.
        assert!(
            mean.abs() < 0.013 && (square - 1.0).abs() < 0.016,
            "{mean} {square}"
        );
    }
}
