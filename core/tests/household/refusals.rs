//! What a household refuses, each refusal by its own case, and that it stays as it was.

use std::collections::BTreeSet;

use self_check_core::household::*;

fn start() -> Household {
    quick::two_doors(LockKind::PinTumbler, &[Role::Resident, Role::Neighbour]).unwrap()
}

fn first<I, P>(mut parts: impl Iterator<Item = (I, P)>) -> I {
    parts.next().unwrap().0
}

#[test]
fn unknown_ids_are_refused_each_by_its_name() {
    let home = start();
    let door = first(home.doors());
    let key = first(home.keys());
    let (no_door, no_lock, no_key) = (DoorId::new(99), LockId::new(99), KeyId::new(99));
    let (no_copy, no_holder, no_way) = (CopyId::new(99), HolderId::new(99), WayId::new(99));
    let cases = [
        (
            Change::AddLock(Lock::on(no_door, LockKind::Lever)),
            Refusal::UnknownDoor(no_door),
        ),
        (Change::RemoveDoor(no_door), Refusal::UnknownDoor(no_door)),
        (Change::RemoveLock(no_lock), Refusal::UnknownLock(no_lock)),
        (
            Change::AddLock(Lock::on(door, LockKind::Lever).opened_by(no_key)),
            Refusal::UnknownKey(no_key),
        ),
        (
            Change::Opens {
                key: no_key,
                door,
                opens: true,
            },
            Refusal::UnknownKey(no_key),
        ),
        (
            Change::Opens {
                key,
                door: no_door,
                opens: true,
            },
            Refusal::UnknownDoor(no_door),
        ),
        (
            Change::Give {
                key,
                to: no_holder,
                copies: 1,
            },
            Refusal::UnknownHolder(no_holder),
        ),
        (
            Change::Lose {
                copy: no_copy,
                loss: Loss::NotSaid,
            },
            Refusal::UnknownCopy(no_copy),
        ),
        (
            Change::LoseRing {
                holder: no_holder,
                loss: Loss::NotSaid,
            },
            Refusal::UnknownHolder(no_holder),
        ),
        (Change::RemoveWay(no_way), Refusal::UnknownWay(no_way)),
        (
            Change::AddCopy(KeyCopy {
                key,
                place: Place::InKeySafe(no_way),
            }),
            Refusal::UnknownWay(no_way),
        ),
        (
            Change::Check {
                key: no_key,
                finding: None,
            },
            Refusal::UnknownKey(no_key),
        ),
        (
            Change::Needs {
                holder: no_holder,
                door,
                needs: true,
            },
            Refusal::UnknownHolder(no_holder),
        ),
        (
            Change::Needs {
                holder: first(home.holders()),
                door: no_door,
                needs: true,
            },
            Refusal::UnknownDoor(no_door),
        ),
        (
            Change::Needs {
                holder: first(home.holders()),
                door: no_door,
                needs: false,
            },
            Refusal::UnknownDoor(no_door),
        ),
    ];
    for (change, refusal) in cases {
        assert_eq!(home.with(change.clone()), Err(refusal), "{change:?}");
    }
}

#[test]
fn key_for_a_door_without_a_cylinder_is_refused() {
    let home = start();
    let key = first(home.keys());
    let door = home.next_door();
    let home = home
        .with(Change::AddDoor(Door::of(DoorKind::Gate)))
        .unwrap();
    let refused = home.with(Change::Opens {
        key,
        door,
        opens: true,
    });
    assert_eq!(refused, Err(Refusal::DoorWithoutCylinder(door)));
}

#[test]
fn second_key_is_refused_until_a_master_arrangement_explains_it() {
    let home = start();
    let door = first(home.doors());
    let (lock, part) = home.locks_of(door).next().unwrap();
    let opened_by = *part.keys.first().unwrap();
    let (key, _) = home.keys().find(|&(key, _)| key != opened_by).unwrap();
    let second = Change::Opens {
        key,
        door,
        opens: true,
    };
    let refusal = Refusal::SecondKeyUnexplained { lock, opened_by };
    assert_eq!(home.with(second.clone()), Err(refusal));
    let part = Lock {
        arrangement: Arrangement::MasterKeyed,
        ..part.clone()
    };
    let home = home.with(Change::SetLock(lock, part.clone())).unwrap();
    let home = home.with(second).unwrap();
    assert_eq!(
        home.lock(lock).unwrap().keys,
        BTreeSet::from([opened_by, key])
    );
    let one_key = Lock {
        arrangement: Arrangement::OneKey,
        ..home.lock(lock).unwrap().clone()
    };
    assert!(matches!(
        home.with(Change::SetLock(lock, one_key)),
        Err(Refusal::SecondKeyUnexplained { .. })
    ));
}

