//! Coming to a page: its title, the top of it, and focus on its heading, as a full page load would
//! give. A single-page program has to do this itself, or a screen reader is left where it was.

use gloo::utils::document;
use std::cell::Cell;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, ScrollBehavior, ScrollToOptions};

thread_local! {
    static HAS_ARRIVED: Cell<bool> = const { Cell::new(false) };
    static WANTED: Cell<Option<&'static str>> = const { Cell::new(None) };
}

/// Sets the title.
pub fn set_title(title: &str) {
    document().set_title(title);
}

/// Whether the reader is at the first page since loading. From now on, they are not.
pub fn comes_first() -> bool {
    !HAS_ARRIVED.replace(true)
}

/// Tells a program that was loaded later whether the reader has come from another page.
pub fn set_arrived(has_arrived: bool) {
    HAS_ARRIVED.set(has_arrived);
}

/// The next page is arrived at further down: at the element with this id, if it has one.
pub fn arrive_at(id: &'static str) {
    WANTED.set(Some(id));
}

/// Goes to the top and moves focus to the page's heading, or to where [`arrive_at`] said. Does nothing at the first page after
/// loading: there the browser has already done both, and a reader starts at the top by itself.
pub fn arrive() {
    let wanted = WANTED.take();
    if comes_first() {
        return;
    }
    let to_the_top = ScrollToOptions::new();
    to_the_top.set_top(0.0);
    to_the_top.set_behavior(ScrollBehavior::Instant);
    gloo::utils::window().scroll_to_with_scroll_to_options(&to_the_top);
    if wanted.is_some_and(|id| focus_first(&[id])) {
        return;
    }
    if let Ok(Some(heading)) = document().query_selector("main h1[tabindex='-1']") {
        focus(heading.unchecked_ref());
    }
}

/// Moves focus to the element with this id, if it is on the page.
pub fn focus_id(id: &str) {
    focus_first(&[id]);
}

/// Moves focus to the first of these elements that is on the page. Says whether one is.
pub fn focus_first<I: AsRef<str>>(ids: &[I]) -> bool {
    let mut elements = ids
        .iter()
        .filter_map(|id| document().get_element_by_id(id.as_ref()));
    let first = elements.next();
    if let Some(element) = &first {
        focus(element.unchecked_ref());
    }
    first.is_some()
}

/// Moves focus to `element`. An element that cannot take it leaves focus where it is.
fn focus(element: &HtmlElement) {
    let _ = element.focus();
}
