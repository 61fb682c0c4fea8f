//! The place for the second program in the frame of the first: its pages, a line while it is being
//! fetched, and what to do when it cannot be.

use yew::prelude::*;

use crate::browser::{self, Host};
use crate::copy::site;
use crate::route::Route;
use crate::ui::{Titled, use_visit};

/// How far the second program has come.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Progress {
    Loading,
    Here,
    Missing,
}

/// The place. Whichever of its pages is asked for, the second program reads it from the address.
#[component]
pub fn Room() -> Html {
    let route = use_visit().route;
    let host = use_node_ref();
    let progress = use_state_eq(|| Progress::Loading);
    let attempt = use_state(|| 0_usize);
    {
        let (host, progress) = (host.clone(), progress.clone());
        use_effect_with((*attempt, route), move |_| {
            // What is here follows the address by itself.
            if *progress != Progress::Here {
                open(host, progress);
            }
        });
    }
    let again = Callback::from(move |_: MouseEvent| attempt.set(*attempt + 1));
    html! {
        <>
            <div class="room" ref={host}></div>
            { beside(*progress, again) }
        </>
    }
}

fn open(host: NodeRef, progress: UseStateHandle<Progress>) {
    let Some(host) = host.cast::<Host>() else {
        return;
    };
    progress.set(Progress::Loading);
    let is_first_page = browser::comes_first();
    yew::platform::spawn_local(async move {
        let is_here = browser::open_rooms(host, is_first_page).await;
        progress.set(if is_here {
            Progress::Here
        } else {
            Progress::Missing
        });
    });
}

fn beside(progress: Progress, again: Callback<MouseEvent>) -> Html {
    match progress {
        Progress::Loading => html! {
            <p class="narrow loading" role="status">{ site::ROOM_LOADING }</p>
        },
        Progress::Here => html! {},
        Progress::Missing => missing(again),
    }
}

/// Says that the second program is not there, and lets the reader try again.
fn missing(again: Callback<MouseEvent>) -> Html {
    html! {
        <Titled title={site::ROOM_MISSING}>
            <div class="narrow">
                <h1 tabindex="-1">{ site::ROOM_MISSING }</h1>
                <p class="lede">{ site::ROOM_MISSING_WHY }</p>
                <p>{ site::ROOM_MISSING_HOW }</p>
                <p class="row">
                    <button type="button" class="press" onclick={again}>{ site::TRY_AGAIN }</button>
                    <a class="plain" href={Route::Start}>{ site::TO_START }</a>
                </p>
            </div>
        </Titled>
    }
}
