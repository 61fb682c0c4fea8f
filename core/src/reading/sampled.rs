//! What readings leak on average, over a fixed sample of keys and errors.

use super::ReadingError;
use super::chain::Chain;
use super::levels::{entropy_nats, information_nats};
use super::posterior::Posterior;
use super::sample::Sample;
use super::success::{LISTED, chances, tries_for_an_even_chance, tries_grid};
use crate::differs::CutRule;
use core::f64::consts::LN_2;

/// A mean over a sample and the standard deviation of its error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The mean.
    pub value: f64,
    /// Standard error, from the spread between the shifts of the sample.
    pub standard_error: f64,
}

/// What readings of all cuts leak, computed from a sample of onlookers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sampled {
    /// Information about the key, in bits.
    pub bits_leaked: Estimate,
    /// Binary logarithm of the number of best-first tries that give an even chance.
    pub log2_tries_even_chance: Estimate,
    /// Probability that the likeliest key is the right one.
    pub first_guess: Estimate,
    /// Probability that the right key is among the three likeliest.
    pub within_three: Estimate,
    /// Probability that the right key is among the ten likeliest.
    pub within_ten: Estimate,
}

/// Computes what readings with Gaussian error leak about a key of `rule`, all keys being equally
/// likely and depths lying `step_over_sigma` standard deviations apart.
///
/// The information is the family's secrecy less the mean entropy of what onlookers still believe.
/// The entropy of each onlooker's beliefs is exact, by forward and backward recursion over the
/// chain of cuts, and so are the ten likeliest keys. The mean over onlookers runs over the fixed
/// `sample`; the entropies that single cuts would have alone, whose mean is known exactly, take out
/// most of its error. The number of tries for an even chance is where the mean over onlookers of
/// the probability of their best so many keys reaches one half; up to 16 tries the keys are listed
/// exactly, beyond that they are counted by rank (see the module of that name for its error).
///
/// For the first and last cut nothing is known of a neighbour outside the key.
///
/// # Errors
/// [`ReadingError`] where the rule has no keys, is not a chain or is too large, or where the sample
/// has no points or fewer than two shifts.
///
/// ```
/// use self_check_core::{differs::CutRule, reading::{Sample, information_per_cut, sampled}};
/// // Without a rule the cuts are independent.
/// let sample = Sample { points: 64, shifts: 2, seed: 1 };
/// let bits = sampled(&CutRule::new(5, 10, 9), 3.0, &sample)?.bits_leaked.value;
/// assert!((bits - 5.0 * information_per_cut(10, 3.0).get()).abs() < 1e-9);
/// # Ok::<(), self_check_core::reading::ReadingError>(())
/// ```
pub fn sampled(
    rule: &CutRule,
    step_over_sigma: f64,
    sample: &Sample,
) -> Result<Sampled, ReadingError> {
    let chain = Chain::new(rule)?;
    let onlookers = Onlookers::new(&chain, step_over_sigma, tries_grid(chain.keys()));
    let shifts = onlookers.all_sums(sample)?;
    Ok(Sampled {
        bits_leaked: onlookers.bits_leaked(&shifts),
        log2_tries_even_chance: onlookers.log2_tries_even_chance(&shifts),
        first_guess: onlookers.within(1, &shifts),
        within_three: onlookers.within(3, &shifts),
        within_ten: onlookers.within(10, &shifts),
    })
}

/// [`Sampled::bits_leaked`] alone, in a twentieth of the time.
///
/// # Errors
/// As [`sampled`].
pub fn sampled_bits_leaked(
    rule: &CutRule,
    step_over_sigma: f64,
    sample: &Sample,
) -> Result<Estimate, ReadingError> {
    let chain = Chain::new(rule)?;
    let onlookers = Onlookers::new(&chain, step_over_sigma, Vec::new());
    Ok(onlookers.bits_leaked(&onlookers.all_sums(sample)?))
}

/// Far beyond this ratio depths are never confused; the arithmetic stays well inside its range.
const LARGEST_RATIO: f64 = 40.0;

struct Onlookers<'a> {
    chain: &'a Chain,
    ratio: f64,
    marginals: Vec<Vec<f64>>,
    grid: Vec<f64>,
}

/// Means over the onlookers of one shift.
struct Sums {
    entropy: f64,
    lone: f64,
    entropy_lone: f64,
    lone_squared: f64,
    chances: Vec<f64>,
}

