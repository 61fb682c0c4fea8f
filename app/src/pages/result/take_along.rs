//! Print, and copy as text. Neither is offered where somebody may look on.

use std::rc::Rc;

use self_check_core::assess::Assessment;
use yew::prelude::*;

use super::text::as_text;
use crate::browser;
use crate::copy::site;

/// What to take along.
#[derive(Properties, PartialEq)]
pub struct TakeAlongProps {
    /// The result.
    pub assessment: Assessment,
    /// Whether it is the invented household's.
    pub is_example: bool,
}

/// How far copying has come.
#[derive(Clone, PartialEq)]
enum Copying {
    NotAsked,
    Done,
    /// The browser refused; the text, to copy by hand.
    Refused(Rc<str>),
}

/// The two buttons, and what the other programs on the device may do with a copied text.
#[component]
pub fn TakeAlong(props: &TakeAlongProps) -> Html {
    let copying = use_state(|| Copying::NotAsked);
    let print = Callback::from(|_: MouseEvent| browser::print());
    let copy = {
        let copying = copying.clone();
        let text: Rc<str> = as_text(&props.assessment, props.is_example).into();
        Callback::from(move |_: MouseEvent| {
            let copying = copying.clone();
            let text = Rc::clone(&text);
            yew::platform::spawn_local(async move {
                let is_done = browser::copy_text(&text).await;
                copying.set(if is_done {
                    Copying::Done
                } else {
                    Copying::Refused(text)
                });
            });
        })
    };
    html! {
        <section class="take-along screen-only" aria-labelledby="take-along">
            <h2 id="take-along">{ site::TAKE_ALONG }</h2>
            <p>{ site::TAKE_ALONG_CAUTION }</p>
            <p class="row">
                <button type="button" class="press-quiet" onclick={print}>{ site::PRINT }</button>
                <button type="button" class="press-quiet" onclick={copy}>{ site::COPY_AS_TEXT }</button>
            </p>
            <div role="status">{ copying_line(&copying) }</div>
        </section>
    }
}

fn copying_line(copying: &Copying) -> Html {
    match copying {
        Copying::NotAsked => html! {},
        Copying::Done => html! { <p>{ site::COPIED }</p> },
        Copying::Refused(text) => html! {
            <>
                <p><label for="as-text">{ site::COPY_BY_HAND }</label></p>
                <textarea id="as-text" class="input" readonly=true rows="12" autocomplete="off" spellcheck="false"
                    value={text.to_string()} />
            </>
        },
    }
}
