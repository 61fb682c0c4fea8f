//! Replies of those who decide about a lock or a way in. A reply is to what they were told: where a key or
//! a copy more is out, a loss turns out graver or somebody else decides, they have to be told anew.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::advice::Urgency;

use super::super::exposed::{exposed, must_not_know, open_ways};
use super::super::index::Index;
use super::super::kinds::WhoDecides;
use super::super::remedy::{WhoActs, who_acts};
use super::super::{CopyId, ExposedBy, ExposedKey, HolderId, Household, KeyId, LockId, WayId};

/// A household with what there is to tell others.
struct Matters<'a> {
    index: Index<'a>,
    exposed: BTreeMap<KeyId, ExposedKey>,
    ways: BTreeMap<WayId, Urgency>,
}

/// In whose wrong hands a way in is.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Hands {
    Somebodys,
    Lost(HolderId),
    Known(HolderId),
}

impl Household {
    /// Takes back every reply that is none to what is out now, or none of those who decide.
    pub(super) fn settle_replies(&mut self, before: &Self) {
        let has_reply = self.locks.values().any(|lock| lock.reply.is_some())
            || self.ways.values().any(|way| way.reply.is_some());
        if !has_reply {
            return;
        }
        let (locks, ways) = {
            let (before, now) = (Matters::of(before), Matters::of(self));
            let locks = self.locks().filter(|(_, lock)| lock.reply.is_some());
            let locks = locks.map(|(id, _)| id);
            let locks: Vec<LockId> = locks.filter(|&id| !now.is_told(&before, id)).collect();
            let ways = self.ways().filter(|(_, way)| way.reply.is_some());
            let ways = ways.map(|(id, _)| id);
            let ways: Vec<WayId> = ways.filter(|&id| !now.is_told_of(&before, id)).collect();
            (locks, ways)
        };
        for id in locks {
            if let Some(lock) = Arc::make_mut(&mut self.locks).get_mut(&id) {
                lock.reply = None;
            }
        }
        for id in ways {
            if let Some(way) = Arc::make_mut(&mut self.ways).get_mut(&id) {
                way.reply = None;
            }
        }
    }
}

impl<'a> Matters<'a> {
    fn of(household: &'a Household) -> Self {
        let index = Index::of(household);
        Self {
            exposed: exposed(&index),
            ways: open_ways(&index),
            index,
        }
    }

    /// Whether what is out now of the keys to a lock is no more than was before, and anything at all, and the
    /// same others decide.
    fn is_told(&self, before: &Self, id: LockId) -> bool {
        let who = |matters: &Self| {
            matters
                .decider_of(id)
                .filter(|&(who, _)| who != WhoActs::Household)
        };
        if who(self).is_none() || who(self) != who(before) {
            return false;
        }
        let now: Vec<&ExposedKey> = self.out(id).collect();
        let is_known = |now: &&ExposedKey| {
            before.out(id).any(|was| {
                was.key == now.key
                    && now.urgency <= was.urgency
                    && copies(now).is_subset(&copies(was))
            })
        };
        !now.is_empty() && now.iter().all(is_known)
    }

    fn decider_of(&self, id: LockId) -> Option<(WhoActs, WhoDecides)> {
        let lock = self.index.household.lock(id)?;
        let door = self.index.household.door(lock.door)?;
        Some((who_acts(lock, door), door.who_decides))
    }

    /// The exposed keys to a lock.
    fn out(&self, id: LockId) -> impl Iterator<Item = &ExposedKey> {
        let lock = self.index.household.lock(id);
        let keys = lock.into_iter().flat_map(|lock| &lock.keys);
        keys.filter_map(|key| self.exposed.get(key))
    }

    /// The same of a way in: it is in no more hands than before, and in some.
    fn is_told_of(&self, before: &Self, id: WayId) -> bool {
        let who = |matters: &Self| {
            matters
                .decider_at(id)
                .filter(|&who| who != WhoDecides::Household)
        };
        if who(self).is_none() || who(self) != who(before) {
            return false;
        }
        let (now, was) = (self.ways.get(&id), before.ways.get(&id));
        now.is_some() && now <= was && self.hands(id).is_subset(&before.hands(id))
    }

    fn decider_at(&self, id: WayId) -> Option<WhoDecides> {
        let way = self.index.household.way(id)?;
        Some(self.index.household.door(way.door)?.who_decides)
    }

    fn hands(&self, id: WayId) -> BTreeSet<Hands> {
        let Some(way) = self.index.household.way(id) else {
            return BTreeSet::new();
        };
        let doors = self.index.doors_by(id);
        let given = way.given_away.map(|_| Hands::Somebodys);
        let lost = way.lost_by.keys().copied().map(Hands::Lost);
        let knows = way.known_by.iter().copied();
        let wrongly = knows.filter(|&by| must_not_know(&self.index, by, &doors).is_some());
        given
            .into_iter()
            .chain(lost)
            .chain(wrongly.map(Hands::Known))
            .collect()
    }
}

/// The copies for which a key is exposed.
fn copies(key: &ExposedKey) -> BTreeSet<CopyId> {
    let copies = key.by.iter().filter_map(|by| match *by {
        ExposedBy::LostCopy(copy, _)
        | ExposedBy::FormerHolder(copy, _)
        | ExposedBy::KeySafe(copy, _) => Some(copy),
        ExposedBy::Check(_) | ExposedBy::MayBeCopied(_) => None,
    });
    copies.collect()
}
