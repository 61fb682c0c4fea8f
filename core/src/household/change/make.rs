//! How each change is made. The household changed is a copy that nobody sees if it is refused.

use std::sync::Arc;

use super::super::exposed::no_longer_should;
use super::super::index::Index;
use super::super::kinds::{Loss, WayKind};
use super::super::{
    CopyId, DoorId, Holder, HolderId, Household, Key, KeyCopy, KeyId, LockId, Place, Refusal, Way,
    WayId,
};
use super::Change;

impl Household {
    pub(super) fn make(&mut self, change: Change) -> Result<(), Refusal> {
        match change {
            Change::AddDoor(door) => self.mint().and_then(|id| self.put_door(DoorId(id), door)),
            Change::AddLock(lock) => self.mint().and_then(|id| self.put_lock(LockId(id), lock)),
            Change::AddKey(key) => self.mint().and_then(|id| self.put_key(KeyId(id), key)),
            Change::AddCopy(copy) => self.mint().and_then(|id| self.put_copy(CopyId(id), copy)),
            Change::AddHolder(holder) => {
                let id = HolderId(self.mint()?);
                self.put_holder(id, holder)
            }
            Change::AddWay(mut way) => {
                way.is_assumed = false;
                self.mint().and_then(|id| self.put_way(WayId(id), way))
            }
            Change::SetDoor(id, door) => {
                self.door(id).ok_or(Refusal::UnknownDoor(id))?;
                self.put_door(id, door)
            }
            Change::SetLock(id, lock) => {
                self.lock(id).ok_or(Refusal::UnknownLock(id))?;
                self.put_lock(id, lock)
            }
            Change::SetKey(id, key) => {
                self.key(id).ok_or(Refusal::UnknownKey(id))?;
                self.put_key(id, key)
            }
            Change::SetHolder(id, holder) => {
                self.holder(id).ok_or(Refusal::UnknownHolder(id))?;
                self.put_holder(id, holder)
            }
            Change::SetWay(id, way) => {
                self.way(id).ok_or(Refusal::UnknownWay(id))?;
                self.change_way(id, way)
            }
            Change::SetPrices(prices) => {
                self.prices = Arc::new(prices);
                Ok(())
            }
            Change::RemoveDoor(id) => self.remove_door(id),
            Change::RemoveLock(id) => {
                self.lock(id).ok_or(Refusal::UnknownLock(id))?;
                Arc::make_mut(&mut self.locks).remove(&id);
                Ok(())
            }
            Change::RemoveKey(id) => self.remove_key(id),
            Change::RemoveCopy(id) => {
                self.copy(id).ok_or(Refusal::UnknownCopy(id))?;
                Arc::make_mut(&mut self.copies).remove(&id);
                self.assume_no_more();
                Ok(())
            }
            Change::RemoveHolder(id) => self.remove_holder(id),
            Change::RemoveWay(id) => {
                self.way(id).ok_or(Refusal::UnknownWay(id))?;
                if self.holds_copies(id) {
                    return Err(Refusal::KeySafeHoldsCopies(id));
                }
                Arc::make_mut(&mut self.ways).remove(&id);
                self.forget_key_safes();
                Ok(())
            }
            Change::Opens { key, door, opens } => self.let_open(key, door, opens),
            Change::OpensLock { key, lock, opens } => self.let_open_lock(key, lock, opens),
            Change::Give { key, to, copies } => (0..copies).try_for_each(|_| {
                let id = CopyId(self.mint()?);
                self.put_copy(id, KeyCopy::held(key, to))
            }),
            Change::Move { copy, to } => {
                let key = self.copy(copy).ok_or(Refusal::UnknownCopy(copy))?.key;
                self.change_copy(copy, KeyCopy { key, place: to })
            }
            Change::Lose { copy, loss } => {
                let lost = *self.copy(copy).ok_or(Refusal::UnknownCopy(copy))?;
                let place = Place::Lost {
                    by: lost.place.had_by(),
                    loss,
                    from_safe: lost.place.key_safe(),
                };
                self.change_copy(copy, KeyCopy { place, ..lost })
            }
            Change::LoseRing { holder, loss } => self.lose_ring(holder, loss),
            Change::Check { key, finding } => {
                let checked = *self.key(key).ok_or(Refusal::UnknownKey(key))?;
                self.put_key(key, Key { finding, ..checked })
            }
            Change::Needs {
                holder,
                door,
                needs,
            } => {
                self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
                let mut doors = Index::of(self).told_needs(holder);
                if needs {
                    doors.insert(door);
                } else {
                    self.door(door).ok_or(Refusal::UnknownDoor(door))?;
                    doors.remove(&door);
                }
                self.edit_holder(holder, |holder| holder.needs = Some(doors))
            }
            Change::Knows { holder, way, knows } => {
                self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
                let mut known = self.way(way).ok_or(Refusal::UnknownWay(way))?.clone();
                if knows {
                    known.known_by.insert(holder);
                } else {
                    known.known_by.remove(&holder);
                }
                self.change_way(way, known)
            }
            Change::NoLongerShould { holder, no_longer } => {
                self.edit_holder(holder, |holder| holder.no_longer_should = no_longer)
            }
        }
    }

