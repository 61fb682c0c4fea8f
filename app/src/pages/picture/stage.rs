//! How large a picture is shown.

use yew::prelude::*;

use crate::browser;

/// How many of the page's own pixels the picture inside `figure` is wide, also after the window has
/// changed; the most there can be until it is known.
#[hook]
pub fn use_pixels_shown(figure: &NodeRef) -> f64 {
    let room = use_state_eq(|| None);
    {
        let (figure, room) = (figure.clone(), room.setter());
        use_effect_with((), move |()| {
            let measure = move || room.set(browser::room_in(&figure));
            measure();
            let listener = browser::on_resize(measure);
            move || drop(listener)
        });
    }
    room.filter(|&room| room > 0.0).unwrap_or(WIDEST)
}

/// A column of text without its margins.
const WIDEST: f64 = 736.0;
