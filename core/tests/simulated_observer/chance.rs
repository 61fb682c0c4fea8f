//! Fixed pseudo-random numbers for the simulation.

/// A generator with a fixed course (the finishing steps of a 64-bit mix over a counter).
pub struct Chance {
    state: u64,
}

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self { state: seed }
    }

    fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.state;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    fn uniform(&mut self) -> f64 {
        ((self.bits() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, end: usize) -> usize {
        (self.uniform() * end as f64) as usize
    }

    fn normal(&mut self) -> f64 {
        let radius = (-2.0 * self.uniform().ln()).sqrt();
        radius * (std::f64::consts::TAU * self.uniform()).cos()
    }

    /// The picture with noise of standard deviation 1 in every pixel.
    pub fn with_noise(&mut self, picture: &[f64]) -> Vec<f64> {
        picture.iter().map(|shade| shade + self.normal()).collect()
    }
}

/// Entropy, in bits, of what is believed about which of `pictures` was seen with unit noise, all
/// being equally likely beforehand.
pub fn entropy_of_beliefs(pictures: &[Vec<f64>], seen: &[f64]) -> f64 {
    let logs: Vec<f64> = pictures
        .iter()
        .map(|picture| {
            let misfit = picture.iter().zip(seen).map(|(a, b)| (a - b) * (a - b));
            -0.5 * misfit.sum::<f64>()
        })
        .collect();
    let best = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = logs.iter().map(|log| (log - best).exp()).collect();
    let total: f64 = weights.iter().sum();
    weights
        .iter()
        .map(|weight| weight / total)
        .filter(|&p| p > 0.0)
        .map(|p| -p * p.log2())
        .sum()
}
