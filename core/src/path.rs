//! Which page comes when. The path is derived by replaying the answers from the first question, so
//! going back and changing an early answer cost nothing and lose nothing.

use crate::answers::{Answers, QuestionSet};
use crate::facts::opens_only_what_others_decide;
use crate::questions::{Choice, Question};

/// One page of the check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stop {
    /// One question.
    Ask(Question),
    /// What to do in the next hour, before any further question.
    NextHour,
    /// Safety first, before any level.
    Safety,
    /// The answers, each changeable.
    LookOver,
    /// The result.
    Result,
}

/// The pages of the check under the answers given so far.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Path {
    stops: Vec<Stop>,
    asked: QuestionSet,
    open: Option<usize>,
}

impl Path {
    /// Replays `answers` from the first question. A question not yet answered skips nothing, so
    /// the number of pages can only shrink as answers come in.
    pub fn replay(answers: &Answers) -> Self {
        let mut path = Self {
            stops: Vec::with_capacity(LONGEST),
            asked: QuestionSet::default(),
            open: None,
        };
        path.ask(Question::Reason, answers);
        let told_already = answers.has(Choice::WorriedAboutAPerson)
            || (is_missing_path(answers) && answers.has(Choice::UneasyPerson));
        if told_already {
            path.stops.push(Stop::Safety);
        }
        if is_missing_path(answers) {
            path.stops.push(Stop::NextHour);
        }
        for question in sequence(answers) {
            if !is_asked(question, answers, path.asked) {
                continue;
            }
            path.ask(question, answers);
            let told_now = question == Question::Holders && answers.has(Choice::UneasyPerson);
            if told_now && !told_already {
                path.stops.push(Stop::Safety);
            }
        }
        path.stops.extend([Stop::LookOver, Stop::Result]);
        path
    }

    /// The pages in order; the first asks for the reason, the last is the result.
    pub fn stops(&self) -> &[Stop] {
        &self.stops
    }

    /// The questions this path asks.
    pub fn asked(&self) -> QuestionSet {
        self.asked
    }

    /// Where the first question without an answer stands in [`Path::stops`], if one is left.
    pub fn first_open(&self) -> Option<usize> {
        self.open
    }

    /// Where `stop` stands in [`Path::stops`], if it is on the path.
    pub fn position(&self, stop: Stop) -> Option<usize> {
        self.stops.iter().position(|&other| other == stop)
    }

    /// Whether one answer more may take pages off this path, which was replayed from `answers`.
    pub fn may_shorten(&self, answers: &Answers) -> bool {
        let open = Question::ALL
            .into_iter()
            .filter(|&question| self.asked.contains(question) && !answers.is_answered(question));
        open.flat_map(|question| question.row().choices)
            .filter_map(|&choice| answers.give(choice.question(), &[choice]).ok())
            .any(|given| Self::replay(&given).stops.len() < self.stops.len())
    }

    /// The answers that count: those to questions this path asks.
    pub fn relevant(&self, answers: &Answers) -> Answers {
        answers.only(self.asked)
    }

    /// The relevant answers, with "not sure" wherever the path asks and no answer was given.
    pub fn completed(&self, answers: &Answers) -> Answers {
        Question::ALL
            .into_iter()
            .filter(|&question| self.asked.contains(question))
            .filter(|&question| !answers.is_answered(question))
            .fold(self.relevant(answers), Answers::give_not_sure)
    }

    fn ask(&mut self, question: Question, answers: &Answers) {
        if self.open.is_none() && !answers.is_answered(question) {
            self.open = Some(self.stops.len());
        }
        self.asked = self.asked.with(question);
        self.stops.push(Stop::Ask(question));
    }
}

/// Whether `earlier` is asked before `later` under the reason in `answers`.
pub fn comes_before(earlier: Question, later: Question, answers: &Answers) -> bool {
    let place = |question| sequence(answers).position(|other| other == question);
    place(earlier).is_some() && place(earlier) < place(later)
}

/// Whether the path is the short one for a missing key.
pub fn is_missing_path(answers: &Answers) -> bool {
    answers.has(Choice::KeyMissing)
}

/// The order after the reason on every path but the short one.
const ORDER: [Question; 13] = {
    use Question::*;
    [
        Opens,
        WhoDecides,
        ChangedSince,
        Holders,
        Copies,
        KeyKind,
        Marking,
        NumberIs,
        NumberElsewhere,
        Kept,
        Seen,
        Link,
        OtherWays,
    ]
};

