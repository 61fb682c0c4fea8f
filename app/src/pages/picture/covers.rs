//! The covers on the picture: drawn, moved, sized and taken away, by pointer, by touch or by keys.

use yew::prelude::*;

use super::desk::{Cover, cover_id};
use super::stage::{Steps, moved_by, use_canvas_of, use_pixels_shown};
use crate::browser::{self, Working};
use crate::copy::{Press, picture as words};

/// The picture under its covers, and what can be done to them.
#[derive(Properties, PartialEq)]
pub struct CoverPictureProps {
    /// What is shown.
    pub working: Working,
    /// What is covered.
    pub covers: Vec<Cover>,
    /// A cover was drawn.
    pub draw: Callback<Cover>,
    /// A cover was moved or sized.
    pub set: Callback<(usize, Cover)>,
    /// A cover was taken away.
    pub remove: Callback<usize>,
    /// A cover was let go of.
    pub settle: Callback<()>,
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
    let canvas = use_canvas_of(&props.working.seen);
    let surface = use_node_ref();
    let held = use_mut_ref(|| None::<Held>);
    let (width, height) = (props.working.width, props.working.height);
    let (wide, high) = (f64::from(width), f64::from(height));
    let figure = use_node_ref();
    let grip = GRIP * wide / use_pixels_shown(&figure);
    let down = {
        let (surface, held) = (surface.clone(), held.clone());
        let (covers, draw) = (props.covers.clone(), props.draw.clone());
        Callback::from(move |event: PointerEvent| {
            let Some(place) = browser::place_on(&surface, &event, wide, high) else {
                return;
            };
            event.prevent_default();
            browser::hold_pointer(&surface, &event);
            let grasped = grasped(&covers, place, grip);
            if grasped.is_none() {
                draw.emit(between(place, place, width, height));
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
            let held_cover = |which: usize| covers.get(which).copied();
            let next = match now {
                Held::Cover(which, (inner_x, inner_y)) => held_cover(which).map(|cover| {
                    let to = (place.0 - inner_x, place.1 - inner_y);
                    (which, moved_to(cover, to, width, height))
                }),
                Held::Corner(which) => {
                    held_cover(which).map(|cover| (which, sized_to(cover, place, width, height)))
                }
                Held::Drawn(which, from) => Some((which, between(from, place, width, height))),
            };
            if let Some(next) = next {
                set.emit(next);
            }
        })
    };
    let up = {
        let (covers, set) = (props.covers.clone(), props.set.clone());
        props.settle.reform(move |_: PointerEvent| {
            let Some(Held::Drawn(which, (x, y))) = held.borrow_mut().take() else {
                return;
            };
            // Pressed and not drawn: a cover of a size that can be seen.
            let is_speck = covers
                .get(which)
                .is_none_or(|cover| cover.width.min(cover.height) < SMALLEST);
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
            <canvas ref={canvas} aria-hidden="true" />
            <svg ref={surface} class="stage-over" viewBox={format!("0 0 {wide} {high}")} preserveAspectRatio="none"
                onpointerdown={down} onpointermove={moves} onpointerup={up.clone()} onpointercancel={up}>
                { for props.covers.iter().enumerate().map(|(which, cover)| one_cover(props, which, *cover, grip)) }
            </svg>
        </figure>
    }
}

/// A cover with its number, and its corner. Keys move the one and size by the other.
fn one_cover(props: &CoverPictureProps, which: usize, cover: Cover, grip: f64) -> Html {
    let (width, height) = (props.working.width, props.working.height);
    let (left, top) = (f64::from(cover.left), f64::from(cover.top));
    let (right, bottom) = (left + f64::from(cover.width), top + f64::from(cover.height));
    let own = (cover.width, cover.height);
    let keys = |at: (f64, f64), moved: fn(Cover, (f64, f64), u32, u32) -> Cover| {
        let (set, remove) = (props.set.clone(), props.remove.clone());
        Callback::from(move |event: KeyboardEvent| {
            let key = event.key();
            if matches!(&*key, "Delete" | "Backspace") {
                event.prevent_default();
                return remove.emit(which);
            }
            let size = (f64::from(width), f64::from(height));
            if let Some(place) = moved_by(&key, event.shift_key(), STEPS, at, size) {
                event.prevent_default();
                set.emit((which, moved(cover, place, width, height)));
            }
        })
    };
    let number = (which + 1).to_string();
    let text_size = (1.1 * grip).min(0.8 * f64::from(cover.height));
    html! {
        <g key={which} class="cover">
            <g id={cover_id(which)} class="cover-hold" tabindex="0" role="slider" aria-label={words::cover(which + 1)}
                aria-describedby={KEYS} aria-valuemin="0" aria-valuemax={width.to_string()}
                aria-valuenow={cover.left.to_string()} aria-valuetext={words::cover_at((left, top), own, width, height)}
                onkeydown={keys((left, top), moved_to)}>
                <rect class="cover-box" x={left.to_string()} y={top.to_string()} width={cover.width.to_string()}
                    height={cover.height.to_string()} />
                <text class="cover-name" x={(left + 0.4 * text_size).to_string()} y={(top + 1.1 * text_size).to_string()}
                    font-size={text_size.to_string()}>{ number }</text>
            </g>
            <g class="cover-corner" tabindex="0" role="slider" aria-label={words::cover_corner(which + 1)}
                aria-describedby={KEYS} aria-valuemin="0" aria-valuemax={width.to_string()}
                aria-valuenow={right.to_string()} aria-valuetext={words::cover_at((right, bottom), own, width, height)}
                onkeydown={keys((right, bottom), sized_to)}>
                <rect class="cover-grip" x={(right - grip).to_string()} y={(bottom - grip).to_string()}
                    width={grip.to_string()} height={grip.to_string()} />
            </g>
        </g>
    }
}

/// The cover after this press, on a picture so wide and high.
pub fn pressed(press: Press, cover: Cover, width: u32, height: u32) -> Cover {
    let step = (PRESS * f64::from(width.max(height))).max(1.0);
    let (left, top) = (f64::from(cover.left), f64::from(cover.top));
    let (right, bottom) = (left + f64::from(cover.width), top + f64::from(cover.height));
    let moved = |x: f64, y: f64| moved_to(cover, (left + x, top + y), width, height);
    let sized = |x: f64, y: f64| sized_to(cover, (right + x, bottom + y), width, height);
    match press {
        Press::Left => moved(-step, 0.0),
        Press::Right => moved(step, 0.0),
        Press::Up => moved(0.0, -step),
        Press::Down => moved(0.0, step),
        Press::Wider => sized(step, 0.0),
        Press::Narrower => sized(-step, 0.0),
        Press::Taller => sized(0.0, step),
        Press::Flatter => sized(0.0, -step),
    }
}

/// What lies at a place: the topmost cover's corner, or the cover itself.
fn grasped(covers: &[Cover], (x, y): (f64, f64), grip: f64) -> Option<Held> {
    covers.iter().enumerate().rev().find_map(|(which, cover)| {
        let (inner_x, inner_y) = (x - f64::from(cover.left), y - f64::from(cover.top));
        let (width, height) = (f64::from(cover.width), f64::from(cover.height));
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

/// A place for one cover more, a fifth of the picture to each side: the nearest to the middle at which
/// it lies on no other cover, or the middle itself.
pub fn room_for_one_more(covers: &[Cover], width: u32, height: u32) -> Cover {
    let at = |column: u32, row: u32| Cover {
        left: width * column / 10,
        top: height * row / 10,
        width: (width / 5).max(1),
        height: (height / 5).max(1),
    };
    let meet = |from: u32, size: u32, other_from: u32, other_size: u32| {
        from < other_from + other_size && other_from < from + size
    };
    let is_free = |place: &Cover| {
        covers.iter().all(|other| {
            !(meet(place.left, place.width, other.left, other.width)
                && meet(place.top, place.height, other.top, other.height))
        })
    };
    let from_middle = |at: u32| at.abs_diff(4);
    let places = (0..=8).flat_map(|row| (0..=8).map(move |column| (column, row)));
    places
        .filter(|&(column, row)| is_free(&at(column, row)))
        .min_by_key(|&(column, row)| from_middle(column).pow(2) + from_middle(row).pow(2))
        .map_or_else(|| at(4, 4), |(column, row)| at(column, row))
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
    Cover {
        left,
        top,
        width: cover_width,
        height: cover_height,
    }
}

/// A cover moved so that its upper left corner comes to a place, or as near as the picture's edge lets
/// it.
fn moved_to(cover: Cover, (x, y): (f64, f64), width: u32, height: u32) -> Cover {
    let within = |place: f64, own: u32, whole: u32| {
        place
            .clamp(0.0, f64::from(whole.saturating_sub(own)))
            .round() as u32
    };
    Cover {
        left: within(x, cover.width, width),
        top: within(y, cover.height, height),
        ..cover
    }
}

/// A cover sized so that its lower right corner comes to a place, or as near as lets it be seen.
fn sized_to(cover: Cover, (x, y): (f64, f64), width: u32, height: u32) -> Cover {
    let (left, top) = (f64::from(cover.left), f64::from(cover.top));
    let least = f64::from(SMALLEST);
    let end = (x.max(left + least), y.max(top + least));
    between((left, top), end, width, height)
}

/// What the keys do.
pub const KEYS: &str = "picture-cover-keys";

/// A cover is set loosely.
const STEPS: Steps = Steps {
    short: 0.005,
    long: 0.05,
};

/// How far a press on a button moves a cover or its corner, as a share of the picture's longer side.
const PRESS: f64 = 0.02;

/// Pixels of the page: the side of the corner by which a cover is sized.
const GRIP: f64 = 16.0;
/// Pixels of the shown picture.
const SMALLEST: u32 = 6;

#[cfg(test)]
mod tests {
    use super::*;

    const fn cover(left: u32, top: u32, width: u32, height: u32) -> Cover {
        Cover {
            left,
            top,
            width,
            height,
        }
    }

    #[test]
    fn cover_between_two_places_stays_in_the_picture() {
        let drawn = |one, other| between(one, other, 20, 20);
        assert_eq!(drawn((5.0, 6.0), (2.0, 9.5)), cover(2, 6, 3, 4));
        assert_eq!(drawn((-5.0, 30.0), (50.0, 30.0)), cover(0, 19, 20, 1));
        assert_eq!(drawn((20.0, 20.0), (20.0, 20.0)), cover(19, 19, 1, 1));
    }

    #[test]
    fn moved_cover_keeps_its_size_and_stays_in_the_picture() {
        let moved = |from, to| moved_to(from, to, 20, 20);
        assert_eq!(moved(cover(0, 0, 8, 5), (100.0, -3.0)), cover(12, 0, 8, 5));
        assert_eq!(moved(cover(0, 0, 30, 5), (4.0, 4.0)), cover(0, 4, 30, 5));
    }

    #[test]
    fn sized_cover_keeps_its_upper_left_corner_and_can_be_seen() {
        let sized = |to| sized_to(cover(4, 5, 8, 8), to, 40, 40);
        assert_eq!(sized((30.0, 9.0)), cover(4, 5, 26, SMALLEST));
        assert_eq!(sized((0.0, 90.0)), cover(4, 5, SMALLEST, 35));
    }

    #[test]
    fn presses_move_and_size_and_undo_each_other() {
        let start = cover(40, 30, 20, 10);
        let after = |press: Press, cover| pressed(press, cover, 100, 50);
        assert_eq!(after(Press::Left, start), cover(38, 30, 20, 10));
        assert_eq!(after(Press::Down, start), cover(40, 32, 20, 10));
        assert_eq!(after(Press::Wider, start), cover(40, 30, 22, 10));
        assert_eq!(after(Press::Flatter, start), cover(40, 30, 20, 8));
        for pair in Press::ALL.chunks(2) {
            let there = after(pair[0], start);
            assert_ne!(there, start);
            assert_eq!(after(pair[1], there), start, "{pair:?}");
        }
        // At the edge a cover stays in the picture, and it never becomes too small to be seen.
        let edge = cover(80, 40, 20, SMALLEST);
        assert_eq!(after(Press::Right, edge), edge);
        assert_eq!(after(Press::Flatter, edge), edge);
    }

    #[test]
    fn one_cover_more_lies_on_no_other_while_there_is_room() {
        assert_eq!(room_for_one_more(&[], 100, 200), cover(40, 80, 20, 40));
        let middle = cover(30, 70, 40, 60);
        let next = room_for_one_more(&[middle], 100, 200);
        assert!(
            next.left + next.width <= 30
                || next.left >= 70
                || next.top + next.height <= 70
                || next.top >= 130
        );
        let all = cover(0, 0, 100, 200);
        assert_eq!(room_for_one_more(&[all], 100, 200), cover(40, 80, 20, 40));
        assert_eq!(room_for_one_more(&[], 1, 1), cover(0, 0, 1, 1));
    }

    #[test]
    fn middle_of_a_small_cover_moves_it() {
        let small = [cover(10, 10, 44, 28)];
        let middle = grasped(&small, (32.0, 24.0), 40.0);
        assert!(matches!(middle, Some(Held::Cover(0, _))));
        let corner = grasped(&small, (53.0, 37.0), 40.0);
        assert!(matches!(corner, Some(Held::Corner(0))));
    }

    #[test]
    fn corner_is_grasped_before_the_cover_and_the_upper_cover_before_the_lower() {
        let covers = [cover(0, 0, 100, 100), cover(50, 50, 100, 100)];
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
