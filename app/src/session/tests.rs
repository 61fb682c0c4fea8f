use self_check_core::household::FoundExposure;

use super::*;

fn after(acts: &[Act]) -> Session {
    acts.iter()
        .fold(Session::default(), |session, &act| session.after_act(act))
}

fn answered(ticks: &[Choice]) -> Session {
    ticks.iter().fold(Session::default(), |session, &choice| {
        session
            .after_act(Act::Tick(choice))
            .after_act(Act::Confirm(choice.question()))
    })
}

fn place(session: &Session, question: Question) -> Option<usize> {
    session.path().position(Stop::Ask(question))
}

#[test]
fn tick_without_confirm_changes_no_answer() {
    let session = after(&[Act::Tick(Choice::LookAtMyKeys)]);
    assert!(session.ticks.has(Choice::LookAtMyKeys));
    assert_eq!(session.answers, Answers::none());
    assert_eq!(session.furthest(), 0);
}

#[test]
fn tick_again_takes_a_tick_off_where_several_go_together_and_keeps_a_single_choice() {
    let several = after(&[Act::Tick(Choice::HouseDoor), Act::Tick(Choice::HouseDoor)]);
    assert!(!several.ticks.is_answered(Question::Opens));
    let one = after(&[Act::Tick(Choice::OwnIt), Act::Tick(Choice::OwnIt)]);
    assert!(one.ticks.has(Choice::OwnIt));
}

#[test]
fn tick_that_stands_alone_clears_others_and_is_cleared_by_them() {
    let alone = after(&[
        Act::Tick(Choice::FourOrMoreDigits),
        Act::Tick(Choice::WordsAgainstCopying),
        Act::Tick(Choice::NothingMarked),
    ]);
    assert!(
        alone
            .ticks
            .chosen(Question::Marking)
            .eq([Choice::NothingMarked])
    );
    let other = alone.after_act(Act::Tick(Choice::WornMarking));
    assert!(
        other
            .ticks
            .chosen(Question::Marking)
            .eq([Choice::WornMarking])
    );
}

#[test]
fn not_sure_clears_ticks_and_a_tick_clears_not_sure() {
    let unsure = after(&[
        Act::Tick(Choice::HouseDoor),
        Act::TickNotSure(Question::Opens),
    ]);
    assert!(unsure.ticks.is_not_sure(Question::Opens) && !unsure.ticks.has(Choice::HouseDoor));
    let sure = unsure.after_act(Act::Tick(Choice::FlatDoor));
    assert!(!sure.ticks.is_not_sure(Question::Opens));
}

#[test]
fn confirm_of_one_question_leaves_ticks_of_another_waiting() {
    let session = after(&[
        Act::Tick(Choice::LookAtMyKeys),
        Act::Tick(Choice::HouseDoor),
        Act::Confirm(Question::Reason),
    ]);
    assert!(session.answers.has(Choice::LookAtMyKeys));
    assert!(!session.answers.has(Choice::HouseDoor) && session.ticks.has(Choice::HouseDoor));
}

#[test]
fn after_a_first_answer_leads_to_the_next_page() {
    let session = answered(&[Choice::LookAtMyKeys, Choice::HouseDoor]);
    assert_eq!(session.after(0), 1);
    assert_eq!(session.after(1), 2);
}

#[test]
fn after_a_changed_answer_leads_back_to_the_answers() {
    let whole = after(&[Act::TryExample]);
    let path = whole.path();
    let changed = whole
        .after_act(Act::Tick(Choice::AllAccountedFor))
        .after_act(Act::Confirm(Question::Copies));
    let copies = place(&changed, Question::Copies).unwrap_or_default();
    assert!(copies > 0);
    assert_eq!(
        Some(changed.after(copies)),
        path.position(Stop::LookOver),
        "nothing new is asked"
    );
}

#[test]
fn after_a_changed_answer_that_opens_a_question_leads_to_it() {
    let whole = after(&[Act::TryExample]);
    let missing = whole
        .after_act(Act::Tick(Choice::KeyMissing))
        .after_act(Act::Confirm(Question::Reason));
    assert_eq!(missing.path().stops()[missing.after(0)], Stop::NextHour);
    assert_eq!(
        missing.path().stops()[missing.after(1)],
        Stop::Ask(Question::MissingHow)
    );
}

#[test]
fn after_an_uneasy_holder_added_late_leads_to_safety_before_the_answers() {
    let whole = after(&[Act::TryExample]);
    let uneasy = whole
        .after_act(Act::Tick(Choice::UneasyPerson))
        .after_act(Act::Confirm(Question::Holders));
    let holders = place(&uneasy, Question::Holders).unwrap_or_default();
    assert_eq!(uneasy.path().stops()[uneasy.after(holders)], Stop::Safety);
}

#[test]
fn begin_after_the_example_starts_with_no_answer() {
    let session = after(&[Act::TryExample, Act::Begin(Some(Choice::NumberOnIt))]);
    assert!(!session.is_example);
    assert_eq!(session.furthest(), 1);
    assert!(session.answers.has(Choice::NumberOnIt));
}

#[test]
fn begin_with_a_reason_keeps_ones_own_answers() {
    let session = answered(&[Choice::LookAtMyKeys, Choice::HouseDoor])
        .after_act(Act::Begin(Some(Choice::JustMovedIn)));
    assert!(session.answers.has(Choice::JustMovedIn) && session.answers.has(Choice::HouseDoor));
}

#[test]
fn forget_leaves_nothing() {
    assert_eq!(after(&[Act::TryExample, Act::Forget]), Session::default());
}

#[test]
fn finding_on_its_way_outlasts_another_check_until_it_has_arrived() {
    let finding = Finding {
        exposure: FoundExposure::NotExposed,
        safety_first: false,
    };
    let carrying = after(&[Act::TryExample, Act::CarryOver(finding)]);
    for act in [
        Act::Begin(Some(Choice::NumberOnIt)),
        Act::TryExample,
        Act::MissAnswers,
    ] {
        let carried = carrying.after_act(act).carried;
        let exposure = carried.map(|carried| carried.exposure);
        assert_eq!(exposure, Some(finding.exposure), "{act:?}");
    }
    for act in [Act::HandedOver, Act::Forget] {
        assert_eq!(carrying.after_act(act).carried, None, "{act:?}");
    }
}

#[test]
fn check_is_that_of_the_key_on_the_board_until_another_begins() {
    let finding = Finding {
        exposure: FoundExposure::NotExposed,
        safety_first: false,
    };
    let is_of_begun_key = |session: &Session| {
        let carried = session.after_act(Act::CarryOver(finding)).carried;
        carried.map(|carried| carried.is_of_begun_key)
    };
    let begun = after(&[Act::TryExample, Act::BeginFromBoard]);
    assert!(
        !begun.is_example && begun.furthest() == 0,
        "it starts afresh"
    );
    let going_on = begun.after_act(Act::Tick(Choice::LookAtMyKeys));
    let going_on = going_on.after_act(Act::Confirm(Question::Reason));
    assert_eq!(is_of_begun_key(&going_on), Some(true));
    for act in [
        Act::Begin(None),
        Act::Begin(Some(Choice::NumberOnIt)),
        Act::TryExample,
        Act::MissAnswers,
        Act::Forget,
    ] {
        assert_eq!(
            is_of_begun_key(&going_on.after_act(act)),
            Some(false),
            "{act:?}"
        );
    }
    // What is on its way was found by the check before.
    let carried = going_on.after_act(Act::CarryOver(finding));
    let carried = carried.after_act(Act::Begin(None)).carried;
    assert!(carried.is_some_and(|carried| carried.is_of_begun_key));
}
