//! What everybody carries by one grouping, and what opens to them.

use std::collections::{BTreeMap, BTreeSet};

use super::super::exposed::no_longer_should;
use super::super::grouping::users::WaysAfter;
use super::super::index::Index;
use super::super::kinds::{Grouping, Loss, WayKind};
use super::super::{DoorId, Group, HolderId, KeyId, LockId, Place, WayId};
use super::ComparedKey;

/// A key as one grouping has it. All lists are in the order of the ids.
struct RingKey {
    key: ComparedKey,
    /// The doors it opens alone.
    doors: Vec<DoorId>,
    /// The locks it turns on other doors.
    in_part: Vec<LockId>,
    carried_by: Vec<HolderId>,
    /// Those of them who have lost it.
    missing_from: Vec<HolderId>,
    in_safes: Vec<WayId>,
}

/// All keys of one grouping, and where they are.
pub(super) struct Rings {
    keys: Vec<RingKey>,
    carried: BTreeMap<HolderId, Vec<usize>>,
    in_safes: BTreeMap<WayId, Vec<usize>>,
    after: WaysAfter,
}

/// What one holder carries and opens.
pub(super) struct Ring {
    pub(super) keys_carried: usize,
    pub(super) missing: usize,
    pub(super) locks: usize,
    /// The doors that open to them, by what they carry and by the ways in they know; in the order of the
    /// ids.
    pub(super) doors: Vec<DoorId>,
}

impl RingKey {
    /// With nobody yet.
    fn of(index: &Index<'_>, key: ComparedKey) -> Self {
        let doors = index.doors_opened_by(&key.locks);
        let is_in_part = |lock: &LockId| {
            let door = index.door_of(*lock);
            door.is_some_and(|door| doors.binary_search(&door).is_err())
        };
        Self {
            in_part: key.locks.iter().copied().filter(is_in_part).collect(),
            doors,
            carried_by: Vec::new(),
            missing_from: Vec::new(),
            in_safes: Vec::new(),
            key,
        }
    }
}

impl Rings {
    /// As now: the keys there are. Otherwise: those of the groups, and the keys to others' locks as
    /// they are.
    pub(super) fn of(
        index: &Index<'_>,
        own: &BTreeSet<LockId>,
        grouping: Grouping,
        groups: &[Group],
    ) -> Self {
        let (keys, shared) = match grouping {
            Grouping::AsNow => (keys_as_now(index, own, |_| true), Vec::new()),
            Grouping::AllAlike | Grouping::ByNeed => {
                let mut keys = keys_of_groups(index, groups);
                keys.extend(keys_as_now(index, own, |lock| !own.contains(&lock)));
                let shared = groups.iter().map(|group| group.locks.as_slice());
                (keys, shared.collect())
            }
        };
        let after = WaysAfter::of(index, &shared);
        let mut carried: BTreeMap<HolderId, Vec<usize>> = BTreeMap::new();
        let mut in_safes: BTreeMap<WayId, Vec<usize>> = BTreeMap::new();
        for (number, key) in keys.iter().enumerate() {
            for &holder in &key.carried_by {
                carried.entry(holder).or_default().push(number);
            }
            for &safe in &key.in_safes {
                in_safes.entry(safe).or_default().push(number);
            }
        }
        Self {
            keys,
            carried,
            in_safes,
            after,
        }
    }

    pub(super) fn ring(&self, index: &Index<'_>, holder: HolderId) -> Ring {
        let carried = self.carried.get(&holder).map_or(&[][..], Vec::as_slice);
        let missing = carried.iter().filter_map(|&number| self.keys.get(number));
        let missing = missing.filter(|key| key.missing_from.binary_search(&holder).is_ok());
        let mut used = carried.to_vec();
        let mut by_a_way = Vec::new();
        for &id in index.known_to(holder) {
            let way = index.household.way(id);
            let Some(way) = way.filter(|_| self.after.is_known_to(index, holder, id)) else {
                continue;
            };
            used.extend(self.in_safes.get(&id).into_iter().flatten());
            if way.kind != WayKind::KeySafe {
                by_a_way.push(way.door);
            }
        }
        let mut doors = self.doors(index, &sorted(used));
        if !by_a_way.is_empty() {
            doors.extend(by_a_way);
            doors = sorted(doors);
        }
        Ring {
            keys_carried: carried.len(),
            missing: missing.count(),
            locks: self.locks(carried).len(),
            doors,
        }
    }

    pub(super) fn into_keys(self) -> Vec<ComparedKey> {
        self.keys.into_iter().map(|key| key.key).collect()
    }

