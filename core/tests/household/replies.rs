//! Others who decide about a lock or a way in: told, waiting for, leaving it as it is.

use std::collections::BTreeSet;

use proptest::prelude::*;
use self_check_core::advice::{Action, Urgency};
use self_check_core::household::plan::Step;
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::*;

use super::any::household;
use crate::homes::{holder, losing};

fn as_now(home: &Household) -> Plan {
    plan(home, Choices::default())
}

/// A flat with one lock, which the landlord decides about, and its key.
fn rented(people: &[Role]) -> (Household, LockId) {
    let home = quick::one_door(DoorKind::FlatDoor, LockKind::PinTumbler, people).unwrap();
    let (door, part) = home.doors().next().unwrap();
    let part = Door {
        who_decides: WhoDecides::Landlord,
        ..part.clone()
    };
    let home = home.with(Change::SetDoor(door, part)).unwrap();
    let (lock, _) = home.locks().next().unwrap();
    (home, lock)
}

fn landlord() -> BTreeSet<WhoActs> {
    [WhoActs::Landlord].into()
}

fn replied(home: &Household, reply: Reply) -> Household {
    as_now(home).replied(home, &landlord(), reply)
}

fn has(home: &Household, is_it: impl Fn(&Step) -> bool) -> bool {
    as_now(home).steps.iter().any(|step| is_it(&step.step))
}

fn tells(home: &Household) -> bool {
    has(home, |step| {
        matches!(
            step,
            Step::Tell {
                action: Action::TellLandlord,
                ..
            }
        )
    })
}

#[test]
fn told_landlord_is_waited_for_and_nothing_is_done_twice() {
    let (home, lock) = rented(&[Role::Resident, Role::Sitter]);
    let stolen = losing(&home, Role::Sitter, Loss::Stolen);
    assert!(tells(&stolen) && has(&stolen, |step| *step == Step::CallPolice));
    let waiting = replied(&stolen, Reply::Waiting);
    let steps: Vec<Step> = as_now(&waiting)
        .steps
        .into_iter()
        .map(|step| step.step)
        .collect();
    let (locks, ways) = (vec![lock], vec![]);
    let reply = Reply::Waiting;
    assert_eq!(steps[0], Step::Replied { reply, locks, ways });
    assert!(
        matches!(&steps[1..], [Step::ChangedByOthers { .. }]),
        "{steps:?}"
    );
    assert_eq!(as_now(&waiting).works.len(), 1, "it is open all the same");
    assert_eq!(as_now(&waiting).stop_gaps[0].reply, Some(Reply::Waiting));
}

#[test]
fn landlord_who_leaves_it_as_it_is_has_no_new_key_made_and_nothing_to_pay() {
    let (home, _) = rented(&[Role::Resident, Role::Sitter]);
    let left = replied(
        &losing(&home, Role::Sitter, Loss::NearHome),
        Reply::LeftAsItIs,
    );
    let plan = as_now(&left);
    let [step] = &plan.steps[..] else {
        panic!("{:?}", plan.steps);
    };
    assert!(matches!(
        step.step,
        Step::Replied {
            reply: Reply::LeftAsItIs,
            ..
        }
    ));
    assert_eq!(plan.quantities(0).of(Priced::ByOthers), 0);
    assert_eq!(exposed_keys(&left).len(), 1, "it stays open to that key");
    // Who said so may change their mind, but is not said to wait by being told again.
    let waiting = plan.replied(&left, &landlord(), Reply::Waiting);
    assert_eq!(waiting, left);
}

#[test]
fn another_loss_has_to_be_told_anew() {
    let (home, lock) = rented(&[Role::Resident, Role::Sitter]);
    let unsaid = losing(&home, Role::Sitter, Loss::NotSaid);
    for reply in [Reply::Waiting, Reply::LeftAsItIs] {
        let told = replied(&unsaid, reply);
        let by_sitter = |loss| {
            let sitter = holder(&told, Role::Sitter);
            let mut copies = told.copies();
            let (copy, _) = copies
                .find(|(_, copy)| copy.place.had_by() == Some(sitter))
                .unwrap();
            told.with(Change::Lose { copy, loss }).unwrap()
        };
        assert!(tells(&by_sitter(Loss::Stolen)), "it was graver");
        assert!(
            !tells(&by_sitter(Loss::FarAway)),
            "no graver than they were told"
        );
        assert!(
            tells(&losing(&told, Role::Resident, Loss::FarAway)),
            "one more"
        );
        let found = by_sitter(Loss::MislaidIndoors);
        assert_eq!(found.lock(lock).unwrap().reply, None, "nothing is out");
    }
}

