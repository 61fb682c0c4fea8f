//! Undo, redo, and what happened last.

use yew::prelude::*;

use super::OverviewProps;
use super::keep::KeepNotice;
use crate::copy::en::household::board as words;
use crate::household::{HouseholdAct, Told};
use crate::ui::use_household;

/// The bar. A press with nothing to undo does nothing; the button stays, so that the focus does.
/// What happened is read out, once and on no later page; a refusal interrupts, because nothing was done.
#[component]
pub fn Bar(props: &OverviewProps) -> Html {
    let state = use_household();
    {
        let heard = state.dispatcher();
        use_effect_with(state.news.count, move |&count| {
            move || heard.dispatch(HouseholdAct::Heard(count))
        });
    }
    let press = |act: HouseholdAct| {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| state.dispatch(act.clone()))
    };
    let news = state
        .news
        .told
        .map(|told| words::told(told, &props.overview.names));
    let is_refused = matches!(state.news.told, Some(Told::Refused(_)));
    html! {
        <>
        <KeepNotice />
        <div class="undo-bar" role="group" aria-label={words::BAR}>
            <button type="button" class="plain" aria-disabled={(!state.can_undo()).to_string()} onclick={press(HouseholdAct::Undo)}>
                { words::of_step(words::UNDO, state.undoes()) }
            </button>
            <button type="button" class="plain" aria-disabled={(!state.can_redo()).to_string()} onclick={press(HouseholdAct::Redo)}>
                { words::of_step(words::REDO, state.redoes()) }
            </button>
            <p class="note" role="status">
                if !is_refused {
                    { for news.clone().map(|news| said(state.news.count, news)) }
                }
            </p>
            <div role="alert" class="bar-refusal">
                if is_refused {
                    { for news.map(|news| said(state.news.count, news)) }
                }
            </div>
        </div>
        </>
    }
}

/// A key that changes makes the same words be said again.
fn said(count: usize, news: String) -> Html {
    html! { <span key={count}>{ news }</span> }
}
