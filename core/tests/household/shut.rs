//! Doors to which no key is at hand.

use std::collections::BTreeSet;

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::brief::{AfterVisit, Readiness};
use self_check_core::household::plan::Step;
use self_check_core::household::*;

use super::any::household;
use super::truth;
use crate::homes::losing;

fn one_resident(loss: Loss) -> Household {
    let people = [Role::Resident];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    losing(&home, Role::Resident, loss)
}

fn first_step(home: &Household) -> Step {
    plan(home, Choices::default()).steps.remove(0).step
}

#[test]
fn getting_in_is_due_today_before_anything_else() {
    let home = one_resident(Loss::NearHome);
    let plan = plan(&home, Choices::default());
    let doors: Vec<DoorId> = home.doors().map(|(door, _)| door).collect();
    assert_eq!(plan.steps[0].step, Step::GetIn(doors));
    assert_eq!(plan.steps[0].urgency, Urgency::Today);
    assert_eq!(
        plan.steps[1].step,
        Step::StopGap,
        "only then can somebody stay in"
    );
    let scraps = |step: &Step| matches!(step, Step::ScrapOldCopies(_));
    assert!(!plan.steps.iter().any(|step| scraps(&step.step)));
}

#[test]
fn whoever_looks_for_the_key_indoors_is_in() {
    let home = one_resident(Loss::MislaidIndoors);
    assert!(matches!(first_step(&home), Step::LookAgainIndoors { .. }));
}

#[test]
fn locksmith_is_asked_to_open_the_door_unless_somebody_can_get_in() {
    let home = one_resident(Loss::NearHome);
    let plan = plan(&home, Choices::default());
    let page = |can_get_in| {
        let readiness = Readiness {
            can_get_in,
            ..Readiness::default()
        };
        let choices = BriefChoices {
            readiness,
            ..BriefChoices::default()
        };
        brief(&home, &plan, choices).unwrap()
    };
    let quoted = |page: &Brief| {
        let mut quotes = page.quotes.iter();
        quotes
            .find(|quote| quote.item == PriceItem::Opening)
            .map(|quote| quote.count)
    };
    for (can_get_in, count) in [
        (None, Some(Some(1))),
        (Some(false), Some(Some(1))),
        (Some(true), None),
    ] {
        let page = page(can_get_in);
        assert!(page.locks[0].is_shut);
        assert_eq!(quoted(&page), count, "{can_get_in:?}");
        assert!(!page.after.contains(&AfterVisit::ScrapTheOldKeys));
    }
}

/// The doors of which a copy of a key has gone and none is with anybody who should have it.
fn shut(home: &Household) -> BTreeSet<DoorId> {
    let former = |by: HolderId| truth::is_former(home, by);
    let mut shut = BTreeSet::new();
    for (_, lock) in home.locks() {
        let copies = home
            .copies()
            .filter(|(_, copy)| lock.keys.contains(&copy.key));
        let (mut gone, mut left) = (false, false);
        for (_, copy) in copies {
            match copy.place {
                Place::Lost { loss, .. } => gone |= loss != Loss::MislaidIndoors,
                Place::Held(by) if former(by) => gone = true,
                Place::Scrapped { .. } => {}
                Place::Held(_) | Place::InKeySafe(_) | Place::AtHome { .. } => left = true,
            }
        }
        if gone && !left {
            shut.insert(lock.door);
        }
    }
    shut.retain(|&door| {
        let door = home.door(door).unwrap();
        let small = [DoorKind::Mailbox, DoorKind::Cabinet, DoorKind::Padlock];
        door.who_decides != WhoDecides::AnotherOwner && !small.contains(&door.kind)
    });
    shut
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn whoever_has_no_key_at_hand_to_a_door_of_theirs_is_told_so_first(home in household(120)) {
        for &grouping in Grouping::ALL {
            let plan = plan(&home, Choices { grouping, ..Choices::default() });
            let shut = shut(&home);
            let told = plan.steps.iter().position(|step| matches!(step.step, Step::GetIn(_)));
            prop_assert_eq!(told.is_some(), !shut.is_empty(), "{:?}", grouping);
            if let Some(told) = told {
                prop_assert_eq!(told, usize::from(plan.safety_first));
                let doors = shut.into_iter().collect();
                prop_assert_eq!(&plan.steps[told].step, &Step::GetIn(doors));
            }
        }
    }
}
