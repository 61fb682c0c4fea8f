//! Words of the plan, the comparison and the costs.

use self_check_core::advice::Action;
use self_check_core::household::plan::{Note, Recipient, Step};
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::{
    CostLine, ExposedBy, Household, LockKind, Loss, Place, PriceItem, PriceRange, Priced, Prices,
    Reply, WayKind,
};

use super::Names;
use crate::copy::Listed;
use crate::copy::en::numbers::counted;

texts! {
    // The plan
    /// Title and heading.
    TITLE = "What to do";
    /// Nothing to do.
    NOTHING = "Nothing has to be changed: no key here is known to be in wrong hands.";
    /// The same just after all of it was done.
    NOTHING_NOW = "All of it is done: no key here is known to be in wrong hands any more.";
    /// Opening line.
    LEDE = "Done in this order, no key that is out opens anything, and as few locks as possible are touched.";
    /// Opening line with another grouping.
    LEDE_REGROUPED = "Done in this order, no key that is out opens anything, and the doors share keys as you chose.";
    /// Opening line where only others have anything to do.
    LEDE_OTHERS = "The rest is for others to do. Until they have, what is named below still opens.";
    /// The same while they have yet to be told.
    LEDE_TELL = "Others decide about these locks. Tell them what is gone. Until they act, what is named below still opens.";
    /// The same where they leave it as it is.
    LEDE_LEFT = "What others leave as it is still opens to whoever has the key or code.";
    /// The same with a part of one’s own.
    LEDE_PART = "Done in this order, as much as you can close is closed. What others leave as it is still opens.";
    /// Unfolds the choices.
    CHOICES = "Change what the plan aims at";
    /// Where no key of today is left.
    HAND_OVER = "Hand the new keys over.";
    /// Where nothing of it is new.
    HAND_ON = "Hand them over as they are: nothing has to be cut.";
    /// Before copies that go from one to another.
    HANDED_ON = "Handed on, not cut";
    /// Before the keys whose place a new one takes.
    INSTEAD_OF = "Takes the place of";
    /// Before other keys of the same locks.
    OTHER_KEYS_STAY = "Beside it these keys go on opening the same lock";
    /// Where somebody lost the only key they had to a lock of others.
    ASK_FOR_A_COPY = "Someone has no key to it now: ask for a copy of today’s key too. It opens until the lock is changed.";
    /// Others have been told.
    TOLD = "We have told them";
    /// Before new keys that others have made.
    FROM_THEM = "From them";
    /// Before old keys that others own.
    BACK_TO_THEM = "Then back to them";
    /// Grouping.
    GROUPING = "How should the doors share keys?";
    /// Spares.
    SPARES = "Spares of each new key, kept in the home";
    /// As many as now.
    SPARES_AS_NOW = "As many as now, and at least two of each key in all";
    /// After hours.
    AFTER_HOURS = "The visit has to be at night or at a weekend";
    /// Heading of the steps.
    STEPS = "Step by step";
    /// Heading of the reasons.
    REASONS = "Why: keys that could be in wrong hands";
    /// Heading of stop-gaps, before the steps they bridge.
    UNTIL_THEN = "First: until the locks are changed";
    /// Asks how keys were lost.
    HOW_LOST = "First say how it went missing";
    /// Why.
    HOW_LOST_WHY = "How soon you have to act depends on it.";
    /// Somebody stays in.
    STAY_IN = "someone stays in, or the door is not left on its own for long";
    /// The same where nobody has to come today.
    NOT_ALONE = "do not leave it on its own for long";
    /// A place that is no home, with no other lock.
    TAKE_OUT = "take out what could be stolen, or put a second lock on it";
    /// Before what each of several people gets.
    EACH = "Each gets";
    /// Other locks hold.
    LOCK_THESE = "lock the other lock, which no key that is out opens";
    /// Heading of the keys.
    KEYS = "The keys there will be";
    /// Heading of the notes.
    NOTES = "Also mind";
    /// People who must not know a code any more.
    WITHOUT = "No longer for";
    /// People who lost their remote.
    NEW_ONE_FOR = "A new one (the costs leave it out) for";
    /// Before keys not checked.
    NOT_CHECKED_YET = "You have not checked the key to";
    /// Before keys whose check is open.
    CANNOT_TELL_YET = "The check could not tell, and an open answer decides, for the key to";
    /// Before whose matter a key is.
    SEEN_TO_BY = "Who sees to it";
    /// A kept key of which nobody needs another copy.
    NO_NEW_COPIES = "No new copy needed";
    /// Heading above the press.
    DONE_TITLE = "Once it is done";
    /// Marks the work done.
    DONE = "All of this is done";
    /// Where others act too.
    DONE_BY_OTHERS = "What others decide about stays open here until they have acted. Say it when they have.";
    /// The same where they were told.
    DONE_OR_LEFT = "What others decide about stays open here until they have acted. Say it when they have, or if they leave it as it is.";
    /// Below it.
    DONE_NOTE = "The board then shows how things are after it. You can undo it.";
    /// Sources.
    SOURCES = "What this rests on";

    // Comparison
    /// Title and heading.
    COMPARE = "Which doors should share a key";
    /// Opening line.
    COMPARE_LEDE = "One key for everything is handy until it is lost. Here are three ways to share keys, side by side.";
    /// Table caption.
    TABLE = "Three ways of sharing keys";
    /// Row.
    ROW_KEYS = "Different keys";
    /// Row.
    ROW_CARRIED = "Most keys that one person carries";
    /// Row.
    ROW_LOST = "Most locks to change when one ring is lost";
    /// Row.
    ROW_BEYOND = "Doors that open to people without need";
    /// Row.
    ROW_WITHOUT = "Doors that people need and cannot open";
    /// Below the numbers: how doors are counted.
    COUNTED = "Each door counts once for each person. It opens where all its locks turn, or by a code, a remote or an app. The key in a key safe (a small box with a code) counts for all who know that code.";
    /// Above the numbers, where somebody lacks a key as now.
    NOT_ALIKE = "Read this first: today some people lack a key to a door they need. “As now” leaves it so. The other two ways give them that key. So a ring there can hold more keys and open more locks.";
    /// Row.
    ROW_SET_UP = "Locks to change before it is so";
    /// Row.
    ROW_COST = "What that costs, by your prices";
    /// Table of rings.
    RINGS = "If this person’s ring is lost: locks to change";
    /// Every way comes to the same.
    ALL_THE_SAME = "Here, all three ways come to the same. Keep it as it is now.";
    /// Needs that nobody has said.
    NEEDS_ASSUMED = "You have not said for everybody which doors they need. Whoever is left out counts as needing what they can open, so “By need” may keep too much together.";
    /// To where it is said.
    NEEDS_SAY = "Say it on the board";
    /// Chooses.
    CHOOSE = "Plan for this";
    /// The chosen one.
    CHOSEN = "The plan is for this";
    /// Several doors cannot share.
    OTHERS = "Locks of a landlord, a building or a neighbour stay as they are. Their keys are drawn and counted in all three ways.";
    /// Below the doors of such a key.
    NOT_OURS = "not yours to change";
    /// Nothing to compare.
    NOTHING_TO_COMPARE = "Put down at least one lock that your home decides about. Then the ways can be compared.";

    // Costs
    /// Title and heading.
    COSTS = "What it costs";
    /// Opening line.
    COSTS_LEDE = "Prices differ from place to place, so none is made up here. Ask two or three locksmiths, write down the lowest and the highest price you were told, and see the sum.";
    /// Heading of the form.
    PRICES = "Prices you were told";
    /// Hint.
    PRICES_HINT = "In your own currency. If you were told one price, one line is enough. Leave both lines empty where you do not know.";
    /// Low.
    LOW = "from";
    /// High.
    HIGH = "to";
    /// Included.
    INCLUDED = "Keys that come with each new lock, or new cylinder (the part the key goes into), at no charge";
    /// Saves.
    SAVE_PRICES = "Work out the sum";
    /// No number.
    NO_NUMBER = "Write a price as a number, such as 60 or 60.50. Nothing else goes in this line.";
    /// Heading of the sum.
    SUM = "The plan’s cost";
    /// Nothing to pay.
    NO_COST = "The plan holds nothing that you pay for.";
    /// Column.
    WHAT = "What";
    /// Column.
    COUNT = "How many";
    /// Column.
    TOGETHER = "Together";
    /// Row.
    TOTAL = "Sum of what is known";
    /// Why there is a range of numbers.
    AT_MOST_IF_NEW = "The larger number is for locks that cannot be set to a key that stays: then all locks of that key get a new one.";
    /// Why there may be an opening to pay.
    AT_MOST_IF_SHUT = "No key to a door may be at hand: the larger number counts that it has to be opened first.";
    /// What locks that share a key may cost beside.
    KEYED_ALIKE = "A locksmith may ask something extra for locks that are to share a key. Ask: it is not counted here.";
    /// No price told.
    NO_PRICE = "no price yet";
    /// Somebody else pays, or it has to be asked.
    ASK_WHO_PAYS = "ask who pays";
    /// What is missing.
    MISSING = "Still to ask:";
    /// Too large, in a table.
    TOO_MUCH_SHORT = "too large";
    /// Too large.
    TOO_MUCH = "The sum is too large to be counted. Look over the prices.";
}

