//! Ways of grouping the doors by key.
//!
//! Grouping **by need** gives one key to all locks to which exactly the same people use a key: those
//! who need the door and do not get in there without one. Of all groupings in which no key opens a door
//! to which one of its users needs none, it has the fewest keys for everybody at once; and no grouping
//! makes fewer cylinders to rekey when a ring is lost, for a ring has to open every door to which its
//! holder carries a key. Both follow from the definition and are checked against every grouping of up to
//! eight doors.
//!
//! Only locks the household decides about can be grouped. A building's system, a landlord's or a
//! neighbour's lock stays as it is.

pub(super) mod keep;
pub(super) mod keyways;
pub(super) mod users;

use std::collections::{BTreeMap, BTreeSet};

use crate::advice::Action;
use crate::sources::{GROUPING_JUDGEMENT, Source, TRADE_KEYED_ALIKE};

use super::index::Index;
use super::kinds::{DoorKind, Grouping};
use super::remedy::{WhoActs, remedy, who_acts};
use super::{HolderId, Household, KeyId, LockId};
use users::{WaysAfter, takes_it_from_a_safe};

/// Locks that share a key, or would.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// The locks; never empty, in the order of their ids.
    pub locks: Vec<LockId>,
    /// Who carries a key to it, in the order of their ids: whoever needs a door of the group and does not
    /// get in there by a code, a remote, an app or the key in a key safe. What somebody carries today,
    /// they carry on.
    pub carried_by: Vec<HolderId>,
}

impl Grouping {
    /// What the groupings rest on.
    pub const SOURCES: &[&Source] = &[&TRADE_KEYED_ALIKE, &GROUPING_JUDGEMENT];
}

/// The groups into which `grouping` puts the locks the household decides about, in the order of
/// each group's first lock. As now: locks that exactly the same keys open; a lock without a key
/// stands alone.
pub fn groups(household: &Household, grouping: Grouping) -> Vec<Group> {
    groups_of(&Index::of(household), grouping)
}

pub(super) fn groups_of(index: &Index<'_>, grouping: Grouping) -> Vec<Group> {
    let users = index.users();
    let makes = makes(index);
    let locks = own_locks(index);
    let parts: Vec<Vec<LockId>> = match grouping {
        Grouping::AsNow => partition(&locks, |lock| {
            let keys: Vec<KeyId> = keys_of(index, lock).collect();
            let alone = keys.is_empty().then_some(lock);
            (keys, alone)
        }),
        Grouping::AllAlike => partition(&locks, |lock| makes.get(&lock)),
        Grouping::ByNeed => partition(&locks, |lock| (makes.get(&lock), users.of_lock(lock))),
    };
    let shared: Vec<&[LockId]> = parts.iter().map(Vec::as_slice).collect();
    let after = WaysAfter::of(index, &shared);
    let carried: Vec<_> = parts
        .iter()
        .map(|locks| carried_by(index, locks, &after))
        .collect();
    let parts = parts.into_iter().zip(carried);
    parts
        .map(|(locks, carried_by)| Group { locks, carried_by })
        .collect()
}

/// The locks the household decides about.
pub(super) fn own_locks(index: &Index<'_>) -> Vec<LockId> {
    let household = index.household;
    household
        .locks()
        .filter(|(_, lock)| {
            let door = household.door(lock.door);
            door.is_some_and(|door| who_acts(lock, door) == WhoActs::Household)
        })
        .map(|(id, _)| id)
        .collect()
}

fn carried_by(index: &Index<'_>, locks: &[LockId], after: &WaysAfter) -> Vec<HolderId> {
    let users = index.users();
    let people = locks.iter().flat_map(|&lock| users.of_lock(lock));
    let people: BTreeSet<HolderId> = people.copied().collect();
    let people = people.into_iter();
    people
        .filter(|&holder| !takes_it_from_a_safe(index, holder, locks, after))
        .collect()
}

fn keys_of<'a>(index: &Index<'a>, lock: LockId) -> impl Iterator<Item = KeyId> + use<'a> {
    let lock = index.household.lock(lock);
    lock.into_iter().flat_map(|lock| lock.keys.iter().copied())
}

/// Locks of one make can share a key, if need be with a new cylinder: cylinders with cylinders,
/// lever locks with lever locks, padlocks with padlocks, the small locks of cabinets and mailboxes with one
/// another: those are made otherwise than padlocks (common practice). A lock that shares a key with a
/// cylinder today counts as a cylinder, whatever it is called; so does one that shares a key with a
/// padlock as a padlock.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Make {
    Cylinder,
    Lever,
    Padlock,
    Built,
}

/// The make of each lock.
fn makes(index: &Index<'_>) -> BTreeMap<LockId, Make> {
    let mut makes: BTreeMap<LockId, Make> = BTreeMap::new();
    let mut keys: BTreeMap<Make, BTreeSet<KeyId>> = BTreeMap::new();
    for (lock, part) in index.household.locks() {
        let make = own_make(index, lock);
        makes.insert(lock, make);
        keys.entry(make).or_default().extend(&part.keys);
    }
    for (lock, part) in index.household.locks() {
        let shares = |make: Make| {
            let keys = keys.get(&make);
            keys.is_some_and(|keys| !part.keys.is_disjoint(keys))
        };
        if shares(Make::Cylinder) {
            makes.insert(lock, Make::Cylinder);
        } else if makes.get(&lock) == Some(&Make::Built) && shares(Make::Padlock) {
            makes.insert(lock, Make::Padlock);
        }
    }
    makes
}

fn own_make(index: &Index<'_>, id: LockId) -> Make {
    let Some(lock) = index.household.lock(id) else {
        return Make::Cylinder;
    };
    let Some(door) = index.household.door(lock.door) else {
        return Make::Cylinder;
    };
    match remedy(lock, door).first() {
        Some(Action::ChangeLockOrLevers) => Make::Lever,
        Some(Action::ReplaceSmallLock) => match door.kind {
            DoorKind::Cabinet | DoorKind::Mailbox => Make::Built,
            _ => Make::Padlock,
        },
        _ => Make::Cylinder,
    }
}

/// Puts together what has the same mark, in the order of first appearance.
fn partition<M: Ord>(locks: &[LockId], mark: impl Fn(LockId) -> M) -> Vec<Vec<LockId>> {
    let mut places: BTreeMap<M, usize> = BTreeMap::new();
    let mut parts: Vec<Vec<LockId>> = Vec::new();
    for &lock in locks {
        let place = *places.entry(mark(lock)).or_insert(parts.len());
        match parts.get_mut(place) {
            Some(part) => part.push(lock),
            None => parts.push(vec![lock]),
        }
    }
    parts
}
