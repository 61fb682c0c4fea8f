//! Where in a file of the HEIF family the cameras' notes stand: one box lists items by number and kind,
//! another says where each is.
//!
//! From memory of ISO/IEC 14496-12 and 23008-12; `tests/outside` holds it to files of other programs.

use super::bytes::Bytes;
use super::heif::next_box;

/// Every block of TIFF; `None` where one is told of and not found, or the lists make no sense.
pub(super) fn notes(file: &[u8]) -> Option<Vec<&[u8]>> {
    let mut boxes = Bytes(file);
    let Some(mut meta) = inner_box(&mut boxes, b"meta") else {
        return Some(Vec::new());
    };
    meta.take(VERSION_AND_FLAGS)?;
    let items = match inner_box(&mut meta.clone(), b"iinf") {
        Some(list) => listed(list)?,
        None => Vec::new(),
    };
    if items.is_empty() {
        return Some(Vec::new());
    }
    let inside = inner_box(&mut meta.clone(), b"idat").map_or(&[][..], |inside| inside.0);
    let notes = located(inner_box(&mut meta, b"iloc")?, &items, file, inside)?;
    (notes.len() == items.len()).then_some(notes)
}

fn inner_box<'a>(boxes: &mut Bytes<'a>, wanted: &[u8; 4]) -> Option<Bytes<'a>> {
    while let Some((name, content)) = next_box(boxes) {
        if &name == wanted {
            return Some(content);
        }
    }
    None
}

/// The numbers of the items that are cameras' notes.
fn listed(mut list: Bytes<'_>) -> Option<Vec<u32>> {
    let version = version(&mut list)?;
    let count = number(&mut list, if version == 0 { 2 } else { 4 })?;
    let mut items = Vec::new();
    for _ in 0..count {
        let (name, mut item) = next_box(&mut list)?;
        if &name != b"infe" {
            continue;
        }
        let id = match self::version(&mut item)? {
            2 => number(&mut item, 2)?,
            3 => number(&mut item, 4)?,
            // Items before these had no kind.
            _ => continue,
        };
        item.take(2)?;
        if item.take(4)? == b"Exif" {
            if items.len() == MOST_NOTES {
                return None;
            }
            items.push(u32::try_from(id).ok()?);
        }
    }
    Some(items)
}

/// The content of each of these items, from `file` or from the box of contents `inside`.
fn located<'a>(
    mut places: Bytes<'a>,
    items: &[u32],
    file: &'a [u8],
    inside: &'a [u8],
) -> Option<Vec<&'a [u8]>> {
    let version = version(&mut places)?;
    let widths = usize::from(places.u16_be()?);
    let [offset, length, base] = [12, 8, 4].map(|by| widths >> by & 0xf);
    let index = if version == 0 { 0 } else { widths & 0xf };
    let wide = if version < 2 { 2 } else { 4 };
    let count = number(&mut places, wide)?;
    let mut notes = Vec::new();
    for _ in 0..count {
        let id = number(&mut places, wide)?;
        let method = if version == 0 {
            0
        } else {
            places.u16_be()? & 0xf
        };
        let is_elsewhere = places.u16_be()? != 0;
        let from = number(&mut places, base)?;
        let pieces = usize::from(places.u16_be()?);
        let mut pieces_of_it = Bytes(places.take(pieces * (index + offset + length))?);
        if !items.iter().any(|&item| u64::from(item) == id) {
            continue;
        }
        let whole = match method {
            0 if !is_elsewhere => file,
            1 => inside,
            _ => return None,
        };
        // Notes in more than one piece are not put together here.
        if pieces != 1 || notes.len() == items.len() {
            return None;
        }
        pieces_of_it.take(index)?;
        let from = from.checked_add(number(&mut pieces_of_it, offset)?)?;
        let mut content = Bytes(whole.get(usize::try_from(from).ok()?..)?);
        // A length of nought is all there is.
        match number(&mut pieces_of_it, length)? {
            0 => {}
            length => content.0 = content.take(usize::try_from(length).ok()?)?,
        }
        let before = content.u32_be()?;
        content.take(usize::try_from(before).ok()?)?;
        notes.push(content.0);
    }
    Some(notes)
}

fn version(content: &mut Bytes<'_>) -> Option<u8> {
    let [version, ..] = content.array::<VERSION_AND_FLAGS>()?;
    Some(version)
}

/// A number of so many bytes, the highest first; of none it is nought.
fn number(bytes: &mut Bytes<'_>, width: usize) -> Option<u64> {
    let number = bytes.take(width)?;
    (width <= 8).then(|| {
        number
            .iter()
            .fold(0, |sum, &byte| sum << 8 | u64::from(byte))
    })
}

const VERSION_AND_FLAGS: usize = 4;

/// No picture has more; beyond, none are looked for. Our assumption.
const MOST_NOTES: usize = 8;