/// A step that hands keys to several people.
pub fn keys_for(people: usize) -> String {
    format!("Keys for {} people", counted(people))
}

/// What to do in one step.
pub fn step(step: &Step, names: &Names) -> String {
    match step {
        Step::LocksmithVisit(locks) if locks.len() == 1 => {
            "Have a locksmith see to one lock".to_owned()
        }
        Step::LocksmithVisit(locks) => {
            format!(
                "Have a locksmith see to {} locks in one visit",
                counted(locks.len())
            )
        }
        Step::HandOver(Recipient::Holder(holder), _) => {
            format!("Keys for: {}", names.holder(*holder))
        }
        Step::HandOver(Recipient::KeySafe(way), _) => {
            format!("A key into: {}", names.way(*way))
        }
        Step::HandOver(Recipient::Spare, _) => "Put the spares away at home".to_owned(),
        Step::EmptyKeySafes(safes) if safes.len() == 1 => {
            "Take the key out of the key safe".to_owned()
        }
        Step::EmptyKeySafes(_) => "Take the keys out of the key safes".to_owned(),
        Step::ChangeWays(kind, _) => change_of(*kind).0.to_owned(),
        Step::GetIn(_) => "Can you get in? If not, have the door opened first".to_owned(),
        Step::TakeNewKeys => "Take the new keys yourself".to_owned(),
        Step::Replied {
            reply: Reply::Waiting,
            ..
        } => "You have told those who decide about it".to_owned(),
        Step::Replied {
            reply: Reply::LeftAsItIs,
            ..
        } => "Those who decide leave it as it is".to_owned(),
        Step::HandIn(_) => "Take in keys that people will not need".to_owned(),
        Step::ChangedByOthers { .. } => "Once others have changed their lock".to_owned(),
        Step::ScrapOldCopies(_) => "Destroy the old keys".to_owned(),
        other => other.action().map_or_else(String::new, |action| {
            super::super::action(action).title.to_owned()
        }),
    }
}

