//! What is read from files that hold each kind of note; the notes are put together here, byte by
//! byte or with the library's own writer. `tests/outside` has the same written by another program.

use exif::experimental::Writer;
use exif::{Field, In, Rational, Tag, Value};
use image::{DynamicImage, ImageFormat, RgbImage};
use self_check_core::metadata::{
    FileError, Format, Leftover, Metadata, PictureFile, Precision, leftovers, without_leftovers,
};
use self_check_core::picture::Size;
use std::io::Cursor;

/// A small picture with no notes.
pub fn plain(format: ImageFormat) -> Vec<u8> {
    let picture = RgbImage::from_fn(48, 32, |x, y| {
        image::Rgb([(5 * x) as u8, (7 * y) as u8, 99])
    });
    let mut bytes = Cursor::new(Vec::new());
    DynamicImage::from(picture)
        .write_to(&mut bytes, format)
        .unwrap();
    bytes.into_inner()
}

fn text(tag: Tag, text: &str) -> Field {
    Field {
        tag,
        ifd_num: In::PRIMARY,
        value: Value::Ascii(vec![text.as_bytes().to_vec()]),
    }
}

pub fn fractions(tag: Tag, parts: &[(u32, u32)]) -> Field {
    let parts = parts.iter().map(|&(num, denom)| Rational { num, denom });
    Field {
        tag,
        ifd_num: In::PRIMARY,
        value: Value::Rational(parts.collect()),
    }
}

pub fn tiff(fields: &[Field]) -> Vec<u8> {
    let mut writer = Writer::new();
    fields.iter().for_each(|field| writer.push_field(field));
    let mut bytes = Cursor::new(Vec::new());
    writer.write(&mut bytes, false).unwrap();
    bytes.into_inner()
}

/// Puts a segment behind the first two bytes of a JPEG.
pub fn with_segment(jpeg: &[u8], marker: u8, mark: &[u8], content: &[u8]) -> Vec<u8> {
    let length = (2 + mark.len() + content.len()) as u16;
    let head = [0xff, marker];
    [
        &jpeg[..2],
        &head,
        &length.to_be_bytes(),
        mark,
        content,
        &jpeg[2..],
    ]
    .concat()
}

/// Puts a chunk behind the header of a PNG. The sum is not looked at, and left out.
pub fn with_chunk(png: &[u8], name: &[u8; 4], content: &[u8]) -> Vec<u8> {
    const HEADER: usize = 8 + 25;
    let length = (content.len() as u32).to_be_bytes();
    [
        &png[..HEADER],
        &length,
        name,
        content,
        &[0; 4],
        &png[HEADER..],
    ]
    .concat()
}

/// Puts a chunk that says it has this length behind those of a WebP.
pub fn webp_with_chunk(name: &[u8; 4], length: [u8; 4], content: &[u8]) -> Vec<u8> {
    let mut webp = plain(ImageFormat::WebP);
    webp.extend([&name[..], &length, content].concat());
    let length = (webp.len() - 8) as u32;
    webp[4..8].copy_from_slice(&length.to_le_bytes());
    webp
}

/// A file of each format but JPEG that can hold a camera's or a picture program's notes, with some.
pub fn files_with_notes() -> Vec<Vec<u8>> {
    let notes = some_notes();
    let length = (notes.len() as u32).to_le_bytes();
    let packet = b"<x:xmpmeta><photoshop:City>Somewhere</photoshop:City></x:xmpmeta>";
    let block = [&b"\x21\xfe"[..], &[packet.len() as u8], packet, b"\0;"].concat();
    vec![
        webp_with_chunk(b"EXIF", length, &notes),
        with_chunk(&plain(ImageFormat::Png), b"eXIf", &notes),
        [&b"GIF89a\x01\0\x01\0\0\0\0"[..], &block].concat(),
    ]
}

/// A camera's notes that name its maker.
pub fn some_notes() -> Vec<u8> {
    tiff(&[text(Tag::Make, "A maker")])
}

