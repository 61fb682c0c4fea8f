//! "Keep on this device": the switch, how it stands, and what to choose where something else is kept.

use self_check_core::household::Household;
use yew::prelude::*;

use crate::browser;
use crate::copy::{keep, site};
use crate::keeping::{Act, KeepHandle, Keeping, Kept, Met, Step, WhyOff};

/// The id of its heading.
const HEADING: &str = "keep-device";

/// The part of the panel. What is on the board can be kept only where it is the person's own.
pub fn section(handle: &KeepHandle, household: &Household, is_own: bool) -> Html {
    let state = handle.state();
    if browser::is_from_disk() {
        return html! {
            <div role="group" aria-labelledby={HEADING}>
                <h3 id={HEADING}>{ keep::DEVICE }</h3>
                <p>{ keep::NOT_FROM_DISK }</p>
            </div>
        };
    }
    html! {
        <div role="group" aria-labelledby={HEADING}>
            <h3 id={HEADING} tabindex="-1">{ keep::DEVICE }</h3>
            <p id="keep-device-caution" class="caution">
                <strong>{ site::CAUTION }</strong>{ " " }{ keep::DEVICE_CAUTION }
            </p>
            if is_own {
                { switch(handle) }
            }
            { said(state) }
            if matches!(state, Keeping::On { step: Step::Failed(..), .. }) {
                <p class="row">{ button(handle, keep::TRY_AGAIN, |handle| handle.act(Act::TryAgain)) }</p>
            }
            if let Keeping::Other { kept, met } = state {
                { other(handle, kept, *met, household, is_own) }
            }
        </div>
    }
}

fn switch(handle: &KeepHandle) -> Html {
    let state = handle.state();
    let is_on = matches!(state, Keeping::On { .. });
    let waits = matches!(state, Keeping::Looking | Keeping::Other { .. });
    let onchange = {
        let handle = handle.clone();
        Callback::from(move |_: Event| {
            if is_on {
                handle.turn_off();
            } else {
                handle.act(Act::TurnOn);
            }
        })
    };
    html! {
        <div class="opts">
            <label class="opt">
                <input id="keep-switch" type="checkbox" role="switch" checked={is_on} disabled={waits} {onchange}
                    aria-describedby="keep-device-caution" autocomplete="off" />
                <span><b>{ keep::DEVICE_SWITCH }</b></span>
            </label>
        </div>
    }
}

/// The alert stands at the top of the page; here it is repeated where the choice is.
fn said(state: &Keeping) -> Html {
    if let Some(words) = trouble(state) {
        return html! { <p class="error">{ words }</p> };
    }
    let status = match state {
        Keeping::Looking => keep::LOOKING,
        Keeping::Off(Some(WhyOff::LeftAsTheyAre)) => keep::LEFT_AS_THEY_ARE,
        Keeping::Off(_) => keep::IS_OFF,
        Keeping::On {
            step: Step::Done(_),
            ..
        } => keep::IS_KEPT,
        Keeping::On { .. } | Keeping::Other { .. } => keep::WRITING,
    };
    super::said(status, "")
}

/// What stands in the way of keeping, if anything does.
pub fn trouble(state: &Keeping) -> Option<&'static str> {
    Some(match state {
        Keeping::Off(Some(WhyOff::TakenAway)) => keep::TAKEN_AWAY,
        Keeping::Off(Some(WhyOff::StillThere(_))) => keep::STILL_THERE,
        Keeping::On {
            step: Step::Failed(_, trouble),
            ..
        } => keep::keep_trouble(*trouble),
        Keeping::Other { kept, met } => why(kept, *met),
        Keeping::Looking | Keeping::Off(_) | Keeping::On { .. } => return None,
    })
}

fn why(kept: &Kept, met: Met) -> &'static str {
    match (kept, met) {
        (Kept::Household(..), Met::AtFirst) => keep::KEPT_BEFORE,
        (Kept::Household(..), Met::FromAnotherTab) => keep::FROM_ANOTHER_TAB,
        (Kept::Unreadable(..), _) => keep::UNREADABLE,
        (Kept::Foreign, _) => keep::FOREIGN,
        (Kept::Later, _) => keep::LATER,
    }
}

/// What is kept, what is on the page, and the choice between the two.
fn other(handle: &KeepHandle, kept: &Kept, met: Met, household: &Household, is_own: bool) -> Html {
    let described = match kept {
        Kept::Household(theirs, _) => html! {
            <ul>
                <li>{ keep::on_this_device(theirs) }</li>
                <li>{ keep::on_this_page(household) }</li>
                { for keep::difference(theirs, household).map(|words| html! { <li>{ words }</li> }) }
            </ul>
        },
        Kept::Unreadable(error, _) => html! { <p>{ keep::import_error(*error) }</p> },
        Kept::Foreign | Kept::Later => html! {},
    };
    html! {
        <div role="group" aria-label={why(kept, met)}>
            { described }
            <p class="row">
                if matches!(kept, Kept::Household(..)) {
                    { button(handle, keep::TAKE_KEPT, KeepHandle::take) }
                }
                if let Kept::Unreadable(_, record) = kept {
                    { save_unreadable(&record.text) }
                }
                if is_own && kept.expected().is_some() {
                    { button(handle, keep::KEEP_MINE, |handle| handle.act(Act::KeepMine)) }
                }
                { button(handle, keep::LEAVE_BOTH, |handle| handle.act(Act::LeaveBoth)) }
            </p>
        </div>
    }
}

fn button(handle: &KeepHandle, words: &'static str, act: fn(&KeepHandle)) -> Html {
    let handle = handle.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        // The choice goes with the press.
        browser::focus_id(HEADING);
        act(&handle);
    });
    html! { <button type="button" class="press-quiet" {onclick}>{ words }</button> }
}

/// What cannot be read here may be of use elsewhere.
fn save_unreadable(text: &str) -> Html {
    let text = text.to_owned();
    let onclick = Callback::from(move |_: MouseEvent| {
        browser::save_file(keep::FILE_UNREADABLE, "text/plain", text.as_bytes());
    });
    html! { <button type="button" class="press-quiet" {onclick}>{ keep::SAVE_UNREADABLE }</button> }
}
