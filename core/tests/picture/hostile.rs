//! Files that end anywhere, have any byte changed, or are made of chance: each is read or refused,
//! none stops the program.

use image::ImageFormat;
use proptest::prelude::*;
use self_check_core::metadata::{Format, PictureFile, leftovers, without_leftovers};
use std::sync::LazyLock;

use crate::files::{files_with_notes, jpeg_with_everything, plain};
use crate::{floods, heif, unread};

static GOOD: LazyLock<Vec<Vec<u8>>> = LazyLock::new(good_files);

/// Files that are whole and tell, or ask for, something that is not read.
static STRANGE: LazyLock<Vec<Vec<u8>>> = LazyLock::new(|| {
    let floods = floods::files().into_iter().map(|(_, file)| file);
    unread::files().into_iter().chain(floods).collect()
});

fn good_files() -> Vec<Vec<u8>> {
    let mut files = vec![jpeg_with_everything(), heif::heif()];
    files.extend(files_with_notes());
    let formats = [
        ImageFormat::Jpeg,
        ImageFormat::Png,
        ImageFormat::WebP,
        ImageFormat::Gif,
    ];
    files.extend(formats.map(plain));
    files.push(b"BM\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\x03\0\0\0\x02\0\0\0".to_vec());
    files.push(b"\0\0\0\x1cftypheic\0\0\0\0mif1heicmiaf\0\0\0\x0cmeta\0\0\0\0".to_vec());
    files.push(b"II*\0\x08\0\0\0\x01\0\x0f\x01\x02\0\x04\0\0\0abc\0\0\0\0\0".to_vec());
    files
}

/// Whether a file of this format says where it ends.
fn is_ended(format: Format) -> bool {
    !matches!(format, Format::Tiff | Format::Bmp)
}

#[test]
fn every_prefix_of_a_good_file_is_read_or_refused() {
    let mut refused = 0;
    for file in &*GOOD {
        assert!(PictureFile::read(file).is_ok_and(|read| read.is_read_whole()));
        for end in 0..file.len() {
            match PictureFile::read(&file[..end]) {
                Err(_) => refused += 1,
                Ok(part) => assert!(!part.is_read_whole() || !is_ended(part.format), "{part:?}"),
            }
            let whole = leftovers(&file[..end]);
            assert!(
                whole.is_err(),
                "a part of a file is no finished file: {end}"
            );
        }
    }
    assert!(refused > 500, "{refused}");
}

/// All of the first bytes, and of the rest of a file of megabytes some places.
#[test]
fn prefixes_of_strange_files_never_stop_the_program() {
    for file in &*STRANGE {
        let step = file.len() / 100 + 1;
        for end in (0..file.len().min(300)).chain((0..file.len()).step_by(step)) {
            let _ = PictureFile::read(&file[..end]);
            let _ = leftovers(&file[..end]);
        }
    }
}

proptest! {
    #[test]
    fn changed_bytes_never_stop_the_program(
        which in any::<prop::sample::Index>(),
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..8),
    ) {
        let files: Vec<_> = GOOD.iter().chain(&*STRANGE).collect();
        let mut file = files[which.index(files.len())].clone();
        for (place, value) in changes {
            let place = place.index(file.len());
            file[place] = value;
        }
        let _ = PictureFile::read(&file);
        if let Ok(bare) = without_leftovers(&file) {
            prop_assert_eq!(leftovers(&bare), Ok(vec![]));
        }
    }

    #[test]
    fn chance_behind_a_known_beginning_never_stops_the_program(
        which in any::<prop::sample::Index>(), keep in 2_usize..40, tail in prop::collection::vec(any::<u8>(), 0..600),
    ) {
        let file = &GOOD[which.index(GOOD.len())];
        let made_up = [&file[..keep.min(file.len())], &tail].concat();
        let _ = PictureFile::read(&made_up);
        let _ = leftovers(&made_up);
    }
}
