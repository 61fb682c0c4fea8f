//! Doors that nobody may be able to open any more.

use std::collections::BTreeSet;

use super::super::index::Index;
use super::super::kinds::{DoorKind, Loss, WhoDecides};
use super::super::{DoorId, KeyId, LockId, Place};
use super::Work;

/// The doors with a lock of these works to which every key has gone. Where no copy is known to have
/// gone, nobody has put down who has one, and nothing is said.
pub(super) fn shut(index: &Index<'_>, works: &[Work]) -> Vec<DoorId> {
    let locks = works.iter().map(|work| work.lock);
    let shut = locks.filter(|&lock| has_no_key_left(index, lock));
    let doors: BTreeSet<DoorId> = shut.filter_map(|lock| index.door_of(lock)).collect();
    let doors = doors.into_iter();
    doors.filter(|&door| is_gone_through(index, door)).collect()
}

/// Whether the household goes in there. Another's home it need not enter; and what a small lock shuts
/// is opened when that is replaced.
fn is_gone_through(index: &Index<'_>, door: DoorId) -> bool {
    index.household.door(door).is_some_and(|door| {
        door.who_decides != WhoDecides::AnotherOwner
            && !matches!(
                door.kind,
                DoorKind::Mailbox | DoorKind::Cabinet | DoorKind::Padlock
            )
    })
}

fn has_no_key_left(index: &Index<'_>, lock: LockId) -> bool {
    let keys = index.household.lock(lock).map(|lock| &lock.keys);
    keys.is_some_and(|keys| {
        keys.iter().any(|&key| has_gone(index, key))
            && !keys.iter().any(|&key| index.is_at_hand(key))
    })
}

/// Whether a copy of the key was lost, or is with somebody who no longer should come in. One mislaid
/// indoors is behind the door with whoever looks for it.
fn has_gone(index: &Index<'_>, key: KeyId) -> bool {
    let copies = index.copies_of(key).iter();
    let mut copies = copies.filter_map(|&copy| index.household.copy(copy));
    copies.any(|copy| match copy.place {
        Place::Lost { loss, .. } => loss != Loss::MislaidIndoors,
        Place::Held(_) => !index.is_at_hand(key),
        Place::InKeySafe(_) | Place::AtHome { .. } | Place::Scrapped { .. } => false,
    })
}