/// How to do it, where the step is not one of the advice's own actions. `is_old_void` says whether
/// there are old keys that open nothing any more: in the key safe, where the step is about one.
pub fn how(step: &Step, is_old_void: bool) -> Option<&'static str> {
    match step {
        Step::LocksmithVisit(locks) if locks.len() == 1 => Some(
            "Ask for the whole price before the work begins. Afterwards try every new key with the door open.",
        ),
        Step::LocksmithVisit(_) => Some(
            "All in one visit costs less than several. Ask for the whole price before the work begins. Afterwards try every new key with the door open.",
        ),
        Step::HandOver(Recipient::KeySafe(_), _) => Some(if is_old_void {
            "That is a small box with a code. Take the old key out when the new one goes in."
        } else {
            "That is a small box with a code. What else lies in it stays in use."
        }),
        Step::HandOver(..) => Some(if is_old_void {
            "Hand the new keys over. Take in only old keys that the step “Destroy the old keys” names, if you can: all others stay in use."
        } else {
            "Hand the new keys over. Today’s keys stay in use."
        }),
        Step::CutCopies(_) => Some(
            "Count first what comes with a new lock: often three to five keys with a cylinder (the part the key goes into), two with a padlock. Only the rest has to be cut: plain, which means with no number, and from the best first key, never from a copy of a copy. Try each with the door open.",
        ),
        Step::GetCopiesBack(_) => Some(
            "Ask first: a friendly call costs nothing and may save work. Name a day. What comes back you put down on the board. It may have been copied all the same, unless a copy needs your card and the card never left you.",
        ),
        Step::EmptyKeySafes(_) => Some(
            "That is a small box with a code. Look whether each key is still there, and count. If one is gone, say so on the board, and how: its lock may not be able to wait. A key that is there may have been copied.",
        ),
        Step::ChangeWays(kind, _) => Some(change_of(*kind).1),
        Step::GetIn(_) => Some(
            "No key to it is at hand. Ask a locksmith to open it without damage, and for the price before the work. Where others decide about the door, ask them first.",
        ),
        Step::Replied {
            reply: Reply::Waiting,
            ..
        } => Some(
            "Ask when it will be done, and keep their answer in writing. Until then it opens to whoever has that key or code.",
        ),
        Step::Replied {
            reply: Reply::LeftAsItIs,
            ..
        } => Some(
            "It opens to whoever has that key or code. Ask once more in writing, and say why. An advice service for tenants or owners can tell you what your contract and the law allow. Change no lock that is theirs to decide about. Until then, keep what matters most behind a lock of your own.",
        ),
        Step::TakeNewKeys => Some(
            "Ask the locksmith to hand the new keys to you alone. Whom else you give one to is part of your plan with the service.",
        ),
        Step::HandIn(_) => Some(
            "They open doors that these people do not need. A friendly word is enough. A returned key proves nothing: if you are not sure of someone, have that lock changed too.",
        ),
        Step::ChangedByOthers { .. } => Some(
            "Until they have changed it, today’s keys stay in use. If they change it, the new keys come from them. Then give the old keys back to them: they are not yours to destroy.",
        ),
        Step::ScrapOldCopies(_) => Some(
            "These open nothing any more. First try each once in every other lock, shed and padlock you have: it may open one you forgot. Then break or bend it, so that nobody can use it.",
        ),
        _ => None,
    }
}

