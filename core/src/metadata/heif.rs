//! The HEIF family: boxes, each with a length and a name. Cameras' notes are found by a library.

use super::bytes::{Bytes, find};
use super::other::add_packets;
use super::{Format, Metadata, Parts, exif};

pub(super) fn read(bytes: &[u8]) -> Parts<'_> {
    let mut parts = Parts::of(Format::Heif);
    parts.breaks_off = breaks_off(bytes);
    parts.besides = notes(bytes);
    add_packets(&mut parts, bytes);
    parts
}

/// Whether the file ends within a box, or before the one that describes its pictures.
fn breaks_off(bytes: &[u8]) -> bool {
    let mut rest = Bytes(bytes);
    let mut is_described = false;
    while !rest.0.is_empty() {
        match next_box(&mut rest) {
            Some(name) => is_described |= matches!(&name, b"meta" | b"moov"),
            None => return true,
        }
    }
    !is_described
}

/// Passes the next box and gives its name; `None` where the file ends within it or its length makes no
/// sense.
fn next_box(bytes: &mut Bytes<'_>) -> Option<[u8; 4]> {
    let length = bytes.u32_be()?;
    let name = bytes.array()?;
    match length {
        // To the end of the file, whatever that is.
        0 => bytes.0 = &[],
        // A longer number stands behind the name.
        1 => {
            let length = u64::from_be_bytes(bytes.array()?);
            bytes.take(usize::try_from(length.checked_sub(16)?).ok()?)?;
        }
        _ => {
            bytes.take(usize::try_from(length.checked_sub(8)?).ok()?)?;
        }
    }
    Some(name)
}

fn notes(bytes: &[u8]) -> Metadata {
    if is_picture(bytes.get(8..).unwrap_or(&[])) {
        return exif::read_heif(bytes);
    }
    Metadata {
        has_unread: true,
        ..Metadata::default()
    }
}

/// The family's other members are films.
fn is_picture(brands: &[u8]) -> bool {
    let front = brands.get(..64).unwrap_or(brands);
    [
        b"heic", b"heix", b"mif1", b"msf1", b"avif", b"hevc", b"avis",
    ]
    .iter()
    .any(|brand| find(front, *brand).is_some())
}
