//! What opens, by hand.

use self_check_core::advice::Urgency;
use self_check_core::household::*;

use crate::homes::losing;

/// A front door with two locks of different keys, a back door keyed as the first of them, a shed.
struct Home {
    home: Household,
    front: DoorId,
    back: DoorId,
    shed: DoorId,
    upper: LockId,
    lower: LockId,
    house: KeyId,
    dead: KeyId,
    neighbour: HolderId,
}

fn home() -> Result<Home, Refusal> {
    let mut home = Household::empty();
    let mut doors = Vec::new();
    for kind in [DoorKind::FrontDoor, DoorKind::BackDoor, DoorKind::Shed] {
        doors.push(home.next_door());
        home = home.with(Change::AddDoor(Door::of(kind)))?;
    }
    let mut keys = Vec::new();
    for _ in 0..3 {
        keys.push(home.next_key());
        home = home.with(Change::AddKey(Key::default()))?;
    }
    let upper = home.next_lock();
    home = home.with(Change::AddLock(
        Lock::on(doors[0], LockKind::PinTumbler).opened_by(keys[0]),
    ))?;
    let lower = home.next_lock();
    home = home.with(Change::AddLock(
        Lock::on(doors[0], LockKind::Lever).opened_by(keys[1]),
    ))?;
    home = home.with(Change::AddLock(
        Lock::on(doors[1], LockKind::PinTumbler).opened_by(keys[0]),
    ))?;
    home = home.with(Change::AddLock(
        Lock::on(doors[2], LockKind::SmallLock).opened_by(keys[2]),
    ))?;
    let neighbour = home.next_holder();
    home = home.with(Change::AddHolder(Holder::of(Role::Neighbour)))?;
    Ok(Home {
        home,
        front: doors[0],
        back: doors[1],
        shed: doors[2],
        upper,
        lower,
        house: keys[0],
        dead: keys[1],
        neighbour,
    })
}

fn openings(reach: &Reach) -> Vec<(DoorId, Opening)> {
    let doors = reach.doors.iter();
    doors
        .map(|reach| (reach.door, reach.opening.clone()))
        .collect()
}

#[test]
fn copy_of_one_of_two_locks_opens_the_door_in_part() -> Result<(), Refusal> {
    let Home {
        home,
        front,
        back,
        lower,
        house,
        neighbour,
        ..
    } = home()?;
    let copy = home.next_copy();
    let home = home.with(Change::AddCopy(KeyCopy::held(house, neighbour)))?;
    let reach = home.reach_of_copy(copy)?;
    let holding = vec![lower];
    assert_eq!(
        openings(&reach),
        [(front, Opening::Part { holding }), (back, Opening::Whole)]
    );
    assert!(reach.opens(back) && !reach.opens(front));
    Ok(())
}

#[test]
fn ring_opens_what_its_keys_open_together() -> Result<(), Refusal> {
    let Home {
        home,
        front,
        back,
        shed,
        house,
        dead,
        neighbour,
        upper,
        lower,
        ..
    } = home()?;
    let home =
        home.with_all([house, dead].map(|key| Change::AddCopy(KeyCopy::held(key, neighbour))))?;
    let reach = home.reach_of_ring(neighbour)?;
    assert_eq!(reach.keys, [house, dead]);
    assert!(reach.locks.contains(&upper) && reach.locks.contains(&lower));
    assert!(reach.opens(front) && reach.opens(back) && !reach.opens(shed));
    Ok(())
}

#[test]
fn scrapped_copy_opens_nothing_and_a_spare_what_it_fits() -> Result<(), Refusal> {
    let Home {
        home, house, back, ..
    } = home()?;
    let copy = home.next_copy();
    let home = home.with(Change::AddCopy(KeyCopy::spare(house)))?;
    assert!(home.reach_of_copy(copy)?.opens(back));
    let by = None;
    let home = home.with(Change::Move {
        copy,
        to: Place::Scrapped { by },
    })?;
    assert_eq!(home.reach_of_copy(copy)?, Reach::default());
    Ok(())
}

#[test]
fn holder_who_knows_a_key_safe_opens_what_lies_in_it() -> Result<(), Refusal> {
    let Home {
        home,
        back,
        house,
        neighbour,
        front,
        ..
    } = home()?;
    let safe = home.next_way();
    let home = home.with_all([
        Change::AddWay(Way::at(back, WayKind::KeySafe)),
        Change::Knows {
            holder: neighbour,
            way: safe,
            knows: true,
        },
    ])?;
    let empty = home.reach_of_holder(neighbour)?;
    assert_eq!(openings(&empty), [], "nothing lies in it");
    let home = home.with(Change::AddCopy(KeyCopy {
        key: house,
        place: Place::InKeySafe(safe),
    }))?;
    let reach = home.reach_of_holder(neighbour)?;
    assert_eq!(reach.keys, [house]);
    assert!(reach.opens(back) && !reach.opens(front));
    assert_eq!(
        home.reach_of_ring(neighbour)?,
        Reach::default(),
        "a code hangs on no ring"
    );
    Ok(())
}

