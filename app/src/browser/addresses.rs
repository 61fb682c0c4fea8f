//! The address of the page, and going to another. The browser tells its own moves (a link, "Back", an
//! address typed) by the event `popstate`; moves of a program are told in the same way, so that both
//! programs hear of every one.

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::JsValue;
use web_sys::{Event, ScrollRestoration};

const MOVED: &str = "popstate";

/// The fragment, with its `#`.
pub fn address() -> String {
    window().location().hash().unwrap_or_default()
}

/// Calls `act` after every move, until what it gives is dropped.
pub fn on_move(act: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), MOVED, move |_| act())
}

/// Goes to an address, as a link to it would.
pub fn go_to(address: &str) {
    if let Ok(history) = window().history() {
        let _ = history.push_state_with_url(&JsValue::NULL, "", Some(address));
    }
    tell();
}

/// Goes to an address in place of the present one.
pub fn go_instead_to(address: &str) {
    replace(address);
    tell();
}

/// Leads a fragment that is no address, such as `#main`, typed or followed from elsewhere, to the
/// start page. Has to listen before the programs do, so that they never see one.
///
/// Where a page is scrolled to is the programs' affair as well: the browser would scroll one that
/// is not drawn yet.
pub fn keep_to_addresses() {
    if let Ok(history) = window().history() {
        let _ = history.set_scroll_restoration(ScrollRestoration::Manual);
    }
    keep();
    on_move(keep).forget();
}

fn keep() {
    if !address().starts_with("#/") {
        replace("#/");
    }
}

fn replace(address: &str) {
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(address));
    }
}

fn tell() {
    if let Ok(event) = Event::new(MOVED) {
        let _ = window().dispatch_event(&event);
    }
}
