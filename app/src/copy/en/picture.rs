//! Words of the page on which a picture is checked. No count, no scale, and nothing that would help
//! to read a key better.

use self_check_core::key::LockFace;
use self_check_core::metadata::{FileError, Metadata, Place, Precision};
use self_check_core::picture::{Caveat, Judgement, MarkError, Readable};

use crate::copy::{BandWords, Press, Trouble};

texts! {
    /// Title and heading.
    TITLE = "Check a picture";
    /// Its opening line.
    LEDE = "A picture can give a key away, and the place where it was taken too. See how well the key in it could be read, and make a copy that is safe to share.";
    /// Before the chooser.
    ONLY_EXISTING = "Use only a picture that exists already. Do not photograph your key for this: each new picture is one more that can get about.";
    /// What becomes of it.
    STAYS_HERE = "The picture stays in this browser. Nothing is sent, and all of it is dropped when you leave this page.";
    /// Names the field.
    CHOOSE = "Choose a picture on this device";
    /// Under it.
    DROP_OR_PASTE = "Or drop it here, or paste it.";
    /// While the browser decodes.
    OPENING = "Opening the picture";
    /// Ends a long piece of work.
    CANCEL = "Cancel";
    /// After that.
    CANCELLED = "Stopped. You can go on from here.";
    /// Heading of what the file tells.
    TOLD = "What the file tells besides";
    /// First line.
    PLACE = "Where it was taken";
    /// Second line.
    TIME = "When";
    /// Third line.
    DEVICE = "With what camera or phone";
    /// Fourth line.
    OTHERS = "Anything else: a caption, a name, a small preview, a second picture";
    /// Told.
    YES = "Yes, the file tells it";
    /// Not told.
    NO = "No";
    /// Not found, where there may be more.
    UNREAD_PART = "Not found in what could be read";
    /// What that means.
    UNREAD = "This file could not be read whole, so it may tell more than is shown here.";
    /// Something behind the picture was not read.
    MORE_BEHIND = "Behind the picture this file holds something more, such as a short film that a phone took with it. It was not read, so it may tell and show more than is said here.";
    /// What becomes of notes.
    LEFT_OUT = "A copy made below leaves all such notes out.";
    /// The end of the file is missing.
    BREAKS_OFF = "This file breaks off, so a part of the picture may be missing. If you can, save it again where you got it.";
    /// Moving pictures.
    ANIMATED = "This picture moves. Only its first view is looked at here.";
    /// Heading of the marks.
    MARK = "Mark the two ends of the blade";
    /// Where.
    MARK_WHERE = "The blade is the part that goes into the lock. Put A at its middle where it begins, at the shoulder (the step that stops the key), and B at the middle of its tip.";
    /// Names the drawing.
    ENDS = "The two ends of a blade";
    /// What it shows.
    ENDS_DESC = "A drawn key from the side. A points to the shoulder, where the blade begins, and B to the tip at its far end.";
    /// How.
    MARK_HOW = "Press the picture: the first press sets A, the second B, and then the nearer mark comes to where you press. Or drag a mark.";
    /// Leads to the copy alone.
    COPY_ONLY = "Only make a safe copy";
    /// By keys.
    MARK_KEYS = "By keyboard: press Tab until you are on a mark. The arrow keys move it a little, and with Shift a long way. Home and End take it to the left and right edge. Page Up and Page Down take it to the top and bottom.";
    /// Names the picture with the marks.
    MARK_PICTURE = "Your picture with the marks A and B";
    /// First mark.
    MARK_A = "A, the shoulder";
    /// Second mark.
    MARK_B = "B, the tip";
    /// Letter of the first mark.
    LETTER_A = "A";
    /// Letter of the second mark.
    LETTER_B = "B";
    /// Heading of the kinds of lock.
    FACE = "What does its lock look like?";
    /// Where to look.
    FACE_HINT = "Look at the front of the lock, where the key goes in. A European profile is a lock part that slides out of the door in one piece.";
    /// Under the kinds: what is measured at all.
    OTHER_KINDS = "Only a key with cuts (dips) along an edge of its blade can be measured here. If yours has round hollows, a tube or a flag at its end, treat a picture of it as one that can be read.";
    /// Measures.
    CHECK = "Check this picture";
    /// While it is measured.
    MEASURING = "Measuring the picture";
    /// Marks not yet moved.
    MOVE_BOTH = "Move both marks to the key: A to the shoulder and B to the tip.";
    /// Heading of the caveats.
    KEEP_IN_MIND = "Keep in mind";
    /// Beside every result.
    BY_YOUR_MARKS = "This page cannot know if a key lies between your marks: it goes by them.";
    /// Beside a result that shows no key, where there is more in the file than that.
    MORE_IN_FILE = "That is about the one view you see here. This file holds more, such as a preview or another view, and there the key may be seen.";
    /// Always true.
    ESTIMATE = "This is an estimate, and it leans to the cautious side. It speaks of this picture alone.";
    /// Where the sources of the method are.
    ALL_SOURCES = "How pictures are measured is named in the list of all sources, under Learn.";
    /// Heading of what to do.
    SAFER = "What makes it safer";
    /// Readable and its place is told.
    WITH_ITS_PLACE = "The file also tells where it was taken. A key that can be read together with its door is the worst case: take the picture down today.";
    /// To the check.
    TO_THE_CHECK = "Find out what to do about the lock: choose “I shared a picture” there";
    /// Heading of the sources.
    RESTS_ON = "What this rests on";
    /// Heading of the safe copy.
    COPY = "Make a copy that is safe to share";
    /// How.
    COPY_HOW = "Cover all of the key, with any number on it, any other key, and what else should not be seen: a house number, a street sign, a number plate, a label. Press or drag on the picture to add a cover, drag a cover to move it and its corner to size it.";
    /// By keys.
    COVER_KEYS = "By keyboard: press Tab until you are on a cover. The arrow keys move it a little, and with Shift a long way. Press Tab once more for its corner: there the same keys size it. Delete takes it away.";
    /// Names the picture with the covers.
    COPY_PICTURE = "Your picture with its covers";
    /// Adds one.
    ADD_COVER = "Add a cover";
    /// Where a cover lies between the marks.
    KEY_COVERED = "A cover lies where you marked the key. Look closely: the whole key must be under it, with the bow (the part you hold) and any number on it.";
    /// Where none does, before the copy and beside it.
    KEY_BARE = "The key is not wholly covered where you marked it: whoever gets this copy can see what is bare. Make the cover longer or wider to both sides, or add one.";
    /// Where one does, and no key was found there.
    COVER_BESIDE = "A cover lies between your marks, but no key was found there. Look where the key is, and move the cover over it.";
    /// Nobody has marked a key.
    NOT_MARKED = "You have marked no key, so nothing is covered by itself. Cover each key you can see.";
    /// No cover.
    NO_COVER = "Nothing is covered. Add a cover over the key first.";
    /// Heading of the formats.
    SAVE_AS = "Save it as";
    /// Smaller.
    JPEG = "JPEG: a small file, right for photos";
    /// Without loss.
    PNG = "PNG: a larger file, right for drawings";
    /// Makes it.
    MAKE_COPY = "Make the copy";
    /// While it is made.
    COPYING = "Making the copy";
    /// What is done.
    COPY_NOTE = "Covers are one plain colour, never a blur: a blur can be undone. Large pictures are made smaller.";
    /// Heading of the second look.
    SECOND_LOOK = "A second look at the copy";
    /// Names the copy.
    COPY_RESULT = "The copy, read again from its file";
    /// Found clean.
    NO_NOTES = "The copy holds no place, no time and no other notes.";
    /// Saves it.
    SAVE = "Save the copy";
    /// The copy failed its own check.
    COPY_FAILED = "The copy did not pass its own check, so it is not offered. Try the other kind of file, or another browser.";
    /// The browser refused.
    COPY_REFUSED = "The browser could not make the copy. Try the other kind of file, or another browser.";
    /// Heading of what else there is.
    ELSEWHERE = "What else to think of";
    /// First of a list.
    ORIGINALS = "The first picture is still on the phone, and perhaps in a cloud, a chat and a backup.";
    /// Second.
    LOOK_AROUND = "Look for what names the door: a house number, a street sign, a number plate, a label.";
    /// Third.
    NOT_UNSEEN = "Taken down is not unseen: others may have kept it.";
    /// Begins anew.
    ANOTHER = "Check another picture";
}