#[test]
fn door_code_opens_a_door_that_keys_open_in_part() -> Result<(), Refusal> {
    let Home {
        home,
        front,
        house,
        neighbour,
        ..
    } = home()?;
    let way = home.next_way();
    let home = home.with_all([
        Change::AddWay(Way::at(front, WayKind::DoorCode)),
        Change::Knows {
            holder: neighbour,
            way,
            knows: true,
        },
        Change::AddCopy(KeyCopy::held(house, neighbour)),
    ])?;
    assert!(home.reach_of_holder(neighbour)?.opens(front));
    assert!(!home.reach_of_ring(neighbour)?.opens(front));
    Ok(())
}

#[test]
fn remote_hangs_on_the_ring_and_is_lost_with_it() -> Result<(), Refusal> {
    let Home {
        home,
        shed,
        neighbour,
        ..
    } = home()?;
    let way = home.next_way();
    let home = home.with_all([
        Change::AddWay(Way::at(shed, WayKind::Remote)),
        Change::Knows {
            holder: neighbour,
            way,
            knows: true,
        },
    ])?;
    assert!(home.reach_of_ring(neighbour)?.opens(shed));
    let home = home.with(Change::LoseRing {
        holder: neighbour,
        loss: Loss::Stolen,
    })?;
    assert_eq!(
        home.way(way).map(|way| way.lost_by.clone()),
        Some([(neighbour, Loss::Stolen)].into())
    );
    assert_eq!(plan(&home, Choices::default()).ways.len(), 1);
    Ok(())
}

#[test]
fn remote_of_somebody_who_is_gone_stays_lost() -> Result<(), Refusal> {
    let home = quick::one_door(DoorKind::Gate, LockKind::PinTumbler, &[])?;
    let (gate, _) = home.doors().next().unwrap();
    let (holder, way) = (home.next_holder(), WayId::new(home.next_way().number() + 1));
    let known_by = [holder].into();
    let home = home.with_all([
        Change::AddHolder(Holder::of(Role::Gardener)),
        Change::AddWay(Way {
            known_by,
            ..Way::at(gate, WayKind::Remote)
        }),
    ])?;
    let lost = losing(&home, Role::Gardener, Loss::Stolen);
    let knows = false;
    for gone in [
        Change::RemoveHolder(holder),
        Change::Knows { holder, way, knows },
    ] {
        let home = lost.with(gone)?;
        let part = home.way(way).unwrap();
        assert_eq!(
            (part.given_away, part.lost_by.len()),
            (Some(Loss::Stolen), 0)
        );
        assert_eq!(
            plan(&home, Choices::default()).ways[0].urgency,
            Urgency::Today
        );
    }
    Ok(())
}

#[test]
fn lesser_loss_of_another_ring_leaves_the_theft_of_a_remote() -> Result<(), Refusal> {
    let people = [Role::Resident, Role::Gardener];
    let home = quick::one_door(DoorKind::Gate, LockKind::PinTumbler, &people)?;
    let (gate, _) = home.doors().next().unwrap();
    let known_by = home.holders().map(|(holder, _)| holder).collect();
    let remote = Way::at(gate, WayKind::Remote);
    let home = home.with(Change::AddWay(Way { known_by, ..remote }))?;
    let stolen = losing(&home, Role::Resident, Loss::Stolen);
    for loss in Loss::ALL {
        let both = losing(&stolen, Role::Gardener, *loss);
        let ways = plan(&both, Choices::default()).ways;
        assert_eq!(ways[0].urgency, Urgency::Today, "{loss:?}");
        let other_way_round = losing(
            &losing(&home, Role::Gardener, *loss),
            Role::Resident,
            Loss::Stolen,
        );
        assert_eq!(
            plan(&other_way_round, Choices::default()).ways,
            ways,
            "{loss:?}"
        );
    }
    Ok(())
}

#[test]
fn reach_of_somebody_unknown_is_refused() -> Result<(), Refusal> {
    let Home { home, .. } = home()?;
    let nobody = HolderId::new(77);
    assert_eq!(
        home.reach_of_ring(nobody),
        Err(Refusal::UnknownHolder(nobody))
    );
    assert_eq!(
        home.reach_of_holder(nobody),
        Err(Refusal::UnknownHolder(nobody))
    );
    let nothing = CopyId::new(77);
    assert_eq!(
        home.reach_of_copy(nothing),
        Err(Refusal::UnknownCopy(nothing))
    );
    Ok(())
}
