//! The covers on the picture: drawn, moved, sized and taken away, by pointer, by touch or by keys.

use yew::prelude::*;

use super::desk::Cover;
use super::stage::use_pixels_shown;
use crate::browser::{self, Working};
use crate::copy::picture as words;

/// The picture under its covers, and what can be done to them.
#[derive(Properties, PartialEq)]
pub struct CoverPictureProps {
    /// What is shown.
    pub working: Working,
    /// What is covered.
    pub covers: Vec<Cover>,
    /// A cover was drawn.
    pub add: Callback<Cover>,
    /// A cover was moved or sized.
    pub set: Callback<(usize, Cover)>,
    /// A cover was taken away.
    pub remove: Callback<usize>,
}

/// What a pointer has hold of.
#[derive(Clone, Copy)]
enum Held {
    /// A cover, and where in it.
    Cover(usize, (f64, f64)),
    /// The lower right corner of a cover.
    Corner(usize),
    /// A cover that is being drawn, from here.
    Drawn(usize, (f64, f64)),
}

/// The picture.
#[component]
pub fn CoverPicture(props: &CoverPictureProps) -> Html {
    let canvas = use_node_ref();
    {
        let canvas = canvas.clone();
        use_effect_with(props.working.clone(), move |working| {
            browser::show(&canvas, &working.canvas);
        });
    }
    let surface = use_node_ref();
    let held = use_mut_ref(|| None::<Held>);
    let (width, height) = (props.working.width, props.working.height);
    let (wide, high) = (f64::from(width), f64::from(height));
    let figure = use_node_ref();
    let grip = GRIP * wide / use_pixels_shown(&figure);
    let down = {
        let (surface, held) = (surface.clone(), held.clone());
        let (covers, add) = (props.covers.clone(), props.add.clone());
        Callback::from(move |event: PointerEvent| {
            let Some(place) = browser::place_on(&surface, &event, wide, high) else {
                return;
            };
            event.prevent_default();
            browser::hold_pointer(&surface, &event);
            let grasped = grasped(&covers, place, grip);
            if grasped.is_none() {
                add.emit(between(place, place, width, height));
            }
            *held.borrow_mut() = Some(grasped.unwrap_or(Held::Drawn(covers.len(), place)));
        })
    };
    let moves = {
        let (surface, held) = (surface.clone(), held.clone());
        let (covers, set) = (props.covers.clone(), props.set.clone());
        Callback::from(move |event: PointerEvent| {
            let (Some(now), Some(place)) = (
                *held.borrow(),
                browser::place_on(&surface, &event, wide, high),
            ) else {
                return;
            };
            let (which, cover) = match now {
                Held::Cover(which, (inner_x, inner_y)) => {
                    let Some(cover) = covers.get(which) else {
                        return;
                    };
                    let to = (place.0 - inner_x, place.1 - inner_y);
                    (which, moved_to(*cover, to, width, height))
                }
                Held::Corner(which) => {
                    let Some(&(left, top, _, _)) = covers.get(which) else {
                        return;
                    };
                    let corner = (f64::from(left), f64::from(top));
                    let least = f64::from(SMALLEST);
                    let end = (place.0.max(corner.0 + least), place.1.max(corner.1 + least));
                    (which, between(corner, end, width, height))
                }
                Held::Drawn(which, from) => (which, between(from, place, width, height)),
            };
            set.emit((which, cover));
        })
    };
    let up = {
        let (covers, set) = (props.covers.clone(), props.set.clone());
        Callback::from(move |_: PointerEvent| {
            let Some(Held::Drawn(which, (x, y))) = held.borrow_mut().take() else {
                return;
            };
            // Pressed and not drawn: a cover of a size that can be seen.
            let is_speck = covers
                .get(which)
                .is_none_or(|cover| cover.2.min(cover.3) < SMALLEST);
            if is_speck {
                let (dx, dy) = (0.08 * wide, 0.08 * high);
                set.emit((
                    which,
                    between((x - dx, y - dy), (x + dx, y + dy), width, height),
                ));
            }
        })
    };
    html! {
        <figure ref={figure} class={classes!("stage", (height > width).then_some("stage-tall"))} role="group"
            aria-label={words::COPY_PICTURE}>
            <canvas ref={canvas} aria-hidden="true" width={props.working.width.to_string()}
                height={props.working.height.to_string()} />
            <svg ref={surface} class="stage-over" viewBox={format!("0 0 {wide} {high}")} preserveAspectRatio="none"
                onpointerdown={down} onpointermove={moves} onpointerup={up.clone()} onpointercancel={up}>
                { for props.covers.iter().enumerate().map(|(which, cover)| one_cover(props, which, *cover, grip)) }
            </svg>
        </figure>
    }
}

