//! Doors to which no key is at hand.

use std::collections::BTreeSet;

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::brief::{AfterVisit, Ask, Readiness};
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
    for (can_get_in, opened) in [(None, 1), (Some(false), 1), (Some(true), 0)] {
        let page = page(&home, can_get_in);
        assert!(page.locks[0].is_shut && page.to_open.is_empty());
        let opening = (PriceItem::Opening, Some(1));
        assert_eq!(
            quoted(&page).contains(&opening),
            opened > 0,
            "{can_get_in:?}"
        );
        assert_eq!(page.opened, opened, "{can_get_in:?}");
        assert!(!page.after.contains(&AfterVisit::ScrapTheOldKeys));
    }
}

/// A let flat whose only key is lost: the landlord sees to the lock.
fn tenants_only_key_lost() -> Household {
    let home = one_resident(Loss::NearHome);
    let (id, door) = home.doors().next().unwrap();
    let who_decides = WhoDecides::Landlord;
    let door = Door {
        who_decides,
        ..door.clone()
    };
    home.with(Change::SetDoor(id, door)).unwrap()
}

fn page(home: &Household, can_get_in: Option<bool>) -> Brief {
    let readiness = Readiness {
        can_get_in,
        ..Readiness::default()
    };
    let choices = BriefChoices {
        readiness,
        ..BriefChoices::default()
    };
    brief(home, &plan(home, Choices::default()), choices).unwrap()
}

fn quoted(page: &Brief) -> Vec<(PriceItem, Option<u64>)> {
    let quotes = page.quotes.iter();
    quotes.map(|quote| (quote.item, quote.count)).collect()
}

#[test]
fn door_of_a_landlord_is_to_be_opened_though_its_lock_is_not_the_households_to_change() {
    let home = tenants_only_key_lost();
    let open = page(&home, None);
    assert!(open.locks.is_empty() && open.keys.is_empty() && !open.is_empty());
    let (door, _) = home.doors().next().unwrap();
    let doors: Vec<DoorId> = open.to_open.iter().map(|it| it.door).collect();
    assert_eq!(doors, [door]);
    let visit = [PriceItem::CallOut, PriceItem::CallOutAfterHours];
    let opening = [visit[0], visit[1], PriceItem::Opening].map(|item| (item, Some(1)));
    assert_eq!(quoted(&open), opening);
    let asked: Vec<Ask> = open.asked().collect();
    assert_eq!(
        asked,
        [
            Ask::WholePriceBeforeWork,
            Ask::LicenceAndPapers,
            Ask::ProofThatYouMay,
            Ask::IsCodeOrAddressKept,
        ]
    );
    // With a way in there is nothing to order; the answer can be taken back.
    let inside = page(&home, Some(true));
    assert!(inside.is_empty() && inside.quotes.is_empty());
    assert_eq!(inside.to_open, open.to_open);
}

#[test]
fn who_cannot_get_in_has_a_door_opened_though_keys_are_told_of() {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let home = losing(&home, Role::Sitter, Loss::NearHome);
    for (can_get_in, opened) in [(None, 0), (Some(true), 0), (Some(false), 1)] {
        let page = page(&home, can_get_in);
        assert!(page.locks[0].has_working_key && !page.locks[0].is_shut);
        assert_eq!(page.opened, opened, "{can_get_in:?}");
        let opening = (PriceItem::Opening, Some(1));
        assert_eq!(quoted(&page).contains(&opening), opened > 0);
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
