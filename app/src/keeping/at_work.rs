//! Keeping at work: what the reducer decides is written, read and heard here. It goes on for as long as the second
//! program lives, whichever page is shown, since the household can be changed on several.

use std::cell::RefCell;
use std::rc::Rc;

use self_check_core::household::{Household, file};
use yew::platform::spawn_local;
use yew::prelude::*;

use super::{Act, Keeping, Kept};
use crate::browser::{
    Expected, Found, KeepTrouble, Left, News, Outcome, Tabs, drop_kept, read_kept, remove_kept,
    tell_tabs, what_is_left, write_kept,
};
use crate::household::{HouseholdAct, HouseholdHandle, HouseholdState, LoadedFrom};

/// How far emptying everything has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Emptying {
    /// Nobody has asked for it.
    NotAsked,
    /// It is under way.
    UnderWay,
    /// What came of it, and what the browser still holds.
    Ended(Result<(), KeepTrouble>, Left),
}

/// How keeping stands, and the ways to act on it.
#[derive(Clone)]
pub struct KeepHandle {
    keeping: UseReducerHandle<Keeping>,
    emptying: UseStateHandle<Emptying>,
    latest: Rc<RefCell<Household>>,
    tabs: Rc<RefCell<Option<Tabs>>>,
    board: UseReducerDispatcher<HouseholdState>,
}

impl PartialEq for KeepHandle {
    /// Two are the same where they show the same.
    fn eq(&self, other: &Self) -> bool {
        self.keeping == other.keeping && self.emptying == other.emptying
    }
}

/// How keeping stands, from the nearest provider.
#[hook]
pub fn use_kept() -> Option<KeepHandle> {
    use_context::<KeepHandle>()
}

/// Keeps what is on the board for as long as the person wants it kept. Nothing is read or written where safety comes
/// first, and nothing of an invented home is written.
#[hook]
pub fn use_keeping(state: &HouseholdHandle) -> KeepHandle {
    let keeping = use_reducer(Keeping::default);
    let emptying = use_state(|| Emptying::NotAsked);
    let latest = use_mut_ref(Household::empty);
    *latest.borrow_mut() = state.household().clone();
    let tabs = use_mut_ref(|| None);
    let handle = KeepHandle {
        keeping,
        emptying,
        latest,
        tabs,
        board: state.dispatcher(),
    };
    let is_safety_first = state.puts_safety_first();
    {
        let handle = handle.clone();
        use_effect_with(is_safety_first, move |&is_safety_first| {
            if !is_safety_first {
                handle.look_first();
                handle.hear();
            }
            let tabs = handle.tabs;
            move || drop(tabs.take())
        });
    }
    {
        let handle = handle.clone();
        let may_write = !is_safety_first && !state.is_example;
        let watched = (
            state.household().clone(),
            (*handle.keeping).clone(),
            may_write,
        );
        use_effect_with(watched, move |(household, keeping, may_write)| {
            if let Some(expected) = keeping.due(household).filter(|_| *may_write) {
                handle.write(expected, household.clone());
            }
        });
    }
    {
        let emptying = handle.emptying.clone();
        use_effect_with(state.household().is_empty(), move |&is_empty| {
            if !is_empty {
                emptying.set(Emptying::NotAsked);
            }
        });
    }
    handle
}

impl KeepHandle {
    /// How it stands.
    pub fn state(&self) -> &Keeping {
        &self.keeping
    }

    /// How far emptying everything has come.
    pub fn emptying(&self) -> Emptying {
        *self.emptying
    }

    /// Tells the reducer.
    pub fn act(&self, act: Act) {
        self.keeping.dispatch(act);
    }

    /// Shows on the board what is kept.
    pub fn take(&self) {
        if let Keeping::Other {
            kept: Kept::Household(household, _),
            ..
        } = &*self.keeping
        {
            self.load(household.clone());
            self.act(Act::Taken);
        }
    }

    fn load(&self, household: Household) {
        self.board
            .dispatch(HouseholdAct::Load(household, LoadedFrom::Device));
    }

    /// Takes away what is kept, if it is still what this tab knows.
    pub fn turn_off(&self) {
        let Keeping::On { expected, .. } = *self.keeping else {
            return;
        };
        let handle = self.clone();
        spawn_local(async move {
            let result = drop_kept(expected).await;
            let is_gone = matches!(result, Ok(Outcome::Done(_)));
            handle.act(Act::TurnedOff(result));
            if is_gone {
                handle.tell(News::Emptied);
            }
        });
    }

    /// Empties the board and takes away whatever is kept; then asks the browser what it still holds.
    pub fn empty(&self) {
        self.emptying.set(Emptying::UnderWay);
        self.act(Act::Emptied);
        self.board.dispatch(HouseholdAct::Empty);
        let handle = self.clone();
        spawn_local(async move {
            let result = remove_kept().await;
            handle.tell(News::Emptied);
            let left = what_is_left().await;
            handle.emptying.set(Emptying::Ended(result, left));
        });
    }

    /// Reads what was kept before. Where the board holds nothing yet, it shows what it finds.
    fn look_first(&self) {
        if *self.keeping != Keeping::Looking {
            return;
        }
        let handle = self.clone();
        spawn_local(async move {
            // Where it cannot be read, nothing is kept as far as this page can see; wanting to keep will tell why.
            let found = read_kept().await.unwrap_or(Found::Nothing);
            let present = handle.latest.borrow().clone();
            match Kept::of(found.clone()) {
                Some(Kept::Household(household, _)) if present.is_empty() => {
                    handle.load(household.clone());
                    handle.act(Act::Looked(found, household));
                }
                _ => handle.act(Act::Looked(found, present)),
            }
        });
    }

    fn write(&self, expected: Expected, household: Household) {
        self.act(Act::Begin(household.clone()));
        let handle = self.clone();
        spawn_local(async move {
            let result = match file::export(&household) {
                Ok(text) => write_kept(expected, &text).await,
                Err(_) => Err(KeepTrouble::Failed),
            };
            let mark = match result {
                Ok(Outcome::Done(mark)) => Some(mark),
                _ => None,
            };
            handle.act(Act::Wrote(household, result));
            if let Some(mark) = mark {
                handle.tell(News::Written(mark));
            }
        });
    }

    fn hear(&self) {
        let handle = self.clone();
        let hear = Callback::from(move |news| match news {
            News::Emptied => handle.act(Act::TakenAway),
            News::Written(_) => {
                let handle = handle.clone();
                spawn_local(async move {
                    if let Ok(found) = read_kept().await {
                        let present = handle.latest.borrow().clone();
                        handle.act(Act::Heard(found, present));
                    }
                });
            }
        });
        *self.tabs.borrow_mut() = Tabs::listen(hear);
    }

    fn tell(&self, news: News) {
        match &*self.tabs.borrow() {
            Some(tabs) => tabs.tell(news),
            None => tell_tabs(news),
        }
    }
}
