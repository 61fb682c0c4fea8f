//! "Empty everything": one press, and then the browser's own answer to what is left.

use yew::prelude::*;

use crate::copy::keep;
use crate::keeping::{Emptying, KeepHandle};

/// The part of the panel.
pub fn section(handle: &KeepHandle, is_safety_first: bool) -> Html {
    let onclick = {
        let handle = handle.clone();
        Callback::from(move |_: MouseEvent| handle.empty())
    };
    // Where safety comes first, this stands alone.
    let (heading, how) = if is_safety_first {
        (
            html! { <h2 id="empty">{ keep::EMPTY }</h2> },
            keep::EMPTY_SAFELY,
        )
    } else {
        (
            html! { <h3 id="empty">{ keep::EMPTY }</h3> },
            keep::EMPTY_HOW,
        )
    };
    html! {
        <div role="group" aria-labelledby="empty">
            { heading }
            <p id="empty-how">{ how }</p>
            <p class="row">
                <button type="button" class="press-quiet" {onclick} aria-describedby="empty-how">{ keep::EMPTY }</button>
            </p>
        </div>
    }
}

/// What came of emptying, at the top of the page that is shown then.
pub fn proof(handle: Option<&KeepHandle>) -> Html {
    let emptying = handle.map_or(Emptying::NotAsked, KeepHandle::emptying);
    html! { <div role="status" class="keep-proof">{ ended(emptying) }</div> }
}

fn ended(emptying: Emptying) -> Html {
    match emptying {
        Emptying::NotAsked => html! {},
        Emptying::UnderWay => html! { <p class="notice">{ keep::EMPTYING }</p> },
        Emptying::Ended(result, left) => {
            let is_gone = result.is_ok() && left.record != Some(true);
            let said = if is_gone {
                keep::EMPTIED
            } else {
                keep::NOT_EMPTIED
            };
            html! {
                <div class={if is_gone { "notice" } else { "notice error" }}>
                    <p>{ said }</p>
                    <dl class="facts">
                        { for keep::left(&left).into_iter().map(|(name, value)| html! {
                            <><dt>{ name }</dt><dd>{ value }</dd></>
                        }) }
                    </dl>
                </div>
            }
        }
    }
}
