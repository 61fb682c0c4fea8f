//! Keeping the page for use without a network. The start script does it; the programs ask it to.

use gloo::events::EventListener;
use gloo::utils::{document, window};
use js_sys::Promise;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, EventInit};

/// What may be asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wish {
    /// To be told only.
    Look,
    /// To keep the page.
    Keep,
    /// To keep it no longer.
    Remove,
}

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_name = selfCheckKept, catch)]
    fn kept(wish: &str) -> Result<Promise, JsValue>;
}

/// Whether the page is kept after `wish` has been carried out; absent where this browser cannot keep
/// it.
pub async fn is_kept(wish: Wish) -> Option<bool> {
    let wish = match wish {
        Wish::Look => "look",
        Wish::Keep => "keep",
        Wish::Remove => "remove",
    };
    let answer = JsFuture::from(kept(wish).ok()?).await.ok()?;
    answer.as_bool()
}

/// The name of the file that holds the whole page, as the start script knows it; absent in that file.
pub fn one_file() -> Option<String> {
    told_by_the_page("data-one-file")
}

/// Whether the page was opened from a file. Some browsers give all such pages one store: whatever is kept
/// in it, any other file that is opened can read.
pub fn is_from_disk() -> bool {
    window()
        .location()
        .protocol()
        .is_ok_and(|protocol| protocol == "file:")
}

/// The number of this build, which the page and its edition in one file have in common.
pub fn build() -> Option<String> {
    told_by_the_page("data-build")
}

/// What the page says on the element of its start script.
fn told_by_the_page(name: &str) -> Option<String> {
    let boot = document()
        .query_selector(&format!("script[{name}]"))
        .ok()??;
    boot.get_attribute(name)
}

/// By what the second program asks the first whether it may offer anything to keep.
const MAY_KEEP: &str = "self-check-may-keep";

/// Whether something to keep may be offered. Where a person is feared it may not: others who use the
/// device could find it. The first program knows, and says no by taking the event for itself.
pub fn may_offer_to_keep() -> bool {
    let can_be_taken = EventInit::new();
    can_be_taken.set_cancelable(true);
    Event::new_with_event_init_dict(MAY_KEEP, &can_be_taken)
        .and_then(|question| window().dispatch_event(&question))
        .unwrap_or(false)
}

/// Says no for as long as what is returned is kept.
pub fn forbid_keeping() -> EventListener {
    let options = gloo::events::EventListenerOptions::enable_prevent_default();
    EventListener::new_with_options(&window(), MAY_KEEP, options, |question| {
        question.prevent_default();
    })
}
