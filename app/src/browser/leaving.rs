//! Going away and leaving nothing behind.

use std::cell::RefCell;

use gloo::events::EventListener;
use gloo::utils::{document, window};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::{Event, PageTransitionEvent};

use super::failure::app_root;

thread_local! {
    static FORGET: RefCell<Option<Box<dyn FnOnce()>>> = const { RefCell::new(None) };
}

/// Empties the page whenever it is hidden for good or kept for "Back", and calls `forget` to drop
/// what it held. A page that the browser brings back out of its memory starts anew.
pub fn forget_when_hidden(forget: impl FnOnce() + 'static) {
    FORGET.set(Some(Box::new(forget)));
    EventListener::new(&window(), "pagehide", |_| empty_the_page()).forget();
    EventListener::new(&window(), "pageshow", |event| {
        let kept = event
            .dyn_ref::<PageTransitionEvent>()
            .is_some_and(PageTransitionEvent::persisted);
        if kept {
            let _ = window().location().reload();
        }
    })
    .forget();
}

/// What the first program tells the second when the reader leaves.
const LEAVING: &str = "self-check-leaving";

/// Calls `forget` when the page is hidden for good or the reader leaves, wherever the second program
/// stands then.
pub fn forget_when_left(forget: fn()) {
    for event in ["pagehide", LEAVING] {
        EventListener::new(&window(), event, move |_| forget()).forget();
    }
}

#[wasm_bindgen]
extern "C" {
    /// The start script's: removes what this site keeps in the browser and goes to an empty page that
    /// takes this one's place in the history.
    #[wasm_bindgen(js_name = selfCheckLeave)]
    fn leave();
}

/// Blanks the page at once, then goes for good and leaves nothing of this site behind.
pub fn leave_now() {
    empty_the_page();
    document().set_title("");
    leave();
}

/// Takes both programs out of the document in one step. What they showed is gone when this returns;
/// what they held is dropped as soon as the present event is over.
fn empty_the_page() {
    if let Some(root) = app_root() {
        root.remove();
    }
    if let Some(forget) = FORGET.take() {
        forget();
    }
    if let Ok(event) = Event::new(LEAVING) {
        let _ = window().dispatch_event(&event);
    }
}
