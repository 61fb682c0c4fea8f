//! Check a picture that exists already: how readable the key in it is, what its file tells besides,
//! and a copy that is safe to share. All of it is dropped with the page.

mod chooser;
mod copying;
mod covers;
mod desk;
mod marks;
mod outcome;
mod told;
mod work;

use std::cell::Cell;
use std::rc::Rc;

use yew::prelude::*;

use crate::browser;
use crate::copy::picture as words;
use crate::ui::use_page;
use desk::{Act, Busy, Desk};
use work::Work;

/// What this page holds, and the way to act on it.
type DeskHandle = UseReducerHandle<Desk>;

/// The page.
#[component]
pub fn Picture() -> Html {
    use_page(words::TITLE.to_owned());
    let desk = use_reducer(Desk::default);
    // Each piece of work has a number; work whose number is no longer the last one stops.
    let last = use_memo((), |()| Cell::new(0_u32));
    let work = Work::new(desk.clone(), Rc::clone(&last));
    {
        let work = work.clone();
        use_effect_with(desk.is_busy(), move |_| {
            let listener = browser::when_pasted(move |file| work.open(file));
            move || drop(listener)
        });
    }
    use_effect_with((), move |()| move || last.set(last.get() + 1));
    use_effect_with(desk.focus, |focus| {
        if let Some(focus) = focus {
            browser::focus_id(focus.id);
        }
    });
    let (ondrop, ondragover) = chooser::drop_target(&work);
    html! {
        <article class="narrow picture" {ondrop} {ondragover}>
            <h1 tabindex="-1">{ words::TITLE }</h1>
            <p class="lede">{ words::LEDE }</p>
            <p class="caution"><strong>{ words::ONLY_EXISTING }</strong></p>
            { chooser::chooser(&desk, &work) }
            { problem(&desk) }
            { busy(&desk, &work) }
            if let Some(opened) = &desk.opened {
                { told::told(opened) }
                { marks::section(&desk, opened, &work) }
            }
            if let (Some(opened), Some(outcome)) = (&desk.opened, &desk.outcome) {
                { outcome::section(opened, outcome) }
                { copying::section(&desk, opened, &work) }
            }
        </article>
    }
}

/// What is wrong, and what to do.
fn problem(desk: &DeskHandle) -> Html {
    let Some(trouble) = desk.trouble else {
        return html! {};
    };
    html! {
        <div id="picture-trouble" class="error-summary" role="alert" tabindex="-1">
            <p class="error">{ words::trouble(trouble) }</p>
        </div>
    }
}

/// What is being done, how far it is, and the way to stop it.
fn busy(desk: &DeskHandle, work: &Work) -> Html {
    let Some((busy, share)) = desk.busy else {
        let note = desk.was_cancelled.then_some(words::CANCELLED);
        return html! { <div role="status">{ for note.map(|note| html! { <p class="note">{ note }</p> }) }</div> };
    };
    let word = match busy {
        Busy::Opening => words::OPENING,
        Busy::Measuring => words::MEASURING,
        Busy::Copying => words::COPYING,
    };
    let stop = {
        let (work, desk) = (work.clone(), desk.clone());
        Callback::from(move |_: MouseEvent| {
            work.stop();
            desk.dispatch(Act::Cancelled);
        })
    };
    html! {
        <div class="notice" role="status">
            <p class="row">
                <label for="picture-progress">{ words::progress(word, share) }</label>
                <progress id="picture-progress" max="100" value={format!("{:.0}", 100.0 * share)} />
                <button type="button" class="press-quiet" onclick={stop}>{ words::CANCEL }</button>
            </p>
        </div>
    }
}
