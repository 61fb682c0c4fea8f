//! A page of the check that asks nothing: what to do, or to think of, before the questions go on.

use yew::prelude::*;

use crate::copy::{PageWords, site};
use crate::route::Route;
use crate::session::Session;
use crate::ui::{Length, Titled, page_links, progress, reading};

/// These words; the check goes on below them. They are page `n` of a check of this `length`. Nothing
/// here offers to keep, print or copy anything: a feared person could find it.
pub fn to_read(
    session: &Session,
    n: usize,
    length: Length,
    words: &PageWords,
    class: Option<&'static str>,
) -> Html {
    let onward = Route::Check {
        n: session.after(n),
    };
    html! {
        <Titled key={n} title={site::step_title(n + 1)}>
            <div class={classes!("narrow", class)}>
                { progress(n, length) }
                { reading(words) }
                <p class="row">
                    <a class="press" href={onward}>{ site::CONTINUE }</a>
                    { page_links(session, n) }
                </p>
            </div>
        </Titled>
    }
}
