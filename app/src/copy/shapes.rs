//! The shapes that words come in, the same in every language.

use self_check_core::metadata::FileError;
use self_check_core::picture::MarkError;
use self_check_core::sources::Source;

/// The words around one question.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct QuestionWords {
    /// The question itself: heading and legend.
    pub title: &'static str,
    /// Where to look, and how to answer.
    pub hint: &'static str,
    /// What the answer changes.
    pub why: &'static str,
    /// Label of the choice "not sure".
    pub not_sure: &'static str,
    /// Title of the drawing.
    pub drawing_title: &'static str,
    /// What the drawing shows, for those who do not see it.
    pub drawing_desc: &'static str,
}

/// The words on one choice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ChoiceWords {
    /// Short label.
    pub label: &'static str,
    /// A few words more, where they help.
    pub hint: Option<&'static str>,
}

/// The words on one action.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ActionWords {
    /// What to do, as a request.
    pub title: &'static str,
    /// How to do it.
    pub how: &'static str,
    /// Who does it.
    pub who: &'static str,
    /// Who or what could be hurt, and how to avoid it.
    pub may_hurt: Option<&'static str>,
    /// What drives its cost.
    pub cost: &'static str,
}

/// A way to start from what happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StartWords {
    /// What happened.
    pub title: &'static str,
    /// What the check looks at then.
    pub line: &'static str,
}

/// A name and what it means, as for an urgency or a kind of source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Named {
    /// One to four words.
    pub name: &'static str,
    /// A sentence.
    pub meaning: &'static str,
}

/// The words on one trade term.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TermWords {
    /// The term, as a list of words shows it.
    pub name: &'static str,
    /// What it means, in a sentence.
    pub meaning: &'static str,
    /// The few words that stand beside its first use on a page.
    pub beside: &'static str,
    /// The forms in which it occurs in texts, in lower case.
    pub forms: &'static [&'static str],
}

/// A trade term that texts use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "the words say what each is")]
pub enum Term {
    Bow,
    Blade,
    Shoulder,
    Cut,
    Depth,
    Blank,
    KeyCode,
    Cylinder,
    EuropeanProfile,
    Rekey,
    KeyedAlike,
    Restricted,
    LeverLock,
    Deadbolt,
    ThumbTurn,
    KeySafe,
    Fob,
}

impl Term {
    /// Every term, in the order in which a list of words shows them.
    pub const ALL: [Term; 17] = {
        use Term::*;
        [
            Bow,
            Blade,
            Shoulder,
            Cut,
            Depth,
            Blank,
            KeyCode,
            Cylinder,
            EuropeanProfile,
            Rekey,
            KeyedAlike,
            Restricted,
            LeverLock,
            Deadbolt,
            ThumbTurn,
            KeySafe,
            Fob,
        ]
    };
}

/// A page to read: title, opening line, and blocks in order.
#[derive(Clone, Copy, Debug)]
pub struct PageWords {
    /// Heading and document title.
    pub title: &'static str,
    /// The one thing to take along.
    pub lede: &'static str,
    /// The rest, in order.
    pub blocks: &'static [Block],
}

/// One block of a page to read.
#[derive(Clone, Copy, Debug)]
pub enum Block {
    /// A heading below the title.
    Heading(&'static str),
    /// A paragraph.
    Paragraph(&'static str),
    /// Items in no order.
    List(&'static [&'static str]),
    /// Items in the order in which to do them.
    Steps(&'static [&'static str]),
    /// Something that could hurt somebody.
    Caution(&'static str),
    /// A drawing.
    Figure(Figure),
    /// Where the blocks above it come from.
    Source(&'static Source),
    /// What is known of single regions, row by row.
    Regions,
}

/// A drawing on a page to read; its words are found by `figure`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// A key with its parts named.
    PartsOfAKey,
    /// The demonstration key: cuts, spacing and the numbers they stand for.
    CutsAndNumbers,
    /// The demonstration key beside the stamp that names it.
    StampAndKey,
    /// A cut that shows no dip of its own.
    HiddenCut,
    /// A copy of a copy of a copy, laid over the first key.
    CopiesOfCopies,
}

impl Figure {
    /// Every drawing.
    #[cfg(test)]
    pub const ALL: [Figure; 5] = {
        use Figure::*;
        [
            PartsOfAKey,
            CutsAndNumbers,
            StampAndKey,
            HiddenCut,
            CopiesOfCopies,
        ]
    };
}

/// The words around a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FigureWords {
    /// Title of the drawing.
    pub title: &'static str,
    /// What it shows, for those who do not see it.
    pub desc: &'static str,
    /// The line below it.
    pub caption: &'static str,
}

/// One page under Learn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "the titles say what each is about")]
pub enum LearnPage {
    CutBecomesANumber,
    StampIsTheKey,
    CutsThatHide,
    CopiesDrift,
    WordsAgainstCopying,
    RestrictedKeys,
    ChoosingALocksmith,
    TenantsAndLandlords,
    RegionNotes,
}

impl LearnPage {
    /// Every page, in reading order.
    pub const ALL: [LearnPage; 9] = {
        use LearnPage::*;
        [
            CutBecomesANumber,
            StampIsTheKey,
            CutsThatHide,
            CopiesDrift,
            WordsAgainstCopying,
            RestrictedKeys,
            ChoosingALocksmith,
            TenantsAndLandlords,
            RegionNotes,
        ]
    };
}

/// The words on how readable a key in a picture is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BandWords {
    /// One to four words.
    pub name: &'static str,
    /// A sentence.
    pub meaning: &'static str,
    /// What makes it safer.
    pub to_do: &'static str,
}

/// What keeps a picture from being checked or copied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// The file is no picture.
    File(FileError),
    /// Its end is missing, and the browser cannot decode what is there.
    BreaksOff,
    /// The browser cannot decode it.
    Undecodable,
    /// It has more pixels than are opened.
    TooManyPixels,
    /// It has more bytes than are opened.
    TooManyBytes,
    /// The browser could not read the file.
    Unreadable,
    /// The marks cannot be taken.
    Marks(MarkError),
    /// The marks stand where they stood at first.
    MarksNotMoved,
    /// A copy without covers was asked for.
    NothingCovered,
    /// The copy did not pass its own check.
    CopyFailed,
    /// The browser made no copy.
    CopyRefused,
}

/// A step that a press takes: a cover's own, or its lower right corner's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Press {
    /// The cover moves.
    Left,
    /// The cover moves.
    Right,
    /// The cover moves.
    Up,
    /// The cover moves.
    Down,
    /// The corner moves.
    Wider,
    /// The corner moves.
    Narrower,
    /// The corner moves.
    Taller,
    /// The corner moves.
    Flatter,
}

impl Press {
    /// In the order of their buttons.
    pub const ALL: [Self; 8] = [
        Self::Left,
        Self::Right,
        Self::Up,
        Self::Down,
        Self::Wider,
        Self::Narrower,
        Self::Taller,
        Self::Flatter,
    ];
}
