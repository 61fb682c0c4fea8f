//! The answers given so far. They are small, copyable and hold nothing but ticks.

use core::fmt;

use crate::questions::{Choice, Question};

/// Every tick given so far, on any branch. Nothing is lost when a branch is left: answers that the
/// present path does not ask for are kept and ignored, see [`crate::path::Path::relevant`].
///
/// ```
/// use self_check_core::{answers::Answers, questions::{Choice, Question}};
/// let answers = Answers::none()
///     .give(Question::Reason, &[Choice::LookAtMyKeys])?
///     .give_not_sure(Question::Copies);
/// assert!(answers.has(Choice::LookAtMyKeys));
/// assert!(answers.is_not_sure(Question::Copies));
/// assert!(!answers.is_answered(Question::Opens));
/// # Ok::<(), self_check_core::answers::AnswerError>(())
/// ```
#[derive(Clone, Copy, Default, PartialEq, Eq, Hash)]
pub struct Answers {
    ticked: u128,
    not_sure: u16,
}

/// Why an answer is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AnswerError {
    /// Nothing was chosen.
    NothingChosen,
    /// A choice belongs to another question.
    ChoiceOfAnotherQuestion(Choice),
    /// Several choices where the question takes one, or a choice that stands alone beside others.
    DoNotGoTogether(Choice),
}

/// A set of questions.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct QuestionSet(u16);

impl Answers {
    /// No answer yet.
    pub const fn none() -> Self {
        Self {
            ticked: 0,
            not_sure: 0,
        }
    }

    /// The answers with `choices` as the whole answer to `question`.
    pub fn give(self, question: Question, choices: &[Choice]) -> Result<Self, AnswerError> {
        if choices.is_empty() {
            return Err(AnswerError::NothingChosen);
        }
        let mut given = self.without(question);
        for &choice in choices {
            if choice.question() != question {
                return Err(AnswerError::ChoiceOfAnotherQuestion(choice));
            }
            if choice.stands_alone() && choices.iter().any(|&other| other != choice) {
                return Err(AnswerError::DoNotGoTogether(choice));
            }
            given.ticked |= bit(choice);
        }
        Ok(given)
    }

    /// The answers with "not sure" as the whole answer to `question`.
    pub fn give_not_sure(self, question: Question) -> Self {
        let mut given = self.without(question);
        given.not_sure |= 1 << question as u16;
        given
    }

    /// The answers with no answer to `question`.
    pub fn without(self, question: Question) -> Self {
        Self {
            ticked: self.ticked & !CHOICES_OF[question as usize],
            not_sure: self.not_sure & !(1 << question as u16),
        }
    }

    /// The answers to `questions` alone.
    pub fn only(self, questions: QuestionSet) -> Self {
        Self {
            ticked: self.ticked & questions.choice_bits(),
            not_sure: self.not_sure & questions.0,
        }
    }

    /// Whether `choice` is ticked.
    pub const fn has(self, choice: Choice) -> bool {
        self.ticked & bit(choice) != 0
    }

    /// Whether any of `choices` is ticked.
    pub fn has_any(self, choices: &[Choice]) -> bool {
        choices.iter().any(|&choice| self.has(choice))
    }

    /// Whether the answer to `question` is "not sure".
    pub const fn is_not_sure(self, question: Question) -> bool {
        self.not_sure & (1 << question as u16) != 0
    }

    /// Whether `question` has an answer, "not sure" included.
    pub fn is_answered(self, question: Question) -> bool {
        self.is_not_sure(question) || self.ticked & CHOICES_OF[question as usize] != 0
    }

    /// The choices ticked for `question`, in the order in which the page shows them.
    pub fn chosen(self, question: Question) -> impl Iterator<Item = Choice> {
        let row = question.row();
        row.choices
            .iter()
            .copied()
            .filter(move |&choice| self.has(choice))
    }
}

impl QuestionSet {
    /// Every question.
    pub const fn all() -> Self {
        Self((1 << Question::ALL.len()) - 1)
    }