/// What is done about a way in without a cylinder, and how.
fn change_of(kind: WayKind) -> (&'static str, &'static str) {
    match kind {
        WayKind::DoorCode => (
            "Change the door code",
            "Choose a new code that is no date and no house number. Where each person has a code of their own, delete only those that are out.",
        ),
        WayKind::KeySafe => (
            "Change the code of the key safe",
            "A key safe is a small box with a code. Choose a new code that is no date and no house number. Then put the key back, if you still want one there.",
        ),
        WayKind::Remote => (
            "Have the remote or card that is out deleted",
            "The same goes for a fob (a small tag held to a reader). Have it taken out of the memory of the receiver or reader at the door. If it cannot be done singly, clear all and teach the others in again.",
        ),
        WayKind::App => (
            "Remove old users and lost phones from the app",
            "In the app, look through the users. Remove those who should no longer open the door. Is a phone with the app lost or stolen? Sign it out from another phone. If someone could know the password of the app, change that too.",
        ),
    }
}

/// Before those who go on opening the door by it.
pub fn stays_with(kind: WayKind) -> &'static str {
    match kind {
        WayKind::DoorCode | WayKind::KeySafe => "Tell the new code to",
        WayKind::Remote => "Still in use with",
        WayKind::App => "Still a user",
    }
}

