//! What the page for the locksmith says, in the order of the visit. Ids and numbers; the words live
//! with the page.
//!
//! It holds no address, no name and no code, because the household holds none. Own words, people's
//! roles, prices and how soon each lock is due come only where the household ticked them in.

mod keying;
mod measure;
mod page;
mod quotes;

use crate::advice::{Action, Urgency};
use crate::sources::{CHOOSING_A_LOCKSMITH, Source, TRADE_GRADES, TRADE_KEYED_ALIKE, TRADE_VISIT};

use super::kinds::{DoorKind, Inside, LockKind, Material, PriceItem, Role};
use super::{CylinderLengths, DoorId, Label, LockId};

pub use keying::{KeyRank, Keying, OldKey, Restricted};
pub use measure::{Measure, measure};
pub use page::brief;
pub use quotes::{OnlyIf, Quote};

/// What the household ticks in, and what it can say before the visit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BriefChoices {
    /// Show own words for doors.
    pub labels: bool,
    /// Show what each person is to the household.
    pub roles: bool,
    /// Show how soon each lock is due.
    pub urgency: bool,
    /// Show the prices the household was told elsewhere.
    pub prices: bool,
    /// What is known before the visit; blank where absent.
    pub readiness: Readiness,
}

/// What the locksmith asks first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Readiness {
    /// Whether somebody can get in.
    pub can_get_in: Option<bool>,
    /// Whether the door shuts well. That is seen to first: a new cylinder in a door that drags
    /// breaks keys.
    pub shuts_well: Option<bool>,
    /// Whether there is proof that the household may have the locks changed.
    pub has_proof: Option<bool>,
}

/// Safety comes first: nothing is printed or kept. See [`Household::puts_safety_first`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SafetyFirst;

/// The page, its parts in the order of the visit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Brief {
    /// First: can you get in, does the door shut well.
    pub readiness: Readiness,
    /// The locks to be seen to, in the order of the plan. Elsewhere a lock is named by its place
    /// here.
    pub locks: Vec<BriefLock>,
    /// The locks that stay and whose key others shall take.
    pub matched: Vec<MatchedLock>,
    /// The doors that may have to be opened though no lock of theirs is on the page.
    pub to_open: Vec<DoorToOpen>,
    /// How many doors may have to be opened first, all together: none where somebody can get in.
    pub opened: u64,
    /// When the visit is due, if ticked in: one visit sees to all its locks at once.
    pub visit: Option<Visit>,
    /// How many of each kind, most first.
    pub kinds: Vec<(LockKind, usize)>,
    /// Locks known to share a keyway, two or more each. Only these can be keyed alike as they are.
    pub same_keyway: Vec<Vec<usize>>,
    /// The keys there will be, with how many copies for how many people.
    pub keys: Vec<BriefKey>,
    /// The keys of today at hand that must no longer turn in a lock of the page, by their locks.
    pub old_keys: Vec<OldKey>,
    /// What to ask a price for before the work begins.
    pub quotes: Vec<Quote>,
    /// What else can be asked, in order; see [`Brief::asked`].
    pub ask: &'static [Ask],
    /// What to do when the work is done, in order: only what this plan makes sense of.
    pub after: Vec<AfterVisit>,
    /// The kinds of those outlying doors with a lock in which an old key is tried last.
    pub outlying: Vec<DoorKind>,
}

