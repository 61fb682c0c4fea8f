//! The notes that cameras write: Exif.
//!
//! The tags: CIPA DC-008, "Exchangeable image file format for digital still cameras".

use super::tiff::{self, Entry, List, Tag};
use super::{METRES_IN_A_DEGREE, Metadata, Place};
use crate::units::Metres;

/// Reads the notes in a block of TIFF.
pub(super) fn read(tiff: &[u8]) -> Metadata {
    let mut told = Told::default();
    let is_wanted = |tag| meaning(tag).is_some();
    let is_whole = tiff::read(tiff, is_wanted, |entry| told.add(&entry));
    Metadata {
        place: told.place(),
        has_time: told.has_time,
        has_device: told.has_device,
        has_others: told.has_others,
        has_unread: told.has_unread || !is_whole,
    }
}

/// What entries told so far.
#[derive(Default)]
struct Told {
    /// A latitude and a longitude: of the camera, and of what it was pointed at.
    coordinates: [[Option<Written>; 2]; 2],
    /// How far from there it may be, in metres.
    error: Option<f64>,
    is_named: bool,
    has_time: bool,
    has_device: bool,
    has_others: bool,
    has_unread: bool,
}

impl Told {
    fn add(&mut self, entry: &Entry<'_>) {
        match meaning(entry.tag) {
            Some(Meaning::Time) => self.has_time |= entry.is_filled(),
            Some(Meaning::Device) => self.has_device |= entry.is_filled(),
            Some(Meaning::Other) => self.has_others |= entry.is_filled(),
            Some(Meaning::Name) => self.is_named |= entry.is_filled(),
            Some(Meaning::Error) => self.error = self.error.or(first_number(entry)),
            Some(Meaning::Coordinate(pair, side)) => match coordinate(entry) {
                Coordinate::Written(written) => {
                    let slot = self.coordinates.get_mut(pair).and_then(|p| p.get_mut(side));
                    if let Some(slot) = slot {
                        *slot = Some(slot.map_or(written, |other| written.or_finer(other)));
                    }
                }
                Coordinate::Empty => {}
                Coordinate::Unreadable => self.has_unread = true,
            },
            None => {}
        }
    }

    /// A place is told by coordinates, of the camera or of what it was pointed at, or by a name.
    fn place(&self) -> Option<Place> {
        let written = self
            .coordinates
            .iter()
            .filter_map(|&[latitude, longitude]| {
                let (one, other) = (latitude?, longitude?);
                // Nought and nought is what is written where there was no position.
                (one.is_somewhere || other.is_somewhere).then(|| one.metres.max(other.metres))
            })
            .reduce(f64::min);
        let within = written.map(|metres| metres.max(self.error.unwrap_or(0.0)));
        (within.is_some() || self.is_named).then(|| Place {
            within: within.and_then(|metres| Metres::new(metres).ok()),
            is_named: self.is_named,
        })
    }
}

/// How finely a coordinate is written, and whether it is other than nought.
#[derive(Clone, Copy)]
struct Written {
    metres: f64,
    is_somewhere: bool,
}

impl Written {
    /// Of two in one file, the one that tells more.
    fn or_finer(self, other: Self) -> Self {
        let key = |one: &Self| (!one.is_somewhere, one.metres);
        if key(&other) < key(&self) {
            other
        } else {
            self
        }
    }
}

enum Coordinate {
    Written(Written),
    /// Nothing over nothing, as is written where there was no position.
    Empty,
    Unreadable,
}

/// Degrees, minutes and seconds, each a fraction: the least that any of them that is used can tell
/// apart.
fn coordinate(entry: &Entry<'_>) -> Coordinate {
    let Some(parts) = entry.fractions() else {
        return Coordinate::Unreadable;
    };
    let mut written = Written {
        metres: METRES_IN_A_DEGREE,
        is_somewhere: false,
    };
    let mut is_empty = true;
    for ((above, below), unit) in parts.zip([1.0, 60.0, 3600.0]) {
        match (above, below) {
            (0, 0) => continue,
            (_, 0) => return Coordinate::Unreadable,
            (0, _) => {}
            _ => {
                let step = METRES_IN_A_DEGREE / unit / f64::from(below);
                written.metres = written.metres.min(step);
                written.is_somewhere = true;
            }
        }
        is_empty = false;
    }
    if is_empty {
        Coordinate::Empty
    } else {
        Coordinate::Written(written)
    }
}

fn first_number(entry: &Entry<'_>) -> Option<f64> {
    let (above, below) = entry.fractions()?.next()?;
    (below != 0).then(|| f64::from(above) / f64::from(below))
}

#[derive(Clone, Copy)]
enum Meaning {
    Time,
    Device,
    /// Words of any kind, or a small preview.
    Other,
    /// The name of a place.
    Name,
    Error,
    /// Of which pair, and which side of it.
    Coordinate(usize, usize),
}

fn meaning(tag: Tag) -> Option<Meaning> {
    use List::{Camera, Main, Place};
    match tag {
        // Of the last change; of taking and of digitising; by satellite, the hour and the day.
        (Main, 0x0132) | (Camera, 0x9003 | 0x9004) | (Place, 0x07 | 0x1d) => Some(Meaning::Time),
        // Maker and model; the computer or phone by name.
        (Main, 0x010f | 0x0110 | 0x013c) => Some(Meaning::Device),
        // The owner, and numbers of a camera and its lens; what the maker alone can read.
        (Camera, 0xa430 | 0xa431 | 0xa433..=0xa435 | 0x927c) => Some(Meaning::Device),
        // Caption, artist, rights; the same as some systems write them; a preview; what the user wrote.
        (Main, 0x010e | 0x013b | 0x8298 | 0x9c9b..=0x9c9f | 0x0201) | (Camera, 0x9286) => {
            Some(Meaning::Other)
        }
        (Place, 0x02) => Some(Meaning::Coordinate(0, 0)),
        (Place, 0x04) => Some(Meaning::Coordinate(0, 1)),
        (Place, 0x14) => Some(Meaning::Coordinate(1, 0)),
        (Place, 0x16) => Some(Meaning::Coordinate(1, 1)),
        (Place, 0x1c) => Some(Meaning::Name),
        (Place, 0x1f) => Some(Meaning::Error),
        _ => None,
    }
}
