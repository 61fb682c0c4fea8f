//! The notes that cameras write: Exif.
//!
//! The tags: CIPA DC-008, "Exchangeable image file format for digital still cameras".

use exif::{Context, Error, Exif, Reader, Tag, Value};
use std::io::Cursor;

use super::{METRES_IN_A_DEGREE, Metadata, Place};
use crate::units::Metres;

/// Reads the notes in a block of TIFF.
pub(super) fn read(tiff: &[u8]) -> Metadata {
    told(reader().read_raw(tiff.to_vec()))
}

/// Reads the notes in a file of the HEIF family.
pub(super) fn read_heif(bytes: &[u8]) -> Metadata {
    match reader().read_from_container(&mut Cursor::new(bytes)) {
        Err(Error::NotFound(_)) => Metadata::default(),
        read => told(read),
    }
}

fn reader() -> Reader {
    let mut reader = Reader::new();
    reader.continue_on_error(true);
    reader
}

fn told(read: Result<Exif, Error>) -> Metadata {
    let mut has_unread = false;
    let read = read.or_else(|error| error.distill_partial_result(|_| has_unread = true));
    let Ok(exif) = read else {
        return Metadata {
            has_unread: true,
            ..Metadata::default()
        };
    };
    let has = |tags: &[Tag]| {
        exif.fields()
            .any(|field| tags.contains(&field.tag) && is_filled(&field.value))
    };
    Metadata {
        place: place(&exif),
        has_time: has(&TIMES),
        has_device: has(&DEVICES),
        has_unread,
    }
}

/// A place is told by coordinates, of the camera or of what it was pointed at, or by a name.
fn place(exif: &Exif) -> Option<Place> {
    let pairs = [
        (Tag::GPSLatitude, Tag::GPSLongitude),
        (Tag::GPSDestLatitude, Tag::GPSDestLongitude),
    ];
    let written = pairs
        .into_iter()
        .filter_map(|(latitude, longitude)| {
            let one = finest(value(exif, latitude)?)?;
            let other = finest(value(exif, longitude)?)?;
            // Nought and nought is what is written where there was no position.
            (one.is_somewhere || other.is_somewhere).then(|| one.metres.max(other.metres))
        })
        .reduce(f64::min);
    let error = value(exif, Tag::GPSHPositioningError).and_then(first_number);
    let within = written.map(|metres| metres.max(error.unwrap_or(0.0)));
    let is_named = value(exif, Tag::GPSAreaInformation).is_some_and(is_filled);
    (within.is_some() || is_named).then(|| Place {
        within: within.and_then(|metres| Metres::new(metres).ok()),
        is_named,
    })
}

/// How finely a coordinate is written, and whether it is other than nought.
struct Written {
    metres: f64,
    is_somewhere: bool,
}

/// Degrees, minutes and seconds, each a fraction: the least that any of them that is used can tell
/// apart.
fn finest(value: &Value) -> Option<Written> {
    let Value::Rational(parts) = value else {
        return None;
    };
    let mut written = Written {
        metres: METRES_IN_A_DEGREE,
        is_somewhere: false,
    };
    if parts.first()?.denom == 0 {
        return None;
    }
    for (part, unit) in parts.iter().zip([1.0, 60.0, 3600.0]) {
        if part.num == 0 || part.denom == 0 {
            continue;
        }
        let step = METRES_IN_A_DEGREE / unit / f64::from(part.denom);
        written.metres = written.metres.min(step);
        written.is_somewhere = true;
    }
    Some(written)
}

fn value(exif: &Exif, tag: Tag) -> Option<&Value> {
    exif.fields()
        .find(|field| field.tag == tag)
        .map(|field| &field.value)
}

fn first_number(value: &Value) -> Option<f64> {
    match value {
        Value::Rational(parts) => parts.first().map(|part| part.to_f64()),
        _ => None,
    }
    .filter(|number| number.is_finite())
}

/// Whether a text has any letter or digit; cameras leave fields of blanks.
fn is_filled(value: &Value) -> bool {
    match value {
        Value::Ascii(texts) => texts.iter().flatten().any(u8::is_ascii_graphic),
        Value::Byte(bytes) | Value::Undefined(bytes, _) => bytes.iter().any(|&byte| byte > b' '),
        _ => true,
    }
}

const TIMES: [Tag; 5] = [
    Tag::DateTime,
    Tag::DateTimeOriginal,
    Tag::DateTimeDigitized,
    Tag::GPSDateStamp,
    Tag::GPSTimeStamp,
];

const DEVICES: [Tag; 9] = [
    Tag::Make,
    Tag::Model,
    Tag::BodySerialNumber,
    Tag::LensMake,
    Tag::LensModel,
    Tag::LensSerialNumber,
    Tag::CameraOwnerName,
    Tag::MakerNote,
    // Not in every list of tags: the computer or phone by name.
    Tag(Context::Tiff, 0x013c),
];