/// One lock.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BriefLock {
    /// Which lock of the household it is.
    pub lock: LockId,
    /// What kind of door it is on.
    pub door: DoorKind,
    /// Its own word, if ticked in.
    pub label: Option<Label>,
    /// What the door is made of.
    pub material: Option<Material>,
    /// What kind of lock.
    pub kind: LockKind,
    /// What shall be done.
    pub action: Action,
    /// What works it from inside.
    pub inside: Option<Inside>,
    /// Its lengths, where measured; else the locksmith measures.
    pub lengths: Option<CylinderLengths>,
    /// How many keys open it today and afterwards.
    pub keying: Keying,
    /// Which of its keys of today is known to be restricted.
    pub restricted: Option<Restricted>,
    /// Whether there is a working key at hand.
    pub has_working_key: bool,
    /// Whether its door may have to be opened first: every key to a lock on it has gone.
    pub is_shut: bool,
    /// The keys that open it afterwards, as places in [`Brief::keys`].
    pub keys: Vec<usize>,
    /// Whether it goes on taking the own keys of many beside these: they are not told one by one.
    pub keeps_many_keys: bool,
    /// Whether the locksmith's visit sees to it: a small lock is bought, by whoever comes by.
    pub is_of_the_visit: bool,
    /// How soon, if ticked in: as soon as the visit, where it is of the visit.
    pub due: Option<Due>,
    /// Whether it gets a new lock or cylinder, or may turn out to need one.
    pub may_be_new: bool,
    /// The key that stays to which it may not be possible to set the lock, as a place in
    /// [`Brief::keys`].
    pub only_if_keyed_to: Option<usize>,
}

/// A lock that stays as it is and whose key another lock of the page shall take.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MatchedLock {
    /// Which lock of the household it is.
    pub lock: LockId,
    /// What kind of door it is on.
    pub door: DoorKind,
    /// Its own word, if ticked in.
    pub label: Option<Label>,
    /// What kind of lock.
    pub kind: LockKind,
    /// What the door is made of.
    pub material: Option<Material>,
    /// What works it from inside.
    pub inside: Option<Inside>,
    /// Its lengths, where measured; else the locksmith measures.
    pub lengths: Option<CylinderLengths>,
    /// Whether there is a working key at hand.
    pub has_working_key: bool,
    /// Its key, as a place in [`Brief::keys`].
    pub key: usize,
}

/// How soon something is due, as far as it is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Due {
    /// How soon; not known where nobody has said how a key was lost and it is not due soon anyway.
    pub urgency: Option<Urgency>,
    /// Whether it may be due sooner: nobody has said how a key was lost.
    pub may_be_sooner: bool,
}

/// When the visit is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Visit {
    /// How soon.
    pub due: Due,
    /// Whether it is due today where a door has to be opened, though it can wait for the locks.
    pub is_today_to_open: bool,
}

/// A door to which no key is at hand and whose locks others see to: it may have to be opened, once they
/// were asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DoorToOpen {
    /// Which door of the household it is.
    pub door: DoorId,
    /// What kind of door.
    pub kind: DoorKind,
    /// Its own word, if ticked in.
    pub label: Option<Label>,
}

/// One key there will be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BriefKey {
    /// Whether it is new or one of today's stays.
    pub is_new: bool,
    /// How it stands to the other keys of a master-keyed lock of the page.
    pub rank: KeyRank,
    /// Whether it is one of today's that the locks of the page take already and go on taking, beside a new
    /// one.
    pub is_left: bool,
    /// Whether it is one of today's and somebody who should have it has a copy.
    pub is_at_hand: bool,
    /// The locks of the page it opens.
    pub locks: Vec<usize>,
    /// The kind of each other door it opens, by which a key of today is known.
    pub other_doors: Vec<DoorKind>,
    /// How many copies for whom, most first.
    pub copies: Vec<(BriefRecipient, u32)>,
    /// How many together.
    pub total: u64,
}

/// For whom a copy is, as far as it is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BriefRecipient {
    /// One person; what they are to the household only if ticked in.
    Person(Option<Role>),
    /// The home.
    Spare,
}

/// Something to ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name says it; the page holds the words")]
pub enum Ask {
    WholePriceBeforeWork,
    LicenceAndPapers,
    ProofThatYouMay,
    KeysThatComeWithIt,
    InsurersGrade,
    RestrictedOrNot,
    OthersNeedANewCylinder,
    IsCodeOrAddressKept,
    CodeOnNewKeys,
}

/// Something to do when the work is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name says it; the page holds the words")]
pub enum AfterVisit {
    OldKeyMustFail,
    TryEachNewKeyWithTheDoorOpen,
    CountTheNewKeys,
    KeepOldKeysThatOpenOtherLocks,
    TryOldKeyInOutlyingDoors,
    ScrapTheOldKeys,
}

