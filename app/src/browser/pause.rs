//! Letting the browser show what has changed before work begins in which the page stands still, and while the
//! browser works itself.

use std::rc::Rc;

use gloo::utils::window;
use js_sys::Promise;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// How long a frame may take to come, in milliseconds; a window in the background gets none. Our assumption.
const LONGEST_FRAME_MS: i32 = 300;

/// Waits until what the page says now can be seen.
pub async fn until_shown() {
    let shown = Promise::new(&mut |resolve, _| {
        let _ = window()
            .set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, LONGEST_FRAME_MS);
        // A frame is asked for just before it is drawn; what comes right after it comes after the drawing.
        let frame = Closure::once_into_js(move || {
            let _ = window().set_timeout_with_callback(&resolve);
        });
        let _ = window().request_animation_frame(frame.unchecked_ref());
    });
    let _ = JsFuture::from(shown).await;
}

/// Has one frame drawn after the other, until what is returned is dropped. What a browser puts off until it
/// has nothing to do it then does in the rest of a frame's time; with no frame to come it goes on for longer.
#[must_use]
pub fn keep_frames_coming() -> Rc<()> {
    let held = Rc::new(());
    let is_held = Rc::downgrade(&held);
    spawn_local(async move {
        while is_held.upgrade().is_some() {
            let frame = Promise::new(&mut |resolve, _| {
                let _ = window().request_animation_frame(&resolve);
            });
            let _ = JsFuture::from(frame).await;
        }
    });
    held
}
