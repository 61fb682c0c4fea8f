//! Codes, apps, remotes and key safes in other hands: how soon, and what is done first.

use self_check_core::advice::Urgency;
use self_check_core::household::plan::Step;
use self_check_core::household::*;

use crate::homes::{holder, losing};

/// A front door with a key of a resident's and this way in, of which nobody has said whose it was.
fn home(kind: WayKind, given_away: Option<Loss>) -> (Household, WayId) {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]);
    let home = home.unwrap();
    let (door, _) = home.doors().next().unwrap();
    let way = home.next_way();
    let out = Way {
        given_away,
        ..Way::at(door, kind)
    };
    (home.with(Change::AddWay(out)).unwrap(), way)
}

/// The same with a copy of the key in the key safe.
fn safe(given_away: Option<Loss>) -> (Household, WayId) {
    let (home, way) = home(WayKind::KeySafe, given_away);
    let (key, _) = home.keys().next().unwrap();
    let place = Place::InKeySafe(way);
    let copy = Change::AddCopy(KeyCopy { key, place });
    (home.with(copy).unwrap(), way)
}

fn as_now(home: &Household) -> Plan {
    plan(home, Choices::default())
}

#[test]
fn way_in_wrong_hands_is_due_at_least_as_soon_as_a_key_lost_alike() {
    for &kind in WayKind::ALL {
        for &loss in Loss::ALL {
            let (home, way) = home(kind, Some(loss));
            let due = ways_to_change(&home).get(&way).copied();
            let lost = exposed_keys(&losing(&home, Role::Resident, loss));
            let key = lost.first().map(|key| key.urgency);
            assert!(due >= key, "{kind:?} {loss:?}: {due:?} {key:?}");
        }
    }
}

#[test]
fn code_that_somebody_else_has_is_changed_today() {
    for kind in [WayKind::DoorCode, WayKind::KeySafe, WayKind::App] {
        let (home, way) = home(kind, Some(Loss::NotSaid));
        assert_eq!(ways_to_change(&home).get(&way), Some(&Urgency::Today));
        let steps = as_now(&home).steps;
        assert!(steps.iter().all(|step| step.urgency == Urgency::Today));
        assert!(!steps.is_empty());
    }
}

#[test]
fn key_safe_is_emptied_before_its_code_and_its_door_are_seen_to() {
    let (home, way) = safe(Some(Loss::NotSaid));
    let plan = as_now(&home);
    assert_eq!(plan.steps[0].step, Step::EmptyKeySafes(vec![way]));
    assert_eq!(plan.steps[0].urgency, Urgency::Today);
    assert!(matches!(plan.steps[1].step, Step::ChangeWays(..)));
    assert_eq!(plan.steps[1].urgency, Urgency::Today);
    assert_eq!(plan.works[0].urgency, Urgency::Soon, "it may be copied");
    assert_eq!(plan.stop_gaps[0].urgency, Urgency::Soon);
    let (copy, _) = home
        .copies()
        .find(|(_, copy)| copy.place == Place::InKeySafe(way))
        .unwrap();
    let loss = Loss::Stolen;
    let gone = home.with(Change::Lose { copy, loss }).unwrap();
    assert_eq!(as_now(&gone).works[0].urgency, Urgency::Today);
    assert!(as_now(&safe(None).0).is_empty());
}

#[test]
fn key_in_a_safe_that_a_former_holder_knows_waits_as_their_own_key_would() {
    let (home, way) = safe(None);
    let to = home.next_holder();
    let sitter = Holder {
        no_longer_should: true,
        ..Holder::of(Role::Sitter)
    };
    let knows = Change::Knows {
        holder: to,
        way,
        knows: true,
    };
    let home = home.with_all([Change::AddHolder(sitter), knows]).unwrap();
    let plan = as_now(&home);
    assert_eq!(plan.exposed[0].urgency, Urgency::Soon);
    assert_eq!(plan.ways[0].without, [holder(&home, Role::Sitter)]);
    assert_eq!(plan.steps[0].step, Step::EmptyKeySafes(vec![way]));
}

#[test]
fn key_safe_at_anothers_home_is_not_ours_to_empty() {
    let (home, _) = safe(Some(Loss::NotSaid));
    let (door, part) = home.doors().next().unwrap();
    let anothers = Door {
        who_decides: WhoDecides::AnotherOwner,
        ..part.clone()
    };
    let home = home.with(Change::SetDoor(door, anothers)).unwrap();
    let is_emptied = |step: &plan::PlanStep| matches!(step.step, Step::EmptyKeySafes(_));
    assert!(!as_now(&home).steps.iter().any(is_emptied));
}

#[test]
fn each_kind_of_way_has_a_step_of_its_own() {
    let (mut home, first) = home(WayKind::DoorCode, Some(Loss::NotSaid));
    let (door, _) = home.doors().next().unwrap();
    let mut added = vec![first];
    for kind in [WayKind::Remote, WayKind::Remote, WayKind::App] {
        added.push(home.next_way());
        let out = Way {
            given_away: Some(Loss::Stolen),
            ..Way::at(door, kind)
        };
        home = home.with(Change::AddWay(out)).unwrap();
    }
    let steps = as_now(&home).steps.into_iter();
    let changes: Vec<Step> = steps
        .map(|step| step.step)
        .filter(|step| matches!(step, Step::ChangeWays(..)))
        .collect();
    assert_eq!(
        changes,
        [
            Step::ChangeWays(WayKind::DoorCode, vec![added[0]]),
            Step::ChangeWays(WayKind::Remote, vec![added[1], added[2]]),
            Step::ChangeWays(WayKind::App, vec![added[3]]),
        ]
    );
}