impl Brief {
    /// What the page rests on.
    pub const SOURCES: &[&Source] = &[
        &TRADE_VISIT,
        &TRADE_KEYED_ALIKE,
        &TRADE_GRADES,
        &CHOOSING_A_LOCKSMITH,
    ];

    /// Of each group of [`Brief::same_keyway`] those locks that are to share a key, without the locks that get
    /// a new cylinder: those do not stay as they are.
    pub fn can_share_as_they_are(&self) -> Vec<Vec<usize>> {
        let stays = |&place: &usize| {
            self.locks
                .get(place)
                .is_some_and(BriefLock::keeps_its_keyway)
        };
        let mut shared = Vec::new();
        for group in &self.same_keyway {
            for key in &self.keys {
                let takes_it = |place: &usize| key.locks.contains(place);
                let locks = group.iter().copied();
                let locks: Vec<usize> = locks.filter(takes_it).filter(stays).collect();
                if locks.len() > 1 && !shared.contains(&locks) {
                    shared.push(locks);
                }
            }
        }
        shared
    }

    /// Whether a lock that keeps its keyway is to share a key with another lock. A master key may enter
    /// several keyways.
    pub fn is_about_sharing(&self) -> bool {
        let is_shared = |key: &&BriefKey| !key.is_left && key.rank != KeyRank::Master;
        self.keys.iter().filter(is_shared).any(|key| {
            let mut places = key.locks.iter();
            key.locks.len() + key.other_doors.len() > 1
                && places.any(|&place| {
                    let lock = self.locks.get(place);
                    lock.is_some_and(BriefLock::keeps_its_keyway)
                })
        })
    }

    /// What to ask, in order: about sharing a key only where locks are to share one, about keys only where
    /// the page tells of one, about a lock's grade only where a new one may come, and about work at the
    /// door only where there is some.
    pub fn asked(&self) -> impl Iterator<Item = Ask> {
        let is_about_sharing = self.is_about_sharing();
        let has_a_new_key = self.keys.iter().any(|key| key.is_new);
        let has_a_new_lock = self
            .quotes
            .iter()
            .any(|quote| matches!(quote.item, PriceItem::NewCylinder | PriceItem::LockOrLevers));
        let all = self.ask.iter().copied();
        all.filter(move |ask| match ask {
            Ask::OthersNeedANewCylinder => is_about_sharing,
            Ask::KeysThatComeWithIt => has_a_new_key,
            Ask::InsurersGrade => has_a_new_lock,
            Ask::RestrictedOrNot | Ask::CodeOnNewKeys => !self.keys.is_empty(),
            Ask::WholePriceBeforeWork | Ask::LicenceAndPapers => {
                !self.locks.is_empty() || self.opened > 0
            }
            Ask::ProofThatYouMay | Ask::IsCodeOrAddressKept => true,
        })
    }

    /// Whether there is nothing to order: no lock to see to, no key to cut, no door to open.
    pub fn is_empty(&self) -> bool {
        self.locks.is_empty() && self.keys.is_empty() && self.opened == 0
    }
}

impl BriefLock {
    /// Whether the work leaves it the keyhole it has.
    fn keeps_its_keyway(&self) -> bool {
        self.action == Action::RekeyCylinder
    }

    /// Whether a thumb-turn is wanted if people leave by this door: a new cylinder comes, and none
    /// is known to be there.
    pub fn wants_a_thumb_turn(&self) -> bool {
        self.action == Action::ChangeCylinder
            && self.door.is_a_way_out()
            && matches!(self.inside, None | Some(Inside::Key))
    }

    /// Whether there is nothing to be worked from inside, as with a padlock.
    pub fn has_no_inside(&self) -> bool {
        self.kind == LockKind::SmallLock
            || matches!(
                self.door,
                DoorKind::Padlock | DoorKind::Mailbox | DoorKind::Cabinet
            )
    }
}