#[test]
fn reply_goes_when_the_lock_is_changed_or_becomes_the_households_own() {
    let (home, lock) = rented(&[Role::Resident, Role::Sitter]);
    let waiting = replied(&losing(&home, Role::Sitter, Loss::Stolen), Reply::Waiting);
    let done = as_now(&waiting)
        .carried_out_by(&waiting, &landlord())
        .unwrap();
    assert_eq!(done.lock(lock).unwrap().reply, None);
    let (door, part) = waiting.doors().next().unwrap();
    let own = Door {
        who_decides: WhoDecides::Household,
        ..part.clone()
    };
    let own = waiting.with(Change::SetDoor(door, own)).unwrap();
    assert_eq!(own.lock(lock).unwrap().reply, None);
    assert!(has(&own, |step| matches!(step, Step::LocksmithVisit(_))));
}

#[test]
fn code_of_a_landlords_door_is_waited_for_too() {
    let (home, _) = rented(&[Role::Resident]);
    let (door, _) = home.doors().next().unwrap();
    let way = home.next_way();
    let code = Way {
        given_away: Some(Loss::NotSaid),
        ..Way::at(door, WayKind::DoorCode)
    };
    let home = home.with(Change::AddWay(code)).unwrap();
    assert!(tells(&home));
    let waiting = replied(&home, Reply::Waiting);
    assert!(!tells(&waiting));
    assert_eq!(waiting.way(way).unwrap().reply, Some(Reply::Waiting));
}

/// A landlord's gate with remotes, which these people have.
fn gate_with_remotes(people: &[Role]) -> (Household, WayId) {
    let (home, _) = rented(people);
    let (door, _) = home.doors().next().unwrap();
    let way = home.next_way();
    let known_by = home.holders().map(|(holder, _)| holder).collect();
    let remote = Way {
        known_by,
        ..Way::at(door, WayKind::Remote)
    };
    (home.with(Change::AddWay(remote)).unwrap(), way)
}

#[test]
fn another_remote_has_to_be_told_anew() {
    let people = [Role::Resident, Role::Sitter];
    let (home, way) = gate_with_remotes(&people);
    let lost_by = |home: &Household, role: Role| {
        let mut part = home.way(way).unwrap().clone();
        part.lost_by.insert(holder(home, role), Loss::NearHome);
        home.with(Change::SetWay(way, part)).unwrap()
    };
    let told = replied(&lost_by(&home, Role::Resident), Reply::Waiting);
    assert!(!tells(&told));
    assert!(tells(&lost_by(&told, Role::Sitter)));
    let former = Change::NoLongerShould {
        holder: holder(&home, Role::Sitter),
        no_longer: true,
    };
    assert!(tells(&told.with(former).unwrap()));
}

#[test]
fn another_key_to_the_same_lock_has_to_be_told_anew() {
    let (home, lock) = rented(&[Role::Resident]);
    let second = home.next_key();
    let mut part = home.lock(lock).unwrap().clone();
    let first = *part.keys.first().unwrap();
    part.keys.insert(second);
    part.arrangement = Arrangement::MasterKeyed;
    let parts = [Change::AddKey(Key::default()), Change::SetLock(lock, part)];
    let home = home.with_all(parts).unwrap();
    let exposed = |home: &Household, key: KeyId| {
        let exposure = FoundExposure::Exposed(Urgency::Soon);
        let finding = Some(Finding {
            exposure,
            safety_first: false,
        });
        home.with(Change::Check { key, finding }).unwrap()
    };
    let told = replied(&exposed(&home, first), Reply::Waiting);
    assert!(!tells(&told));
    assert!(tells(&exposed(&told, second)));
}

