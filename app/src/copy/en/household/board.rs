//! Words of the board: who holds which key, what opens, what could be in wrong hands.

use self_check_core::household::{
    DoorKind, Finding, FoundExposure, LockKind, Loss, WayKind, WhoDecides,
};

use crate::copy::Listed;
use crate::copy::en::numbers::counted;
use crate::household::{Did, LoadedFrom, Part, Told};

use super::Names;

texts! {
    // Empty
    /// Title, and the heading of the empty board.
    TITLE = "Keys and doors";
    /// What it is for.
    LEDE = "Put down who holds which key and what it opens. Then see what a lost key would open, what to change, and what to tell the locksmith.";
    /// The promise.
    PROMISE = "It all stays in this page. No names, no addresses, no numbers of keys.";
    /// Heading of the quick start.
    QUICK = "Start from a home like yours";
    /// Below it.
    QUICK_HINT = "You can change everything afterwards.";
    /// One door.
    QUICK_ONE = "One door";
    /// Two doors, one key.
    QUICK_ALIKE = "Two doors, one key for both";
    /// Two doors, two keys.
    QUICK_TWO = "Two doors, a key for each";
    /// A flat and its entrance.
    QUICK_FLAT = "A flat, and the building’s door with a key of its own";
    /// A flat in a system.
    QUICK_SYSTEM = "A flat whose key opens the building’s door too";
    /// Question on the lock.
    QUICK_LOCK = "What kind of lock is on your own door?";
    /// Question on who decides, for a flat.
    QUICK_DECIDES = "Who decides about the lock of the flat’s door?";
    /// Hint for it.
    QUICK_DECIDES_HINT = "If you rent, that may be the landlord. The building’s own door is put down as the manager’s.";
    /// Question on people.
    QUICK_PEOPLE = "Who has a key?";
    /// Hint for it.
    QUICK_PEOPLE_HINT = "Choose how many of each. Each gets one copy of each key.";
    /// Another kind of person.
    QUICK_MORE = "More kinds of people";
    /// Makes it.
    QUICK_MAKE = "Put it on the board";
    /// Fills in the example.
    TRY_EXAMPLE = "Try it with an example";
    /// Starts with nothing.
    BY_HAND = "Start with an empty board";
    /// What the example is.
    EXAMPLE_NOTE = "These keys belong to an invented home: a terraced house with a workshop behind it. The prices are invented too.";
    /// Ends it.
    EXAMPLE_END = "Put down my own keys";

    // The bar
    /// Names the bar.
    BAR = "What you did last";
    /// One step back.
    UNDO = "Undo";
    /// One step forward.
    REDO = "Redo";

    // Ways on
    /// Names the pages of keys and doors.
    PAGES = "On from here";
    /// The board.
    BOARD = "The board";
    /// To the plan.
    PLAN = "What to do";
    /// To the comparison.
    COMPARE = "Which doors should share a key";
    /// To the prices.
    COSTS = "What it costs";
    /// To the page for the locksmith.
    BRIEF = "A page for the locksmith";

    // Parts of the board
    /// Names the ways to them.
    PARTS = "On this board";

    // Keys
    /// Heading.
    KEYS = "Keys";
    /// Adds one.
    ADD_KEY = "Add a key";
    /// Before who has it.
    WITH = "With";
    /// Before how many copies there are.
    COPIES = "Copies";
    /// A copy in the home.
    AT_HOME = "in the home";
    /// A copy that came back.
    CAME_BACK = "given back by";
    /// A destroyed copy.
    SCRAPPED = "destroyed";
    /// Nobody has one.
    NO_COPIES = "no copy put down yet";
    /// To its check.
    CHECK_KEY = "Check this key";
    /// Where another check's answers are still there.
    CHECK_FORGETS = "A check of a key starts afresh: answers you gave for another key are forgotten.";
    /// Not checked.
    NOT_CHECKED = "Not checked yet.";
    /// Checked, nothing found.
    CHECKED_CALM = "Checked: nothing gave it away.";
    /// Checked, too little known.
    CHECKED_OPEN = "Checked: too little is known to say.";
    /// Checked and found.
    CHECKED_OUT = "Found: old copies should stop working.";

    // People
    /// Heading.
    PEOPLE = "People";
    /// Adds one.
    ADD_PERSON = "Add a person";
    /// Before their keys.
    CARRIES = "Carries";
    /// None.
    CARRIES_NONE = "No key";
    /// What a key that opens nothing is for.
    NO_DOOR_YET = "no door yet";
    /// Before what opens.
    OPENS = "Opens";
    /// Nothing.
    OPENS_NONE = "Nothing";
    /// Marks the ring lost.
    LOSE_RING = "This ring is lost";
    /// Before what was lost.
    WENT = "What went";
    /// What the ring opened.
    LOST_OPENS = "Whoever finds it can open";
    /// What the ring that was not given back opens.
    KEPT_OPENS = "Whoever has it can open";
    /// Who lost it.
    WHOSE = "Whose was it?";
    /// How it went.
    HOW_LOST = "How did it go missing?";
    /// How soon, while nobody has said how it went.
    DEPENDS = "It depends on how it went missing";
    /// The same, where it is due soon in any case.
    SOON_OR_TODAY = "Soon, or today: it depends on how it went missing";
    /// It turned up.
    FOUND = "It has turned up";
    /// To the plan.
    SEE_PLAN = "See what to do";
    /// To the plan, beside what was lost.
    SEE_PLAN_NOW = "See what to do now";
    /// Somebody who should not come in.
    NO_LONGER = "Should no longer come in";
    /// One lock of several.
    IN_PART = "in part: another lock holds";

    // Doors
    /// Heading.
    DOORS = "Doors";
    /// Before there is a door.
    DOORS_FIRST = "Begin with a door. The key to its lock comes with it.";
    /// Adds one.
    ADD_DOOR = "Add a door";
    /// Before its keys.
    KEYS_OF_DOOR = "Opened by the key to";
    /// No lock.
    NO_LOCK = "No lock with a key";
    /// A lock without a key.
    NO_KEY = "No key put down yet";
    /// Adds a lock.
    ADD_LOCK = "Add a lock";
    /// Adds a way in.
    ADD_WAY = "Add another way in";
    /// Stands open to others.
    OPEN_TO_OTHERS = "Others may be able to open this door";
    /// The same of one of several locks.
    HELD = "Others may be able to turn one lock of it; another holds the door";
    /// Known by.
    KNOWN_BY = "Known by";
    /// The same of what is held in the hand.
    IS_WITH = "With";
    /// Known by nobody.
    KNOWN_BY_NOBODY = "Nobody put down yet";
    /// Given away.
    WAY_GIVEN = "In wrong hands, or may be";

    // More or less than needed
    /// Heading.
    GAPS = "More or less than they need";
    /// Below it.
    GAPS_LEDE = "What people can open beside what they need. Where you have not said what a person needs, they count as needing what they can open.";
    /// None, everybody's need being said.
    GAPS_NONE = "Everybody opens what they need, and nothing else.";
    /// None, nobody's need being said.
    GAPS_NOT_SAID = "You have not said who needs which door. So everybody counts as needing just what they can open, and nothing can show here.";
    /// None, some needs being said.
    GAPS_NONE_SAID = "Nobody whose needs you told opens more or less than that.";
    /// Before those whose need is not said.
    NOT_SAID_OF = "You have not said what these people need";
    /// Says it.
    SAY_NEEDS = "Say who needs which door";
    /// What is ticked on that sheet.
    NEEDS_HINT = "What each of them can open is ticked. Take the tick off where they do not need it.";
    /// Before the doors beyond need.
    BEYOND = "Opens without need";
    /// Before the doors without a key.
    WITHOUT = "Needs and cannot open";

    // The table
    /// Names the table.
    TABLE = "Who can open what";
    /// Mark: opens and needs.
    MARK_OPENS = "opens";
    /// Mark: opens without need.
    MARK_BEYOND = "opens without need";
    /// Mark: needs, cannot open.
    MARK_WITHOUT = "needs it, cannot open it";
    /// Mark: opens in part.
    MARK_PART = "one lock of several";
    /// Mark: does not open.
    MARK_NOTHING = "does not open";
    /// First column.
    PERSON = "Person";

    // Forms
    /// Changes a key.
    CHANGE_KEY = "Edit key";
    /// Before the keys in a key safe.
    IN_IT = "In it";
    /// Where there is none.
    NOTHING_IN_IT = "No key is put down in it: it opens nothing here";
    /// A lock or way of others who were told.
    WAITED_FOR = "Those who decide about it were told";
    /// The same where they do nothing.
    LEFT_AS_IT_IS = "Those who decide leave it as it is";
    /// Changes a person.
    CHANGE_PERSON = "Edit person";
    /// Changes a door.
    CHANGE_DOOR = "Edit door";
    /// Changes a lock.
    CHANGE_LOCK = "Edit lock";
    /// Changes a way in.
    CHANGE_WAY = "Edit way in";
    /// Saves.
    SAVE = "Save";
    /// Leaves it as it was.
    CANCEL = "Leave it as it was";
    /// Removes.
    REMOVE = "Remove";
    /// Kind of door.
    DOOR_KIND = "What kind of door?";
    /// Own word.
    LABEL = "Your own word for it, if you like";
    /// Hint on it.
    LABEL_HINT = "At most 24 letters and two digits. No names, no address, no number of a key.";
    /// Who decides.
    WHO_DECIDES = "Who decides about its locks?";
    /// Material.
    MATERIAL = "What is the door made of?";
    /// Unknown.
    NOT_KNOWN = "Not known";
    /// How many.
    HOW_MANY_DOORS = "How many doors like this?";
    /// Kind of lock.
    LOCK_KIND = "What kind of lock?";
    /// No lock.
    NO_LOCK_CHOICE = "No lock with a key";
    /// Which key.
    WHICH_KEY = "Which key opens it?";
    /// A new key.
    NEW_KEY = "A new key";
    /// A new key each.
    NEW_KEY_EACH = "A new key for each";
    /// A new key for all.
    NEW_KEY_FOR_ALL = "One new key for all of them";
    /// No key yet.
    NO_KEY_CHOICE = "I will say later";
    /// Copies at home.
    COPIES_AT_HOME = "Copies of each new key, kept in the home until you say who has them";
    /// Keys of a lock.
    LOCK_KEYS = "Which keys open it?";
    /// Arrangement.
    ARRANGEMENT = "How many keys open it?";
    /// Inside.
    INSIDE = "What turns it from inside?";
    /// Keyholes.
    KEYWAY = "Shape of the keyhole";
    /// Hint on it.
    KEYWAY_HINT = "Locks with the same keyhole take the same blank (uncut key) and can share a key. Give each shape its own number, starting from 1.";
    /// Lengths.
    OUTSIDE_MM = "From the screw to the outer end, in mm";
    /// Lengths.
    INSIDE_MM = "From the screw to the inner end, in mm";
    /// Restricted.
    RESTRICTED = "Is it a restricted key (a copy only with your card)?";
    /// Whether a copy may have been made while it was out.
    MAY_BE_COPIED = "Could someone have copied it while it was out of your hands?";
    /// Yes.
    YES = "Yes";
    /// No.
    NO = "No";
    /// What it opens.
    KEY_OPENS = "Which doors does it open?";
    /// Give.
    GIVE = "Give copies";
    /// Keys for a person.
    GIVE_KEYS = "Give one copy of";
    /// To whom.
    GIVE_TO = "To whom?";
    /// How many.
    HOW_MANY = "How many?";
    /// A copy's place.
    WHERE = "Where is it?";
    /// Place: in a home.
    PLACE_HOME = "In the home";
    /// Place: lost.
    PLACE_LOST = "Lost";
    /// Place: scrapped.
    PLACE_SCRAPPED = "Destroyed";
    /// One copy.
    COPY = "Copy";
    /// Lost in one press.
    LOSE_COPY = "This copy is lost";
    /// Role.
    ROLE = "Who is it?";
    /// How many people.
    HOW_MANY_PEOPLE = "How many people like this?";
    /// Needs.
    NEEDS = "Which doors do they need?";
    /// Not said.
    NEEDS_NOT_SAID = "I will not say: they need what they can open";
    /// All that they had is back.
    ALL_BACK = "All their keys are back";
    /// Hint on it.
    ALL_BACK_HINT = "Each key they carry is then put down in the home, given back by them. A remote is with them no more.";
    /// No longer.
    NO_LONGER_LABEL = "They should no longer come in";
    /// Hint on it.
    NO_LONGER_HINT = "Then every key they had counts as out, given back or not: it may have been copied. Only one that needs your card to be copied does not, once it is back.";
    /// Way.
    WAY_KIND = "What opens the door without a key?";
    /// Way: what lies in a key safe.
    WAY_KEYS = "Which keys lie in it?";
    /// Hint.
    WAY_KEYS_HINT = "Each one counts as one copy more. With none ticked, nobody gets in by it.";
    /// Way: knowers.
    WAY_KNOWN = "Who knows the code, has the remote or uses the app?";

    // Large homes
    /// Finds.
    FIND = "Find";
    /// Only those.
    ONLY_OUT = "Only what could be in wrong hands";
    /// Nothing fits.
    NONE_FOUND = "Nothing here fits what you wrote.";

    // A check's finding
    /// Heading.
    WAITING = "Which key did you check?";
    /// Below it.
    WAITING_LEDE = "The result of your check is here. Choose the key that was in your hand.";
    /// The list of keys.
    WAITING_KEY = "The key that was in your hand";
    /// Its first line.
    WAITING_CHOOSE = "Choose a key";
    /// Nothing was chosen.
    WAITING_NOT_CHOSEN = "Choose which key it was. It need not be on the board yet.";
    /// New key.
    WAITING_NEW = "A key that is not on the board yet";
    /// Takes it.
    WAITING_TAKE = "Take the result over";
    /// Lets it go.
    WAITING_DROP = "Do not take it over";
    /// On the result page.
    TAKE_OVER = "Take this over into keys and doors";
    /// Below it.
    TAKE_OVER_NOTE = "Only what it means for your locks goes over, not your answers. It stays in this page.";

    // Safety
    /// Before everything, where a person is feared.
    SAFETY = "Your safety comes first. Before you change a lock, plan with a service you trust. Nothing on this page is kept, and on paper it stays empty.";
    /// All that stands on paper then: a sheet that is found must not tell of a plan.
    NOT_PRINTED = "This page is made for the screen. It prints nothing.";
}

