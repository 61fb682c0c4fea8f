//! The answers, each changeable, before the result.

use self_check_core::path::Stop;
use self_check_core::questions::Question;
use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;
use crate::session::Session;
use crate::ui::{Length, PageLinks, Progress, use_page, use_session};

/// Where the page stands.
#[derive(Properties, PartialEq)]
pub struct LookOverProps {
    /// Its place in the path.
    pub n: usize,
    /// How many pages the path has.
    pub length: Length,
}

/// Every question of the path with its answer and a link to change it.
#[component]
pub fn LookOver(props: &LookOverProps) -> Html {
    let LookOverProps { n, length } = *props;
    use_page(site::ANSWERS_TITLE.to_owned());
    let session = use_session();
    let path = session.path();
    let questions = path.stops().iter().enumerate();
    html! {
        <div class="narrow">
            <Progress {n} {length} />
            <h1 tabindex="-1">{ site::ANSWERS_TITLE }</h1>
            <p class="lede">{ site::ANSWERS_LEDE }</p>
            <dl class="answers">
                { for questions.filter_map(|(place, stop)| match stop {
                    Stop::Ask(question) => Some(answer(&session, place, *question)),
                    _ => None,
                }) }
            </dl>
            <p class="row">
                <a class="press" href={Route::Check { n: n + 1 }}>{ site::SEE_RESULT }</a>
                <PageLinks {n} />
            </p>
        </div>
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
