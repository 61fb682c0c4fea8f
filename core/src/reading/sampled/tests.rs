#![allow(clippy::unwrap_used)]

use super::*;
use crate::distribution::normal_below;
use crate::reading::best_first::tests::all_sorted;
use crate::reading::information_per_cut;

const SMALL: Sample = Sample {
    points: 512,
    shifts: 8,
    seed: 5,
};

#[test]
fn information_without_a_rule_is_that_of_independent_cuts() {
    for ratio in [0.05, 0.5, 1.0, 3.0, 8.0] {
        let found = sampled(&CutRule::new(4, 6, 5), ratio, &SMALL).unwrap();
        let exact = 4.0 * information_per_cut(6, ratio).get();
        assert!((found.bits_leaked.value - exact).abs() < 1e-9);
        assert!(found.bits_leaked.standard_error < 1e-9);
    }
}

/// Without a rule the likeliest key has the nearest depth at every cut, whose error probability is
/// 2(1−1/M)·Q(r/2).
#[test]
fn first_guess_without_a_rule_is_right_where_every_nearest_depth_is() {
    for ratio in [0.5, 1.0, 2.0, 4.0, 6.0] {
        let found = sampled(&CutRule::new(5, 10, 9), ratio, &SMALL).unwrap();
        let wrong = 2.0 * 0.9 * normal_below(-ratio / 2.0);
        let exact = libm::pow(1.0 - wrong, 5.0);
        let first = found.first_guess;
        let tolerance = (4.0 * first.standard_error).max(1e-6);
        assert!(
            (first.value - exact).abs() < tolerance,
            "{ratio}: {first:?} against {exact}"
        );
    }
}

/// A small family integrated over two cuts' errors on a fine grid, listing every key.
#[test]
fn everything_about_two_cuts_equals_integration_over_all_errors() {
    let rule = CutRule::new(2, 4, 1);
    let chain = Chain::new(&rule).unwrap();
    let sample = Sample {
        points: 8192,
        shifts: 8,
        seed: 2,
    };
    for ratio in [0.4, 1.0, 2.5] {
        let (mut entropy, mut first, mut three) = (0.0, 0.0, 0.0);
        let mut keys = 0.0;
        for number in 0..16_usize {
            let key = [number / 4, number % 4];
            if key[0].abs_diff(key[1]) > 1 {
                continue;
            }
            keys += 1.0;
            // Trapezoid rule over both errors, 0.1 standard deviations apart.
            for a in -70..=70 {
                for b in -70..=70 {
                    let errors = [f64::from(a) / 10.0, f64::from(b) / 10.0];
                    let density = libm::exp(-0.5 * (errors[0].powi(2) + errors[1].powi(2)));
                    let weight = density / (100.0 * core::f64::consts::TAU);
                    let posterior = Posterior::new(&chain, &key, &errors, ratio);
                    let sorted = all_sorted(&posterior);
                    entropy += weight * entropy_nats(&sorted);
                    first += weight * sorted[0];
                    three += weight * sorted.iter().take(3).sum::<f64>();
                }
            }
        }
        let found = sampled(&rule, ratio, &sample).unwrap();
        let bits = libm::log2(keys) - entropy / keys / LN_2;
        let within = |estimate: Estimate, exact: f64| {
            let tolerance = 4.0 * estimate.standard_error + 1e-4;
            assert!(
                (estimate.value - exact).abs() < tolerance,
                "{estimate:?} against {exact}"
            );
        };
        within(found.bits_leaked, bits);
        within(found.first_guess, first / keys);
        within(found.within_three, three / keys);
    }
}

#[test]
fn estimates_of_different_seeds_agree_within_their_standard_errors() {
    let rule = CutRule::new(5, 10, 7);
    let other = Sample { seed: 99, ..SMALL };
    for ratio in [0.3, 1.0, 2.0, 4.0] {
        let a = sampled(&rule, ratio, &SMALL).unwrap();
        let b = sampled(&rule, ratio, &other).unwrap();
        for (a, b) in [
            (a.bits_leaked, b.bits_leaked),
            (a.log2_tries_even_chance, b.log2_tries_even_chance),
            (a.first_guess, b.first_guess),
            (a.within_three, b.within_three),
            (a.within_ten, b.within_ten),
        ] {
            let spread = (a.standard_error.powi(2) + b.standard_error.powi(2)).sqrt();
            assert!(
                (a.value - b.value).abs() < 5.0 * spread + 1e-9,
                "{ratio}: {a:?} {b:?}"
            );
        }
    }
}

#[test]
fn a_rule_never_adds_to_what_is_secret() {
    for ratio in [0.5, 1.5, 4.0] {
        let found = sampled(&CutRule::new(5, 10, 7), ratio, &SMALL).unwrap();
        let secrecy = libm::log2(79_666.0);
        assert!(found.bits_leaked.value > 0.0 && found.bits_leaked.value < secrecy);
        let left = secrecy - found.bits_leaked.value;
        let free = 5.0 * (libm::log2(10.0) - information_per_cut(10, ratio).get());
        assert!(left < free);
    }
}

#[test]
fn no_reading_and_a_perfect_one_reach_the_limits() {
    let rule = CutRule::new(4, 6, 3);
    let chain = Chain::new(&rule).unwrap();
    assert_eq!(chain.keys(), 788.0); // OEIS A126474
    let nothing = sampled(&rule, 0.0, &SMALL).unwrap();
    assert!(nothing.bits_leaked.value.abs() < 1e-9);
    assert!(
        (libm::exp2(nothing.log2_tries_even_chance.value) * 2.0 / chain.keys() - 1.0).abs() < 1e-3
    );
    assert!((nothing.first_guess.value * chain.keys() - 1.0).abs() < 1e-9);
    let perfect = sampled(&rule, f64::INFINITY, &SMALL).unwrap();
    assert!((perfect.bits_leaked.value - libm::log2(chain.keys())).abs() < 1e-9);
    assert_eq!(perfect.first_guess.value, 1.0);
    assert_eq!(perfect.log2_tries_even_chance.value, 0.0);
}

#[test]
fn samples_that_cannot_give_an_error_are_refused() {
    let rule = CutRule::new(3, 3, 1);
    for (points, shifts) in [(0, 8), (64, 1), (64, 0)] {
        let sample = Sample {
            points,
            shifts,
            seed: 1,
        };
        assert_eq!(
            sampled(&rule, 1.0, &sample),
            Err(ReadingError::SampleTooSmall)
        );
    }
}
