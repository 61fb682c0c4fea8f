//! Notes that are there and are not read: the file is then never said to have none.

use exif::{In, SRational, Tag, Value};
use image::ImageFormat;
use self_check_core::metadata::{JpegInParts, PictureFile};

use crate::files::{fractions, plain, some_notes, tiff, webp_with_chunk, with_segment};

fn read(bytes: &[u8]) -> PictureFile {
    PictureFile::read(bytes).unwrap()
}

fn press_file(resources: &[u8]) -> Vec<u8> {
    let plain = plain(ImageFormat::Jpeg);
    with_segment(&plain, 0xed, b"Photoshop 3.0\0", resources)
}

fn with_press(resources: &[u8]) -> PictureFile {
    read(&press_file(resources))
}

/// A resource of a picture program with no name.
fn resource(signature: &[u8; 4], id: u16, content: &[u8]) -> Vec<u8> {
    let length = (content.len() as u32).to_be_bytes();
    [
        signature,
        &id.to_be_bytes()[..],
        &[0; 2],
        &length,
        content,
        &[0][..content.len() % 2],
    ]
    .concat()
}

const PRESS: u16 = 0x0404;
const CITY: &[u8] = b"\x1c\x02\x5a\0\x09Somewhere";

fn too_long_resource() -> Vec<u8> {
    [&b"8BIM\x04\x04\0\0\xff\xff\xff\xff"[..], CITY].concat()
}

/// One of each sort.
pub fn files() -> Vec<Vec<u8>> {
    let strange = resource(b"8BIM", PRESS, &[b"\x1b", CITY].concat());
    let film = b"\0\0\0\x18ftypmp42 and a place in it";
    vec![
        press_file(&too_long_resource()),
        press_file(&[resource(b"MeSa", 0x1b58, b"odd"), strange].concat()),
        with_latitude(signed_latitude()),
        too_long_chunk(),
        [&plain(ImageFormat::Jpeg)[..], film].concat(),
    ]
}

#[test]
fn resources_that_make_no_sense_are_unread() {
    for broken in [
        &too_long_resource()[..],
        b"8BIM\x04",
        b"\x01\x02\x03\x04 and more",
        b"8B",
    ] {
        let read = with_press(broken);
        assert!(!read.is_read_whole(), "{read:?}");
    }
    // None, other ones alone, and zeros to fill up.
    let other = resource(b"8BIM", 0x03ed, b"odd");
    for sound in [&[][..], &other, &[&other[..], &[0; 5]].concat()] {
        assert!(with_press(sound).is_read_whole(), "{sound:?}");
    }
}

#[test]
fn press_notes_behind_resources_of_any_signature_are_read() {
    let before = resource(b"MeSa", 0x1b58, b"odd");
    let read = with_press(&[before, resource(b"8BIM", PRESS, CITY)].concat());
    assert!(read.metadata.place.is_some() && read.is_read_whole());
    // Of two, the second is read too.
    let first = resource(b"8BIM", PRESS, b"\x1c\x02\x05\0\x01A");
    let read = with_press(&[first, resource(b"8BIM", PRESS, CITY)].concat());
    assert!(read.metadata.place.is_some() && read.is_read_whole());
}

#[test]
fn press_notes_that_stop_making_sense_are_unread() {
    let told = |records: &[u8]| with_press(&resource(b"8BIM", PRESS, records));
    let title = b"\x1c\x02\x05\0\x01A";
    assert!(told(title).is_read_whole());
    assert!(told(&[title, &[0; 3][..]].concat()).is_read_whole());
    let long = [
        &b"\x1c\x02\x5a\x80\x04\0\0\0\x09Somewhere"[..],
        &[b' '; 1 << 15],
    ]
    .concat();
    for strange in [
        &[&title[..], b"\x1b", CITY].concat()[..],
        &[&title[..], b"\x1c\x02"].concat(),
        &[&title[..], b"\x1c\x02\x5a\0"].concat(),
        &long,
    ] {
        let read = told(strange);
        assert!(!read.is_read_whole(), "{read:?}");
    }
}

/// A picture with a longitude as it should be, and this for its latitude.
fn with_latitude(value: Value) -> Vec<u8> {
    let fine = [(4, 1), (5, 1), (600, 100)];
    let mut latitude = fractions(Tag::GPSLatitude, &fine);
    latitude.value = value;
    let notes = tiff(&[latitude, fractions(Tag::GPSLongitude, &fine)]);
    with_segment(&plain(ImageFormat::Jpeg), 0xe1, b"Exif\0\0", &notes)
}

fn signed_latitude() -> Value {
    let parts = [51, 28, 38].map(|num| SRational { num, denom: 1 });
    Value::SRational(parts.to_vec())
}

#[test]
fn coordinates_of_another_kind_are_unread() {
    for value in [
        signed_latitude(),
        Value::Double(vec![51.4772]),
        Value::Ascii(vec![b"51,28.6N".to_vec()]),
        fractions(Tag::GPSLatitude, &[(51, 0), (28, 1), (38, 1)]).value,
    ] {
        let read = read(&with_latitude(value));
        assert!(!read.is_read_whole(), "{read:?}");
    }
    // What cameras write that know of no position.
    let read = read(&with_latitude(
        fractions(Tag::GPSLatitude, &[(0, 0); 3]).value,
    ));
    assert!(read.metadata.place.is_none() && read.is_read_whole());
}

