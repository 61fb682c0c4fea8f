//! Words of the page for the locksmith.

use self_check_core::advice::{Action, Urgency};
use self_check_core::household::brief::{AfterVisit, Ask, BriefRecipient, Quote};
use self_check_core::household::{DoorKind, Inside, LockKind, Material};

use crate::copy::Listed;
use crate::copy::en::numbers::counted;

texts! {
    /// Title and heading.
    TITLE = "A page for the locksmith";
    /// Opening line.
    LEDE = "It is in the order of the visit. It holds no name, no address and no code. Doors, work, keys and numbers of copies stand on it. You tick what else does.";
    /// Before the ticks.
    TICKS = "What else may stand on it?";
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
    NOTHING = "The plan holds no lock to see to, no key to cut and no door to open. There is nothing to print.";
    /// Before the visit, where a new lock may come.
    INSURER = "Insurers often name a standard and a grade for locks. Ask which standard your insurer names, and tell the locksmith.";
    /// Not on the safety branch.
    SAFETY = "Nothing is printed here. Plan first with a service you trust.";

    // The page itself: “we” are those who want the work, “you” is the locksmith.
    /// Heading of the sheet.
    SHEET = "Lock work: what we need";
    /// First part.
    FIRST = "First, at the door";
    /// Answer to be given.
    WE_CAN_GET_IN = "We can get in";
    /// Answer to be given.
    DOOR_SHUTS_WELL = "The door shuts well";
    /// Answer to be given.
    WE_HAVE_PROOF = "We can show that we may have the locks changed";
    /// Yes.
    YES = "yes";
    /// No.
    NO = "no";
    /// To be ticked by hand.
    OPEN = "yes / no";
    /// Before the locks of doors that may have to be opened first.
    TO_OPEN = "No key is at hand: please open it without damage";
    /// Where nobody can get in, though a key to each door is told of.
    TO_OPEN_ONE = "We cannot get in: ask us which door, and please open it without damage";
    /// After the doors whose locks others see to.
    OTHERS_DECIDE = "We first ask who decides about the door. Its lock stays as it is.";
    /// The same before it is printed, to those who want the work.
    ASK_WHO_DECIDES = "The page asks to have a door opened whose lock is not yours to change. Ask who decides about the door first. They may have a key.";
    /// A key that is told of, where nobody can get in.
    ASK_US = "ask us";
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
    MADE_OF = "Door made of";
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
    /// Where nobody has said it.
    NOT_KNOWN = "not known";
    /// Where there is nothing of the kind.
    NONE = "none";
    /// Where no length matters.
    NO_LENGTHS = "not needed";
    /// Where people may leave by the door.
    THUMB_TURN = "thumb-turn (a knob you turn by hand) wanted if it is a way out; ask us if there is glass beside it";
    /// Restricted today.
    RESTRICTED = "restricted key today (copy only with our card)";
    /// More than one key.
    MORE_KEYS = "more than one key opens it: ask us before the work";
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
    STAYS = "stays as it is";
    /// One of today at hand, of which copies are wanted.
    BRING_TO_COPY = ", and we bring it to be copied";
    /// One of today at hand.
    BRING = ", and we bring it";
    /// A lock that goes on taking the own keys of many.
    AND_MANY = "and every other key that opens it today";
    /// Fourth part.
    QUOTES = "Price before the work begins";
    /// For.
    FOR = "For";
    /// Count.
    COUNT = "At most";
    /// Beside a count that stands in place of the one above it.
    INSTEAD = "“Or”: in place of a line above, not beside it.";
    /// Told elsewhere.
    TOLD = "Told elsewhere";
    /// To be filled in.
    YOUR_PRICE = "Your price";
    /// Fifth part.
    ASK = "We ask you";
    /// Column.
    DUE = "Due";
    /// While nobody has said how a key was lost.
    DUE_SOON_OR_TODAY = "Soon, or today: not known yet";
    /// The same, where it may not be soon either.
    DUE_NOT_KNOWN = "not known yet";
    /// Before the locks for which there is one.
    WORKING_KEY_AT_HAND = "We have a working key for";
    /// At the foot.
    FOOT = "Made in the browser, sent nowhere";
    /// Last part.
    AFTER = "When the work is done, we";
}

