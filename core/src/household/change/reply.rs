//! Replies of those who decide about a lock or a way in. A reply is to what they were told: where a copy
//! more goes, or a loss turns out graver, they have to be told anew.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::advice::Urgency;

use super::super::exposed::{exposed, open_ways};
use super::super::index::Index;
use super::super::kinds::WhoDecides;
use super::super::remedy::{WhoActs, who_acts};
use super::super::{CopyId, ExposedBy, Household, LockId, WayId};

/// What there is to tell.
#[derive(Default)]
struct Matters {
    locks: BTreeMap<LockId, Matter>,
    ways: BTreeMap<WayId, Urgency>,
}

struct Matter {
    urgency: Urgency,
    copies: BTreeSet<CopyId>,
}

impl Household {
    /// Takes back every reply that is none to what is out now, or no longer anybody else's.
    pub(super) fn settle_replies(&mut self, before: &Self) {
        let has_reply = self.locks.values().any(|lock| lock.reply.is_some())
            || self.ways.values().any(|way| way.reply.is_some());
        if !has_reply {
            return;
        }
        let (before, now) = (Matters::of(before), Matters::of(self));
        let is_others = |lock: LockId| {
            let lock = self.lock(lock);
            let door = lock.and_then(|lock| self.door(lock.door));
            lock.zip(door)
                .is_some_and(|(lock, door)| who_acts(lock, door) != WhoActs::Household)
        };
        let of_others: BTreeSet<LockId> = self
            .locks()
            .map(|(id, _)| id)
            .filter(|&id| is_others(id))
            .collect();
        let doors = Arc::clone(&self.doors);
        let locks = Arc::make_mut(&mut self.locks).iter_mut();
        for (id, lock) in locks.filter(|(_, lock)| lock.reply.is_some()) {
            if !of_others.contains(id) || !now.is_told_of_lock(&before, *id) {
                lock.reply = None;
            }
        }
        let ways = Arc::make_mut(&mut self.ways).iter_mut();
        for (id, way) in ways.filter(|(_, way)| way.reply.is_some()) {
            let door = doors.get(&way.door);
            let is_ours = door.is_none_or(|door| door.who_decides == WhoDecides::Household);
            if is_ours || !now.is_told_of_way(&before, *id) {
                way.reply = None;
            }
        }
    }
}

impl Matters {
    fn of(household: &Household) -> Self {
        let index = Index::of(household);
        let mut matters = Self {
            ways: open_ways(&index),
            ..Self::default()
        };
        for (key, why) in exposed(&index) {
            let copies = why.by.iter().filter_map(|by| match *by {
                ExposedBy::LostCopy(copy, _)
                | ExposedBy::FormerHolder(copy, _)
                | ExposedBy::KeySafe(copy, _) => Some(copy),
                ExposedBy::Check(_) | ExposedBy::MayBeCopied(_) => None,
            });
            let copies: BTreeSet<CopyId> = copies.collect();
            for &lock in index.opened_by(key) {
                let matter = matters.locks.entry(lock).or_insert_with(|| Matter {
                    urgency: why.urgency,
                    copies: BTreeSet::new(),
                });
                matter.urgency = matter.urgency.max(why.urgency);
                matter.copies.extend(&copies);
            }
        }
        matters
    }

    /// Whether this is no more than was there to tell of the lock before, and anything at all.
    fn is_told_of_lock(&self, before: &Self, lock: LockId) -> bool {
        let (now, before) = (self.locks.get(&lock), before.locks.get(&lock));
        now.zip(before).is_some_and(|(now, before)| {
            now.urgency <= before.urgency && now.copies.is_subset(&before.copies)
        })
    }

    fn is_told_of_way(&self, before: &Self, way: WayId) -> bool {
        let (now, before) = (self.ways.get(&way), before.ways.get(&way));
        now.is_some() && now <= before
    }
}
