//! One page of the check, by its number. Which page that is follows from the answers.

use self_check_core::path::Stop;
use yew::prelude::*;

use super::look_over::look_over;
use super::question::QuestionPage;
use super::result::ResultPage;
use super::to_read::to_read;
use crate::copy;
use crate::route::Route;
use crate::session::{Act, SessionHandle};
use crate::ui::Length;

/// The page of the check with this number; nothing where the answers do not lead so far, since
/// [`lead_back`] is called then.
pub fn check(session: &SessionHandle, n: usize) -> Html {
    if is_beyond(session, Route::Check { n }) {
        return html! {};
    }
    let path = session.path();
    let length = Length {
        pages: path.stops().len(),
        may_shorten: path.may_shorten(&session.answers),
    };
    match path.stops()[n] {
        Stop::Ask(question) => html! { <QuestionPage key={n} {n} {length} {question} /> },
        Stop::NextHour => to_read(session, n, length, &copy::next_hour(), None),
        Stop::Safety => to_read(session, n, length, &copy::safety(), Some("calm")),
        Stop::LookOver => look_over(session, n, length),
        Stop::Result => html! { <ResultPage {n} /> },
    }
}

/// Whether an address is one of the check that the answers do not reach.
pub fn is_beyond(session: &SessionHandle, route: Route) -> bool {
    matches!(route, Route::Check { n } if n > session.furthest())
}

/// Leads from such an address to the first question without an answer, or to the start when there is
/// no answer at all, as after loading the page anew.
pub fn lead_back(session: &SessionHandle) {
    let furthest = session.furthest();
    if furthest == 0 {
        session.dispatch(Act::MissAnswers);
    }
    let route = match furthest {
        0 => Route::Start,
        n => Route::Check { n },
    };
    route.go_instead();
}