    /// The doors that these keys open together.
    fn doors(&self, index: &Index<'_>, numbers: &[usize]) -> Vec<DoorId> {
        let keys = numbers.iter().filter_map(|&number| self.keys.get(number));
        let in_part = keys.clone().flat_map(|key| &key.in_part).copied();
        let together = index.doors_opened_by(&sorted(in_part.collect()));
        let doors = keys.flat_map(|key| &key.doors).copied();
        sorted(doors.chain(together).collect())
    }

    /// The locks that these keys turn.
    fn locks(&self, numbers: &[usize]) -> Vec<LockId> {
        let keys = numbers.iter().filter_map(|&number| self.keys.get(number));
        let locks = keys.flat_map(|key| &key.key.locks).copied().collect();
        match numbers {
            [_] => locks,
            _ => sorted(locks),
        }
    }
}

fn keys_of_groups(index: &Index<'_>, groups: &[Group]) -> Vec<RingKey> {
    let safes = safes(index);
    let of_group = |group: &Group| {
        let locks = group.locks.iter();
        let locks = locks.filter_map(|&lock| index.household.lock(lock));
        let today = locks.flat_map(|lock| &lock.keys);
        let in_safes = today.filter_map(|key| safes.get(key)).flatten().copied();
        let key = ComparedKey {
            locks: group.locks.clone(),
            is_own: true,
        };
        RingKey {
            carried_by: group.carried_by.clone(),
            in_safes: sorted(in_safes.collect()),
            ..RingKey::of(index, key)
        }
    };
    groups.iter().map(of_group).collect()
}

/// Today's keys to the locks that `counts` names.
fn keys_as_now(
    index: &Index<'_>,
    own: &BTreeSet<LockId>,
    counts: impl Fn(LockId) -> bool,
) -> Vec<RingKey> {
    let safes = safes(index);
    let mut carried = carried(index);
    let keys = index.household.keys().filter_map(|(key, _)| {
        let opened = index.opened_by(key).iter();
        let locks: Vec<LockId> = opened.copied().filter(|&lock| counts(lock)).collect();
        if locks.is_empty() {
            return None;
        }
        let needs = |holder: HolderId| {
            let mut doors = locks.iter().filter_map(|&lock| index.door_of(lock));
            doors.any(|door| index.needs(holder).contains(&door))
        };
        let mut carried = carried.remove(&key).unwrap_or_default();
        carried.retain(|&holder, is_on_the_ring| *is_on_the_ring || needs(holder));
        let missing = carried
            .iter()
            .filter(|&(_, is_on_the_ring)| !is_on_the_ring);
        let compared = ComparedKey {
            is_own: locks.iter().any(|lock| own.contains(lock)),
            locks: locks.clone(),
        };
        Some(RingKey {
            missing_from: missing.map(|(&holder, _)| holder).collect(),
            carried_by: carried.keys().copied().collect(),
            in_safes: safes.get(&key).cloned().unwrap_or_default(),
            ..RingKey::of(index, compared)
        })
    });
    keys.collect()
}

/// Who has or lost each key, and whether it is on their ring now. What somebody did not give back
/// is not theirs any more; what went from a key safe goes back there.
fn carried(index: &Index<'_>) -> BTreeMap<KeyId, BTreeMap<HolderId, bool>> {
    let mut carried: BTreeMap<KeyId, BTreeMap<HolderId, bool>> = BTreeMap::new();
    for (_, copy) in index.household.copies() {
        let (holder, is_on_the_ring) = match copy.place {
            Place::Held(holder) => (holder, true),
            Place::Lost {
                by: Some(holder),
                loss,
                from_safe: None,
            } if loss != Loss::NotReturned => (holder, false),
            _ => continue,
        };
        if !no_longer_should(index.household, holder) {
            let by = carried.entry(copy.key).or_default();
            *by.entry(holder).or_default() |= is_on_the_ring;
        }
    }
    carried
}

/// The key safes for which each key is meant.
fn safes(index: &Index<'_>) -> BTreeMap<KeyId, Vec<WayId>> {
    let mut safes: BTreeMap<KeyId, Vec<WayId>> = BTreeMap::new();
    for (safe, _) in index.household.ways() {
        for &key in index.meant_for_safe(safe) {
            let safes = safes.entry(key).or_default();
            if safes.last() != Some(&safe) {
                safes.push(safe);
            }
        }
    }
    safes
}

fn sorted<I: Ord>(mut list: Vec<I>) -> Vec<I> {
    list.sort_unstable();
    list.dedup();
    list
}
