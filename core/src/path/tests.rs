use super::*;

fn given(ticks: &[Choice]) -> Answers {
    Question::ALL
        .into_iter()
        .fold(Answers::none(), |answers, question| {
            let own: Vec<Choice> = ticks
                .iter()
                .copied()
                .filter(|choice| choice.question() == question)
                .collect();
            answers.give(question, &own).unwrap_or(answers)
        })
}

fn questions(path: &Path) -> Vec<Question> {
    path.stops()
        .iter()
        .filter_map(|stop| match stop {
            Stop::Ask(question) => Some(*question),
            _ => None,
        })
        .collect()
}

#[test]
fn replay_without_answers_opens_at_the_reason() {
    let path = Path::replay(&Answers::none());
    assert_eq!(path.stops()[0], Stop::Ask(Question::Reason));
    assert_eq!(path.first_open(), Some(0));
    assert_eq!(path.stops().last(), Some(&Stop::Result));
}

#[test]
fn replay_missing_key_shows_the_next_hour_before_any_further_question() {
    use Question::*;
    let path = Path::replay(&given(&[Choice::KeyMissing]));
    assert_eq!(path.stops()[1], Stop::NextHour);
    assert_eq!(
        questions(&path),
        [
            Reason,
            MissingHow,
            Opens,
            WhoDecides,
            Link,
            OtherWays,
            ChangedSince,
            Copies,
            KeyKind
        ]
    );
}

#[test]
fn replay_worried_shows_safety_first_and_an_uneasy_holder_at_once() {
    let worried = Path::replay(&given(&[Choice::WorriedAboutAPerson]));
    assert_eq!(worried.stops()[1], Stop::Safety);

    let uneasy = Path::replay(&given(&[Choice::SomeoneHadIt, Choice::UneasyPerson]));
    assert_eq!(
        uneasy.stops()[1..3],
        [Stop::Ask(Question::Holders), Stop::Safety]
    );
}

#[test]
fn replay_direct_starts_move_their_own_question_first() {
    for (reason, own) in [
        (Choice::JustMovedIn, Question::ChangedSince),
        (Choice::SharedAPicture, Question::Seen),
        (Choice::SomeoneHadIt, Question::Holders),
        (Choice::NumberOnIt, Question::Marking),
    ] {
        assert_eq!(Path::replay(&given(&[reason])).stops()[1], Stop::Ask(own));
    }
}

#[test]
fn replay_number_questions_follow_a_number_alone() {
    let with = Path::replay(&given(&[Choice::LookAtMyKeys, Choice::FourOrMoreDigits]));
    assert!(with.asked().contains(Question::NumberIs));
    let without = Path::replay(&given(&[
        Choice::LookAtMyKeys,
        Choice::HouseDoor,
        Choice::NothingMarked,
    ]));
    assert!(!without.asked().contains(Question::NumberIs));
    assert!(!without.asked().contains(Question::NumberElsewhere));
}

#[test]
fn replay_blank_number_asks_where_else_it_stands_only_for_a_mailbox_or_padlock() {
    let blank = [
        Choice::LookAtMyKeys,
        Choice::FourOrMoreDigits,
        Choice::SameOnOtherKeys,
    ];
    let house = given(&[&blank[..], &[Choice::HouseDoor]].concat());
    assert!(
        !Path::replay(&house)
            .asked()
            .contains(Question::NumberElsewhere)
    );
    let mailbox = given(&[&blank[..], &[Choice::Mailbox]].concat());
    assert!(
        Path::replay(&mailbox)
            .asked()
            .contains(Question::NumberElsewhere)
    );
}

#[test]
fn replay_vehicle_alone_ends_and_with_a_house_door_goes_on() {
    let alone = Path::replay(&given(&[Choice::LookAtMyKeys, Choice::Vehicle]));
    assert_eq!(questions(&alone), [Question::Reason, Question::Opens]);
    let both = Path::replay(&given(&[
        Choice::LookAtMyKeys,
        Choice::Vehicle,
        Choice::HouseDoor,
    ]));
    assert!(both.asked().contains(Question::Holders));
}

#[test]
fn relevant_answers_of_a_branch_left_behind_are_kept_and_ignored() {
    let missing = given(&[Choice::KeyMissing, Choice::StolenOrTaken]);
    let looked = missing
        .give(Question::Reason, &[Choice::LookAtMyKeys])
        .unwrap_or(missing);
    assert!(
        !Path::replay(&looked)
            .relevant(&looked)
            .has(Choice::StolenOrTaken)
    );
    let back = looked
        .give(Question::Reason, &[Choice::KeyMissing])
        .unwrap_or(looked);
    assert!(
        Path::replay(&back)
            .relevant(&back)
            .has(Choice::StolenOrTaken)
    );
}

#[test]
fn a_path_may_shorten_until_every_answer_that_skips_something_is_in() {
    use Choice::*;
    let shortens = |ticks: &[Choice]| {
        let answers = given(ticks);
        Path::replay(&answers).may_shorten(&answers)
    };
    assert!(shortens(&[]));
    assert!(shortens(&[LookAtMyKeys, HouseDoor]), "no number on it");
    assert!(
        shortens(&[LookAtMyKeys, HouseDoor, NothingMarked]),
        "no card"
    );
    assert!(!shortens(&[
        LookAtMyKeys,
        HouseDoor,
        CutsOnOneEdge,
        NothingMarked
    ]));
}

#[test]
fn replay_keeps_to_safety_when_a_feared_person_was_named_before_the_key_went_missing() {
    use Choice::*;
    let answers = given(&[KeyMissing, NotReturned, UneasyPerson]);
    let path = Path::replay(&answers);
    assert_eq!(path.stops()[1..3], [Stop::Safety, Stop::NextHour]);
    assert!(path.relevant(&answers).has(UneasyPerson));
    // It is shown among the answers, and can be taken back there.
    let taken_back = answers
        .give(Question::Holders, &[Household])
        .unwrap_or(answers);
    let path = Path::replay(&taken_back);
    assert!(!path.stops().contains(&Stop::Safety) && !path.asked().contains(Question::Holders));
}

/// Addresses and titles count pages. If some number of pages were found on the safety branch alone,
/// whoever reads the history would know.
#[test]
fn replay_has_no_number_of_pages_that_only_the_safety_branch_has() {
    use std::collections::BTreeSet;
    let wholes = |question: Question| question.row().choices.iter().copied().map(Some);
    let (mut with, mut without) = (BTreeSet::new(), BTreeSet::new());
    for reason in wholes(Question::Reason).flatten() {
        for opens in wholes(Question::Opens).chain([None]) {
            for kind in [Choice::CutsOnOneEdge, Choice::CardFobCodeOrPhone] {
                for marking in wholes(Question::Marking).chain([None]) {
                    for number in wholes(Question::NumberIs).chain([None]) {
                        for holder in [Choice::Household, Choice::UneasyPerson] {
                            let ticks: Vec<Choice> = [
                                Some(reason),
                                opens,
                                Some(kind),
                                marking,
                                number,
                                Some(holder),
                            ]
                            .into_iter()
                            .flatten()
                            .collect();
                            let path = Path::replay(&given(&ticks));
                            let lengths = if path.stops().contains(&Stop::Safety) {
                                &mut with
                            } else {
                                &mut without
                            };
                            lengths.insert(path.stops().len());
                        }
                    }
                }
            }
        }
    }
    assert!(
        with.len() > 3 && with.is_subset(&without),
        "{with:?} {without:?}"
    );
    assert!(without.iter().all(|&length| length <= LONGEST));
}
