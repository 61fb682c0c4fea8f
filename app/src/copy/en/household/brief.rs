//! Words of the page for the locksmith.

use self_check_core::advice::{Action, Urgency};
use self_check_core::household::brief::{
    AfterVisit, Ask, BriefKey, BriefRecipient, Due, KeyRank, Keying, Measure, OldKey, OnlyIf,
    Quote, Restricted, Visit,
};
use self_check_core::household::{DoorKind, Inside, LockKind, Material, PriceItem};

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
    /// Before the trade's words and what they mean, for those who hand the page over.
    TRADE_WORDS = "Trade words on the page";
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
    SIZE = "Size";
    /// Column.
    WORKING_KEY = "Working key";
    /// Column.
    NEW_KEY = "Key after";
    /// Not known.
    PLEASE_LOOK = "please look";
    /// Where nobody has said it.
    NOT_KNOWN = "not known";
    /// Where there is nothing of the kind.
    NONE = "none";
    /// Where people may leave by the door.
    THUMB_TURN = "thumb-turn wanted if it is a way out; ask us if there is glass beside it";
    /// Before the same keyholes.
    SAME_KEYHOLE = "Same keyhole, so they can share a key as they are:";
    /// Where none is known.
    NO_SAME_KEYHOLE = "Locks that are to share a key need the same keyhole. Others need a new cylinder.";
    /// Third part.
    KEYS = "Keys and copies";
    /// Opens.
    OPENS = "opens";
    /// Of today, before the other doors it opens.
    STAYS = "stays as it is";
    /// Of today, in a lock that takes a new key beside it.
    STAYS_IN_USE = "stays as it is and must go on turning";
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
    COUNT = "How many";
    /// Below counts that may come to more.
    INSTEAD = "“Up to”: these come in place of another line, not beside it.";
    /// Line of the price list.
    KEYED_ALIKE = "Extra for each lock keyed alike";
    /// Line of the price list.
    MASTER_KEYED = "Extra for each master-keyed lock";
    /// Last line of the price list.
    TOTAL = "All together";
    /// Told elsewhere.
    TOLD = "Told elsewhere";
    /// To be filled in.
    YOUR_PRICE = "Your price";
    /// Fifth part.
    ASK = "We ask you";
    /// When the visit is due.
    VISIT_IS_DUE = "The visit is due";
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

/// The trade's words that may stand on the page, with what each means. They are for those who hand it over;
/// the locksmith knows them.
pub const WORDS: &[(&str, &str)] = &[
    ("Cylinder", "the part the key goes into."),
    (
        "European profile",
        "a cylinder that slides out of the door.",
    ),
    ("Rekey", "set to a new key. The lock stays."),
    ("Keyed alike", "said of locks that share one key."),
    (
        "Master-keyed",
        "each lock has its own key, and a master key opens them all.",
    ),
    ("Lever lock", "a lock with flat plates in it, the levers."),
    ("Thumb-turn", "a knob you turn by hand."),
    ("Restricted key", "a shop makes a copy only with your card."),
    ("Key code", "a number. A key can be cut from it."),
    ("Flush", "its end is level with the plate around it."),
    (
        "Snapped, drilled, picked",
        "broken off, bored through, opened with thin tools.",
    ),
    (
        "Case and backset",
        "the box of the lock, and how far the keyhole is from the door’s edge.",
    ),
    (
        "Faceplate and hand",
        "the strip on the door’s edge, and on which side the door hangs.",
    ),
];

/// Something that those who want the work ask the locksmith.
pub fn ask(ask: Ask) -> &'static str {
    match ask {
        Ask::WholePriceBeforeWork => "What is the whole price, with the visit, before any work?",
        Ask::LicenceAndPapers => "May we see your papers (and licence, where one is needed)?",
        Ask::ProofThatYouMay => "What proof do you need that we may have this done?",
        Ask::KeysThatComeWithIt => {
            "How many keys come with each new lock or cylinder? We pay for more only beyond those."
        }
        Ask::InsurersGrade => {
            "Does a new cylinder or lock resist being snapped, drilled and picked? To which grade? We tell you the one our insurer asks for."
        }
        Ask::RestrictedOrNot => "Are the new keys restricted? Who may order more?",
        Ask::OthersNeedANewCylinder => {
            "Which locks can share a key as they are, and which need a new cylinder?"
        }
        Ask::IsCodeOrAddressKept => "Do you keep our key code or our address? For how long?",
        Ask::CodeOnNewKeys => "Can the new keys come with no number on them?",
    }
}

