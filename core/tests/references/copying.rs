//! Copies of copies: values computed apart from this crate for a spread of 0.001 in a copy, a
//! window of ±0.005 in and five cuts, with a drift of 0.001 in a copy and with none. They are
//! printed to six digits: half a unit of the last, 5e-7.
//!
//! The figures behind them are what locksmiths' pages give (slack of key and pin together about
//! 0.005 in) and what is remembered of key machines (0.001 to 0.002 in).

use self_check_core::hand::Copying;
use self_check_core::units::Millimetres;

const INCH_MM: f64 = 25.4;

fn copying(drift_inches: f64) -> Copying {
    let inches = |value: f64| Millimetres::new(value * INCH_MM).unwrap();
    Copying {
        spread: inches(0.001),
        drift: inches(drift_inches),
        tolerance: inches(0.005),
    }
}

#[test]
fn drifting_copies_agree_in_every_generation() {
    let expected = [0.999842, 0.918085, 0.515527, 0.158064, 0.031249];
    for (generations, expected) in (1..).zip(expected) {
        let found = copying(0.001).chance_all_cuts_fit(generations, 5).get();
        assert!((found - expected).abs() < 5e-7, "{generations}: {found}");
        let ordinary = Copying::ORDINARY.chance_all_cuts_fit(generations, 5).get();
        assert!((ordinary - found).abs() < 1e-12);
    }
}

#[test]
fn copies_without_drift_agree_in_every_generation() {
    let expected = [0.999997, 0.997967, 0.980689, 0.939427, 0.879527];
    for (generations, expected) in (1..).zip(expected) {
        let found = copying(0.0).chance_all_cuts_fit(generations, 5).get();
        assert!((found - expected).abs() < 5e-7, "{generations}: {found}");
    }
}
