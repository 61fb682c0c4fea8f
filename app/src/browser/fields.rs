//! What stands in the fields of a form.

use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// The text in the line that `event` comes from.
pub fn typed_text(event: &InputEvent) -> Option<String> {
    let line = event.target_dyn_into::<HtmlInputElement>();
    line.map(|line| line.value())
}

/// The value chosen in the list that `event` comes from.
pub fn chosen_value(event: &Event) -> Option<String> {
    let list = event.target_dyn_into::<HtmlSelectElement>();
    list.map(|list| list.value())
}
