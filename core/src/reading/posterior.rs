//! What one onlooker, having read every cut with an error, believes about the key.

use super::chain::Chain;
use super::levels::entropy_nats;

/// The likelihood of every depth at every cut, given one onlooker's readings.
pub(super) struct Posterior<'a> {
    pub(super) chain: &'a Chain,
    /// Logarithms, cut by cut; the likeliest depth of each cut stands at 0.
    pub(super) log_weights: Vec<f64>,
    weights: Vec<f64>,
}

/// How uncertain the onlooker is left, in nats, and the logarithm of the total weight of all keys.
pub(super) struct Uncertainty {
    pub(super) entropy_nats: f64,
    pub(super) log_total: f64,
}

impl<'a> Posterior<'a> {
    /// The beliefs after readings of `key` that err by `errors` standard deviations, the depths
    /// lying `ratio` standard deviations apart.
    pub(super) fn new(chain: &'a Chain, key: &[usize], errors: &[f64], ratio: f64) -> Self {
        let mut log_weights = Vec::with_capacity(chain.cuts * chain.depths);
        for (&depth, error) in key.iter().zip(errors) {
            let start = log_weights.len();
            log_weights.extend((0..chain.depths).map(|other| {
                let apart = error + (depth as f64 - other as f64) * ratio;
                -0.5 * apart * apart
            }));
            let cut = log_weights.get_mut(start..).unwrap_or_default();
            let best = cut.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            cut.iter_mut().for_each(|weight| *weight -= best);
        }
        let weights = log_weights
            .iter()
            .map(|&weight| libm::exp(weight))
            .collect();
        Self {
            chain,
            log_weights,
            weights,
        }
    }

    /// The entropy over all keys that the rule allows, by one pass from the last cut to the first:
    /// each depth collects the weight of all ways to go on and the entropy of the choice among them.
    ///
    /// Weights are scaled at every cut, so they cannot all vanish unless the readings contradict
    /// the rule beyond what numbers hold; then nothing is taken to be left uncertain.
    pub(super) fn uncertainty(&self) -> Uncertainty {
        let depths = self.chain.depths;
        let mut cuts = self.weights.chunks_exact(depths).rev();
        let mut weight = cuts.next().map_or_else(Vec::new, <[f64]>::to_vec);
        let mut entropy = vec![0.0; depths];
        let mut next_weight = vec![0.0; depths];
        let mut next_entropy = vec![0.0; depths];
        let mut log_total = 0.0;
        for own in cuts {
            for depth in 0..depths {
                let window = self.chain.window(depth);
                let choices = weight.get(window.clone()).unwrap_or(&[]);
                let total: f64 = choices.iter().sum();
                let slots = next_weight.get_mut(depth).zip(next_entropy.get_mut(depth));
                let (Some((weight_slot, entropy_slot)), Some(own)) = (slots, own.get(depth)) else {
                    continue;
                };
                *weight_slot = own * total;
                *entropy_slot = 0.0;
                if total > 0.0 {
                    let later = entropy.get(window).unwrap_or(&[]);
                    *entropy_slot = mixture_entropy(choices, later, total);
                }
            }
            let scale = next_weight.iter().copied().fold(0.0, f64::max);
            if scale == 0.0 {
                return Uncertainty {
                    entropy_nats: 0.0,
                    log_total: f64::NEG_INFINITY,
                };
            }
            next_weight.iter_mut().for_each(|weight| *weight /= scale);
            log_total += libm::log(scale);
            core::mem::swap(&mut weight, &mut next_weight);
            core::mem::swap(&mut entropy, &mut next_entropy);
        }
        let total: f64 = weight.iter().sum();
        Uncertainty {
            entropy_nats: mixture_entropy(&weight, &entropy, total),
            log_total: log_total + libm::log(total),
        }
    }

