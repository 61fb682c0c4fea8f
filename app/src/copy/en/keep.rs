//! Words of the panel that keeps doors and keys: as a file, on this device, or not at all.

use self_check_core::household::{Household, Place, file::ImportError};

use super::household::board;
use crate::browser::{FileTrouble, KeepTrouble, Left};
use crate::household::parts;
use crate::sealed::OpenError;

texts! {
    // The panel
    /// Heading.
    TITLE = "Keep it for later";
    /// Below it.
    LEDE = "Close this page and everything on it is gone. If you want to go on another day, save a file. Nothing is sent anywhere.";
    /// The same while it is kept on this device.
    LEDE_KEPT = "What this device keeps can get lost with it. A file you save elsewhere does not. Nothing is sent anywhere.";
    /// The same while the home is invented.
    LEDE_EXAMPLE = "This home is invented, so it is neither saved nor kept. Put down your own keys and you can keep those.";
    /// From the top of a page to the panel.
    SEE_BELOW = "See “Keep it for later”";
    // A locked file
    /// Heading.
    LOCK = "Save a locked file";
    /// What it is.
    LOCK_HOW = "Only someone with your passphrase can open it. If you forget the passphrase, nobody can help you. The file is an age file, an open standard, so other programs can open it too.";
    /// First field.
    PASSPHRASE = "Passphrase";
    /// Its hint.
    PASSPHRASE_HINT = "At least 12 letters. Four or more words that do not belong together are strong and easy to recall. Use it for nothing else.";
    /// Second field.
    PASSPHRASE_AGAIN = "The same once more";
    /// Shows what is typed.
    SHOW = "Show what I type";
    /// Saves.
    SAVE_LOCKED = "Save a locked file";
    /// Said before the page stands still.
    LOCKING = "Locking the file. The page stands still for a moment.";
    /// Done.
    LOCKED = "The browser has the file and saves it, or asks you where. Look that it is there before you close this page.";
    /// The passphrase is too short.
    TOO_SHORT = "Make the passphrase longer: at least 12 letters.";
    /// The two differ.
    NOT_THE_SAME = "The two passphrases differ. Type both again.";
    /// No memory.
    NO_ROOM = "This device has no memory left to lock the file. Nothing was saved, and nothing is lost. Close other pages and try again.";
    /// The browser has no way to save.
    CANNOT_SAVE = "This browser does not let the page save a file. Nothing is lost. Open the page in another browser to save it.";
    /// It could not be written down.
    CANNOT_WRITE = "The file could not be made, because of a fault in this page. Nothing is lost.";
    // A file without a lock
    /// Unfolds it.
    UNLOCKED = "Save a file without a lock";
    /// Its caution.
    UNLOCKED_CAUTION = "Anyone who comes by the file can read which doors you have and who holds a key. Keep it off shared devices and out of mail.";
    /// Saves.
    SAVE_UNLOCKED = "Save without a lock";
    /// Done.
    SAVED = "The browser has the file and saves it, or asks you where.";
    // Opening
    /// Heading.
    OPEN = "Open a saved file";
    /// What happens.
    OPEN_HOW = "The file is read on this device. If something is wrong with it, what is on this page stays as it is.";
    /// Names the field.
    CHOOSE = "Choose the file";
    /// While it is read.
    READING = "Reading the file.";
    /// The file is locked.
    IS_LOCKED = "This file is locked. Type its passphrase.";
    /// Opens it.
    UNLOCK = "Open it";
    /// Said before the page stands still.
    UNLOCKING = "Opening the file. The page stands still for a moment.";
    /// Lets go of it.
    NOT_THIS = "Leave it closed";
    /// Replaces what is on the page.
    REPLACE = "Replace it";
    /// Does not.
    DO_NOT_REPLACE = "Leave it as it is";
    /// Done.
    OPENED = "The file is open. What it holds is on this page now.";
    /// Not done.
    NOT_REPLACED = "Nothing was changed.";
    // On this device
    /// Heading.
    DEVICE = "Keep on this device";
    /// Names the switch.
    DEVICE_SWITCH = "Keep every change on this device";
    /// In the edition in one file.
    NOT_FROM_DISK = "A page opened from a file keeps nothing here: other files that this browser opens could read it. Save a file locked with a passphrase in its place.";
    /// Its caution.
    DEVICE_CAUTION = "Off, unless you turn it on. Anyone who can use this browser can then read your doors and keys: there is no lock on them. Not for a shared device. If you clear the browser, or press “Leave now”, they are gone.";
    /// While it is read.
    LOOKING = "Looking what is kept.";
    /// Off.
    IS_OFF = "Nothing is kept on this device.";
    /// Being written.
    WRITING = "Keeping the change.";
    /// Written.
    IS_KEPT = "Your doors, keys and people are kept on this device. What you chose for the plan and for the locksmith is not.";
    /// Again.
    TRY_AGAIN = "Try again";
    /// Kept data was taken away elsewhere.
    TAKEN_AWAY = "What was kept on this device was taken away, in another tab or by the browser. This page still shows it. Turn the switch on to keep it anew.";
    /// The person chose neither.
    LEFT_AS_THEY_ARE = "What is kept stays as it is. What is on this page is not kept.";
    /// It could not be taken away.
    STILL_THERE = "The browser did not take away what was kept. Try “Empty everything” below, or clear this site’s data in the settings of the browser.";
    /// Another tab has written.
    FROM_ANOTHER_TAB = "Another tab of this page has kept something else. Nothing was written over: choose which of the two to go on with.";
    /// It was there before.
    KEPT_BEFORE = "Something else was kept on this device before. Nothing was written over: choose which of the two to go on with.";
    /// Shows it.
    TAKE_KEPT = "Show what is kept";
    /// Writes over it.
    KEEP_MINE = "Keep what is on this page instead";
    /// Neither.
    LEAVE_BOTH = "Leave both as they are";
    /// It cannot be read.
    UNREADABLE = "Something is kept on this device that this page cannot read. It was left as it is, and nothing is written over it unless you choose so.";
    /// It was written by something else.
    FOREIGN = "Something is kept under this page’s name that this page did not write. It was left as it is. “Empty everything” below takes it away.";
    /// It was written by a later version.
    LATER = "What is kept on this device was written by a later version of this page. It was left as it is. Load this page again to get that version.";
    /// Hands it out.
    SAVE_UNREADABLE = "Save it as a file";
    // Emptying
    /// Heading and button.
    EMPTY = "Empty everything";
    /// What it does.
    EMPTY_HOW = "Takes everything off this page and out of this browser in one press. There is no way back. Files you saved stay where they are.";
    /// The same where safety comes first.
    EMPTY_SAFELY = "Takes everything you told this page off it and out of this browser, in one press. There is no way back.";
    /// While it runs.
    EMPTYING = "Emptying.";
    /// Above what is left.
    EMPTIED = "Emptied. The browser was then asked what it still holds for this page:";
    /// It did not work.
    NOT_EMPTIED = "The page is empty, but the browser did not take away what was kept. Clear this site’s data in the settings of the browser. It still holds:";
    /// Row.
    LEFT_RECORD = "Doors and keys";
    /// Row.
    LEFT_DATABASES = "Databases";
    /// Row.
    LEFT_ENTRIES = "Other entries";
    /// Row.
    LEFT_COOKIES = "Cookies";
    /// Row.
    LEFT_STORED = "Stored parts of the page itself";
    /// Value.
    LEFT_NONE = "none";
    /// Value.
    LEFT_SOME = "still there";
    /// Value.
    LEFT_NOT_SAID = "this browser does not say";
}

