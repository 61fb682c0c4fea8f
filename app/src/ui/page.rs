//! What every page does on being shown.

use yew::prelude::*;

use super::use_visit;
use crate::browser;
use crate::copy::site;
use crate::session::{Session, SessionHandle};

/// The session, from the nearest provider.
#[hook]
pub fn use_session() -> SessionHandle {
    let own = use_reducer(Session::default);
    use_context::<SessionHandle>().unwrap_or(own)
}

/// Gives the page its title and, whenever the reader has come to it from another, takes them to its
/// top and its heading.
#[hook]
pub fn use_page(title: String) {
    let visit = use_visit();
    let title = if visit.is_example {
        site::example_title(&title)
    } else {
        title
    };
    use_effect_with((title, visit.count), |(title, _)| {
        browser::set_title(&site::full_title(title));
    });
    use_effect_with((visit.route, visit.count), |_| browser::arrive());
}