/// Something that those who want the work ask the locksmith.
pub fn ask(ask: Ask) -> &'static str {
    match ask {
        Ask::WholePriceBeforeWork => "What is the whole price, with the visit, before any work?",
        Ask::LicenceAndPapers => "May we see your papers (and licence, where one is needed)?",
        Ask::ProofThatYouMay => "What proof do you need that we may have this done?",
        Ask::KeysThatComeWithIt => {
            "How many keys come with each new lock or cylinder (the part the key goes into)? We pay for more only beyond those."
        }
        Ask::InsurersGrade => {
            "Does a new cylinder or lock resist being snapped (broken off), drilled and picked (opened with thin tools)? To which grade? We tell you the one our insurer asks for."
        }
        Ask::RestrictedOrNot => {
            "Are the new keys restricted (copy only with our card)? Who may order more?"
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

/// What those who wanted the work do when it is done.
pub fn after(after: AfterVisit) -> &'static str {
    match after {
        AfterVisit::OldKeyMustFail => "see that the old key no longer turns in the changed locks.",
        AfterVisit::TryEachNewKeyWithTheDoorOpen => "try each new key, with the door open.",
        AfterVisit::CountTheNewKeys => "count the new keys.",
        AfterVisit::KeepOldKeysThatOpenOtherLocks => {
            "keep an old key that still opens another lock: it stays in use."
        }
        AfterVisit::TryOldKeyInShedGateAndPadlock => {
            "try the old key in shed, gate and padlock before it is destroyed."
        }
        AfterVisit::ScrapTheOldKeys => "last, destroy the old keys that open nothing any more.",
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
pub fn work(action: Action, kind: LockKind) -> &'static str {
    match action {
        Action::RekeyCylinder if kind == LockKind::NotSure => {
            "rekey (set to a new key), or a new cylinder or lock: you tell us which, before the work"
        }
        Action::RekeyCylinder => "rekey (set to a new key)",
        Action::ChangeCylinder => "new cylinder, flush",
        Action::ChangeLockOrLevers => "new levers (flat plates) or lock",
        Action::ReplaceSmallLock => "replace the small lock (we may do it ourselves)",
        other => super::plan::verb(other),
    }
}

/// After the work on a lock that shall take a key that stays.
pub fn only_if_keyed_to(letter: &str) -> String {
    format!(
        "only if it can be set to key {letter}; else it and all locks of that key get a new one"
    )
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
        Some(Inside::Nothing) => NONE,
        None => PLEASE_LOOK,
    }
}

/// What the door is made of, short.
pub fn material(material: Option<Material>) -> String {
    material.map_or_else(
        || NOT_KNOWN.to_owned(),
        |material| material.words().to_lowercase(),
    )
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
    let mut kinds: Vec<(DoorKind, usize)> = Vec::new();
    for &door in doors {
        match kinds.iter_mut().find(|(kind, _)| *kind == door) {
            Some((_, count)) => *count += 1,
            None => kinds.push((door, 1)),
        }
    }
    let doors: Vec<String> = kinds
        .into_iter()
        .map(|(door, count)| match count {
            1 => door.words().to_lowercase(),
            count => of_a_kind(&door.words().to_lowercase(), count),
        })
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

/// How many at most, and whether they come in place of the line above.
pub fn at_most(quote: &Quote) -> String {
    match quote.count {
        None => String::new(),
        Some(count) if quote.instead == 0 => count.to_string(),
        Some(count) if quote.instead == count => format!("or {count}"),
        Some(count) => format!("{}, or {count}", count - quote.instead),
    }
}

/// So many of so many locks.
pub fn of(some: usize, all: usize) -> String {
    match (some, all) {
        (0, _) => "no lock".to_owned(),
        (1, 1) => "the lock".to_owned(),
        (some, all) if some == all => "every lock".to_owned(),
        (some, all) => format!("{} of {} locks", counted(some), counted(all)),
    }
}

/// A lock by its number on the page and its name.
pub fn numbered(place: usize, name: &str) -> String {
    format!("{}. {name}", counted(place + 1))
}

/// A door that has an own word, which may stand on the page or not.
pub fn door(kind: DoorKind, label: Option<&str>) -> String {
    match label {
        Some(label) => format!("{} ({label})", kind.words()),
        None => kind.words().to_owned(),
    }
}

/// How soon. While nobody has said how a key was lost, the answer decides.
pub fn due(urgency: Option<Urgency>, may_be_sooner: bool) -> &'static str {
    match (urgency, may_be_sooner) {
        (Some(Urgency::Soon), true) => DUE_SOON_OR_TODAY,
        (None | Some(Urgency::Habit | Urgency::WhenConvenient), true) => DUE_NOT_KNOWN,
        (Some(urgency), _) => super::super::urgency(urgency).name,
        (None, false) => "",
    }
}

/// Keys that come with a lock.
pub fn included(keys: u8) -> String {
    match keys {
        1 => "We were told that 1 key comes with each new lock or cylinder.".to_owned(),
        keys => format!("We were told that {keys} keys come with each new lock or cylinder."),
    }
}
