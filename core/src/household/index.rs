//! A household turned round: what each key opens, what each person has. Made once per question, in
//! time proportional to the household.

use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};

use crate::advice::Urgency;

use super::exposed::no_longer_should;
use super::grouping::users::Users;
use super::kinds::{Loss, WayKind, WhoDecides};
use super::remedy::most_urgent;
use super::{CopyId, DoorId, HolderId, Household, KeyId, LockId, Place, Refusal, WayId};

pub(super) struct Index<'a> {
    pub(super) household: &'a Household,
    locks_of_key: BTreeMap<KeyId, Vec<LockId>>,
    locks_of_door: BTreeMap<DoorId, Vec<LockId>>,
    copies_of_key: BTreeMap<KeyId, Vec<CopyId>>,
    rings: BTreeMap<HolderId, Vec<KeyId>>,
    lost_by: BTreeMap<HolderId, Vec<KeyId>>,
    not_returned: BTreeMap<HolderId, Vec<KeyId>>,
    in_safe: BTreeMap<WayId, Vec<KeyId>>,
    meant_for_safe: BTreeMap<WayId, Vec<KeyId>>,
    known: BTreeMap<HolderId, Vec<WayId>>,
    needs: OnceCell<BTreeMap<HolderId, BTreeSet<DoorId>>>,
    users: OnceCell<Users>,
}

impl<'a> Index<'a> {
    pub(super) fn of(household: &'a Household) -> Self {
        let mut index = Self {
            household,
            locks_of_key: BTreeMap::new(),
            locks_of_door: BTreeMap::new(),
            copies_of_key: BTreeMap::new(),
            rings: BTreeMap::new(),
            lost_by: BTreeMap::new(),
            not_returned: BTreeMap::new(),
            in_safe: BTreeMap::new(),
            meant_for_safe: BTreeMap::new(),
            known: BTreeMap::new(),
            needs: OnceCell::new(),
            users: OnceCell::new(),
        };
        for (id, lock) in household.locks() {
            index.locks_of_door.entry(lock.door).or_default().push(id);
            for &key in &lock.keys {
                index.locks_of_key.entry(key).or_default().push(id);
            }
        }
        for (id, copy) in household.copies() {
            index.copies_of_key.entry(copy.key).or_default().push(id);
            if let Some(safe) = copy.place.key_safe() {
                let meant = index.meant_for_safe.entry(safe).or_default();
                meant.push(copy.key);
            }
            match copy.place {
                Place::Held(holder) => index.rings.entry(holder).or_default().push(copy.key),
                Place::Lost {
                    by: Some(holder),
                    loss: Loss::NotReturned,
                    ..
                } => index.not_returned.entry(holder).or_default().push(copy.key),
                Place::Lost {
                    by: Some(holder),
                    from_safe: None,
                    ..
                } => index.lost_by.entry(holder).or_default().push(copy.key),
                Place::InKeySafe(way) => index.in_safe.entry(way).or_default().push(copy.key),
                Place::AtHome { .. } | Place::Lost { .. } | Place::Scrapped { .. } => {}
            }
        }
        for (id, way) in household.ways() {
            for &holder in &way.known_by {
                index.known.entry(holder).or_default().push(id);
            }
        }
        index
    }

    /// The locks a key opens.
    pub(super) fn opened_by(&self, key: KeyId) -> &[LockId] {
        slice(&self.locks_of_key, &key)
    }

    /// The locks on a door.
    pub(super) fn locks_on(&self, door: DoorId) -> &[LockId] {
        slice(&self.locks_of_door, &door)
    }

    /// The copies of a key.
    pub(super) fn copies_of(&self, key: KeyId) -> &[CopyId] {
        slice(&self.copies_of_key, &key)
    }

    /// Whether a copy of the key is in the home or with somebody who should have it.
    pub(super) fn is_at_hand(&self, key: KeyId) -> bool {
        let copies = self.copies_of(key).iter();
        let mut copies = copies.filter_map(|&copy| self.household.copy(copy));
        copies.any(|copy| match copy.place {
            Place::Held(holder) => !no_longer_should(self.household, holder),
            Place::InKeySafe(_) | Place::AtHome { .. } => true,
            Place::Lost { .. } | Place::Scrapped { .. } => false,
        })
    }

