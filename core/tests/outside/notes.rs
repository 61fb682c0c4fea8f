//! Notes written by exiftool, each alone, into files of several formats.

use self_check_core::metadata::{Format, Leftover, Metadata, PictureFile, Precision, leftovers};
use std::path::{Path, PathBuf};

/// What is written, and what must then be told: place, time, device.
const CASES: [(&[&str], Option<Precision>, bool, bool); 9] = [
    (
        &[
            "-EXIF:GPSLatitude=51.4772",
            "-EXIF:GPSLatitudeRef=N",
            "-EXIF:GPSLongitude=0.0014",
            "-EXIF:GPSLongitudeRef=W",
        ],
        Some(Precision::House),
        false,
        false,
    ),
    (
        &["-XMP:GPSLatitude=51.4772", "-XMP:GPSLongitude=-0.0014"],
        Some(Precision::House),
        false,
        false,
    ),
    (
        &["-XMP-photoshop:City=Somewhere"],
        Some(Precision::Name),
        false,
        false,
    ),
    (
        &["-EXIF:DateTimeOriginal=2026:08:01 12:00:00"],
        None,
        true,
        false,
    ),
    (&["-XMP:CreateDate=2026:08:01 12:00:00"], None, true, false),
    (
        &["-EXIF:Make=A maker", "-EXIF:Model=A camera"],
        None,
        false,
        true,
    ),
    (&["-XMP-tiff:Model=A camera"], None, false, true),
    (
        &["-EXIF:ImageDescription=A key", "-EXIF:Artist=Somebody"],
        None,
        false,
        false,
    ),
    (
        &["-EXIF:SerialNumber=1", "-EXIF:GPSDateStamp=2026:08:01"],
        None,
        true,
        true,
    ),
];

/// The notes of the press fit a JPEG alone.
const PRESS: [(&[&str], Option<Precision>, bool, bool); 2] = [
    (
        &["-IPTC:City=Somewhere"],
        Some(Precision::Name),
        false,
        false,
    ),
    (&["-IPTC:DateCreated=2026:08:01"], None, true, false),
];

fn bare_files(folder: &Path) -> Vec<PathBuf> {
    let picture = image::DynamicImage::from(image::RgbImage::from_fn(64, 48, |x, y| {
        image::Rgb([(3 * x) as u8, (5 * y) as u8, 120])
    }));
    let mut files: Vec<PathBuf> = ["jpg", "png", "webp"]
        .iter()
        .map(|ending| {
            let path = folder.join(format!("bare.{ending}"));
            picture.save(&path).unwrap();
            path
        })
        .collect();
    files.extend(["heic", "avif"].map(|ending| heif(folder, ending)));
    files
}

/// A file of the HEIF family, by Pillow and its own helper.
fn heif(folder: &Path, ending: &str) -> PathBuf {
    let path = folder.join(format!("bare.{ending}"));
    let script = "import sys; from PIL import Image; from pillow_heif import register_heif_opener as heif; heif(); \
        Image.new('RGB', (64, 48), 'teal').save(sys.argv[1])";
    let written = super::program("SELF_CHECK_PYTHON")
        .args(["-c", script])
        .arg(&path)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&written.stderr);
    assert!(written.status.success(), "{ending}: {said}");
    path
}

fn exiftool(arguments: &[&str], file: &Path) {
    let output = super::program("SELF_CHECK_EXIFTOOL")
        .args(["-q", "-overwrite_original"])
        .args(arguments)
        .arg(file)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(
        output.status.success(),
        "{arguments:?} {}: {said}",
        file.display()
    );
}

#[test]
fn notes_are_found_in_every_format() {
    let folder = super::folder("notes");
    let mut read = 0;
    for bare in bare_files(&folder) {
        let file = PictureFile::read(&std::fs::read(&bare).unwrap()).unwrap();
        let told = file.metadata;
        assert_eq!(told, Metadata::default());
        let press = PRESS.iter().filter(|_| file.format == Format::Jpeg);
        for (arguments, place, time, device) in CASES.iter().chain(press) {
            let path = bare.with_file_name(format!("with.{}", bare.extension().unwrap().display()));
            std::fs::copy(&bare, &path).unwrap();
            exiftool(arguments, &path);
            let bytes = std::fs::read(&path).unwrap();
            let told = PictureFile::read(&bytes).unwrap().metadata;
            let context = format!("{} {arguments:?} {told:?}", path.display());
            assert_eq!(
                told.place.map(|place| place.precision()),
                *place,
                "{context}"
            );
            assert_eq!(
                (told.has_time, told.has_device),
                (*time, *device),
                "{context}"
            );
            assert!(!told.has_unread, "{context}");
            let in_words = arguments
                .iter()
                .any(|argument| argument.contains("Description"));
            assert_eq!(told.has_others, in_words, "{context}");
            if matches!(file.format, Format::Jpeg | Format::Png) {
                assert!(
                    leftovers(&bytes).unwrap().contains(&Leftover::Notes),
                    "{context}"
                );
            }
            read += 1;
        }
    }
    assert_eq!(read, 5 * CASES.len() + PRESS.len());
}

/// Captions, names and previews: what is neither place nor time nor device.
#[test]
fn other_notes_are_found() {
    let folder = super::folder("others");
    let bare = bare_files(&folder);
    let preview = format!("-EXIF:ThumbnailImage<={}", bare[0].display());
    let everywhere = [
        "-EXIF:ImageDescription=A caption",
        "-EXIF:UserComment=A comment",
        "-EXIF:Copyright=Somebody",
        "-XMP-dc:Description=A caption",
        "-XMP-dc:Creator=Somebody",
        &preview,
    ];
    let jpeg = ["-Comment=A comment", "-IPTC:Caption-Abstract=A caption"];
    let png = ["-PNG:Comment=A comment"];
    let mut read = 0;
    for bare in bare {
        let with = bare.with_file_name(format!("with.{}", bare.extension().unwrap().display()));
        let format = PictureFile::read(&std::fs::read(&bare).unwrap())
            .unwrap()
            .format;
        let own: &[&str] = match format {
            Format::Jpeg => &jpeg,
            Format::Png => &png,
            _ => &[],
        };
        for argument in everywhere.iter().chain(own) {
            std::fs::copy(&bare, &with).unwrap();
            exiftool(&[argument], &with);
            let told = PictureFile::read(&std::fs::read(&with).unwrap())
                .unwrap()
                .metadata;
            let wanted = Metadata {
                has_others: true,
                ..Metadata::default()
            };
            assert_eq!(told, wanted, "{} {argument}", with.display());
            read += 1;
        }
    }
    assert_eq!(read, 5 * everywhere.len() + jpeg.len() + png.len());
}

/// What exiftool takes all notes out of has none by both judges.
#[test]
fn nothing_is_left_where_exiftool_left_nothing() {
    let folder = super::folder("emptied");
    for bare in bare_files(&folder) {
        exiftool(CASES[0].0, &bare);
        exiftool(&["-all="], &bare);
        let bytes = std::fs::read(&bare).unwrap();
        let file = PictureFile::read(&bytes).unwrap();
        assert_eq!(file.metadata.place, None, "{}", bare.display());
        if matches!(file.format, Format::Jpeg | Format::Png) {
            assert_eq!(leftovers(&bytes), Ok(vec![]), "{}", bare.display());
        }
    }
}
