//! What has to be done so that no exposed key opens anything, and for whom the new keys are.
//!
//! As now, the plan touches the fewest locks that can be: exactly those that an exposed key opens.
//! Fewer leave one open; more serve nothing. With another grouping it also brings the doors into
//! their groups, and keeps the keys with which the most locks stay untouched; where several choices
//! leave as many untouched, those with the fewest copies to be taken in, for a returned key proves
//! nothing; then those with the fewest new copies; then those of the earlier doors.

mod after;
mod allot;
mod beside;
mod copies;
mod days;
mod losses;
mod regroup;
mod replace;
mod safes;
mod shut;
mod steps;

use std::collections::{BTreeMap, BTreeSet};

use crate::advice::{Action, Urgency};
use crate::sources::{
    KEYS_WITH_A_LOCK, RIGHTS_AMPLIFICATION, Source, TRADE_CODES, TRADE_LOCK_KINDS, TRADE_REKEYING,
};

use super::exposed::exposed;
use super::grouping::groups_of;
use super::index::Index;
use super::kinds::{Grouping, PriceItem, Reply};
use super::remedy::{WhoActs, most_urgent, who_acts};
use super::{
    CopyId, Cost, DoorId, ExposedKey, Group, HolderId, Household, KeyId, LockId, Priced,
    Quantities, TooMuch, WayId,
};

pub use steps::{PlanStep, Step};

/// What the household chooses for a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choices {
    /// How the doors shall be grouped afterwards.
    pub grouping: Grouping,
    /// How many spares of each key stay in the home; absent: as many as there are today, less those of a
    /// key that stays that are handed on, and enough for two of each new key.
    pub spares: Option<u8>,
    /// Whether the locksmith comes outside ordinary hours.
    pub after_hours: bool,
    /// Whether safety comes first though no key's own check says so: a check of another key did.
    pub safety_first: bool,
}

/// What to do, in which order, with which keys at the end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// What was chosen.
    pub choices: Choices,
    /// Whether safety comes first: then nothing here says print, copy, hand over or get back.
    pub safety_first: bool,
    /// The exposed keys and why, in the order of the keys.
    pub exposed: Vec<ExposedKey>,
    /// The locks to be seen to, most urgent first, then by who acts and by door.
    pub works: Vec<Work>,
    /// The new keys, and the kept ones of which more copies or locks are needed.
    pub keys: Vec<PlannedKey>,
    /// Ways in without a cylinder that have to be changed, most urgent first.
    pub ways: Vec<WayWork>,
    /// The doors to which no key is at hand, because a copy has gone: they may have to be opened first.
    pub shut: Vec<DoorId>,
    /// What holds each door until then.
    pub stop_gaps: Vec<StopGap>,
    /// Copies of kept keys with people who will not need them.
    pub hand_in: Vec<CopyId>,
    /// The keys of today that open nothing once everything is done and that only the household's own
    /// locks take, in their order. Only these are to be destroyed; every other stays in use.
    pub void: Vec<KeyId>,
    /// The keys of today that open nothing once others have changed their locks too, in their order.
    /// They stay in use until then and go back to those others, whose they are. A key to a lock that others
    /// leave as it is stays in use.
    pub given_back: Vec<KeyId>,
    /// What else to mind.
    pub notes: Vec<Note>,
    /// Everything in order.
    pub steps: Vec<PlanStep>,
}

/// One lock to be seen to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Work {
    /// The lock.
    pub lock: LockId,
    /// The right verb, or verbs where two have to be told; never empty.
    pub actions: Vec<Action>,
    /// Who acts.
    pub who: WhoActs,
    /// How soon.
    pub urgency: Urgency,
    /// How soon it can turn out to be due once it is said how a key to it was lost; else as soon.
    pub could_be: Urgency,
    /// The exposed keys that open it today; none where only the grouping asks for the work.
    pub exposed: Vec<KeyId>,
    /// The keys that no longer open it afterwards.
    pub drops: Vec<KeyId>,
    /// The keys that open it afterwards, as places in [`Plan::keys`].
    pub takes: Vec<usize>,
    /// The key that stays and to which nobody knows yet whether the lock can be set. Where it cannot, it
    /// and the other locks of that key all get a new one, see [`PlannedKey::otherwise`].
    pub only_if_keyed_to: Option<KeyId>,
    /// What is paid for.
    pub price: Priced,
    /// What came of telling those who act, where others do.
    pub reply: Option<Reply>,
}

