//! What the person has ticked, and where that leads. One pure reducer; it lives in memory alone.

use std::rc::Rc;

use self_check_core::answers::Answers;
use self_check_core::assess::{Positions, assess};
use self_check_core::household::Finding;
use self_check_core::path::{Path, Stop};
use self_check_core::questions::{Choice, Question};
use yew::prelude::*;

use crate::brought::{Brought, Carried};
use crate::example;

/// The whole state of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Session {
    /// What was confirmed with "Continue". The path and the result follow from it alone.
    pub answers: Answers,
    /// What the pages show as ticked: the answers, and ticks that wait for "Continue".
    pub ticks: Answers,
    /// Whether the answers are those of the invented household.
    pub is_example: bool,
    /// Whether the level was asked for where it is hidden at first.
    pub level_asked_for: bool,
    /// How many cut positions were counted with the ruler.
    pub positions: Option<Positions>,
    /// How wide a bank card is on this screen, in pixels of the page; kept for the session alone.
    pub card_width: Option<u16>,
    /// Whether a page was opened whose answers are not there any more.
    pub answers_gone: bool,
    /// What a check found of one's own key, on its way to keys and doors.
    pub carried: Option<Carried>,
    /// Whether this check was begun from a key on the board.
    pub is_of_begun_key: bool,
    /// Whether a result told of a person who makes somebody uneasy. Keys and doors have to know for as
    /// long as the page is open, also when the answers are forgotten.
    pub safety_first: bool,
}

/// What can happen to the session.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// A check of one's own begins, with the reason where the start page already told it.
    Begin(Option<Choice>),
    /// A check of a key on the board begins: afresh, since answers about another key would be wrong for it.
    BeginFromBoard,
    /// The invented household's answers are filled in.
    TryExample,
    /// A choice is pressed.
    Tick(Choice),
    /// "Not sure" is pressed.
    TickNotSure(Question),
    /// The ticks of a question become its answer.
    Confirm(Question),
    /// The level is asked for.
    AskForLevel,
    /// The ruler's scale is set by the width of a card.
    SetCardWidth(u16),
    /// The cut positions are counted, or the count is taken back.
    CountPositions(Option<Positions>),
    /// A page was opened whose answers are not there.
    MissAnswers,
    /// What the check found goes over to keys and doors; of a feared person only that safety comes first.
    CarryOver(Finding),
    /// It has arrived there.
    HandedOver,
    /// Everything is forgotten.
    Forget,
}

/// The session and the way to act on it.
pub type SessionHandle = UseReducerHandle<Session>;

impl Session {
    /// The pages of the check as the answers stand.
    pub fn path(&self) -> Path {
        Path::replay(&self.answers)
    }

    /// The answers that count as they stand: those to questions the path asks.
    pub fn relevant(&self) -> Answers {
        self.path().relevant(&self.answers)
    }

    /// The furthest page that can be shown: the first question without an answer, else the result.
    pub fn furthest(&self) -> usize {
        let path = self.path();
        path.first_open().unwrap_or(path.stops().len() - 1)
    }

    /// Whether the answers, or ticks not yet confirmed, tell of a person who makes somebody uneasy.
    pub fn is_about_a_feared_person(&self) -> bool {
        let tells = |answers| Path::replay(answers).position(Stop::Safety).is_some();
        tells(&self.answers) || tells(&self.ticks)
    }

    /// What goes over when the reader comes to keys and doors. Answers of one's own that tell of a
    /// feared person count from the moment they are given.
    pub fn brought(&self) -> Brought {
        let is_feared = !self.is_example && assess(&self.answers, None).safety_first;
        Brought {
            found: self.carried,
            safety_first: self.safety_first || is_feared,
        }
    }

    /// The session with the ticks of `question` taken over as its answer.
    pub fn confirmed(&self, question: Question) -> Self {
        Self {
            answers: copied(self.answers, self.ticks, question),
            answers_gone: false,
            ..*self
        }
    }

    /// Where "Continue" leads from page `n`. While answers are missing, to the next page; once all
    /// are there, a changed answer leads back to the answers, by way of any page that must be read
    /// first and of any question that the change has opened.
    pub fn after(&self, n: usize) -> usize {
        let path = self.path();
        let next = n + 1;
        let Some(look_over) = path.position(Stop::LookOver) else {
            return next;
        };
        if n >= look_over || matches!(path.stops()[next], Stop::NextHour | Stop::Safety) {
            return next;
        }
        match path.first_open() {
            Some(open) if self.was_complete_before(&path, open) => open,
            Some(_) => next,
            None => look_over,
        }
    }

