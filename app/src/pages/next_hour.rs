//! What to do in the next hour, before any question on a missing key.

use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;
use crate::session::Session;
use crate::ui::{Length, Titled, page_links, progress, reading};

/// The list for the next hour; the check goes on below it. It is page `n` of a check of this `length`.
pub fn next_hour(session: &Session, n: usize, length: Length) -> Html {
    let onward = Route::Check {
        n: session.after(n),
    };
    html! {
        <Titled key={n} title={site::step_title(n + 1)}>
            <div class="narrow">
                { progress(n, length) }
                { reading(&copy::next_hour()) }
                <p class="row">
                    <a class="press" href={onward}>{ site::CONTINUE }</a>
                    { page_links(session, n) }
                </p>
            </div>
        </Titled>
    }
}