/// The same where one is lost and nobody knows whose.
pub const SOME_STILL_HAVE_IT: &str = "Still in use with all of these but the one who lost theirs";

/// How a lost card or remote is told to those who decide about the door.
pub const TELL_OF_A_REMOTE: &str = "Ask to have the lost remote, card or fob (a small tag held to a reader) deleted. It is taken out of the memory of the receiver or reader at the door. The lock and the other remotes can stay.";

/// What is done with one lock, in a word or two.
pub fn verb(action: Action) -> &'static str {
    match action {
        Action::RekeyCylinder => "rekey (set to a new key)",
        Action::ChangeCylinder => "new cylinder (the part the key goes into)",
        Action::ChangeLockOrLevers => "new lock, or new plates inside it",
        Action::ReplaceSmallLock => "replace the small lock",
        Action::OwnerOfSystemActs => "the owner of the key system acts",
        Action::TellManager => "tell the manager",
        Action::TellLandlord => "ask the landlord",
        Action::TellOwner => "tell its owner",
        Action::ChangeCodesAndUsers => "change the code, remove old users",
        other => super::super::action(other).title,
    }
}

/// What is done to a lock: where nobody knows its kind, the locksmith says.
pub fn verb_for(action: Action, kind: Option<LockKind>) -> &'static str {
    match (action, kind) {
        (Action::RekeyCylinder, Some(LockKind::NotSure)) => {
            "rekey (set to a new key), or a new cylinder (the part the key goes into) or lock: the locksmith says which"
        }
        (action, _) => verb(action),
    }
}

/// After a lock that shall take a key that stays, where nobody knows yet whether it can.
pub fn only_if_keyed_to(key: &str) -> String {
    format!(
        "only if it can be set to that key ({key}). If not, it and all locks of that key get a new one"
    )
}

/// Who sees to a lock.
pub fn who(who: WhoActs) -> &'static str {
    match who {
        WhoActs::Household => "your home",
        WhoActs::Landlord => "the landlord",
        WhoActs::SystemOwner => "the manager or owner of the key system",
        WhoActs::AnotherOwner => "its owner",
    }
}

/// Says that these have done their part.
pub fn done_by(who: WhoActs) -> &'static str {
    match who {
        WhoActs::Household => "Our own part is done",
        WhoActs::Landlord => "The landlord has done it",
        WhoActs::SystemOwner => "The manager or owner of the key system has done it",
        WhoActs::AnotherOwner => "Its owner has done it",
    }
}

/// Says that these leave it as it is.
pub fn left_by(who: WhoActs) -> &'static str {
    match who {
        WhoActs::Household => "We leave it as it is",
        WhoActs::Landlord => "The landlord leaves it as it is",
        WhoActs::SystemOwner => "The manager or owner of the key system leaves it as it is",
        WhoActs::AnotherOwner => "Its owner leaves it as it is",
    }
}

/// Where copies for somebody come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// They are cut.
    New,
    /// They lie in the home.
    Home,
    /// Whoever does not need them hands them in.
    HandedIn,
}

