//! The order of the steps, and what is left open until it is said how a key was lost.

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::plan::Step;
use self_check_core::household::*;

use super::any::household;
use crate::homes::losing;

fn place(plan: &Plan, is_it: impl Fn(&Step) -> bool) -> Option<usize> {
    plan.steps.iter().position(|step| is_it(&step.step))
}

/// What orders work or pays for it.
fn orders_work(step: &Step) -> bool {
    matches!(
        step,
        Step::LocksmithVisit(_)
            | Step::ReplaceSmallLocks(_)
            | Step::CutCopies(_)
            | Step::Tell { .. }
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn insurer_is_asked_before_work_and_old_keys_are_destroyed_after_it(home in household(120)) {
        for &grouping in Grouping::ALL {
            let plan = plan(&home, Choices { grouping, ..Choices::default() });
            let work = place(&plan, orders_work).unwrap_or(plan.steps.len());
            for first in [Step::AskInsurer, Step::CallPolice, Step::StopGap] {
                if let Some(at) = place(&plan, |step| *step == first) {
                    prop_assert!(at < work, "{:?}", first);
                }
            }
            if let Some(at) = place(&plan, |step| *step == Step::StopGap) {
                prop_assert!(plan.steps[..at].iter().all(|step| step.urgency == Urgency::Today));
            }
            if let Some(at) = place(&plan, |step| matches!(step, Step::ScrapOldCopies(_))) {
                let (before, after) = plan.steps.split_at(at);
                let due = after[0].urgency;
                let can_wait = |step: &plan::PlanStep| step.urgency < due || matches!(step.step, Step::ChangedByOthers { .. });
                prop_assert!(after[1..].iter().all(can_wait));
                let Step::ScrapOldCopies(old) = &after[0].step else { unreachable!() };
                for work in plan.works.iter().filter(|work| work.drops.iter().any(|key| old.contains(key))) {
                    let is_seen_to = before.iter().any(|step| match &step.step {
                        Step::LocksmithVisit(locks) | Step::ReplaceSmallLocks(locks) => locks.contains(&work.lock),
                        _ => false,
                    });
                    prop_assert!(is_seen_to, "{:?}", work);
                }
            }
            if let Some(at) = place(&plan, |step| matches!(step, Step::ChangedByOthers { .. })) {
                prop_assert_eq!(at, plan.steps.len() - 1);
                prop_assert_eq!(plan.steps[at].urgency, Urgency::WhenConvenient);
            }
            for can_wait in [
                |step: &Step| matches!(step, Step::LookAgainIndoors { .. }),
                |step: &Step| matches!(step, Step::GetCopiesBack(_)),
            ] {
                if let Some(at) = place(&plan, can_wait) {
                    let later = plan.steps[at..].iter();
                    let mut later = later.filter(|step| !matches!(step.step, Step::ScrapOldCopies(_)));
                    prop_assert!(later.all(|step| step.urgency <= plan.steps[at].urgency));
                }
            }
        }
    }

    #[test]
    fn what_may_be_sooner_is_never_due_today_already(home in household(120)) {
        let plan = plan(&home, Choices::default());
        for step in plan.steps {
            prop_assert!(!step.may_be_sooner || step.urgency < Urgency::Today);
        }
        for work in plan.works {
            prop_assert!(!work.may_be_sooner() || work.urgency < Urgency::Today);
        }
    }
}

#[test]
fn fresh_loss_waits_for_how_the_key_was_lost() {
    let home =
        quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let visit = |loss| {
        let plan = plan(&losing(&home, Role::Resident, loss), Choices::default());
        let at = place(&plan, |step| matches!(step, Step::LocksmithVisit(_))).unwrap();
        (
            plan.exposed[0].may_be_sooner(),
            plan.steps[at].may_be_sooner,
        )
    };
    assert_eq!(visit(Loss::NotSaid), (true, true));
    for said in [Loss::FarAway, Loss::NearHome, Loss::Stolen] {
        assert_eq!(visit(said), (false, false), "{said:?}");
    }
}

#[test]
fn shed_cannot_become_more_urgent_than_soon() {
    let home = quick::one_door(DoorKind::Shed, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let lost = losing(&home, Role::Resident, Loss::NotSaid);
    assert!(plan(&lost, Choices::default()).works[0].may_be_sooner());
    let (key, _) = lost.keys().next().unwrap();
    let finding = Some(Finding {
        exposure: FoundExposure::Exposed(Urgency::Soon),
        safety_first: false,
    });
    let found = lost.with(Change::Check { key, finding }).unwrap();
    assert!(!plan(&found, Choices::default()).works[0].may_be_sooner());
}

/// The household once the copy of this key, by its place among the keys, is lost.
fn losing_the(home: &Household, place: usize, loss: Loss) -> Household {
    let (key, _) = home.keys().nth(place).unwrap();
    let held = |copy: &KeyCopy| matches!(copy.place, Place::Held(_));
    let (copy, _) = home.copies_of(key).find(|(_, copy)| held(copy)).unwrap();
    home.with(Change::Lose { copy, loss }).unwrap()
}

/// A front door and a second one of this kind, each with a key of its own.
fn front_and(kind: DoorKind) -> Household {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (second, _) = home.doors().nth(1).unwrap();
    home.with(Change::SetDoor(second, Door::of(kind))).unwrap()
}

#[test]
fn no_step_may_be_sooner_where_no_answer_can_make_it_so() {
    let home = losing_the(&front_and(DoorKind::Shed), 0, Loss::NotReturned);
    let plan = plan(&losing_the(&home, 1, Loss::NotSaid), Choices::default());
    assert!(plan.steps.len() > 3);
    for step in plan.steps {
        assert!(!step.may_be_sooner, "{step:?}");
    }
}

#[test]
fn asking_for_a_copy_back_does_not_wait_for_how_another_was_lost() {
    let home = losing_the(&front_and(DoorKind::BackDoor), 0, Loss::NotReturned);
    let plan = plan(&losing_the(&home, 1, Loss::NotSaid), Choices::default());
    for step in plan.steps {
        let is_certain = matches!(step.step, Step::GetCopiesBack(_) | Step::GetIn(_));
        assert_eq!(step.may_be_sooner, !is_certain, "{step:?}");
    }
}

#[test]
fn looking_again_indoors_stands_between_no_two_steps_of_today() {
    let home = losing_the(&front_and(DoorKind::BackDoor), 0, Loss::Stolen);
    let plan = plan(
        &losing_the(&home, 1, Loss::MislaidIndoors),
        Choices::default(),
    );
    let look = place(&plan, |step| matches!(step, Step::LookAgainIndoors { .. })).unwrap();
    for at_once in [Step::CallPolice, Step::StopGap, Step::AskInsurer] {
        assert!(
            place(&plan, |step| *step == at_once).unwrap() < look,
            "{at_once:?}"
        );
    }
}

#[test]
fn copies_are_asked_back_before_anybody_is_sent_for() {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::flat_and_entrance(LockKind::PinTumbler, &people).unwrap();
    let lost = losing(&home, Role::Sitter, Loss::NotReturned);
    let plan = plan(&lost, Choices::default());
    let ask = place(&plan, |step| matches!(step, Step::GetCopiesBack(_))).unwrap();
    let work = place(&plan, orders_work).unwrap();
    assert!(ask < work, "{:?}", plan.steps);
}

#[test]
fn stolen_remote_is_deleted_before_the_police_are_told() {
    let home = quick::one_door(DoorKind::Garage, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let way = home.next_way();
    for (loss, is_first) in [(Loss::Stolen, true), (Loss::NearHome, false)] {
        let remote = Way {
            given_away: Some(loss),
            ..Way::at(door, WayKind::Remote)
        };
        let lost = home.with(Change::AddWay(remote)).unwrap();
        let plan = plan(&lost, Choices::default());
        let deleted = Step::ChangeWays(WayKind::Remote, vec![way]);
        assert_eq!(plan.steps[0].step, deleted);
        assert_eq!(plan.steps.len() > 1, is_first, "{:?}", plan.steps);
    }
}
