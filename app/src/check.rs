//! The first program: the start page and the whole check, with the frame and the addresses around
//! them. It keeps a place in the page for the second program, [`crate::rooms`].

use yew::prelude::*;

use crate::browser;
use crate::pages::{Room, Ruler, check, is_beyond, lead_back, not_found, start as start_page};
use crate::route::Route;
use crate::session::{Act, Session, SessionHandle};
use crate::ui::{Visit, frame, use_address, use_session};

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
    use_effect_with(session.is_about_a_feared_person(), |&is_feared| {
        let no = is_feared.then(browser::forbid_keeping);
        move || drop(no)
    });
    {
        let session = session.dispatcher();
        use_effect_with((), move |()| {
            let listener = browser::on_begin_anew(move || session.dispatch(Act::BeginFromBoard));
            move || drop(listener)
        });
    }
    html! {
        <ContextProvider<SessionHandle> context={session}>
            <Pages />
        </ContextProvider<SessionHandle>>
    }
}

/// The frame, and in it the page of the present address.
#[component]
fn Pages() -> Html {
    let session = use_session();
    let visit = Visit {
        route: use_address(|_| true),
        count: 0,
        is_example: session.is_example,
    };
    {
        let session = session.clone();
        use_effect_with(is_beyond(&session, visit.route), move |&is_beyond| {
            if is_beyond {
                lead_back(&session);
            }
        });
    }
    html! {
        <ContextProvider<Visit> context={visit}>
            { frame(&session, visit.route, page(&session, visit.route)) }
        </ContextProvider<Visit>>
    }
}

fn page(session: &SessionHandle, route: Route) -> Html {
    match route {
        Route::Start => start_page(session),
        Route::Check { n } => check(session, n),
        Route::Ruler => html! { <Ruler /> },
        Route::Learn
        | Route::LearnPage { .. }
        | Route::Distance
        | Route::Picture
        | Route::About
        | Route::Keys
        | Route::KeysPage { .. } => html! { <Room /> },
        Route::NotFound => not_found(),
    }
}