/// What is wrong with a file, and what to do.
pub fn trouble(trouble: Trouble) -> &'static str {
    match trouble {
        Trouble::File(FileError::Empty) => {
            "This file is empty. Choose another one, or save the picture again where you got it."
        }
        Trouble::File(FileError::NotAPicture) => {
            "This file is not a picture that can be opened here. Choose a JPEG, PNG, WebP or GIF file."
        }
        Trouble::File(FileError::Broken) => {
            "This file breaks off before the picture begins. Save the picture again where you got it, then choose it anew."
        }
        Trouble::BreaksOff => {
            "This file breaks off, so your browser cannot open it. Save the picture again where you got it, then choose it anew."
        }
        Trouble::Undecodable => {
            "Your browser cannot open this picture: it is damaged, or of a kind that the browser does not know. Save it as JPEG in your photo app, then choose it anew."
        }
        Trouble::TooManyPixels => {
            "This picture is too large to open here. Make it smaller in your photo app, then choose it anew."
        }
        Trouble::TooManyBytes => {
            "This file is too large to open here. Save the picture as JPEG in your photo app, then choose it anew."
        }
        Trouble::Unreadable => {
            "Your browser could not read this file. It may have been moved. Choose it anew."
        }
        Trouble::Marks(MarkError::OnePoint) => {
            "Both marks are on one point. Put A at the shoulder and B at the tip."
        }
        Trouble::Marks(MarkError::Outside | MarkError::EmptyPicture) => {
            "A mark is outside the picture. Put A at the shoulder and B at the tip."
        }
        Trouble::MarksNotMoved => MOVE_BOTH,
        Trouble::NothingCovered => NO_COVER,
        Trouble::CopyFailed => COPY_FAILED,
        Trouble::CopyRefused => COPY_REFUSED,
    }
}

