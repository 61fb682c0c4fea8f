//! What the number on the key is, as far as was told.

use crate::answers::Answers;
use crate::facts::{carries_a_code, is_a_card};
use crate::questions::{Choice, Question};

/// Whether the number on the key is enough for a copy.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Number {
    /// There is none that a key could be cut from, or nobody knows of one.
    NotKnown,
    /// A number stands on the key, and what it is has not been found out.
    MayBeTheCode,
    /// It stands on keys to other doors too: it names the blank, and nothing can be cut from it.
    NamesTheBlank,
    /// It stands only on the keys to this lock: most likely the code, and enough for a copy.
    IsTheCode,
}

const NUMBERS: [Choice; 3] = [
    Choice::OneToThreeDigits,
    Choice::FourOrMoreDigits,
    Choice::LettersWithDigits,
];

impl Number {
    pub(super) fn of(answers: &Answers) -> Self {
        if is_a_card(answers).is_certain() {
            Self::NotKnown
        } else if carries_a_code(answers).is_certain() {
            Self::IsTheCode
        } else if answers.has(Choice::SameOnOtherKeys) {
            Self::NamesTheBlank
        } else if answers.has_any(&NUMBERS) && answers.is_not_sure(Question::NumberIs) {
            Self::MayBeTheCode
        } else {
            Self::NotKnown
        }
    }
}
