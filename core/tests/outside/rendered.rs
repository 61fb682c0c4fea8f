//! Pictures with known blur, noise, contrast and scale, made by `pictures.py` beside this file.
//!
//! Tolerances. Blur: a key's flanks and corners are no straight edges, and steps are fitted with few
//! pixels to a side, so a median is held to 12 parts in 100, and below one pixel to 0.12 pixels. Noise:
//! 25 parts in 100 where it was saved without loss; the strip holds edges, which count a little.
//! Compressed files: real over estimated noise from 0.7 to 1.3. Coarser means, by which hidden noise
//! is found, count some of a small key's shape, and coarse rounding (quality 60) is added in full
//! although a smooth picture has less of it. Contrast: 10 parts in 100; the step is lower at corners. Blurring a photograph by s
//! whose own blur is b must give √(b² + s²), to 15 parts in 100: soft edges differ among themselves.

use image::ImageReader;
use self_check_core::key::Family;
use self_check_core::metadata::PictureFile;
use self_check_core::picture::{Caveat, Marks, Measurement, Measuring, Point, Readable, Size};
use std::collections::BTreeMap;
use std::io::Cursor;
use std::path::Path;
use std::sync::OnceLock;

struct Row {
    name: String,
    scale: Option<f64>,
    blur: Option<f64>,
    noise: Option<f64>,
    contrast: Option<f64>,
    found: Measurement,
}

impl Row {
    fn is_compressed(&self) -> bool {
        self.name.ends_with(".jpg")
    }
}

/// Every picture, measured once.
fn rows() -> &'static [Row] {
    static ROWS: OnceLock<Vec<Row>> = OnceLock::new();
    ROWS.get_or_init(|| {
        let folder = super::folder("rendered");
        let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/outside/pictures.py");
        let output = super::program("SELF_CHECK_PYTHON")
            .arg(script)
            .arg(&folder)
            .output()
            .unwrap();
        let errors = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{errors}");
        let lines = String::from_utf8(output.stdout).unwrap();
        lines.lines().map(|line| row(&folder, line)).collect()
    })
}

fn row(folder: &Path, line: &str) -> Row {
    let fields: Vec<&str> = line.split(',').collect();
    let [name, numbers @ ..] = fields.as_slice() else {
        panic!("{line}");
    };
    let numbers: Vec<Option<f64>> = numbers.iter().map(|text| text.parse().ok()).collect();
    let [
        Some(x1),
        Some(y1),
        Some(x2),
        Some(y2),
        scale,
        blur,
        noise,
        contrast,
    ] = numbers[..]
    else {
        panic!("{line}");
    };
    let bytes = std::fs::read(folder.join(name)).unwrap();
    Row {
        name: (*name).to_owned(),
        scale,
        blur,
        noise,
        contrast,
        found: measured(&bytes, Point { x: x1, y: y1 }, Point { x: x2, y: y2 }),
    }
}

fn measured(bytes: &[u8], shoulder: Point, tip: Point) -> Measurement {
    let file = PictureFile::read(bytes).unwrap();
    let reader = ImageReader::new(Cursor::new(bytes));
    let picture = reader.with_guessed_format().unwrap().decode().unwrap();
    let size = Size {
        width: picture.width(),
        height: picture.height(),
    };
    assert_eq!(file.size, Some(size));
    let marks = Marks::new(size, shoulder, tip).unwrap();
    let mut measuring = Measuring::new(marks, file.quantisation);
    while let Some(part) = measuring.next_rows() {
        let rows = picture.crop_imm(part.left, part.top, part.width, part.height);
        measuring.give_rows(&rows.to_rgba8()).unwrap();
    }
    measuring.finish()
}

