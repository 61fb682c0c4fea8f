//! A fixed sample of onlookers: which key each looks at and how each errs. A Kronecker sequence in
//! whole-number arithmetic, so the same points come out on every machine.

use crate::distribution::scramble;

/// A quasi-random sample: the fractional parts of multiples of square roots of primes, moved by a
/// shift. Different shifts of one sequence give independent errors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sample {
    /// Number of points in each shift.
    pub points: u32,
    /// Number of shifts, at least 2 where a standard error is wanted.
    pub shifts: u32,
    /// What the shifts are drawn from.
    pub seed: u64,
}

/// One point: coordinates in the open unit cube.
pub(super) struct Point {
    start: u64,
    index: u64,
}

impl Sample {
    /// The sample behind the tables.
    pub const TABLES: Self = Self {
        points: 4096,
        shifts: 8,
        seed: 1,
    };

    /// The points of one shift.
    pub(super) fn points(&self, shift: u32) -> impl Iterator<Item = Point> {
        let start = scramble(self.seed ^ scramble(u64::from(shift) + 1));
        (0..u64::from(self.points)).map(move |index| Point { start, index })
    }
}

impl Point {
    /// Coordinate number `axis`, strictly between 0 and 1.
    pub(super) fn coordinate(&self, axis: usize) -> f64 {
        let step = STEPS[axis % STEPS.len()];
        let shift = scramble(self.start.wrapping_add(axis as u64));
        let fraction = self.index.wrapping_mul(step).wrapping_add(shift);
        ((fraction >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// Two independent standard normal values from the coordinates `axis` and `axis + 1`, by the
    /// method of G. E. P. Box and M. E. Muller (1958).
    pub(super) fn normal_pair(&self, axis: usize) -> (f64, f64) {
        let radius = (-2.0 * libm::log(self.coordinate(axis))).sqrt();
        let (sin, cos) = libm::sincos(core::f64::consts::TAU * self.coordinate(axis + 1));
        (radius * cos, radius * sin)
    }
}

/// Fractional parts of the square roots of the first primes, as whole multiples of 2^-64.
const STEPS: [u64; 24] = {
    let primes = [
        2_u128, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79,
        83, 89,
    ];
    let mut steps = [0; 24];
    let mut axis = 0;
    while axis < 24 {
        steps[axis] = root_fraction(primes[axis]);
        axis += 1;
    }
    steps
};

/// 64 binary digits of the square root of `prime` after the point, digit by digit.
const fn root_fraction(prime: u128) -> u64 {
    let whole = prime.isqrt();
    // Long-hand root extraction: `root` so far, and what is left over from its square.
    let mut root = whole;
    let mut rest = prime - whole * whole;
    let mut digit = 0;
    let mut fraction = 0_u64;
    while digit < 64 {
        // Appending a binary digit to the root takes 4·root + 1 from four times the rest.
        rest *= 4;
        let taken = 4 * root + 1;
        root *= 2;
        fraction <<= 1;
        if rest >= taken {
            rest -= taken;
            root += 1;
            fraction |= 1;
        }
        digit += 1;
    }
    fraction
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_the_fractions_of_square_roots() {
        for (step, prime) in STEPS.into_iter().zip([2.0_f64, 3.0, 5.0, 7.0]) {
            let fraction = step as f64 / 2.0_f64.powi(64);
            assert!((fraction - prime.sqrt().fract()).abs() < 1e-15);
        }
        assert!((STEPS[23] as f64 / 2.0_f64.powi(64) - 89_f64.sqrt().fract()).abs() < 1e-14);
    }

    #[test]
    fn coordinates_fill_the_unit_interval_evenly() {
        let sample = Sample {
            points: 1000,
            shifts: 2,
            seed: 7,
        };
        for shift in 0..sample.shifts {
            for axis in 0..STEPS.len() {
                let mut tenths = [0; 10];
                for point in sample.points(shift) {
                    let coordinate = point.coordinate(axis);
                    assert!(coordinate > 0.0 && coordinate < 1.0);
                    tenths[(coordinate * 10.0) as usize] += 1;
                }
                // Kronecker sequences of quadratic irrationals miss an interval's share by a few
                // points only, where chance would miss it by about ten.
                assert!(tenths.iter().all(|&count| (93..=107).contains(&count)));
            }
        }
    }

    #[test]
    fn normal_pairs_have_the_moments_of_the_normal_distribution() {
        let sample = Sample {
            points: 20_000,
            shifts: 1,
            seed: 3,
        };
        let (mut mean, mut square, mut fourth) = (0.0, 0.0, 0.0);
        for point in sample.points(0) {
            let (a, b) = point.normal_pair(0);
            for z in [a, b] {
                mean += z / 40_000.0;
                square += z * z / 40_000.0;
                fourth += z.powi(4) / 40_000.0;
            }
        }
        assert!(mean.abs() < 0.005 && (square - 1.0).abs() < 0.005 && (fourth - 3.0).abs() < 0.1);
    }
}
