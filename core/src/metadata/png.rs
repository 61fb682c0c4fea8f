//! PNG: chunks, each with a length, a name and a sum.

use super::bytes::{Bytes, is_padding};
use super::other::PACKET;
use super::{FileError, Format, Parts};
use crate::picture::Size;

pub(super) const SIGNATURE: &[u8] = b"\x89PNG\r\n\x1a\n";
const XMP: &[u8] = b"XML:com.adobe.xmp\0";

/// A chunk; its sum is not looked at.
pub(super) struct Chunk<'a> {
    pub name: [u8; 4],
    pub content: &'a [u8],
}

/// The next chunk; `None` where the file ends within it.
pub(super) fn next_chunk<'a>(bytes: &mut Bytes<'a>) -> Option<Chunk<'a>> {
    let length = usize::try_from(bytes.u32_be()?).ok()?;
    let name = bytes.array()?;
    let content = bytes.take(length)?;
    bytes.take(4)?;
    Some(Chunk { name, content })
}

pub(super) fn read(bytes: &[u8]) -> Result<Parts<'_>, FileError> {
    let mut parts = Parts::of(Format::Png);
    let mut rest = Bytes(bytes);
    rest.take(SIGNATURE.len()).ok_or(FileError::Broken)?;
    // A file that breaks off later may still show its upper part.
    parts.breaks_off = true;
    while let Some(Chunk { name, content }) = next_chunk(&mut rest) {
        match &name {
            b"IHDR" => parts.size = size(content),
            b"acTL" => parts.is_animated = true,
            b"eXIf" => parts
                .exif
                .push(content.strip_prefix(b"Exif\0\0").unwrap_or(content)),
            b"tIME" => parts.besides.has_time = true,
            b"iTXt" | b"tEXt" | b"zTXt" => text(&mut parts, content),
            b"IEND" => {
                parts.breaks_off = false;
                parts.has_more_behind = !is_padding(rest.0);
                break;
            }
            _ => {}
        }
    }
    if parts.size.is_none() {
        return Err(FileError::Broken);
    }
    Ok(parts)
}

fn size(header: &[u8]) -> Option<Size> {
    let mut header = Bytes(header);
    let (width, height) = (header.u32_be()?, header.u32_be()?);
    Some(Size { width, height })
}

fn text<'a>(parts: &mut Parts<'a>, content: &'a [u8]) {
    if let Some(packet) = content.strip_prefix(XMP) {
        // The byte after the name tells whether it is packed; packed text is not read here.
        if packet.first() == Some(&0) {
            parts.xmp.push(packet);
        } else {
            parts.besides.has_unread = true;
        }
    } else if content.starts_with(b"Raw profile type ") {
        parts.besides.has_unread = true;
    } else if content.starts_with(b"Creation Time\0") || content.starts_with(b"date:") {
        parts.besides.has_time = true;
    } else if PACKET.is_in(content) {
        parts.xmp.push(content);
    } else {
        parts.besides.has_others = true;
    }
}
