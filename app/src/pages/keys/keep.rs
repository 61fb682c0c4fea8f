//! The panel that keeps keys and doors: as a file locked with a passphrase, as a file without a lock, on this device, or
//! not at all any more.
//!
//! Where safety comes first nothing here offers to keep, save or open anything; an invented home is neither kept nor
//! saved. Emptying everything is always offered.

mod device;
mod empty;
mod lock;
mod open_file;
mod passphrase;
mod unlocked;

use self_check_core::household::Household;
use yew::prelude::*;

use crate::browser;
use crate::copy::keep;
use crate::household::{HouseholdAct, HouseholdState, LoadedFrom};
use crate::keeping::{Keeping, use_kept};
use crate::route::Route;
use crate::ui::use_household;
pub use empty::proof;
use lock::SaveLocked;
use open_file::OpenFile;
use unlocked::SaveUnlocked;

/// A part of the panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    LockedFile,
    UnlockedFile,
    OpenFile,
    ThisDevice,
    Empty,
}

/// What is offered, in this order.
fn offered(state: &HouseholdState, keeping: &Keeping) -> &'static [Part] {
    use Part::*;
    let something_else_is_kept = matches!(keeping, Keeping::Other { .. });
    if state.puts_safety_first() {
        &[Empty]
    } else if state.is_example && something_else_is_kept {
        &[ThisDevice, OpenFile, Empty]
    } else if state.is_example {
        &[OpenFile, Empty]
    } else if state.household().is_empty() {
        &[OpenFile, ThisDevice, Empty]
    } else {
        &[LockedFile, UnlockedFile, OpenFile, ThisDevice, Empty]
    }
}

fn lede(is_example: bool, keeping: &Keeping) -> &'static str {
    match keeping {
        _ if is_example => keep::LEDE_EXAMPLE,
        Keeping::On { .. } => keep::LEDE_KEPT,
        _ => keep::LEDE,
    }
}

/// The panel.
#[component]
pub fn Keep() -> Html {
    let state = use_household();
    let Some(handle) = use_kept() else {
        return html! {};
    };
    let household = state.household();
    let onload = {
        let state = state.clone();
        Callback::from(move |household: Household| {
            state.dispatch(HouseholdAct::Load(household, LoadedFrom::File));
        })
    };
    let parts = offered(&state, handle.state());
    let part = |part: &Part| match part {
        Part::LockedFile => html! { <SaveLocked household={household.clone()} /> },
        Part::UnlockedFile => html! { <SaveUnlocked household={household.clone()} /> },
        Part::OpenFile => {
            html! { <OpenFile household={household.clone()} onload={&onload} /> }
        }
        Part::ThisDevice => device::section(&handle, household, !state.is_example),
        Part::Empty => empty::section(&handle, state.puts_safety_first()),
    };
    let keeps = parts != [Part::Empty];
    html! {
        <section class="keep screen-only" aria-labelledby={if keeps { TITLE } else { "empty" }}>
            if keeps {
                <h2 id={TITLE} tabindex="-1">{ keep::TITLE }</h2>
                <p>{ lede(state.is_example, handle.state()) }</p>
            }
            { for parts.iter().map(part) }
        </section>
    }
}

/// The id of the panel's heading.
const TITLE: &str = "keep";

/// What stands in the way of keeping, said at the top of every page on which the household can be changed.
#[component]
pub fn KeepNotice() -> Html {
    let is_safety_first = use_household().puts_safety_first();
    let words = use_kept().and_then(|handle| device::trouble(handle.state()));
    let words = words.filter(|_| !is_safety_first);
    let go = Callback::from(|event: MouseEvent| {
        event.prevent_default();
        Route::Keys.go();
        browser::focus_id(TITLE);
    });
    html! {
        <div role="alert" class="screen-only">
            if let Some(words) = words {
                <p class="notice error">
                    { words }{ " " }
                    <a href={Route::Keys} onclick={go}>{ keep::SEE_BELOW }</a>
                </p>
            }
        </div>
    }
}

/// A line on what has happened, and one on what is wrong; either may be empty. Both places are always there, so that a
/// screen reader hears what comes into them.
fn said(status: &str, alert: &str) -> Html {
    html! {
        <>
            <div role="status">if !status.is_empty() { <p class="notice">{ status }</p> }</div>
            <div role="alert">if !alert.is_empty() { <p class="error">{ alert }</p> }</div>
        </>
    }
}

#[cfg(test)]
mod tests {
    use std::rc::Rc;

    use self_check_core::household::demonstration;
    use yew::Reducible;

    use super::*;
    use crate::keeping::{Kept, Met};

    fn after(acts: impl IntoIterator<Item = HouseholdAct>) -> HouseholdState {
        let begun = Rc::new(HouseholdState::default());
        (*acts.into_iter().fold(begun, Reducible::reduce)).clone()
    }

    fn own() -> HouseholdAct {
        HouseholdAct::Become(demonstration::household())
    }

    const OTHER: Keeping = Keeping::Other {
        kept: Kept::Foreign,
        met: Met::AtFirst,
    };

    #[test]
    fn locked_file_is_offered_first_and_emptying_always() {
        let parts = offered(&after([own()]), &Keeping::Off(None));
        assert_eq!(parts.first(), Some(&Part::LockedFile));
        assert_eq!(parts.len(), 5);
        for acts in [vec![], vec![own()], vec![HouseholdAct::TryExample]] {
            for keeping in [Keeping::Off(None), OTHER] {
                let parts = offered(&after(acts.clone()), &keeping);
                assert_eq!(parts.last(), Some(&Part::Empty));
            }
        }
    }

    #[test]
    fn invented_home_is_neither_saved_nor_kept() {
        let example = after([HouseholdAct::TryExample]);
        let parts = offered(&example, &Keeping::Off(None));
        assert_eq!(parts, [Part::OpenFile, Part::Empty]);
        // What is kept from before can still be seen and taken.
        assert!(offered(&example, &OTHER).contains(&Part::ThisDevice));
    }

    #[test]
    fn where_safety_comes_first_nothing_is_offered_but_emptying() {
        for acts in [vec![], vec![own()], vec![HouseholdAct::TryExample]] {
            let state = after(acts.into_iter().chain([HouseholdAct::PutSafetyFirst]));
            for keeping in [Keeping::Off(None), OTHER] {
                assert_eq!(offered(&state, &keeping), [Part::Empty]);
            }
        }
    }
}
