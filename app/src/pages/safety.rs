//! Safety first, before any level, where somebody is worried about a person.

use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;
use crate::session::Session;
use crate::ui::{Length, Titled, page_links, progress, reading};

/// What to think of first. Nothing here offers to keep, print or copy anything. It is page `n` of a check of this `length`.
pub fn safety(session: &Session, n: usize, length: Length) -> Html {
    let onward = Route::Check {
        n: session.after(n),
    };
    html! {
        <Titled key={n} title={site::step_title(n + 1)}>
            <div class="narrow calm">
                { progress(n, length) }
                { reading(&copy::safety()) }
                <p class="row">
                    <a class="press" href={onward}>{ site::CONTINUE }</a>
                    { page_links(session, n) }
                </p>
            </div>
        </Titled>
    }
}
