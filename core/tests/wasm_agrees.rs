//! The secrecy model gives the same bits natively and in the browser. Both are compared with one
//! table, which a native run writes: `cargo run -p self-check-core --example bits`.

mod wasm_agrees {
    pub mod cases;
}

#[cfg(target_family = "wasm")]
use wasm_bindgen_test::wasm_bindgen_test;

/// Written natively.
const EXPECTED: &str = include_str!("data/bits.csv");

#[cfg(not(target_family = "wasm"))]
#[test]
fn every_case_has_the_bits_of_the_table_natively() {
    compare();
}

#[cfg(target_family = "wasm")]
#[wasm_bindgen_test]
fn every_case_has_the_bits_of_the_table_in_the_browser() {
    compare();
}

fn compare() {
    let found = wasm_agrees::cases::table();
    assert!(EXPECTED.lines().count() >= 200);
    assert_eq!(found.lines().count(), EXPECTED.lines().count());
    for (found, expected) in found.lines().zip(EXPECTED.lines()) {
        assert_eq!(
            found, expected,
            "if figures were meant to change: cargo run -p self-check-core --example bits"
        );
    }
}
