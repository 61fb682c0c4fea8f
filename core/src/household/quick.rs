//! Ordinary homes in one go. Each person has one copy of each key; everything can be changed
//! afterwards.

use std::collections::BTreeSet;

use super::kinds::{Arrangement, DoorKind, LockKind, Role, WhoDecides};
use super::{Change, Door, Holder, Household, Key, KeyId, Lock, Refusal};

/// One door, one lock, one key.
pub fn one_door(kind: DoorKind, lock: LockKind, people: &[Role]) -> Result<Household, Refusal> {
    let (home, key) = with_key(&Household::empty())?;
    let home = with_door(&home, Door::of(kind), lock, Arrangement::OneKey, key)?;
    with_people(home, people, &[key])
}

/// Front door and back door, keyed alike.
pub fn two_doors_alike(lock: LockKind, people: &[Role]) -> Result<Household, Refusal> {
    let (home, key) = with_key(&Household::empty())?;
    let front = Door::of(DoorKind::FrontDoor);
    let back = Door::of(DoorKind::BackDoor);
    let home = with_door(&home, front, lock, Arrangement::OneKey, key)?;
    let home = with_door(&home, back, lock, Arrangement::OneKey, key)?;
    with_people(home, people, &[key])
}

/// Front door and back door, each with a key of its own.
pub fn two_doors(lock: LockKind, people: &[Role]) -> Result<Household, Refusal> {
    let (home, front_key) = with_key(&Household::empty())?;
    let (home, back_key) = with_key(&home)?;
    let front = Door::of(DoorKind::FrontDoor);
    let back = Door::of(DoorKind::BackDoor);
    let home = with_door(&home, front, lock, Arrangement::OneKey, front_key)?;
    let home = with_door(&home, back, lock, Arrangement::OneKey, back_key)?;
    with_people(home, people, &[front_key, back_key])
}

/// A flat with a lock of its own, and the entrance of its block with another key, which is the
/// manager's matter.
pub fn flat_and_entrance(lock: LockKind, people: &[Role]) -> Result<Household, Refusal> {
    let (home, flat_key) = with_key(&Household::empty())?;
    let (home, entrance_key) = with_key(&home)?;
    let flat = Door::of(DoorKind::FlatDoor);
    let home = with_door(&home, flat, lock, Arrangement::OneKey, flat_key)?;
    let one = Arrangement::OneKey;
    let system = LockKind::BuildingSystem;
    let home = with_door(&home, entrance(), system, one, entrance_key)?;
    with_people(home, people, &[flat_key, entrance_key])
}

/// A flat in a building's key system: the flat's key opens the entrance too, as every flat's does.
pub fn flat_in_a_system(people: &[Role]) -> Result<Household, Refusal> {
    let (home, key) = with_key(&Household::empty())?;
    let flat = Door {
        who_decides: WhoDecides::Manager,
        ..Door::of(DoorKind::FlatDoor)
    };
    let system = LockKind::BuildingSystem;
    let home = with_door(&home, flat, system, Arrangement::MasterKeyed, key)?;
    let home = with_door(&home, entrance(), system, Arrangement::CentralLock, key)?;
    with_people(home, people, &[key])
}

fn entrance() -> Door {
    Door {
        who_decides: WhoDecides::Manager,
        ..Door::of(DoorKind::BuildingEntrance)
    }
}

fn with_key(home: &Household) -> Result<(Household, KeyId), Refusal> {
    let key = home.next_key();
    Ok((home.with(Change::AddKey(Key::default()))?, key))
}

fn with_door(
    home: &Household,
    door: Door,
    kind: LockKind,
    arrangement: Arrangement,
    key: KeyId,
) -> Result<Household, Refusal> {
    let id = home.next_door();
    home.with(Change::AddDoor(door))?
        .with(Change::AddLock(Lock {
            keys: BTreeSet::from([key]),
            arrangement,
            ..Lock::on(id, kind)
        }))
}

fn with_people(home: Household, people: &[Role], keys: &[KeyId]) -> Result<Household, Refusal> {
    people.iter().try_fold(home, |home, &role| {
        let to = home.next_holder();
        let home = home.with(Change::AddHolder(Holder::of(role)))?;
        keys.iter().try_fold(home, |home, &key| {
            home.with(Change::Give { key, to, copies: 1 })
        })
    })
}
