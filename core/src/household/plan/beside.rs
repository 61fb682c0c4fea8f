//! What stands beside the works: ways in without a cylinder, what holds the doors until the visit,
//! what else to mind.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use crate::advice::{Action, Urgency};

use super::super::exposed::{came_back, must_not_know, way_to_change};
use super::super::index::Index;
use super::super::kinds::{Arrangement, DoorKind, Inside, Loss, WayKind, WhoDecides};
use super::super::remedy::{for_a_way, who_acts};
use super::super::{DoorId, ExposedKey, FoundExposure, KeyId, LockId};
use super::safes::{self, TurnedBySafes};
use super::{Note, StopGap, WayWork, Work};

/// The ways in to be changed: also a key safe into which the plan puts a key to a door of which somebody
/// who knows its code kept a key back.
pub(super) fn way_works(index: &Index<'_>, turned: &TurnedBySafes) -> Vec<WayWork> {
    let household = index.household;
    let works = household.ways().filter_map(|(id, way)| {
        let door = household.door(way.door)?;
        let mut doors = index.doors_by(id);
        let turned = turned.get(&id).into_iter().flatten();
        doors.extend(turned.filter_map(|&lock| index.door_of(lock)));
        let urgency = way_to_change(index, way, &doors)?;
        let (without, stays_with) = way
            .known_by
            .iter()
            .partition(|&&holder| must_not_know(index, holder, &doors).is_some());
        let is_open = way.kind == WayKind::Remote && way.losses().any(|loss| loss == Loss::NotSaid);
        Some(WayWork {
            way: id,
            action: for_a_way(door),
            urgency,
            could_be: if is_open { Urgency::Today } else { urgency },
            stays_with,
            without,
            reply: way.reply,
        })
    });
    let mut works: Vec<WayWork> = works.collect();
    works.sort_by_key(|work| Reverse(work.urgency));
    works
}

pub(super) fn stop_gaps(
    index: &Index<'_>,
    exposed: &BTreeMap<KeyId, ExposedKey>,
    works: &[Work],
) -> Vec<StopGap> {
    let mut doors: BTreeMap<DoorId, (Urgency, Urgency, bool)> = BTreeMap::new();
    for work in works.iter().filter(|work| !work.exposed.is_empty()) {
        if let Some(door) = index.door_of(work.lock)
            && !is_shared(index, door)
        {
            let is_told = work.reply.is_some();
            let gap = doors
                .entry(door)
                .or_insert((work.urgency, work.could_be, is_told));
            gap.0 = gap.0.max(work.urgency);
            gap.1 = gap.1.max(work.could_be);
            gap.2 &= is_told;
        }
    }
    let is_closed = |lock: &LockId| {
        let part = index.household.lock(*lock);
        part.is_some_and(|lock| lock.keys.iter().all(|key| !exposed.contains_key(key)))
    };
    doors
        .into_iter()
        .map(|(door, (urgency, could_be, is_told))| StopGap {
            door,
            urgency,
            could_be,
            holding: index
                .locks_on(door)
                .iter()
                .copied()
                .filter(is_closed)
                .collect(),
            is_told,
        })
        .collect()
}

/// Whether everybody in the building goes through the door: one home alone can neither watch it nor
/// keep it locked.
fn is_shared(index: &Index<'_>, door: DoorId) -> bool {
    let door = index.household.door(door);
    door.is_some_and(|door| {
        door.kind == DoorKind::BuildingEntrance && door.who_decides != WhoDecides::Household
    })
}

/// Whether `one` opens all that `other` opens, and more: it is the master of the two.
fn opens_more(index: &Index<'_>, one: KeyId, other: KeyId) -> bool {
    let (one, other) = (index.opened_by(one), index.opened_by(other));
    one.len() > other.len() && other.iter().all(|lock| one.contains(lock))
}

pub(super) fn notes(
    index: &Index<'_>,
    exposed: &BTreeMap<KeyId, ExposedKey>,
    works: &[Work],
    turned: &TurnedBySafes,
) -> Vec<Note> {
    let household = index.household;
    let mut notes = safes::opens_more(index, turned);
    for (_, lock) in household.locks() {
        let door = household.door(lock.door);
        let Some(door) = door.filter(|_| lock.arrangement == Arrangement::MasterKeyed) else {
            continue;
        };
        let who = who_acts(lock, door);
        let (out, safe): (Vec<&KeyId>, Vec<&KeyId>) =
            lock.keys.iter().partition(|key| exposed.contains_key(key));
        for &&exposed in &out {
            let others = safe.iter().map(|&&other| other);
            let masters = others.filter(|&other| !opens_more(index, exposed, other));
            notes.extend(masters.map(|master| Note::MasterInReach {
                exposed,
                master,
                who,
            }));
        }
    }
    for work in works
        .iter()
        .filter(|work| work.actions.contains(&Action::ChangeCylinder))
    {
        let lock = household.lock(work.lock);
        let door = lock.and_then(|lock| household.door(lock.door));
        if door.is_some_and(|door| door.kind.is_a_way_out())
            && lock.is_some_and(|lock| matches!(lock.inside, None | Some(Inside::Key)))
        {
            notes.push(Note::ThumbTurn(work.lock));
        }
    }
    for (id, key) in household.keys() {
        if index.opened_by(id).is_empty() || exposed.contains_key(&id) {
            continue;
        }
        if key.restricted == Some(true) && came_back(index, id) {
            notes.push(Note::CameBackWithItsCard(id));
        }
        match key.finding.map(|finding| finding.exposure) {
            None => notes.push(Note::NotChecked(id)),
            Some(FoundExposure::CannotTell) => notes.push(Note::CannotTell(id)),
            Some(FoundExposure::NotExposed | FoundExposure::Exposed(_)) => {}
        }
    }
    notes.sort_unstable();
    notes.dedup();
    notes
}
