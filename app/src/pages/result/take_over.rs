//! What a check found goes over to keys and doors: how soon old keys should stop working, and no
//! answer.

use self_check_core::household::Finding;
use yew::prelude::*;

use crate::copy::en::household::board as words;
use crate::route::Route;
use crate::session::{Act, SessionHandle};

/// Tells keys and doors that safety comes first, where a check of one's own says so: then they offer
/// nothing to keep, print or chase either.
#[hook]
pub fn use_safety_told(session: &SessionHandle, finding: Finding) {
    let session = session.clone();
    let is_feared = finding.safety_first && !session.is_example;
    use_effect_with(is_feared, move |&is_feared| {
        if is_feared {
            session.dispatch(Act::CarryOver(finding));
        }
    });
}

/// The way over. Where somebody may be feared nothing is offered. What the example found is said of
/// nobody's keys and stays here.
pub fn take_over(session: &SessionHandle, finding: Finding) -> Html {
    if finding.safety_first || session.is_example {
        return html! {};
    }
    let session = session.clone();
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
