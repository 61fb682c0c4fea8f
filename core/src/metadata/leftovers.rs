//! What a file holds beyond what it takes to show its picture: nothing, if it is safe to share.

use super::bytes::Bytes;
use super::{FileError, Format, jpeg, png};

/// Something in a file that no viewer needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leftover {
    /// Notes of any kind: of cameras, programs, the press, or free text.
    Notes,
    /// A profile of colours, which can name the device or the program it is from.
    Profile,
    /// A part whose use is not known.
    Unknown,
    /// Bytes after the end of the picture.
    AfterTheEnd,
}

/// Everything in a finished JPEG or PNG that no viewer needs, in the order of the file. Resolution is
/// needed; nothing else beside the picture is.
///
/// Errs where the file is of another format, or breaks off before its end.
///
/// ```
/// use self_check_core::metadata::{FileError, leftovers};
/// assert_eq!(leftovers(b"GIF89a\x03\x00\x02\x00\x00\x00\x00;"), Err(FileError::NotAPicture));
/// ```
pub fn leftovers(bytes: &[u8]) -> Result<Vec<Leftover>, FileError> {
    let parts = parts(bytes)?;
    Ok(parts.iter().filter_map(|part| part.leftover).collect())
}

/// The same file without its leftovers; its picture stays as it is, to the byte. A picture in the
/// usual colours of screens (sRGB) shows the same without a profile.
///
/// Errs as [`leftovers`] does.
pub fn without_leftovers(bytes: &[u8]) -> Result<Vec<u8>, FileError> {
    let parts = parts(bytes)?;
    let kept = parts.iter().filter(|part| part.leftover.is_none());
    Ok(kept.map(|part| part.bytes).collect::<Vec<_>>().concat())
}

/// A stretch of a file, and what it is beyond what is needed.
struct Part<'a> {
    bytes: &'a [u8],
    leftover: Option<Leftover>,
}

fn parts(bytes: &[u8]) -> Result<Vec<Part<'_>>, FileError> {
    let mut rest = Bytes(bytes);
    let mut found = Vec::new();
    let mut end = false;
    match Format::of(bytes)? {
        Format::Jpeg => {
            while !end {
                let before = rest.0;
                let (leftover, is_end) = in_jpeg(&mut rest).ok_or(FileError::Broken)?;
                end = is_end;
                found.push(passed(before, rest, leftover));
            }
        }
        Format::Png => {
            rest.take(png::SIGNATURE.len()).ok_or(FileError::Broken)?;
            found.push(passed(bytes, rest, None));
            while !end {
                let before = rest.0;
                let (leftover, is_end) = in_png(&mut rest).ok_or(FileError::Broken)?;
                end = is_end;
                found.push(passed(before, rest, leftover));
            }
        }
        _ => return Err(FileError::NotAPicture),
    }
    if !rest.0.is_empty() {
        found.push(Part {
            bytes: rest.0,
            leftover: Some(Leftover::AfterTheEnd),
        });
    }
    Ok(found)
}

/// What lay between `before` and what is left of it.
fn passed<'a>(before: &'a [u8], rest: Bytes<'a>, leftover: Option<Leftover>) -> Part<'a> {
    let length = before.len() - rest.0.len();
    Part {
        bytes: before.get(..length).unwrap_or(before),
        leftover,
    }
}

/// The next chunk, and whether it is the last.
fn in_png(rest: &mut Bytes<'_>) -> Option<(Option<Leftover>, bool)> {
    let chunk = png::next_chunk(rest)?;
    let leftover = match &chunk.name {
        b"IHDR" | b"PLTE" | b"IDAT" | b"tRNS" | b"cHRM" | b"gAMA" | b"sBIT" | b"sRGB" | b"bKGD"
        | b"pHYs" | b"IEND" => None,
        b"eXIf" | b"tEXt" | b"zTXt" | b"iTXt" | b"tIME" => Some(Leftover::Notes),
        b"iCCP" => Some(Leftover::Profile),
        _ => Some(Leftover::Unknown),
    };
    Some((leftover, &chunk.name == b"IEND"))
}

/// The next segment with any coded picture behind it, and whether it is the last.
fn in_jpeg(rest: &mut Bytes<'_>) -> Option<(Option<Leftover>, bool)> {
    let segment = jpeg::next_segment(rest)?;
    let begins = |mark: &[u8]| segment.content.starts_with(mark);
    let leftover = match segment.marker {
        jpeg::SCAN => {
            pass_coded(rest);
            None
        }
        // Frames, tables, start, end, restarts.
        0xc0..=0xdf => None,
        // JFIF with its resolution and no small picture; how colours are coded.
        0xe0 if begins(b"JFIF\0") && segment.content.len() <= JFIF_ALONE => None,
        0xee if begins(b"Adobe") => None,
        0xe2 if begins(b"ICC_PROFILE\0") => Some(Leftover::Profile),
        0xe0..=0xef | 0xfe => Some(Leftover::Notes),
        _ => Some(Leftover::Unknown),
    };
    Some((leftover, segment.marker == jpeg::END))
}

/// Passes the coded picture: up to the next marker that is no restart. Within it, 0xff is followed
/// by 0.
fn pass_coded(rest: &mut Bytes<'_>) {
    let bytes = rest.0;
    let mut from = 0;
    while let Some(at) = bytes
        .get(from..)
        .and_then(|left| left.iter().position(|&byte| byte == 0xff))
    {
        let at = from + at;
        match bytes.get(at + 1) {
            Some(0 | 0xd0..=0xd7) => from = at + 2,
            Some(0xff) => from = at + 1,
            Some(_) => {
                rest.0 = bytes.get(at..).unwrap_or(&[]);
                return;
            }
            None => break,
        }
    }
    rest.0 = &[];
}

/// Length of the part that names JFIF, without a small picture in it.
const JFIF_ALONE: usize = 14;
