//! The demonstration: what its household shows.

use self_check_core::advice::{Action, Urgency};
use self_check_core::answers::Answers;
use self_check_core::assess::assess;
use self_check_core::household::*;
use self_check_core::questions::{Choice, Question};

use crate::homes::{holder, losing};

/// What the household of the demonstration answers in the check of its house key.
fn house_key_check() -> Answers {
    use Choice::*;
    let ticks = [
        LookAtMyKeys,
        HouseDoor,
        GarageShedOrGate,
        OwnIt,
        NotChanged,
        OneOrTwoUnaccounted,
        Choice::Household,
        TrustedCircle,
        HelperNow,
        HadItAlone,
        CutsOnOneEdge,
        FourOrMoreDigits,
        OnlyThisLock,
        NumberOnPapersAtHome,
        PocketOrClosedBag,
        CarriedInView,
        PictureSharedWithFew,
        NoLink,
        BoltOrChainOnly,
    ];
    Question::ALL
        .into_iter()
        .fold(Answers::none(), |answers, question| {
            let own = ticks
                .into_iter()
                .filter(|choice| choice.question() == question);
            answers
                .give(question, &own.collect::<Vec<_>>())
                .unwrap_or(answers)
        })
}

#[test]
fn demonstration_holds_the_finding_of_its_own_check() {
    let home = demonstration::household();
    let (_, house_key) = home.keys().next().unwrap();
    assert_eq!(
        house_key.finding,
        Some(Finding::of(&assess(&house_key_check(), None)))
    );
}

#[test]
fn demonstration_has_something_of_everything() {
    let home = demonstration::household();
    assert_eq!(
        (home.doors().len(), home.keys().len(), home.holders().len()),
        (7, 5, 8)
    );
    let reach = home.reach_of_ring(holder(&home, Role::Neighbour)).unwrap();
    let kinds: Vec<DoorKind> = reach
        .opened()
        .map(|door| home.door(door).unwrap().kind)
        .collect();
    assert_eq!(
        kinds,
        [DoorKind::FrontDoor, DoorKind::Workshop],
        "the spare opens the workshop"
    );
    assert_eq!(exposed_keys(&home).len(), 2);
    assert!(gaps(&home).iter().any(|gap| !gap.beyond.is_empty()));
}

#[test]
fn sitters_ring_stolen_brings_the_house_key_forward() {
    let home = demonstration::household();
    let lost = losing(&home, Role::Sitter, Loss::Stolen);
    let urgency = |home: &Household| {
        let plan = plan(home, Choices::default());
        let work = plan
            .works
            .iter()
            .find(|work| work.actions == [Action::RekeyCylinder])
            .unwrap();
        work.urgency
    };
    assert_eq!(
        (urgency(&home), urgency(&lost)),
        (Urgency::Soon, Urgency::Today)
    );
}

#[test]
fn grouping_by_need_parts_house_and_workshop() {
    let home = demonstration::household();
    let sides = compare(&home);
    let partner = holder(&home, Role::WorkshopPartner);
    let of = |side: &Comparison| {
        *side
            .holders
            .iter()
            .find(|found| found.holder == partner)
            .unwrap()
    };
    assert_eq!(of(&sides[0]).doors_beyond_need, 1, "the front door");
    assert_eq!(of(&sides[2]).doors_beyond_need, 0);
    let neighbour = holder(&home, Role::Neighbour);
    let locks = |side: &Comparison| {
        let found = side.holders.iter().find(|found| found.holder == neighbour);
        found.unwrap().locks_if_lost
    };
    assert_eq!(
        (locks(&sides[0]), locks(&sides[1]), locks(&sides[2])),
        (2, 3, 1)
    );
    let by_need = plan(
        &home,
        Choices {
            grouping: Grouping::ByNeed,
            ..Choices::default()
        },
    );
    let after = by_need.carried_out(&home).unwrap();
    assert!(gaps(&after).is_empty(), "{:?}", gaps(&after));
    let cost = by_need.cost(&home).unwrap();
    assert!(cost.missing.is_empty() && cost.known.low() < cost.known.high());
}
