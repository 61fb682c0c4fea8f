//! Whether doors and keys are kept on this device, and what stands in the way. One pure reducer.
//!
//! Nothing is ever written over what was not read before: a write names the mark it takes the place of, and where
//! something else is found, the person chooses.

mod at_work;
#[cfg(test)]
mod tests;

use std::rc::Rc;

use self_check_core::household::{Household, file};
use yew::Reducible;

use crate::browser::{Expected, Found, KeepTrouble, Mark, Outcome, Record};

pub use at_work::{Emptying, KeepHandle, use_keeping, use_kept};

/// How keeping stands in this tab.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Keeping {
    /// What is kept is being read.
    #[default]
    Looking,
    /// Nothing is kept from this tab.
    Off(Option<WhyOff>),
    /// Every change is kept.
    On {
        /// What the next writing takes the place of.
        expected: Expected,
        /// How far it has come.
        step: Step,
    },
    /// Something else is kept than what is on the page. Nothing is written until the person chooses.
    Other {
        /// What is kept.
        kept: Kept,
        /// How it was met.
        met: Met,
    },
}

/// Why keeping is off, where that is not what the person asked for just now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhyOff {
    /// What was kept was taken away, in another tab or by the browser.
    TakenAway,
    /// The person chose to leave what is kept and what is on the page as they are.
    LeftAsTheyAre,
    /// What is kept could not be taken away.
    StillThere(KeepTrouble),
}

/// How far keeping has come.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    /// Writing is to begin.
    Due,
    /// This is being written.
    Writing(Household),
    /// This is kept.
    Done(Household),
    /// This could not be kept.
    Failed(Household, KeepTrouble),
}

/// What is kept.
#[derive(Clone, Debug, PartialEq)]
pub enum Kept {
    /// Doors and keys.
    Household(Household, Mark),
    /// A record that cannot be read, and why.
    Unreadable(file::ImportError, Record),
    /// Nothing that this page wrote.
    Foreign,
    /// Something a later version of this page wrote.
    Later,
}

/// How something else was met.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Met {
    /// It was there before this tab kept anything.
    AtFirst,
    /// It has come since, from another tab.
    FromAnotherTab,
}

/// What can happen.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// What is kept was read for the first time, while the page held this.
    Looked(Found, Household),
    /// Another tab has written: this is kept now, and the page holds this.
    Heard(Found, Household),
    /// The person wants it kept.
    TurnOn,
    /// The person wants what failed to be tried again.
    TryAgain,
    /// Writing has begun.
    Begin(Household),
    /// Writing has ended.
    Wrote(Household, Result<Outcome, KeepTrouble>),
    /// The page shows what is kept.
    Taken,
    /// What is on the page is to take the place of what is kept.
    KeepMine,
    /// Both are to stay as they are.
    LeaveBoth,
    /// The person wants it kept no longer, and it was taken away or not.
    TurnedOff(Result<Outcome, KeepTrouble>),
    /// Everything was emptied, in this tab.
    Emptied,
    /// What was kept was taken away, in another tab.
    TakenAway,
}

impl Kept {
    /// What was found, read. Nothing where nothing was found.
    pub fn of(found: Found) -> Option<Self> {
        Some(match found {
            Found::Nothing => return None,
            Found::Later => Self::Later,
            Found::Foreign => Self::Foreign,
            Found::Record(record) => match file::import(record.text.as_bytes()) {
                Ok(household) => Self::Household(household, record.mark),
                Err(error) => Self::Unreadable(error, record),
            },
        })
    }

    /// What a writing that takes its place has to expect; nothing where only emptying everything helps.
    pub fn expected(&self) -> Option<Expected> {
        match self {
            Self::Household(_, mark) | Self::Unreadable(_, Record { mark, .. }) => {
                Some(Expected::Mark(*mark))
            }
            Self::Foreign | Self::Later => None,
        }
    }
}

impl Keeping {
    /// What a writing of `present` has to expect, if it is to begin now.
    pub fn due(&self, present: &Household) -> Option<Expected> {
        let Self::On { expected, step } = self else {
            return None;
        };
        let is_due = match step {
            Step::Due => true,
            Step::Writing(_) => false,
            Step::Done(last) | Step::Failed(last, _) => last != present,
        };
        is_due.then_some(*expected)
    }