    /// Whether questions after `open` were answered already, so that `open` is a gap in a check
    /// that had been gone through, not its growing end.
    fn was_complete_before(&self, path: &Path, open: usize) -> bool {
        path.stops()[open + 1..].iter().any(|stop| match stop {
            Stop::Ask(question) => self.answers.is_answered(*question),
            _ => false,
        })
    }
}

impl Reducible for Session {
    type Action = Act;

    fn reduce(self: Rc<Self>, act: Act) -> Rc<Self> {
        Rc::new(self.after_act(act))
    }
}

impl Session {
    fn after_act(&self, act: Act) -> Self {
        match act {
            Act::Begin(reason) => self.begun(reason),
            Act::BeginFromBoard => Self {
                is_of_begun_key: true,
                ..self.forgotten()
            },
            Act::TryExample => Self {
                is_example: true,
                ..self.holding(example::answers())
            },
            Act::Tick(choice) => Self {
                ticks: pressed(self.ticks, choice),
                ..*self
            },
            Act::TickNotSure(question) => Self {
                ticks: not_sure_pressed(self.ticks, question),
                ..*self
            },
            Act::Confirm(question) => self.confirmed(question),
            Act::AskForLevel => Self {
                level_asked_for: true,
                ..*self
            },
            Act::SetCardWidth(width) => Self {
                card_width: Some(width),
                ..*self
            },
            Act::CountPositions(positions) => Self { positions, ..*self },
            Act::MissAnswers => Self {
                answers_gone: true,
                carried: self.carried,
                ..self.forgotten()
            },
            Act::CarryOver(finding) if finding.safety_first => Self {
                safety_first: true,
                ..*self
            },
            Act::CarryOver(finding) => Self {
                carried: Some(Carried {
                    exposure: finding.exposure,
                    is_of_begun_key: self.is_of_begun_key,
                }),
                ..*self
            },
            Act::HandedOver => Self {
                carried: None,
                ..*self
            },
            Act::Forget => self.forgotten(),
        }
    }

    fn begun(&self, reason: Option<Choice>) -> Self {
        let own = if self.is_example {
            Answers::none()
        } else {
            self.answers
        };
        let answers = reason.map_or(own, |choice| pressed(own.without(Question::Reason), choice));
        self.holding(answers)
    }

    fn holding(&self, answers: Answers) -> Self {
        Self {
            answers,
            ticks: answers,
            // What an earlier check found may still be on its way.
            carried: self.carried,
            ..self.forgotten()
        }
    }

    /// Nothing is left but that safety comes first.
    fn forgotten(&self) -> Self {
        Self {
            safety_first: self.safety_first,
            ..Self::default()
        }
    }
}

/// The ticks after `choice` is pressed: set or, where several go together, taken off again.
fn pressed(ticks: Answers, choice: Choice) -> Answers {
    let question = choice.question();
    let choices: Vec<Choice> = if choice.stands_alone() && !question.row().takes_several {
        vec![choice]
    } else if ticks.has(choice) {
        ticks
            .chosen(question)
            .filter(|&other| other != choice)
            .collect()
    } else if choice.stands_alone() {
        vec![choice]
    } else {
        ticks
            .chosen(question)
            .filter(|other| !other.stands_alone())
            .chain([choice])
            .collect()
    };
    ticks
        .give(question, &choices)
        .unwrap_or(ticks.without(question))
}

fn not_sure_pressed(ticks: Answers, question: Question) -> Answers {
    if question.row().takes_several && ticks.is_not_sure(question) {
        ticks.without(question)
    } else {
        ticks.give_not_sure(question)
    }
}

/// `answers` with the answer to `question` taken over from `ticks`.
fn copied(answers: Answers, ticks: Answers, question: Question) -> Answers {
    if ticks.is_not_sure(question) {
        return answers.give_not_sure(question);
    }
    let choices: Vec<Choice> = ticks.chosen(question).collect();
    answers
        .give(question, &choices)
        .unwrap_or(answers.without(question))
}

#[cfg(test)]
mod tests;
