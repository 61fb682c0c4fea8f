//! What a picture's file tells beside the picture: where and when it was taken, and with what.
//!
//! Whether it tells these, and how precisely the place; never the place itself. Files come from
//! anywhere, so every length in them is doubted: each prefix of a file, and each file with any of
//! its bytes changed, parses or is refused.

mod bytes;
mod exif;
mod gif;
mod heif;
mod heif_items;
mod jpeg;
mod leftovers;
mod notes;
mod onward;
mod other;
mod png;
mod riff;
mod tiff;

pub use leftovers::{Leftover, leftovers, without_leftovers};
pub use onward::JpegInParts;

use core::fmt;

use crate::picture::Size;
use crate::sources::{self, Source};
use crate::units::Metres;

/// A picture's file, as far as it was read without decoding the picture.
#[derive(Clone, Debug, PartialEq)]
pub struct PictureFile {
    /// What kind of file it is, by its first bytes.
    pub format: Format,
    /// How many pixels it says it has, before any turning; `None` where that is not known without
    /// decoding.
    pub size: Option<Size>,
    /// Whether it holds several pictures that follow each other.
    pub is_animated: bool,
    /// Whether it ends before its picture does, so that a part is missing. Not told of TIFF and of
    /// Windows bitmaps.
    pub breaks_off: bool,
    /// Whether something that was not read stands behind its pictures, such as a short film. It may tell
    /// more.
    pub has_more_behind: bool,
    /// The mean of the first ten steps, in zigzag order, to which a lossy file rounds its grey.
    pub quantisation: Option<f64>,
    /// What it tells beside the picture.
    pub metadata: Metadata,
}

/// A kind of picture file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Format {
    /// JPEG.
    Jpeg,
    /// PNG.
    Png,
    /// WebP.
    WebP,
    /// HEIF with any coding: HEIC and AVIF.
    Heif,
    /// TIFF, and camera files built on it.
    Tiff,
    /// GIF.
    Gif,
    /// Windows bitmap.
    Bmp,
}

/// What a file tells beside its picture.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Metadata {
    /// The place where it was taken, if it is told.
    pub place: Option<Place>,
    /// Whether it tells when it was taken or worked on.
    pub has_time: bool,
    /// Whether it tells with what camera or phone.
    pub has_device: bool,
    /// Whether it holds anything else to read or to look at: a caption, somebody's name, a small preview, a
    /// second picture.
    pub has_others: bool,
    /// Whether there are notes that could not be read. They may tell more.
    pub has_unread: bool,
}

/// How a file tells a place. The place itself is not kept.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// How precisely coordinates are written; `None` where there are names of places alone.
    pub within: Option<Metres>,
    /// Whether there are names of places.
    pub is_named: bool,
}

/// How precise a place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Precision {
    /// To a house, 50 m or better.
    House,
    /// To a street or its neighbours, 500 m or better.
    Street,
    /// To a town, or wider.
    Town,
    /// By name alone: as precise as the name.
    Name,
}

/// Why a file is not taken for a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileError {
    /// There is nothing in it.
    Empty,
    /// It does not begin like a picture that is known here.
    NotAPicture,
    /// It ends before the picture begins, or its first part makes no sense.
    Broken,
}

impl PictureFile {
    /// Reads a file's bytes; errs where they are not those of a picture. Notes that make no sense do
    /// not err: they are told by [`Metadata::has_unread`].
    ///
    /// ```
    /// use self_check_core::metadata::{FileError, Format, PictureFile};
    /// assert_eq!(PictureFile::read(b""), Err(FileError::Empty));
    /// assert_eq!(PictureFile::read(b"Dear neighbour,"), Err(FileError::NotAPicture));
    /// // The least GIF header there can be: 3 pixels across, 2 down.
    /// let gif = PictureFile::read(b"GIF89a\x03\x00\x02\x00\x00\x00\x00;")?;
    /// assert_eq!(gif.format, Format::Gif);
    /// assert!(gif.metadata.place.is_none());
    /// # Ok::<(), FileError>(())
    /// ```
    pub fn read(bytes: &[u8]) -> Result<Self, FileError> {
        let found = match Format::of(bytes)? {
            Format::Jpeg => return Ok(JpegInParts::begin(bytes)?.finish()),
            Format::Png => png::read(bytes)?,
            Format::WebP => riff::read(bytes)?,
            Format::Gif => gif::read(bytes)?,
            Format::Heif => heif::read(bytes),
            format @ (Format::Tiff | Format::Bmp) => other::read(format, bytes)?,
        };
        Ok(found.into_file())
    }

