//! How many keys a family has, counted exactly. Integers only: a count that does not fit is an
//! error, never a rounded number.

mod limits;

use core::fmt;

/// Which sequences of depths are keys: the maximum adjacent cut rule, and optional limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CutRule {
    /// Number of cuts, at least 1.
    pub cuts: u32,
    /// Number of depths, at least 1.
    pub depths: u32,
    /// Largest allowed difference of neighbouring cuts, in steps.
    pub max_step: u32,
    /// At most so many cuts share one depth.
    pub max_sharing: Option<u32>,
    /// At least so many different depths occur.
    pub min_different: Option<u32>,
}

/// Why keys could not be counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountError {
    /// A key has at least one cut.
    NoCuts,
    /// A cut has at least one depth.
    NoDepths,
    /// The count exceeds 128 bits.
    Overflow,
    /// The count would need more memory or time than a count of keys is worth.
    TooLarge,
}

impl CutRule {
    /// The maximum adjacent cut rule alone.
    pub const fn new(cuts: u32, depths: u32, max_step: u32) -> Self {
        Self {
            cuts,
            depths,
            max_step,
            max_sharing: None,
            min_different: None,
        }
    }

    /// Lets at most `cuts` cuts share one depth.
    pub const fn sharing_at_most(self, cuts: u32) -> Self {
        Self {
            max_sharing: Some(cuts),
            ..self
        }
    }

    /// Wants at least `depths` different depths.
    pub const fn with_at_least(self, depths: u32) -> Self {
        Self {
            min_different: Some(depths),
            ..self
        }
    }
}

/// The exact number of keys that `rule` allows.
///
/// The rule alone takes O(cuts · depths) steps by a transfer vector with running sums; the optional
/// limits multiply that by the number of distinct ways in which depths can have been used so far, by
/// the reach and once more by the depths, and the work is bounded: ten depths and nine cuts are
/// within the bound under any limits. This is an upper bound on a standard's "effective differs":
/// makers leave some patterns out.
///
/// Source: the count is elementary; checked against OEIS sequences (A126364 and its relatives) and
/// against brute force.
///
/// # Errors
/// [`CountError::NoCuts`] and [`CountError::NoDepths`] for empty keys. [`CountError::Overflow`]
/// beyond 128 bits; with limits also where the shorter keys on the way are more than that, though
/// few of them may grow into whole ones. [`CountError::TooLarge`] for more than 2^22 depths, and
/// with limits where more than 2^22 uses of depths would have to be kept at once or more than 2^26
/// written in all.
///
/// ```
/// use self_check_core::differs::{count, CutRule};
/// // OEIS A126478: strings of 5 digits whose neighbours differ by at most 3.
/// assert_eq!(count(&CutRule::new(5, 10, 3)), Ok(12_990));
/// ```
pub fn count(rule: &CutRule) -> Result<u128, CountError> {
    if rule.cuts == 0 {
        return Err(CountError::NoCuts);
    }
    if rule.depths == 0 {
        return Err(CountError::NoDepths);
    }
    let sharing_matters = rule.max_sharing.is_some_and(|most| most < rule.cuts);
    let variety_matters = rule.min_different.is_some_and(|least| least > 1);
    if sharing_matters || variety_matters {
        limits::count(rule)
    } else {
        count_by_rule(rule.cuts, rule.depths, rule.max_step)
    }
}

/// The same count under the rule alone for a family of at most 32 depths, at compile time. A count
/// that does not fit, and a family with more depths, do not compile.
pub(crate) const fn count_of_family(cuts: u8, depths: u8, max_step: u8) -> u64 {
    let depths = depths as usize;
    let mut ending = [0_u64; 32];
    let mut depth = 0;
    while depth < depths {
        ending[depth] = 1;
        depth += 1;
    }
    let mut cut = 1;
    while cut < cuts {
        let mut longer = [0_u64; 32];
        let mut depth = 0;
        while depth < depths {
            let mut before = depth.saturating_sub(max_step as usize);
            while before <= depth + max_step as usize && before < depths {
                longer[depth] += ending[before];
                before += 1;
            }
            depth += 1;
        }
        ending = longer;
        cut += 1;
    }
    let mut sum = 0;
    let mut depth = 0;
    while depth < depths {
        sum += ending[depth];
        depth += 1;
    }
    sum
}

/// Most entries that a count keeps at once: for each depth the sequences that end there, or for each
/// way of using the depths how often each was used.
const MOST_ENTRIES: usize = 1 << 22;

/// Most entries that a count with limits writes in all: the time of some seconds. Nine cuts of ten
/// depths write a third of them at most.
const MOST_WRITTEN: usize = 1 << 26;

fn count_by_rule(cuts: u32, depths: u32, max_step: u32) -> Result<u128, CountError> {
    let steps = cuts - 1;
    let reach = max_step.min(depths - 1);
    if reach == 0 {
        return Ok(u128::from(depths));
    }
    if reach == depths - 1 {
        return u128::from(depths)
            .checked_pow(cuts)
            .ok_or(CountError::Overflow);
    }
    // Two depths in reach of each other already give 2^cuts keys.
    if cuts > u128::BITS {
        return Err(CountError::Overflow);
    }
    // Once there are more depths than a key can wander through, each further depth adds the same
    // number of keys: one start for every sequence of steps.
    let wander = u64::from(steps) * u64::from(reach);
    if u64::from(depths) > wander + 1 {
        let base = wander as u32 + 1;
        let per_depth = u128::from(2 * u64::from(reach) + 1)
            .checked_pow(steps)
            .ok_or(CountError::Overflow)?;
        let further = u128::from(depths - base)
            .checked_mul(per_depth)
            .ok_or(CountError::Overflow)?;
        return transfer(cuts, base, reach)?
            .checked_add(further)
            .ok_or(CountError::Overflow);
    }
    transfer(cuts, depths, reach)
}

/// Keeps, for each depth, the number of sequences that end there; each further cut sums a window.
fn transfer(cuts: u32, depths: u32, reach: u32) -> Result<u128, CountError> {
    let depths = depths as usize;
    let reach = reach as usize;
    if depths > MOST_ENTRIES {
        return Err(CountError::TooLarge);
    }
    let mut ending = vec![1_u128; depths];
    let mut sums = vec![0_u128; depths + 1];
    for _ in 1..cuts {
        running_sums(&ending, &mut sums)?;
        for (depth, count) in ending.iter_mut().enumerate() {
            let low = depth.saturating_sub(reach);
            let high = (depth + reach + 1).min(depths);
            *count = sums[high] - sums[low];
        }
    }
    running_sums(&ending, &mut sums)?;
    Ok(sums[depths])
}

/// The last sum is the number of shorter keys, which never exceeds the final count, so running out
/// of bits here means that the final count does not fit either.
fn running_sums(ending: &[u128], sums: &mut [u128]) -> Result<(), CountError> {
    let mut sum = 0_u128;
    for (count, slot) in ending.iter().zip(sums.iter_mut().skip(1)) {
        sum = sum.checked_add(*count).ok_or(CountError::Overflow)?;
        *slot = sum;
    }
    Ok(())
}

impl fmt::Display for CountError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoCuts => "no cuts",
            Self::NoDepths => "no depths",
            Self::Overflow => "more than 128 bits",
            Self::TooLarge => "too large to count",
        })
    }
}

impl core::error::Error for CountError {}

#[cfg(test)]
mod tests;
