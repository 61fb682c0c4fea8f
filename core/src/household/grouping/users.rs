//! Who uses a key to each lock, and who of them carries one.
//!
//! Whoever needs a door uses a key to each of its locks, but for those who have none to it today and get in
//! there by a code, a remote or an app. Of its users, those who carry none today and know a key safe with
//! one in it take it from there; everybody else carries one. So does whoever kept a key back to where that
//! key safe will lead: they are to know it no longer.

use std::collections::{BTreeMap, BTreeSet};

use super::super::index::Index;
use super::super::kinds::WayKind;
use super::super::{DoorId, HolderId, KeyId, LockId, WayId};

/// Who uses a key to which lock.
pub(in crate::household) struct Users(BTreeMap<LockId, Vec<HolderId>>);

impl Users {
    pub(in crate::household) fn of(index: &Index<'_>) -> Self {
        let mut users: BTreeMap<LockId, Vec<HolderId>> = BTreeMap::new();
        for (&holder, needed) in index.needs_of_everybody() {
            let by_a_way = opened_without_a_key(index, holder);
            let with_a_key = if by_a_way.is_empty() {
                BTreeSet::new()
            } else {
                let ring = index.whole_ring(holder).into_iter();
                let keys = ring.chain(from_safes(index, holder));
                keys.flat_map(|key| index.opened_by(key)).collect()
            };
            for door in needed {
                for lock in index.locks_on(*door) {
                    if with_a_key.contains(lock) || !by_a_way.contains(door) {
                        users.entry(*lock).or_default().push(holder);
                    }
                }
            }
        }
        Self(users)
    }

    /// Who uses a key to the lock, in the order of their ids.
    pub(in crate::household) fn of_lock(&self, lock: LockId) -> &[HolderId] {
        self.0.get(&lock).map_or(&[], Vec::as_slice)
    }
}

/// Whether this user of a key to `locks` takes it from a key safe and carries none, once the locks of each
/// of `parts` share a key. All locks of a part are in the order of their ids.
pub(in crate::household) fn takes_it_from_a_safe(
    index: &Index<'_>,
    holder: HolderId,
    locks: &[LockId],
    parts: &[Vec<LockId>],
) -> bool {
    let opens = |key: KeyId, locks: &[LockId]| {
        let mut opened = index.opened_by(key).iter();
        opened.any(|lock| locks.binary_search(lock).is_ok())
    };
    let holds_one = |safe: WayId, locks: &[LockId]| {
        let mut meant = index.meant_for_safe(safe).iter();
        meant.any(|&key| opens(key, locks))
    };
    let goes_on_knowing = |safe: WayId| {
        if !index.kept_a_key_back(holder) {
            return true;
        }
        let mut doors = index.doors_by(safe);
        let put_in = parts.iter().filter(|part| holds_one(safe, part)).flatten();
        doors.extend(put_in.filter_map(|&lock| index.door_of(lock)));
        !index.kept_a_key_back_to(holder, &doors)
    };
    let mut safes = index.known_to(holder).iter().copied();
    safes.any(|safe| holds_one(safe, locks) && goes_on_knowing(safe)) && {
        let mut ring = index.whole_ring(holder).into_iter();
        !ring.any(|key| opens(key, locks))
    }
}

/// What lies in the key safes that a holder knows, or is meant to.
fn from_safes<'a>(index: &'a Index<'_>, holder: HolderId) -> impl Iterator<Item = KeyId> + 'a {
    let safes = index.known_to(holder).iter();
    safes.flat_map(|&safe| index.meant_for_safe(safe)).copied()
}

fn opened_without_a_key(index: &Index<'_>, holder: HolderId) -> BTreeSet<DoorId> {
    let ways = index.known_to(holder).iter();
    let ways = ways.filter_map(|&way| index.household.way(way));
    ways.filter(|way| way.kind != WayKind::KeySafe)
        .map(|way| way.door)
        .collect()
}
