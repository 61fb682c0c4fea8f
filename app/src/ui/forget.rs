//! Forgetting the answers, with a question first: they cannot be brought back.

use web_sys::HtmlElement;
use yew::prelude::*;

use crate::copy::site;
use crate::session::Act;
use crate::ui::use_session;

/// What to do once they are forgotten.
#[derive(Properties, PartialEq)]
pub struct ForgetProps {
    /// Where the reader goes from here.
    pub onforgotten: Callback<()>,
}

/// A button that asks, and then the two answers. The focus goes along.
#[component]
pub fn Forget(props: &ForgetProps) -> Html {
    let session = use_session();
    let is_asking = use_state(|| false);
    let button = use_node_ref();
    let keep = use_node_ref();
    let has_asked = use_mut_ref(|| false);
    {
        let (button, keep) = (button.clone(), keep.clone());
        use_effect_with(*is_asking, move |&is_asking| {
            *has_asked.borrow_mut() |= is_asking;
            let target = if is_asking { keep } else { button };
            if *has_asked.borrow()
                && let Some(element) = target.cast::<HtmlElement>()
            {
                // A focus that cannot be moved stays where it is.
                let _ = element.focus();
            }
        });
    }
    let ask = set_to(&is_asking, true);
    let do_keep = set_to(&is_asking, false);
    let forget = {
        let onforgotten = props.onforgotten.clone();
        Callback::from(move |_: MouseEvent| {
            session.dispatch(Act::Forget);
            onforgotten.emit(());
        })
    };
    if !*is_asking {
        return html! {
            <button type="button" class="plain" ref={button} onclick={ask}>{ site::START_AGAIN }</button>
        };
    }
    html! {
        <span class="row" role="group" aria-labelledby="forget-them">
            <b id="forget-them">{ site::FORGET_THEM }</b>
            <button type="button" class="press-quiet" onclick={forget}>{ site::YES_FORGET }</button>
            <button type="button" class="press-quiet" ref={keep} onclick={do_keep}>{ site::NO_KEEP }</button>
        </span>
    }
}

fn set_to(state: &UseStateHandle<bool>, value: bool) -> Callback<MouseEvent> {
    let state = state.clone();
    Callback::from(move |_: MouseEvent| state.set(value))
}