/// The resident has a remote and lost it in this way.
fn remote_lost(loss: Loss) -> (Household, HolderId, WayId) {
    let (home, way) = home(WayKind::Remote, None);
    let resident = holder(&home, Role::Resident);
    let mut part = home.way(way).unwrap().clone();
    part.known_by.insert(resident);
    part.lost_by.insert(resident, loss);
    (home.with(Change::SetWay(way, part)).unwrap(), resident, way)
}

#[test]
fn remote_mislaid_indoors_is_looked_for() {
    let (home, _, way) = remote_lost(Loss::MislaidIndoors);
    let look = Step::LookAgainIndoors {
        copies: Vec::new(),
        remotes: vec![way],
    };
    let steps: Vec<Step> = as_now(&home).steps.into_iter().map(|it| it.step).collect();
    assert_eq!(steps, [look]);
    let (given, way) = self::home(WayKind::Remote, Some(Loss::MislaidIndoors));
    let steps = as_now(&given).steps;
    assert!(
        matches!(&steps[..], [plan::PlanStep { step: Step::LookAgainIndoors { remotes, .. }, .. }] if *remotes == [way])
    );
}

#[test]
fn lost_ring_and_remote_open_nothing_to_whoever_lost_them() {
    let (home, resident, way) = remote_lost(Loss::NearHome);
    let home = losing(&home, Role::Resident, Loss::NearHome);
    assert_eq!(home.reach_of_holder(resident).unwrap(), Reach::default());
    assert_eq!(home.reach_of_ring(resident).unwrap(), Reach::default());
    assert_eq!(gaps(&home)[0].without.len(), 1, "and they need the door");
    assert_eq!(as_now(&home).ways[0].stays_with, [resident]);
    let mut part = home.way(way).unwrap().clone();
    part.take_back();
    let back = home.with(Change::SetWay(way, part)).unwrap();
    assert_eq!(back.reach_of_holder(resident).unwrap().opened().count(), 1);
}

/// Front and back door with a key each and a shed; the neighbour has the key of `held` alone and knows
/// the code of a safe at the back door, with its key in it.
fn neighbour_with_a_code(held: DoorKind) -> (Household, HolderId, WayId) {
    let resident = [Role::Resident];
    let home = quick::two_doors(LockKind::PinTumbler, &resident).unwrap();
    let (back, _) = home.doors().nth(1).unwrap();
    let (back_key, _) = home.keys().nth(1).unwrap();
    let shed = home.next_door();
    let home = home
        .with(Change::AddDoor(Door::of(DoorKind::Shed)))
        .unwrap();
    let shed_key = home.next_key();
    let home = home.with(Change::AddKey(Key::default())).unwrap();
    let neighbour = home.next_holder();
    let home = home
        .with(Change::AddHolder(Holder::of(Role::Neighbour)))
        .unwrap();
    let way = home.next_way();
    let safe = Way {
        known_by: [neighbour].into(),
        ..Way::at(back, WayKind::KeySafe)
    };
    let lock = Lock::on(shed, LockKind::PinTumbler).opened_by(shed_key);
    let (front_key, _) = home.keys().next().unwrap();
    let key = match held {
        DoorKind::Shed => shed_key,
        _ => front_key,
    };
    let kept = KeyCopy {
        key: back_key,
        place: Place::InKeySafe(way),
    };
    let home = home.with_all([
        Change::AddWay(safe),
        Change::AddLock(lock),
        Change::AddCopy(kept),
        Change::AddCopy(KeyCopy::held(key, neighbour)),
    ]);
    (home.unwrap(), neighbour, way)
}

#[test]
fn whoever_kept_a_key_to_the_home_knows_no_code_to_it_any_more() {
    let (home, neighbour, way) = neighbour_with_a_code(DoorKind::FrontDoor);
    assert!(as_now(&home).is_empty());
    let kept = losing(&home, Role::Neighbour, Loss::NotReturned);
    let plan = as_now(&kept);
    assert_eq!(plan.ways.len(), 1);
    assert_eq!(plan.ways[0].way, way);
    assert_eq!(plan.ways[0].without, [neighbour]);
    assert_eq!(plan.works.len(), 2, "they had the back door's key in reach");
    assert!(kept.needs_of(neighbour).unwrap().is_empty());
    let after = plan.carried_out(&kept).unwrap();
    assert_eq!(after.reach_of_holder(neighbour), Ok(Reach::default()));

    let (home, neighbour, _) = neighbour_with_a_code(DoorKind::Shed);
    let kept = losing(&home, Role::Neighbour, Loss::NotReturned);
    assert_eq!(as_now(&kept).ways, [], "a shed is not the home");
    assert_eq!(kept.needs_of(neighbour).unwrap().len(), 1);
}