/// A JPEG with notes of all three kinds.
pub fn jpeg_with_everything() -> Vec<u8> {
    let fields = [
        fractions(Tag::GPSLatitude, &[(51, 1), (28, 1), (3812, 100)]),
        text(Tag::GPSLatitudeRef, "N"),
        fractions(Tag::GPSLongitude, &[(0, 1), (0, 1), (531, 100)]),
        text(Tag::GPSLongitudeRef, "W"),
        text(Tag::DateTimeOriginal, "2026:08:01 12:00:00"),
        text(Tag::Model, "A camera"),
    ];
    let jpeg = plain(ImageFormat::Jpeg);
    let jpeg = with_segment(&jpeg, 0xe1, b"Exif\0\0", &tiff(&fields));
    let xmp = b"<x:xmpmeta><photoshop:City>Somewhere</photoshop:City></x:xmpmeta>";
    let jpeg = with_segment(&jpeg, 0xe1, b"http://ns.adobe.com/xap/1.0/\0", xmp);
    let city = b"8BIM\x04\x04\0\0\0\0\0\x0e\x1c\x02\x5a\0\x09Somewhere";
    with_segment(&jpeg, 0xed, b"Photoshop 3.0\0", city)
}

fn told(bytes: &[u8]) -> Metadata {
    PictureFile::read(bytes).unwrap().metadata
}

fn told_by_exif(fields: &[Field]) -> Metadata {
    let plain = plain(ImageFormat::Jpeg);
    told(&with_segment(&plain, 0xe1, b"Exif\0\0", &tiff(fields)))
}

#[test]
fn plain_files_have_their_format_and_size_and_tell_nothing() {
    for (written, format) in [
        (ImageFormat::Jpeg, Format::Jpeg),
        (ImageFormat::Png, Format::Png),
        (ImageFormat::WebP, Format::WebP),
        (ImageFormat::Gif, Format::Gif),
    ] {
        let file = PictureFile::read(&plain(written)).unwrap();
        assert_eq!(file.format, format);
        let size = Size {
            width: 48,
            height: 32,
        };
        assert_eq!(file.size, Some(size));
        assert_eq!(file.metadata, Metadata::default());
        assert_eq!(file.quantisation.is_some(), format == Format::Jpeg);
        assert!(!file.is_animated);
    }
}

#[test]
fn everything_in_a_jpeg_is_told() {
    let told = told(&jpeg_with_everything());
    let place = told.place.unwrap();
    // A hundredth of a second of arc is 0.31 m.
    assert!((place.within.unwrap().get() - 0.309).abs() < 0.001);
    assert_eq!(place.precision(), Precision::House);
    assert!(place.is_named && told.has_time && told.has_device && !told.has_unread);
}

#[test]
fn place_is_as_precise_as_its_coarser_coordinate() {
    let both = |seconds: &[(u32, u32)]| {
        let latitude = fractions(Tag::GPSLatitude, seconds);
        let fine = [(4, 1), (5, 1), (6_000, 1_000)];
        let told = told_by_exif(&[latitude, fractions(Tag::GPSLongitude, &fine)]);
        told.place.map(|place| place.precision())
    };
    assert_eq!(both(&[(51, 1), (28, 1), (38, 1)]), Some(Precision::House));
    assert_eq!(both(&[(51, 1), (285, 10), (0, 1)]), Some(Precision::Street));
    assert_eq!(both(&[(51, 1), (28, 1), (0, 1)]), Some(Precision::Town));
    assert_eq!(both(&[(51, 1), (0, 1), (0, 1)]), Some(Precision::Town));
    assert_eq!(both(&[(0, 0), (0, 0), (0, 0)]), None);
}

#[test]
fn place_is_no_more_precise_than_the_error_beside_it() {
    let fine = [(4, 1), (5, 1), (600, 100)];
    let told = told_by_exif(&[
        fractions(Tag::GPSLatitude, &fine),
        fractions(Tag::GPSLongitude, &fine),
        fractions(Tag::GPSHPositioningError, &[(4000, 10)]),
    ]);
    assert_eq!(told.place.unwrap().precision(), Precision::Street);
}

#[test]
fn nought_and_nought_is_no_place() {
    let nought = [(0, 1), (0, 1), (0, 100)];
    let told = told_by_exif(&[
        fractions(Tag::GPSLatitude, &nought),
        fractions(Tag::GPSLongitude, &nought),
    ]);
    assert_eq!(told.place, None);
}