/// A key there will be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlannedKey {
    /// Whether it is new.
    pub origin: Origin,
    /// Who has it made.
    pub who: WhoActs,
    /// The locks it opens afterwards, as far as the plan is about them.
    pub locks: Vec<LockId>,
    /// How many copies have to be cut, and for whom.
    pub copies: Vec<(Recipient, u32)>,
    /// Copies of a key that stays that go to somebody who lacks one: those taken in, then spares in the
    /// home.
    pub handed_on: Vec<(CopyId, Recipient)>,
    /// What it takes where a lock cannot be set to this key, which stays: see [`Work::only_if_keyed_to`].
    pub otherwise: Option<Otherwise>,
}

/// What takes the place of a key that stays where a lock cannot be set to it: a new key for all its locks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Otherwise {
    /// The locks to be seen to beside those of the plan, each with what is paid for.
    pub locks: Vec<(LockId, Priced)>,
    /// How many copies of the new key have to be cut, in place of those of the key that stays.
    pub copies: u64,
}

/// Where a planned key comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Origin {
    /// It is new.
    New {
        /// The keys whose place it takes.
        replaces: Vec<KeyId>,
    },
    /// A key of today that stays.
    Kept(KeyId),
}

/// For whom a copy is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Recipient {
    /// A holder.
    Holder(HolderId),
    /// A key safe.
    KeySafe(WayId),
    /// The home, as a spare.
    Spare,
}

/// A way in without a cylinder that has to be changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WayWork {
    /// The way.
    pub way: WayId,
    /// What to do about it.
    pub action: Action,
    /// How soon.
    pub urgency: Urgency,
    /// How soon it can turn out to be due once it is said how the remote was lost; else as soon.
    pub could_be: Urgency,
    /// Who is to be told the new code or stays a user.
    pub stays_with: Vec<HolderId>,
    /// Who must not know it afterwards.
    pub without: Vec<HolderId>,
    /// What came of telling those who act, where others do.
    pub reply: Option<Reply>,
}

/// What holds a door until the visit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StopGap {
    /// A door with a lock that an exposed key opens.
    pub door: DoorId,
    /// How soon its lock is seen to.
    pub urgency: Urgency,
    /// How soon it can turn out to be due once it is said how a key to it was lost; else as soon.
    pub could_be: Urgency,
    /// Locks on it that no exposed key opens: lock these. Empty: somebody stays in.
    pub holding: Vec<LockId>,
    /// What came of telling those who decide about the locks that an exposed key opens; absent while one
    /// has yet to be told or is the household's own.
    pub reply: Option<Reply>,
}

/// Something to mind beside the works.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Note {
    /// Whoever had the exposed key and access to a lock of its system may have worked out the
    /// master key. Nothing is said of a lost master key: it opens all of it by itself.
    MasterInReach {
        /// The exposed key.
        exposed: KeyId,
        /// Another key of the same master-keyed lock, which opens no less than the exposed one or
        /// something else.
        master: KeyId,
        /// Whose matter the lock is.
        who: WhoActs,
    },
    /// A key that lies in the key safe, or is put in, will open a door that nobody could enter by that safe
    /// before: whoever knows its code can.
    OpensMoreBySafe {
        /// The key safe.
        safe: WayId,
        /// The door.
        door: DoorId,
    },
    /// The new cylinder is in a way out: with a thumb-turn, nobody has to search for a key in a
    /// fire.
    ThumbTurn(LockId),
    /// The key came back from somebody who no longer should come in, and only a card can have it copied:
    /// nothing has to be changed if the card never left the household.
    CameBackWithItsCard(KeyId),
    /// The key was not checked yet.
    NotChecked(KeyId),
    /// The key's check could not tell yet.
    CannotTell(KeyId),
}

impl Note {
    /// What the notes rest on.
    pub const SOURCES: &[&Source] = &[&RIGHTS_AMPLIFICATION, &TRADE_LOCK_KINDS];
}