#[test]
fn holder_with_copies_stays_until_the_copies_are_elsewhere() {
    let home = start();
    let holder = first(home.holders());
    assert_eq!(
        home.with(Change::RemoveHolder(holder)),
        Err(Refusal::HolderHasCopies(holder))
    );
    let to = Place::AtHome { returned_by: None };
    let ring: Vec<Change> = home
        .ring_of(holder)
        .map(|(copy, _)| Change::Move { copy, to })
        .collect();
    let home = home.with_all(ring).unwrap();
    assert!(home.with(Change::RemoveHolder(holder)).is_ok());
}

#[test]
fn key_safe_alone_takes_copies_and_stays_while_it_holds_some() {
    let home = start();
    let door = first(home.doors());
    let key = first(home.keys());
    let app = home.next_way();
    let home = home
        .with(Change::AddWay(Way::at(door, WayKind::App)))
        .unwrap();
    let safe = home.next_way();
    let home = home
        .with(Change::AddWay(Way::at(door, WayKind::KeySafe)))
        .unwrap();
    let into = |way| {
        Change::AddCopy(KeyCopy {
            key,
            place: Place::InKeySafe(way),
        })
    };
    assert_eq!(home.with(into(app)), Err(Refusal::NotAKeySafe(app)));
    let home = home.with(into(safe)).unwrap();
    let stays = Err(Refusal::KeySafeHoldsCopies(safe));
    assert_eq!(home.with(Change::RemoveWay(safe)), stays);
    assert_eq!(home.with(Change::RemoveDoor(door)), stays);
    assert_eq!(
        home.with(Change::SetWay(safe, Way::at(door, WayKind::App))),
        stays
    );
}

#[test]
fn refused_run_of_changes_leaves_the_household_as_it_was() {
    let home = start();
    let before = home.clone();
    let run = [
        Change::AddDoor(Door::of(DoorKind::Shed)),
        Change::RemoveKey(KeyId::new(99)),
    ];
    assert_eq!(home.with_all(run), Err(Refusal::UnknownKey(KeyId::new(99))));
    assert_eq!(home, before);
}

#[test]
fn every_limit_is_kept() {
    let mut home = Household::empty();
    for _ in 0..Limit::Doors.most() {
        home = home
            .with(Change::AddDoor(Door::of(DoorKind::Store)))
            .unwrap();
    }
    let more = home.with(Change::AddDoor(Door::of(DoorKind::Store)));
    assert_eq!(more, Err(Refusal::Full(Limit::Doors)));
    let key = home.next_key();
    let home = home.with(Change::AddKey(Key::default())).unwrap();
    let to = home.next_holder();
    let home = home
        .with(Change::AddHolder(Holder::of(Role::Caretaker)))
        .unwrap();
    let copies = Limit::Copies.most() as u16 + 1;
    assert_eq!(
        home.with(Change::Give { key, to, copies }),
        Err(Refusal::Full(Limit::Copies))
    );
    assert!(
        home.with(Change::Give {
            key,
            to,
            copies: copies - 1
        })
        .is_ok()
    );
    let doors: BTreeSet<DoorId> = home.doors().map(|(door, _)| door).collect();
    let needy = || {
        Change::AddHolder(Holder {
            needs: Some(doors.clone()),
            ..Holder::of(Role::Caretaker)
        })
    };
    let full = home.with_all((0..=Limit::Needs.most() / doors.len()).map(|_| needy()));
    assert_eq!(full, Err(Refusal::Full(Limit::Needs)));
}

#[test]
fn numbers_out_of_range_are_refused() {
    assert_eq!(Keyway::new(0), Err(Refusal::OutOfRange));
    assert_eq!(Keyway::new(27), Err(Refusal::OutOfRange));
    assert_eq!(CylinderLengths::new(9, 30), Err(Refusal::OutOfRange));
    assert_eq!(CylinderLengths::new(30, 121), Err(Refusal::OutOfRange));
    assert!(CylinderLengths::new(10, 120).is_ok());
    assert!(PriceRange::new(2, 1).is_err());
    assert!(PriceRange::new(0, PriceRange::MOST + 1).is_err());
}
