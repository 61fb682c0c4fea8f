//! Trying keys in the order in which an onlooker finds them likely.

use super::posterior::Posterior;
use std::cmp::Ordering;
use std::collections::BinaryHeap;

impl Posterior<'_> {
    /// The probabilities of the likeliest keys, best first, at most `most` of them.
    ///
    /// A list search over the chain: the best way to go on from every depth is known from one
    /// backward pass, so a search by best possible total meets the keys in exact order and opens
    /// only beginnings of keys that it then lists (F. K. Soong and E.-F. Huang, 1991).
    pub(super) fn likeliest(&self, most: usize, log_total: f64) -> Vec<f64> {
        let depths = self.chain.depths;
        let best = self.best_from_here();
        let mut open: BinaryHeap<Beginning> = (0..depths)
            .filter_map(|depth| {
                Some(Beginning {
                    possible: *best.get(depth)?,
                    so_far: 0.0,
                    cut: 0,
                    depth,
                })
            })
            .collect();
        let mut found = Vec::with_capacity(most);
        while found.len() < most {
            let Some(beginning) = open.pop() else { break };
            let cut = beginning.cut + 1;
            if cut == self.chain.cuts {
                found.push(libm::exp(beginning.possible - log_total));
                continue;
            }
            let own = beginning.cut * depths + beginning.depth;
            let so_far = beginning.so_far + self.log_weights.get(own).unwrap_or(&0.0);
            for depth in self.chain.window(beginning.depth) {
                if let Some(further) = best.get(cut * depths + depth) {
                    open.push(Beginning {
                        possible: so_far + further,
                        so_far,
                        cut,
                        depth,
                    });
                }
            }
        }
        found
    }

    /// For every cut and depth, the largest log weight of that cut and all later ones.
    fn best_from_here(&self) -> Vec<f64> {
        let depths = self.chain.depths;
        let mut best = self.log_weights.clone();
        for cut in (1..self.chain.cuts).rev() {
            let (earlier, later) = best.split_at_mut(cut * depths);
            let own = earlier.get_mut((cut - 1) * depths..).unwrap_or_default();
            for (depth, slot) in own.iter_mut().enumerate() {
                let choices = later.get(self.chain.window(depth)).unwrap_or(&[]);
                *slot += choices.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            }
        }
        best
    }
}

/// A beginning of a key, up to the depth of one cut.
struct Beginning {
    possible: f64,
    so_far: f64,
    cut: usize,
    depth: usize,
}

/// By the best possible total. Equal totals are taken in a fixed order, longest beginning first, so
/// that the search is the same on every machine.
impl Ord for Beginning {
    fn cmp(&self, other: &Self) -> Ordering {
        self.possible
            .total_cmp(&other.possible)
            .then(self.cut.cmp(&other.cut))
            .then(other.depth.cmp(&self.depth))
            .then(self.so_far.total_cmp(&other.so_far))
    }
}

impl PartialOrd for Beginning {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Beginning {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Beginning {}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
pub(super) mod tests {
    use super::*;
    use crate::differs::CutRule;
    use crate::reading::chain::Chain;

    /// The probabilities of all keys, best first, by listing every key.
    pub(in crate::reading) fn all_sorted(posterior: &Posterior<'_>) -> Vec<f64> {
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
                let logs = key.iter().enumerate();
                let log: f64 = logs
                    .map(|(cut, depth)| posterior.log_weights[cut * depths + depth])
                    .sum();
                weights.push(log.exp());
            }
        }
        let total: f64 = weights.iter().sum();
        weights.iter_mut().for_each(|weight| *weight /= total);
        weights.sort_by(|a, b| b.total_cmp(a));
        weights
    }

    #[test]
    fn likeliest_keys_equal_a_sorted_list_of_all() {
        for (cuts, depths, max_step) in [(1, 4, 1), (3, 4, 1), (4, 5, 2), (5, 4, 3)] {
            let chain = Chain::new(&CutRule::new(cuts, depths, max_step)).unwrap();
            let key = vec![1; cuts as usize];
            for ratio in [0.05, 0.7, 2.0, 8.0] {
                let errors = [1.1, -0.6, 2.2, 0.3, -1.4];
                let posterior = Posterior::new(&chain, &key, &errors, ratio);
                let log_total = posterior.uncertainty().log_total;
                let listed = posterior.likeliest(30, log_total);
                let all = all_sorted(&posterior);
                assert_eq!(listed.len(), all.len().min(30));
                for (found, expected) in listed.iter().zip(&all) {
                    assert!((found - expected).abs() < 1e-12);
                }
            }
        }
    }
}