impl Plan {
    /// What the plan rests on, beside what [`super::remedy::SOURCES`] and
    /// [`Grouping::SOURCES`] name.
    pub const SOURCES: &[&Source] = &[&TRADE_REKEYING, &TRADE_CODES, &KEYS_WITH_A_LOCK];

    /// Whether there is anything to do.
    pub fn is_empty(&self) -> bool {
        self.works.is_empty()
            && self.ways.is_empty()
            && self.keys.is_empty()
            && self.hand_in.is_empty()
    }

    /// The key safes by which a door opens afterwards that nobody could enter by them before, as
    /// [`Note::OpensMoreBySafe`] says; in the order of the ids.
    pub fn opens_more_by_safes(&self) -> Vec<(WayId, DoorId)> {
        let notes = self.notes.iter();
        let more = notes.filter_map(|note| match *note {
            Note::OpensMoreBySafe { safe, door } => Some((safe, door)),
            _ => None,
        });
        more.collect()
    }

    /// Whether a planned key is made only if others change their mind: they leave all its locks as they are.
    pub fn is_left(&self, place: usize) -> bool {
        let mut works = self.works.iter().filter(|work| work.takes.contains(&place));
        works.clone().next().is_some() && works.all(Work::is_left)
    }

    /// Whether the plan asks something of the household itself beyond telling others.
    pub fn asks_of_the_household(&self) -> bool {
        let is_own = |step: &PlanStep| {
            !matches!(
                step.step,
                Step::Tell { .. } | Step::Replied { .. } | Step::ChangedByOthers { .. }
            )
        };
        self.steps.iter().any(is_own)
    }

    /// How many copies have to be cut, over all keys the household has made.
    pub fn copies_to_cut(&self) -> u64 {
        let own = self.keys.iter().filter(|key| key.who == WhoActs::Household);
        own.map(PlannedKey::copy_count).sum()
    }

    /// How much of what the household pays for, and no less of anything than it can turn out to be.
    /// `copies_included` come with each new lock or cylinder: also with what may be rekeyed or new.
    pub fn quantities(&self, copies_included: u8) -> Quantities {
        let mut quantities = self.quantities_without_copies();
        for place in 0..self.keys.len() {
            let included = self.copies_with_new_locks(place, copies_included, Priced::may_be_new);
            let charged = self.own_copies(place).saturating_sub(included);
            quantities.add(Priced::Item(PriceItem::Copy), charged);
        }
        quantities
    }

    fn quantities_without_copies(&self) -> Quantities {
        let mut quantities = Quantities::default();
        if let Some(visit) = self.visit() {
            quantities.add(visit, 1);
        }
        for work in self.works.iter().filter(|work| !work.is_left()) {
            quantities.add(work.price, 1);
        }
        quantities
    }

    /// How much of what the household pays for at most: where every door to which no key is at hand has to
    /// be opened, no lock can be set to a key that stays, and what may be rekeyed is.
    pub fn quantities_at_most(&self, copies_included: u8) -> Quantities {
        let mut quantities = self.quantities_without_copies();
        let opened = self.shut.len() as u64;
        quantities.add(Priced::Item(PriceItem::Opening), opened);
        if opened > 0 && self.visit().is_none() {
            quantities.add(self.visit_due(Urgency::Today), 1);
        }
        for (place, key) in self.keys.iter().enumerate() {
            let otherwise = key.otherwise.as_ref();
            for &(_, price) in otherwise.iter().flat_map(|it| &it.locks) {
                quantities.add(price, 1);
            }
            let of_a_new_key = otherwise.map_or(0, |it| it.copies);
            let included = self.copies_with_new_locks(place, copies_included, Priced::is_new);
            let copies = self.own_copies(place).max(of_a_new_key);
            quantities.add(
                Priced::Item(PriceItem::Copy),
                copies.saturating_sub(included),
            );
        }
        quantities
    }

    /// How many copies of a planned key surely come with the new locks that take it, where `each` of them
    /// brings so many. A lock that is rekeyed brings none, nor one that is set to a key that stays.
    pub fn copies_that_come_with_it(&self, place: usize, each: u8) -> u64 {
        self.copies_with_new_locks(place, each, Priced::is_new)
    }

