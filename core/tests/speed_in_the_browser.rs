//! What an assessment takes in a browser, and how keys and doors grow there. Measured by `cargo xtask bench` in Chromium, compiled as the page is;
//! ignored by the tests, because a busy machine makes it slow.
#![cfg(target_family = "wasm")]

mod common;
#[path = "household/estate.rs"]
mod estate;
#[path = "household/operations.rs"]
mod operations;

use std::hint::black_box;

use estate::{Size, estate};
use operations::operations;
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

/// What any one thing asked of a small estate may take, in milliseconds: three frames of sixty a second. Our own limit,
/// below what a person notices as waiting.
const LONGEST_OPERATION: f64 = 50.0;

/// The browser's clock is coarse, so several are measured together.
const OPERATIONS: u32 = 20;

#[wasm_bindgen_test]
#[ignore = "a measurement: cargo xtask bench"]
fn keys_and_doors_grow_up_to_a_small_estate_in_the_browser() {
    console_log!("milliseconds for 60, 125, 250 and 500 doors, each the mean of {OPERATIONS} runs");
    let sizes = [12, 25, 50, 100];
    let homes = sizes.map(|size| estate(Size::hundredths(size)).unwrap_or_default());
    let all = homes.each_ref().map(operations);
    let mut too_slow = Vec::new();
    for (at, last) in all[3].iter().enumerate() {
        let times = all.each_ref().map(|operations| {
            let operation = &operations[at];
            let begun = js_sys::Date::now();
            for _ in 0..OPERATIONS {
                assert!(
                    black_box((operation.run)()),
                    "{} did nothing",
                    operation.name
                );
            }
            (js_sys::Date::now() - begun) / f64::from(OPERATIONS)
        });
        console_log!("{:>20}: {times:.2?}", last.name);
        if times[3] >= LONGEST_OPERATION {
            too_slow.push((last.name, times[3]));
        }
    }
    assert!(all[3].len() >= 10, "operations are measured");
    assert!(
        too_slow.is_empty(),
        "promised under {LONGEST_OPERATION} ms: {too_slow:?}"
    );
}
