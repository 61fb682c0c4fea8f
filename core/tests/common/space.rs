//! Every answer a question can have, and which of two is worse.

use self_check_core::answers::{Answers, QuestionSet};
use self_check_core::questions::{Choice, Question};

use Choice::*;

/// One whole answer to one question.
#[derive(Clone, Debug, PartialEq)]
pub enum Whole {
    NotSure,
    Ticked(Vec<Choice>),
}

/// Every whole answer to `question`: "not sure", each choice, and each set that goes together.
pub fn wholes(question: Question) -> Vec<Whole> {
    let row = question.row();
    let mut all = vec![Whole::NotSure];
    let sets = 1_u32 << row.choices.len();
    for set in 1..sets {
        let ticks: Vec<Choice> = (0..row.choices.len())
            .filter(|index| set & 1 << index != 0)
            .map(|index| row.choices[index])
            .collect();
        if Answers::none().give(question, &ticks).is_ok() {
            all.push(Whole::Ticked(ticks));
        }
    }
    all
}

/// `answers` with `whole` as the answer to `question`.
pub fn with(answers: Answers, question: Question, whole: &Whole) -> Answers {
    match whole {
        Whole::NotSure => answers.give_not_sure(question),
        Whole::Ticked(ticks) => answers.give(question, ticks).expect("goes together"),
    }
}

/// Calls `visit` with every combination of answers to `questions`; returns how many there were.
pub fn each(questions: &[Question], visit: &mut impl FnMut(Answers)) -> u64 {
    fn step(
        answers: Answers,
        questions: &[(Question, Vec<Whole>)],
        visit: &mut impl FnMut(Answers),
    ) -> u64 {
        let Some(((question, wholes), rest)) = questions.split_first() else {
            visit(answers);
            return 1;
        };
        wholes
            .iter()
            .map(|whole| step(with(answers, *question, whole), rest, visit))
            .sum()
    }
    let questions: Vec<_> = questions.iter().map(|&q| (q, wholes(q))).collect();
    step(Answers::none(), &questions, visit)
}

/// The questions of `set` but for `left_out`.
pub fn others(set: QuestionSet, left_out: Question) -> Vec<Question> {
    set.without(left_out).iter().collect()
}

/// Whether `worse` is a worse answer than `better` to the same question. Questions about the kind
/// of key, the door or who decides have no worse answer.
pub fn is_worse(question: Question, better: &Whole, worse: &Whole) -> bool {
    let (Whole::Ticked(better), Whole::Ticked(worse)) = (better, worse) else {
        return false;
    };
    match question {
        Question::MissingHow => in_order(
            &[MislaidIndoors, LostFarAway, LostNearHome, StolenOrTaken],
            better,
            worse,
        ),
        Question::ChangedSince => in_order(
            &[ChangedAndCounted, ChangedCopiesUnknown, NotChanged],
            better,
            worse,
        ),
        Question::Copies => better == &[AllAccountedFor] && better != worse,
        Question::NumberIs => better == &[SameOnOtherKeys] && better != worse,
        Question::Holders => adds_only(
            &[HelperNow, HadItAlone, ShortLetGuests, NoLongerShould],
            better,
            worse,
        ),
        Question::Kept => adds_only(
            &[CarriedInView, HomeInSight, InTheCar, HiddenOutside, KeySafe],
            better,
            worse,
        ),
        Question::Seen => adds_to(NoPicture, better, worse),
        Question::Link => adds_to(NoLink, better, worse),
        Question::NumberElsewhere => {
            adds_to(NumberNowhereElse, better, worse) && !worse.contains(&NumberOnPapersAtHome)
        }
        Question::Marking => adds_to(NothingMarked, better, worse),
        Question::Reason
        | Question::Opens
        | Question::WhoDecides
        | Question::KeyKind
        | Question::OtherWays => false,
    }
}

fn in_order(order: &[Choice], better: &[Choice], worse: &[Choice]) -> bool {
    let place = |ticks: &[Choice]| order.iter().position(|choice| ticks == [*choice]);
    place(better).is_some() && place(better) < place(worse)
}

fn adds_only(bad: &[Choice], better: &[Choice], worse: &[Choice]) -> bool {
    better.len() < worse.len()
        && better.iter().all(|choice| worse.contains(choice))
        && worse
            .iter()
            .all(|choice| better.contains(choice) || bad.contains(choice))
}

fn adds_to(none: Choice, better: &[Choice], worse: &[Choice]) -> bool {
    let starts_from: &[Choice] = if better == [none] { &[] } else { better };
    starts_from.len() < worse.len()
        && worse != [none]
        && starts_from.iter().all(|choice| worse.contains(choice))
}
