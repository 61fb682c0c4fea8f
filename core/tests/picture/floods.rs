//! Small files that ask for far more work or memory than they have bytes. Each is read within a second,
//! by a program that finds the largest of them in some milliseconds, and says what it left.

use image::ImageFormat;
use self_check_core::metadata::PictureFile;
use std::time::{Duration, Instant};

use crate::files::{plain, with_chunk, with_segment};
use crate::heif::heif_with_notes;

/// An entry of a list in TIFF, little end first.
fn entry(tag: u16, kind: u16, count: u32, value: u32) -> Vec<u8> {
    let halves = [tag, kind].map(u16::to_le_bytes).concat();
    let wholes = [count, value].map(u32::to_le_bytes).concat();
    [halves, wholes].concat()
}

const MAKER: u16 = 0x010f;
const SOFTWARE: u16 = 0x0131;
const CAMERA_LIST: u16 = 0x8769;
const BYTES: u16 = 1;
const TEXT: u16 = 2;
const NUMBER: u16 = 4;

/// A block of `length` bytes: one list of `entries`, and the byte `filled` behind it.
fn block(entries: &[Vec<u8>], filled: u8, length: usize) -> Vec<u8> {
    let mut block = b"II*\0\x08\0\0\0".to_vec();
    block.extend((entries.len() as u16).to_le_bytes());
    block.extend(entries.concat());
    block.extend([0; 4]);
    block.resize(length, filled);
    block
}

/// Every entry has one value, of half a megabyte.
fn shared_value(tag: u16) -> Vec<u8> {
    let one = entry(tag, BYTES, 500_000, 520_000);
    block(&vec![one; 43_000], 0, 1 << 20)
}

/// Each byte of the one value is a text of its own.
fn shared_texts(tag: u16) -> Vec<u8> {
    let one = entry(tag, TEXT, 30_000, 34_000);
    block(&vec![one; 2_500], 0, 65_000)
}

/// Each entry names a list, two bytes behind that of the one before, with as many entries as there is room.
fn lists_within_lists() -> Vec<u8> {
    let pointers: Vec<_> = (0..40_000)
        .map(|index| entry(CAMERA_LIST, NUMBER, 1, 500_000 + 2 * index))
        .collect();
    // 0x4e twice is a count of 20,046 entries.
    block(&pointers, 0x4e, 1 << 20)
}

/// A HEIF file that says again and again that its notes stand in 65,535 pieces of no length.
fn pieces_of_nothing() -> Vec<u8> {
    let place = [&1_u16.to_be_bytes()[..], &[0; 2], &[0xff; 2]].concat();
    let places = 60_000_u16;
    let content = [
        &[0; 6][..],
        &places.to_be_bytes(),
        &place.repeat(places.into()),
    ];
    heif_with_notes(&content.concat(), b"")
}

/// Four megabytes of packets of a picture program with nothing in them.
fn packets(before: &[u8]) -> Vec<u8> {
    let packet = b"<x:xmpmeta</x:xmpmeta>";
    [before, &packet.repeat((4 << 20) / packet.len())].concat()
}

fn in_png(tiff: &[u8]) -> Vec<u8> {
    with_chunk(&plain(ImageFormat::Png), b"eXIf", tiff)
}

fn in_jpeg(tiff: &[u8]) -> Vec<u8> {
    with_segment(&plain(ImageFormat::Jpeg), 0xe1, b"Exif\0\0", tiff)
}

pub fn files() -> Vec<(&'static str, Vec<u8>)> {
    vec![
        ("values nobody asks for", in_png(&shared_value(SOFTWARE))),
        ("values that are asked for", in_png(&shared_value(MAKER))),
        ("texts nobody asks for", in_jpeg(&shared_texts(SOFTWARE))),
        ("texts that are asked for", in_jpeg(&shared_texts(MAKER))),
        ("lists within lists", in_png(&lists_within_lists())),
        ("pieces of nothing", pieces_of_nothing()),
        (
            "packets in a bitmap",
            packets(&[&b"BM"[..], &[0; 24]].concat()),
        ),
        ("packets in GIF", packets(b"GIF89a\x01\0\x01\0\0\0\0;")),
        ("packets in TIFF", packets(b"II*\0\0\0\0\0")),
        ("packets in HEIF", heif_with_notes(&[0; 8], &packets(b""))),
    ]
}

#[test]
fn files_that_ask_for_too_much_are_read_within_a_second_and_not_called_empty() {
    for (name, file) in files() {
        let begun = Instant::now();
        let read = PictureFile::read(&file).unwrap();
        let taken = begun.elapsed();
        assert!(taken < Duration::from_secs(1), "{name}: {taken:?}");
        let is_harmless = name.ends_with("nobody asks for");
        assert!(!read.is_read_whole() || is_harmless, "{name}: {read:?}");
        println!("{name}: {} bytes, {taken:?}", file.len());
    }
}