/// So many copies for somebody, from where they come.
pub fn copies_from(sources: &[(Source, u64)]) -> String {
    let one = |&(source, count): &(Source, u64)| {
        let copies = copies(count);
        match source {
            Source::New => copies,
            Source::Home => format!("{copies} from the home"),
            Source::HandedIn if count == 1 => format!("{copies} that is handed in"),
            Source::HandedIn => format!("{copies} that are handed in"),
        }
    };
    sources.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// For whom a copy is.
pub fn recipient(recipient: Recipient, names: &Names) -> String {
    match recipient {
        Recipient::Holder(holder) => names.holder(holder).to_owned(),
        Recipient::KeySafe(way) => names.way(way).to_owned(),
        Recipient::Spare => "the home".to_owned(),
    }
}

/// A key there will be.
pub fn new_key(number: usize) -> String {
    format!("New key {}", counted(number))
}

/// A key of today that stays.
pub const KEPT_KEY: &str = "Stays as it is";

/// So many copies.
pub fn copies(count: u64) -> String {
    match count {
        1 => "1 copy".to_owned(),
        count => format!(
            "{} copies",
            counted(usize::try_from(count).unwrap_or(usize::MAX))
        ),
    }
}

/// So many copies, of which some come with the new lock.
pub fn copies_with(count: u64, included: u64) -> String {
    let copies = copies(count);
    match included.min(count) {
        0 => copies,
        1 => format!("{copies}, 1 of which comes with it"),
        some => format!("{copies}, {some} of which come with it"),
    }
}

/// People who get the same number of copies of a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Alike {
    /// How many each of them gets.
    pub each: u32,
    /// How many people they are.
    pub people: usize,
    /// What they are called, some of them perhaps together.
    pub names: Vec<String>,
}

/// So many copies, for whom: who gets one, who gets two, and so on.
pub fn for_whom(count: u64, people: &[Alike]) -> String {
    shared_out(&copies(count), people)
}

/// The same of a key there will be: of one that stays, so many more.
pub fn copies_there_will_be(is_kept: bool, count: u64, people: &[Alike]) -> String {
    match (is_kept, count) {
        (false, count) => for_whom(count, people),
        (true, 1) => shared_out("1 more copy", people),
        (true, count) => {
            let more = counted(usize::try_from(count).unwrap_or(usize::MAX));
            shared_out(&format!("{more} more copies"), people)
        }
    }
}

fn shared_out(copies: &str, people: &[Alike]) -> String {
    let named = |alike: &Alike| alike.names.join(", ");
    if let [only] = people
        && only.people == 1
    {
        return format!("{copies} for {}", named(only));
    }
    let each = |alike: &Alike| match alike.people {
        1 => format!("{} for {}", alike.each, named(alike)),
        _ => format!("{} each for {}", alike.each, named(alike)),
    };
    let people: Vec<String> = people.iter().map(each).collect();
    format!("{copies}: {}", people.join("; "))
}

/// Why a key is exposed.
pub fn reason(by: &ExposedBy, household: &Household, names: &Names) -> String {
    match *by {
        ExposedBy::Check(_) => "its check says that old copies should stop working".to_owned(),
        ExposedBy::MayBeCopied(_) => {
            "one was in wrong hands, or in their reach: it may have been copied".to_owned()
        }
        ExposedBy::LostCopy(copy, loss) => {
            let had = household.copy(copy).and_then(|copy| copy.place.had_by());
            let who = had.map_or_else(String::new, |holder| format!(" ({})", names.holder(holder)));
            match loss {
                Loss::NotReturned => format!("a copy was not given back{who}"),
                loss => format!("a copy is gone{who}: {}", went(loss)),
            }
        }
        ExposedBy::FormerHolder(copy, holder) => {
            let place = household.copy(copy).map(|copy| copy.place);
            let back = match place {
                Some(Place::AtHome { .. }) => ", given back",
                Some(Place::Scrapped { .. }) => ", destroyed since",
                _ => "",
            };
            format!(
                "had by someone who should no longer come in ({}){back}",
                names.holder(holder)
            )
        }
        ExposedBy::KeySafe(_, way) => format!("it lies in: {}, whose code is out", names.way(way)),
    }
}

