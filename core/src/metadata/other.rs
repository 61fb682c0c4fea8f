//! Files whose parts are not taken apart here: notes are looked for as they stand in the bytes.

use super::bytes::{Bytes, find};
use super::{FileError, Format, Metadata, Parts, exif};
use crate::picture::Size;

pub(super) fn read(format: Format, bytes: &[u8]) -> Result<Parts<'_>, FileError> {
    let mut parts = Parts::of(format);
    match format {
        Format::Gif => {
            parts.size = Some(size_of_gif(bytes).ok_or(FileError::Broken)?);
            parts.is_animated = find(bytes, b"NETSCAPE2.0").is_some();
        }
        Format::Bmp => parts.size = Some(size_of_bitmap(bytes).ok_or(FileError::Broken)?),
        Format::Tiff => parts.exif.push(bytes),
        _ => parts.besides = parts.besides.and(in_heif(bytes)),
    }
    parts.xmp.extend(packets(bytes));
    Ok(parts)
}

fn in_heif(bytes: &[u8]) -> Metadata {
    if parts_are_known(bytes.get(8..).unwrap_or(&[])) {
        return exif::read_heif(bytes);
    }
    Metadata {
        has_unread: true,
        ..Metadata::default()
    }
}

/// The family's other members are films.
fn parts_are_known(brands: &[u8]) -> bool {
    [
        b"heic", b"heix", b"mif1", b"msf1", b"avif", b"hevc", b"avis",
    ]
    .iter()
    .any(|brand| {
        brands
            .get(..64.min(brands.len()))
            .is_some_and(|b| find(b, *brand).is_some())
    })
}

/// Every packet of a picture program, from its first tag to its last.
fn packets(bytes: &[u8]) -> Vec<&[u8]> {
    let mut rest = bytes;
    let mut found = Vec::new();
    while let Some(start) = find(rest, b"<x:xmpmeta") {
        let from = rest.get(start..).unwrap_or(&[]);
        let end = find(from, b"</x:xmpmeta>").unwrap_or(from.len());
        found.push(from.get(..end).unwrap_or(from));
        rest = from.get(end.max(1)..).unwrap_or(&[]);
    }
    found
}

fn size_of_gif(bytes: &[u8]) -> Option<Size> {
    let mut bytes = Bytes(bytes);
    bytes.take(6)?;
    let (width, height) = (bytes.u16_le()?, bytes.u16_le()?);
    Some(Size {
        width: width.into(),
        height: height.into(),
    })
}

fn size_of_bitmap(bytes: &[u8]) -> Option<Size> {
    let mut bytes = Bytes(bytes);
    bytes.take(18)?;
    let side = |value: u32| (value as i32).unsigned_abs();
    Some(Size {
        width: side(bytes.u32_le()?),
        height: side(bytes.u32_le()?),
    })
}
