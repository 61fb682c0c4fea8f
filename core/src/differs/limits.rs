//! The count with limits on how often a depth is used and on how many different depths occur.

use super::{CountError, CutRule, MOST_ENTRIES, MOST_WRITTEN};
use std::collections::BTreeMap;

/// Keeps, for each way in which the depths can have been used and each depth the last cut can
/// have, the number of sequences. A use counts up to the most that still matters: the sharing
/// limit, or one where only the number of different depths is limited.
///
/// One of the limits matters: without, [`super::count`] takes the shorter way.
pub(super) fn count(rule: &CutRule) -> Result<u128, CountError> {
    let sharing = rule.max_sharing.unwrap_or(rule.cuts).min(rule.cuts);
    let least = rule.min_different.unwrap_or(0);
    if sharing == 0 || least > rule.depths.min(rule.cuts) {
        return Ok(0);
    }
    let most_uses = u128::from(rule.depths) * u128::from(sharing);
    if most_uses < u128::from(rule.cuts) {
        return Ok(0);
    }
    if rule.max_step == 0 {
        // All cuts alike: too many share a depth, or too few depths are different.
        return Ok(0);
    }
    let depths = rule.depths as usize;
    if depths > MOST_ENTRIES {
        return Err(CountError::TooLarge);
    }
    let cap = if sharing < rule.cuts { sharing } else { 1 };
    let mut sequences = BTreeMap::from([(State::unused(rule.depths), 1_u128)]);
    let mut written = 0_usize;
    for _ in 0..rule.cuts {
        let mut longer = BTreeMap::new();
        for (state, count) in sequences {
            for depth in state.next_depths(rule.max_step) {
                written = written.saturating_add(depths);
                if written > MOST_WRITTEN || longer.len().saturating_mul(depths) > MOST_ENTRIES {
                    return Err(CountError::TooLarge);
                }
                let Some(next) = state.used(depth, cap, sharing < rule.cuts) else {
                    continue;
                };
                let slot = longer.entry(next).or_insert(0_u128);
                *slot = slot.checked_add(count).ok_or(CountError::Overflow)?;
            }
        }
        sequences = longer;
    }
    sequences
        .into_iter()
        .filter(|(state, _)| state.different() >= least)
        .try_fold(0_u128, |sum, (_, count)| sum.checked_add(count))
        .ok_or(CountError::Overflow)
}

#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
struct State {
    uses: Vec<u32>,
    last: Option<u32>,
}

impl State {
    fn unused(depths: u32) -> Self {
        Self {
            uses: vec![0; depths as usize],
            last: None,
        }
    }

    fn next_depths(&self, max_step: u32) -> core::ops::Range<u32> {
        let depths = self.uses.len() as u32;
        match self.last {
            None => 0..depths,
            Some(last) => {
                let high = last.saturating_add(max_step).saturating_add(1);
                last.saturating_sub(max_step)..high.min(depths)
            }
        }
    }

    /// The state after one more cut of this depth; `None` where the depth is used up.
    fn used(&self, depth: u32, cap: u32, limited: bool) -> Option<Self> {
        let mut next = self.clone();
        let uses = next.uses.get_mut(depth as usize)?;
        if *uses < cap {
            *uses += 1;
        } else if limited {
            return None;
        }
        next.last = Some(depth);
        Some(next)
    }

    fn different(&self) -> u32 {
        self.uses.iter().filter(|&&uses| uses > 0).count() as u32
    }
}
