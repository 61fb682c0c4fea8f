//! Yes, no, and "cannot tell until this question is answered". Rules are built from these with
//! Kleene's three-valued logic, so that "not sure" is never read as safe and never as certain.

use crate::answers::Answers;
use crate::questions::{Choice, Question};

/// Whether a claim holds under the answers given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It does not hold.
    DoesNotApply,
    /// The answer to this question would decide.
    Unknown(Question),
    /// It holds.
    Applies,
}

impl Verdict {
    /// Both hold. One that does not hold decides; else the first unknown remains.
    ///
    /// ```
    /// use self_check_core::{questions::Question, verdict::Verdict::{Applies, DoesNotApply, Unknown}};
    /// assert_eq!(Unknown(Question::Link).and(DoesNotApply), DoesNotApply);
    /// assert_eq!(Unknown(Question::Link).and(Applies), Unknown(Question::Link));
    /// ```
    pub fn and(self, other: Self) -> Self {
        match (self, other) {
            (Self::DoesNotApply, _) | (_, Self::DoesNotApply) => Self::DoesNotApply,
            (Self::Unknown(question), _) | (_, Self::Unknown(question)) => Self::Unknown(question),
            (Self::Applies, Self::Applies) => Self::Applies,
        }
    }

    /// At least one holds.
    pub fn or(self, other: Self) -> Self {
        self.negated().and(other.negated()).negated()
    }

    /// The contrary.
    pub fn negated(self) -> Self {
        match self {
            Self::DoesNotApply => Self::Applies,
            Self::Unknown(question) => Self::Unknown(question),
            Self::Applies => Self::DoesNotApply,
        }
    }

    /// This one, and not that one.
    pub fn and_not(self, other: Self) -> Self {
        self.and(other.negated())
    }

    /// Whether it holds for certain.
    pub fn is_certain(self) -> bool {
        self == Self::Applies
    }
}

/// Whether any of `choices`, all of one question, is ticked; unknown where that question's answer
/// is "not sure". A question that the path does not ask holds nothing.
pub fn ticked(answers: &Answers, choices: &[Choice]) -> Verdict {
    if answers.has_any(choices) {
        return Verdict::Applies;
    }
    choices
        .iter()
        .map(|choice| choice.question())
        .find(|&question| answers.is_not_sure(question))
        .map_or(Verdict::DoesNotApply, Verdict::Unknown)
}
