//! The second program, as the first meets it: fetched through the start script, which alone can load
//! a script, and shown inside an element of the first.

use gloo::events::EventListener;
use gloo::utils::{document, window};
use js_sys::Promise;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Element, Event};

/// The element of the first program in which the second stands.
pub type Host = Element;

#[wasm_bindgen]
extern "C" {
    /// What the second program offers.
    type Rooms;

    #[wasm_bindgen(method, catch)]
    fn enter(this: &Rooms, host: &Host, is_first_page: bool, brought: u32) -> Result<(), JsValue>;

    /// The start script's: fetches the second program, or gives what was fetched before.
    #[wasm_bindgen(js_name = selfCheckRooms, catch)]
    fn rooms() -> Result<Promise, JsValue>;
}

/// What came of opening the second program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opened {
    /// It is shown, and has what was brought.
    Entered,
    /// By the time it was there the reader had gone on: nothing is shown, and nothing was brought.
    TooLate,
    /// It cannot be had.
    Missing,
}

/// Shows the second program in `host`, fetched before if need be. `brought` is what goes over from
/// the first program, as a number.
pub async fn open_rooms(host: Host, is_first_page: bool, brought: u32) -> Opened {
    let opened = try_to_open(&host, is_first_page, brought).await;
    opened.unwrap_or(Opened::Missing)
}

async fn try_to_open(host: &Host, is_first_page: bool, brought: u32) -> Result<Opened, JsValue> {
    let rooms: Rooms = JsFuture::from(rooms()?).await?.unchecked_into();
    if !host.is_connected() {
        return Ok(Opened::TooLate);
    }
    rooms.enter(host, is_first_page, brought)?;
    Ok(Opened::Entered)
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

/// What the second program tells the first when a check of another key begins.
const ANEW: &str = "self-check-anew";

/// Tells the first program that a check begins anew.
pub fn begin_anew() {
    if let Ok(event) = Event::new(ANEW) {
        let _ = window().dispatch_event(&event);
    }
}

/// Calls `act` whenever a check begins anew, until what it gives is dropped.
pub fn on_begin_anew(act: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), ANEW, move |_| act())
}
