//! What stands around every page: the way past it, the name, the way out, and where else to go.

use yew::prelude::*;

use crate::browser;
use crate::copy::site;
use crate::route::Route;
use crate::session::{Act, SessionHandle};

/// The frame around every page.
pub fn frame(session: &SessionHandle, route: Route, page: Html) -> Html {
    // The fragment is the page's address, so the link cannot lead to one: it moves focus itself.
    let skip = Callback::from(|event: MouseEvent| {
        event.prevent_default();
        browser::focus_id("main");
    });
    let at_learn = matches!(
        route,
        Route::Learn | Route::LearnPage { .. } | Route::Distance | Route::Picture
    );
    let at_keys = matches!(route, Route::Keys | Route::KeysPage { .. });
    let leave = Callback::from(|_: MouseEvent| browser::leave_now());
    html! {
        <div class="page">
            <a class="skip" href="#main" onclick={skip}>{ site::SKIP }</a>
            <header class="top">
                <a class="name" href={Route::Start}>
                    { site::NAME_PLAIN }{ " " }<em>{ site::NAME_STRESSED }</em>
                </a>
                <p class="quiet">
                    <button type="button" class="leave" onclick={leave}>{ site::LEAVE_NOW }</button>
                </p>
                <nav aria-label={site::NAV_LABEL}>
                    { place(Route::Keys, site::KEYS, at_keys) }
                    { place(Route::Learn, site::LEARN, at_learn) }
                    { place(Route::About, site::ABOUT, route == Route::About) }
                </nav>
            </header>
            { example_note(session) }
            <main id="main" tabindex="-1">{ page }</main>
            <footer class="foot">
                <p class="note">{ site::FOOT }</p>
                <p class="note">
                    <a href={Route::About}>{ site::ABOUT_LINK }</a>
                </p>
            </footer>
        </div>
    }
}

/// A place in the list of pages.
fn place(to: Route, name: &'static str, is_here: bool) -> Html {
    let current = is_here.then_some("page");
    html! { <a href={to} aria-current={current}>{ name }</a> }
}

/// Says on every page that the answers are an invented household's, for as long as they are.
fn example_note(session: &SessionHandle) -> Html {
    if !session.is_example {
        return html! {};
    }
    let own = {
        let session = session.clone();
        Callback::from(move |_: MouseEvent| {
            session.dispatch(Act::Forget);
            Route::Check { n: 0 }.go();
        })
    };
    html! {
        <aside class="example" aria-label={site::EXAMPLE_LABEL}>
            <p><strong>{ site::EXAMPLE_LABEL }</strong>{ " " }{ site::EXAMPLE_NOTE }</p>
            <p><button type="button" class="plain" onclick={own}>{ site::EXAMPLE_END }</button></p>
        </aside>
    }
}
