//! Measures how evenly frames follow each other while the slider of the distance page moves: `cargo xtask bench`.
//! A measurement, not a test: what else the machine does at that time shows in it.

use std::process::ExitCode;

use self_check_tests::{Look, Page, Result, journey};

/// How the page is looked at while it is measured.
const LOOKS: [(&str, Look); 2] = [("desktop", Look::DESKTOP), ("phone", Look::PHONE)];

fn main() -> ExitCode {
    println!("Frames while the slider of the distance page moves, one step in each frame, in ms:");
    println!("window   slider   frames  median  95 of 100   worst  dropped  longest work");
    for (name, look) in LOOKS {
        let measured = journey(look, async |page| {
            page.open_at("#/distance").await?;
            page.wait_for_text("Choose a scene").await?;
            for moves in [false, true] {
                println!("{}", line(name, moves, page).await?);
            }
            Ok(())
        });
        if let Err(error) = measured {
            eprintln!("{name} could not be measured: {error}");
            return ExitCode::FAILURE;
        }
    }
    println!(
        "At rest is the same wait without a move: what the machine and the browser alone leave."
    );
    ExitCode::SUCCESS
}

/// Gaps between frames over the whole length of the slider and back, and the longest time that a move itself took.
async fn line(name: &str, moves: bool, page: &Page) -> Result<String> {
    let script = format!("const moves = {moves};\n{SCRIPT}");
    let value = page.run(&script).await?;
    let numbers = |key: &str| -> Vec<f64> {
        let list = value[key].as_array().cloned().unwrap_or_default();
        let mut list: Vec<f64> = list.iter().filter_map(|number| number.as_f64()).collect();
        list.sort_by(f64::total_cmp);
        list
    };
    let (gaps, work) = (numbers("gaps"), numbers("work"));
    let at = |share: f64| gaps.get((share * (gaps.len().max(1) - 1) as f64) as usize);
    let (Some(median), Some(most), Some(worst)) = (at(0.5), at(0.95), gaps.last()) else {
        return Err("no frame was seen".into());
    };
    // A frame is dropped where the next comes half a frame late or more.
    let dropped = gaps.iter().filter(|gap| **gap > 1.5 * median).count();
    Ok(format!(
        "{name:8} {:8} {:>6} {median:>7.1} {most:>10.1} {worst:>7.1} {dropped:>8} {:>13.1}",
        if moves { "moves" } else { "at rest" },
        gaps.len(),
        work.last().copied().unwrap_or(0.0),
    ))
}

/// Moves the slider by one step in each frame, as a hand that pulls it from end to end does. Work is what the page does
/// at once on being told of a move, and what it does before the next frame is drawn.
const SCRIPT: &str = "
const slider = document.getElementById('distance');
const last = Number(slider.max);
const steps = [...Array(2 * last).keys()].map(k => k <= last ? k : 2 * last - k);
const gaps = [], work = [];
return new Promise(done => {
    let before = null;
    const frame = now => {
        if (before !== null) gaps.push(now - before);
        before = now;
        if (steps.length === 0) return done({ gaps, work });
        const value = steps.shift();
        if (moves) {
            const begun = performance.now();
            slider.value = value;
            slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
            Promise.resolve().then(() => work.push(performance.now() - begun));
        }
        requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
});";
