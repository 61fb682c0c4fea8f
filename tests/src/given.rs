//! Pictures of a drawn key, given to the page: made for a journey and removed with it.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::atomic::{AtomicU32, Ordering};

use crate::Result;
use image::codecs::gif::GifEncoder;
use image::codecs::jpeg::JpegEncoder;
use image::{DynamicImage, Frame, GrayImage, ImageBuffer, Luma, Rgb, RgbImage};

/// What a picture shows, and how it is saved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A key, clear and large.
    Clear,
    /// A key of not quite three pixels in a larger picture.
    Tiny,
    /// A key of nine.
    Few,
    /// A small picture of a key.
    Small,
    /// Nothing.
    Plain,
    /// Saved lying on its side, with a note on how to turn it.
    Turned,
    /// Without colours.
    Grey,
    /// Two views that follow each other.
    Animated,
    /// With sixteen bits a colour.
    SixteenBit,
    /// In the four colours of print.
    FourColours,
    /// 8000 by 6000.
    Large,
}

/// A picture in a folder of its own.
pub struct Picture {
    folder: PathBuf,
    path: PathBuf,
    kind: Kind,
    has_notes: bool,
}

static COUNT: AtomicU32 = AtomicU32::new(0);

impl Picture {
    /// Draws it.
    pub fn new(kind: Kind) -> Result<Self> {
        let number = COUNT.fetch_add(1, Ordering::Relaxed);
        let folder = std::env::temp_dir().join(format!(
            "self-check-pictures-{}-{number}",
            std::process::id()
        ));
        std::fs::create_dir_all(&folder)?;
        let ending = match kind {
            Kind::Animated => "gif",
            Kind::SixteenBit => "png",
            _ => "jpg",
        };
        let path = folder.join(format!("given.{ending}"));
        std::fs::write(&path, drawn(kind)?)?;
        Ok(Self {
            folder,
            path,
            kind,
            has_notes: false,
        })
    }

    /// Its file.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The folder that it is removed with.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// What is in its file.
    pub fn bytes(&self) -> Result<Vec<u8>> {
        Ok(std::fs::read(&self.path)?)
    }

    /// Whether the independent program was there to write notes into it.
    pub fn has_notes(&self) -> bool {
        self.has_notes
    }

    /// Shoulder and tip, as shares of the picture's width and height as it is shown.
    pub fn ends(&self) -> [(f64, f64); 2] {
        let (left, right, _) = shape(self.kind);
        [(left, 0.5), (right, 0.5)]
    }

    /// With notes by an independent program; without them where that is not on this machine.
    pub fn with_notes(mut self, notes: &[&str]) -> Result<Self> {
        if let Some(exiftool) = exiftool() {
            let done = Command::new(exiftool)
                .args(["-q", "-overwrite_original"])
                .args(notes)
                .arg(&self.path)
                .status()?;
            assert!(done.success());
            self.has_notes = true;
        }
        Ok(self)
    }

    /// The same picture with notes that make no sense.
    pub fn broken_notes(&self) -> Result<Self> {
        let other = Self::new(self.kind)?;
        let bytes = self.bytes()?;
        let notes = b"\xff\xe1\x00\x10Exif\0\0II*\0\xff\xff\xff\xff";
        std::fs::write(&other.path, [&bytes[..2], &notes[..], &bytes[2..]].concat())?;
        Ok(other)
    }

    /// The blade is one colour in a saved copy.
    pub fn must_be_covered(&self, saved: &Path) -> Result<()> {
        let (left, right, blade) = shape(self.kind);
        must_be_plain(saved, (left, 0.5 - blade), (right, 0.5 + blade))
    }
}

impl Drop for Picture {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}

fn exiftool() -> Option<String> {
    let named = std::env::var("SELF_CHECK_EXIFTOOL").ok();
    if named.is_none() {
        println!("exiftool is not on this machine: what it would check is left out.");
    }
    named
}