/// All the reasons; what holds for several copies alike stands once.
pub fn reasons(by: &[ExposedBy], household: &Household, names: &Names) -> Vec<String> {
    let mut all: Vec<(String, usize)> = Vec::new();
    for by in by {
        let reason = reason(by, household, names);
        match all.iter_mut().find(|(known, _)| *known == reason) {
            Some((_, count)) => *count += 1,
            None => all.push((reason, 1)),
        }
    }
    let said = |(reason, count)| match count {
        1 => reason,
        count => format!("{reason} ({} copies)", counted(count)),
    };
    all.into_iter().map(said).collect()
}

/// How a copy went, within a sentence.
fn went(loss: Loss) -> &'static str {
    match loss {
        Loss::NotSaid => "how is not said yet",
        Loss::MislaidIndoors => "mislaid indoors",
        Loss::FarAway => "lost far from home",
        Loss::NearHome => "lost near home",
        Loss::WithTheAddress => "lost with the address",
        Loss::Stolen => "stolen or taken",
        Loss::NotReturned => "not given back",
    }
}

/// Something to mind. What is said of thumb-turns stands with the visit.
pub fn note(note: Note, names: &Names) -> String {
    match note {
        Note::MasterInReach {
            exposed,
            master,
            who,
        } => format!(
            "Key to {}: whoever had it could work out the master key to {}. Ask {} what that means for the other locks.",
            names.key_in_a_row(exposed),
            names.key_in_a_row(master),
            match who {
                WhoActs::Household => "the locksmith",
                WhoActs::Landlord | WhoActs::SystemOwner | WhoActs::AnotherOwner => {
                    "the owner of the system"
                }
            }
        ),
        Note::OpensMoreBySafe { safe, door } => {
            opens_more(names.way(safe), &names.doors_within([door]))
        }
        Note::ThumbTurn(lock) => thumb_turn(names.lock(lock)),
        Note::CameBackWithItsCard(key) => format!(
            "Key to {}: it came back, and a copy needs your card. If the card never left you, nothing has to be changed. If it did, edit the key and answer No.",
            names.key_in_a_row(key)
        ),
        Note::NotChecked(key) => format!("{NOT_CHECKED_YET}: {}.", names.key_for(key)),
        Note::CannotTell(key) => format!("{CANNOT_TELL_YET}: {}.", names.key_for(key)),
    }
}

/// Before the caution of the visit: the locks whose doors may be ways out, where nothing is known that
/// turns them by hand from inside.
pub fn thumb_turn(locks: &str) -> String {
    format!("This may be a way out: {locks}.")
}

/// What is wrong with one line of a price.
pub fn wrong_price(item: &str, end: &str, why: &str) -> String {
    format!("{item}, {}", wrong_end(end, why))
}

/// The same beside the line.
pub fn wrong_end(end: &str, why: &str) -> String {
    format!("“{end}”: {why}")
}

/// What a line of the bill is about.
pub fn priced(what: Priced) -> &'static str {
    match what {
        Priced::Item(item) => item.words(),
        Priced::CallOutAtAnyHour => {
            "A visit in ordinary hours or, if it cannot wait, at night or at a weekend"
        }
        Priced::RekeyedOrNew => {
            "One lock rekeyed (set to a new key), or a new cylinder (the part the key goes into): the locksmith says which"
        }
        Priced::KindNotKnown => {
            "One lock of a kind not known: rekeyed (set to a new key), a new cylinder (the part the key goes into) or a new lever lock (flat plates inside). The locksmith says which"
        }
        Priced::ByOthers => "One lock that is another’s to change",
    }
}

/// A sum from low to high, in the household's own currency.
pub fn price(price: PriceRange) -> String {
    if price.low() == price.high() {
        return amount(price.low());
    }
    format!("{} to {}", amount(price.low()), amount(price.high()))
}