    /// Whether every note was read, as far as can be known: no note made no sense, nothing else stands
    /// behind the picture, and no part is missing that could hold one. Where not, what is not told may be there all the same.
    pub fn is_read_whole(&self) -> bool {
        !self.metadata.has_unread && !self.has_more_behind && !self.breaks_off
    }
}

impl Format {
    /// The format that `bytes` begin with; errs where it is not known, or there are none.
    pub fn of(bytes: &[u8]) -> Result<Self, FileError> {
        let has = |at: usize, mark: &[u8]| bytes.get(at..).is_some_and(|b| b.starts_with(mark));
        if bytes.is_empty() {
            Err(FileError::Empty)
        } else if has(0, jpeg::SIGNATURE) {
            Ok(Self::Jpeg)
        } else if has(0, png::SIGNATURE) {
            Ok(Self::Png)
        } else if has(0, b"RIFF") && has(8, b"WEBP") {
            Ok(Self::WebP)
        } else if has(4, b"ftyp") {
            Ok(Self::Heif)
        } else if has(0, b"II*\0") || has(0, b"MM\0*") {
            Ok(Self::Tiff)
        } else if has(0, b"GIF87a") || has(0, b"GIF89a") {
            Ok(Self::Gif)
        } else if has(0, b"BM") {
            Ok(Self::Bmp)
        } else {
            Err(FileError::NotAPicture)
        }
    }
}

impl Place {
    /// The same in four kinds.
    pub fn precision(&self) -> Precision {
        match self.within {
            None => Precision::Name,
            Some(within) if within.get() <= HOUSE_M => Precision::House,
            Some(within) if within.get() <= STREET_M => Precision::Street,
            Some(_) => Precision::Town,
        }
    }
}

impl Metadata {
    /// Whether it tells anything at all, read or not.
    pub fn tells_anything(&self) -> bool {
        *self != Self::default()
    }

    /// What both tell together; of two places the more precise.
    fn and(self, other: Self) -> Self {
        let place = match (self.place, other.place) {
            (Some(one), Some(two)) => Some(Place {
                within: match (one.within, two.within) {
                    (Some(a), Some(b)) => Some(if a < b { a } else { b }),
                    (a, b) => a.or(b),
                },
                is_named: one.is_named || two.is_named,
            }),
            (one, two) => one.or(two),
        };
        Self {
            place,
            has_time: self.has_time || other.has_time,
            has_device: self.has_device || other.has_device,
            has_others: self.has_others || other.has_others,
            has_unread: self.has_unread || other.has_unread,
        }
    }
}

/// A file taken apart: the notes in it, not yet read.
struct Parts<'a> {
    format: Format,
    size: Option<Size>,
    is_animated: bool,
    breaks_off: bool,
    has_more_behind: bool,
    quantisation: Option<f64>,
    exif: Vec<&'a [u8]>,
    xmp: Vec<&'a [u8]>,
    iptc: Vec<&'a [u8]>,
    /// What was learned on the way.
    besides: Metadata,
}

impl<'a> Parts<'a> {
    fn of(format: Format) -> Self {
        Self {
            format,
            size: None,
            is_animated: false,
            breaks_off: false,
            has_more_behind: false,
            quantisation: None,
            exif: Vec::new(),
            xmp: Vec::new(),
            iptc: Vec::new(),
            besides: Metadata::default(),
        }
    }

    fn into_file(self) -> PictureFile {
        let exif = self.exif.iter().map(|tiff| exif::read(tiff));
        let xmp = self.xmp.iter().map(|packet| notes::read_xmp(packet));
        let iptc = self.iptc.iter().map(|records| notes::read_iptc(records));
        let metadata = exif
            .chain(xmp)
            .chain(iptc)
            .fold(self.besides, Metadata::and);
        PictureFile {
            format: self.format,
            size: self.size,
            is_animated: self.is_animated,
            breaks_off: self.breaks_off,
            has_more_behind: self.has_more_behind,
            quantisation: self.quantisation,
            metadata,
        }
    }
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Empty => "the file is empty",
            Self::NotAPicture => "the file is not a picture",
            Self::Broken => "the file ends before the picture begins",
        })
    }
}

impl core::error::Error for FileError {}

/// Where the tags and their meaning come from.
pub const SOURCES: [&Source; 2] = [&sources::EXIF_TAGS, &sources::PICTURE_NOTES];

/// About the width of a plot with its house, and of a block of streets. Our assumptions; doubling
/// either moves few pictures, since phones write hundredths of a second of arc, a third of a metre.
const HOUSE_M: f64 = 50.0;
const STREET_M: f64 = 500.0;

/// A degree of latitude; one of longitude is no longer.
const METRES_IN_A_DEGREE: f64 = 111_200.0;
