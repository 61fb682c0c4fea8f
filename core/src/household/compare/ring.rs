//! What everybody carries by one grouping.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use super::super::exposed::no_longer_should;
use super::super::index::Index;
use super::super::kinds::Grouping;
use super::super::{DoorId, Group, HolderId, KeyId, LockId, Place};

/// A key as one grouping has it. All lists are in the order of the ids.
pub(super) struct RingKey {
    locks: Vec<LockId>,
    doors: Vec<DoorId>,
    carried_by: Vec<HolderId>,
    copies: u64,
    is_own: bool,
}

/// What one holder carries.
pub(super) struct Ring<'k>(Vec<&'k RingKey>);

impl RingKey {
    fn new(
        index: &Index<'_>,
        locks: Vec<LockId>,
        carried_by: Vec<HolderId>,
        copies: u64,
        is_own: bool,
    ) -> Self {
        let doors = locks.iter().filter_map(|&lock| index.door_of(lock));
        Self {
            doors: sorted(doors.collect()),
            locks,
            carried_by,
            copies,
            is_own,
        }
    }

    pub(super) fn carried_by(&self) -> &[HolderId] {
        &self.carried_by
    }

    pub(super) fn is_carried_by(&self, holder: HolderId) -> bool {
        self.carried_by.binary_search(&holder).is_ok()
    }

    /// Whether it opens a lock the household decides about.
    pub(super) fn is_own(&self) -> bool {
        self.is_own
    }
}

impl<'k> Ring<'k> {
    pub(super) fn new(keys: Vec<&'k RingKey>) -> Self {
        Self(keys)
    }

    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub(super) fn key_count(&self) -> usize {
        self.0.len()
    }

    /// The locks it turns.
    pub(super) fn locks(&self) -> Cow<'k, [LockId]> {
        self.together(|key| &key.locks)
    }

    /// The doors at which it turns a lock.
    pub(super) fn doors(&self) -> Cow<'k, [DoorId]> {
        self.together(|key| &key.doors)
    }

    /// For each key to the household's own locks, the copies there are of it.
    pub(super) fn own_copies(&self) -> impl Iterator<Item = u64> {
        self.0.iter().filter(|key| key.is_own).map(|key| key.copies)
    }

    fn together<I: Ord + Clone>(&self, list: impl Fn(&'k RingKey) -> &'k Vec<I>) -> Cow<'k, [I]> {
        match self.0[..] {
            [key] => Cow::Borrowed(list(key)),
            _ => Cow::Owned(sorted(
                self.0.iter().flat_map(|key| list(key)).cloned().collect(),
            )),
        }
    }
}

/// The keys by one grouping. As now: those there are. Otherwise: those of the groups, each copied
/// once for everybody who needs a door of it, and the keys to others' locks as they are.
pub(super) fn keys_by(
    index: &Index<'_>,
    own: &BTreeSet<LockId>,
    grouping: Grouping,
    groups: &[Group],
) -> Vec<RingKey> {
    if grouping == Grouping::AsNow {
        return keys_as_now(index, own, |_| true);
    }
    let mut keys = keys_as_now(index, own, |lock| !own.contains(&lock));
    keys.extend(groups.iter().map(|group| {
        let copies = group.needed_by.len().max(1) as u64;
        let (locks, carried_by) = (group.locks.clone(), group.needed_by.clone());
        RingKey::new(index, locks, carried_by, copies, true)
    }));
    keys
}

fn keys_as_now(
    index: &Index<'_>,
    own: &BTreeSet<LockId>,
    counts: impl Fn(LockId) -> bool,
) -> Vec<RingKey> {
    let mut carried_by: BTreeMap<KeyId, Vec<HolderId>> = BTreeMap::new();
    for (holder, part) in index.household.holders() {
        if !part.no_longer_should {
            for key in index.whole_ring(holder) {
                carried_by.entry(key).or_default().push(holder);
            }
        }
    }
    let keys = index.household.keys().filter_map(|(key, _)| {
        let opened = index.opened_by(key).iter();
        let locks: Vec<LockId> = opened.copied().filter(|&lock| counts(lock)).collect();
        if locks.is_empty() {
            return None;
        }
        let carried_by = carried_by.remove(&key).unwrap_or_default();
        let is_own = locks.iter().any(|lock| own.contains(lock));
        let copies = copies_in_use(index, key);
        Some(RingKey::new(index, locks, carried_by, copies, is_own))
    });
    keys.collect()
}

/// The copies that will be there again after a loss, at least one.
fn copies_in_use(index: &Index<'_>, key: KeyId) -> u64 {
    let copies = index.copies_of(key).iter();
    let places = copies.filter_map(|&copy| index.household.copy(copy));
    let in_use = places.filter(|copy| match copy.place {
        Place::Scrapped { .. } => false,
        place => place
            .had_by()
            .is_none_or(|holder| !no_longer_should(index.household, holder)),
    });
    in_use.count().max(1) as u64
}

fn sorted<I: Ord>(mut list: Vec<I>) -> Vec<I> {
    list.sort_unstable();
    list.dedup();
    list
}
