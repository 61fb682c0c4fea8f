#![allow(clippy::unwrap_used)]

use super::*;
use proptest::prelude::*;

/// Every sequence, one by one.
fn brute_force(rule: &CutRule) -> u128 {
    let total = u128::from(rule.depths).pow(rule.cuts);
    let mut found = 0;
    for number in 0..total {
        let mut rest = number;
        let digits: Vec<u32> = (0..rule.cuts)
            .map(|_| {
                let digit = (rest % u128::from(rule.depths)) as u32;
                rest /= u128::from(rule.depths);
                digit
            })
            .collect();
        let steps_allowed = digits
            .windows(2)
            .all(|pair| pair[0].abs_diff(pair[1]) <= rule.max_step);
        let uses = |depth| digits.iter().filter(|&&digit| digit == depth).count() as u32;
        let sharing = (0..rule.depths).map(uses).max().unwrap_or(0);
        let different = (0..rule.depths).filter(|&depth| uses(depth) > 0).count() as u32;
        let limits_kept = rule.max_sharing.is_none_or(|most| sharing <= most)
            && rule.min_different.is_none_or(|least| different >= least);
        found += u128::from(steps_allowed && limits_kept);
    }
    found
}

#[test]
fn count_small_rules_equal_brute_force() {
    let mut compared = 0;
    for depths in 1..=6 {
        for cuts in 1..=6_u32 {
            for max_step in 0..=depths {
                let plain = CutRule::new(cuts, depths, max_step);
                assert_eq!(count(&plain).unwrap(), brute_force(&plain), "{plain:?}");
                compared += 1;
                if u128::from(depths).pow(cuts) > 8_000 {
                    continue;
                }
                for most in 0..=cuts {
                    for least in 0..=depths + 1 {
                        let rule = plain.sharing_at_most(most).with_at_least(least);
                        assert_eq!(count(&rule).unwrap(), brute_force(&rule), "{rule:?}");
                        compared += 1;
                    }
                }
            }
        }
    }
    assert!(compared > 3_900, "{compared}");
}

#[test]
fn count_without_keys_is_refused() {
    assert_eq!(count(&CutRule::new(0, 10, 7)), Err(CountError::NoCuts));
    assert_eq!(count(&CutRule::new(5, 0, 7)), Err(CountError::NoDepths));
}

#[test]
fn count_beyond_128_bits_is_an_error_and_up_to_it_exact() {
    assert_eq!(count(&CutRule::new(127, 2, 1)), Ok(1 << 127));
    assert_eq!(count(&CutRule::new(128, 2, 1)), Err(CountError::Overflow));
    assert_eq!(
        count(&CutRule::new(38, 10, 9)),
        Ok(100_000_000_000_000_000_000_000_000_000_000_000_000)
    );
    assert_eq!(count(&CutRule::new(39, 10, 9)), Err(CountError::Overflow));
    assert_eq!(
        count(&CutRule::new(u32::MAX, 3, 1)),
        Err(CountError::Overflow)
    );
    assert_eq!(count(&CutRule::new(u32::MAX, 3, 0)), Ok(3));
    assert_eq!(count(&CutRule::new(u32::MAX, 1, 5)), Ok(1));
}

#[test]
fn count_of_many_depths_follows_the_closed_forms() {
    let depths = 1_000_000_u32;
    let d = u128::from(depths);
    assert_eq!(
        count(&CutRule::new(1, u32::MAX, 3)),
        Ok(u128::from(u32::MAX))
    );
    for m in [1_u32, 7, 999_998] {
        // Two cuts: all pairs but those further apart than m.
        let apart = d - u128::from(m) - 1;
        assert_eq!(
            count(&CutRule::new(2, depths, m)),
            Ok(d * d - apart * (apart + 1))
        );
    }
    assert_eq!(
        count(&CutRule::new(3, u32::MAX, u32::MAX / 2)),
        Err(CountError::TooLarge)
    );
}

