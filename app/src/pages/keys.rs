//! Keys and doors: the board, and the pages that follow from it.

mod bar;
mod board;
mod brief;
mod compare;
mod costs;
mod error_box;
mod forms;
mod keep;
mod plan;
mod quick_start;
mod waiting;

use std::rc::Rc;

use yew::prelude::*;

use crate::browser;
use crate::copy::en::household::board as words;
use crate::copy::{keep as keep_words, site};
use crate::household::{HouseholdAct, HouseholdHandle, Overview};
use crate::keeping::{Keeping, use_kept};
use crate::pages::not_found;
use crate::route::Route;
use crate::ui::{use_household, use_page};
use board::Board;
use brief::BriefPage;
use compare::Compare;
use costs::Costs;
use plan::PlanPage;
use quick_start::QuickStart;

/// The pages by their numbers. Addresses count them and name none.
const PLAN: usize = 1;
const COMPARE: usize = 2;
const COSTS: usize = 3;
const BRIEF: usize = 4;

/// The board, or the ways to start one.
#[component]
pub fn Keys() -> Html {
    let state = use_household();
    let by_hand = use_state(|| false);
    use_keys_page(words::TITLE);
    let overview = use_memo(state.household().clone(), Overview::of);
    let is_empty = overview.household.is_empty();
    let shows_board = !is_empty || *by_hand;
    {
        // Once there is something on the board, emptying it leads back to the ways to start.
        let by_hand = by_hand.clone();
        use_effect_with(is_empty, move |&is_empty| {
            if !is_empty {
                by_hand.set(false);
            }
        });
    }
    // The address stays the same: a reader is taken to the new heading all the same.
    let shown = use_mut_ref(|| shows_board);
    use_effect_with(shows_board, move |&now| {
        if shown.replace(now) != now {
            browser::arrive();
        }
    });
    if !shows_board {
        let onhand = {
            let by_hand = by_hand.clone();
            Callback::from(move |()| by_hand.set(true))
        };
        return html! { <QuickStart {overview} {onhand} /> };
    }
    html! { <Board {overview} /> }
}

/// Which page.
#[derive(Properties, PartialEq)]
pub struct KeysPageProps {
    /// Its number, from 1.
    pub n: usize,
}

/// One of the pages that follow from the board. Without a household there is nothing to follow.
#[component]
pub fn KeysPage(props: &KeysPageProps) -> Html {
    let state = use_household();
    let overview = use_memo(state.household().clone(), Overview::of);
    let kept = use_kept();
    if overview.household.is_empty() && (PLAN..=BRIEF).contains(&props.n) {
        let is_read = kept.is_none_or(|kept| *kept.state() != Keeping::Looking);
        return if is_read || state.puts_safety_first() {
            html! { <ToTheBoard /> }
        } else {
            // What is kept on this device may have its page here.
            html! { <p class="narrow loading" role="status">{ keep_words::LOOKING }</p> }
        };
    }
    match props.n {
        PLAN => html! { <PlanPage {overview} /> },
        COMPARE => html! { <Compare {overview} /> },
        COSTS => html! { <Costs {overview} /> },
        BRIEF => html! { <BriefPage {overview} /> },
        _ => not_found(),
    }
}

/// Leads from a page that has nothing to show to the board.
#[component]
fn ToTheBoard() -> Html {
    use_effect_with((), |()| Route::Keys.go_instead());
    html! {}
}

/// What every page of keys and doors is given.
#[derive(Properties, PartialEq)]
pub struct OverviewProps {
    /// The household, turned round.
    pub overview: Rc<Overview>,
}

/// Title and arrival of a page of keys and doors.
#[hook]
fn use_keys_page(title: &str) {
    let title = if use_household().is_example {
        site::example_title(title)
    } else {
        title.to_owned()
    };
    use_page(title);
}

/// Says that the home is invented, for as long as it is.
fn example_note(state: &HouseholdHandle) -> Html {
    if !state.is_example {
        return html! {};
    }
    let own = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| state.dispatch(HouseholdAct::Empty))
    };
    html! {
        <div class="example" role="group" aria-label={site::EXAMPLE_LABEL}>
            <p><strong>{ site::EXAMPLE_LABEL }</strong>{ " " }{ words::EXAMPLE_NOTE }</p>
            <p><button type="button" class="plain" onclick={own}>{ words::EXAMPLE_END }</button></p>
        </div>
    }
}

/// The ways to the other pages of keys and doors. Nothing is handed to print where safety comes
/// first.
fn pages(state: &HouseholdHandle, here: Option<usize>) -> Html {
    pages_without(state, &[here])
}

/// The same without these: the page itself, and what leads on from it elsewhere.
fn pages_without(state: &HouseholdHandle, without: &[Option<usize>]) -> Html {
    let all = [
        (None, words::BOARD),
        (Some(PLAN), words::PLAN),
        (Some(COMPARE), words::COMPARE),
        (Some(COSTS), words::COSTS),
        (Some(BRIEF), words::BRIEF),
    ];
    let is_offered = |page: &(Option<usize>, &str)| {
        let is_withheld = state.puts_safety_first() && page.0 == Some(BRIEF);
        !is_withheld && !without.contains(&page.0)
    };
    html! {
        <nav class="keys-pages screen-only" aria-label={words::PAGES}>
            <ul class="row">
                { for all.into_iter().filter(is_offered).map(|(page, name)| html! {
                    <li key={name}><a href={route(page)}>{ name }</a></li>
                }) }
            </ul>
        </nav>
    }
}

fn route(page: Option<usize>) -> Route {
    page.map_or(Route::Keys, |n| Route::KeysPage { n })
}

/// The class of a page's article, which stays empty on paper where somebody may be feared.
fn on_paper(state: &HouseholdHandle) -> Option<&'static str> {
    state.puts_safety_first().then_some("not-printed")
}

/// All that stands on paper then.
fn paper_note(state: &HouseholdHandle) -> Html {
    if !state.puts_safety_first() {
        return html! {};
    }
    html! { <p class="paper-only">{ words::NOT_PRINTED }</p> }
}

/// What comes before anything else where somebody may be feared.
fn safety_note(state: &HouseholdHandle) -> Html {
    if !state.puts_safety_first() {
        return html! {};
    }
    html! {
        <>
            <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ words::SAFETY }</p>
            { paper_note(state) }
        </>
    }
}