#[test]
fn fields_of_blanks_tell_nothing() {
    let told = told_by_exif(&[
        text(
            Tag::DateTime,
            "    :  :     :  :  ".replace(':', " ").as_str(),
        ),
        text(Tag::Make, "   "),
    ]);
    assert!(!told.has_time && !told.has_device);
}

#[test]
fn coordinates_of_picture_programs_are_read_with_their_precision() {
    let with = |latitude: &str, longitude: &str| {
        let packet = format!(
            "\0\0\0\0<x:xmpmeta><r exif:GPSLatitude=\"{latitude}\" exif:GPSLongitude=\"{longitude}\"/>"
        );
        let content = [b"XML:com.adobe.xmp\0", packet.as_bytes()].concat();
        let png = with_chunk(&plain(ImageFormat::Png), b"iTXt", &content);
        told(&png).place.map(|place| place.precision())
    };
    assert_eq!(with("51,28.63533N", "0,0.08850W"), Some(Precision::House));
    assert_eq!(with("51,28.6N", "0,0.1W"), Some(Precision::Street));
    assert_eq!(with("51,28,38N", "0,0,5W"), Some(Precision::House));
    assert_eq!(with("51N", "0W"), Some(Precision::Town));
    assert_eq!(with("", ""), None);
}

#[test]
fn notes_in_png_and_webp_are_read() {
    let notes = tiff(&[
        text(Tag::DateTime, "2026:08:01 12:00:00"),
        text(Tag::Make, "A maker"),
    ]);
    let png = told(&with_chunk(&plain(ImageFormat::Png), b"eXIf", &notes));
    assert!(png.has_time && png.has_device && png.place.is_none());

    let mut webp = plain(ImageFormat::WebP);
    webp.extend(b"EXIF");
    webp.extend((notes.len() as u32).to_le_bytes());
    webp.extend(&notes);
    let webp = told(&webp);
    assert!(webp.has_time && webp.has_device && webp.place.is_none());
}

#[test]
fn notes_that_make_no_sense_are_told_and_the_file_is_still_read() {
    let plain = plain(ImageFormat::Jpeg);
    let broken = with_segment(&plain, 0xe1, b"Exif\0\0", b"II*\0\xff\xff\xff\xff");
    let file = PictureFile::read(&broken).unwrap();
    assert!(file.metadata.has_unread && file.size.is_some());
}

/// The end of a file may hold its notes: a file that lacks it never says that there are none.
#[test]
fn file_that_breaks_off_is_not_read_whole() {
    let mut files = files_with_notes();
    files.extend([jpeg_with_everything(), plain(ImageFormat::Gif)]);
    for whole in files {
        let read = PictureFile::read(&whole).unwrap();
        assert!(read.is_read_whole(), "{read:?}");
        let part = PictureFile::read(&whole[..whole.len() - 3]).unwrap();
        assert!(!part.is_read_whole(), "{part:?}");
    }
    // Boxes with a length of their own, one of eight bytes, and one up to the end of the file.
    let front = b"\0\0\0\x14ftypheic\0\0\0\0heic\0\0\0\x0cmeta\0\0\0\0";
    for last in [
        &b"\0\0\0\x0cmdatabcd"[..],
        b"\0\0\0\x01mdat\0\0\0\0\0\0\0\x14abcd",
    ] {
        let whole = [front, last].concat();
        assert!(!PictureFile::read(&whole).unwrap().breaks_off);
        for missing in 1..last.len() {
            let part = PictureFile::read(&whole[..whole.len() - missing]).unwrap();
            assert!(part.breaks_off, "{missing}");
        }
    }
    let open = [&front[..], b"\0\0\0\0mdatabcd"].concat();
    assert!(!PictureFile::read(&open).unwrap().breaks_off);
    assert!(PictureFile::read(&front[..20]).unwrap().breaks_off);
}

#[test]
fn packet_without_an_end_is_told_as_unread() {
    let with = |packet: &[u8]| {
        let block = [&b"\x21\xfe"[..], &[packet.len() as u8], packet, b"\0;"].concat();
        told(&[&b"GIF89a\x01\0\x01\0\0\0\0"[..], &block].concat())
    };
    let whole = with(b"<x:xmpmeta><photoshop:City>Somewhere</photoshop:City></x:xmpmeta>");
    assert!(whole.place.is_some() && !whole.has_unread);
    let part = with(b"<x:xmpmeta><photoshop:City>Somewhere");
    assert!(part.place.is_some() && part.has_unread);
}