/// The part of a saved picture between two corners, in shares of its width and height, is one colour, by this crate's
/// own decoder.
pub fn must_be_plain(
    saved: &Path,
    (left, top): (f64, f64),
    (right, bottom): (f64, f64),
) -> Result<()> {
    let copy = image::open(saved)?.to_rgb8();
    let at = |share: f64, whole: u32| (share * f64::from(whole)) as u32;
    let (from, to) = (at(left, copy.width()), at(right, copy.width()));
    let (above, below) = (at(top, copy.height()), at(bottom, copy.height()));
    assert!(from < to && above < below);
    let first = *copy.get_pixel(from, above);
    for (x, y) in (from..to).flat_map(|x| (above..below).map(move |y| (x, y))) {
        assert_eq!(
            *copy.get_pixel(x, y),
            first,
            "at {x}, {y} of {}",
            saved.display()
        );
    }
    Ok(())
}

/// By an independent program: nothing in the file but what it takes to show it.
pub fn must_hold_no_notes(file: &Path) -> Result<()> {
    let Some(exiftool) = exiftool() else {
        return Ok(());
    };
    let output = Command::new(exiftool)
        .args(["-G1", "-s", "-a", "-u", "-ee"])
        .arg(file)
        .output()?;
    let listed = String::from_utf8_lossy(&output.stdout);
    // What it says of its own, of the file as such, and of how the picture is coded.
    let allowed = [
        "ExifTool",
        "System",
        "File",
        "JFIF",
        "PNG",
        "PNG-pHYs",
        "Composite",
    ];
    let others: Vec<&str> = listed
        .lines()
        .filter(|line| {
            !allowed
                .iter()
                .any(|group| line.starts_with(&format!("[{group}]")))
        })
        .collect();
    assert!(
        listed.contains("ImageWidth") || listed.contains("ImageSize"),
        "{listed}"
    );
    assert!(others.is_empty(), "{others:?}");
    Ok(())
}

/// A header that promises 90,000 by 90,000 pixels.
pub fn huge_png() -> Vec<u8> {
    let side = 90_000_u32.to_be_bytes();
    [
        &b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR"[..],
        &side,
        &side,
        b"\x08\x02\0\0\0\0\0\0\0",
    ]
    .concat()
}

/// A PNG whose picture is not there.
pub fn torn_png() -> Vec<u8> {
    let side = 64_u32.to_be_bytes();
    [
        &b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR"[..],
        &side,
        &side,
        b"\x08\x02\0\0\0\0\0\0\0",
    ]
    .concat()
}

/// The round end of a key with a hole in it, beside the shoulder of [`shape`]'s key.
fn bow(x: u32, y: u32, width: u32, height: u32, blur: f64) -> f64 {
    let unit = f64::from(height);
    let disc = |across: f64, radius: f64| {
        let (dx, dy) = (
            f64::from(x) + 0.5 - across * f64::from(width),
            f64::from(y) + 0.5 - 0.5 * unit,
        );
        let away = radius * unit - dx.hypot(dy);
        1.0 / (1.0 + (-1.702 * away / blur).exp())
    };
    disc(0.19, 0.18) * (1.0 - disc(0.13, 0.04))
}

/// The blade's ends as shares of the width, and half its height as a share of the height.
fn shape(kind: Kind) -> (f64, f64, f64) {
    match kind {
        Kind::Tiny => (0.5, 0.5 + 2.6 / 600.0, 0.5 / 450.0),
        Kind::Few => (0.5, 0.5 + 9.0 / 600.0, 1.3 / 450.0),
        _ => (0.3, 0.9, 0.12),
    }
}

