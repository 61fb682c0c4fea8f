//! Words of the page for the locksmith.

use self_check_core::advice::Action;
use self_check_core::household::brief::{AfterVisit, Ask, BriefRecipient};
use self_check_core::household::{DoorKind, Inside, LockKind, Material};

use crate::copy::Listed;
use crate::copy::en::numbers::counted;

texts! {
    /// Title and heading.
    TITLE = "A page for the locksmith";
    /// Opening line.
    LEDE = "It is in the order of the visit. It holds no name, no address and no code, and only what you tick goes on it.";
    /// Before the ticks.
    TICKS = "What may stand on it?";
    /// Tick.
    LABELS = "Your own words for doors";
    /// Tick.
    ROLES = "Who each copy is for (sitter, neighbour)";
    /// Tick.
    URGENCY = "How soon each lock is due";
    /// Tick.
    PRICES = "The prices you were told elsewhere";
    /// Before the questions.
    BEFORE = "What you know before the visit";
    /// Question.
    CAN_GET_IN = "Can you get in?";
    /// Question.
    SHUTS_WELL = "Does the door shut well?";
    /// Question.
    HAS_PROOF = "Do you have proof that you may have the locks changed?";
    /// Leaves it blank.
    BLANK = "Leave it open";
    /// Prints.
    PRINT = "Print this page";
    /// What a printed page may tell.
    PRINT_CAUTION = "A printed page tells others about your locks. Give it to the locksmith you have checked, and keep no copy in view.";
    /// No work for a locksmith.
    NOTHING = "The plan holds no lock to see to and no key to cut. There is nothing to print.";
    /// Not on the safety branch.
    SAFETY = "Nothing is printed here. Plan first with a service you trust.";

    // The page itself
    /// Heading of the sheet.
    SHEET = "Lock work: what we need";
    /// First part.
    FIRST = "First, at the door";
    /// Yes.
    YES = "yes";
    /// No.
    NO = "no";
    /// To be ticked by hand.
    OPEN = "yes / no";
    /// Before the locks of doors that may have to be opened first.
    TO_OPEN = "No key is at hand: please open it without damage";
    /// A lock that stays, whose key others shall take.
    MATCHED = "to be matched, stays";
    /// Note on a door that drags.
    DRAGS = "The door is seen to first: a new lock in a door that drags breaks keys.";
    /// Second part.
    LOCKS = "Locks to see to";
    /// Column.
    LOCK = "Lock";
    /// Column.
    WORK = "Work";
    /// Column.
    INSIDE = "Inside";
    /// Column.
    MADE_OF = "Door";
    /// Column.
    LENGTHS = "Outer and inner length";
    /// Column.
    WORKING_KEY = "Working key";
    /// Column.
    NEW_KEY = "Key after";
    /// To be measured.
    MEASURE = "please measure";
    /// Not known.
    PLEASE_LOOK = "please look";
    /// Restricted today.
    RESTRICTED = "restricted key today (copy only with your card)";
    /// More than one key.
    MORE_KEYS = "more than one key opens it: ask before the work";
    /// Before the same keyholes.
    SAME_KEYHOLE = "Same keyhole, so they can share a key as they are:";
    /// Where none is known.
    NO_SAME_KEYHOLE = "Locks that are to share a key need the same keyhole. Others need a new cylinder (the part the key goes into).";
    /// Third part.
    KEYS = "Keys and copies";
    /// One key.
    KEY = "Key";
    /// Opens.
    OPENS = "opens";
    /// Of today, before the other doors it opens.
    STAYS = "stays as it is, and we bring it to be copied";
    /// Fourth part.
    QUOTES = "Price before the work begins";
    /// For.
    FOR = "For";
    /// Count.
    COUNT = "At most";
    /// Told elsewhere.
    TOLD = "Told elsewhere";
    /// To be filled in.
    YOUR_PRICE = "Your price";
    /// Fifth part.
    ASK = "To ask";
    /// Column.
    DUE = "Due";
    /// Question.
    WORKING_KEY_AT_HAND = "A working key is there for";
    /// At the foot.
    FOOT = "Made in the browser, kept nowhere";
    /// Last part.
    AFTER = "When the work is done";
}

/// Something to ask.
pub fn ask(ask: Ask) -> &'static str {
    match ask {
        Ask::WholePriceBeforeWork => "What is the whole price, with the visit, before any work?",
        Ask::LicenceAndPapers => "May I see your papers (and licence, where one is needed)?",
        Ask::ProofThatYouMay => "What proof do you need that we may have this done?",
        Ask::RestrictedOrNot => {
            "Are the new keys restricted (copy only with your card)? Who may order more?"
        }
        Ask::OthersNeedANewCylinder => {
            "Which locks can share a key as they are, and which need a new cylinder (the part the key goes into)?"
        }
        Ask::IsCodeOrAddressKept => {
            "Do you keep our key code (a key can be cut from it) or our address? For how long?"
        }
        Ask::CodeOnNewKeys => "Can the new keys come with no number on them?",
    }
}

