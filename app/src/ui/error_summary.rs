//! The box that says what is missing and leads to it. It takes focus when it appears.

use yew::prelude::*;

use crate::browser;
use crate::copy::site;

/// What is missing, and where.
#[derive(Properties, PartialEq)]
pub struct ErrorSummaryProps {
    /// What is missing and what to do about it.
    pub message: AttrValue,
    /// The id of the field to go to.
    pub field: AttrValue,
    /// How often "Continue" was pressed in vain: each time takes focus here again.
    pub tries: usize,
}

/// The box at the top of a page with an error.
#[component]
pub fn ErrorSummary(props: &ErrorSummaryProps) -> Html {
    use_effect_with(props.tries, |_| browser::focus_id("error-summary"));
    let go = {
        let field = props.field.clone();
        Callback::from(move |event: MouseEvent| {
            event.prevent_default();
            browser::focus_id(&field);
        })
    };
    html! {
        <div id="error-summary" class="error-summary" role="alert" tabindex="-1"
            aria-labelledby="error-title">
            <h2 id="error-title">{ site::ERROR_TITLE }</h2>
            <ul>
                <li><a href={format!("#{}", props.field)} onclick={go}>{ &props.message }</a></li>
            </ul>
        </div>
    }
}