/// How readable a key is: the words that come first.
pub fn band(judgement: Judgement, caveats: &[Caveat]) -> BandWords {
    let holds = |caveat| caveats.contains(&caveat);
    match judgement.readable {
        Readable::CannotTell if holds(Caveat::OneColour) => ONE_COLOUR,
        Readable::CannotTell if holds(Caveat::TooSmall) => TOO_SMALL,
        Readable::Partly if holds(Caveat::TooSmall) => AT_MOST_PARTLY,
        Readable::No if holds(Caveat::TooSmall) && judgement.is_sure => FAR_TOO_SMALL,
        _ => measured(judgement),
    }
}

const ONE_COLOUR: BandWords = BandWords {
    name: "No blade to be seen",
    meaning: "Between your marks this view has one plain colour. If a cover lies there, it hides the blade.",
    to_do: "See that the bow (the part you hold) is covered too: a number on it can be used like the key. If no cover lies there, your marks are not at the two ends of the blade: move them there and check again.",
};
const TOO_SMALL: BandWords = BandWords {
    name: "It cannot be told",
    meaning: "Your marks lie close together: too little of the picture is between them to be measured.",
    to_do: "See if they are at the two ends of the blade. If they are, treat the picture as one that can be read: cover the key before you share it.",
};
const FAR_TOO_SMALL: BandWords = BandWords {
    name: "Not readable",
    meaning: "Your marks lie very close together. If they are at the two ends of the blade, this key cannot be read from this picture.",
    to_do: "If they are not, move them there and check again. Check each other picture of the key on its own.",
};
const AT_MOST_PARTLY: BandWords = BandWords {
    name: "At most partly readable",
    meaning: "Your marks lie close together. If they are at the two ends of the blade, a stranger could read a part of this key at the very most.",
    to_do: TAKE_DOWN,
};

fn measured(judgement: Judgement) -> BandWords {
    match (judgement.readable, judgement.is_sure) {
        (Readable::Yes, true) => BandWords {
            name: "Readable",
            meaning: "A stranger could read this key from this picture and have a copy made.",
            to_do: TAKE_DOWN_FOR_GOOD,
        },
        (Readable::Yes, false) => BandWords {
            name: "Probably readable",
            meaning: "A stranger could probably read this key from this picture and have a copy made.",
            to_do: TAKE_DOWN_FOR_GOOD,
        },
        (Readable::Partly, true) => BandWords {
            name: "Partly readable",
            meaning: "A stranger could read a part of this key from this picture. Fewer keys would be left to try.",
            to_do: TAKE_DOWN,
        },
        (Readable::Partly, false) => BandWords {
            name: "Probably partly readable",
            meaning: "A stranger could probably read a part of this key from this picture. Fewer keys would be left to try.",
            to_do: TAKE_DOWN,
        },
        (Readable::No, true) => BandWords {
            name: "Not readable",
            meaning: "This key cannot be read from this picture.",
            to_do: "There is nothing you must do about this one. Check each other picture of the key on its own.",
        },
        (Readable::No, false) => BandWords {
            name: "Probably not readable",
            meaning: "This key can probably not be read from this picture, but that is not sure.",
            to_do: "To be safe, put a covered copy in its place. Check each other picture of the key on its own.",
        },
        (Readable::CannotTell, _) => BandWords {
            name: "It cannot be told",
            meaning: "The key could not be measured between the marks.",
            to_do: "See if both marks are on the key. If they are, treat the picture as one that can be read: cover the key before you share it.",
        },
    }
}

const TAKE_DOWN_FOR_GOOD: &str = "Take the picture down, or put a covered copy in its place. Anyone who saw it may have kept it.";
const TAKE_DOWN: &str = "Take the picture down, or put a covered copy in its place.";

