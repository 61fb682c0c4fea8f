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
