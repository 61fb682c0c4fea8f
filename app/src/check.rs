//! The first program: the start page and the whole check, with the frame and the addresses around
//! them. It keeps a place in the page for the second program, [`crate::rooms`].

use yew::prelude::*;

use crate::browser;
use crate::pages::{About, Check, NotFound, Room, Ruler, Start};
use crate::route::Route;
use crate::session::{Session, SessionHandle};
use crate::ui::{Frame, Visit, use_address, use_session};

/// Starts the program.
pub fn start() {
    browser::report_panics();
    let Some(root) = browser::app_root() else {
        return;
    };
    browser::keep_to_addresses();
    let handle = yew::Renderer::<App>::with_root(root).render();
    browser::forget_when_hidden(|| handle.destroy());
    browser::mark_ready();
}

/// The whole program.
#[component]
fn App() -> Html {
    // The session stands outside the address: a click that changes both is shown in this order.
    let session = use_reducer(Session::default);
    html! {
        <ContextProvider<SessionHandle> context={session}>
            <Pages />
        </ContextProvider<SessionHandle>>
    }
}

/// The frame, and in it the page of the present address.
#[component]
fn Pages() -> Html {
    let visit = Visit {
        route: use_address(|_| true),
        count: 0,
        is_example: use_session().is_example,
    };
    html! {
        <ContextProvider<Visit> context={visit}>
            <Frame>{ page(visit.route) }</Frame>
        </ContextProvider<Visit>>
    }
}

fn page(route: Route) -> Html {
    match route {
        Route::Start => html! { <Start /> },
        Route::Check { n } => html! { <Check {n} /> },
        Route::Ruler => html! { <Ruler /> },
        Route::About => html! { <About /> },
        Route::Learn | Route::LearnPage { .. } | Route::Distance | Route::Picture => {
            html! { <Room /> }
        }
        Route::NotFound => html! { <NotFound /> },
    }
}
