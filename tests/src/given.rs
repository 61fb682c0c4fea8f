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
    /// A smaller key, out of focus.
    OutOfFocus,
    /// The same in little light, so that nothing stands out.
    Fog,
    /// A key of not quite two pixels.
    Tiny,
    /// A key of three.
    Slight,
    /// A key of five.
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
        let (left, right) = Drawing::of(self.kind).ends;
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
        let Drawing {
            ends: (left, right),
            half_blade: blade,
            ..
        } = Drawing::of(self.kind);
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

/// A file that begins as phones' pictures do, and holds none.
pub fn bare_heic() -> Vec<u8> {
    b"\0\0\0\x14ftypheic\0\0\0\0heic\0\0\0\x0cmeta\0\0\0\0\0\0\0\x0cmdatabcd".to_vec()
}

/// How a kind of picture is drawn.
struct Drawing {
    width: u32,
    height: u32,
    /// The blade's ends as shares of the width, and half its height as a share of the height.
    ends: (f64, f64),
    half_blade: f64,
    /// Standard deviations of blur, in pixels, and of grain, in grey levels.
    blur: f64,
    grain: f64,
    /// Grey levels of the key.
    bright: f64,
    has_bow: bool,
}

impl Drawing {
    const CLEAR: Self = Self {
        width: 1200,
        height: 900,
        ends: (0.3, 0.9),
        half_blade: 0.12,
        blur: 1.2,
        grain: 1.2,
        bright: 180.0,
        has_bow: true,
    };

    /// A key in the middle of a smaller picture, 150 pixels long.
    const AWAY: Self = Self {
        width: 600,
        height: 450,
        ends: (0.35, 0.6),
        half_blade: 0.05,
        ..Self::CLEAR
    };

    /// A few pixels of a key, in a small picture, so that they can be marked.
    const SPECK: Self = Self {
        width: 200,
        height: 150,
        blur: 0.7,
        has_bow: false,
        ..Self::CLEAR
    };

    const fn speck(length_px: f64) -> Self {
        Self {
            ends: (0.5, 0.5 + length_px / 200.0),
            half_blade: 0.14 * length_px / 150.0,
            ..Self::SPECK
        }
    }

    const fn of(kind: Kind) -> Self {
        match kind {
            Kind::OutOfFocus => Self {
                blur: 4.0,
                grain: 6.0,
                bright: 140.0,
                ..Self::AWAY
            },
            Kind::Fog => Self {
                blur: 8.0,
                grain: 24.0,
                bright: 95.0,
                ..Self::AWAY
            },
            Kind::Tiny => Self::speck(1.8),
            Kind::Slight => Self::speck(3.0),
            Kind::Few => Self::speck(5.2),
            Kind::Small => Self {
                width: 40,
                height: 30,
                has_bow: false,
                ..Self::CLEAR
            },
            Kind::Large => Self {
                width: 8000,
                height: 6000,
                blur: 6.0,
                ..Self::CLEAR
            },
            Kind::Clear
            | Kind::Plain
            | Kind::Turned
            | Kind::Grey
            | Kind::Animated
            | Kind::SixteenBit
            | Kind::FourColours => Self::CLEAR,
        }
    }

    /// A blade with five dips on a darker ground, as one function of the place: no depth of it is
    /// anybody's.
    fn shade(&self, x: u32, y: u32) -> u8 {
        let (wide, high) = (f64::from(self.width), f64::from(self.height));
        let (across, down) = (f64::from(x) + 0.5, f64::from(y) + 0.5);
        let (left, right) = (self.ends.0 * wide, self.ends.1 * wide);
        let length = right - left;
        let (middle, blade) = (0.5 * high, self.half_blade * high);
        let turn = std::f64::consts::TAU * 5.0 * (across - left) / length;
        let top = middle - blade + 0.4 * blade * turn.sin().max(0.0);
        let within = |from: f64, to: f64, at: f64| self.step(at - from) - self.step(at - to);
        let disc = |from_left: f64, radius: f64| {
            let away = (across - left + from_left * length).hypot(down - middle);
            self.step(radius * length - away)
        };
        let along = if self.has_bow {
            within(left, right, across)
        } else {
            within(left - 0.4 * length, right, across)
        };
        let blade = within(top, middle + blade, down).min(along);
        let bow = if self.has_bow {
            disc(0.18, 0.22) * (1.0 - disc(0.28, 0.05))
        } else {
            0.0
        };
        let ground = 55.0 + 30.0 * across / wide;
        let grey = ground + (self.bright - ground) * blade.max(bow);
        (grey + grain(x, y, self.grain)).round().clamp(0.0, 255.0) as u8
    }

    /// From nought to one across an edge, as near to a Gaussian's as the eye can tell.
    fn step(&self, away: f64) -> f64 {
        1.0 / (1.0 + (-1.702 * away / self.blur).exp())
    }
}

/// Even grain of this standard deviation, the same at every run.
fn grain(x: u32, y: u32, deviation: f64) -> f64 {
    let mut bits = (u64::from(y) << 32 | u64::from(x)).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^= bits >> 31;
    let parts = (0..4).map(|part| (bits >> (16 * part) & 0xffff) as f64 / 65_536.0 - 0.5);
    deviation * 3.0_f64.sqrt() * parts.sum::<f64>()
}

fn drawn(kind: Kind) -> Result<Vec<u8>> {
    let drawing = Drawing::of(kind);
    let (width, height) = (drawing.width, drawing.height);
    let picture = GrayImage::from_fn(width, height, |x, y| match kind {
        Kind::Plain => Luma([128]),
        _ => Luma([drawing.shade(x, y)]),
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
