//! The keys of a family as a chain: each cut allows the depths in reach of it for the next.

use super::ReadingError;
use crate::differs::{self, CutRule};

/// The keys that the maximum adjacent cut rule allows, all equally likely.
#[derive(Clone, Debug)]
pub(super) struct Chain {
    pub(super) cuts: usize,
    pub(super) depths: usize,
    reach: usize,
    /// For each cut, the number of ways to go on from each depth. Whole numbers, exact below 2^53.
    ways: Vec<Vec<f64>>,
}

impl Chain {
    /// The chain of `rule`. Errs where the rule has no keys, has limits that are no chain, or has
    /// more keys than the arithmetic holds exactly.
    pub(super) fn new(rule: &CutRule) -> Result<Self, ReadingError> {
        let keys = differs::count(rule).map_err(ReadingError::Count)?;
        if rule.max_sharing.is_some() || rule.min_different.is_some() {
            return Err(ReadingError::NotAChain);
        }
        if keys > 1 << 53 || rule.depths > MOST_DEPTHS || rule.cuts > MOST_CUTS {
            return Err(ReadingError::TooManyKeys);
        }
        let mut chain = Self {
            cuts: rule.cuts as usize,
            depths: rule.depths as usize,
            // More than that reaches no further, and would not fit where numbers are narrow.
            reach: rule.max_step.min(rule.depths - 1) as usize,
            ways: vec![vec![1.0; rule.depths as usize]],
        };
        for _ in 1..chain.cuts {
            let next = chain.ways.last().map(|after| chain.window_sums(after));
            chain.ways.extend(next);
        }
        chain.ways.reverse();
        Ok(chain)
    }

    /// Number of keys.
    pub(super) fn keys(&self) -> f64 {
        self.ways.first().map_or(0.0, |ways| ways.iter().sum())
    }

    /// The depths that may stand next to `depth`.
    pub(super) fn window(&self, depth: usize) -> core::ops::Range<usize> {
        depth.saturating_sub(self.reach)..(depth + self.reach + 1).min(self.depths)
    }

    /// For each depth, the sum of `values` over the depths that may stand next to it.
    pub(super) fn window_sums(&self, values: &[f64]) -> Vec<f64> {
        let mut sums = vec![0.0; self.depths];
        self.window_sums_into(values, &mut sums);
        sums
    }

    /// [`Chain::window_sums`] into a slice. Adds every window afresh: differences of running sums
    /// would lose the small values that matter.
    pub(super) fn window_sums_into(&self, values: &[f64], sums: &mut [f64]) {
        for (depth, slot) in sums.iter_mut().enumerate() {
            *slot = values
                .get(self.window(depth))
                .map_or(0.0, |window| window.iter().sum());
        }
    }

    /// How likely each depth is at each cut.
    pub(super) fn marginals(&self) -> Vec<Vec<f64>> {
        let keys = self.keys();
        let mut before = vec![1.0; self.depths];
        let mut marginals = Vec::with_capacity(self.cuts);
        for ways in &self.ways {
            marginals.push(
                before
                    .iter()
                    .zip(ways)
                    .map(|(before, after)| before * after / keys)
                    .collect(),
            );
            before = self.window_sums(&before);
        }
        marginals
    }

    /// The key that the coordinates `u`, one for each cut, stand for: equal parts of the unit cube
    /// for equal numbers of keys.
    pub(super) fn key(&self, u: impl Fn(usize) -> f64, key: &mut [usize]) {
        let mut window = 0..self.depths;
        for (cut, (slot, ways)) in key.iter_mut().zip(&self.ways).enumerate() {
            let choices = ways.get(window.clone()).unwrap_or(&[]);
            let mut left = u(cut) * choices.iter().sum::<f64>();
            let mut depth = window.start;
            for (candidate, share) in window.clone().zip(choices) {
                depth = candidate;
                left -= share;
                if left < 0.0 {
                    break;
                }
            }
            *slot = depth;
            window = self.window(depth);
        }
    }
}

/// Onlookers are sampled with one coordinate for each cut and one for its error; the sample has 24.
const MOST_CUTS: u32 = 12;

/// More depths than any key has.
const MOST_DEPTHS: u32 = 64;

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn marginals_and_keys_equal_enumeration() {
        let rule = CutRule::new(4, 5, 2);
        let chain = Chain::new(&rule).unwrap();
        let mut counts = vec![vec![0.0; 5]; 4];
        let mut keys = 0.0;
        for number in 0..5_usize.pow(4) {
            let key: Vec<usize> = (0..4).map(|cut| number / 5_usize.pow(cut) % 5).collect();
            if key.windows(2).all(|pair| pair[0].abs_diff(pair[1]) <= 2) {
                keys += 1.0;
                for (cut, &depth) in key.iter().enumerate() {
                    counts[cut][depth] += 1.0;
                }
            }
        }
        assert_eq!(chain.keys(), keys);
        for (marginal, counts) in chain.marginals().iter().zip(&counts) {
            for (p, count) in marginal.iter().zip(counts) {
                assert!((p - count / keys).abs() < 1e-15);
            }
        }
    }

    #[test]
    fn equal_parts_of_the_cube_stand_for_equal_numbers_of_keys() {
        let chain = Chain::new(&CutRule::new(2, 3, 1)).unwrap();
        // Seven keys: 00 01 10 11 12 21 22. Two start with 0, three with 1, two with 2.
        let mut key = [9; 2];
        for (u, expected) in [
            ([0.1, 0.2], [0, 0]),
            ([0.28, 0.7], [0, 1]),
            ([0.29, 0.1], [1, 0]),
            ([0.70, 0.5], [1, 1]),
            ([0.72, 0.6], [2, 2]),
            ([0.99, 0.4], [2, 1]),
        ] {
            chain.key(|cut| u[cut], &mut key);
            assert_eq!(key, expected);
        }
    }

    /// So that it fits wherever the narrowest numbers have 32 bits.
    #[test]
    fn reach_is_never_more_than_there_are_depths() {
        for max_step in [4, 5, 1 << 16, u32::MAX] {
            let chain = Chain::new(&CutRule::new(3, 5, max_step)).unwrap();
            assert_eq!(chain.reach, 4);
            assert!((0..5).all(|depth| chain.window(depth) == (0..5)));
            assert_eq!(chain.keys(), 125.0);
        }
        assert_eq!(Chain::new(&CutRule::new(3, 1, 7)).unwrap().reach, 0);
    }

    #[test]
    fn rules_that_are_no_chain_or_too_large_are_refused() {
        let limited = CutRule::new(5, 10, 7).sharing_at_most(3);
        assert_eq!(Chain::new(&limited).unwrap_err(), ReadingError::NotAChain);
        let long = CutRule::new(13, 2, 1);
        assert_eq!(Chain::new(&long).unwrap_err(), ReadingError::TooManyKeys);
        let empty = CutRule::new(0, 2, 1);
        let no_cuts = ReadingError::Count(differs::CountError::NoCuts);
        assert_eq!(Chain::new(&empty).unwrap_err(), no_cuts);
    }
}
