//! GIF: a header, then blocks, each of which says what it is. Content stands in runs of at most 255
//! bytes, each with its length before it, up to one of no length.

use super::bytes::{Bytes, is_padding};
use super::other::add_packets;
use super::{FileError, Format, Parts};
use crate::picture::Size;

pub(super) fn read(bytes: &[u8]) -> Result<Parts<'_>, FileError> {
    let mut parts = Parts::of(Format::Gif);
    let mut rest = Bytes(bytes);
    parts.size = Some(header(&mut rest).ok_or(FileError::Broken)?);
    let mut views = 0_u32;
    parts.breaks_off = loop {
        match next_block(&mut rest) {
            Some(Block::View) => views = views.saturating_add(1),
            Some(Block::Comment) => parts.besides.has_others = true,
            Some(Block::Extension) => {}
            Some(Block::End) => break false,
            None => break true,
        }
    };
    parts.is_animated = views > 1;
    parts.has_more_behind = !parts.breaks_off && !is_padding(rest.0);
    add_packets(&mut parts, bytes);
    Ok(parts)
}

enum Block {
    View,
    Comment,
    Extension,
    End,
}

/// The size, and everything up to the first block passed.
fn header(bytes: &mut Bytes<'_>) -> Option<Size> {
    bytes.take(6)?;
    let (width, height) = (bytes.u16_le()?, bytes.u16_le()?);
    let flags = bytes.byte()?;
    bytes.take(2)?;
    pass_colours(bytes, flags)?;
    Some(Size {
        width: width.into(),
        height: height.into(),
    })
}

/// Passes the next block; `None` where the file ends within it or it makes no sense.
fn next_block(bytes: &mut Bytes<'_>) -> Option<Block> {
    match bytes.byte()? {
        0x21 => {
            let kind = bytes.byte()?;
            pass_runs(bytes)?;
            Some(match kind {
                0xfe => Block::Comment,
                _ => Block::Extension,
            })
        }
        0x2c => {
            bytes.take(8)?;
            let flags = bytes.byte()?;
            pass_colours(bytes, flags)?;
            bytes.byte()?;
            pass_runs(bytes)?;
            Some(Block::View)
        }
        0x3b => Some(Block::End),
        _ => None,
    }
}

/// Passes a table of colours where there is one: the lowest three bits tell how many.
fn pass_colours(bytes: &mut Bytes<'_>, flags: u8) -> Option<()> {
    if flags & 0x80 != 0 {
        bytes.take(3 << ((flags & 7) + 1))?;
    }
    Some(())
}

fn pass_runs(bytes: &mut Bytes<'_>) -> Option<()> {
    loop {
        match bytes.byte()? {
            0 => return Some(()),
            length => bytes.take(length.into())?,
        };
    }
}
