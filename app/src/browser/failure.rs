//! When the program fails. The page beside it shows what to do then; it learns that something
//! failed and never what, because a panic's message could hold an answer.

use gloo::utils::{document, window};
use web_sys::{Element, Event};

/// From now on a panic tells the page, and nobody else, that the program has stopped.
pub fn report_panics() {
    yew::set_custom_panic_hook(Box::new(|_| {
        if let Ok(event) = Event::new("self-check-failed") {
            let _ = window().dispatch_event(&event);
        }
    }));
}

/// The element that the program fills.
pub fn app_root() -> Option<Element> {
    document().get_element_by_id("app")
}
