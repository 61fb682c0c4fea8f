#![allow(clippy::unwrap_used)]

use super::*;
use crate::reading::{Sample, StepOverSigma, sampled, sampled_bits_leaked};
use proptest::prelude::*;

/// Other points than those behind the tables.
const OTHER: Sample = Sample {
    points: 1024,
    shifts: 8,
    seed: 77,
};

#[test]
fn tables_are_within_a_hundredth_of_a_bit_of_direct_computation_off_the_grid() {
    for family in Family::ALL {
        for row in (0..GRID_POINTS - 1).step_by(4) {
            let ratio = (ratio_of_row(row) * ratio_of_row(row + 1)).sqrt();
            let direct = sampled_bits_leaked(&family.cut_rule(), ratio, &OTHER).unwrap();
            let found = look_up(family, ratio).bits_leaked.get();
            assert!(direct.standard_error < 0.005);
            assert!(
                (found - direct.value).abs() < 0.01,
                "{family:?} {ratio}: {found} {direct:?}"
            );
        }
    }
}

#[test]
fn tables_of_tries_and_guesses_agree_with_direct_computation_off_the_grid() {
    let sample = Sample {
        points: 256,
        ..OTHER
    };
    for family in Family::ALL {
        for ratio in [0.08, 0.4, 0.8, 1.1, 2.2, 3.6, 5.3] {
            let direct = sampled(&family.cut_rule(), ratio, &sample).unwrap();
            let found = look_up(family, ratio);
            let tries = libm::log2(found.tries_even_chance.get());
            let expected = direct.log2_tries_even_chance.value;
            assert!(
                (tries - expected).abs() < 0.08,
                "{family:?} {ratio}: {tries} {expected}"
            );
            for (found, direct) in [
                (found.first_guess, direct.first_guess),
                (found.within_three, direct.within_three),
                (found.within_ten, direct.within_ten),
            ] {
                let tolerance = 4.0 * direct.standard_error + 0.003;
                assert!(
                    (found.get() - direct.value).abs() < tolerance,
                    "{family:?} {ratio}"
                );
            }
        }
    }
}

/// Below the grid the leaked bits are those that the variance of one cut allows: to first order the
/// square of the ratio times the variance of the depths, summed over the cuts, over 2 ln 2.
#[test]
fn poor_readings_leak_with_the_square_of_the_ratio() {
    for family in Family::ALL {
        let found = look_up(family, 0.01).bits_leaked.get();
        assert!((look_up(family, 0.02).bits_leaked.get() / found - 4.0).abs() < 1e-9);
        let direct = sampled_bits_leaked(&family.cut_rule(), 0.01, &OTHER).unwrap();
        assert!(
            (found - direct.value).abs() < 2e-4,
            "{family:?} {found} {direct:?}"
        );
    }
}

#[test]
fn standard_errors_of_the_tables_are_under_a_hundredth_of_a_bit() {
    for family in Family::ALL {
        let [bits, tries, first, three, ten] = largest_standard_errors(family);
        assert!(bits > 0.0 && bits < LARGEST_STANDARD_ERROR.get());
        assert!(tries > 0.0 && tries < 0.01);
        assert!(
            [first, three, ten]
                .into_iter()
                .all(|error| error > 0.0 && error < 0.002)
        );
    }
}

#[test]
fn grid_runs_from_its_first_to_its_last_ratio() {
    assert!((ratio_of_row(0) - 0.05).abs() < 1e-12);
    assert!((ratio_of_row(GRID_POINTS - 1) - 12.0).abs() < 1e-9);
}

#[test]
fn readings_at_the_limits_tell_nothing_or_everything() {
    for family in Family::ALL {
        let keys = family.keys().get();
        for ratio in [0.0, -1.0, f64::NAN] {
            assert_eq!(look_up(family, ratio), Reading::nothing(family));
        }
        let hardly = look_up(family, 1e-9);
        assert!((hardly.keys_left.get() / keys - 1.0).abs() < 1e-6);
        assert!((hardly.tries_even_chance.get() / keys * 2.0 - 1.0).abs() < 1e-6);
        assert!((hardly.first_guess.get() * keys - 1.0).abs() < 1e-6);
        for ratio in [12.0, 1e300, f64::INFINITY] {
            let all = look_up(family, ratio);
            assert_eq!(all.bits_leaked, family.secrecy());
            assert_eq!(
                (all.keys_left, all.tries_even_chance),
                (Keys::ONE, Keys::ONE)
            );
            assert_eq!(all.first_guess, Probability::ONE);
        }
        // No step where the tables end.
        let last = look_up(family, 12.0 - 1e-9);
        assert!((last.bits_leaked.get() - family.secrecy().get()).abs() < 1e-5);
        assert!(last.first_guess.get() > 0.99999);
    }
}

fn any_family() -> impl Strategy<Value = Family> {
    proptest::sample::select(&Family::ALL[..])
}

proptest! {
    #[test]
    fn better_readings_never_leave_more(
        family in any_family(), log_ratio in -8.0_f64..3.5, more in 0.0_f64..1.0,
    ) {
        let worse = look_up(family, libm::exp(log_ratio));
        let better = look_up(family, libm::exp(log_ratio + more));
        prop_assert!(worse.bits_leaked <= better.bits_leaked);
        prop_assert!(worse.keys_left >= better.keys_left);
        prop_assert!(worse.tries_even_chance >= better.tries_even_chance);
        prop_assert!(worse.first_guess <= better.first_guess);
        prop_assert!(worse.within_three <= better.within_three);
        prop_assert!(worse.within_ten <= better.within_ten);
    }

    #[test]
    fn readings_stay_within_their_bounds(family in any_family(), log_ratio in -20.0_f64..6.0) {
        let found = look_up(family, libm::exp(log_ratio));
        prop_assert!(found.bits_leaked.get() >= 0.0);
        prop_assert!(found.bits_leaked <= family.secrecy());
        prop_assert!(found.keys_left.get() >= 1.0);
        prop_assert!(found.keys_left.get() <= family.keys().get() * (1.0 + 1e-12));
        prop_assert!(found.tries_even_chance <= found.keys_left);
        prop_assert!(found.first_guess <= found.within_three);
        prop_assert!(found.within_three <= found.within_ten);
        // An even chance within so many tries and the guesses tell the same story.
        let tries = found.tries_even_chance.get();
        prop_assert!(tries > 1.0 || found.first_guess.get() > 0.499);
        prop_assert!(tries <= 10.05 || found.within_ten.get() < 0.501);
    }

    #[test]
    fn two_readings_together_tell_at_least_as_much_as_either(
        family in any_family(), a in 0.0_f64..8.0, b in 0.0_f64..8.0,
    ) {
        let ratio = |value| StepOverSigma::new(value).unwrap();
        let both = Reading::of(family, ratio(a).and(ratio(b)));
        let either = Reading::of(family, ratio(a.max(b)));
        let sum = look_up(family, a).bits_leaked.get() + look_up(family, b).bits_leaked.get();
        prop_assert!(both.bits_leaked >= either.bits_leaked);
        prop_assert!(both.bits_leaked.get() <= sum + 0.01);
    }
}
