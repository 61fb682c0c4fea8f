//! A neutral letter for a tenant to send.

use self_check_core::answers::Answers;
use yew::prelude::*;

use crate::copy::{self, site};
use crate::ui::CopyText;

/// The letter, folded, right below the step that asks for it.
pub fn letter(answers: &Answers) -> Html {
    let lines = copy::landlord_letter(answers);
    html! {
        <details class="letter screen-only">
            <summary>{ site::LETTER }</summary>
            <p class="note">{ site::LETTER_NOTE }</p>
            <blockquote>{ for lines.iter().map(|line| html! { <p>{ *line }</p> }) }</blockquote>
            <CopyText label={site::COPY_LETTER} id="letter-text" text={lines.join("\n\n")} />
        </details>
    }
}
