//! Going away and leaving nothing behind.

use std::cell::RefCell;

use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use gloo::utils::{document, window};
use js_sys::{Array, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Event, PageTransitionEvent, ServiceWorkerRegistration};

use super::failure::app_root;

/// How long leaving may wait for caches and worker to go, in milliseconds. Our assumption: the
/// page is blank from the first moment; a quarter of a second is enough for both on a slow phone.
const PATIENCE_MS: u32 = 250;

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

/// Blanks the page at once, then removes what this site keeps in the browser and goes to an empty
/// page that takes this one's place in the history.
pub fn leave_now() {
    empty_the_page();
    document().set_title("");
    Timeout::new(PATIENCE_MS, go).forget();
    spawn_local(async {
        // Either may be missing, as in a page opened from a file; then there is nothing to remove.
        let _ = remove_caches().await;
        let _ = remove_worker().await;
        go();
    });
}

fn go() {
    let _ = window().location().replace("about:blank");
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

/// Every cache of this site is named with this at its beginning: another page at the same address
/// may have caches of its own.
const CACHE_PREFIX: &str = "self-check";

async fn remove_caches() -> Result<(), JsValue> {
    let caches = window().caches()?;
    let names: Array = JsFuture::from(caches.keys()).await?.unchecked_into();
    let removals: Array = names
        .iter()
        .filter_map(|name| name.as_string())
        .filter(|name| name.starts_with(CACHE_PREFIX))
        .map(|name| caches.delete(&name))
        .collect();
    JsFuture::from(Promise::all(&removals)).await?;
    Ok(())
}

async fn remove_worker() -> Result<(), JsValue> {
    let navigator = window().navigator();
    if !Reflect::has(&navigator, &"serviceWorker".into())? {
        return Ok(());
    }
    let registration = JsFuture::from(navigator.service_worker().get_registration()).await?;
    if let Some(registration) = registration.dyn_ref::<ServiceWorkerRegistration>() {
        JsFuture::from(registration.unregister()?).await?;
    }
    Ok(())
}