/// What could be in wrong hands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Out {
    /// Keys.
    pub keys: usize,
    /// Whether all of those keys are back, so that only a copy of them may be out.
    pub is_only_copied: bool,
    /// Remotes.
    pub remotes: usize,
    /// Other ways in.
    pub ways: usize,
}

impl Out {
    /// How many things that is.
    const fn count(self) -> usize {
        self.keys + self.remotes + self.ways
    }
}

/// The heading of a board with keys on it.
pub fn headline(out: Out, keys: usize) -> String {
    let remotes = match out.remotes {
        0 => None,
        1 => Some("a remote".to_owned()),
        count => Some(format!("{} remotes", number_word(count).to_lowercase())),
    };
    let keys_out = match out.keys {
        1 => "One key".to_owned(),
        count => format!("{} keys", number_word(count)),
    };
    match (out.keys, remotes, out.ways) {
        (0, None, 0) if keys == 0 => "Your doors so far".to_owned(),
        (0, None, 0) => "No key here is known to be in wrong hands".to_owned(),
        (0, None, 1) => "A way in could be known to others".to_owned(),
        (0, None, _) => "Some ways in could be known to others".to_owned(),
        (0, Some(_), 0) if out.remotes == 1 => "A remote could be in wrong hands".to_owned(),
        (0, Some(_), 0) => format!(
            "{} remotes could be in wrong hands",
            number_word(out.remotes)
        ),
        (0, Some(_), _) => "Some ways in could be open to others".to_owned(),
        (_, None, _) if out.is_only_copied => format!("{keys_out} may have been copied"),
        (_, Some(remotes), _) if out.is_only_copied => {
            format!("{keys_out} may have been copied, and {remotes} could be in wrong hands")
        }
        (_, Some(remotes), _) => format!("{keys_out} and {remotes} could be in wrong hands"),
        (_, None, _) => format!("{keys_out} could be in wrong hands"),
    }
}