    pub(in crate::household) fn mint(&mut self) -> Result<u32, Refusal> {
        let id = self.next;
        if id > Self::LAST_ID {
            return Err(Refusal::NoMoreIds);
        }
        self.next += 1;
        Ok(id)
    }

    /// No id is larger: far more than anybody gives out, and exact in every reader of JSON.
    pub(in crate::household) const LAST_ID: u32 = 1_000_000_000;

    fn edit_holder(&mut self, id: HolderId, edit: impl FnOnce(&mut Holder)) -> Result<(), Refusal> {
        let mut holder = self.holder(id).ok_or(Refusal::UnknownHolder(id))?.clone();
        edit(&mut holder);
        self.put_holder(id, holder)
    }

    fn remove_door(&mut self, id: DoorId) -> Result<(), Refusal> {
        self.door(id).ok_or(Refusal::UnknownDoor(id))?;
        let safe = self
            .ways()
            .find(|&(way, part)| part.door == id && self.holds_copies(way));
        if let Some((way, _)) = safe {
            return Err(Refusal::KeySafeHoldsCopies(way));
        }
        Arc::make_mut(&mut self.doors).remove(&id);
        Arc::make_mut(&mut self.locks).retain(|_, lock| lock.door != id);
        Arc::make_mut(&mut self.ways).retain(|_, way| way.door != id);
        self.forget_key_safes();
        for holder in Arc::make_mut(&mut self.holders).values_mut() {
            if let Some(needs) = &mut holder.needs {
                needs.remove(&id);
            }
        }
        Ok(())
    }

    fn remove_key(&mut self, id: KeyId) -> Result<(), Refusal> {
        self.key(id).ok_or(Refusal::UnknownKey(id))?;
        Arc::make_mut(&mut self.keys).remove(&id);
        Arc::make_mut(&mut self.copies).retain(|_, copy| copy.key != id);
        self.assume_no_more();
        for lock in Arc::make_mut(&mut self.locks).values_mut() {
            lock.keys.remove(&id);
        }
        Ok(())
    }

    fn remove_holder(&mut self, id: HolderId) -> Result<(), Refusal> {
        self.holder(id).ok_or(Refusal::UnknownHolder(id))?;
        let noted = self.copies().map(|(_, copy)| copy.place);
        let noted: Vec<Place> = noted.filter(|place| place.had_by() == Some(id)).collect();
        let is_done_with = |place| matches!(place, &Place::AtHome { .. } | &Place::Scrapped { .. });
        if !noted.iter().all(is_done_with) {
            return Err(Refusal::HolderHasCopies(id));
        }
        if !noted.is_empty() {
            return Err(Refusal::HolderHadCopies(id));
        }
        // A code that somebody who should not come in takes along is out, whoever it was.
        let takes_along = no_longer_should(self, id).then_some(Loss::NotReturned);
        let known = self.ways().filter(|(_, way)| way.known_by.contains(&id));
        let known: Vec<(WayId, Way)> = known.map(|(id, way)| (id, way.clone())).collect();
        for (known, mut way) in known {
            way.known_by.remove(&id);
            way.give_away(takes_along);
            self.change_way(known, way)?;
        }
        Arc::make_mut(&mut self.holders).remove(&id);
        Ok(())
    }

    fn let_open(&mut self, key: KeyId, door: DoorId, opens: bool) -> Result<(), Refusal> {
        self.key(key).ok_or(Refusal::UnknownKey(key))?;
        self.door(door).ok_or(Refusal::UnknownDoor(door))?;
        let locks: Vec<LockId> = self.locks_of(door).map(|(id, _)| id).collect();
        if locks.is_empty() {
            return Err(Refusal::DoorWithoutCylinder(door));
        }
        let mut locks = locks.into_iter();
        locks.try_for_each(|lock| self.let_open_lock(key, lock, opens))
    }

    fn let_open_lock(&mut self, key: KeyId, id: LockId, opens: bool) -> Result<(), Refusal> {
        self.key(key).ok_or(Refusal::UnknownKey(key))?;
        let mut lock = self.lock(id).ok_or(Refusal::UnknownLock(id))?.clone();
        if opens {
            lock.keys.insert(key);
        } else {
            lock.keys.remove(&key);
        }
        // The key already there is named, not the one that comes second.
        self.put_lock(id, lock).map_err(|refusal| match refusal {
            Refusal::SecondKeyUnexplained { lock, .. } => Refusal::SecondKeyUnexplained {
                lock,
                opened_by: self.other_key_of(lock, key),
            },
            refusal => refusal,
        })
    }

    fn other_key_of(&self, lock: LockId, key: KeyId) -> KeyId {
        let keys = self.lock(lock).map(|lock| lock.keys.iter());
        keys.into_iter()
            .flatten()
            .copied()
            .find(|&other| other != key)
            .unwrap_or(key)
    }

    fn lose_ring(&mut self, holder: HolderId, loss: Loss) -> Result<(), Refusal> {
        self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
        let lost = Place::Lost {
            by: Some(holder),
            loss,
            from_safe: None,
        };
        for copy in Arc::make_mut(&mut self.copies).values_mut() {
            if copy.place == Place::Held(holder) {
                copy.place = lost;
            }
        }
        for way in Arc::make_mut(&mut self.ways).values_mut() {
            if way.kind == WayKind::Remote && way.known_by.contains(&holder) {
                way.lose(holder, loss);
            }
        }
        Ok(())
    }
}
