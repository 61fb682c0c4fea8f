//! Fragments that are no address. The router takes every fragment for an address that begins with
//! a slash, and stops the program at one that does not.

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::JsValue;

/// Leads a fragment such as `#main`, typed or followed from elsewhere, to the start page. Has to
/// run before the router listens.
pub fn keep_to_addresses() {
    EventListener::new(&window(), "popstate", |_| {
        let fragment = window().location().hash().unwrap_or_default();
        if !fragment.is_empty() && !fragment.starts_with("#/") {
            to_the_start();
        }
    })
    .forget();
}

fn to_the_start() {
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some("#/"));
    }
}
