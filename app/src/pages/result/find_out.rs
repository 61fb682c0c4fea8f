//! What is worth finding out, because the answer would change what to do.

use self_check_core::path::{Path, Stop};
use self_check_core::questions::Question;
use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;

/// The list, each entry a link to its question; nothing where there is none.
pub fn find_out(questions: &[Question], path: &Path) -> Html {
    if questions.is_empty() {
        return html! {};
    }
    html! {
        <section aria-labelledby="find-out">
            <h2 id="find-out">{ site::FIND_OUT }</h2>
            <p>{ site::FIND_OUT_LEDE }</p>
            <ul class="find-out">
                { for questions.iter().map(|&question| to_find_out(question, path)) }
            </ul>
        </section>
    }
}

fn to_find_out(question: Question, path: &Path) -> Html {
    let name = copy::short(question);
    let title = match path.position(Stop::Ask(question)) {
        Some(n) => html! { <a href={Route::Check { n }}>{ name }</a> },
        None => html! { <b>{ name }</b> },
    };
    html! {
        <li key={question as usize}>
            <h3>{ title }</h3>
            <p>{ copy::find_out(question) }</p>
        </li>
    }
}
