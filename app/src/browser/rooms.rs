//! The second program, as the first meets it: fetched through the start script, which alone can load
//! a script, and shown inside an element of the first.

use gloo::utils::document;
use js_sys::Promise;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Element;

/// The element of the first program in which the second stands.
pub type Host = Element;

#[wasm_bindgen]
extern "C" {
    /// What the second program offers.
    type Rooms;

    #[wasm_bindgen(method, catch)]
    fn enter(this: &Rooms, host: &Host, is_first_page: bool) -> Result<(), JsValue>;

    /// The start script's: fetches the second program, or gives what was fetched before.
    #[wasm_bindgen(js_name = selfCheckRooms, catch)]
    fn rooms() -> Result<Promise, JsValue>;
}

/// Shows the second program in `host`, fetched before if need be; false where it cannot be had. By
/// then the reader may have gone on: then nothing is shown.
pub async fn open_rooms(host: Host, is_first_page: bool) -> bool {
    try_to_open(&host, is_first_page).await.is_ok()
}

async fn try_to_open(host: &Host, is_first_page: bool) -> Result<(), JsValue> {
    let rooms: Rooms = JsFuture::from(rooms()?).await?.unchecked_into();
    if host.is_connected() {
        rooms.enter(host, is_first_page)?;
    }
    Ok(())
}

/// A new element for the second program to fill, not yet in the page.
pub fn room_element() -> Option<Element> {
    let element = document().create_element("div").ok()?;
    element.set_class_name("room");
    Some(element)
}

/// Puts the second program's element into the first's, as all that is there.
pub fn stand_in(host: &Host, element: &Element) {
    let _ = host.append_child(element);
}

/// Takes the second program's element out of the page.
pub fn take_out(element: &Element) {
    element.remove();
}
