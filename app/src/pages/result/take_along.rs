//! Print, and copy as text. Neither is offered where somebody may look on.

use self_check_core::answers::Answers;
use self_check_core::assess::Assessment;
use yew::prelude::*;

use super::text::as_text;
use crate::browser;
use crate::copy::site;
use crate::ui::CopyText;

/// The two buttons, and what the other programs on the device may do with a copied text.
pub fn take_along(assessment: &Assessment, answers: &Answers, is_example: bool) -> Html {
    let print = Callback::from(|_: MouseEvent| browser::print());
    html! {
        <section class="take-along screen-only" aria-labelledby="take-along">
            <h2 id="take-along">{ site::TAKE_ALONG }</h2>
            <p>{ site::TAKE_ALONG_CAUTION }</p>
            <CopyText label={site::COPY_AS_TEXT} id="as-text" text={as_text(assessment, answers, is_example)}>
                <button type="button" class="press-quiet" onclick={print}>{ site::PRINT }</button>
            </CopyText>
        </section>
    }
}
