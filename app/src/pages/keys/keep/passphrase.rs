//! Fields for a passphrase. What is typed stays in the field alone and is taken out of it when it has been used.

use yew::prelude::*;

use crate::copy::keep;

/// One field.
#[derive(Properties, PartialEq)]
pub struct PassphraseProps {
    /// Its id.
    pub id: &'static str,
    /// Its name.
    pub label: &'static str,
    /// What to bear in mind.
    #[prop_or_default]
    pub hint: Option<&'static str>,
    /// What is wrong with it.
    #[prop_or_default]
    pub error: Option<&'static str>,
    /// Whether what is typed can be read.
    pub is_shown: bool,
    /// Holds the field.
    pub node: NodeRef,
}

/// A field for a passphrase, with its hint and what is wrong.
#[component]
pub fn Passphrase(props: &PassphraseProps) -> Html {
    let PassphraseProps {
        id,
        label,
        hint,
        error,
        is_shown,
        node,
    } = props;
    let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
    let described: Vec<&str> = [
        hint.map(|_| hint_id.as_str()),
        error.map(|_| error_id.as_str()),
    ]
    .into_iter()
    .flatten()
    .collect();
    let described = (!described.is_empty()).then(|| described.join(" "));
    html! {
        <div class="field">
            <label for={*id}>{ *label }</label>
            if let Some(hint) = hint {
                <p id={hint_id.clone()} class="hint">{ *hint }</p>
            }
            if let Some(error) = error {
                <p id={error_id.clone()} class="error" role="alert">{ *error }</p>
            }
            <input id={*id} ref={node.clone()} class="input" type={if *is_shown { "text" } else { "password" }}
                aria-describedby={described} aria-invalid={error.map(|_| "true")} autocomplete="off"
                autocorrect="off" autocapitalize="off" spellcheck="false" />
        </div>
    }
}

/// Shows what is typed, or hides it again.
pub fn show_box(is_shown: &UseStateHandle<bool>) -> Html {
    let toggle = {
        let is_shown = is_shown.clone();
        Callback::from(move |_: Event| is_shown.set(!*is_shown))
    };
    html! {
        <label class="tick">
            <input type="checkbox" checked={**is_shown} onchange={toggle} autocomplete="off" />
            <span>{ keep::SHOW }</span>
        </label>
    }
}