    /// The keys on a holder's ring, one entry for each copy.
    pub(super) fn ring(&self, holder: HolderId) -> &[KeyId] {
        slice(&self.rings, &holder)
    }

    /// The keys a holder lost from their ring, one entry for each copy; those they did not give back are none
    /// of them, nor what they had taken out of a key safe.
    pub(super) fn lost_by(&self, holder: HolderId) -> &[KeyId] {
        slice(&self.lost_by, &holder)
    }

    /// Whether a holder did not give back a key that opens something.
    pub(super) fn kept_a_key_back(&self, holder: HolderId) -> bool {
        let keys = slice(&self.not_returned, &holder);
        keys.iter().any(|&key| !self.opened_by(key).is_empty())
    }

    /// Whether a holder did not give back a key to one of these doors, or to the same home as one.
    pub(super) fn kept_a_key_back_to(&self, holder: HolderId, doors: &BTreeSet<DoorId>) -> bool {
        let is_kept_from = self.kept_from(holder);
        doors.iter().any(|&door| is_kept_from(door))
    }

    /// The doors at which a holder has nothing to do any more, for a key that they did not give back:
    /// those that it opens and, if one of them leads into the home, every other that does.
    fn kept_from(&self, holder: HolderId) -> impl Fn(DoorId) -> bool {
        let keys = slice(&self.not_returned, &holder).iter();
        let opened: BTreeSet<DoorId> = keys.flat_map(|&key| self.doors_of(key)).collect();
        let is_the_home = opened.iter().any(|&door| self.leads_into_the_home(door));
        move |door| opened.contains(&door) || (is_the_home && self.leads_into_the_home(door))
    }

    fn leads_into_the_home(&self, door: DoorId) -> bool {
        self.household.door(door).is_some_and(|door| {
            door.kind.leads_into_a_home() && door.who_decides != WhoDecides::AnotherOwner
        })
    }

    /// The doors to which a way in leads: its own, and those that the keys meant for a key safe open.
    pub(super) fn doors_by(&self, way: WayId) -> BTreeSet<DoorId> {
        let own = self.household.way(way).map(|part| part.door);
        let meant = self.meant_for_safe(way).iter();
        let kept = meant.flat_map(|&key| self.doors_of(key));
        own.into_iter().chain(kept).collect()
    }

    /// The doors at which a key turns a lock, once for each lock.
    fn doors_of(&self, key: KeyId) -> impl Iterator<Item = DoorId> {
        let locks = self.opened_by(key).iter();
        locks.filter_map(|&lock| self.door_of(lock))
    }

    /// The doors that open to whoever turns these locks, which are in the order of their ids: every lock on
    /// them turns.
    pub(super) fn doors_opened_by(&self, locks: &[LockId]) -> Vec<DoorId> {
        let doors = locks.iter().filter_map(|&lock| self.door_of(lock));
        let mut doors: Vec<DoorId> = doors.collect();
        doors.sort_unstable();
        let doors = doors.chunk_by(PartialEq::eq);
        let whole = doors.filter_map(|turned| {
            let &door = turned.first()?;
            (turned.len() == self.locks_on(door).len()).then_some(door)
        });
        whole.collect()
    }

    /// The most urgent that a door which the key opens ever is.
    pub(super) fn most_urgent_door_of(&self, key: KeyId) -> Urgency {
        let doors = self.doors_of(key);
        let doors = doors.filter_map(|door| self.household.door(door));
        doors.map(most_urgent).max().unwrap_or(Urgency::Today)
    }

    /// The keys in a key safe.
    pub(super) fn in_safe(&self, way: WayId) -> &[KeyId] {
        slice(&self.in_safe, &way)
    }

    /// The keys in a key safe, and those that went from there: one that is replaced is put back.
    pub(super) fn meant_for_safe(&self, way: WayId) -> &[KeyId] {
        slice(&self.meant_for_safe, &way)
    }

    /// The ways in a holder knows.
    pub(super) fn known_to(&self, holder: HolderId) -> &[WayId] {
        slice(&self.known, &holder)
    }

    /// The ring as the holder is meant to carry it: what is on it and what was lost from it.
    pub(super) fn whole_ring(&self, holder: HolderId) -> BTreeSet<KeyId> {
        let held = self.ring(holder).iter();
        held.chain(self.lost_by(holder)).copied().collect()
    }