fn one_cover(props: &CoverPictureProps, which: usize, cover: Cover, grip: f64) -> Html {
    let (left, top, cover_width, cover_height) = cover;
    let (width, height) = (props.working.width, props.working.height);
    let keys = {
        let (set, remove) = (props.set.clone(), props.remove.clone());
        Callback::from(move |event: KeyboardEvent| {
            let key = event.key();
            let (dx, dy) = match &*key {
                "ArrowLeft" => (-STEP, 0.0),
                "ArrowRight" => (STEP, 0.0),
                "ArrowUp" => (0.0, -STEP),
                "ArrowDown" => (0.0, STEP),
                "Delete" | "Backspace" => {
                    event.prevent_default();
                    return remove.emit(which);
                }
                _ => return,
            };
            event.prevent_default();
            let (x, y) = (f64::from(left), f64::from(top));
            let next = if event.shift_key() {
                let end_x = (x + f64::from(cover_width) + dx).max(x + 1.0);
                let end_y = (y + f64::from(cover_height) + dy).max(y + 1.0);
                between((x, y), (end_x, end_y), width, height)
            } else {
                moved_to(cover, (x + dx, y + dy), width, height)
            };
            set.emit((which, next));
        })
    };
    let corner_x = f64::from(left + cover_width) - grip;
    let corner_y = f64::from(top + cover_height) - grip;
    html! {
        <g key={which} class="cover" tabindex="0" role="slider" aria-label={words::cover(which + 1)} aria-valuemin="0"
            aria-valuemax={width.to_string()} aria-valuenow={left.to_string()}
            aria-valuetext={words::mark_at((f64::from(left), f64::from(top)), width, height)} onkeydown={keys}>
            <rect class="cover-box" x={left.to_string()} y={top.to_string()} width={cover_width.to_string()}
                height={cover_height.to_string()} />
            <rect class="cover-grip" x={corner_x.to_string()} y={corner_y.to_string()} width={grip.to_string()}
                height={grip.to_string()} />
        </g>
    }
}

/// What lies at a place: the topmost cover's corner, or the cover itself.
fn grasped(covers: &[Cover], (x, y): (f64, f64), grip: f64) -> Option<Held> {
    covers.iter().enumerate().rev().find_map(|(which, cover)| {
        let (left, top, width, height) = (cover.0, cover.1, cover.2, cover.3);
        let (inner_x, inner_y) = (x - f64::from(left), y - f64::from(top));
        let (width, height) = (f64::from(width), f64::from(height));
        // However small the cover, its middle moves it.
        let near = |inner: f64, whole: f64| {
            inner >= whole - (1.5 * grip).min(whole / 3.0) && inner <= whole + 0.5 * grip
        };
        let is_inside = (0.0..=width).contains(&inner_x) && (0.0..=height).contains(&inner_y);
        if near(inner_x, width) && near(inner_y, height) {
            Some(Held::Corner(which))
        } else {
            is_inside.then_some(Held::Cover(which, (inner_x, inner_y)))
        }
    })
}

/// The cover between two places of a picture: at least one pixel, within it.
fn between(one: (f64, f64), other: (f64, f64), width: u32, height: u32) -> Cover {
    let span = |a: f64, b: f64, whole: u32| {
        let first = (a.min(b).max(0.0) as u32).min(whole.saturating_sub(1));
        let last = (a.max(b).ceil().max(0.0) as u32).clamp(first + 1, whole.max(first + 1));
        (first, last - first)
    };
    let (left, cover_width) = span(one.0, other.0, width);
    let (top, cover_height) = span(one.1, other.1, height);
    (left, top, cover_width, cover_height)
}

/// A cover moved so that its upper left corner comes to a place, or as near as the picture's edge lets
/// it.
fn moved_to(
    (_, _, cover_width, cover_height): Cover,
    (x, y): (f64, f64),
    width: u32,
    height: u32,
) -> Cover {
    let within = |place: f64, own: u32, whole: u32| {
        place
            .clamp(0.0, f64::from(whole.saturating_sub(own)))
            .round() as u32
    };
    (
        within(x, cover_width, width),
        within(y, cover_height, height),
        cover_width,
        cover_height,
    )
}

/// Pixels of the page: the side of the corner by which a cover is sized.
const GRIP: f64 = 16.0;
/// Pixels of the shown picture.
const STEP: f64 = 10.0;
const SMALLEST: u32 = 6;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cover_between_two_places_stays_in_the_picture() {
        assert_eq!(between((5.0, 6.0), (2.0, 9.5), 20, 20), (2, 6, 3, 4));
        assert_eq!(between((-5.0, 30.0), (50.0, 30.0), 20, 20), (0, 19, 20, 1));
        assert_eq!(between((20.0, 20.0), (20.0, 20.0), 20, 20), (19, 19, 1, 1));
    }

    #[test]
    fn moved_cover_keeps_its_size_and_stays_in_the_picture() {
        assert_eq!(moved_to((0, 0, 8, 5), (100.0, -3.0), 20, 20), (12, 0, 8, 5));
        assert_eq!(moved_to((0, 0, 30, 5), (4.0, 4.0), 20, 20), (0, 4, 30, 5));
    }

    #[test]
    fn middle_of_a_small_cover_moves_it() {
        let middle = grasped(&[(10, 10, 44, 28)], (32.0, 24.0), 40.0);
        assert!(matches!(middle, Some(Held::Cover(0, _))));
        let corner = grasped(&[(10, 10, 44, 28)], (53.0, 37.0), 40.0);
        assert!(matches!(corner, Some(Held::Corner(0))));
    }

    #[test]
    fn corner_is_grasped_before_the_cover_and_the_upper_cover_before_the_lower() {
        let covers = [(0, 0, 100, 100), (50, 50, 100, 100)];
        assert!(matches!(
            grasped(&covers, (60.0, 60.0), 10.0),
            Some(Held::Cover(1, _))
        ));
        assert!(matches!(
            grasped(&covers, (149.0, 149.0), 10.0),
            Some(Held::Corner(1))
        ));
        assert!(matches!(
            grasped(&covers, (10.0, 10.0), 10.0),
            Some(Held::Cover(0, _))
        ));
        assert!(grasped(&covers, (10.0, 140.0), 10.0).is_none());
    }
}