fn drawn(kind: Kind) -> Result<Vec<u8>> {
    let (width, height) = match kind {
        Kind::Large => (8000, 6000),
        Kind::Small => (40, 30),
        Kind::Tiny | Kind::Few => (600, 450),
        _ => (1200, 900),
    };
    let blur = match kind {
        Kind::Tiny | Kind::Few => 0.7,
        Kind::Large => 6.0,
        _ => 1.2,
    };
    let picture = GrayImage::from_fn(width, height, |x, y| {
        Luma([shade(kind, x, y, width, height, blur)])
    });
    let mut bytes = Vec::new();
    match kind {
        Kind::Animated => {
            let view = DynamicImage::from(picture).to_rgba8();
            let mut encoder = GifEncoder::new(&mut bytes);
            encoder.set_repeat(image::codecs::gif::Repeat::Infinite)?;
            encoder.encode_frames([Frame::new(view.clone()), Frame::new(view)])?;
        }
        Kind::SixteenBit => {
            let deep: ImageBuffer<Luma<u16>, Vec<u16>> =
                ImageBuffer::from_fn(width, height, |x, y| {
                    Luma([u16::from(picture.get_pixel(x, y)[0]) * 257])
                });
            DynamicImage::from(deep).write_to(
                &mut std::io::Cursor::new(&mut bytes),
                image::ImageFormat::Png,
            )?;
        }
        Kind::FourColours => {
            let ink: Vec<u8> = picture
                .pixels()
                .flat_map(|grey| [0, 0, 0, 255 - grey[0]])
                .collect();
            jpeg_encoder::Encoder::new(&mut bytes, 90).encode(
                &ink,
                width as u16,
                height as u16,
                jpeg_encoder::ColorType::Cmyk,
            )?;
        }
        Kind::Grey => JpegEncoder::new_with_quality(&mut bytes, 90).encode_image(&picture)?,
        Kind::Turned => {
            let lying = image::imageops::rotate270(&picture);
            JpegEncoder::new_with_quality(&mut bytes, 90).encode_image(&lying)?;
            // Orientation 6: to be turned by a quarter to the right when shown.
            let note = b"\xff\xe1\x00\x22Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0";
            bytes = [&bytes[..2], &note[..], &bytes[2..]].concat();
        }
        _ => {
            let colours = RgbImage::from_fn(width, height, |x, y| {
                let [grey] = picture.get_pixel(x, y).0;
                // A little warmer than grey, as brass and wood are.
                Rgb([grey, grey - grey / 12, grey - grey / 5])
            });
            JpegEncoder::new_with_quality(&mut bytes, 90).encode_image(&colours)?;
        }
    }
    Ok(bytes)
}

/// A blade with five dips on a darker ground, as one function of the place: no depth of it is
/// anybody's. A little noise is the same at every run.
fn shade(kind: Kind, x: u32, y: u32, width: u32, height: u32, blur: f64) -> u8 {
    let along = f64::from(x) / f64::from(width);
    let grain = f64::from(
        x.wrapping_mul(2_654_435_761)
            .wrapping_add(y.wrapping_mul(40_503))
            >> 13
            & 7,
    ) - 3.5;
    if kind == Kind::Plain {
        return 128;
    }
    let (left, right, blade) = shape(kind);
    let share = (along - left) / (right - left);
    let dips = 0.2 * blade * (share * std::f64::consts::TAU * 5.0).sin().max(0.0);
    let (top, bottom) = (0.5 - blade + dips, 0.5 + blade);
    let step = |edge: f64| {
        let away = (f64::from(y) + 0.5) - edge * f64::from(height);
        1.0 / (1.0 + (-1.702 * away / blur).exp())
    };
    let side = |edge: f64| {
        let away = (f64::from(x) + 0.5) - edge * f64::from(width);
        1.0 / (1.0 + (-1.702 * away / blur).exp())
    };
    let blade = (step(top) - step(bottom)) * (side(left - 0.4 * (right - left)) - side(right));
    let (ground, inside) = match kind {
        Kind::Tiny | Kind::Few | Kind::Small => (70.0, blade),
        _ => (
            55.0 + 30.0 * along,
            blade.min(side(left)).max(bow(x, y, width, height, blur)),
        ),
    };
    (ground + (180.0 - ground) * inside + 0.5 * grain)
        .round()
        .clamp(0.0, 255.0) as u8
}
