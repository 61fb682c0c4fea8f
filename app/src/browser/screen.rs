//! The room on the page, and the sliders and lists on it.

use gloo::events::EventListener;
use gloo::utils::window;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// How wide the room inside an element on the page is, in the page's own pixels.
pub fn room_in(element: &NodeRef) -> Option<f64> {
    element
        .cast::<Element>()
        .map(|element| f64::from(element.client_width()))
}

/// Calls `act` whenever the window changes its size, for as long as what is returned is kept.
pub fn on_resize(act: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), "resize", move |_| act())
}

/// Where the slider that `event` comes from stands.
pub fn slider_value(event: &InputEvent) -> Option<f64> {
    event
        .target_dyn_into::<HtmlInputElement>()
        .map(|slider| slider.value_as_number())
        .filter(|value| value.is_finite())
}

/// Which entry was chosen in the list that `event` comes from, counted from 0.
pub fn place_in_list(event: &Event) -> Option<usize> {
    let list = event.target_dyn_into::<HtmlSelectElement>()?;
    usize::try_from(list.selected_index()).ok()
}
