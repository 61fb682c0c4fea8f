//! JPEG: segments, each with a marker and a length, then the coded picture.

use super::bytes::{Bytes, Wanted, is_padding};
use super::{FileError, Format, Parts};
use crate::picture::Size;

pub(super) const EXIF: &[u8] = b"Exif\0\0";
pub(super) const XMP: &[u8] = b"http://ns.adobe.com/xap/1.0/\0";
pub(super) const MORE_XMP: &[u8] = b"http://ns.adobe.com/xmp/extension/\0";
const PHOTOSHOP: &[u8] = b"Photoshop 3.0\0";

/// A segment before the coded picture.
pub(super) struct Segment<'a> {
    pub marker: u8,
    pub content: &'a [u8],
}

/// The next segment; `None` where the file ends or makes no sense. `bytes` stand behind it then.
pub(super) fn next_segment<'a>(bytes: &mut Bytes<'a>) -> Option<Segment<'a>> {
    let marker = next_marker(bytes)?;
    if is_bare(marker) {
        return Some(Segment {
            marker,
            content: &[],
        });
    }
    let length = usize::from(bytes.u16_be()?);
    let content = bytes.take(length.checked_sub(2)?)?;
    Some(Segment { marker, content })
}

/// A marker is any number of 0xff and a byte that is neither that nor 0.
fn next_marker(bytes: &mut Bytes<'_>) -> Option<u8> {
    if bytes.byte()? != 0xff {
        return None;
    }
    loop {
        match bytes.byte()? {
            0xff => {}
            0 => return None,
            marker => return Some(marker),
        }
    }
}

/// Start, end and restart stand without a length.
pub(super) const fn is_bare(marker: u8) -> bool {
    matches!(marker, 0xd0..=0xd9 | 0x01)
}

pub(super) const END: u8 = 0xd9;
pub(super) const SCAN: u8 = 0xda;
const COMMENT: u8 = 0xfe;
static END_OF_PICTURE: Wanted<'_> = Wanted::new(&[0xff, END]);

/// What every JPEG begins with.
pub(super) const SIGNATURE: &[u8] = b"\xff\xd8\xff";

/// A JPEG taken apart up to its coded picture.
pub(super) struct Front<'a> {
    pub parts: Parts<'a>,
    /// The coded picture and all that follows it.
    pub coded: &'a [u8],
}

pub(super) fn read(bytes: &[u8]) -> Result<Front<'_>, FileError> {
    if !bytes.starts_with(SIGNATURE) {
        return Err(FileError::NotAPicture);
    }
    let mut parts = Parts::of(Format::Jpeg);
    let mut rest = Bytes(bytes);
    loop {
        let segment = next_segment(&mut rest).ok_or(FileError::Broken)?;
        let content = segment.content;
        match segment.marker {
            SCAN => break,
            END => return Err(FileError::Broken),
            0xc0..=0xcf if !matches!(segment.marker, 0xc4 | 0xc8 | 0xcc) => {
                parts.size = size(content);
            }
            0xdb => parts.quantisation = parts.quantisation.or(quantisation(content)),
            0xe1 => {
                if let Some(tiff) = content.strip_prefix(EXIF) {
                    parts.exif.push(tiff);
                } else if let Some(packet) = content
                    .strip_prefix(XMP)
                    .or_else(|| content.strip_prefix(MORE_XMP))
                {
                    parts.xmp.push(packet);
                }
            }
            COMMENT => parts.besides.has_others |= !is_padding(content),
            0xed => {
                if let Some(resources) = content.strip_prefix(PHOTOSHOP) {
                    parts.besides.has_unread |=
                        add_press_notes(&mut parts.iptc, resources).is_none();
                }
            }
            _ => {}
        }
    }
    if parts.size.is_none() {
        return Err(FileError::Broken);
    }
    Ok(Front {
        parts,
        coded: rest.0,
    })
}

/// What stands behind the end of a JPEG's picture in these bytes of it, which follow one another behind
/// the beginning of the picture; `None` where it does not end in them. `before` is the byte in front of
/// them. Within a picture, 0xff is never followed by the number of the end.
pub(super) fn behind_the_end(before: u8, bytes: &[u8]) -> Option<&[u8]> {
    match bytes.strip_prefix(&[END]) {
        Some(behind) if before == 0xff => Some(behind),
        _ => bytes.get(END_OF_PICTURE.find_in(bytes)? + END_OF_PICTURE.len()..),
    }
}

fn size(frame: &[u8]) -> Option<Size> {
    let mut frame = Bytes(frame);
    frame.byte()?;
    let (height, width) = (frame.u16_be()?, frame.u16_be()?);
    Some(Size {
        width: width.into(),
        height: height.into(),
    })
}

/// The mean of the first ten steps of the table numbered 0, which is that of grey.
fn quantisation(tables: &[u8]) -> Option<f64> {
    let mut tables = Bytes(tables);
    loop {
        let kind = tables.byte()?;
        let steps: Vec<u16> = if kind >> 4 == 0 {
            tables.take(64)?.iter().copied().map(u16::from).collect()
        } else {
            let pairs = tables.take(128)?.chunks_exact(2);
            pairs.filter_map(|pair| Bytes(pair).u16_be()).collect()
        };
        if kind & 0xf == 0 {
            let sum: f64 = steps.iter().take(10).copied().map(f64::from).sum();
            return Some(sum / 10.0);
        }
    }
}

/// Adds the notes of the press among a picture program's resources; `None` where these stop making sense.
fn add_press_notes<'a>(notes: &mut Vec<&'a [u8]>, resources: &'a [u8]) -> Option<()> {
    const PRESS: u16 = 0x0404;
    let mut resources = Bytes(resources);
    while !is_padding(resources.0) {
        // Programs have signatures of their own beside the usual 8BIM.
        let signature: [u8; 4] = resources.array()?;
        if !signature.iter().all(u8::is_ascii_alphanumeric) {
            return None;
        }
        let id = resources.u16_be()?;
        // A name with its length before it, even in all.
        let name = usize::from(resources.byte()?);
        resources.take(name + (name + 1) % 2)?;
        let length = usize::try_from(resources.u32_be()?).ok()?;
        let content = resources.take(length)?;
        if id == PRESS {
            notes.push(content);
        }
        // An odd length has one byte more, but for the last.
        let _ = resources.take(length % 2);
    }
    Some(())
}
