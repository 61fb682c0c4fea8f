//! The session and the addresses around everything, the frame, and which page stands in it.

use yew::prelude::*;
use yew_router::{HashRouter, Switch};

use crate::pages::{About, Check, Distance, Learn, NotFound, Picture, Read, Ruler, Start};
use crate::route::Route;
use crate::session::{Session, SessionHandle};
use crate::ui::Frame;

/// The whole program.
#[component]
pub fn App() -> Html {
    // The session stands outside the router: a click that changes both is shown in this order.
    let session = use_reducer(Session::default);
    html! {
        <ContextProvider<SessionHandle> context={session}>
            <HashRouter>
                <Frame>
                    <Switch<Route> render={page} />
                </Frame>
            </HashRouter>
        </ContextProvider<SessionHandle>>
    }
}

fn page(route: Route) -> Html {
    match route {
        Route::Start => html! { <Start /> },
        Route::Check { n } => html! { <Check {n} /> },
        Route::Learn => html! { <Learn /> },
        Route::LearnPage { n } => html! { <Read {n} /> },
        Route::Distance => html! { <Distance /> },
        Route::Picture => html! { <Picture /> },
        Route::Ruler => html! { <Ruler /> },
        Route::About => html! { <About /> },
        Route::NotFound => html! { <NotFound /> },
    }
}
