//! Where every part enters a household, and the rules it has to keep. Changes and records both come
//! through here.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::kinds::{Arrangement, WayKind};
use super::limits::{self, Limit};
use super::{
    CopyId, Door, DoorId, Holder, HolderId, Household, Key, KeyCopy, KeyId, Lock, LockId, Place,
    Refusal, Way, WayId,
};

impl Household {
    pub(super) fn put_door(&mut self, id: DoorId, door: Door) -> Result<(), Refusal> {
        put(&mut self.doors, id, door, Limit::Doors)
    }

    pub(super) fn put_key(&mut self, id: KeyId, key: Key) -> Result<(), Refusal> {
        put(&mut self.keys, id, key, Limit::Keys)
    }

    pub(super) fn put_holder(&mut self, id: HolderId, holder: Holder) -> Result<(), Refusal> {
        let needs = |holder: &Holder| holder.needs.as_ref().map_or(0, |needs| needs.len());
        for &door in holder.needs.iter().flatten() {
            self.door(door).ok_or(Refusal::UnknownDoor(door))?;
        }
        let others = self.holders().filter(|&(other, _)| other != id);
        let pairs = others.map(|(_, holder)| needs(holder)).sum::<usize>() + needs(&holder);
        limits::within(pairs, Limit::Needs)?;
        put(&mut self.holders, id, holder, Limit::Holders)
    }

    pub(super) fn put_lock(&mut self, id: LockId, lock: Lock) -> Result<(), Refusal> {
        self.door(lock.door)
            .ok_or(Refusal::UnknownDoor(lock.door))?;
        for &key in &lock.keys {
            self.key(key).ok_or(Refusal::UnknownKey(key))?;
        }
        if let (Arrangement::OneKey, Some(&first), true) =
            (lock.arrangement, lock.keys.first(), lock.keys.len() > 1)
        {
            return Err(Refusal::SecondKeyUnexplained {
                lock: id,
                opened_by: first,
            });
        }
        let others = self.locks().filter(|&(other, _)| other != id);
        let pairs = others.map(|(_, lock)| lock.keys.len()).sum::<usize>() + lock.keys.len();
        limits::within(pairs, Limit::Openings)?;
        put(&mut self.locks, id, lock, Limit::Locks)
    }

    pub(super) fn put_way(&mut self, id: WayId, way: Way) -> Result<(), Refusal> {
        self.door(way.door).ok_or(Refusal::UnknownDoor(way.door))?;
        for &holder in &way.known_by {
            self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
        }
        let way = way.settled();
        if way.kind != WayKind::KeySafe && self.holds_copies(id) {
            return Err(Refusal::KeySafeHoldsCopies(id));
        }
        let others = self.ways().filter(|&(other, _)| other != id);
        let pairs = others.map(|(_, way)| way.known_by.len()).sum::<usize>() + way.known_by.len();
        limits::within(pairs, Limit::Knowers)?;
        put(&mut self.ways, id, way, Limit::Ways)
    }

    pub(super) fn put_copy(&mut self, id: CopyId, copy: KeyCopy) -> Result<(), Refusal> {
        self.key(copy.key).ok_or(Refusal::UnknownKey(copy.key))?;
        if let Some(holder) = copy.place.had_by() {
            self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
        }
        if let Some(way) = copy.place.key_safe() {
            match self.way(way).ok_or(Refusal::UnknownWay(way))?.kind {
                WayKind::KeySafe => {}
                WayKind::DoorCode | WayKind::Remote | WayKind::App => {
                    return Err(Refusal::NotAKeySafe(way));
                }
            }
        }
        put(&mut self.copies, id, copy, Limit::Copies)
    }

    /// Whether a copy lies in this key safe.
    pub(super) fn holds_copies(&self, way: WayId) -> bool {
        self.copies()
            .any(|(_, copy)| copy.place == Place::InKeySafe(way))
    }
}

fn put<I: Ord + Clone, P: Clone>(
    section: &mut Arc<BTreeMap<I, P>>,
    id: I,
    part: P,
    limit: Limit,
) -> Result<(), Refusal> {
    let is_new = !section.contains_key(&id);
    limits::within(section.len() + usize::from(is_new), limit)?;
    Arc::make_mut(section).insert(id, part);
    Ok(())
}