    /// Whether this tab has anything to do with what is kept.
    fn takes_part(&self) -> bool {
        matches!(self, Self::On { .. } | Self::Other { .. })
    }

    /// Whether this is another record than the one this tab has written or read last. A tab that is writing finds out
    /// by being refused.
    fn is_surprised_by(&self, found: &Found) -> bool {
        let known = match self {
            Self::Looking | Self::Off(_) => return false,
            Self::On {
                step: Step::Writing(_) | Step::Due,
                ..
            } => return false,
            Self::On { expected, .. } => Some(*expected),
            Self::Other { kept, .. } => kept.expected(),
        };
        match found {
            Found::Record(record) => known != Some(Expected::Mark(record.mark)),
            Found::Nothing | Found::Foreign | Found::Later => true,
        }
    }

    fn met(found: Found, present: &Household, met: Met) -> Self {
        match Kept::of(found) {
            None if met == Met::AtFirst => Self::Off(None),
            None => Self::Off(Some(WhyOff::TakenAway)),
            Some(Kept::Household(household, mark)) if household == *present => Self::On {
                expected: Expected::Mark(mark),
                step: Step::Done(household),
            },
            Some(kept) => Self::Other { kept, met },
        }
    }

    fn after(&self, act: Act) -> Self {
        match (self, act) {
            (Self::Looking, Act::Looked(found, present)) => {
                Self::met(found, &present, Met::AtFirst)
            }
            (before, Act::Heard(found, present)) if before.is_surprised_by(&found) => {
                Self::met(found, &present, Met::FromAnotherTab)
            }
            (Self::Off(_), Act::TurnOn) => Self::On {
                expected: Expected::Nothing,
                step: Step::Due,
            },
            (Self::On { expected, .. }, Act::TryAgain) => Self::On {
                expected: *expected,
                step: Step::Due,
            },
            (Self::On { expected, .. }, Act::Begin(household)) => Self::On {
                expected: *expected,
                step: Step::Writing(household),
            },
            (Self::On { expected, .. }, Act::Wrote(household, result)) => match result {
                Ok(Outcome::Done(mark)) => Self::On {
                    expected: Expected::Mark(mark),
                    step: Step::Done(household),
                },
                Ok(Outcome::Refused(found)) => {
                    let met = match expected {
                        Expected::Nothing => Met::AtFirst,
                        Expected::Mark(_) => Met::FromAnotherTab,
                    };
                    Self::met(found, &household, met)
                }
                Err(trouble) => Self::On {
                    expected: *expected,
                    step: Step::Failed(household, trouble),
                },
            },
            (
                Self::Other {
                    kept: Kept::Household(household, mark),
                    ..
                },
                Act::Taken,
            ) => Self::On {
                expected: Expected::Mark(*mark),
                step: Step::Done(household.clone()),
            },
            (Self::Other { kept, .. }, Act::KeepMine) if kept.expected().is_some() => Self::On {
                expected: kept.expected().unwrap_or(Expected::Nothing),
                step: Step::Due,
            },
            (Self::Other { .. }, Act::LeaveBoth) => Self::Off(Some(WhyOff::LeftAsTheyAre)),
            (_, Act::TurnedOff(Ok(Outcome::Done(_)))) | (_, Act::Emptied) => Self::Off(None),
            (_, Act::TurnedOff(Ok(Outcome::Refused(found)))) => match Kept::of(found) {
                None => Self::Off(None),
                Some(kept) => Self::Other {
                    kept,
                    met: Met::FromAnotherTab,
                },
            },
            (_, Act::TurnedOff(Err(trouble))) => Self::Off(Some(WhyOff::StillThere(trouble))),
            (before, Act::TakenAway) if before.takes_part() => Self::Off(Some(WhyOff::TakenAway)),
            // What was under way when the person turned to something else.
            (before, _) => before.clone(),
        }
    }
}

impl Reducible for Keeping {
    type Action = Act;

    fn reduce(self: Rc<Self>, act: Act) -> Rc<Self> {
        Rc::new(self.after(act))
    }
}
