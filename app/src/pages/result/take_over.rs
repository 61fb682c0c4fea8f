//! What a check found goes over to keys and doors: how soon old keys should stop working, and no
//! answer.

use self_check_core::household::Finding;
use yew::prelude::*;

use crate::copy::en::household::board as words;
use crate::route::Route;
use crate::session::Act;
use crate::ui::use_session;

/// What the check found.
#[derive(Properties, PartialEq)]
pub struct TakeOverProps {
    /// The finding.
    pub finding: Finding,
}

/// The way over. Where somebody may be feared nothing is offered; keys and doors are told only that
/// safety comes first, so that they offer nothing to keep, print or chase either. What the example
/// found is said of nobody's keys and stays here.
#[component]
pub fn TakeOver(props: &TakeOverProps) -> Html {
    let session = use_session();
    let finding = props.finding;
    let is_own = !session.is_example;
    {
        let session = session.clone();
        use_effect_with(finding.safety_first && is_own, move |&is_feared| {
            if is_feared {
                session.dispatch(Act::CarryOver(finding));
            }
        });
    }
    if finding.safety_first || !is_own {
        return html! {};
    }
    let onclick = Callback::from(move |_: MouseEvent| {
        session.dispatch(Act::CarryOver(finding));
        Route::Keys.go();
    });
    html! {
        <section class="screen-only" aria-labelledby="take-over">
            <h2 id="take-over">{ words::TITLE }</h2>
            <p>{ words::TAKE_OVER_NOTE }</p>
            <p class="row"><button type="button" class="press-quiet" {onclick}>{ words::TAKE_OVER }</button></p>
        </section>
    }
}
