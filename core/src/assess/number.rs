//! What the number on the key is, as far as was told.

use crate::answers::Answers;
use crate::facts::carries_a_code;
use crate::questions::Choice;

/// Whether the number on the key is enough for a copy.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Number {
    /// There is none, or nobody knows what it is.
    NotKnown,
    /// It stands on keys to other doors too: it names the blank, and nothing can be cut from it.
    NamesTheBlank,
    /// It stands only on the keys to this lock: most likely the code, and enough for a copy.
    IsTheCode,
}

impl Number {
    pub(super) fn of(answers: &Answers) -> Self {
        if carries_a_code(answers).is_certain() {
            Self::IsTheCode
        } else if answers.has(Choice::SameOnOtherKeys) {
            Self::NamesTheBlank
        } else {
            Self::NotKnown
        }
    }
}