#[test]
fn whoever_decides_from_now_on_has_to_be_told() {
    let (home, lock) = rented(&[Role::Resident, Role::Sitter]);
    let waiting = replied(&losing(&home, Role::Sitter, Loss::Stolen), Reply::Waiting);
    let (door, part) = waiting.doors().next().unwrap();
    let managed = Door {
        who_decides: WhoDecides::Manager,
        ..part.clone()
    };
    let managed = waiting.with(Change::SetDoor(door, managed)).unwrap();
    assert_eq!(managed.lock(lock).unwrap().reply, None);
    let system = Lock {
        kind: LockKind::BuildingSystem,
        ..waiting.lock(lock).unwrap().clone()
    };
    let system = waiting.with(Change::SetLock(lock, system)).unwrap();
    assert_eq!(system.lock(lock).unwrap().reply, None);
}

#[test]
fn key_to_a_lock_that_is_left_as_it_is_goes_back_to_nobody() {
    // One key to the landlord's flat and to a shed of one's own.
    let (home, _) = rented(&[Role::Resident, Role::Sitter]);
    let shed = home.next_door();
    let home = home
        .with(Change::AddDoor(Door::of(DoorKind::Shed)))
        .unwrap();
    let (key, _) = home.keys().next().unwrap();
    let lock = Lock::on(shed, LockKind::PinTumbler).opened_by(key);
    let home = home.with(Change::AddLock(lock)).unwrap();
    let left = replied(
        &losing(&home, Role::Sitter, Loss::NearHome),
        Reply::LeftAsItIs,
    );
    let plan = as_now(&left);
    assert_eq!((&plan.given_back[..], &plan.void[..]), (&[][..], &[][..]));
    assert!(!has(&left, |step| matches!(
        step,
        Step::ChangedByOthers { .. }
    )));
    assert!(has(&left, |step| matches!(step, Step::LocksmithVisit(_))));
    let is_made = |place: &usize| !plan.is_left(*place);
    assert_eq!(
        (0..plan.keys.len()).filter(is_made).count(),
        1,
        "the shed's"
    );
}

#[test]
fn reply_in_a_record_counts_for_nothing_where_the_household_decides() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Sitter]).unwrap();
    let stolen = losing(&home, Role::Sitter, Loss::Stolen);
    let text = file::export(&stolen).unwrap();
    let forged = text.replace(
        r#""arrangement":"one-key""#,
        r#""arrangement":"one-key","reply":"waiting""#,
    );
    assert_ne!(text, forged);
    let forged = file::import(forged.as_bytes()).unwrap();
    assert_eq!(as_now(&forged).steps, as_now(&stolen).steps);
}

proptest! {
    #[test]
    fn nothing_is_left_to_the_household_once_its_own_part_is_done(home in household(120)) {
        let before = as_now(&home);
        let acted = [WhoActs::Household].into();
        let after = before.carried_out_by(&home, &acted).unwrap();
        for step in as_now(&after).steps {
            let is_others = matches!(step.step, Step::Replied { .. } | Step::ChangedByOthers { .. });
            let may_turn_up = matches!(step.step, Step::LookAgainIndoors { .. });
            let is_shut = matches!(step.step, Step::GetIn(_));
            prop_assert!(is_others || may_turn_up || is_shut, "{:?}", step);
        }
    }

    #[test]
    fn reply_changes_nothing_of_what_is_open(home in household(120), left in any::<bool>()) {
        let before = as_now(&home);
        let reply = if left { Reply::LeftAsItIs } else { Reply::Waiting };
        let told = before.replied(&home, &before.actors(), reply);
        let after = as_now(&told);
        let works = |plan: &Plan| -> Vec<_> {
            plan.works.iter().map(|work| (work.lock, work.urgency, work.exposed.clone())).collect()
        };
        let ways = |plan: &Plan| -> Vec<_> {
            plan.ways.iter().map(|work| (work.way, work.urgency, work.without.clone())).collect()
        };
        prop_assert_eq!(works(&after), works(&before));
        prop_assert_eq!(ways(&after), ways(&before));
        prop_assert_eq!(after.keys, before.keys);
        prop_assert!(after.works.iter().all(|work| !work.is_to_be_told()));
        prop_assert!(after.ways.iter().all(|work| !work.is_to_be_told()));
        // A change that changes nothing of it keeps it, where it is open today already.
        let same = told.with(Change::SetPrices(Prices::default())).unwrap();
        let replies = |home: &Household| -> Vec<_> { home.locks().map(|(_, lock)| lock.reply).collect() };
        prop_assert_eq!(replies(&same), replies(&told));
        for work in &before.ways {
            prop_assert_eq!(same.way(work.way).unwrap().reply, told.way(work.way).unwrap().reply);
        }
    }
}