    /// The doors a holder needs. Nobody who no longer should come in needs any, and nobody needs a
    /// door to which they did not give a key back, nor another into the same home. Where nobody has said, they need every door at
    /// which their whole ring, or a key meant for a key safe they know, turns a lock, or which they know
    /// another way into.
    pub(super) fn needs(&self, holder: HolderId) -> &BTreeSet<DoorId> {
        const NONE: &BTreeSet<DoorId> = &BTreeSet::new();
        self.needs_of_everybody().get(&holder).unwrap_or(NONE)
    }

    /// The doors each holder needs.
    pub(super) fn needs_of_everybody(&self) -> &BTreeMap<HolderId, BTreeSet<DoorId>> {
        self.needs.get_or_init(|| {
            let holders = self.household.holders();
            let needs = holders.map(|(id, _)| {
                let mut needs = self.told_needs(id);
                let is_kept_from = self.kept_from(id);
                needs.retain(|&door| !is_kept_from(door));
                (id, needs)
            });
            needs.collect()
        })
    }

    /// Who uses a key to which lock.
    pub(super) fn users(&self) -> &Users {
        self.users.get_or_init(|| Users::of(self))
    }

    /// The doors a holder is said to need or, while nobody has said, those they can open; whatever
    /// they did not give back.
    pub(super) fn told_needs(&self, holder: HolderId) -> BTreeSet<DoorId> {
        match self.household.holder(holder) {
            None => BTreeSet::new(),
            Some(part) if part.no_longer_should => BTreeSet::new(),
            Some(part) => match &part.needs {
                Some(needs) => needs.clone(),
                None => self.can_open(holder),
            },
        }
    }

    /// The doors that a holder has to get into, in the order of their ids: those they are said to need or,
    /// while nobody has said, those that open wholly to them with all they have or lost. Where they have a key
    /// to one lock of several alone, nobody has said that they should open the others.
    pub(super) fn has_to_enter(&self, holder: HolderId) -> impl Iterator<Item = DoorId> {
        let part = self.household.holder(holder);
        let is_told = part.is_some_and(|part| part.needs.is_some());
        let doors = self.needs(holder).iter().copied();
        // What somebody needs while nobody has said opens to them where it has one lock.
        doors.filter(move |&door| {
            is_told || self.locks_on(door).len() < 2 || self.opens_wholly(holder, door)
        })
    }

    fn opens_wholly(&self, holder: HolderId, door: DoorId) -> bool {
        let known = self.known_to(holder);
        let mut ways = known.iter().filter_map(|&way| self.household.way(way));
        let by_a_way = ways.any(|way| way.kind != WayKind::KeySafe && way.door == door);
        let ring = self.whole_ring(holder);
        let has = |key: &KeyId| {
            let mut safes = known.iter();
            ring.contains(key) || safes.any(|&safe| self.meant_for_safe(safe).contains(key))
        };
        let locks = self.locks_on(door).iter();
        let mut locks = locks.filter_map(|&lock| self.household.lock(lock));
        by_a_way || locks.all(|lock| lock.keys.iter().any(has))
    }

    fn can_open(&self, holder: HolderId) -> BTreeSet<DoorId> {
        let mut keys = self.whole_ring(holder);
        let mut doors = BTreeSet::new();
        for &way in self.known_to(holder) {
            keys.extend(self.meant_for_safe(way));
            if let Some(part) = self.household.way(way)
                && part.kind != WayKind::KeySafe
            {
                doors.insert(part.door);
            }
        }
        doors.extend(keys.iter().flat_map(|&key| self.doors_of(key)));
        doors
    }

    /// The door a lock is on.
    pub(super) fn door_of(&self, lock: LockId) -> Option<DoorId> {
        self.household.lock(lock).map(|lock| lock.door)
    }
}

impl Household {
    /// The doors a holder needs: those that were told, or, while nobody has told, those they can
    /// open. Nobody who no longer should come in needs any, and nobody needs a door to which they did
    /// not give a key back, nor another into the same home.
    pub fn needs_of(&self, holder: HolderId) -> Result<BTreeSet<DoorId>, Refusal> {
        self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
        Ok(Index::of(self).needs(holder).clone())
    }
}

fn slice<'m, I: Ord, T>(map: &'m BTreeMap<I, Vec<T>>, id: &I) -> &'m [T] {
    map.get(id).map_or(&[], Vec::as_slice)
}
