//! How long the page takes over pictures of 12 and of 48 megapixels, beside the browser's own decoding of
//! the same file in the same run, and its longest task on the main thread with the processor slowed down
//! four times. Fails where a task of the page took longer than it may. `cargo xtask bench --pictures`.

use std::path::Path;
use std::time::Duration;

use image::codecs::jpeg::JpegEncoder;
use image::{GrayImage, Luma};
use self_check_tests::{Look, Page, Result, journey};
use serde_json::{Value, json};

fn main() -> Result<()> {
    println!(
        "megapixels slowed file_kB decode_ms decode_task_ms open_ms open_task_ms measure_ms measure_task_ms copy_ms copy_task_ms"
    );
    let mut longest = 0.0_f64;
    for (width, height) in [(4000, 3000), (8000, 6000)] {
        let path =
            std::env::temp_dir().join(format!("self-check-large-{}.jpg", std::process::id()));
        std::fs::write(&path, drawn(width, height)?)?;
        for slowed in [1, 4] {
            let figures = measured(&path, slowed)?;
            let line: Vec<String> = figures
                .iter()
                .map(|figure| format!("{figure:.0}"))
                .collect();
            println!("{} {slowed} {}", width * height / 1_000_000, line.join(" "));
            let tasks = [4, 6, 8].map(|at: usize| figures[at]);
            longest = tasks.into_iter().fold(longest, f64::max);
        }
        std::fs::remove_file(&path)?;
    }
    match longest <= LONGEST_TASK_MS {
        true => Ok(()),
        false => {
            Err(format!("a task took {longest:.0} ms; {LONGEST_TASK_MS} is the most it may").into())
        }
    }
}

/// With the processor slowed down four times: shorter than what a reader feels as a wait, and what browsers call long.
const LONGEST_TASK_MS: f64 = 50.0;

/// A bright bar with five dips on dark ground, in colour, with grain as a camera's.
fn drawn(width: u32, height: u32) -> Result<Vec<u8>> {
    let picture = GrayImage::from_fn(width, height, |x, y| {
        let (across, down) = (
            f64::from(x) / f64::from(width),
            f64::from(y) / f64::from(height),
        );
        let dips = 0.03 * (across * 60.0).sin().max(0.0);
        let is_key = (0.2..0.9).contains(&across) && (0.4 + dips..0.6).contains(&down);
        let grain = x
            .wrapping_mul(2_654_435_761)
            .wrapping_add(y.wrapping_mul(2_246_822_519))
            >> 28;
        Luma([if is_key { 180 } else { 70 } + grain as u8])
    });
    let mut bytes = Vec::new();
    let colours = image::DynamicImage::from(picture).to_rgb8();
    JpegEncoder::new_with_quality(&mut bytes, 90).encode_image(&colours)?;
    Ok(bytes)
}

/// Notes when each part of the page appears, and the longest task of the main thread.
const WATCH: &str = "
    window.seen = {}; window.longest = 0;
    const note = (name) => { window.seen[name] ??= performance.now(); };
    addEventListener('change', () => { window.seen.chosen = performance.now(); }, true);
    addEventListener('click', (event) => { if (event.target.closest('.press')) window.seen.pressed = performance.now(); }, true);
    new MutationObserver(() => {
        if (document.getElementById('picture-mark')) note('opened');
        if (document.getElementById('picture-outcome')) note('measured');
        if (document.getElementById('picture-second-look')) note('copied');
    }).observe(document.body, { childList: true, subtree: true });
    new PerformanceObserver((list) => {
        for (const task of list.getEntries()) window.longest = Math.max(window.longest, task.duration);
    }).observe({ type: 'longtask' });
    const field = document.createElement('input');
    field.type = 'file'; field.id = 'bench-file'; document.body.append(field);";

/// The browser's own decoding of the file, which the page uses too.
const DECODE: &str = "
    const file = document.getElementById('bench-file').files[0];
    const begun = performance.now();
    (await createImageBitmap(file)).close();
    return [performance.now() - begun, file.size];";

fn measured(path: &Path, slowed: u32) -> Result<Vec<f64>> {
    let mut all = Vec::new();
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/picture").await?;
        page.wait_for_text("Check a picture").await?;
        page.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": slowed }))
            .await?;
        page.run(WATCH).await?;
        page.choose_file_in("bench-file", path).await?;
        let own = page.run(DECODE).await?;
        let mut figures = vec![
            number(&own[1]) / 1000.0,
            number(&own[0]),
            longest_task(page).await?,
        ];

        page.choose_file_in("picture-file", path).await?;
        until(page, "opened").await?;
        figures.push(took(page, "chosen", "opened").await?);
        figures.push(longest_task(page).await?);

        for (from, to) in [(0.3, 0.2), (0.7, 0.9)] {
            page.drag_on(".stage-over", (from, 0.5), (to, 0.5)).await?;
        }
        page.click("button", "Check this picture").await?;
        until(page, "measured").await?;
        figures.push(took(page, "pressed", "measured").await?);
        figures.push(longest_task(page).await?);

        page.click("button", "Make the copy").await?;
        until(page, "copied").await?;
        figures.push(took(page, "pressed", "copied").await?);
        figures.push(longest_task(page).await?);
        all = figures;
        Ok(())
    })?;
    Ok(all)
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or(f64::NAN)
}

/// Milliseconds from one event to another.
async fn took(page: &Page, from: &str, to: &str) -> Result<f64> {
    let seen = page.run("return window.seen;").await?;
    Ok(number(&seen[to]) - number(&seen[from]))
}

/// The longest task since this was asked last, in milliseconds; nought where none took 50, which the browser does not
/// tell of.
async fn longest_task(page: &Page) -> Result<f64> {
    // It tells of a task a little later.
    tokio::time::sleep(Duration::from_millis(600)).await;
    let longest = page
        .run("const longest = window.longest; window.longest = 0; return longest;")
        .await?;
    Ok(number(&longest))
}

async fn until(page: &Page, name: &str) -> Result<()> {
    for _ in 0..600 {
        if page
            .run(&format!("return '{name}' in window.seen;"))
            .await?
            == true
        {
            return Ok(());
        }
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
    Err(format!("waited a minute in vain until the picture was {name}").into())
}
