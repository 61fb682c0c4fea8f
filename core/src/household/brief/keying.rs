//! Locks that more than one key opens: which key is the master, which a lock's own.

use super::super::index::Index;
use super::super::kinds::Arrangement;
use super::super::plan::Work;
use super::super::{Key, KeyId, Lock, LockId};
use super::BriefKey;

/// How many keys open a lock today and afterwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keying {
    /// One, then as now.
    OneKey,
    /// Its own key and a master key, then as now.
    MasterKeyed,
    /// Several today, one afterwards.
    OneKeyAfterwards,
    /// It is said to be master-keyed, but only one of its keys is known.
    OtherKeysNotTold,
    /// The own keys of many, which go on opening it.
    KeysOfMany,
}

/// How a key stands to the other keys of a master-keyed lock.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum KeyRank {
    /// It shares no such lock, or nobody can say which of its keys is the master.
    Alone,
    /// It is the lock's own key.
    Own,
    /// It opens more locks than another key of the lock.
    Master,
}

/// Which keys of a lock are restricted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Restricted {
    /// Its one key.
    ItsKey,
    /// Every one of several.
    All,
    /// The master key alone.
    Master,
    /// The lock's own key alone.
    Own,
    /// Some, and nobody can say in a word which.
    Some,
}

/// A key of today that a lock of the page no longer takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OldKey {
    /// How it stands to the other keys of its locks.
    pub rank: KeyRank,
    /// The locks of the page that no longer take it.
    pub locks: Vec<usize>,
}

/// By how many locks a key opens, beside the other keys of one lock.
fn rank_by(opens: usize, all: impl Iterator<Item = usize> + Clone) -> KeyRank {
    let fewest = all.clone().min();
    if fewest == all.max() {
        KeyRank::Alone
    } else if fewest < Some(opens) {
        KeyRank::Master
    } else {
        KeyRank::Own
    }
}

/// How a key of today stands to the other keys of this lock.
fn rank_today(index: &Index<'_>, lock: &Lock, key: KeyId) -> KeyRank {
    if lock.arrangement != Arrangement::MasterKeyed {
        return KeyRank::Alone;
    }
    let opens = |key: KeyId| index.opened_by(key).len();
    rank_by(opens(key), lock.keys.iter().map(|&key| opens(key)))
}

/// Which keys of the lock are known to be restricted.
pub(super) fn restricted(index: &Index<'_>, lock: &Lock) -> Option<Restricted> {
    let is_restricted = |key: &&KeyId| {
        let key = index.household.key(**key);
        key.is_some_and(|key: &Key| key.restricted == Some(true))
    };
    let restricted: Vec<KeyId> = lock.keys.iter().filter(is_restricted).copied().collect();
    let ranks = restricted.iter().map(|&key| rank_today(index, lock, key));
    let mut ranks: Vec<KeyRank> = ranks.collect();
    ranks.sort();
    ranks.dedup();
    match (restricted.len(), lock.keys.len(), ranks.as_slice()) {
        (0, _, _) => None,
        (1, 1, _) => Some(Restricted::ItsKey),
        (some, all, _) if some == all => Some(Restricted::All),
        (_, _, [KeyRank::Master]) => Some(Restricted::Master),
        (_, _, [KeyRank::Own]) => Some(Restricted::Own),
        _ => Some(Restricted::Some),
    }
}

/// How many keys open the lock, `after` of those on the page.
pub(super) fn keying(lock: &Lock, after: usize, keeps_many_keys: bool) -> Keying {
    match (lock.arrangement, lock.keys.len()) {
        (Arrangement::OneKey, _) => Keying::OneKey,
        (Arrangement::CentralLock, _) if keeps_many_keys => Keying::KeysOfMany,
        (Arrangement::CentralLock, 0 | 1) => Keying::KeysOfMany,
        (Arrangement::MasterKeyed, _) if after > 1 => Keying::MasterKeyed,
        (Arrangement::MasterKeyed, 0 | 1) => Keying::OtherKeysNotTold,
        _ => Keying::OneKeyAfterwards,
    }
}

/// How each key of the page stands to the others of its master-keyed locks; `opens` says how many locks
/// each opens afterwards, `locks` which of these keys open a lock that is master-keyed then.
pub(super) fn put_ranks(keys: &mut [BriefKey], opens: &[usize], locks: &[&[usize]]) {
    let opened = |key: usize| opens.get(key).copied().unwrap_or_default();
    for &keys_of_the_lock in locks {
        for &place in keys_of_the_lock {
            let all = keys_of_the_lock.iter().map(|&key| opened(key));
            let rank = rank_by(opened(place), all);
            if let Some(key) = keys.get_mut(place) {
                key.rank = key.rank.max(rank);
            }
        }
    }
}

/// The keys at hand that the works take out of their locks, in the order of the first lock of each.
pub(super) fn old_keys(index: &Index<'_>, works: &[&Work]) -> Vec<OldKey> {
    let mut seen: Vec<KeyId> = Vec::new();
    let mut old = Vec::new();
    for &key in works.iter().flat_map(|work| &work.drops) {
        if seen.contains(&key) || !index.is_at_hand(key) {
            continue;
        }
        seen.push(key);
        let dropped = works.iter().enumerate();
        let dropped = dropped.filter(|(_, work)| work.drops.contains(&key));
        let locks: Vec<(usize, LockId)> = dropped.map(|(place, work)| (place, work.lock)).collect();
        let ranks = locks.iter().filter_map(|&(_, lock)| {
            let lock = index.household.lock(lock)?;
            Some(rank_today(index, lock, key))
        });
        old.push(OldKey {
            rank: ranks.max().unwrap_or(KeyRank::Alone),
            locks: locks.into_iter().map(|(place, _)| place).collect(),
        });
    }
    old
}
