//! The noise of a picture, estimated where it shows no structure.

use super::level::Level;

/// Noise is looked for in pixels and in means of 2 by 2 and 4 by 4.
pub(super) const LEVELS_OF_NOISE: usize = 3;

/// How often the operator below gave each size of answer in a level.
pub(super) struct NoiseCounts {
    counts: Vec<u32>,
    total: u32,
}

impl NoiseCounts {
    pub fn new(halvings: usize) -> Self {
        let largest_sum = 255 << (2 * halvings);
        let counts = if halvings < LEVELS_OF_NOISE {
            vec![0; 8 * largest_sum + 1]
        } else {
            Vec::new()
        };
        Self { counts, total: 0 }
    }

    /// Counts the answer at the middle of three rows of three.
    ///
    /// The operator is the difference of two Laplacians, `1 -2 1, -2 4 -2, 1 -2 1`: blind to even and
    /// evenly sloped areas and to straight edges along the grid. White noise comes out six times as
    /// wide as it went in.
    pub fn add(&mut self, square: &[[u16; 3]; 3]) {
        let [[a, b, c], [d, e, f], [g, h, i]] = square.map(|row| row.map(i32::from));
        let answer = (a + c + g + i - 2 * (b + d + f + h) + 4 * e).unsigned_abs();
        if let Some(count) = self.counts.get_mut(answer as usize) {
            *count += 1;
            self.total += 1;
        }
    }

    /// The noise's standard deviation at this level, were its pixels independent, in grey levels of
    /// one pixel of the picture.
    ///
    /// The median of the answers' sizes, over 0.6745, is the standard deviation of a Gaussian and is
    /// not moved by a minority of pixels with structure.
    pub fn of_one_pixel(&self, level: &Level) -> Option<f64> {
        if self.total < FEWEST_ANSWERS {
            return None;
        }
        let median = self.median();
        Some(level.side() as f64 * level.grey_of_a_sum() * median / (MEDIAN_OF_GAUSSIAN * GAIN))
    }

    /// The median, even within the answers that share one whole number.
    fn median(&self) -> f64 {
        let half = 0.5 * f64::from(self.total);
        let mut below = 0.0;
        for (answer, &count) in self.counts.iter().enumerate() {
            let count = f64::from(count);
            if below + count >= half && count > 0.0 {
                // Answers of 0 stand for sizes up to one half, all others for a half to either side.
                let (start, width) = match answer {
                    0 => (0.0, 0.5),
                    _ => (answer as f64 - 0.5, 1.0),
                };
                return start + width * (half - below) / count;
            }
            below += count;
        }
        0.0
    }
}

/// With fewer, a median says little.
const FEWEST_ANSWERS: u32 = 50;

/// Half of all values of a Gaussian lie within this many standard deviations.
const MEDIAN_OF_GAUSSIAN: f64 = 0.6745;

/// The root of the sum of squares of the operator.
const GAIN: f64 = 6.0;
