//! A picture on the page, and how things on it are moved by keys.

use yew::prelude::*;

use crate::browser::{self, Canvas};

/// A canvas that shows `picture`, to be put into the page.
#[hook]
pub fn use_canvas_of(picture: &Canvas) -> NodeRef {
    let canvas = use_node_ref();
    {
        let canvas = canvas.clone();
        use_effect_with(picture.clone(), move |picture| {
            browser::show(&canvas, picture);
        });
    }
    canvas
}

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

/// How far a key moves something, as shares of the picture's longer side.
#[derive(Clone, Copy)]
pub struct Steps {
    /// An arrow key by itself.
    pub short: f64,
    /// With Shift.
    pub long: f64,
}

/// Where a key takes a place on a picture, so wide and high: arrows by a step, Home and End to the left
/// and right edge, Page Up and Page Down to the upper and lower. `None` for any other key.
pub fn moved_by(
    key: &str,
    is_long: bool,
    steps: Steps,
    (x, y): (f64, f64),
    (width, height): (f64, f64),
) -> Option<(f64, f64)> {
    let share = if is_long { steps.long } else { steps.short };
    let step = (share * width.max(height)).round().max(1.0);
    let (x, y) = match key {
        "ArrowLeft" => (x - step, y),
        "ArrowRight" => (x + step, y),
        "ArrowUp" => (x, y - step),
        "ArrowDown" => (x, y + step),
        "Home" => (0.0, y),
        "End" => (width, y),
        "PageUp" => (x, 0.0),
        "PageDown" => (x, height),
        _ => return None,
    };
    Some((x.clamp(0.0, width), y.clamp(0.0, height)))
}

/// A column of text without its margins.
const WIDEST: f64 = 736.0;

#[cfg(test)]
mod tests {
    use super::*;

    const STEPS: Steps = Steps {
        short: 0.01,
        long: 0.1,
    };

    #[test]
    fn keys_move_by_short_and_long_steps_and_to_the_edges() {
        let moved = |key, is_long| moved_by(key, is_long, STEPS, (50.0, 60.0), (400.0, 300.0));
        assert_eq!(moved("ArrowLeft", false), Some((46.0, 60.0)));
        assert_eq!(moved("ArrowDown", true), Some((50.0, 100.0)));
        assert_eq!(moved("ArrowUp", true), Some((50.0, 20.0)));
        assert_eq!(moved("Home", false), Some((0.0, 60.0)));
        assert_eq!(moved("End", false), Some((400.0, 60.0)));
        assert_eq!(moved("PageUp", false), Some((50.0, 0.0)));
        assert_eq!(moved("PageDown", true), Some((50.0, 300.0)));
        assert_eq!(moved("Tab", false), None);
    }

    #[test]
    fn keys_move_a_pixel_at_least_and_never_out_of_the_picture() {
        let moved = |key, at| moved_by(key, false, STEPS, at, (20.0, 10.0));
        assert_eq!(moved("ArrowRight", (5.0, 5.0)), Some((6.0, 5.0)));
        assert_eq!(moved("ArrowRight", (19.5, 5.0)), Some((20.0, 5.0)));
        assert_eq!(moved("ArrowUp", (5.0, 0.0)), Some((5.0, 0.0)));
    }
}