#[test]
fn animated_pictures_are_told() {
    let png = with_chunk(&plain(ImageFormat::Png), b"acTL", &[0; 8]);
    assert!(PictureFile::read(&png).unwrap().is_animated);
    let gif = |views: usize| {
        let view = b"\x2c\0\0\0\0\x01\0\x01\0\0\x02\x02\x44\x01\0";
        [&b"GIF89a\x01\0\x01\0\0\0\0"[..], &view.repeat(views), b";"].concat()
    };
    assert!(!PictureFile::read(&gif(1)).unwrap().is_animated);
    assert!(PictureFile::read(&gif(2)).unwrap().is_animated);
}

#[test]
fn quantisation_is_the_mean_of_ten_steps() {
    // Quality 100 rounds to whole numbers: every step is 1.
    let mut bytes = Vec::new();
    let picture = RgbImage::new(16, 16);
    image::codecs::jpeg::JpegEncoder::new_with_quality(&mut bytes, 100)
        .encode_image(&picture)
        .unwrap();
    assert_eq!(PictureFile::read(&bytes).unwrap().quantisation, Some(1.0));
}

#[test]
fn files_that_are_no_pictures_are_refused_with_the_reason() {
    assert_eq!(PictureFile::read(b""), Err(FileError::Empty));
    assert_eq!(PictureFile::read(b"%PDF-1.7"), Err(FileError::NotAPicture));
    assert_eq!(
        PictureFile::read(&[0xff, 0xd8, 0xff]),
        Err(FileError::Broken)
    );
    assert_eq!(
        PictureFile::read(b"\x89PNG\r\n\x1a\n"),
        Err(FileError::Broken)
    );
}

#[test]
fn leftovers_of_plain_files_are_none() {
    for format in [ImageFormat::Jpeg, ImageFormat::Png] {
        assert_eq!(leftovers(&plain(format)), Ok(vec![]), "{format:?}");
    }
}

#[test]
fn leftovers_are_found_wherever_they_stand() {
    let jpeg = jpeg_with_everything();
    assert_eq!(leftovers(&jpeg), Ok(vec![Leftover::Notes; 3]));
    let comment = with_segment(&plain(ImageFormat::Jpeg), 0xfe, b"", b"12 Some Street");
    assert_eq!(leftovers(&comment), Ok(vec![Leftover::Notes]));
    let png = plain(ImageFormat::Png);
    let text = with_chunk(&png, b"tEXt", b"Title\0A key");
    assert_eq!(leftovers(&text), Ok(vec![Leftover::Notes]));
    let unknown = with_chunk(&png, b"caBX", b"who knows");
    assert_eq!(leftovers(&unknown), Ok(vec![Leftover::Unknown]));
    for format in [ImageFormat::Jpeg, ImageFormat::Png] {
        let mut longer = plain(format);
        longer.extend(b"a film");
        assert_eq!(leftovers(&longer), Ok(vec![Leftover::AfterTheEnd]));
    }
}

#[test]
fn file_without_its_leftovers_is_the_plain_file() {
    let plain_jpeg = plain(ImageFormat::Jpeg);
    assert_eq!(
        without_leftovers(&jpeg_with_everything()).as_ref(),
        Ok(&plain_jpeg)
    );
    let profile = with_segment(&plain_jpeg, 0xe2, b"ICC_PROFILE\0", b"\x01\x01 by somebody");
    assert_eq!(leftovers(&profile), Ok(vec![Leftover::Profile]));
    assert_eq!(without_leftovers(&profile).as_ref(), Ok(&plain_jpeg));

    let plain_png = plain(ImageFormat::Png);
    let mut png = with_chunk(&plain_png, b"tEXt", b"Title\0A key");
    png = with_chunk(&png, b"iCCP", b"by somebody");
    png.extend(b"a film");
    assert_eq!(
        leftovers(&png),
        Ok(vec![
            Leftover::Profile,
            Leftover::Notes,
            Leftover::AfterTheEnd
        ])
    );
    assert_eq!(without_leftovers(&png), Ok(plain_png));
}