/// Which doors that means.
pub fn headline_doors(doors: &str, count: usize, out: Out) -> String {
    let opens = match out.count() {
        0 | 1 => "That opens",
        _ => "They open",
    };
    match count {
        0 if out.count() > 0 => format!("{opens} no whole door."),
        0 => "Look again when a key goes missing, or when someone leaves.".to_owned(),
        1 => format!("{opens} one door: {doors}."),
        _ => format!("{opens} {} doors: {doors}.", counted(count)),
    }
}

/// Doors at which other locks hold.
pub fn headline_held(doors: &str) -> String {
    format!("One lock turns, and another holds the door, at: {doors}.")
}

/// Small counts as words, larger ones in digits.
fn number_word(count: usize) -> String {
    const WORDS: [&str; 10] = [
        "No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine",
    ];
    WORDS
        .get(count)
        .map_or_else(|| counted(count), |&word| word.to_owned())
}

/// How much there is.
pub fn sizes(doors: usize, keys: usize, copies: usize, people: usize) -> String {
    format!(
        "Doors: {}. Keys: {}. Copies: {}. People: {}.",
        counted(doors),
        counted(keys),
        counted(copies),
        counted(people)
    )
}

/// Which doors one person needs.
pub fn needs_of(person: &str) -> String {
    format!("{person} needs")
}