/// What those who wanted the work do when it is done: with these old keys, and in these outlying doors.
pub fn after(after: AfterVisit, old_keys: &[OldKey], outlying: &[DoorKind]) -> String {
    match after {
        AfterVisit::OldKeyMustFail => must_fail(old_keys),
        AfterVisit::TryEachNewKeyWithTheDoorOpen => "try each new key, with the door open.".into(),
        AfterVisit::CountTheNewKeys => "count the new keys.".into(),
        AfterVisit::KeepOldKeysThatOpenOtherLocks => {
            "keep an old key that still opens another lock: it stays in use.".into()
        }
        AfterVisit::TryOldKeyInOutlyingDoors => {
            let doors: Vec<String> = outlying
                .iter()
                .map(|door| door.words().to_lowercase())
                .collect();
            let doors = match doors.as_slice() {
                [one] => format!("the {one}"),
                [before @ .., last] => format!("{} and {last}", before.join(", ")),
                [] => String::new(),
            };
            format!("try each old key in {doors} before it is destroyed.")
        }
        AfterVisit::ScrapTheOldKeys => {
            "last, destroy the old keys that open nothing any more.".into()
        }
    }
}

fn must_fail(old_keys: &[OldKey]) -> String {
    let name = |key: &OldKey| match key.rank {
        KeyRank::Alone => "the old key",
        KeyRank::Own => "the old own key",
        KeyRank::Master => "the old master key",
    };
    match old_keys {
        [one] => format!(
            "see that {} no longer turns in {}.",
            name(one),
            locks(&one.locks)
        ),
        several => {
            let each = several.iter();
            let each = each.map(|key| format!("{} in {}", name(key), locks(&key.locks)));
            let each: Vec<String> = each.collect();
            format!("see that these no longer turn: {}.", each.join("; "))
        }
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

/// What shall be done, in the trade's words.
pub fn work(action: Action, kind: LockKind) -> &'static str {
    match action {
        Action::RekeyCylinder if kind == LockKind::NotSure => {
            "rekey, or a new cylinder or lock: you tell us which, before the work"
        }
        Action::RekeyCylinder => "rekey",
        Action::ChangeCylinder => "new cylinder, flush",
        Action::ChangeLockOrLevers => "new levers or lock",
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
        LockKind::PinTumbler => "round or oval cylinder",
        LockKind::EuropeanProfile => "European profile",
        LockKind::Lever => "lever lock",
        LockKind::SmallLock => "small lock",
        LockKind::BuildingSystem => "part of a key system",
        LockKind::NotSure => "kind not known",
    }
}

/// What works it from inside, short.
pub fn inside(inside: Option<Inside>) -> &'static str {
    match inside {
        Some(Inside::ThumbTurn) => "thumb-turn",
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

/// What is known of a size, or what has to be measured: common practice of the trade.
pub fn measure(measure: Measure) -> String {
    match measure {
        Measure::Known(lengths) => format!(
            "{} mm outside, {} mm inside",
            lengths.outside_mm(),
            lengths.inside_mm()
        ),
        Measure::Lengths => "please measure: both lengths".into(),
        Measure::TypeAndLength => "please measure: type and length".into(),
        Measure::CaseAndBackset => {
            "please measure: case and backset; note faceplate and hand".into()
        }
        Measure::Size => "please measure: size".into(),
        Measure::KindFirst => "please look, and measure".into(),
        Measure::Nothing => "not needed".into(),
    }
}

/// Which keys of a lock are restricted today.
pub fn restricted(restricted: Restricted) -> &'static str {
    match restricted {
        Restricted::ItsKey => "restricted key today",
        Restricted::All => "all its keys are restricted today",
        Restricted::Master => "its master key is restricted today",
        Restricted::Own => "its own key is restricted today",
        Restricted::Some => "one of its keys is restricted today: ask us which",
    }
}

/// How many keys open a lock, where it is not one then as now.
pub fn keying(keying: Keying) -> Option<&'static str> {
    match keying {
        Keying::OneKey => None,
        Keying::MasterKeyed => Some("master-keyed, and stays so"),
        Keying::OneKeyAfterwards => Some("takes several keys today, one after the work"),
        Keying::OtherKeysNotTold => Some("master-keyed: ask us about its other keys first"),
        Keying::KeysOfMany => Some("central lock: the keys of many must go on turning"),
    }
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

/// A key that opens a lock afterwards: by its letter, and by what it is where the lock takes several.
pub fn key_after(letter: &str, rank: KeyRank) -> String {
    match rank {
        KeyRank::Alone => letter.to_owned(),
        KeyRank::Own => format!("{letter} (own)"),
        KeyRank::Master => format!("{letter} (master)"),
    }
}

/// What a key is, before its letter.
fn what_it_is(is_new: bool, rank: KeyRank) -> &'static str {
    match (is_new, rank) {
        (true, KeyRank::Alone) => "New key",
        (true, KeyRank::Own) => "New own key",
        (true, KeyRank::Master) => "New master key",
        (false, KeyRank::Alone) => "Key",
        (false, KeyRank::Own) => "Own key",
        (false, KeyRank::Master) => "Master key",
    }
}