    /// The questions in the set, in the order of their ids.
    pub fn iter(self) -> impl Iterator<Item = Question> {
        Question::ALL
            .into_iter()
            .filter(move |&question| self.contains(question))
    }

    /// The questions listed.
    pub const fn of(questions: &[Question]) -> Self {
        let mut set = 0;
        let mut index = 0;
        while index < questions.len() {
            set |= 1 << questions[index] as u16;
            index += 1;
        }
        Self(set)
    }

    /// The set and `question`.
    pub const fn with(self, question: Question) -> Self {
        Self(self.0 | 1 << question as u16)
    }

    /// The set without `question`.
    pub const fn without(self, question: Question) -> Self {
        Self(self.0 & !(1 << question as u16))
    }

    /// Whether `question` is in the set.
    pub const fn contains(self, question: Question) -> bool {
        self.0 & (1 << question as u16) != 0
    }

    fn choice_bits(self) -> u128 {
        let mut bits = 0;
        let mut rest = self.0;
        while rest != 0 {
            bits |= CHOICES_OF[rest.trailing_zeros() as usize];
            rest &= rest - 1;
        }
        bits
    }
}

impl fmt::Debug for Answers {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut list = f.debug_list();
        for question in Question::ALL {
            list.entries(self.chosen(question));
            if self.is_not_sure(question) {
                list.entry(&format_args!("not sure: {question:?}"));
            }
        }
        list.finish()
    }
}

impl fmt::Display for AnswerError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NothingChosen => f.write_str("nothing chosen"),
            Self::ChoiceOfAnotherQuestion(choice) => write!(f, "{choice:?}: of another question"),
            Self::DoNotGoTogether(choice) => write!(f, "{choice:?}: stands alone"),
        }
    }
}

impl core::error::Error for AnswerError {}

const fn bit(choice: Choice) -> u128 {
    1 << choice as u8
}

/// The bits of each question's choices, filled when the crate is compiled.
const CHOICES_OF: [u128; Question::ALL.len()] = {
    let mut bits = [0; Question::ALL.len()];
    let mut q = 0;
    while q < bits.len() {
        let choices = crate::questions::QUESTIONS[q].choices;
        let mut c = 0;
        while c < choices.len() {
            bits[q] |= bit(choices[c]);
            c += 1;
        }
        q += 1;
    }
    bits
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn give_choice_of_another_question_is_refused() {
        assert_eq!(
            Answers::none().give(Question::Copies, &[Choice::HouseDoor]),
            Err(AnswerError::ChoiceOfAnotherQuestion(Choice::HouseDoor))
        );
    }

    #[test]
    fn give_nothing_marked_beside_digits_is_refused() {
        let both = [Choice::FourOrMoreDigits, Choice::NothingMarked];
        assert_eq!(
            Answers::none().give(Question::Marking, &both),
            Err(AnswerError::DoNotGoTogether(Choice::NothingMarked))
        );
    }

    #[test]
    fn give_two_choices_where_one_is_taken_is_refused() {
        let both = [Choice::OwnIt, Choice::LetItOut];
        assert!(Answers::none().give(Question::WhoDecides, &both).is_err());
    }

    #[test]
    fn give_again_replaces_the_answer_of_that_question_alone() -> Result<(), AnswerError> {
        let answers = Answers::none()
            .give(Question::Reason, &[Choice::NumberOnIt])?
            .give(Question::Opens, &[Choice::HouseDoor, Choice::Mailbox])?
            .give(Question::Opens, &[Choice::FlatDoor])?;
        assert!(answers.has(Choice::NumberOnIt) && answers.has(Choice::FlatDoor));
        assert!(!answers.has_any(&[Choice::HouseDoor, Choice::Mailbox]));
        Ok(())
    }

    #[test]
    fn not_sure_replaces_ticks() -> Result<(), AnswerError> {
        let answers = Answers::none()
            .give(Question::Opens, &[Choice::HouseDoor])?
            .give_not_sure(Question::Opens);
        assert!(answers.is_not_sure(Question::Opens) && !answers.has(Choice::HouseDoor));
        Ok(())
    }
}
