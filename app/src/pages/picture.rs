//! Check a picture that exists already: how readable the key in it is, what its file tells besides,
//! and a copy that is safe to share. All of it is dropped with the page.

mod chooser;
mod copying;
mod covers;
mod desk;
mod later;
mod marks;
mod outcome;
mod stage;
mod told;
mod work;

use std::cell::Cell;
use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::browser;
use crate::copy::{picture as words, site};
use crate::route::Route;
use crate::ui::{error_summary, use_page};
use desk::{Act, Busy, Desk, Entry};
use later::Later;
use work::Work;

/// What this page holds, and the way to act on it.
type DeskHandle = UseReducerHandle<Desk>;

/// The page.
#[component]
pub fn Picture() -> Html {
    let desk = use_reducer(Desk::default);
    use_page(match desk.trouble {
        Some(_) => site::error_page_title(words::TITLE),
        None => words::TITLE.to_owned(),
    });
    // Each piece of work has a number; work whose number is no longer the last one stops.
    let last = use_memo((), |()| Cell::new(0_u32));
    let work = Work::new(desk.clone(), Rc::clone(&last));
    {
        let work = work.clone();
        use_effect_with((), move |()| {
            let listener = browser::when_pasted(move |file| {
                if is_here() {
                    work.open(file);
                }
            });
            move || drop(listener)
        });
    }
    use_effect_with((), move |()| move || last.set(last.get() + 1));
    {
        let (desk, work) = (desk.clone(), work.clone());
        use_effect_with((), move |()| {
            let listener = browser::on_move(move || {
                if !is_here() {
                    work.stop();
                    desk.dispatch(Act::Clear);
                }
            });
            move || drop(listener)
        });
    }
    use_effect_with(desk.focus.clone(), |focus| {
        if let Some(focus) = focus {
            let id = focus.id.clone();
            // On its own, because it has the whole page laid out.
            spawn_local(async move {
                browser::breathe().await;
                browser::focus_id(&id);
            });
        }
    });
    let (ondrop, ondragover) = chooser::drop_target(&work);
    html! {
        <article class="narrow picture" {ondrop} {ondragover}>
            if let Some(trouble) = desk.trouble {
                { error_summary(words::trouble(trouble), desk.field_of(trouble)) }
            }
            <h1 tabindex="-1">{ words::TITLE }</h1>
            <p class="lede">{ words::LEDE }</p>
            <p class="caution"><strong>{ words::ONLY_EXISTING }</strong></p>
            { chooser::chooser(&desk, &work) }
            { busy(&desk, &work) }
            if let Some(read) = &desk.read {
                { told::told(read, desk.opened.is_some()) }
            }
            if let Some(opened) = &desk.opened {
                { marks::section(&desk, opened, &work) }
            }
            if let (Some(opened), Some(outcome)) = (&desk.opened, &desk.outcome) {
                { outcome::section(opened, outcome) }
            }
            if let (Some(opened), true) = (&desk.opened, desk.outcome.is_some() || desk.wants_copy) {
                <Later>{ copying::section(&desk, opened, &work) }</Later>
            }
        </article>
    }
}

/// Whether this is the page at hand: a page of the first program hides it and leaves it in memory.
fn is_here() -> bool {
    Route::at(&browser::address()) == Route::Picture
}

/// What is wrong with an entry, to stand beside it; the box at the top of the page leads to the entry.
fn error_beside(desk: &DeskHandle, entry: Entry) -> Html {
    match desk.trouble_with(entry) {
        Some(trouble) => html! { <p id={ERROR} class="error">{ words::trouble(trouble) }</p> },
        None => html! {},
    }
}

/// The element of that: there is never more than one.
const ERROR: &str = "picture-error";

/// What is being done, how far it is, and the way to stop it.
fn busy(desk: &DeskHandle, work: &Work) -> Html {
    let word = match desk.busy {
        Some((Busy::Opening, _)) => words::OPENING,
        Some((Busy::Measuring, _)) => words::MEASURING,
        Some((Busy::Copying, _)) => words::COPYING,
        None if desk.was_cancelled => words::CANCELLED,
        None => "",
    };
    let stop = {
        let (work, desk) = (work.clone(), desk.clone());
        Callback::from(move |_: MouseEvent| {
            work.stop();
            desk.dispatch(Act::Cancelled);
        })
    };
    html! {
        <div class={classes!("working", (!word.is_empty()).then_some("notice"))}>
            // Told once; how far it is would be told again and again.
            <p role="status">{ word }</p>
            if let Some((_, share)) = desk.busy {
                <p class="row">
                    <progress max="100" value={format!("{:.0}", 100.0 * share)} aria-label={word} />
                    <button type="button" class="press-quiet" onclick={stop}>{ words::CANCEL }</button>
                </p>
            }
        </div>
    }
}
