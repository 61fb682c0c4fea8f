use super::*;

/// The last claim of the enum, so that a row left out of the table is found.
const LAST: RuleId = RuleId::VehicleKeyIsForASpecialist;

#[test]
fn rules_hold_every_claim_exactly_once_in_the_order_of_their_ids() {
    let ids: Vec<usize> = rules().map(|rule| rule.id as usize).collect();
    assert_eq!(ids, (0..=LAST as usize).collect::<Vec<_>>());
}

#[test]
fn rules_all_have_a_source_and_a_question() {
    for rule in rules() {
        assert!(!rule.sources.is_empty(), "{:?}", rule.id);
        assert!(rule.needs != QuestionSet::default(), "{:?}", rule.id);
    }
}