impl<'a> Onlookers<'a> {
    fn new(chain: &'a Chain, ratio: f64, grid: Vec<f64>) -> Self {
        let ratio = if ratio > 0.0 {
            ratio.min(LARGEST_RATIO)
        } else {
            0.0
        };
        Self {
            chain,
            ratio,
            marginals: chain.marginals(),
            grid,
        }
    }

    fn all_sums(&self, sample: &Sample) -> Result<Vec<Sums>, ReadingError> {
        if sample.shifts < 2 || sample.points == 0 {
            return Err(ReadingError::SampleTooSmall);
        }
        Ok((0..sample.shifts)
            .map(|shift| self.sums(sample, shift))
            .collect())
    }

    fn sums(&self, sample: &Sample, shift: u32) -> Sums {
        let mut sums = Sums {
            entropy: 0.0,
            lone: 0.0,
            entropy_lone: 0.0,
            lone_squared: 0.0,
            chances: vec![0.0; self.grid.len()],
        };
        let cuts = self.chain.cuts;
        let mut key = vec![0; cuts];
        let mut errors = vec![0.0; cuts];
        let mut reached = Vec::with_capacity(self.grid.len());
        let share = 1.0 / f64::from(sample.points);
        for point in sample.points(shift) {
            self.chain.key(|cut| point.coordinate(cut), &mut key);
            for (pair, errors) in errors.chunks_mut(2).enumerate() {
                let (first, second) = point.normal_pair(cuts + 2 * pair);
                for (slot, error) in errors.iter_mut().zip([first, second]) {
                    *slot = error;
                }
            }
            let posterior = Posterior::new(self.chain, &key, &errors, self.ratio);
            let uncertainty = posterior.uncertainty();
            let entropy = uncertainty.entropy_nats;
            let lone = posterior.entropy_of_lone_cuts(&self.marginals);
            if !self.grid.is_empty() {
                chances(&posterior, uncertainty.log_total, &self.grid, &mut reached);
            }
            sums.entropy += share * entropy;
            sums.lone += share * lone;
            sums.entropy_lone += share * entropy * lone;
            sums.lone_squared += share * lone * lone;
            for (sum, chance) in sums.chances.iter_mut().zip(&reached) {
                *sum += share * chance;
            }
        }
        sums
    }

    fn bits_leaked(&self, shifts: &[Sums]) -> Estimate {
        let mean = |of: fn(&Sums) -> f64| estimate(shifts.iter().map(of)).value;
        let (entropy, lone) = (mean(|s| s.entropy), mean(|s| s.lone));
        let spread = mean(|s| s.lone_squared) - lone * lone;
        let shared = mean(|s| s.entropy_lone) - entropy * lone;
        let slope = if spread > 1e-12 { shared / spread } else { 0.0 };
        let expected_lone: f64 = self
            .marginals
            .iter()
            .map(|marginal| entropy_nats(marginal) - information_nats(marginal, self.ratio))
            .sum();
        let secrecy = libm::log(self.chain.keys());
        estimate(shifts.iter().map(|sums| {
            let left = sums.entropy - slope * (sums.lone - expected_lone);
            (secrecy - left) / LN_2
        }))
    }

    fn log2_tries_even_chance(&self, shifts: &[Sums]) -> Estimate {
        estimate(
            shifts
                .iter()
                .map(|sums| libm::log2(tries_for_an_even_chance(&self.grid, &sums.chances))),
        )
    }

    fn within(&self, tries: usize, shifts: &[Sums]) -> Estimate {
        let last = self.grid.len().min(LISTED).saturating_sub(1);
        let at = (tries - 1).min(last);
        estimate(
            shifts
                .iter()
                .map(|sums| sums.chances.get(at).copied().unwrap_or(1.0)),
        )
    }
}

/// Mean of the shifts and its standard error.
fn estimate(shifts: impl Iterator<Item = f64> + Clone) -> Estimate {
    let count = shifts.clone().count() as f64;
    let value = shifts.clone().sum::<f64>() / count;
    let squares: f64 = shifts.map(|shift| (shift - value) * (shift - value)).sum();
    Estimate {
        value,
        standard_error: (squares / (count * (count - 1.0))).sqrt(),
    }
}

#[cfg(test)]
mod tests;
