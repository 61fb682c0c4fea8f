//! One day for a lock and its keys.

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::plan::{PlanStep, Step};
use self_check_core::household::*;

use super::any::household;
use crate::homes::losing;

/// A stolen ring with the key to the front door and another to a workshop with a small lock.
fn stolen_with_a_workshop() -> Household {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (door, _) = home.doors().nth(1).unwrap();
    let (lock, part) = home.locks_of(door).next().unwrap();
    let small = Lock {
        kind: LockKind::SmallLock,
        ..part.clone()
    };
    let workshop = Change::SetDoor(door, Door::of(DoorKind::Workshop));
    let home = home
        .with_all([workshop, Change::SetLock(lock, small)])
        .unwrap();
    losing(&home, Role::Resident, Loss::Stolen)
}

#[test]
fn workshop_and_its_key_have_one_day() {
    let home = stolen_with_a_workshop();
    let exposed: Vec<Urgency> = exposed_keys(&home).iter().map(|key| key.urgency).collect();
    assert_eq!(exposed, [Urgency::Today, Urgency::Soon]);
    let plan = plan(&home, Choices::default());
    let cut = plan.steps.iter().filter_map(|step| match &step.step {
        Step::CutCopies(keys) => Some((step.urgency, keys.clone())),
        _ => None,
    });
    let cut: Vec<(Urgency, Vec<usize>)> = cut.collect();
    assert_eq!(cut, [(Urgency::Today, vec![0]), (Urgency::Soon, vec![1])]);
}

/// The step that sees to a lock.
fn seen_to_in(plan: &Plan, lock: LockId) -> Option<&PlanStep> {
    plan.steps.iter().find(|step| match &step.step {
        Step::LocksmithVisit(locks) | Step::ReplaceSmallLocks(locks) => locks.contains(&lock),
        _ => false,
    })
}

/// The planned keys of which a step has copies cut or handed over.
fn copied(step: &Step) -> Vec<usize> {
    match step {
        Step::CutCopies(keys) => keys.clone(),
        Step::HandOver(_, keys) => keys.iter().map(|&(place, _)| place).collect(),
        _ => Vec::new(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn copies_are_never_due_before_the_work_on_their_lock(home in household(120)) {
        for &grouping in Grouping::ALL {
            let plan = plan(&home, Choices { grouping, ..Choices::default() });
            for (at, step) in plan.steps.iter().enumerate() {
                for place in copied(&step.step) {
                    let works = plan.works.iter().filter(|work| work.takes.contains(&place));
                    let works: Vec<&PlanStep> =
                        works.filter_map(|work| seen_to_in(&plan, work.lock)).collect();
                    let first = works.iter().map(|work| work.urgency).max();
                    prop_assert!(first.is_none_or(|first| step.urgency == first), "{:?}", step);
                    let is_before = |work: &&PlanStep| plan.steps[..at].contains(*work);
                    prop_assert!(works.is_empty() || works.iter().any(is_before), "{:?}", step);
                }
            }
        }
    }

    #[test]
    fn key_is_due_when_the_first_of_its_locks_is(home in household(120)) {
        let plan = plan(&home, Choices::default());
        for key in &plan.exposed {
            let works = plan.works.iter().filter(|work| work.exposed == [key.key]);
            for work in works {
                prop_assert!(work.urgency <= key.urgency);
            }
            let of_it = plan.works.iter().filter(|work| work.exposed.contains(&key.key));
            let soonest = of_it.map(|work| work.urgency).max();
            prop_assert!(soonest >= Some(key.urgency), "{:?}", key);
        }
    }
}
