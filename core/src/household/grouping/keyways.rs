//! Which locks take the same blank, as far as the household knows.

use std::collections::BTreeMap;

use super::super::index::Index;
use super::super::kinds::Arrangement;
use super::super::{Keyway, LockId};

/// Whether two locks can be keyed alike without a new cylinder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::household) enum Sharing {
    /// One key opens both today, or their keyways are known to be the same.
    Same,
    /// Their keyways are known to differ.
    Different,
    /// Nobody knows; the locksmith looks.
    Unknown,
}

/// Locks put together by keyway. Two locks that one key opens take the same blank. A master key may
/// be cut so that it enters several keyways, so only locks with one key are joined in this way.
pub(in crate::household) struct Keyways {
    place: BTreeMap<LockId, usize>,
    parent: Vec<usize>,
    stated: Vec<Option<Keyway>>,
}

impl Keyways {
    pub(in crate::household) fn of(index: &Index<'_>) -> Self {
        let household = index.household;
        let mut keyways = Self {
            place: BTreeMap::new(),
            parent: Vec::new(),
            stated: Vec::new(),
        };
        let mut first_of_key = BTreeMap::new();
        let mut first_of_keyway = BTreeMap::new();
        for (place, (id, lock)) in household.locks().enumerate() {
            keyways.place.insert(id, place);
            keyways.parent.push(place);
            keyways.stated.push(lock.keyway);
            if lock.arrangement == Arrangement::OneKey {
                for &key in &lock.keys {
                    let first = *first_of_key.entry(key).or_insert(place);
                    keyways.join(first, place);
                }
            }
            if let Some(keyway) = lock.keyway {
                let first = *first_of_keyway.entry(keyway).or_insert(place);
                keyways.join(first, place);
            }
        }
        keyways
    }

    /// Whether two locks can be keyed alike as they are.
    pub(in crate::household) fn sharing(&self, one: LockId, other: LockId) -> Sharing {
        let (Some(one), Some(other)) = (self.class(one), self.class(other)) else {
            return Sharing::Unknown;
        };
        if one == other {
            return Sharing::Same;
        }
        match (self.stated[one], self.stated[other]) {
            (Some(one), Some(other)) if one != other => Sharing::Different,
            _ => Sharing::Unknown,
        }
    }

    /// The class of a lock: the same number for locks known to share a keyway.
    pub(in crate::household) fn class(&self, lock: LockId) -> Option<usize> {
        self.place.get(&lock).map(|&place| self.root(place))
    }

    fn root(&self, mut place: usize) -> usize {
        while self.parent[place] != place {
            place = self.parent[place];
        }
        place
    }

    /// Joins two classes under the earlier root and keeps what was stated of either.
    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.root(one), self.root(other));
        let (root, child) = (one.min(other), one.max(other));
        if root != child {
            self.parent[child] = root;
            self.stated[root] = self.stated[root].or(self.stated[child]);
        }
    }
}