/// The names under which files are saved. They tell nothing of what is inside.
pub const FILE_LOCKED: &str = "self-check.age";
/// Without a lock.
pub const FILE_UNLOCKED: &str = "self-check.json";
/// What could not be read.
pub const FILE_UNREADABLE: &str = "self-check-unread.txt";

/// How much is on the page.
pub fn on_this_page(household: &Household) -> String {
    if household.is_empty() {
        return "On this page there is nothing yet.".to_owned();
    }
    format!("On this page there are {}.", numbers(household))
}

/// How much is kept.
pub fn on_this_device(household: &Household) -> String {
    format!("This device keeps {}.", numbers(household))
}

/// Asks before what is on the page is replaced.
pub fn replaces(file: &Household, present: &Household) -> String {
    format!(
        "The file holds {}. {} {}Replace what is on this page?",
        numbers(file),
        on_this_page(present),
        difference(file, present).map_or_else(String::new, |words| format!("{words} ")),
    )
}

/// What differs where the numbers do not tell.
pub fn difference(kept: &Household, present: &Household) -> Option<String> {
    if numbers(kept) != numbers(present) {
        return None;
    }
    let lost = |household: &Household| {
        let copies = household.copies();
        copies
            .filter(|(_, copy)| matches!(copy.place, Place::Lost { .. }))
            .count()
    };
    let (lost_there, lost_here) = (lost(kept), lost(present));
    let parts = parts(kept, present);
    let words: Vec<&str> = parts.iter().map(|&part| board::part(part)).collect();
    Some(match *words {
        [] => "Both are the same.".to_owned(),
        _ if lost_there != lost_here => format!(
            "The numbers agree, but this differs: {}. Lost copies: {lost_there} there, {lost_here} on this page.",
            words.join(", ")
        ),
        _ => format!("The numbers agree, but this differs: {}.", words.join(", ")),
    })
}

