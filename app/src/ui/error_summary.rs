//! The box that says what is missing and leads to it. It takes focus when it appears.

use yew::prelude::*;

use crate::browser;
use crate::copy::site;

/// The id of the box.
pub const ERROR_SUMMARY: &str = "error-summary";

/// The box at the top of a page with an error: what is missing and what to do about it, and the id of
/// the field to go to.
pub fn error_summary(message: &str, field: AttrValue) -> Html {
    let go = {
        let field = field.clone();
        Callback::from(move |event: MouseEvent| {
            event.prevent_default();
            browser::focus_id(&field);
        })
    };
    html! {
        <div id={ERROR_SUMMARY} class="error-summary" role="alert" tabindex="-1"
            aria-labelledby="error-title">
            <h2 id="error-title">{ site::ERROR_TITLE }</h2>
            <ul>
                <li><a href={format!("#{field}")} onclick={go}>{ message.to_owned() }</a></li>
            </ul>
        </div>
    }
}

/// Moves focus to the box.
pub fn go_to_error_summary() {
    browser::focus_id(ERROR_SUMMARY);
}
