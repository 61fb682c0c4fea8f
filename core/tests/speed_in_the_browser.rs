//! What an assessment takes in a browser. Measured by `cargo xtask bench` in Chromium, compiled as the page is;
//! ignored by the tests, because a busy machine makes it slow.
#![cfg(target_family = "wasm")]

mod common;

use std::hint::black_box;

use self_check_core::assess::assess;
use wasm_bindgen_test::{console_log, wasm_bindgen_test};

/// What one assessment may take, in milliseconds.
const LONGEST_ASSESSMENT: f64 = 10.0;

/// The browser's clock is coarse, so many are measured together.
const RUNS: u32 = 2000;

#[wasm_bindgen_test]
#[ignore = "a measurement: cargo xtask bench"]
fn an_assessment_is_quick_in_the_browser() {
    let answers = common::much_at_once();
    let begun = js_sys::Date::now();
    for _ in 0..RUNS {
        black_box(assess(black_box(&answers), None));
    }
    let each = (js_sys::Date::now() - begun) / f64::from(RUNS);
    console_log!(
        "whole assessment in the browser: {:.1} µs each over {RUNS}, promised under {LONGEST_ASSESSMENT} ms",
        1000.0 * each
    );
    assert!(each < LONGEST_ASSESSMENT, "{each} ms");
}