/// Each picture in a file can have its own: the one that tells counts.
#[test]
fn coordinate_that_is_nought_does_not_hide_another() {
    let mut fields = Vec::new();
    for (number, seconds) in [(0, 0), (1, 38)] {
        for tag in [Tag::GPSLatitude, Tag::GPSLongitude] {
            let mut field = fractions(tag, &[(seconds, 1); 3]);
            field.ifd_num = In(number);
            fields.push(field);
        }
    }
    let file = with_segment(&plain(ImageFormat::Jpeg), 0xe1, b"Exif\0\0", &tiff(&fields));
    assert!(read(&file).metadata.place.is_some());
}

fn too_long_chunk() -> Vec<u8> {
    let length = [0xff, 0xff, 0xff, 0x7f];
    webp_with_chunk(b"EXIF", length, &some_notes())
}

#[test]
fn chunk_that_is_longer_than_the_file_is_unread() {
    assert!(!read(&too_long_chunk()).is_read_whole());
    let padded = [plain(ImageFormat::WebP), vec![0; 5]].concat();
    assert!(read(&padded).is_read_whole());
}

#[test]
fn what_follows_the_end_of_a_picture_is_unread() {
    for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::Gif] {
        let with = |behind: &[u8]| read(&[&plain(format), behind].concat());
        let film = with(b"\0\0\0\x18ftypmp42 and a place in it");
        assert!(!film.is_read_whole() && !film.breaks_off, "{film:?}");
        for padding in [&b""[..], &[0; 99], &[0xff; 9], b"\r\n"] {
            assert!(with(padding).is_read_whole(), "{format:?} {padding:?}");
        }
    }
}

/// A picture with notes of a place, as phones put one behind another.
fn second() -> Vec<u8> {
    let fine = [(4, 1), (5, 1), (600, 100)];
    let place = [Tag::GPSLatitude, Tag::GPSLongitude].map(|tag| fractions(tag, &fine));
    with_segment(&plain(ImageFormat::Jpeg), 0xe1, b"Exif\0\0", &tiff(&place))
}

#[test]
fn picture_behind_another_is_read_like_the_first() {
    let first = plain(ImageFormat::Jpeg);
    let told = |behind: &[u8]| read(&[&first, behind].concat());
    assert!(told(&[]).metadata.place.is_none());
    for between in [&b""[..], &[0; 5], &[0xff; 3], b"\r\n"] {
        let two = told(&[between, &second()].concat());
        assert!(
            two.metadata.place.is_some() && two.is_read_whole(),
            "{two:?}"
        );
        // It may show what is covered in the first.
        assert!(two.metadata.has_others);
        assert_eq!(two.size, read(&first).size);
    }
    let third = told(&[first.clone(), second()].concat());
    assert!(third.metadata.place.is_some() && third.is_read_whole());
    // Without its end it may lack notes; the first picture is whole.
    let second = second();
    for cut in 1..second.len() {
        let cut = told(&second[..cut]);
        let is_padding = cut == read(&first);
        assert!(
            !cut.breaks_off && (cut.has_more_behind || is_padding),
            "{cut:?}"
        );
    }
    assert!(!told(&second[..second.len() - 1]).is_read_whole());
}

/// Notes longer than are waited for are not read, however much of the file is there at once.
#[test]
fn picture_with_endless_notes_behind_another_is_unread() {
    let segment = [&b"\xff\xe1\xff\xff"[..], &[0; 0xfffd]].concat();
    let long = [&b"\xff\xd8"[..], &segment.repeat(20), &second()[2..]].concat();
    let file = [plain(ImageFormat::Jpeg), long].concat();
    let at_once = read(&file);
    assert!(at_once.has_more_behind && at_once.metadata.place.is_none());
    let mut parts = JpegInParts::begin(&file[..5_000]).unwrap();
    file[5_000..]
        .chunks(70_000)
        .for_each(|part| parts.read_on(part));
    assert!(parts.is_done());
    assert_eq!(parts.finish(), at_once);
}

/// Wherever a JPEG is cut once its picture has begun, reading on says what reading it at once says.
#[test]
fn reading_on_is_reading_at_once() {
    let bare = plain(ImageFormat::Jpeg);
    let behind: [&[u8]; 6] = [
        b"",
        b"\0\0 a film",
        &[0; 9],
        &[0xff; 3],
        &[&[0, 0xff, 0xff][..], &second(), b"\0"].concat(),
        &[bare.clone(), second(), b"and a film".to_vec()].concat(),
    ];
    let begun = (0..bare.len()).find(|&end| PictureFile::read(&bare[..end]).is_ok());
    let begun = begun.unwrap();
    for behind in behind {
        let file = [&bare, behind].concat();
        let whole = read(&file);
        for cut in begun..file.len() {
            let mut two = JpegInParts::begin(&file[..cut]).unwrap();
            two.read_on(&file[cut..]);
            assert_eq!(two.finish(), whole, "{cut}");
        }
        let mut bytes = JpegInParts::begin(&file[..begun]).unwrap();
        file[begun..].chunks(1).for_each(|byte| bytes.read_on(byte));
        assert_eq!(bytes.finish(), whole);
    }
}
