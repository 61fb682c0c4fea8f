//! The HEIF family: boxes, each with a length and a name.

use super::bytes::Bytes;
use super::other::add_packets;
use super::{Format, Parts, heif_items};

pub(super) fn read(bytes: &[u8]) -> Parts<'_> {
    let mut parts = Parts::of(Format::Heif);
    parts.breaks_off = breaks_off(bytes);
    match heif_items::notes(bytes) {
        Some(notes) if is_picture(bytes.get(8..).unwrap_or(&[])) => parts.exif = notes,
        _ => parts.besides.has_unread = true,
    }
    add_packets(&mut parts, bytes);
    parts
}

/// Whether the file ends within a box, or before the one that describes its pictures.
fn breaks_off(bytes: &[u8]) -> bool {
    let mut rest = Bytes(bytes);
    let mut is_described = false;
    while !rest.0.is_empty() {
        match next_box(&mut rest) {
            Some((name, _)) => is_described |= matches!(&name, b"meta" | b"moov"),
            None => return true,
        }
    }
    !is_described
}

/// The next box; `None` where the bytes end within it or its length makes no sense.
pub(super) fn next_box<'a>(bytes: &mut Bytes<'a>) -> Option<([u8; 4], Bytes<'a>)> {
    let length = bytes.u32_be()?;
    let name = bytes.array()?;
    let content = match length {
        // To the end, whatever that is.
        0 => bytes.take(bytes.0.len())?,
        // A longer number stands behind the name.
        1 => {
            let length = u64::from_be_bytes(bytes.array()?);
            bytes.take(usize::try_from(length.checked_sub(16)?).ok()?)?
        }
        _ => bytes.take(usize::try_from(length.checked_sub(8)?).ok()?)?,
    };
    Some((name, Bytes(content)))
}

/// The family's other members are films.
fn is_picture(brands: &[u8]) -> bool {
    let front = brands.get(..64).unwrap_or(brands);
    front.chunks_exact(4).any(|brand| {
        matches!(
            brand,
            b"heic" | b"heix" | b"mif1" | b"msf1" | b"avif" | b"hevc" | b"avis"
        )
    })
}
