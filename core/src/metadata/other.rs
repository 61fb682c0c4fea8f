//! Files whose parts are not taken apart here: notes are looked for as they stand in the bytes.

use super::bytes::{Bytes, Wanted};
use super::{FileError, Format, Parts};
use crate::picture::Size;

pub(super) fn read(format: Format, bytes: &[u8]) -> Result<Parts<'_>, FileError> {
    let mut parts = Parts::of(format);
    match format {
        Format::Bmp => parts.size = Some(size_of_bitmap(bytes).ok_or(FileError::Broken)?),
        _ => parts.exif.push(bytes),
    }
    add_packets(&mut parts, bytes);
    Ok(parts)
}

/// Every packet of a picture program, from its first tag to its last. One without an end tells what it
/// can.
pub(super) fn add_packets<'a>(parts: &mut Parts<'a>, bytes: &'a [u8]) {
    let mut rest = bytes;
    let mut packets = 0;
    while let Some(start) = PACKET.find_in(rest) {
        packets += 1;
        if packets > MOST_PACKETS {
            parts.besides.has_unread = true;
            return;
        }
        let from = rest.get(start..).unwrap_or(&[]);
        let end = PACKET_ENDS.find_in(from);
        parts.besides.has_unread |= end.is_none();
        let (packet, behind) = from
            .split_at_checked(end.unwrap_or(from.len()))
            .unwrap_or((from, &[]));
        parts.xmp.push(packet);
        rest = behind;
    }
}

/// How a packet begins.
pub(super) static PACKET: Wanted<'_> = Wanted::new(b"<x:xmpmeta");
static PACKET_ENDS: Wanted<'_> = Wanted::new(b"</x:xmpmeta>");

/// A picture has one, or one for each of its layers. Our assumption.
const MOST_PACKETS: usize = 32;

fn size_of_bitmap(bytes: &[u8]) -> Option<Size> {
    let mut bytes = Bytes(bytes);
    bytes.take(18)?;
    // Rows from top to bottom are told by a height below nought.
    let side = |value: u32| (value as i32).unsigned_abs();
    Some(Size {
        width: side(bytes.u32_le()?),
        height: side(bytes.u32_le()?),
    })
}
