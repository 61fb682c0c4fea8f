//! Records locked with a passphrase. They are age files (C2SP, "The age file encryption format", version 1, in its
//! passphrase mode), so that any program of that standard opens them without this page, and this page opens theirs.

mod format;

use std::hint::black_box;

use format::{Drawn, Head, STANDARD};

/// How hard it is to try one passphrase: 2 to this power rounds of scrypt with r = 8, p = 1, which fill 128 MiB.
///
/// Source: the least that the OWASP Password Storage Cheat Sheet asks for (from memory). One more doubles the time and
/// the memory, for the person as for whoever guesses; a small phone would then run out of room.
const WORK: u8 = 17;

/// The hardest file that is opened: 1 GiB, about eight times the work of our own. Programs that choose a second of work
/// on a fast computer write up to this. Our assumption; what asks for more is refused before any work begins.
const MOST_WORK: u8 = 20;

/// The first line where a file of the standard is written as text.
const FIRST_LINE_OF_TEXT: &[u8] = b"-----BEGIN AGE ENCRYPTED FILE-----";

/// Letters a passphrase must have. Our assumption: with this work, a guesser who tries a million passphrases a second
/// needs centuries for twelve letters drawn by chance; chosen words are weaker, so the page asks for several.
pub const LEAST_LETTERS: usize = 12;

/// By how much locking makes a file longer, at most: the head, and 16 bytes for each 64 KiB.
pub const fn longest(record: usize) -> usize {
    1024 + record + record / (64 * 1024) * 16
}

/// Why a locked file does not open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpenError {
    /// The passphrase is another.
    WrongPassphrase,
    /// It is not as it was written, or not all of it. The standard does not tell the two apart: a last
    /// piece that was changed fails just as one that is no last piece.
    Damaged,
    /// It is locked in another way: with a key file, or written as text, or by a later standard.
    LockedOtherwise,
    /// Opening it would take more work or memory than this page or this device gives.
    TooMuchWork,
}

/// Why a record could not be locked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SealError {
    /// This device has no memory left for it.
    NoRoom,
    /// The browser gives no random numbers.
    Failed,
}

/// Whether a file is locked, by its first line.
pub fn is_sealed(file: &[u8]) -> bool {
    file.starts_with(STANDARD) || file.starts_with(FIRST_LINE_OF_TEXT)
}

/// The record, locked. Takes about a second, in which the page stands still.
pub fn seal(passphrase: &str, record: &[u8]) -> Result<Vec<u8>, SealError> {
    seal_with(WORK, passphrase, record)
}

fn seal_with(work: u8, passphrase: &str, record: &[u8]) -> Result<Vec<u8>, SealError> {
    if !has_room_for(work) {
        return Err(SealError::NoRoom);
    }
    Drawn::new()?.lock(passphrase, work, record)
}

/// Why a locked file cannot be opened with any passphrase, as far as its beginning tells. Takes no time.
pub fn examine(file: &[u8]) -> Result<(), OpenError> {
    head(file).map(drop)
}

/// The record in a locked file. Takes as long as locking did, in which the page stands still.
pub fn open(passphrase: &str, file: &[u8]) -> Result<Vec<u8>, OpenError> {
    let head = head(file)?;
    if !has_room_for(head.work) {
        return Err(OpenError::TooMuchWork);
    }
    head.open(passphrase)
}

/// The head of a file that this page may open.
fn head(file: &[u8]) -> Result<Head<'_>, OpenError> {
    if file.starts_with(FIRST_LINE_OF_TEXT) {
        return Err(OpenError::LockedOtherwise);
    }
    let head = Head::read(file)?;
    if head.work > MOST_WORK {
        return Err(OpenError::TooMuchWork);
    }
    Ok(head)
}

/// Whether there is memory for so much work. A program that asks for memory that is not there is stopped, and what the
/// page holds would go with it; so the memory is asked for in a way that may fail first.
fn has_room_for(work: u8) -> bool {
    let Some(bytes) = 1024_usize.checked_shl(work.into()) else {
        return false;
    };
    let mut room = Vec::<u8>::new();
    let is_there = room.try_reserve_exact(bytes).is_ok();
    black_box(&room);
    is_there
}

#[cfg(test)]
mod tests;
