//! WebP: chunks of a RIFF file, each with a name and a length.

use super::bytes::{Bytes, is_padding};
use super::{FileError, Format, Parts};
use crate::picture::Size;

pub(super) fn read(bytes: &[u8]) -> Result<Parts<'_>, FileError> {
    let mut parts = Parts::of(Format::WebP);
    let mut rest = Bytes(bytes);
    rest.take(4).ok_or(FileError::Broken)?;
    let length = rest.u32_le().ok_or(FileError::Broken)?;
    parts.breaks_off = usize::try_from(length).is_ok_and(|length| length > rest.0.len());
    rest.take(4).ok_or(FileError::Broken)?;
    while !is_padding(rest.0) {
        let Some((name, content)) = next_chunk(&mut rest) else {
            parts.besides.has_unread = true;
            break;
        };
        match &name {
            b"VP8X" => {
                parts.size = size_of_extended(content);
                parts.is_animated = content.first().is_some_and(|flags| flags & 2 != 0);
            }
            b"VP8 " => parts.size = parts.size.or(size_of_lossy(content)),
            b"VP8L" => parts.size = parts.size.or(size_of_lossless(content)),
            b"EXIF" => parts
                .exif
                .push(content.strip_prefix(b"Exif\0\0").unwrap_or(content)),
            b"XMP " => parts.xmp.push(content),
            _ => {}
        }
    }
    if parts.size.is_none() {
        return Err(FileError::Broken);
    }
    Ok(parts)
}

fn next_chunk<'a>(bytes: &mut Bytes<'a>) -> Option<([u8; 4], &'a [u8])> {
    let name = bytes.array()?;
    let length = usize::try_from(bytes.u32_le()?).ok()?;
    let content = bytes.take(length)?;
    // A length that is odd has one byte more, but for the last.
    let _ = bytes.take(length % 2);
    Some((name, content))
}

fn size_of_extended(content: &[u8]) -> Option<Size> {
    let mut content = Bytes(content);
    content.take(4)?;
    let mut less_one = || {
        content
            .array()
            .map(|[a, b, c]: [u8; 3]| u32::from_le_bytes([a, b, c, 0]))
    };
    Some(Size {
        width: less_one()? + 1,
        height: less_one()? + 1,
    })
}

fn size_of_lossy(content: &[u8]) -> Option<Size> {
    let mut content = Bytes(content);
    content.take(3)?;
    if content.take(3)? != b"\x9d\x01\x2a" {
        return None;
    }
    let fourteen_bits = |value: u16| u32::from(value & 0x3fff);
    Some(Size {
        width: fourteen_bits(content.u16_le()?),
        height: fourteen_bits(content.u16_le()?),
    })
}

fn size_of_lossless(content: &[u8]) -> Option<Size> {
    let mut content = Bytes(content);
    if content.byte()? != 0x2f {
        return None;
    }
    let bits = content.u32_le()?;
    Some(Size {
        width: (bits & 0x3fff) + 1,
        height: (bits >> 14 & 0x3fff) + 1,
    })
}
