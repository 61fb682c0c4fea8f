//! A neutral letter for a tenant to send.

use yew::prelude::*;

use crate::copy::{self, site};

/// The letter, folded.
pub fn letter() -> Html {
    html! {
        <details class="letter screen-only">
            <summary>{ site::LETTER }</summary>
            <p class="note">{ site::LETTER_NOTE }</p>
            <blockquote>
                { for copy::landlord_letter().iter().map(|line| html! { <p>{ *line }</p> }) }
            </blockquote>
        </details>
    }
}
