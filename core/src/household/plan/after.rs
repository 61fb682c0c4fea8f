//! The household as it is once the plan is carried out.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::super::exposed::{exposed, open_ways};
use super::super::index::Index;
use super::super::kinds::{Arrangement, Loss, Reply};
use super::super::remedy::WhoActs;
use super::super::restricted::restricted_among;
use super::super::{CopyId, Household, Key, KeyCopy, KeyId, Place, Refusal, WayId};
use super::{Origin, Plan, Recipient, WayWork};

impl Plan {
    /// Whose part there is anything in, the household's first.
    pub fn actors(&self) -> BTreeSet<WhoActs> {
        let works = self.works.iter().map(|work| work.who);
        let ways = self.ways.iter().map(WayWork::who);
        let all = works.chain(ways).chain(self.keys.iter().map(|key| key.who));
        let hands_in = !self.hand_in.is_empty();
        all.chain(hands_in.then_some(WhoActs::Household)).collect()
    }

    /// The household as it is once everything in the plan is done, by the household and by those
    /// who were told.
    ///
    /// The plan must be one of this household. Refused where the new parts do not fit.
    pub fn carried_out(&self, household: &Household) -> Result<Household, Refusal> {
        self.carried_out_by(household, &self.actors())
    }

    /// The household as it is once these have done their part. What others decide stays as it is until
    /// they have acted. Keys that opened something before and open nothing now are gone with all
    /// their copies; the new ones are there, each copy with whom it was cut for. None is put into a key
    /// safe of which others have yet to change the code: it stays in the home.
    ///
    /// The plan must be one of this household. Refused where the new parts do not fit.
    pub fn carried_out_by(
        &self,
        household: &Household,
        acted: &BTreeSet<WhoActs>,
    ) -> Result<Household, Refusal> {
        let mut after = household.clone();
        let keys = self.make_keys(&mut after, acted)?;
        self.rekey(&mut after, &keys, acted)?;
        retire(&mut after, household);
        let is_ours = acted.contains(&WhoActs::Household);
        for &id in self.hand_in.iter().filter(|_| is_ours) {
            if let Some(copy) = after.copy(id).copied() {
                let returned_by = copy.place.had_by();
                let place = Place::AtHome { returned_by };
                after.put_copy(id, KeyCopy { place, ..copy })?;
            }
        }
        let is_open = |way: WayId| {
            let mut ways = self.ways.iter();
            ways.any(|work| work.way == way && !acted.contains(&work.who()))
        };
        for (planned, &key) in self.keys.iter().zip(&keys) {
            let Some(key) = key else { continue };
            let place = |recipient: Recipient| match recipient {
                Recipient::Holder(holder) => Place::Held(holder),
                Recipient::KeySafe(way) if !is_open(way) => Place::InKeySafe(way),
                Recipient::KeySafe(_) | Recipient::Spare => Place::AtHome { returned_by: None },
            };
            for &(copy, recipient) in &planned.handed_on {
                let place = place(recipient);
                after.put_copy(copy, KeyCopy { key, place })?;
            }
            for &(recipient, count) in &planned.copies {
                let place = place(recipient);
                for _ in 0..count {
                    let id = CopyId(after.mint()?);
                    after.put_copy(id, KeyCopy { key, place })?;
                }
            }
        }
        self.change_ways(&mut after, acted);
        take_back_needs(&mut after, household);
        self.keep_exposed(&mut after);
        self.keep_open(&mut after, household, acted);
        if is_ours {
            self.others_replied(&mut after, Reply::Waiting, |who| !acted.contains(&who));
        }
        Ok(after)
    }

    /// The household once these were told, whatever else the plan asks of the household is done, and this
    /// came of it.
    pub fn replied(
        &self,
        household: &Household,
        by: &BTreeSet<WhoActs>,
        reply: Reply,
    ) -> Household {
        let mut after = household.clone();
        self.others_replied(&mut after, reply, |who| by.contains(&who));
        after
    }

    /// Notes the reply of others to what the plan asks of them. Whoever waits for them may have been told
    /// before that they leave it as it is.
    fn others_replied(&self, after: &mut Household, reply: Reply, is_by: impl Fn(WhoActs) -> bool) {
        let is_theirs = |who: WhoActs| who != WhoActs::Household && is_by(who);
        let noted = |now: Option<Reply>| match reply {
            Reply::Waiting => now.or(Some(reply)),
            Reply::LeftAsItIs => Some(reply),
        };
        let locks = Arc::make_mut(&mut after.locks);
        for work in self.works.iter().filter(|work| is_theirs(work.who)) {
            if let Some(lock) = locks.get_mut(&work.lock) {
                lock.reply = noted(lock.reply);
            }
        }
        let ways = Arc::make_mut(&mut after.ways);
        for work in self.ways.iter().filter(|work| is_theirs(work.who())) {
            if let Some(way) = ways.get_mut(&work.way) {
                way.reply = noted(way.reply);
            }
        }
    }

