//! Choosing a picture, dropping one, pasting one.

use yew::prelude::*;

use super::DeskHandle;
use super::work::Work;
use crate::browser;
use crate::copy::picture as words;

/// Takes a picture that is dropped anywhere on the page: beside a smaller target the browser would leave
/// the page and show the file itself.
pub fn drop_target(work: &Work) -> (Callback<DragEvent>, Callback<DragEvent>) {
    let work = work.clone();
    let drop = Callback::from(move |event: DragEvent| {
        event.prevent_default();
        if let Some(file) = browser::dropped_file(&event) {
            work.open(file);
        }
    });
    (
        drop,
        Callback::from(|event: DragEvent| event.prevent_default()),
    )
}

/// The field.
pub fn chooser(desk: &DeskHandle, work: &Work) -> Html {
    let take = {
        let work = work.clone();
        Callback::from(move |event: Event| {
            if let Some(file) = browser::input_file(&event) {
                work.open(file);
            }
        })
    };
    let label = match desk.opened {
        Some(_) => words::ANOTHER,
        None => words::CHOOSE,
    };
    html! {
        <div class={classes!("drop", desk.opened.is_some().then_some("drop-again"))}>
            <label for="picture-file">{ label }</label>
            <input id="picture-file" class="input" type="file" accept="image/*" autocomplete="off" onchange={take}
                aria-describedby="picture-stays" />
            <p class="note">{ words::DROP_OR_PASTE }</p>
            <p id="picture-stays" class="note">{ words::STAYS_HERE }</p>
        </div>
    }
}