/// Holds a figure of every picture that has it to what was put in, and shows all that are off.
fn hold(figure: &str, judge: impl Fn(&Row) -> Option<(f64, f64, bool)>) {
    let mut held = 0;
    let mut faults = Vec::new();
    for row in rows() {
        let Some((found, expected, is_within)) = judge(row) else {
            continue;
        };
        held += 1;
        let line = format!("{}: {figure} {found:.3}, put in {expected:.3}", row.name);
        println!("{line}");
        if !is_within {
            faults.push(line);
        }
    }
    assert!(held >= 8, "only {held} pictures have a known {figure}");
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

fn is_key(row: &Row) -> bool {
    row.name.starts_with("key-")
}

#[test]
fn blur_of_rendered_keys_is_recovered() {
    hold("blur", |row| {
        let (expected, found) = (row.blur?, row.found.blur_px().unwrap_or(f64::NAN));
        let within = (found - expected).abs() <= (0.12 * expected).max(0.12);
        is_key(row).then_some((found, expected, within))
    });
}

#[test]
fn noise_of_rendered_keys_is_recovered() {
    hold("noise", |row| {
        let expected = libm::hypot(row.noise?, 1.0 / 12.0_f64.sqrt());
        let found = row.found.noise();
        let within = if row.is_compressed() {
            (0.7..=1.3).contains(&(expected / found))
        } else {
            (found / expected - 1.0).abs() <= 0.25
        };
        is_key(row).then_some((found, expected, within))
    });
}

#[test]
fn contrast_of_rendered_keys_is_recovered() {
    hold("contrast", |row| {
        let (expected, found) = (row.contrast?, row.found.contrast());
        let within = (found / expected - 1.0).abs() <= 0.1;
        is_key(row).then_some((found, expected, within))
    });
}

#[test]
fn scale_of_rendered_keys_lies_within_its_uncertainty() {
    hold("scale", |row| {
        let expected = row.scale?;
        let scale = row.found.scale(Family::TenDepthFiveCuts);
        let within = (scale.pixels_per_mm - expected).abs() <= scale.uncertainty;
        Some((scale.pixels_per_mm, expected, within))
    });
}

#[test]
fn photographs_blurred_by_known_amounts_are_that_much_more_blurred() {
    let mut photographs: BTreeMap<&str, Vec<(f64, f64)>> = BTreeMap::new();
    for row in rows() {
        if let Some(tail) = row.name.strip_prefix("photo-") {
            let (name, _) = tail.rsplit_once('-').unwrap();
            let found = row.found.blur_px().unwrap_or(f64::NAN);
            photographs
                .entry(name)
                .or_default()
                .push((row.blur.unwrap(), found));
        }
    }
    assert_eq!(photographs.len(), 3);
    let mut faults = Vec::new();
    for (name, blurs) in photographs {
        let (_, own) = blurs[0];
        for (added, found) in &blurs[1..] {
            let expected = libm::hypot(own, *added);
            println!(
                "{name}: own {own:.3}, blurred by {added}: {found:.3}, expected {expected:.3}"
            );
            if (found / expected - 1.0).abs() > 0.15 || found.is_nan() {
                faults.push(format!("{name} blurred by {added}: {found} for {expected}"));
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn sharpened_picture_is_known_by_its_caveat_and_no_other_key_is() {
    for row in rows() {
        let is_told = row.found.caveats().contains(&Caveat::Sharpened);
        if row.name == "sharpened.png" {
            assert!(is_told, "{:?}", row.found);
        } else if is_key(row) && !row.is_compressed() {
            assert!(!is_told, "{}: {:?}", row.name, row.found);
        }
    }
}

#[test]
fn pictures_without_an_edge_say_so() {
    let mut met = 0;
    for row in rows() {
        if ["plain.png", "noise.png"].contains(&&*row.name) {
            met += 1;
            assert!(
                row.found.caveats().contains(&Caveat::NoUsableEdge),
                "{}: {:?}",
                row.name,
                row.found
            );
            for family in Family::ALL {
                assert_eq!(row.found.judge(family).readable, Readable::CannotTell);
            }
        }
    }
    assert_eq!(met, 2);
}
