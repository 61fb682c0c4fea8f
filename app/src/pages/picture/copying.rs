//! The copy that is safe to share: its covers, its format, and a second look at what came out.

use yew::prelude::*;

use super::covers::{CoverPicture, KEYS, pressed};
use super::desk::{Act, Cover, Entry, Hiding, Opened};
use super::stage::use_canvas_of;
use super::work::Work;
use super::{DeskHandle, ERROR, error_beside};
use crate::browser::{self, CopyFormat, SafeCopy};
use crate::copy::{Press, picture as words, site};

/// The covers, and the way to the copy.
pub fn section(desk: &DeskHandle, opened: &Opened, work: &Work) -> Html {
    // What changes the covers voids a copy that is being made.
    let change = {
        let (desk, work) = (desk.clone(), work.clone());
        Callback::from(move |act: Act| {
            work.stop();
            desk.dispatch(act);
        })
    };
    let draw = change.reform(Act::DrawCover);
    let set = change.reform(|(which, cover)| Act::SetCover(which, cover));
    let remove = change.reform(Act::RemoveCover);
    let settle = {
        let desk = desk.clone();
        Callback::from(move |()| desk.dispatch(Act::Settle))
    };
    let one_more = change.reform(|_: MouseEvent| Act::AddCover);
    let make = {
        let work = work.clone();
        Callback::from(move |_: MouseEvent| work.copy())
    };
    let hiding = desk.hiding();
    html! {
        <section aria-labelledby="picture-copy">
            <h2 id="picture-copy" tabindex="-1">{ words::COPY }</h2>
            <p>{ words::COPY_HOW }</p>
            <CoverPicture working={opened.working.clone()} covers={desk.covers.clone()} {draw} set={set.clone()} remove={remove.clone()}
                {settle} />
            // Below the picture: what changes while a finger holds a cover must not move it away.
            <div role="status">{ said_of(hiding) }</div>
            // An element of their own: among the others one more would have the picture made anew under the finger.
            <div>{ for desk.covers.iter().enumerate().map(|(which, cover)| presses(opened, which, *cover, &set)) }</div>
            <p id={KEYS} class="hint">{ words::COVER_KEYS }</p>
            { error_beside(desk, Entry::Covers) }
            <p class="row">
                <button id="picture-add-cover" type="button" class="press-quiet" onclick={one_more}
                    aria-describedby={desk.trouble_with(Entry::Covers).map(|_| ERROR)}>{ words::ADD_COVER }</button>
                { for (0..desk.covers.len()).map(|which| {
                    let onclick = remove.reform(move |_: MouseEvent| which);
                    html! {
                        <button key={which} type="button" class="plain" {onclick}>{ words::remove_cover(which + 1) }</button>
                    }
                }) }
            </p>
            { formats(desk, &change) }
            <p class="note">{ words::COPY_NOTE }</p>
            <p class="row">
                <button type="button" class="press" onclick={make} disabled={desk.is_busy()}>{ words::MAKE_COPY }</button>
            </p>
            if let Some(copy) = &desk.copy {
                { second_look(copy, hiding) }
            }
        </section>
    }
}

/// What can be done to a cover by single presses, for whoever can neither drag nor use a keyboard.
fn presses(opened: &Opened, which: usize, cover: Cover, set: &Callback<(usize, Cover)>) -> Html {
    let (width, height) = (opened.working.width, opened.working.height);
    let press = |press: Press| {
        let onclick =
            set.reform(move |_: MouseEvent| (which, pressed(press, cover, width, height)));
        let (word, whole) = words::press(press, which + 1);
        html! { <button type="button" class="press-quiet" {onclick} aria-label={whole}>{ word }</button> }
    };
    html! {
        <details key={which} class="presses">
            <summary>{ words::change_cover(which + 1) }</summary>
            <p class="row">{ for Press::ALL.into_iter().map(press) }</p>
        </details>
    }
}

fn formats(desk: &DeskHandle, change: &Callback<Act>) -> Html {
    html! {
        <fieldset>
            <legend><h3>{ words::SAVE_AS }</h3></legend>
            { error_beside(desk, Entry::Format) }
            <div class="opts">
                { for CopyFormat::ALL.into_iter().enumerate().map(|(index, format)| {
                    let checked = desk.format == format;
                    let onchange = change.reform(move |_: Event| Act::Format(format));
                    let word = match format {
                        CopyFormat::Jpeg => words::JPEG,
                        CopyFormat::Png => words::PNG,
                    };
                    html! {
                        <label key={index} class="opt">
                            <input id={format!("picture-format-{index}")} type="radio" name="format" {checked} {onchange}
                                autocomplete="off" aria-describedby={desk.trouble_with(Entry::Format).map(|_| ERROR)} />
                            <span><b>{ word }</b></span>
                        </label>
                    }
                }) }
            </div>
        </fieldset>
    }
}

/// What the reader is told of that.
fn said_of(hiding: Hiding) -> Html {
    match hiding {
        Hiding::Nothing => caution(words::NO_COVER),
        Hiding::NotMarked => caution(words::NOT_MARKED),
        Hiding::Bare => caution(words::KEY_BARE),
        Hiding::Beside => caution(words::COVER_BESIDE),
        Hiding::Covered => html! { <p>{ words::KEY_COVERED }</p> },
    }
}

fn caution(words: &str) -> Html {
    html! { <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ words }</p> }
}

fn second_look(copy: &SafeCopy, hiding: Hiding) -> Html {
    let is_covered = hiding == Hiding::Covered;
    html! {
        <section aria-labelledby="picture-second-look">
            <h3 id="picture-second-look" tabindex="-1">{ words::SECOND_LOOK }</h3>
            if !is_covered {
                { said_of(hiding) }
            }
            <Shown picture={copy.shown.clone()} />
            <ul class="checks">
                <li>{ words::NO_NOTES }</li>
                <li>{ words::covers_are_plain(copy.plain_areas) }</li>
            </ul>
            <p class="row">
                <a class={if is_covered { "press" } else { "press-quiet" }} href={copy.address().to_owned()} download={copy.format.file_name()}>{ words::SAVE }</a>
            </p>
        </section>
    }
}

#[derive(Properties, PartialEq)]
struct ShownProps {
    picture: browser::Canvas,
}

/// The copy as it was read again.
#[component]
fn Shown(props: &ShownProps) -> Html {
    let canvas = use_canvas_of(&props.picture);
    let is_tall = props.picture.height() > props.picture.width();
    html! {
        <figure class={classes!("stage", is_tall.then_some("stage-tall"))}>
            <canvas ref={canvas} role="img" aria-label={words::COPY_RESULT} />
        </figure>
    }
}
