//! TIFF: lists of entries, each with a number, a kind, a count, and a value or the place of one.
//!
//! Nothing is copied, and no work is asked for that the length of the block does not bound: what its
//! lists and values claim is counted, and no more is read where that is more than there can be.

use super::bytes::Bytes;

/// Which list an entry stands in: its number means something else in each.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum List {
    Main,
    Camera,
    Place,
}

/// What an entry is about.
pub(super) type Tag = (List, u16);

pub(super) struct Entry<'a> {
    pub tag: Tag,
    kind: u16,
    content: &'a [u8],
    is_little: bool,
}

impl<'a> Entry<'a> {
    /// Its fractions, each as what stands above and below the line; `None` where it is of another kind.
    pub fn fractions(&self) -> Option<impl Iterator<Item = (u32, u32)> + use<'a>> {
        let is_little = self.is_little;
        let fractions = self.content.chunks_exact(8).filter_map(move |fraction| {
            let mut fraction = Bytes(fraction);
            Some((
                number(&mut fraction, is_little)?,
                number(&mut fraction, is_little)?,
            ))
        });
        (self.kind == FRACTION).then_some(fractions)
    }

    /// Whether anything stands in it; a text of blanks is nothing.
    pub fn is_filled(&self) -> bool {
        match self.kind {
            TEXT => self.content.iter().any(u8::is_ascii_graphic),
            BYTE | UNDEFINED => self.content.iter().any(|&byte| byte > b' '),
            _ => !self.content.is_empty(),
        }
    }
}

/// Gives every entry of a wanted kind to `take`; says whether every list and wanted entry made sense.
pub(super) fn read<'a>(
    tiff: &'a [u8],
    is_wanted: fn(Tag) -> bool,
    take: impl FnMut(Entry<'a>),
) -> bool {
    let mut header = Bytes(tiff);
    let Some(order @ (b"II" | b"MM")) = header.take(2) else {
        return false;
    };
    let mut reader = Reader {
        tiff,
        is_little: order == b"II",
        left: tiff.len().saturating_mul(CLAIMS_A_BYTE),
        is_wanted,
        take,
        is_whole: true,
    };
    reader.main_lists(header).is_some() && reader.is_whole
}

struct Reader<'a, F> {
    tiff: &'a [u8],
    is_little: bool,
    /// How many bytes lists and values may still claim.
    left: usize,
    is_wanted: fn(Tag) -> bool,
    take: F,
    /// Whether all made sense so far.
    is_whole: bool,
}

impl<'a, F: FnMut(Entry<'a>)> Reader<'a, F> {
    /// One after the other, each of which names the next.
    fn main_lists(&mut self, mut header: Bytes<'a>) -> Option<()> {
        if self.short(&mut header)? != 42 {
            return None;
        }
        let mut at = number(&mut header, self.is_little)?;
        while at != 0 {
            at = self.list(List::Main, at)?;
        }
        Some(())
    }

    /// Reads the list that begins at this byte of the block, and gives what it names as the next.
    fn list(&mut self, list: List, at: u32) -> Option<u32> {
        let mut rest = Bytes(self.tiff.get(usize::try_from(at).ok()?..)?);
        let count = usize::from(self.short(&mut rest)?);
        self.claim(2 + count * ENTRY)?;
        for _ in 0..count {
            let entry = Bytes(rest.take(ENTRY)?);
            self.is_whole &= self.entry(list, entry).is_some();
        }
        number(&mut rest, self.is_little)
    }

    /// `None` where it is wanted or names a list, and makes no sense.
    fn entry(&mut self, list: List, mut entry: Bytes<'a>) -> Option<()> {
        let tag = (list, self.short(&mut entry)?);
        let inner = match tag {
            (List::Main, 0x8769) => Some(List::Camera),
            (List::Main, 0x8825) => Some(List::Place),
            _ if (self.is_wanted)(tag) => None,
            _ => return Some(()),
        };
        let kind = self.short(&mut entry)?;
        let count = number(&mut entry, self.is_little)?;
        let Some(inner) = inner else {
            let entry = Entry {
                tag,
                kind,
                content: self.content(entry, kind, count)?,
                is_little: self.is_little,
            };
            (self.take)(entry);
            return Some(());
        };
        if !matches!((kind, count), (NUMBER | PLACE_OF_LIST, 1)) {
            return None;
        }
        let at = number(&mut entry, self.is_little)?;
        // These lists name no next.
        (self.list(inner, at)? == 0).then_some(())
    }

    /// What an entry holds: in its last four bytes, or where they say.
    fn content(&mut self, mut last: Bytes<'a>, kind: u16, count: u32) -> Option<&'a [u8]> {
        let length = usize::try_from(count).ok()?.checked_mul(length_of(kind)?)?;
        if length <= last.0.len() {
            return last.take(length);
        }
        self.claim(length)?;
        let at = usize::try_from(number(&mut last, self.is_little)?).ok()?;
        Bytes(self.tiff.get(at..)?).take(length)
    }

    fn claim(&mut self, bytes: usize) -> Option<()> {
        self.left = self.left.checked_sub(bytes)?;
        Some(())
    }

    fn short(&self, bytes: &mut Bytes<'a>) -> Option<u16> {
        if self.is_little {
            bytes.u16_le()
        } else {
            bytes.u16_be()
        }
    }
}

fn number(bytes: &mut Bytes<'_>, is_little: bool) -> Option<u32> {
    if is_little {
        bytes.u32_le()
    } else {
        bytes.u32_be()
    }
}

/// How many bytes one value of a kind takes.
fn length_of(kind: u16) -> Option<usize> {
    match kind {
        BYTE | TEXT | 6 | UNDEFINED => Some(1),
        3 | 8 => Some(2),
        NUMBER | 9 | 11 | PLACE_OF_LIST => Some(4),
        FRACTION | 10 | 12 => Some(8),
        _ => None,
    }
}

/// The length of an entry.
const ENTRY: usize = 12;

// Kinds.
const BYTE: u16 = 1;
const TEXT: u16 = 2;
const NUMBER: u16 = 4;
const FRACTION: u16 = 5;
const UNDEFINED: u16 = 7;
const PLACE_OF_LIST: u16 = 13;

/// A byte belongs to one list or value; some programs have two entries share one. Our assumption.
const CLAIMS_A_BYTE: usize = 2;
