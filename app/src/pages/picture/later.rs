//! What stands further down the page: it appears once the part above it can be seen, so that the browser
//! lays out one part at a time and can answer its reader in between.

use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::browser;

#[derive(Properties, PartialEq)]
pub struct LaterProps {
    /// What appears.
    pub children: Html,
}

/// A part of the page that follows another.
#[component]
pub fn Later(props: &LaterProps) -> Html {
    let is_time = use_state_eq(|| false);
    {
        let is_time = is_time.setter();
        use_effect_with((), move |()| {
            spawn_local(async move {
                browser::until_shown().await;
                is_time.set(true);
            });
        });
    }
    if *is_time {
        props.children.clone()
    } else {
        html! {}
    }
}
