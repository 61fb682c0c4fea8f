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
    assert!(matches!(plan.steps[1].step, Step::ChangeCodes(_)));
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
