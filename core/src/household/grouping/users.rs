//! Who uses a key to each lock, and who of them carries one.
//!
//! Whoever is said to need a door uses a key to each of its locks, but for those who have none to it today
//! and get in there by a code, a remote or an app. While nobody has said it, they use what they have a key
//! to. Of its users, those who carry none today and know a key safe with one in it take it from there;
//! everybody else carries one. So does whoever kept a key back to where that key safe will lead: they are
//! to know it no longer.

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
            let part = index.household.holder(holder);
            let is_told = part.is_some_and(|part| part.needs.is_some());
            let with_a_key = if is_told && by_a_way.is_empty() {
                BTreeSet::new()
            } else {
                let ring = index.whole_ring(holder).into_iter();
                let keys = ring.chain(from_safes(index, holder));
                keys.flat_map(|key| index.opened_by(key)).collect()
            };
            for door in needed {
                for lock in index.locks_on(*door) {
                    let by_key_alone = is_told && !by_a_way.contains(door);
                    if by_key_alone || with_a_key.contains(lock) {
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

/// Where the ways in lead once the locks of each part share a key, as far as somebody knows them who kept a key
/// back: everybody else goes on knowing what they know.
pub(in crate::household) struct WaysAfter(BTreeMap<WayId, BTreeSet<DoorId>>);

impl WaysAfter {
    pub(in crate::household) fn of(index: &Index<'_>, parts: &[&[LockId]]) -> Self {
        let holders = index.household.holders();
        let mut knowing = BTreeSet::new();
        for (holder, _) in holders.filter(|&(holder, _)| index.kept_a_key_back(holder)) {
            knowing.extend(index.known_to(holder));
        }
        let mut part_of: BTreeMap<LockId, usize> = BTreeMap::new();
        for (number, part) in parts.iter().enumerate().filter(|_| !knowing.is_empty()) {
            part_of.extend(part.iter().map(|&lock| (lock, number)));
        }
        let leads = |&way: &WayId| {
            let meant = index.meant_for_safe(way).iter();
            let opened = meant.flat_map(|&key| index.opened_by(key));
            let shared: BTreeSet<usize> = opened
                .filter_map(|lock| part_of.get(lock))
                .copied()
                .collect();
            let locks = shared
                .into_iter()
                .filter_map(|number| parts.get(number))
                .copied()
                .flatten();
            let mut doors = index.doors_by(way);
            doors.extend(locks.filter_map(|&lock| index.door_of(lock)));
            (way, doors)
        };
        Self(knowing.iter().map(leads).collect())
    }

    /// Whether the holder goes on knowing a way in: whoever kept a key back to where it leads, or will lead,
    /// does not.
    pub(in crate::household) fn is_known_to(
        &self,
        index: &Index<'_>,
        holder: HolderId,
        way: WayId,
    ) -> bool {
        let doors = self.0.get(&way).filter(|_| index.kept_a_key_back(holder));
        doors.is_none_or(|doors| !index.kept_a_key_back_to(holder, doors))
    }
}

/// Whether this user of a key to `locks`, which are in the order of their ids, takes it from a key safe and
/// carries none.
pub(in crate::household) fn takes_it_from_a_safe(
    index: &Index<'_>,
    holder: HolderId,
    locks: &[LockId],
    after: &WaysAfter,
) -> bool {
    let opens = |key: KeyId| {
        let mut opened = index.opened_by(key).iter();
        opened.any(|lock| locks.binary_search(lock).is_ok())
    };
    let mut safes = index.known_to(holder).iter().copied();
    safes.any(|safe| {
        let mut meant = index.meant_for_safe(safe).iter();
        meant.any(|&key| opens(key)) && after.is_known_to(index, holder, safe)
    }) && !index.whole_ring(holder).into_iter().any(opens)
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