/// The order after the reason on the short path of a missing key. Who has it is asked there only to
/// show, and let change, that somebody was named who makes the person uneasy.
const MISSING_ORDER: [Question; 9] = {
    use Question::*;
    [
        Holders,
        MissingHow,
        Opens,
        WhoDecides,
        Link,
        OtherWays,
        ChangedSince,
        Copies,
        KeyKind,
    ]
};

/// The order under the reason in `answers`: a direct start moves its own questions to the front.
fn sequence(answers: &Answers) -> impl Iterator<Item = Question> {
    let own: &[Question] = if answers.has(Choice::JustMovedIn) {
        &[Question::ChangedSince]
    } else if answers.has(Choice::SharedAPicture) {
        &[Question::Seen]
    } else if answers.has(Choice::SomeoneHadIt) {
        &[Question::Holders]
    } else if answers.has(Choice::NumberOnIt) {
        &[Question::Marking, Question::NumberIs]
    } else {
        &[]
    };
    let order: &[Question] = if is_missing_path(answers) {
        &MISSING_ORDER
    } else {
        &ORDER
    };
    let rest = order.iter().filter(|question| !own.contains(question));
    own.iter().chain(rest).copied()
}

/// The most pages a path has: every question of the usual order, the answers and the result. Where
/// safety has a page of its own, the count of copies is not asked, so that no number of pages, and
/// no address that counts them, tells that somebody is afraid.
const LONGEST: usize = 1 + ORDER.len() + 2;

/// Whether `question` is asked, given which questions were `asked` before it on the same path.
fn is_asked(question: Question, answers: &Answers, asked: QuestionSet) -> bool {
    let earlier = &answers.only(asked);
    let is_uneasy = answers.has(Choice::UneasyPerson);
    // Two pages come first where a feared person was named and the key is missing: a path that ended
    // here would have a length that no other has.
    let has_two_pages_first = is_uneasy && is_missing_path(earlier);
    // A vehicle's key belongs to a specialist, and a key to somebody else's place to whoever is
    // responsible there: with nothing else on the key there is nothing more to ask.
    if opens_only_what_others_decide(earlier) && !has_two_pages_first {
        return false;
    }
    match question {
        Question::Holders => !is_missing_path(earlier) || is_uneasy,
        Question::Copies => !earlier.has_any(&[Choice::WorriedAboutAPerson, Choice::UneasyPerson]),
        _ => is_asked_for_the_key(question, earlier),
    }
}

/// Whether `question` is asked for what the `earlier` answers say of key and lock.
fn is_asked_for_the_key(question: Question, earlier: &Answers) -> bool {
    use Choice::*;
    match question {
        Question::WhoDecides => might(
            earlier,
            Question::Opens,
            &[
                HouseDoor,
                FlatDoor,
                BlockEntrance,
                GarageShedOrGate,
                Mailbox,
            ],
        ),
        Question::ChangedSince => might(earlier, Question::Opens, &[HouseDoor, FlatDoor]),
        Question::Marking => !earlier.has(CardFobCodeOrPhone),
        Question::NumberIs => {
            (!earlier.is_answered(Question::Marking) && !earlier.has(CardFobCodeOrPhone))
                || earlier.has_any(&[OneToThreeDigits, FourOrMoreDigits, LettersWithDigits])
        }
        Question::NumberElsewhere => {
            earlier.has_any(&[Mailbox, PadlockOrCabinet])
                || (is_asked_for_the_key(Question::NumberIs, earlier)
                    && !earlier.has(SameOnOtherKeys))
        }
        Question::Seen => !earlier.has(CardFobCodeOrPhone),
        Question::Reason
        | Question::MissingHow
        | Question::Opens
        | Question::Copies
        | Question::Holders
        | Question::KeyKind
        | Question::Kept
        | Question::Link
        | Question::OtherWays => true,
    }
}

/// Whether `question` has one of `choices`, or may still have: not answered yet, or not sure.
fn might(answers: &Answers, question: Question, choices: &[Choice]) -> bool {
    answers.has_any(choices) || answers.is_not_sure(question) || !answers.is_answered(question)
}

#[cfg(test)]
mod tests;
