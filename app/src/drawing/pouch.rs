//! The level, told as a key and its pouch: inside, half out, bare beside it, or an empty outline
//! where nothing can be said yet. It speaks of the key's secret, never of the door.

use self_check_core::assess::Level;
use yew::prelude::*;

use super::key::key;
use super::path::number;
use super::pattern::DrawnPattern;
use super::view::{Ink, Layer, draw, image, placed, scene};

/// The pouch for a level. The level's word stands beside the drawing, so the drawing stays silent.
pub fn pouch(level: Level) -> Html {
    let content = match slide(level) {
        None => draw(Ink::Ghost, BODY),
        Some(slide) => filled(slide),
    };
    image("drawing verdict-pouch", Some(view(level)), None, content)
}

const BODY: &str =
    "M6 3.6L42 5.4Q44 5.6 44 7.6V32.4Q44 34.4 42 34.6L6 36.4Q2.5 36.4 2.5 32.6V7.4Q2.5 3.6 6 3.6Z";
const FLAP_OPEN: &str = "M43.5 12H50.5Q57 12.6 57 20 57 27.4 50.5 28H43.5Z";
const FLAP_CLOSED: &[Layer] = &[
    Layer::Draw(
        Ink::Leather,
        "M44.6 12H38.4Q31.4 12.6 31.4 20 31.4 27.4 38.4 28H44.6Z",
    ),
    Layer::Draw(
        Ink::Hole,
        "M35.6 20a1.9 1.9 0 1 0 3.8 0a1.9 1.9 0 1 0 -3.8 0Z",
    ),
];
const FRONT: &[Layer] = &[
    Layer::Draw(Ink::Leather, BODY),
    Layer::Draw(
        Ink::Stitch,
        "M41.4 8.1L7 6.5Q5.3 6.5 5.3 8.2V31.8Q5.3 33.5 7 33.5L41.4 31.9",
    ),
];

/// As wide as what is shown, so that the word beside it stands close.
fn view(level: Level) -> &'static str {
    match level {
        Level::Kept | Level::CannotBeToldYet => "1 2 45 36",
        Level::InDoubt => "1 2 63 36",
        Level::GivenAway => "1 2 92 36",
    }
}

/// How big the key is drawn, and where its shoulder stands when it is all the way in.
const SCALE: f64 = 0.7;
const HOME: f64 = 22.6;
const HALF_OUT: f64 = 20.6;
const BARE: f64 = 49.6;

/// How far the key stands out of its pouch; `None` where there is no telling.
fn slide(level: Level) -> Option<f64> {
    match level {
        Level::Kept => Some(0.0),
        Level::InDoubt => Some(HALF_OUT),
        Level::GivenAway => Some(BARE),
        Level::CannotBeToldYet => None,
    }
}

fn filled(slide: f64) -> Html {
    let shift = number(HOME + slide);
    let place = format!("translate({shift} 17.06) scale({})", number(SCALE));
    html! {
        <>
            if slide > 0.0 && slide < BARE {
                { draw(Ink::Leather, FLAP_OPEN) }
            }
            <g class="pouch-key">{ placed(place, key(DrawnPattern::DEMONSTRATION)) }</g>
            { scene(FRONT) }
            if slide == 0.0 {
                { scene(FLAP_CLOSED) }
            }
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MOUTH: f64 = 44.0;
    const TIP: f64 = 28.0 * SCALE;
    const BOW_END: f64 = 23.53 * SCALE;

    #[test]
    fn key_is_inside_half_out_or_bare() {
        let place = |level| slide(level).map(|slide| HOME + slide);
        let kept = place(Level::Kept).unwrap_or(f64::NAN);
        assert!(kept + TIP < MOUTH && kept - BOW_END > 2.5);
        let doubt = place(Level::InDoubt).unwrap_or(f64::NAN);
        assert!(doubt < MOUTH && doubt + TIP > MOUTH);
        let away = place(Level::GivenAway).unwrap_or(f64::NAN);
        assert!(away - BOW_END > MOUTH && away + TIP < 92.0);
        assert_eq!(place(Level::CannotBeToldYet), None);
    }
}
