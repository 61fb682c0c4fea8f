//! Choosing a picture, dropping one, pasting one.

use yew::prelude::*;

use super::desk::Entry;
use super::work::Work;
use super::{DeskHandle, ERROR, error_beside};
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
    let has_error = desk.trouble_with(Entry::File).is_some();
    let described_by = if has_error {
        format!("{ERROR} {STAYS}")
    } else {
        STAYS.to_owned()
    };
    html! {
        <div class={classes!("drop", desk.opened.is_some().then_some("drop-again"))}>
            <label for="picture-file">{ label }</label>
            { error_beside(desk, Entry::File) }
            <input id="picture-file" class="input" type="file" accept="image/*" autocomplete="off" onchange={take}
                aria-describedby={described_by} aria-invalid={has_error.then_some("true")} />
            <p class="note">{ words::DROP_OR_PASTE }</p>
            <p id={STAYS} class="note">{ words::STAYS_HERE }</p>
        </div>
    }
}

/// What becomes of the picture.
const STAYS: &str = "picture-stays";