/// A key by its letter and by the doors it opens that are not on the page.
pub fn key_of(letter: &str, key: &BriefKey) -> String {
    let name = format!("{} {letter}", what_it_is(key.is_new, key.rank));
    let doors = key.other_doors.as_slice();
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
        [] => name,
        doors => format!("{name} ({})", doors.join(", ")),
    }
}

/// How many of a kind.
pub fn of_a_kind(kind_words: &str, count: usize) -> String {
    format!("{} × {kind_words}", counted(count))
}

/// What a price is asked for, in the trade's words.
pub fn price_of(item: PriceItem) -> &'static str {
    match item {
        PriceItem::RekeyedCylinder => "One lock rekeyed",
        PriceItem::NewCylinder => "One new cylinder, fitted",
        PriceItem::LockOrLevers => "New levers or lever lock, fitted",
        item => item.words(),
    }
}

/// How many as planned.
pub fn planned(quote: &Quote) -> String {
    match quote.count {
        None => String::new(),
        Some(_) => quote.planned.to_string(),
    }
}

/// How many more, and when.
pub fn if_more(quote: &Quote) -> Option<String> {
    let count = quote.count?;
    let reasons = quote.only_if.iter().map(|&reason| only_if(reason));
    let reasons: Vec<&str> = reasons.collect();
    (!reasons.is_empty()).then(|| format!("up to {count} if {}", reasons.join(", or ")))
}

fn only_if(reason: OnlyIf) -> &'static str {
    match reason {
        OnlyIf::VisitCannotWait => "the visit cannot wait",
        OnlyIf::CannotTakeTheKeyThatStays => "the locks cannot be set to the key that stays",
        OnlyIf::KeyholesDiffer => "locks that shall share a key have unlike keyholes",
        OnlyIf::KindTurnsOutSo => "the lock turns out to be of that kind",
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
pub fn due(due: Due) -> &'static str {
    match (due.urgency, due.may_be_sooner) {
        (Some(Urgency::Soon), true) => DUE_SOON_OR_TODAY,
        (Some(Urgency::Habit | Urgency::WhenConvenient), true) | (None, _) => DUE_NOT_KNOWN,
        (Some(urgency), _) => super::super::urgency(urgency).name,
    }
}

/// How soon the visit is.
pub fn visit(visit: Visit) -> String {
    let soon = due(visit.due);
    if visit.is_today_to_open {
        format!("{soon} (today if a door has to be opened)")
    } else {
        soon.to_owned()
    }
}

/// When a lock is due that the visit does not see to.
pub fn not_of_the_visit(lock: Due) -> String {
    format!("not part of the visit; due: {}", due(lock))
}

/// Keys that come with a lock.
pub fn included(keys: u8) -> String {
    match keys {
        1 => "We were told that 1 key comes with each new lock or cylinder.".to_owned(),
        keys => format!("We were told that {keys} keys come with each new lock or cylinder."),
    }
}
