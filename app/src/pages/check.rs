//! One page of the check, by its number. Which page that is follows from the answers.

use self_check_core::path::Stop;
use yew::prelude::*;

use super::look_over::look_over;
use super::next_hour::next_hour;
use super::question::QuestionPage;
use super::result::ResultPage;
use super::safety::safety;
use crate::route::Route;
use crate::session::{Act, SessionHandle};
use crate::ui::{Length, use_session};

/// The page of the check with this number, or, where the answers do not lead so far, the way to the
/// furthest one they do lead to.
pub fn check(session: &SessionHandle, n: usize) -> Html {
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
        Stop::NextHour => next_hour(session, n, length),
        Stop::Safety => safety(session, n, length),
        Stop::LookOver => look_over(session, n, length),
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
