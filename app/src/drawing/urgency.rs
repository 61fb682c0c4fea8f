//! How soon, as a shape: so that the order of a list never hangs on colour.

use self_check_core::advice::Urgency;
use yew::prelude::*;

/// The mark: a square for today, a triangle for soon, an open square on its corner for when
/// convenient, a ring for a habit. The word stands beside it.
pub fn urgency_mark(urgency: Urgency) -> Html {
    let (class, d) = match urgency {
        Urgency::Today => ("", "M0 0H10V10H0Z"),
        Urgency::Soon => ("", "M5 0L10.4 9.6H-.4Z"),
        Urgency::WhenConvenient => ("open", "M5 -.6L10.6 5 5 10.6 -.6 5Z"),
        Urgency::Habit => ("open", "M.4 5a4.6 4.6 0 1 0 9.2 0a4.6 4.6 0 1 0 -9.2 0Z"),
    };
    html! {
        <svg class="when-mark" viewBox="0 0 10 10" aria-hidden="true" focusable="false">
            <path {class} {d} />
        </svg>
    }
}
