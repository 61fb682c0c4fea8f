//! One page of the check, by its number. Which page that is follows from the answers.

use self_check_core::path::Stop;
use yew::prelude::*;

use super::look_over::LookOver;
use super::next_hour::NextHour;
use super::question::QuestionPage;
use super::result::ResultPage;
use super::safety::Safety;
use crate::route::Route;
use crate::session::Act;
use crate::ui::{Length, use_session};

/// Which page of the check.
#[derive(Properties, PartialEq)]
pub struct CheckProps {
    /// Its place in the path.
    pub n: usize,
}

/// The page of the check with this number, or, where the answers do not lead so far, the way to the
/// furthest one they do lead to.
#[component]
pub fn Check(props: &CheckProps) -> Html {
    let n = props.n;
    let session = use_session();
    if n > session.furthest() {
        return html! { <Elsewhere /> };
    }
    let path = session.path();
    let length = Length {
        pages: path.stops().len(),
        may_shorten: path.may_shorten(&session.answers),
    };
    match path.stops()[n] {
        Stop::Ask(question) => html! { <QuestionPage key={n} {n} {length} {question} /> },
        Stop::NextHour => html! { <NextHour {n} {length} /> },
        Stop::Safety => html! { <Safety {n} {length} /> },
        Stop::LookOver => html! { <LookOver {n} {length} /> },
        Stop::Result => html! { <ResultPage {n} /> },
    }
}

/// Leads from an address that the answers do not reach: to the first question without an answer, or
/// to the start when there is no answer at all, as after loading the page anew.
#[component]
fn Elsewhere() -> Html {
    let session = use_session();
    use_effect_with((), move |()| {
        let furthest = session.furthest();
        if furthest == 0 {
            session.dispatch(Act::MissAnswers);
        }
        let route = match furthest {
            0 => Route::Start,
            n => Route::Check { n },
        };
        route.go_instead();
    });
    html! {}
}