/// How a copy of a key went missing, where there are several.
pub fn how_lost(by: Option<&str>, key: &str) -> String {
    match by {
        Some(by) => format!("{HOW_LOST} ({by}, key to {key})"),
        None => format!("{HOW_LOST} (key to {key})"),
    }
}

/// So many more losses are asked about once those before them are answered.
pub fn more_losses(more: usize) -> String {
    match more {
        1 => "One more is asked about when you have answered one of these.".to_owned(),
        more => format!(
            "{} more are asked about, one by one, as you answer these.",
            counted(more)
        ),
    }
}

/// More rows to be shown.
pub fn show_more(more: usize) -> String {
    format!("Show {} more", counted(more))
}

/// So many of them are shown.
pub fn shown(shown: usize, all: usize) -> String {
    format!("{} of {} shown.", counted(shown), counted(all))
}

/// A ring that was lost, or was not given back.
pub fn ring_is_lost(holder: &str, loss: Loss, has_keys: bool) -> String {
    let what = if has_keys { "keys" } else { "remote" };
    match loss {
        Loss::NotReturned => format!("{holder}: {what} not given back"),
        _ => format!("{holder}: lost {what}"),
    }
}

/// Marks a way in given away.
pub fn way_lost(kind: WayKind) -> &'static str {
    match kind {
        WayKind::Remote => "One is lost",
        WayKind::DoorCode | WayKind::KeySafe => "Someone else has it now",
        WayKind::App => "Someone else can use it, or a phone with it is gone",
    }
}

