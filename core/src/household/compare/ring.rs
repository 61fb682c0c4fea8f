//! What everybody carries by one grouping.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use super::super::index::Index;
use super::super::kinds::Grouping;
use super::super::{DoorId, Group, HolderId, KeyId, LockId};

/// A key as one grouping has it. All lists are in the order of the ids.
pub(super) struct RingKey {
    locks: Vec<LockId>,
    doors: Vec<DoorId>,
    carried_by: Vec<HolderId>,
    is_own: bool,
}

/// What one holder carries.
pub(super) struct Ring<'k>(Vec<&'k RingKey>);

impl RingKey {
    fn new(index: &Index<'_>, locks: Vec<LockId>, carried_by: Vec<HolderId>, is_own: bool) -> Self {
        let doors = locks.iter().filter_map(|&lock| index.door_of(lock));
        Self {
            doors: sorted(doors.collect()),
            locks,
            carried_by,
            is_own,
        }
    }

    pub(super) fn carried_by(&self) -> &[HolderId] {
        &self.carried_by
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

    fn together<I: Ord + Clone>(&self, list: impl Fn(&'k RingKey) -> &'k Vec<I>) -> Cow<'k, [I]> {
        match self.0[..] {
            [key] => Cow::Borrowed(list(key)),
            _ => Cow::Owned(sorted(
                self.0.iter().flat_map(|key| list(key)).cloned().collect(),
            )),
        }
    }
}

/// The keys by one grouping. As now: those there are. Otherwise: those of the groups, and the keys to
/// others' locks as they are.
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
        let (locks, carried_by) = (group.locks.clone(), group.carried_by.clone());
        RingKey::new(index, locks, carried_by, true)
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
        Some(RingKey::new(index, locks, carried_by, is_own))
    });
    keys.collect()
}

fn sorted<I: Ord>(mut list: Vec<I>) -> Vec<I> {
    list.sort_unstable();
    list.dedup();
    list
}
