//! The quiet links beside "Continue".

use self_check_core::path::Stop;
use yew::prelude::*;

use super::use_session;
use crate::copy::site;
use crate::route::Route;

/// Where one is.
#[derive(Properties, PartialEq)]
pub struct PageLinksProps {
    /// The page's place in the path.
    pub n: usize,
}

/// Back by one page and, once every question has its answer, to all of them.
#[component]
pub fn PageLinks(props: &PageLinksProps) -> Html {
    let path = use_session().path();
    let back = match props.n {
        0 => Route::Start,
        n => Route::Check { n: n - 1 },
    };
    let answers = path
        .position(Stop::LookOver)
        .filter(|&look_over| path.first_open().is_none() && props.n + 1 < look_over);
    html! {
        <>
            <a class="plain" href={back}>{ site::BACK }</a>
            if let Some(n) = answers {
                <a class="plain" href={Route::Check { n }}>{ site::TO_ANSWERS }</a>
            }
        </>
    }
}