/// Rules that no key has are answered at once, by a number where there is a short way to it.
#[test]
fn count_with_limits_on_any_numbers_ends() {
    let long = CutRule::new(u32::MAX, 3, 0);
    assert_eq!(count(&long.with_at_least(2)), Ok(0));
    assert_eq!(count(&long.sharing_at_most(u32::MAX - 1)), Ok(0));
    assert_eq!(count(&long.with_at_least(1)), Ok(3));
    let most = CutRule::new(u32::MAX, u32::MAX, u32::MAX);
    for rule in [
        CutRule::new(u32::MAX, 3, 1).with_at_least(2),
        CutRule::new(u32::MAX, 3, 2).sharing_at_most(u32::MAX - 1),
        // Each way of using so many depths is a long list.
        CutRule::new(2, 1 << 22, 1).with_at_least(2),
        CutRule::new(64, 64, 1).sharing_at_most(2),
        CutRule::new(20, 20, 19).sharing_at_most(1),
        most.sharing_at_most(1),
        most.sharing_at_most(u32::MAX - 1).with_at_least(u32::MAX),
    ] {
        let refused = count(&rule).unwrap_err();
        let reasons = [CountError::TooLarge, CountError::Overflow];
        assert!(reasons.contains(&refused), "{rule:?} {refused:?}");
    }
}

/// As many cuts and depths as any limits may be asked of: see the errors of [`count`].
#[test]
fn count_with_limits_of_nine_cuts_and_ten_depths_is_within_the_bound() {
    let rule = CutRule::new(9, 10, 9);
    let all = 1_000_000_000;
    // Eight or nine alike: 10 keys, and 9 places for the odd one, of 9 other depths.
    assert_eq!(count(&rule.sharing_at_most(7)), Ok(all - 10 - 9 * 10 * 9));
    assert_eq!(
        count(&rule.sharing_at_most(8).with_at_least(2)),
        Ok(all - 10)
    );
}

#[test]
fn count_with_all_depths_different_is_a_falling_factorial() {
    let rule = CutRule::new(5, 10, 9).sharing_at_most(1);
    assert_eq!(count(&rule), Ok(10 * 9 * 8 * 7 * 6));
    let same = CutRule::new(5, 10, 9).with_at_least(5);
    assert_eq!(count(&same), Ok(10 * 9 * 8 * 7 * 6));
}

#[test]
fn count_with_at_least_k_depths_follows_stirling_numbers() {
    // Surjections of 6 cuts onto j depths: S(6,j) · 10!/(10-j)!, with S(6,4..6) = 65, 15, 1.
    let expected = 65 * 5_040 + 15 * 30_240 + 151_200;
    assert_eq!(
        count(&CutRule::new(6, 10, 9).with_at_least(4)),
        Ok(expected)
    );
}

proptest! {
    #[test]
    fn count_grows_with_the_step_and_shrinks_with_limits(
        cuts in 1_u32..9, depths in 1_u32..12, max_step in 0_u32..12, limit in 1_u32..5,
    ) {
        let rule = CutRule::new(cuts, depths, max_step);
        let keys = count(&rule).unwrap();
        prop_assert!(keys <= count(&CutRule::new(cuts, depths, max_step + 1)).unwrap());
        prop_assert!(keys <= count(&CutRule::new(cuts, depths + 1, max_step)).unwrap());
        prop_assert!(keys <= count(&CutRule::new(cuts + 1, depths, max_step)).unwrap());
        if cuts <= 6 && depths <= 8 {
            prop_assert!(count(&rule.sharing_at_most(limit)).unwrap() <= keys);
            prop_assert!(count(&rule.with_at_least(limit)).unwrap() <= keys);
        }
    }

    #[test]
    fn count_without_a_rule_is_a_power(cuts in 1_u32..20, depths in 1_u32..20, more in 0_u32..5) {
        let rule = CutRule::new(cuts, depths, depths - 1 + more);
        prop_assert_eq!(count(&rule).unwrap(), u128::from(depths).pow(cuts));
    }

    #[test]
    fn count_forbidding_only_the_extremes_follows_its_recurrence(depths in 3_u128..13, cuts in 3_u32..12) {
        let at = |cuts| count(&CutRule::new(cuts, depths as u32, depths as u32 - 2)).unwrap();
        prop_assert_eq!(at(cuts), (depths - 1) * at(cuts - 1) + (depths - 2) * at(cuts - 2));
    }
}