/// Something to do when the work is done.
pub fn after(after: AfterVisit) -> &'static str {
    match after {
        AfterVisit::OldKeyMustFail => "In the changed locks, the old key must no longer turn.",
        AfterVisit::TryEachNewKeyWithTheDoorOpen => "Try each new key, with the door open.",
        AfterVisit::CountTheNewKeys => "Count the new keys.",
        AfterVisit::KeepOldKeysThatOpenOtherLocks => {
            "Keep an old key that still opens another lock: it stays in use."
        }
        AfterVisit::TryOldKeyInShedGateAndPadlock => {
            "Try the old key in shed, gate and padlock before it is destroyed."
        }
        AfterVisit::ScrapTheOldKeys => "Last, destroy the old keys that open nothing any more.",
    }
}

/// For whom copies are: so many people of one kind.
pub fn recipient(recipient: BriefRecipient, people: usize) -> String {
    match (recipient, people) {
        (BriefRecipient::Person(Some(role)), 1) => role.words().to_lowercase(),
        (BriefRecipient::Person(Some(role)), people) => {
            format!(
                "{} ({} people)",
                role.words().to_lowercase(),
                counted(people)
            )
        }
        (BriefRecipient::Person(None), 1) => "one person".to_owned(),
        (BriefRecipient::Person(None), people) => format!("{} people", counted(people)),
        (BriefRecipient::Spare, _) => "the home".to_owned(),
    }
}

/// What shall be done, in the trade's words with their meaning at the foot of the page.
pub fn work(action: Action) -> &'static str {
    match action {
        Action::RekeyCylinder => "rekey (set to a new key)",
        Action::ChangeCylinder => "new cylinder, flush",
        Action::ChangeLockOrLevers => "new levers (flat plates) or lock",
        Action::ReplaceSmallLock => "replace the small lock (we may do it ourselves)",
        other => super::plan::verb(other),
    }
}

/// After the work on a lock that shall take a key that stays.
pub fn only_if_keyed_to(letter: &str) -> String {
    format!("only if it can be set to key {letter}; else both get a new key")
}

/// A kind of lock, short.
pub fn kind(kind: LockKind) -> &'static str {
    match kind {
        LockKind::PinTumbler => "round or oval cylinder (the part the key goes into)",
        LockKind::EuropeanProfile => "European profile (slides out of the door)",
        LockKind::Lever => "lever lock (flat plates)",
        LockKind::SmallLock => "small lock",
        LockKind::BuildingSystem => "part of a key system",
        LockKind::NotSure => "kind not known",
    }
}

/// What works it from inside, short.
pub fn inside(inside: Option<Inside>) -> &'static str {
    match inside {
        Some(Inside::ThumbTurn) => "thumb-turn (a knob you turn by hand)",
        Some(Inside::Key) => "key",
        Some(Inside::Nothing) => "nothing",
        None => PLEASE_LOOK,
    }
}

/// What the door is made of, short.
pub fn material(material: Option<Material>) -> String {
    material.map_or_else(String::new, |material| material.words().to_lowercase())
}

/// Two lengths.
pub fn lengths(outside_mm: u8, inside_mm: u8) -> String {
    format!("{outside_mm} and {inside_mm} mm")
}

/// Locks of the page by their numbers.
pub fn locks(places: &[usize]) -> String {
    let numbers: Vec<String> = places.iter().map(|place| (place + 1).to_string()).collect();
    match numbers.as_slice() {
        [] => String::new(),
        [one] => format!("lock {one}"),
        many => format!("locks {}", many.join(", ")),
    }
}

/// A key of the page by its letter; after Z they are counted.
pub fn key(place: usize) -> String {
    u8::try_from(place)
        .ok()
        .filter(|&place| place < 26)
        .map_or_else(
            || counted(place + 1),
            |place| char::from(b'A' + place).to_string(),
        )
}

/// A key of today, by the doors it opens that are not on the page.
pub fn key_of(letter: &str, doors: &[DoorKind]) -> String {
    let doors: Vec<String> = doors
        .iter()
        .map(|door| door.words().to_lowercase())
        .collect();
    match doors.as_slice() {
        [] => format!("{KEY} {letter}"),
        doors => format!("{KEY} {letter} ({})", doors.join(", ")),
    }
}

/// How many of a kind.
pub fn of_a_kind(kind_words: &str, count: usize) -> String {
    format!("{} × {kind_words}", counted(count))
}

/// So many of so many locks.
pub fn of(some: usize, all: usize) -> String {
    match (some, all) {
        (some, all) if some == all => "every lock".to_owned(),
        (some, all) => format!("{} of {} locks", counted(some), counted(all)),
    }
}

/// Copies that come with a key.
pub fn included(copies: u8) -> String {
    format!("We were told that {copies} copies come with each new key.")
}