/// Takes the mark back, the way in having been changed.
pub fn way_changed(kind: WayKind) -> &'static str {
    match kind {
        WayKind::Remote => "The lost one no longer works",
        WayKind::DoorCode | WayKind::KeySafe => "The code has been changed",
        WayKind::App => "The user or phone has been removed",
    }
}

/// A copy that is out, by how it went.
pub fn gone(loss: Loss) -> &'static str {
    match loss {
        Loss::MislaidIndoors => "mislaid indoors",
        Loss::Stolen => "stolen or taken",
        Loss::NotReturned => "not given back",
        Loss::NotSaid | Loss::FarAway | Loss::NearHome | Loss::WithTheAddress => "lost",
    }
}

/// How many copies of a key there are, and how many are out in which way.
pub fn copies(all: usize, out: &[(&str, usize)]) -> String {
    let out = out
        .iter()
        .map(|&(how, count)| format!(", {} {how}", counted(count)));
    format!("{COPIES}: {}{}", counted(all), out.collect::<String>())
}

/// What somebody carries: so many keys, and what each is for. Each is one key on the ring.
pub fn carries(keys: &[(String, usize)], more: usize) -> String {
    let count = keys.iter().map(|&(_, count)| count).sum::<usize>() + more;
    let one = |(doors, count): &(String, usize)| match count {
        1 => format!("one for {doors}"),
        count => format!("{} the same for {doors}", counted(*count)),
    };
    match (count, keys) {
        (0, _) => CARRIES_NONE.to_owned(),
        (1, [(doors, _)]) => format!("1 key, for {doors}"),
        (count, keys) => {
            let all = keys
                .iter()
                .map(one)
                .chain((more > 0).then(|| and_more(more)));
            format!(
                "{} keys: {}",
                counted(count),
                all.collect::<Vec<_>>().join("; ")
            )
        }
    }
}

