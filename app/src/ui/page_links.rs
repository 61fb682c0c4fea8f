//! The quiet links beside "Continue".

use self_check_core::path::Stop;
use yew::prelude::*;

use crate::copy::site;
use crate::route::Route;
use crate::session::Session;

/// Back by one page from page `n` and, once every question has its answer, to all of them.
pub fn page_links(session: &Session, n: usize) -> Html {
    let path = session.path();
    let back = match n {
        0 => Route::Start,
        n => Route::Check { n: n - 1 },
    };
    let answers = path
        .position(Stop::LookOver)
        .filter(|&look_over| path.first_open().is_none() && n + 1 < look_over);
    html! {
        <>
            <a class="plain" href={back}>{ site::BACK }</a>
            if let Some(n) = answers {
                <a class="plain" href={Route::Check { n }}>{ site::TO_ANSWERS }</a>
            }
        </>
    }
}
