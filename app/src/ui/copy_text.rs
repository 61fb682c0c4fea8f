//! A button that copies a text, and the text itself where the browser does not allow that.

use yew::prelude::*;

use crate::browser;
use crate::copy::site;

/// What to copy.
#[derive(Properties, PartialEq)]
pub struct CopyTextProps {
    /// The button's words.
    pub label: &'static str,
    /// The id of the field that shows the text where it has to be copied by hand.
    pub id: &'static str,
    /// The text.
    pub text: AttrValue,
    /// Stands before the button in the same row.
    #[prop_or_default]
    pub children: Html,
}

/// How far copying has come.
#[derive(Clone, Copy, PartialEq)]
enum Copying {
    NotAsked,
    Done,
    Refused,
}

/// The button, and below it what became of it.
#[component]
pub fn CopyText(props: &CopyTextProps) -> Html {
    let copying = use_state(|| Copying::NotAsked);
    let copy = {
        let copying = copying.clone();
        let text = props.text.clone();
        Callback::from(move |_: MouseEvent| {
            let (copying, text) = (copying.clone(), text.clone());
            yew::platform::spawn_local(async move {
                let is_done = browser::copy_text(&text).await;
                copying.set(if is_done {
                    Copying::Done
                } else {
                    Copying::Refused
                });
            });
        })
    };
    html! {
        <>
            <p class="row">
                { props.children.clone() }
                <button type="button" class="press-quiet" onclick={copy}>{ props.label }</button>
            </p>
            <div role="status">
                if *copying == Copying::Done {
                    <p>{ site::COPIED }</p>
                } else if *copying == Copying::Refused {
                    <p><label for={props.id}>{ site::COPY_BY_HAND }</label></p>
                    <textarea id={props.id} class="input" readonly=true rows="12" autocomplete="off"
                        spellcheck="false" value={props.text.clone()} />
                }
            </div>
        </>
    }
}
