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
fn holder_whose_copies_all_came_back_stays_noted_for_another_reason() {
    let home = start();
    let holder = first(home.holders());
    let returned_by = Some(holder);
    let copies: Vec<CopyId> = home.ring_of(holder).map(|(copy, _)| copy).collect();
    let back = |&copy: &CopyId| Change::Move {
        copy,
        to: Place::AtHome { returned_by },
    };
    let (one, all) = (&copies[..1], &copies[..]);
    let left = |copies: &[CopyId]| {
        let home = home.with_all(copies.iter().map(back)).unwrap();
        home.with(Change::RemoveHolder(holder))
    };
    assert!(copies.len() > 1);
    assert_eq!(left(one), Err(Refusal::HolderHasCopies(holder)));
    assert_eq!(left(all), Err(Refusal::HolderHadCopies(holder)));
}

#[test]
fn key_to_one_lock_of_a_door_leaves_the_other_alone() {
    let home = start();
    let door = first(home.doors());
    let (upper, part) = home.locks_of(door).next().unwrap();
    let opened_by = *part.keys.first().unwrap();
    let lower = home.next_lock();
    let home = home
        .with(Change::AddLock(Lock::on(door, LockKind::Lever)))
        .unwrap();
    let key = home.next_key();
    let home = home.with(Change::AddKey(Key::default())).unwrap();
    let turns = |lock| Change::OpensLock {
        key,
        lock,
        opens: true,
    };
    let whole_door = Change::Opens {
        key,
        door,
        opens: true,
    };
    let refusal = Refusal::SecondKeyUnexplained {
        lock: upper,
        opened_by,
    };
    assert_eq!(home.with(whole_door), Err(refusal));
    assert_eq!(home.with(turns(upper)), Err(refusal));
    let no_lock = LockId::new(99);
    let unknown = Err(Refusal::UnknownLock(no_lock));
    assert_eq!(home.with(turns(no_lock)), unknown);
    let after = home.with(turns(lower)).unwrap();
    let keys = |lock| after.lock(lock).unwrap().keys.clone();
    assert_eq!(keys(upper), BTreeSet::from([opened_by]));
    assert_eq!(keys(lower), BTreeSet::from([key]));
    let opens = false;
    let shut = after.with(Change::OpensLock {
        key,
        lock: lower,
        opens,
    });
    assert_eq!(shut, Ok(home));
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

/// A household with so many doors, keys and people who need nothing, and the changes that take it to the
/// limit and one step beyond.
struct AtLimit {
    start: Household,
    up_to: Vec<Change>,
    beyond: Change,
}

fn with_parts(doors: usize, keys: usize, holders: usize) -> Household {
    let door = || Change::AddDoor(Door::of(DoorKind::Store));
    let holder = || Change::AddHolder(Holder::of(Role::Caretaker));
    let parts = (0..doors)
        .map(|_| door())
        .chain((0..keys).map(|_| Change::AddKey(Key::default())))
        .chain((0..holders).map(|_| holder()));
    Household::empty().with_all(parts).unwrap()
}

/// `most` times the same change, and once more.
fn alike(start: Household, most: usize, change: Change) -> AtLimit {
    AtLimit {
        start,
        up_to: vec![change.clone(); most],
        beyond: change,
    }
}

/// So many pairs, made by changes of at most `largest` pairs each, and one pair more.
fn in_pairs(
    start: Household,
    most: usize,
    largest: usize,
    change: impl Fn(usize) -> Change,
) -> AtLimit {
    let mut up_to = vec![change(largest); most / largest];
    up_to.extend((!most.is_multiple_of(largest)).then(|| change(most % largest)));
    AtLimit {
        start,
        up_to,
        beyond: change(1),
    }
}

fn at_limit(limit: Limit) -> AtLimit {
    let most = limit.most();
    match limit {
        Limit::Doors => alike(
            Household::empty(),
            most,
            Change::AddDoor(Door::of(DoorKind::Store)),
        ),
        Limit::Keys => alike(Household::empty(), most, Change::AddKey(Key::default())),
        Limit::Holders => alike(
            Household::empty(),
            most,
            Change::AddHolder(Holder::of(Role::Caretaker)),
        ),
        Limit::Locks => {
            let start = with_parts(1, 0, 0);
            let lock = Lock::on(first(start.doors()), LockKind::Lever);
            alike(start, most, Change::AddLock(lock))
        }
        Limit::Ways => {
            let start = with_parts(1, 0, 0);
            let way = Way::at(first(start.doors()), WayKind::App);
            alike(start, most, Change::AddWay(way))
        }
        Limit::Copies => {
            let start = with_parts(0, 1, 1);
            let (key, to) = (first(start.keys()), first(start.holders()));
            let give = |copies: usize| Change::Give {
                key,
                to,
                copies: u16::try_from(copies).unwrap(),
            };
            in_pairs(start.clone(), most, most, give)
        }
        Limit::Openings => {
            let start = with_parts(1, Limit::Keys.most(), 0);
            let door = first(start.doors());
            let keys: Vec<KeyId> = start.keys().map(|(key, _)| key).collect();
            in_pairs(start, most, keys.len(), |count| {
                Change::AddLock(Lock {
                    arrangement: Arrangement::CentralLock,
                    keys: keys.iter().copied().take(count).collect(),
                    ..Lock::on(door, LockKind::PinTumbler)
                })
            })
        }
        Limit::Needs => {
            let start = with_parts(Limit::Doors.most(), 0, 0);
            let doors: Vec<DoorId> = start.doors().map(|(door, _)| door).collect();
            in_pairs(start, most, doors.len(), |count| {
                Change::AddHolder(Holder {
                    needs: Some(doors.iter().copied().take(count).collect()),
                    ..Holder::of(Role::Caretaker)
                })
            })
        }
        Limit::Knowers => {
            let start = with_parts(1, 0, Limit::Holders.most());
            let door = first(start.doors());
            let holders: Vec<HolderId> = start.holders().map(|(holder, _)| holder).collect();
            in_pairs(start, most, holders.len(), |count| {
                Change::AddWay(Way {
                    known_by: holders.iter().copied().take(count).collect(),
                    ..Way::at(door, WayKind::DoorCode)
                })
            })
        }
    }
}

#[test]
fn every_limit_is_kept() {
    for limit in [
        Limit::Doors,
        Limit::Locks,
        Limit::Keys,
        Limit::Copies,
        Limit::Holders,
        Limit::Ways,
        Limit::Openings,
        Limit::Needs,
        Limit::Knowers,
    ] {
        let AtLimit {
            start,
            up_to,
            beyond,
        } = at_limit(limit);
        let full = start.with_all(up_to);
        assert!(full.is_ok(), "{limit:?} is reached: {:?}", full.err());
        let refused = full.unwrap().with(beyond);
        assert_eq!(refused.err(), Some(Refusal::Full(limit)));
    }
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
