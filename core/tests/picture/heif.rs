//! Files of the HEIF family, put together box by box.

use self_check_core::metadata::PictureFile;

use crate::files::some_notes;

fn named(name: &[u8; 4], content: &[u8]) -> Vec<u8> {
    let length = (8 + content.len()) as u32;
    [&length.to_be_bytes()[..], name, content].concat()
}

/// A file whose item 1 is a camera's notes, which stand where the box of `places` says; `behind` stands
/// behind the boxes that describe.
pub fn heif_with_notes(places: &[u8], behind: &[u8]) -> Vec<u8> {
    let item = named(b"infe", b"\x02\0\0\0\0\x01\0\0Exif\0");
    let items = named(b"iinf", &[&[0, 0, 0, 0, 0, 1][..], &item].concat());
    let described = [&[0; 4][..], &items, &named(b"iloc", places)].concat();
    [
        named(b"ftyp", b"heic\0\0\0\0mif1heic"),
        named(b"meta", &described),
        named(b"mdat", behind),
    ]
    .concat()
}

/// Where the notes begin in a file with one place of this kind: the boxes before them are always as long.
fn one_place(from: u32, length: usize) -> Vec<u8> {
    let place = [from, length as u32].map(u32::to_be_bytes).concat();
    [&[0, 0, 0, 0, 0x44, 0, 0, 1, 0, 1, 0, 0, 0, 1][..], &place].concat()
}

/// A file with a camera's notes that name its maker.
pub fn heif() -> Vec<u8> {
    let notes = [&[0; 4][..], &some_notes()].concat();
    let empty = heif_with_notes(&one_place(0, notes.len()), b"");
    heif_with_notes(&one_place(empty.len() as u32, notes.len()), &notes)
}

#[test]
fn notes_in_heif_are_read_where_the_file_says_they_stand() {
    let read = PictureFile::read(&heif()).unwrap();
    assert!(read.metadata.has_device && read.is_read_whole(), "{read:?}");
    let far = heif_with_notes(&one_place(1 << 20, 99), &some_notes());
    let read = PictureFile::read(&far).unwrap();
    assert!(read.metadata.has_unread, "{read:?}");
}
