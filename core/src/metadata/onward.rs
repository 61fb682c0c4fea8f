//! Reading a JPEG part by part: the picture, and what stands behind it.

use super::bytes::is_padding;
use super::jpeg::{self, Front};
use super::{FileError, Metadata, PictureFile};

/// A JPEG that is read in parts, as they come; no more than the notes in front of a picture is ever kept.
///
/// Phones put more pictures behind the first: a map of light for bright screens, a wider view. Each has
/// notes of its own, which are read like the first one's. A film behind the picture is not.
///
/// ```
/// use self_check_core::metadata::JpegInParts;
/// assert!(JpegInParts::begin(b"\xff\xd8\xff").is_err(), "its notes are not all here");
/// ```
pub struct JpegInParts {
    read: PictureFile,
    place: Place,
    /// What stands behind a picture and could not be told yet.
    kept: Vec<u8>,
}

enum Place {
    /// In the coded part of a picture; `before` is the byte that was read last.
    Picture { before: u8 },
    /// Behind the end of a picture.
    Behind,
    /// Behind something that cannot be read.
    Lost,
}

impl JpegInParts {
    /// Begins with the front of a file. Errs where it is no JPEG, or ends before the first picture's coded
    /// part: then try again with more of it.
    pub fn begin(front: &[u8]) -> Result<Self, FileError> {
        let Front { parts, coded } = jpeg::read(front)?;
        let mut read = parts.into_file();
        read.breaks_off = true;
        let mut begun = Self {
            read,
            place: Place::Picture { before: 0 },
            kept: Vec::new(),
        };
        begun.read_on(coded);
        Ok(begun)
    }

    /// Reads the part of the file that follows what was read so far.
    pub fn read_on(&mut self, part: &[u8]) {
        let mut rest = part;
        while !rest.is_empty() {
            rest = match self.place {
                Place::Picture { before } => self.look_for_the_end(before, rest),
                Place::Behind => self.look_behind(rest),
                Place::Lost => return,
            };
        }
    }

    /// Whether the rest of the file cannot tell anything more.
    pub fn is_done(&self) -> bool {
        matches!(self.place, Place::Lost)
    }

    /// The file, as far as it was read.
    pub fn finish(mut self) -> PictureFile {
        // A second picture that breaks off leaves the first whole.
        let breaks_off = !self.read.breaks_off && matches!(self.place, Place::Picture { .. });
        self.read.has_more_behind |= breaks_off || !is_padding(&self.kept);
        self.read
    }

    fn look_for_the_end<'a>(&mut self, before: u8, rest: &'a [u8]) -> &'a [u8] {
        match jpeg::behind_the_end(before, rest) {
            Some(behind) => {
                self.read.breaks_off = false;
                self.place = Place::Behind;
                behind
            }
            None => {
                let before = rest.last().copied().unwrap_or(before);
                self.place = Place::Picture { before };
                &[]
            }
        }
    }

    /// Reads the front of another picture, or keeps it until more of it is there.
    fn look_behind<'a>(&mut self, rest: &'a [u8]) -> &'a [u8] {
        let had = core::mem::take(&mut self.kept);
        let joined;
        let behind = if had.is_empty() {
            rest
        } else {
            joined = [&had, rest].concat();
            &joined
        };
        let front = without_padding(behind);
        if let Some(length) = self.front_of_another(front) {
            let passed = behind.len() - front.len() + length - had.len();
            self.place = Place::Picture { before: 0 };
            return rest.get(passed..).unwrap_or(&[]);
        }
        if front.len() >= MOST_KEPT || !begins_like_a_picture(front) {
            self.read.has_more_behind = true;
            self.place = Place::Lost;
        } else {
            self.kept = front.to_vec();
        }
        &[]
    }

    /// Reads the notes of another picture that begins here, if they are all here, and says where its coded
    /// part begins.
    fn front_of_another(&mut self, bytes: &[u8]) -> Option<usize> {
        let Front { parts, coded } = jpeg::read(bytes).ok()?;
        let length = bytes.len() - coded.len();
        if length > MOST_KEPT {
            return None;
        }
        let told: Metadata = parts.into_file().metadata;
        self.read.metadata = self.read.metadata.and(told);
        self.read.metadata.has_others = true;
        Some(length)
    }
}

/// What stands between two pictures tells nothing; the first byte of a picture is one that fills up, too.
fn without_padding(bytes: &[u8]) -> &[u8] {
    let is_next = |at: &usize| {
        let fills = bytes.get(*at..=*at).is_some_and(is_padding);
        !fills || bytes.get(*at) == Some(&0xff) && matches!(bytes.get(at + 1), None | Some(0xd8))
    };
    let from = (0..bytes.len()).find(is_next).unwrap_or(bytes.len());
    bytes.get(from..).unwrap_or(&[])
}

fn begins_like_a_picture(bytes: &[u8]) -> bool {
    bytes.starts_with(jpeg::SIGNATURE) || jpeg::SIGNATURE.starts_with(bytes)
}

/// Notes before a second picture that are longer than this are not waited for. Our assumption: phones
/// write some kilobytes; a profile of colours and the notes of a picture program take a few hundred.
const MOST_KEPT: usize = 1 << 20;
