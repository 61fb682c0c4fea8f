//! The place for keeping the household: on this device, in a file, and taking it away again. Where
//! safety comes first nothing is offered to keep.

use yew::prelude::*;

use crate::ui::use_household;

/// The panel at the foot of the board.
#[component]
pub fn Keep() -> Html {
    if use_household().puts_safety_first() {
        return html! {};
    }
    html! {}
}
