//! Which page comes when. The path is derived by replaying the answers from the first question, so
//! going back and changing an early answer cost nothing and lose nothing.

use crate::answers::{Answers, QuestionSet};
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
            stops: Vec::with_capacity(18),
            asked: QuestionSet::default(),
            open: None,
        };
        path.ask(Question::Reason, answers);
        if answers.has(Choice::KeyMissing) {
            path.stops.push(Stop::NextHour);
        }
        if answers.has(Choice::WorriedAboutAPerson) {
            path.stops.push(Stop::Safety);
        }
        for question in sequence(answers) {
            if is_asked(question, &answers.only(path.asked)) {
                path.ask(question, answers);
                if question == Question::Holders
                    && answers.has(Choice::UneasyPerson)
                    && !answers.has(Choice::WorriedAboutAPerson)
                {
                    path.stops.push(Stop::Safety);
                }
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
        Copies,
        Holders,
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

/// The order after the reason on the short path of a missing key.
const MISSING_ORDER: [Question; 8] = {
    use Question::*;
    [
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

/// Whether `question` is asked, given the `earlier` answers of the same path.
fn is_asked(question: Question, earlier: &Answers) -> bool {
    use Choice::*;
    if ends_after_opens(earlier) {
        return false;
    }
    match question {
        Question::WhoDecides => might(
            earlier,
            Question::Opens,
            &[HouseDoor, FlatDoor, BlockEntrance, Mailbox],
        ),
        Question::ChangedSince => might(earlier, Question::Opens, &[HouseDoor, FlatDoor]),
        Question::NumberIs => {
            !earlier.is_answered(Question::Marking)
                || earlier.has_any(&[OneToThreeDigits, FourOrMoreDigits, LettersWithDigits])
        }
        Question::NumberElsewhere => {
            earlier.has_any(&[Mailbox, PadlockOrCabinet])
                || (is_asked(Question::NumberIs, earlier) && !earlier.has(SameOnOtherKeys))
        }
        Question::Seen => !earlier.has(CardFobCodeOrPhone),
        Question::Reason
        | Question::MissingHow
        | Question::Opens
        | Question::Copies
        | Question::Holders
        | Question::KeyKind
        | Question::Marking
        | Question::Kept
        | Question::Link
        | Question::OtherWays => true,
    }
}

/// Whether `question` has one of `choices`, or may still have: not answered yet, or not sure.
fn might(answers: &Answers, question: Question, choices: &[Choice]) -> bool {
    answers.has_any(choices) || answers.is_not_sure(question) || !answers.is_answered(question)
}

/// A vehicle's key belongs to a specialist, and a key to somebody else's place to whoever is
/// responsible there: with nothing else on the key there is nothing more to ask.
fn ends_after_opens(answers: &Answers) -> bool {
    let elsewhere = [Choice::Vehicle, Choice::WorkOrAnothersHome];
    answers.has_any(&elsewhere)
        && answers
            .chosen(Question::Opens)
            .all(|choice| elsewhere.contains(&choice))
}

#[cfg(test)]
mod tests;