fn numbers(household: &Household) -> String {
    let count = |number: usize, one: &str, several: &str| match number {
        1 => format!("1 {one}"),
        _ => format!("{number} {several}"),
    };
    format!(
        "{}, {}, {} and {}",
        count(household.doors().len(), "door", "doors"),
        count(household.keys().len(), "key", "keys"),
        count(household.copies().len(), "copy", "copies"),
        count(household.holders().len(), "person", "people"),
    )
}

/// Why a chosen file was not read.
pub const fn file_trouble(trouble: FileTrouble) -> &'static str {
    match trouble {
        FileTrouble::TooLarge => {
            "This file is far larger than any file of this page, so it was not read. Choose another. Nothing was changed."
        }
        FileTrouble::CouldNotRead => {
            "The browser could not read this file. It may have been moved. Choose it again. Nothing was changed."
        }
    }
}

/// Why a locked file does not open.
pub const fn open_error(error: OpenError) -> &'static str {
    match error {
        OpenError::WrongPassphrase => {
            "This passphrase does not open the file. Capital letters and spaces count. Try again. Nothing was changed."
        }
        OpenError::Damaged => {
            "This locked file is damaged or cut short, so it does not open. Look for another copy of it. Nothing was changed."
        }
        OpenError::LockedOtherwise => {
            "This file is not locked with a passphrase in the way this page reads. Open it with the program it comes from. Nothing was changed."
        }
        OpenError::TooMuchWork => {
            "This file asks for more memory than this page may use, so it was not opened. Open it with another program for age files. Nothing was changed."
        }
    }
}

/// Why a file, or what is kept, is not doors and keys.
pub const fn import_error(error: ImportError) -> &'static str {
    match error {
        ImportError::TooLarge | ImportError::TooDeep => {
            "It is larger than anything this page writes."
        }
        ImportError::CutShort => "It ends too early. It may not have been saved in full.",
        ImportError::Damaged => "It is damaged, or no file of this page.",
        ImportError::Foreign => "It comes from another program.",
        ImportError::UnknownVersion(_) => {
            "It was written by another version of this page. Load this page again to get the newest."
        }
        ImportError::Label(_) => "It holds a name that this page does not take.",
        ImportError::DoesNotFit(_) => "Its parts do not fit together: someone may have changed it.",
    }
}

/// The same, for a file that was chosen.
pub fn not_opened(error: ImportError) -> String {
    format!(
        "The file was not opened. {} Nothing was changed.",
        import_error(error)
    )
}

/// Why nothing was kept.
pub const fn keep_trouble(trouble: KeepTrouble) -> &'static str {
    match trouble {
        KeepTrouble::Denied => {
            "This browser does not let the page keep anything, as in a private window. What is on this page is still here. Save a file instead."
        }
        KeepTrouble::Full => {
            "There is no room left on this device, so the last change is not kept. What is on this page is still here. Make room and try again, or save a file."
        }
        KeepTrouble::Failed | KeepTrouble::HasLeft => {
            "The browser did not keep the last change. What is on this page is still here. Try again, or save a file."
        }
    }
}

/// What is left, row by row.
pub fn left(left: &Left) -> [(&'static str, String); 5] {
    let number = |number: Option<u32>| match number {
        None => LEFT_NOT_SAID.to_owned(),
        Some(0) => LEFT_NONE.to_owned(),
        Some(number) => number.to_string(),
    };
    let record = match left.record {
        None => LEFT_NOT_SAID,
        Some(false) => LEFT_NONE,
        Some(true) => LEFT_SOME,
    };
    [
        (LEFT_RECORD, record.to_owned()),
        (LEFT_DATABASES, number(left.databases)),
        (LEFT_ENTRIES, number(left.entries)),
        (LEFT_COOKIES, number(left.cookies)),
        (LEFT_STORED, number(left.caches)),
    ]
}
