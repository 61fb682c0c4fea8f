//! The size of the window, and the sliders on it.

use gloo::utils::window;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// How wide the page is, in its own pixels.
pub fn page_width() -> Option<f64> {
    window().inner_width().ok()?.as_f64()
}

/// Where the slider that `event` comes from stands.
pub fn slider_value(event: &InputEvent) -> Option<f64> {
    event
        .target_dyn_into::<HtmlInputElement>()
        .map(|slider| slider.value_as_number())
        .filter(|value| value.is_finite())
}
