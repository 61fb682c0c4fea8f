//! Keys and doors as the pages hold them: the household with its undo and redo, what was chosen for
//! the plan, and what passes between a check and a key. One pure reducer, apart from the check's
//! own session; it lives in memory alone.

mod difference;
mod overview;
#[cfg(test)]
mod tests;

use std::rc::Rc;

use self_check_core::household::{
    BriefChoices, Change, Choices, Finding, History, Household, Key, KeyId, Refusal, demonstration,
};
use yew::prelude::*;

pub use difference::{Did, Part, parts};
pub use overview::{Asked, Lost, Overview};

/// Everything the pages of keys and doors know.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HouseholdState {
    history: History,
    /// Whether this is the invented household.
    pub is_example: bool,
    /// What was chosen for the plan.
    pub choices: Choices,
    /// What was ticked in for the page that the locksmith is given.
    pub brief: BriefChoices,
    /// What happened last, to be said.
    pub news: News,
    /// A check's finding that waits to be told which key it is about.
    pub waiting: Option<Finding>,
    /// The key whose check was begun from here: of that one check alone.
    pub checking: Option<KeyId>,
    /// What was loaded in the place of a home of one's own: a step of undo or redo by way of it leads
    /// from one home to another.
    loaded: Vec<Household>,
    /// How many homes there have been: ids of one are nothing in another.
    pub homes: usize,
    safety_first: bool,
}

/// What happened last. The count tells one piece of news from the same news again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct News {
    /// What it is.
    pub told: Option<Told>,
    /// How many pieces of news there have been.
    pub count: usize,
}

/// A piece of news.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Told {
    /// The change was made.
    Changed,
    /// What was saved is as it was before.
    Unchanged,
    /// The plan is for the way of sharing keys that was just chosen.
    Planned,
    /// One step back.
    Undone,
    /// One step forward again.
    Redone,
    /// Everything is forgotten.
    Emptied,
    /// A plan was carried out.
    CarriedOut,
    /// A check's finding was taken over: it is said of this key.
    TakenOver(KeyId),
    /// A check's finding was let go.
    LetGo,
    /// What was kept is on the board.
    Loaded(LoadedFrom),
    /// The change was refused; everything is as it was.
    Refused(Refusal),
}

/// Where a household was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadedFrom {
    /// In a file.
    File,
    /// On this device.
    Device,
}

/// What can happen to keys and doors.
#[derive(Clone, Debug, PartialEq)]
pub enum HouseholdAct {
    /// Changes that are one step: all are made, or none.
    Make(Vec<Change>),
    /// The household becomes another in one step, as after a quick start.
    Become(Household),
    /// It becomes what it is once a plan is carried out.
    CarryOut(Household),
    /// What was told last, by its count, is said: the page that said it is left.
    Heard(usize),
    /// A change that was tried elsewhere is refused.
    Refuse(Refusal),
    /// The invented household is filled in.
    TryExample,
    /// A kept household takes the present one's place, in one step. Where there was nothing yet, or
    /// the example, there is nothing to go back to.
    Load(Household, LoadedFrom),
    /// One step back.
    Undo,
    /// One undone step forward.
    Redo,
    /// Everything is forgotten, and what could be undone too.
    Empty,
    /// Something is chosen for the plan.
    Choose(Choices),
    /// Something is ticked for the locksmith's page.
    ChooseBrief(BriefChoices),
    /// A check of this key begins.
    BeginCheck(KeyId),
    /// A check's finding comes in: for the key whose check was begun, or to wait for its key.
    TakeOver {
        /// What was found.
        finding: Finding,
        /// Whether it comes from the check that was begun here last.
        is_of_begun_key: bool,
    },
    /// The waiting finding is that of this key, or of a new one.
    Assign(Option<KeyId>),
    /// The waiting finding is let go.
    LetGo,
    /// A check told of a person who makes somebody uneasy.
    PutSafetyFirst,
}

/// Keys and doors, and the way to act on them.
pub type HouseholdHandle = UseReducerHandle<HouseholdState>;

impl HouseholdState {
    /// Nothing yet, for a reader of whom a check may have told that safety comes first.
    pub fn of_visitor(safety_first: bool) -> Self {
        Self {
            safety_first,
            ..Self::default()
        }
    }

    /// The household as it is now.
    pub fn household(&self) -> &Household {
        self.history.present()
    }

    /// Whether there is a step to undo.
    pub fn can_undo(&self) -> bool {
        self.history.steps_back() > 0
    }

    /// Whether there is an undone step.
    pub fn can_redo(&self) -> bool {
        self.history.steps_forward() > 0
    }

    /// What the step did that undo takes back.
    pub fn undoes(&self) -> Option<Did> {
        difference::did(self.history.before()?, self.household())
    }

    /// What the step does that redo makes again.
    pub fn redoes(&self) -> Option<Did> {
        difference::did(self.household(), self.history.after()?)
    }

    /// Whether safety comes first: then nothing offers to keep, print or copy, or chases copies.
    pub fn puts_safety_first(&self) -> bool {
        self.safety_first || self.household().puts_safety_first()
    }

    /// What is chosen for the plan, and whether safety comes first without a key's own check having said so.
    pub fn choices_to_plan(&self) -> Choices {
        Choices {
            safety_first: self.safety_first,
            ..self.choices
        }
    }