    fn copies_with_new_locks(&self, place: usize, each: u8, counts: fn(Priced) -> bool) -> u64 {
        let key = self.keys.get(place);
        if !key.is_some_and(|key| matches!(key.origin, Origin::New { .. })) {
            return 0;
        }
        // What comes with a lock that takes several keys is of the first of them.
        let works = self.works.iter();
        let brings_it = works.filter(|work| work.takes.first() == Some(&place));
        brings_it.filter(|work| counts(work.price)).count() as u64 * u64::from(each)
    }

    /// How many copies of a planned key the household has cut.
    fn own_copies(&self, place: usize) -> u64 {
        let key = self.keys.get(place);
        let own = key.filter(|key| key.who == WhoActs::Household);
        own.map_or(0, PlannedKey::copy_count)
    }

    /// The locks to be seen to at most: where no lock can be set to a key that stays.
    pub fn locks_at_most(&self) -> usize {
        let otherwise = self.keys.iter().filter_map(|key| key.otherwise.as_ref());
        self.works.len() + otherwise.map(|it| it.locks.len()).sum::<usize>()
    }

    /// What the locksmith's visit is priced by; none where nobody comes to see to a lock. A lock that is due
    /// today or may turn out to be, and a door to be opened first, do not wait for ordinary hours, so that
    /// the visit can fall within or after them.
    pub fn visit(&self) -> Option<Priced> {
        let visited = self.works.iter().filter(|work| work.needs_a_locksmith());
        let due = visited.map(|work| work.urgency.max(work.could_be)).max()?;
        let opens_a_door = !self.shut.is_empty();
        Some(self.visit_due(if opens_a_door { Urgency::Today } else { due }))
    }

    /// What a visit is priced by that is due then.
    pub(super) const fn visit_due(&self, due: Urgency) -> Priced {
        match (self.choices.after_hours, due) {
            (true, _) => Priced::Item(PriceItem::CallOutAfterHours),
            (false, Urgency::Today) => Priced::CallOutAtAnyHour,
            (false, _) => Priced::Item(PriceItem::CallOut),
        }
    }

    /// What the plan costs by the household's own prices, up to what it takes at most.
    pub fn cost(&self, household: &Household) -> Result<Cost, TooMuch> {
        let prices = household.prices();
        let included = prices.copies_included;
        prices.cost_between(
            &self.quantities(included),
            &self.quantities_at_most(included),
        )
    }
}

impl Work {
    /// Whether the answer to how a key to it was lost can make it more urgent.
    pub fn may_be_sooner(&self) -> bool {
        self.could_be > self.urgency
    }

    /// Whether those who decide about it leave it as it is.
    pub fn is_left(&self) -> bool {
        self.reply == Some(Reply::LeftAsItIs)
    }

    /// Whether those who decide about it have yet to be told.
    pub fn is_to_be_told(&self) -> bool {
        self.who != WhoActs::Household && self.reply.is_none()
    }

    /// Whether a locksmith comes for it.
    pub fn needs_a_locksmith(&self) -> bool {
        self.who == WhoActs::Household && !self.actions.contains(&Action::ReplaceSmallLock)
    }
}

impl WayWork {
    /// Who acts.
    pub const fn who(&self) -> WhoActs {
        match self.action {
            Action::TellLandlord => WhoActs::Landlord,
            Action::TellManager => WhoActs::SystemOwner,
            Action::TellOwner => WhoActs::AnotherOwner,
            _ => WhoActs::Household,
        }
    }

    /// Whether those who decide about it have yet to be told.
    pub fn is_to_be_told(&self) -> bool {
        self.who() != WhoActs::Household && self.reply.is_none()
    }

    /// Whether the answer to how the remote was lost can make it more urgent.
    pub fn may_be_sooner(&self) -> bool {
        self.could_be > self.urgency
    }
}

impl PlannedKey {
    /// How many copies have to be cut.
    pub fn copy_count(&self) -> u64 {
        self.copies.iter().map(|&(_, count)| u64::from(count)).sum()
    }
}

impl Default for Choices {
    fn default() -> Self {
        Self {
            grouping: Grouping::AsNow,
            spares: None,
            after_hours: false,
            safety_first: false,
        }
    }
}