/// What may make the result differ from the truth. None says what another picture would have to be like
/// to tell more.
pub fn caveat(caveat: Caveat) -> &'static str {
    match caveat {
        Caveat::TooSmall => "Too little of the picture lies between the marks to be measured.",
        Caveat::OneColour => "Between the marks the picture has one plain colour.",
        Caveat::NoUsableEdge => "Nothing like a key was found between the marks.",
        Caveat::ScaleFromBladeLength => {
            "The usual length of a blade was taken for this one, from mark to mark."
        }
        Caveat::FewEdges => "Little of the key could be measured, so the result is a rough one.",
        Caveat::UnevenBlur => {
            "The key does not look alike in all its parts. The result allows for that."
        }
        Caveat::Sharpened => {
            "The picture seems to have been worked on. The result allows for that."
        }
        Caveat::Compressed => "The file was saved with some loss. The result allows for that.",
        Caveat::Clipped => {
            "Parts of the picture are plain black or plain white. The result allows for that."
        }
    }
}

/// How precisely the place is told; `is_whole` says whether the file was read whole.
pub fn place(place: Option<Place>, is_whole: bool) -> &'static str {
    match place.map(|place| place.precision()) {
        None => not_found(is_whole),
        Some(Precision::House) => "Yes, to the very house",
        Some(Precision::Street) => "Yes, to the street",
        Some(Precision::Town) => "Yes, to the town",
        Some(Precision::Name) => "Yes, by name",
    }
}

/// What was not found in a file: not there, or perhaps in what could not be read.
pub const fn not_found(is_whole: bool) -> &'static str {
    if is_whole { NO } else { UNREAD_PART }
}

/// What else stands in a file, where something does.
pub const OTHERS_MEAN: &str = "What else is in a file is not shown here. It can name anything, an address too, and a preview or a second picture can show what was covered in the first.";

/// What the notes mean for the reader, if anything can be said.
pub fn told_means(metadata: &Metadata, is_whole: bool) -> Option<&'static str> {
    if metadata.place.is_some() {
        Some("Anyone who gets this file can look up the place.")
    } else if !is_whole || metadata.has_others {
        None
    } else if metadata.has_time || metadata.has_device {
        Some("These notes do not name a place.")
    } else {
        Some(
            "This file tells nothing of the kind. What can be seen in the picture may still name the place.",
        )
    }
}

/// A kind of lock, by what can be seen of it from outside.
pub fn face(face: LockFace) -> &'static str {
    match face {
        LockFace::Round => "Round, also where it sits in a knob",
        LockFace::EuropeanProfile => "Round above and narrow below, like a drop (European profile)",
        LockFace::NotSure => "I am not sure, or it looks different",
    }
}

/// Where a mark stands, for those who do not see it.
pub fn mark_at((x, y): (f64, f64), width: u32, height: u32) -> String {
    let share = |place: f64, whole: u32| 100.0 * place / f64::from(whole.max(1));
    format!(
        "{:.1} % from the left, {:.1} % from the top",
        share(x, width),
        share(y, height)
    )
}

/// Where a cover stands and how large it is, in the same terms.
pub fn cover_at((x, y): (f64, f64), (wide, high): (u32, u32), width: u32, height: u32) -> String {
    let share = |own: u32, whole: u32| 100.0 * f64::from(own) / f64::from(whole.max(1));
    format!(
        "{}, {:.1} % wide, {:.1} % high",
        mark_at((x, y), width, height),
        share(wide, width),
        share(high, height)
    )
}

/// A cover by its number, and where it stands.
pub fn cover(number: usize) -> String {
    format!("Cover {number}")
}

/// The corner by which a cover is sized.
pub fn cover_corner(number: usize) -> String {
    format!("Corner of cover {number}, to size it")
}

/// Opens what can be done to a cover by presses.
pub fn change_cover(number: usize) -> String {
    format!("Move or size cover {number} by single presses")
}

/// What a press does to a cover: on its button, and in full.
pub fn press(press: Press, number: usize) -> (&'static str, String) {
    let word = match press {
        Press::Left => "Left",
        Press::Right => "Right",
        Press::Up => "Up",
        Press::Down => "Down",
        Press::Wider => "Wider",
        Press::Narrower => "Narrower",
        Press::Taller => "Taller",
        Press::Flatter => "Flatter",
    };
    (word, format!("{word}: cover {number}"))
}

/// Takes a cover away.
pub fn remove_cover(number: usize) -> String {
    format!("Remove cover {number}")
}

/// What the second look found of the covers.
pub fn covers_are_plain(covers: usize) -> String {
    match covers {
        1 => "The covered part is one plain colour.".to_owned(),
        _ => format!("All {covers} covered parts are one plain colour each."),
    }
}
