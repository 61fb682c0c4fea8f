//! The answers, each changeable, before the result.

use self_check_core::path::Stop;
use self_check_core::questions::Question;
use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;
use crate::session::Session;
use crate::ui::{Length, Titled, page_links, progress};

/// Every question of the path with its answer and a link to change it. It is page `n` of a check of this `length`.
pub fn look_over(session: &Session, n: usize, length: Length) -> Html {
    let path = session.path();
    let questions = path.stops().iter().enumerate();
    html! {
        <Titled key={n} title={site::ANSWERS_TITLE}>
            <div class="narrow">
                { progress(n, length) }
                <h1 tabindex="-1">{ site::ANSWERS_TITLE }</h1>
                <p class="lede">{ site::ANSWERS_LEDE }</p>
                <dl class="answers">
                    { for questions.filter_map(|(place, stop)| match stop {
                        Stop::Ask(question) => Some(answer(session, place, *question)),
                        _ => None,
                    }) }
                </dl>
                <p class="row">
                    <a class="press" href={Route::Check { n: n + 1 }}>{ site::SEE_RESULT }</a>
                    { page_links(session, n) }
                </p>
            </div>
        </Titled>
    }
}

fn answer(session: &Session, place: usize, question: Question) -> Html {
    let title = copy::question_on(question, &session.relevant()).title;
    html! {
        <div key={place}>
            <dt>{ title }</dt>
            <dd>{ for answer_texts(session, question).into_iter().map(|text| html! { <span>{ text }</span> }) }</dd>
            <dd class="change">
                <a href={Route::Check { n: place }}>
                    { site::CHANGE }{ " " }<span class="visually-hidden">{ title }</span>
                </a>
            </dd>
        </div>
    }
}

/// What was answered, in the words in which it was offered.
fn answer_texts(session: &Session, question: Question) -> Vec<&'static str> {
    if session.answers.is_not_sure(question) {
        return vec![copy::question_on(question, &session.relevant()).not_sure];
    }
    session
        .answers
        .chosen(question)
        .map(|choice| copy::choice(choice).label)
        .collect()
}