/// What has to be done so that no exposed key opens anything.
///
/// Carried out ([`Plan::carried_out`]), no exposed key opens any lock and nobody who should not
/// knows a way in. As now, every lock left out of [`Plan::works`] is opened by no exposed key, and
/// every lock in it by one.
pub fn plan(household: &Household, choices: Choices) -> Plan {
    let index = Index::of(household);
    let groups = match choices.grouping {
        Grouping::AsNow => Vec::new(),
        grouping => groups_of(&index, grouping),
    };
    plan_with(&index, choices, &groups)
}

/// The plan into these groups, which are those of the chosen grouping; as now needs none.
pub(super) fn plan_with(index: &Index<'_>, choices: Choices, groups: &[Group]) -> Plan {
    let household = index.household;
    let exposed = exposed(index);
    let mut works: BTreeMap<LockId, Work> = BTreeMap::new();
    let mut keys = Vec::new();
    let mut hand_in = Vec::new();
    match choices.grouping {
        Grouping::AsNow => {
            let all = |_: WhoActs| true;
            replace::replace(index, choices, &exposed, all, &mut works, &mut keys);
        }
        Grouping::AllAlike | Grouping::ByNeed => {
            let others = |who: WhoActs| who != WhoActs::Household;
            replace::replace(index, choices, &exposed, others, &mut works, &mut keys);
            hand_in = regroup::regroup(index, choices, groups, &exposed, &mut works, &mut keys);
        }
    }
    let mut works: Vec<Work> = works.into_values().collect();
    for work in &mut works {
        work.could_be = could_be(index, &exposed, work);
    }
    works.sort_by_key(|work| {
        let urgency = std::cmp::Reverse(work.urgency);
        (urgency, work.who, index.door_of(work.lock), work.lock)
    });
    let left = works.iter().filter(|work| work.is_left());
    let left: BTreeSet<KeyId> = left.flat_map(|work| work.drops.iter().copied()).collect();
    let (void, given_back) = void_keys(index, &works, &keys)
        .into_iter()
        .filter(|key| !left.contains(key))
        .partition(|&key| opens_only_own_locks(index, key));
    let turned = safes::turned(index, &works, &keys);
    let mut plan = Plan {
        choices,
        safety_first: choices.safety_first || household.puts_safety_first(),
        shut: shut::shut(index, &works),
        stop_gaps: beside::stop_gaps(index, &exposed, &works),
        notes: beside::notes(index, &exposed, &works, &turned),
        ways: beside::way_works(index, &turned),
        void,
        given_back,
        exposed: exposed.into_values().collect(),
        works,
        keys,
        hand_in,
        steps: Vec::new(),
    };
    plan.steps = steps::steps(index, &plan);
    plan
}

/// How soon the lock can turn out to be due: where nobody has said how a key to it was lost, as soon
/// as a lock on its door ever is.
fn could_be(index: &Index<'_>, exposed: &BTreeMap<KeyId, ExposedKey>, work: &Work) -> Urgency {
    let door = replace::lock_and_door(index, work.lock).map(|(_, door)| door);
    let mut keys = work.exposed.iter().filter_map(|key| exposed.get(key));
    match door.filter(|_| keys.any(ExposedKey::may_be_sooner)) {
        Some(door) => work.urgency.max(most_urgent(door)),
        None => work.urgency,
    }
}

fn opens_only_own_locks(index: &Index<'_>, key: KeyId) -> bool {
    index.opened_by(key).iter().all(|&lock| {
        let lock_and_door = replace::lock_and_door(index, lock);
        lock_and_door.is_some_and(|(lock, door)| who_acts(lock, door) == WhoActs::Household)
    })
}

/// The keys that every lock they open drops and that nothing keeps.
fn void_keys(index: &Index<'_>, works: &[Work], keys: &[PlannedKey]) -> Vec<KeyId> {
    let mut dropped: BTreeMap<KeyId, usize> = BTreeMap::new();
    for &key in works.iter().flat_map(|work| &work.drops) {
        *dropped.entry(key).or_default() += 1;
    }
    for planned in keys {
        if let Origin::Kept(key) = planned.origin {
            dropped.remove(&key);
        }
    }
    let is_void = |&(key, count): &(KeyId, usize)| index.opened_by(key).len() == count;
    dropped
        .into_iter()
        .filter(is_void)
        .map(|(key, _)| key)
        .collect()
}