    /// A key that still opens a lock stays exposed, though the code of the key safe it lay in is changed
    /// and with it goes the record of why.
    fn keep_exposed(&self, after: &mut Household) {
        let now = exposed(&Index::of(after));
        let keys = Arc::make_mut(&mut after.keys);
        for was in &self.exposed {
            let is_as_urgent = now
                .get(&was.key)
                .is_some_and(|now| now.urgency >= was.urgency.min(now.at_most));
            if let Some(key) = keys.get_mut(&was.key).filter(|_| !is_as_urgent) {
                key.may_be_copied = key.may_be_copied.max(Some(was.urgency));
            }
        }
    }

    /// A way in that is not changed yet stays in wrong hands, though with the lock of another's the record
    /// goes of who kept a key to it back. One that only a new key in it would have put in wrong hands is in
    /// none: the key is not put in.
    fn keep_open(&self, after: &mut Household, before: &Household, acted: &BTreeSet<WhoActs>) {
        let was = open_ways(&Index::of(before));
        let now = open_ways(&Index::of(after));
        let ways = Arc::make_mut(&mut after.ways);
        let left = self.ways.iter();
        for work in left.filter(|work| !acted.contains(&work.who())) {
            let Some(urgency) = was.get(&work.way) else {
                continue;
            };
            let is_as_urgent = now.get(&work.way) >= Some(urgency);
            if let Some(way) = ways.get_mut(&work.way).filter(|_| !is_as_urgent) {
                way.known_by.retain(|holder| !work.without.contains(holder));
                way.give_away(Some(Loss::NotReturned));
                *way = way.clone().settled();
            }
        }
    }

    /// Gives every planned key of those who acted its id. A new key is restricted where one it replaces was, and not
    /// checked yet.
    fn make_keys(
        &self,
        after: &mut Household,
        acted: &BTreeSet<WhoActs>,
    ) -> Result<Vec<Option<KeyId>>, Refusal> {
        let mut ids = Vec::with_capacity(self.keys.len());
        for planned in &self.keys {
            if !acted.contains(&planned.who) {
                ids.push(None);
                continue;
            }
            ids.push(Some(match &planned.origin {
                Origin::Kept(key) => *key,
                Origin::New { replaces } => {
                    let old = replaces.iter().filter_map(|&key| after.key(key));
                    let restricted = restricted_among(old);
                    let id = KeyId(after.mint()?);
                    let fresh = Key {
                        restricted,
                        ..Key::default()
                    };
                    // Old keys go at the same time, so the limit on keys does not hold for these.
                    Arc::make_mut(&mut after.keys).insert(id, fresh);
                    id
                }
            }));
        }
        Ok(ids)
    }

    fn rekey(
        &self,
        after: &mut Household,
        keys: &[Option<KeyId>],
        acted: &BTreeSet<WhoActs>,
    ) -> Result<(), Refusal> {
        for work in self.works.iter().filter(|work| acted.contains(&work.who)) {
            let mut lock = after
                .lock(work.lock)
                .ok_or(Refusal::UnknownLock(work.lock))?
                .clone();
            for dropped in &work.drops {
                lock.keys.remove(dropped);
            }
            let taken = work.takes.iter().filter_map(|&place| keys.get(place));
            lock.keys.extend(taken.flatten());
            lock.reply = None;
            if lock.keys.len() <= 1 {
                lock.arrangement = Arrangement::OneKey;
            }
            after.put_lock(work.lock, lock)?;
        }
        Ok(())
    }

    fn change_ways(&self, after: &mut Household, acted: &BTreeSet<WhoActs>) {
        let ways = Arc::make_mut(&mut after.ways);
        let changed = self.ways.iter();
        for work in changed.filter(|work| acted.contains(&work.who())) {
            if let Some(way) = ways.get_mut(&work.way) {
                way.known_by.retain(|holder| !work.without.contains(holder));
                way.take_back();
            }
        }
    }
}

/// Who did not give back a key to a door is no longer said to need it: with the key, the record of
/// that goes too.
fn take_back_needs(after: &mut Household, before: &Household) {
    let index = Index::of(before);
    for (id, holder) in before.holders() {
        if holder.needs.is_some() && index.kept_a_key_back(id) {
            let needs = Some(index.needs(id).clone());
            if let Some(holder) = Arc::make_mut(&mut after.holders).get_mut(&id) {
                holder.needs = needs;
            }
        }
    }
}

/// Takes away the keys that opened something and open nothing now.
fn retire(after: &mut Household, before: &Household) {
    let opening = |household: &Household| -> BTreeSet<KeyId> {
        let locks = household.locks();
        locks
            .flat_map(|(_, lock)| lock.keys.iter().copied())
            .collect()
    };
    let still = opening(after);
    let gone: BTreeSet<KeyId> = opening(before).difference(&still).copied().collect();
    Arc::make_mut(&mut after.keys).retain(|key, _| !gone.contains(key));
    Arc::make_mut(&mut after.copies).retain(|_, copy| !gone.contains(&copy.key));
}