    /// The state after `act`.
    fn after(&self, act: HouseholdAct) -> Self {
        match act {
            HouseholdAct::Make(changes) => match self.household().with_all(changes) {
                Ok(next) => self.stepped(next, Told::Changed),
                Err(refusal) => self.telling(Told::Refused(refusal)),
            },
            HouseholdAct::Become(next) => self.of_another_home().stepped(next, Told::Changed),
            HouseholdAct::CarryOut(next) => self.stepped(next, Told::CarriedOut),
            HouseholdAct::Refuse(refusal) => self.telling(Told::Refused(refusal)),
            HouseholdAct::TryExample => Self {
                history: History::of(demonstration::household()),
                is_example: true,
                ..self.unmarked()
            },
            HouseholdAct::Load(household, from) if self.is_example || self.is_untouched() => Self {
                history: History::of(household),
                waiting: self.waiting,
                ..self.unmarked().telling(Told::Loaded(from))
            },
            HouseholdAct::Load(household, from) if household == *self.household() => {
                self.telling(Told::Loaded(from))
            }
            HouseholdAct::Load(household, from) => {
                let mut state = self.of_another_home();
                state.loaded.push(household.clone());
                state.stepped(household, Told::Loaded(from))
            }
            HouseholdAct::Undo => self.turned(self.history.undone(), Told::Undone),
            HouseholdAct::Redo => self.turned(self.history.redone(), Told::Redone),
            HouseholdAct::Empty => Self {
                safety_first: self.safety_first,
                news: self.telling(Told::Emptied).news,
                ..Self::default()
            },
            HouseholdAct::Heard(count) if count == self.news.count => Self {
                news: News { told: None, count },
                ..self.clone()
            },
            HouseholdAct::Heard(_) => self.clone(),
            HouseholdAct::Choose(choices) if choices.grouping == self.choices.grouping => Self {
                choices,
                ..self.clone()
            },
            HouseholdAct::Choose(choices) => Self {
                choices,
                ..self.telling(Told::Planned)
            },
            HouseholdAct::ChooseBrief(brief) => Self {
                brief,
                ..self.clone()
            },
            HouseholdAct::BeginCheck(key) => Self {
                checking: Some(key),
                ..self.clone()
            },
            HouseholdAct::TakeOver {
                finding,
                is_of_begun_key,
            } => self.taking_over(finding, is_of_begun_key),
            HouseholdAct::Assign(key) => match self.waiting {
                Some(finding) => self.assigned(finding, key, None),
                None => self.clone(),
            },
            HouseholdAct::LetGo => Self {
                waiting: None,
                ..self.telling(Told::LetGo)
            },
            HouseholdAct::PutSafetyFirst => Self {
                safety_first: true,
                ..self.clone()
            },
        }
    }

    /// Whether nothing has ever been put on the board.
    fn is_untouched(&self) -> bool {
        self.household().is_empty() && !self.can_undo() && !self.can_redo()
    }

    /// Without what is left of an earlier household.
    fn unmarked(&self) -> Self {
        Self {
            safety_first: self.safety_first,
            news: self.news,
            homes: self.homes + 1,
            ..Self::default()
        }
    }

    /// Without what was said of the home so far. A finding goes on waiting: which key it is about is
    /// still to be said, and that may be one of the other home.
    fn of_another_home(&self) -> Self {
        Self {
            choices: Choices::default(),
            brief: BriefChoices::default(),
            checking: None,
            homes: self.homes + 1,
            ..self.clone()
        }
    }

    fn stepped(&self, next: Household, told: Told) -> Self {
        let told = match told {
            Told::Changed if next == *self.household() => Told::Unchanged,
            told => told,
        };
        Self {
            history: self.history.then(next),
            ..self.telling(told)
        }
    }

    fn turned(&self, history: Option<History>, told: Told) -> Self {
        let Some(history) = history else {
            return self.clone();
        };
        let later = if history.steps_back() > self.history.steps_back() {
            history.present()
        } else {
            self.household()
        };
        let state = if self.loaded.contains(later) {
            self.of_another_home()
        } else {
            self.clone()
        };
        Self {
            history,
            // Ids are given again after undo: the key of this id may be another by now.
            checking: None,
            ..state.telling(told)
        }
    }

    fn telling(&self, told: Told) -> Self {
        Self {
            news: News {
                told: Some(told),
                count: self.news.count + 1,
            },
            ..self.clone()
        }
    }

    /// A finding of a check that was begun from a key goes to that key. Any other waits, so that
    /// the person says which key was in their hand.
    fn taking_over(&self, finding: Finding, is_of_begun_key: bool) -> Self {
        let key = self
            .checking
            .filter(|&key| is_of_begun_key && self.household().key(key).is_some());
        match key {
            Some(_) => self.assigned(finding, key, self.waiting),
            // What was found of one's own key is said of nobody's in the example.
            None if self.is_example => Self {
                waiting: Some(finding),
                ..self.unmarked()
            },
            None => Self {
                waiting: Some(finding),
                checking: None,
                ..self.clone()
            },
        }
    }

    /// The finding is that of this key, or of a new one. Another may go on waiting.
    fn assigned(&self, finding: Finding, key: Option<KeyId>, waiting: Option<Finding>) -> Self {
        let told = Told::TakenOver(key.unwrap_or_else(|| self.household().next_key()));
        let finding = Some(finding);
        let change = match key {
            Some(key) => Change::Check { key, finding },
            None => Change::AddKey(Key {
                finding,
                ..Key::default()
            }),
        };
        match self.household().with(change) {
            Ok(next) => Self {
                waiting,
                checking: None,
                ..self.stepped(next, told)
            },
            Err(refusal) => self.telling(Told::Refused(refusal)),
        }
    }
}

impl Reducible for HouseholdState {
    type Action = HouseholdAct;

    fn reduce(self: Rc<Self>, act: HouseholdAct) -> Rc<Self> {
        Rc::new(self.after(act))
    }
}