/// So many, or more up to so many.
pub fn from_to(count: u64, at_most: u64) -> String {
    let counted = |count| counted(usize::try_from(count).unwrap_or(usize::MAX));
    if count == at_most {
        return counted(count);
    }
    format!("{} to {}", counted(count), counted(at_most))
}

/// One amount of the smallest unit, as people write it.
pub fn amount(smallest: u64) -> String {
    let (whole, rest) = (smallest / 100, smallest % 100);
    let whole = counted(usize::try_from(whole).unwrap_or(usize::MAX));
    match rest {
        0 => whole,
        rest => format!("{whole}.{rest:02}"),
    }
}

/// The total of one line.
pub fn line_total(line: &CostLine) -> String {
    match (line.total, line.at_least) {
        (Some(total), _) => price(total),
        (None, Some(at_least)) => format!("{} or more", price(at_least)),
        (None, None) if line.what.items().is_empty() => ASK_WHO_PAYS.to_owned(),
        (None, None) => NO_PRICE.to_owned(),
    }
}

/// The prices that one line lacks, where it rests on several and not all are missing.
pub fn line_lacks(line: &CostLine, prices: &Prices) -> Option<String> {
    let items = line.what.items();
    let missing = items.iter().copied();
    let missing = missing.filter(|&item| prices.of(item).is_none());
    let missing: Vec<&str> = missing.map(in_its_line).collect();
    let is_in_part = !missing.is_empty() && missing.len() < items.len();
    is_in_part.then(|| format!("Still to ask: the price for {}", missing.join(" and ")))
}

/// A price beside what its line says already.
fn in_its_line(item: PriceItem) -> &'static str {
    match item {
        PriceItem::CallOut => "ordinary hours",
        PriceItem::CallOutAfterHours => "nights and weekends",
        PriceItem::RekeyedCylinder => "rekeying",
        PriceItem::NewCylinder => "a new cylinder",
        PriceItem::LockOrLevers => "a new lever lock",
        PriceItem::Opening | PriceItem::SmallLock | PriceItem::Copy => item.words(),
    }
}

/// Where a sum lacks something.
pub fn at_least(sum: &str) -> String {
    format!("{sum}, and more for what is still to ask")
}

/// Where a sum lacks something, in a table.
pub fn sum_and_more(sum: &str) -> String {
    format!("{sum} and more")
}

/// What a picture of one way shows.
pub fn picture_of(grouping: &str, keys: usize) -> String {
    match keys {
        1 => format!("{grouping}: one key"),
        keys => format!("{grouping}: {} keys", counted(keys)),
    }
}

/// Doors that a person needs and cannot open, in one way alone or in all.
pub fn cannot_open(way: Option<&str>, doors: usize) -> String {
    let told = match doors {
        1 => "cannot open 1 door they need".to_owned(),
        doors => format!("cannot open {} doors they need", counted(doors)),
    };
    within_a_way(way, told)
}

/// Keys that a person lost and that are counted all the same.
pub fn counted_though_missing(way: Option<&str>, keys: usize) -> String {
    let told = match keys {
        1 => "1 missing key counts as if it were back".to_owned(),
        keys => format!("{} missing keys count as if they were back", counted(keys)),
    };
    within_a_way(way, told)
}

fn within_a_way(way: Option<&str>, told: String) -> String {
    match way {
        Some(way) => format!("{way}: {told}"),
        None => told,
    }
}

/// A key safe whose key will open doors that nobody could enter by it before.
pub fn opens_more(safe: &str, doors: &str) -> String {
    format!(
        "{safe}: the key in it will open more than today ({doors}). Whoever knows the code can then go in there too. Keep that key elsewhere, or change the code and tell fewer people."
    )
}

/// More keys than are drawn.
pub fn more_keys(more: usize) -> String {
    format!("and {} more keys", counted(more))
}