/// What a button does, and about what: for those who hear the buttons one by one.
pub fn about(what: &str, of: &str) -> String {
    format!("{what}: {of}")
}

/// Who decides about a door's locks: said where it is another, and where a flat might be let.
pub fn decides(who: WhoDecides, kind: DoorKind) -> Option<&'static str> {
    match who {
        WhoDecides::Household if kind == DoorKind::FlatDoor => Some("You decide about its locks."),
        WhoDecides::Household => None,
        WhoDecides::Landlord => Some("The landlord decides about its locks."),
        WhoDecides::Manager => Some("The manager of the building decides about its locks."),
        WhoDecides::AnotherOwner => Some("Another owner decides about its locks."),
    }
}

/// The kind of a lock, as the board says it.
pub fn lock_kind(kind: LockKind) -> &'static str {
    match kind {
        LockKind::NotSure => "A lock; its kind is not put down",
        kind => kind.words(),
    }
}

/// A key, by what it opens.
pub fn key_to(doors: &str) -> String {
    format!("The key to {doors}")
}

/// More than are named.
pub fn and_more(more: usize) -> String {
    format!("and {} more", counted(more))
}

/// What a key's check found.
pub fn finding(finding: Option<Finding>) -> &'static str {
    match finding.map(|finding| finding.exposure) {
        None => NOT_CHECKED,
        Some(FoundExposure::NotExposed) => CHECKED_CALM,
        Some(FoundExposure::CannotTell) => CHECKED_OPEN,
        Some(FoundExposure::Exposed(_)) => CHECKED_OUT,
    }
}

/// Who has a copy that the check may have left out.
pub fn left_out(people: &str, more: usize) -> String {
    let more = match more {
        0 => String::new(),
        more => format!(" {}", and_more(more)),
    };
    format!(
        "Does not live here and has a copy: {people}{more}. If your check left them out, check again."
    )
}

/// Undo or redo, with what the step did where that can be said.
pub fn of_step(what: &str, did: Option<Did>) -> String {
    let did = match did {
        None => return what.to_owned(),
        Some(Did::Began) => "the first step".to_owned(),
        Some(Did::Lost) => "the loss".to_owned(),
        Some(Did::SaidHow) => "how it went missing".to_owned(),
        Some(Did::TurnedUp) => "that it turned up".to_owned(),
        Some(Did::Worked) => "the work that was done".to_owned(),
        Some(Did::Several) => "several things at once".to_owned(),
        Some(Did::Changed(part)) => format!("change to {}", self::part(part)),
    };
    about(what, &did)
}

/// Something in which two boards differ, within a row.
pub fn part(part: Part) -> &'static str {
    match part {
        Part::Doors => "doors",
        Part::Locks => "locks",
        Part::Keys => "keys",
        Part::Checks => "what checks found",
        Part::Copies => "copies",
        Part::Places => "where copies are",
        Part::People => "people",
        Part::Ways => "other ways in",
        Part::Replies => "what others were told or said",
        Part::Prices => "prices",
    }
}

/// Why a person whose copies are all back or destroyed is not removed.
pub fn had_copies(holder: &str) -> String {
    format!(
        "{holder}: keys that this person had stay noted with them, even when they are back. One may have been copied."
    )
}

/// What happened last.
pub fn told(told: Told, names: &Names) -> String {
    match told {
        Told::Changed => "Changed. You can undo it.".to_owned(),
        Told::Unchanged => "Nothing was changed.".to_owned(),
        Told::Planned => "The plan is for the way you chose.".to_owned(),
        Told::Undone => "Undone.".to_owned(),
        Told::Redone => "Done again.".to_owned(),
        Told::CarriedOut => {
            "It is noted, and the board shows how things are now. You can undo it.".to_owned()
        }
        Told::Emptied => "Everything here is forgotten.".to_owned(),
        Told::TakenOver(key) => {
            let key = names.key(key);
            format!("The result of the check is now with this key: {key}. You can undo it.")
        }
        Told::LetGo => "The result of that check is not taken over.".to_owned(),
        Told::Loaded(LoadedFrom::File) => {
            "The file is open. What it holds is on the board now.".to_owned()
        }
        Told::Loaded(LoadedFrom::Device) => {
            "What was kept on this device is on the board.".to_owned()
        }
        Told::Refused(refusal) => super::refusal(refusal, names),
    }
}
