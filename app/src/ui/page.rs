//! What every page does on being shown.

use yew::prelude::*;

use super::use_visit;
use crate::browser;
use crate::copy::site;
use crate::session::SessionHandle;

/// A page that has a title and nothing else of its own to remember.
#[derive(Properties, PartialEq)]
pub struct TitledProps {
    /// The title; see [`use_page`].
    pub title: AttrValue,
    /// The page.
    pub children: Html,
}

/// Gives a page its title; see [`use_page`]. Such pages are plain functions: a component of its own
/// costs each about two kilobytes.
#[component]
pub fn Titled(props: &TitledProps) -> Html {
    use_page(props.title.to_string());
    props.children.clone()
}

/// The session, from the program around the page.
#[hook]
pub fn use_session() -> SessionHandle {
    match use_context::<SessionHandle>() {
        Some(session) => session,
        // Ticks without a session would vanish without a sign: better to stop and show the list.
        None => unreachable!("the first program provides the session"),
    }
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
