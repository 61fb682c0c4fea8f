//! The notes of picture programs (XMP) and of the press (IPTC), from memory of their public lists of
//! names.

use super::bytes::{Bytes, Wanted, is_padding};
use super::{METRES_IN_A_DEGREE, Metadata, Place};
use crate::units::Metres;

/// Looks for the names of properties in a packet of XMP, by the prefixes that programs write.
pub(super) fn read_xmp(packet: &[u8]) -> Metadata {
    let has = |names: &[Wanted<'_>]| names.iter().any(|name| name.is_in(packet));
    let within = match [&LATITUDE, &LONGITUDE].map(|name| finest(packet, name)) {
        [Some(one), Some(other)] => Metres::new(one.max(other)).ok(),
        _ => None,
    };
    let is_named = has(&PLACES);
    Metadata {
        place: (within.is_some() || is_named).then_some(Place { within, is_named }),
        has_time: has(&TIMES),
        has_device: has(&DEVICES),
        has_others: has(&OTHERS),
        has_unread: false,
    }
}

/// How finely a coordinate is written: degrees and minutes with a fraction, or seconds as well,
/// between commas, then a letter for the side of the world.
fn finest(packet: &[u8], name: &Wanted<'_>) -> Option<f64> {
    let after = packet.get(name.find_in(packet)? + name.len()..)?;
    let value = after.get(..after.len().min(LONGEST_VALUE))?;
    let start = value.iter().position(u8::is_ascii_digit)?;
    let digits = value.get(start..)?;
    let end = digits
        .iter()
        .position(|byte| !(byte.is_ascii_digit() || b".,".contains(byte)))?;
    let number = digits.get(..end)?;
    let commas = number.iter().filter(|&&byte| byte == b',').count();
    let unit = [1.0, 60.0, 3600.0].get(commas)?;
    let last = number.split(|&byte| byte == b',').next_back()?;
    let decimals = match last.iter().position(|&byte| byte == b'.') {
        Some(point) => last.len() - point - 1,
        None => 0,
    };
    let step = libm::pow(10.0, -(decimals.min(12) as f64));
    Some(METRES_IN_A_DEGREE / unit * step)
}

/// Records with two numbers and a length each.
pub(super) fn read_iptc(records: &[u8]) -> Metadata {
    let mut records = Bytes(records);
    let mut told = Metadata::default();
    let mut is_named = false;
    while !is_padding(records.0) {
        let Some((record, field, content)) = next_record(&mut records) else {
            told.has_unread = true;
            break;
        };
        if record != 2 || content.is_empty() {
            continue;
        }
        match field {
            // Content location; city, part of it, state, country.
            26 | 27 | 90 | 92 | 95 | 100 | 101 => is_named = true,
            // Date and time of creation and of digitising.
            55 | 60 | 62 | 63 => told.has_time = true,
            // Its version.
            0 => {}
            _ => told.has_others = true,
        }
    }
    told.place = is_named.then_some(Place {
        within: None,
        is_named,
    });
    told
}

/// The next record's two numbers and content; `None` where it makes no sense.
fn next_record<'a>(records: &mut Bytes<'a>) -> Option<(u8, u8, &'a [u8])> {
    if records.byte()? != 0x1c {
        return None;
    }
    let (record, field) = (records.byte()?, records.byte()?);
    let length = records.u16_be()?;
    // The first bit tells of a length of more bytes, as no camera writes.
    if length & 0x8000 != 0 {
        return None;
    }
    Some((record, field, records.take(usize::from(length))?))
}

static LATITUDE: Wanted<'_> = Wanted::new(b"exif:GPSLatitude");
static LONGITUDE: Wanted<'_> = Wanted::new(b"exif:GPSLongitude");

static PLACES: [Wanted<'_>; 9] = [
    Wanted::new(b"photoshop:City"),
    Wanted::new(b"photoshop:State"),
    Wanted::new(b"photoshop:Country"),
    Wanted::new(b"Iptc4xmpCore:Location"),
    Wanted::new(b"Iptc4xmpCore:CountryCode"),
    Wanted::new(b"Iptc4xmpExt:LocationShown"),
    Wanted::new(b"Iptc4xmpExt:LocationCreated"),
    Wanted::new(b"Iptc4xmpExt:City"),
    Wanted::new(b"Iptc4xmpExt:Sublocation"),
];

static TIMES: [Wanted<'_>; 6] = [
    Wanted::new(b"exif:DateTimeOriginal"),
    Wanted::new(b"exif:DateTimeDigitized"),
    Wanted::new(b"xmp:CreateDate"),
    Wanted::new(b"xmp:ModifyDate"),
    Wanted::new(b"photoshop:DateCreated"),
    Wanted::new(b"tiff:DateTime"),
];

static DEVICES: [Wanted<'_>; 6] = [
    Wanted::new(b"tiff:Make"),
    Wanted::new(b"tiff:Model"),
    Wanted::new(b"aux:SerialNumber"),
    Wanted::new(b"aux:Lens"),
    Wanted::new(b"exifEX:BodySerialNumber"),
    Wanted::new(b"exifEX:LensModel"),
];

static OTHERS: [Wanted<'_>; 12] = [
    Wanted::new(b"dc:title"),
    Wanted::new(b"dc:description"),
    Wanted::new(b"dc:creator"),
    Wanted::new(b"dc:rights"),
    Wanted::new(b"dc:subject"),
    Wanted::new(b"photoshop:Headline"),
    Wanted::new(b"photoshop:Credit"),
    Wanted::new(b"Iptc4xmpCore:CreatorContactInfo"),
    Wanted::new(b"Iptc4xmpExt:PersonInImage"),
    Wanted::new(b"exif:UserComment"),
    Wanted::new(b"mwg-rs:Name"),
    Wanted::new(b"xmp:Thumbnails"),
];

/// A coordinate is shorter than this.
const LONGEST_VALUE: usize = 60;