    /// The sum over cuts of the entropy each would have if it were read alone, in nats.
    pub(super) fn entropy_of_lone_cuts(&self, marginals: &[Vec<f64>]) -> f64 {
        let mut lone = Vec::with_capacity(self.chain.depths);
        self.weights
            .chunks_exact(self.chain.depths)
            .zip(marginals)
            .map(|(weights, marginal)| {
                lone.clear();
                lone.extend(weights.iter().zip(marginal).map(|(w, p)| w * p));
                let total: f64 = lone.iter().sum();
                lone.iter_mut().for_each(|p| *p /= total);
                entropy_nats(&lone)
            })
            .sum()
    }
}

/// Entropy of a choice with the given weights, each leading to a further entropy.
fn mixture_entropy(weights: &[f64], further: &[f64], total: f64) -> f64 {
    let mut mean_log = 0.0;
    let mut mean_further = 0.0;
    for (&weight, later) in weights.iter().zip(further) {
        if weight > 0.0 {
            mean_log += weight * libm::log(weight);
            mean_further += weight * later;
        }
    }
    (libm::log(total) + (mean_further - mean_log) / total).max(0.0)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::differs::CutRule;

    /// The same by listing every key.
    fn by_enumeration(posterior: &Posterior<'_>) -> (f64, f64) {
        let chain = posterior.chain;
        let (cuts, depths) = (chain.cuts as u32, chain.depths);
        let mut weights = Vec::new();
        for number in 0..depths.pow(cuts) {
            let key: Vec<usize> = (0..cuts)
                .map(|cut| number / depths.pow(cut) % depths)
                .collect();
            if key
                .windows(2)
                .all(|pair| chain.window(pair[0]).contains(&pair[1]))
            {
                let log: f64 = key
                    .iter()
                    .enumerate()
                    .map(|(cut, depth)| posterior.log_weights[cut * depths + depth])
                    .sum();
                weights.push(log.exp());
            }
        }
        let total: f64 = weights.iter().sum();
        weights.iter_mut().for_each(|weight| *weight /= total);
        (entropy_nats(&weights), total.ln())
    }

    #[test]
    fn uncertainty_equals_enumeration() {
        for (cuts, depths, max_step) in [(1, 4, 1), (3, 4, 1), (4, 5, 2), (5, 4, 3), (4, 6, 0)] {
            let chain = Chain::new(&CutRule::new(cuts, depths, max_step)).unwrap();
            let errors = [0.3, -1.7, 0.9, 2.4, -0.2];
            for key in [
                vec![0; cuts as usize],
                vec![depths as usize - 1; cuts as usize],
            ] {
                for ratio in [0.01, 0.3, 1.0, 3.0, 9.0, 20.0] {
                    let posterior = Posterior::new(&chain, &key, &errors, ratio);
                    let found = posterior.uncertainty();
                    let (entropy, log_total) = by_enumeration(&posterior);
                    assert!((found.entropy_nats - entropy).abs() < 1e-12);
                    assert!((found.log_total - log_total).abs() < 1e-12);
                }
            }
        }
    }

    #[test]
    fn without_a_rule_cuts_are_as_uncertain_as_alone() {
        let chain = Chain::new(&CutRule::new(4, 6, 5)).unwrap();
        let marginals = chain.marginals();
        let posterior = Posterior::new(&chain, &[0, 5, 2, 3], &[0.4, 1.2, -2.0, 0.1], 1.3);
        let lone = posterior.entropy_of_lone_cuts(&marginals);
        assert!((posterior.uncertainty().entropy_nats - lone).abs() < 1e-12);
    }

    #[test]
    fn readings_that_contradict_the_rule_beyond_numbers_stay_finite() {
        let chain = Chain::new(&CutRule::new(3, 10, 1)).unwrap();
        let posterior = Posterior::new(&chain, &[0, 0, 0], &[0.0, 9_000.0, 0.0], 1_000.0);
        assert!(posterior.uncertainty().entropy_nats >= 0.0);
    }
}
