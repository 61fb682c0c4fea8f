//! What a plan has the key in a key safe open that nobody could enter by it before.

use std::collections::BTreeSet;

use proptest::prelude::*;
use self_check_core::household::*;

use super::any::{grown, household, raw_changes};
use super::truth;

fn planned(home: &Household, grouping: Grouping) -> Plan {
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    plan(home, choices)
}

fn told(plan: &Plan) -> BTreeSet<(WayId, DoorId)> {
    plan.opens_more_by_safes().into_iter().collect()
}

/// What opens by each key safe once the plan is carried out and did not before.
fn more(home: &Household, plan: &Plan) -> BTreeSet<(WayId, DoorId)> {
    let after = plan.carried_out(home).unwrap();
    let safes = home.ways().filter(|(_, way)| way.kind == WayKind::KeySafe);
    safes
        .flat_map(|(safe, _)| {
            let before = truth::entered_by_safe(home, safe);
            let now = truth::entered_by_safe(&after, safe).into_iter();
            let more = now.filter(move |door| !before.contains(door));
            more.map(move |door| (safe, door))
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn plan_tells_what_opens_by_a_key_safe_that_did_not_before(home in household(120)) {
        for &grouping in Grouping::ALL {
            let plan = planned(&home, grouping);
            prop_assert_eq!(told(&plan), more(&home, &plan), "{:?}", grouping);
        }
        prop_assert!(told(&planned(&home, Grouping::AsNow)).is_empty());
    }
}

#[test]
fn households_of_that_law_have_key_safes_that_open_more() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let homes = (0..400).map(|_| {
        let changes = raw_changes(120).new_tree(&mut runner).unwrap().current();
        grown(&changes)
    });
    let opening_more = homes.filter(|home| {
        let plan = planned(home, Grouping::AllAlike);
        !more(home, &plan).is_empty()
    });
    assert!(opening_more.count() >= 5);
}

#[test]
fn all_alike_the_examples_key_safe_opens_the_front_door_and_the_workshop() {
    let home = demonstration::household();
    let kinds = |grouping| -> Vec<DoorKind> {
        let told = told(&planned(&home, grouping)).into_iter();
        told.map(|(_, door)| home.door(door).unwrap().kind)
            .collect()
    };
    assert_eq!(
        kinds(Grouping::AllAlike),
        [DoorKind::FrontDoor, DoorKind::Workshop]
    );
    // The comparison tells the same of each grouping.
    let ways = compare(&home).into_iter().map(|way| way.opens_more.len());
    assert_eq!(ways.collect::<Vec<_>>(), [0, 2, 0]);
    assert_eq!(kinds(Grouping::AsNow), []);
    assert_eq!(kinds(Grouping::ByNeed), []);
}
