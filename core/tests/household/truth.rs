//! The questions answered a second time, straight from the words of their definitions and as slowly
//! as may be. Nothing here calls what it checks.

use std::collections::BTreeSet;

use self_check_core::household::{
    DoorId, FoundExposure, HolderId, Household, KeyId, Lock, LockId, LockKind, Loss, Place, WayId,
    WayKind, WhoDecides,
};

/// Whether a loss puts the key in wrong hands.
fn is_out(loss: Loss) -> bool {
    loss != Loss::MislaidIndoors
}

pub fn is_former(home: &Household, holder: HolderId) -> bool {
    home.holder(holder).unwrap().no_longer_should
}

/// Whether a copy or a check puts this key in wrong hands.
pub fn is_exposed(home: &Household, key: KeyId) -> bool {
    let finding = home.key(key).unwrap().finding;
    if finding.is_some_and(|found| matches!(found.exposure, FoundExposure::Exposed(_))) {
        return true;
    }
    if home.key(key).unwrap().may_be_copied.is_some() {
        return true;
    }
    let needs_a_card = home.key(key).unwrap().restricted == Some(true);
    home.copies()
        .filter(|(_, copy)| copy.key == key)
        .any(|(_, copy)| match copy.place {
            Place::Lost { by, loss, .. } => {
                is_out(loss) || by.is_some_and(|by| is_former(home, by))
            }
            Place::Held(by) => is_former(home, by),
            Place::AtHome { returned_by: by } | Place::Scrapped { by } => {
                !needs_a_card && by.is_some_and(|by| is_former(home, by))
            }
            Place::InKeySafe(way) => is_open_way(home, way),
        })
}

/// The locks that an exposed key opens.
pub fn open_to_exposed(home: &Household) -> BTreeSet<LockId> {
    home.locks()
        .filter(|(_, lock)| lock.keys.iter().any(|&key| is_exposed(home, key)))
        .map(|(id, _)| id)
        .collect()
}

/// Whether somebody who should not knows a way in, or its code or remote is out.
pub fn has_an_open_way(home: &Household) -> bool {
    home.ways().any(|(id, _)| is_open_way(home, id))
}

fn is_open_way(home: &Household, id: WayId) -> bool {
    let way = home.way(id).unwrap();
    let opens = |key: KeyId, door: DoorId| {
        let mut locks = home.locks_of(door);
        locks.any(|(_, lock)| lock.keys.contains(&key))
    };
    let leads_to = |door: DoorId| {
        let mut copies = home.copies();
        door == way.door
            || copies.any(|(_, copy)| copy.place.key_safe() == Some(id) && opens(copy.key, door))
    };
    let into_the_home = |door: DoorId| {
        let door = home.door(door).unwrap();
        door.kind.leads_into_a_home() && door.who_decides != WhoDecides::AnotherOwner
    };
    let kept_a_key_back = |by: HolderId| {
        let is_kept = |place: Place| match place {
            Place::Lost { by: who, loss, .. } => who == Some(by) && loss == Loss::NotReturned,
            _ => false,
        };
        home.copies()
            .filter(|(_, copy)| is_kept(copy.place))
            .any(|(_, copy)| {
                let mut doors = home.doors();
                let is_the_home =
                    doors.any(|(door, _)| into_the_home(door) && opens(copy.key, door));
                let mut doors = home.doors();
                doors.any(|(door, _)| {
                    leads_to(door) && (opens(copy.key, door) || is_the_home && into_the_home(door))
                })
            })
    };
    way.losses().any(is_out)
        || way
            .known_by
            .iter()
            .any(|&holder| is_former(home, holder) || kept_a_key_back(holder))
}

/// Whether the household decides about the lock.
pub fn is_own(home: &Household, lock: &Lock) -> bool {
    lock.kind != LockKind::BuildingSystem
        && home.door(lock.door).unwrap().who_decides == WhoDecides::Household
}

/// The locks that somebody with the holder's ring turns.
pub fn turned_by_ring(home: &Household, holder: HolderId) -> BTreeSet<LockId> {
    let has = |key: &KeyId| {
        home.copies()
            .any(|(_, copy)| copy.key == *key && copy.place == Place::Held(holder))
    };
    home.locks()
        .filter(|(_, lock)| lock.keys.iter().any(has))
        .map(|(id, _)| id)
        .collect()
}

/// Whether the holder, who carries no key to it, gets past the lock by a code, a remote or an app at its
/// door, or with a key that is meant for a key safe they know.
pub fn opens_without_carrying_a_key(home: &Household, holder: HolderId, lock: LockId) -> bool {
    let part = home.lock(lock).unwrap();
    let mut known = home
        .ways()
        .filter(|(_, way)| way.known_by.contains(&holder));
    known.any(|(id, way)| match way.kind {
        WayKind::DoorCode | WayKind::Remote | WayKind::App => way.door == part.door,
        WayKind::KeySafe => home
            .copies()
            .any(|(_, copy)| copy.place.key_safe() == Some(id) && part.keys.contains(&copy.key)),
    })
}

/// The doors at which every lock turns to the keys that lie in the key safe or went from there.
pub fn entered_by_safe(home: &Household, safe: WayId) -> BTreeSet<DoorId> {
    let lies_there = |key: &KeyId| {
        home.copies()
            .any(|(_, copy)| copy.key == *key && copy.place.key_safe() == Some(safe))
    };
    let turns = |lock: &Lock| lock.keys.iter().any(lies_there);
    let doors = home.doors().map(|(id, _)| id);
    doors
        .filter(|&door| {
            home.locks_of(door).count() > 0 && home.locks_of(door).all(|(_, lock)| turns(lock))
        })
        .collect()
}

/// Whether every id names a part, every number of keys is explained, and every limit is kept.
pub fn fits_together(home: &Household) -> bool {
    use self_check_core::household::Arrangement;
    home.locks().all(|(_, lock)| {
        home.door(lock.door).is_some()
            && lock.keys.iter().all(|&key| home.key(key).is_some())
            && (lock.keys.len() < 2 || lock.arrangement != Arrangement::OneKey)
    }) && home.copies().all(|(_, copy)| {
        home.key(copy.key).is_some()
            && copy
                .place
                .had_by()
                .is_none_or(|by| home.holder(by).is_some())
            && match copy.place {
                Place::InKeySafe(way)
                | Place::Lost {
                    from_safe: Some(way),
                    ..
                } => home
                    .way(way)
                    .is_some_and(|way| way.kind == WayKind::KeySafe),
                _ => true,
            }
    }) && home.ways().all(|(_, way)| {
        home.door(way.door).is_some()
            && way.known_by.iter().all(|&by| home.holder(by).is_some())
            && way
                .lost_by
                .keys()
                .all(|by| way.kind == WayKind::Remote && way.known_by.contains(by))
    }) && home.holders().all(|(_, holder)| {
        let mut needs = holder.needs.iter().flatten();
        needs.all(|&door| home.door(door).is_some())
    })
}
