//! Marking the two ends of the blade: by pointer, by touch or by keys, with a loupe.

use self_check_core::key::LockFace;
use yew::prelude::*;

use super::desk::{Act, Entry, Opened, mark_id};
use super::later::Later;
use super::stage::{Steps, moved_by, use_canvas_of, use_pixels_shown};
use super::work::Work;
use super::{DeskHandle, ERROR, error_beside};
use crate::browser::{self, Working};
use crate::copy::picture as words;
use crate::drawing::{KeyParts, Part};

/// The picture with its marks, the kinds of key, and the button.
pub fn section(desk: &DeskHandle, opened: &Opened, work: &Work) -> Html {
    let check = {
        let work = work.clone();
        Callback::from(move |_: MouseEvent| work.measure())
    };
    let mark = {
        let (desk, work) = (desk.clone(), work.clone());
        Callback::from(move |(which, place)| {
            work.stop();
            desk.dispatch(Act::Mark(which, place));
        })
    };
    let activate = {
        let desk = desk.clone();
        Callback::from(move |which| desk.dispatch(Act::Activate(which)))
    };
    let settle = {
        let desk = desk.clone();
        Callback::from(move |()| desk.dispatch(Act::Settle))
    };
    let copy_alone = {
        let (desk, work) = (desk.clone(), work.clone());
        Callback::from(move |_: MouseEvent| {
            work.stop();
            desk.dispatch(Act::CopyAlone);
        })
    };
    html! {
        <section aria-labelledby="picture-mark">
            <h2 id="picture-mark" tabindex="-1">{ words::MARK }</h2>
            <p>{ words::MARK_WHERE }</p>
            <figure class="plate">
                <KeyParts title={words::ENDS} desc={words::ENDS_DESC} has_letters=true
                    parts={vec![(Part::FirstEnd, words::MARK_A.into()), (Part::LastEnd, words::MARK_B.into())]} />
            </figure>
            <p>{ words::MARK_HOW }</p>
            { error_beside(desk, Entry::Marks) }
            <MarkPicture working={opened.working.clone()} marks={desk.marks} moved={desk.moved} active={desk.active}
                has_error={desk.trouble_with(Entry::Marks).is_some()} {mark} {activate} {settle} />
            <p id={KEYS} class="hint">{ words::MARK_KEYS }</p>
            <Later>
                { faces(desk, work) }
                <p class="row">
                    <button type="button" class="press" onclick={check} disabled={desk.is_busy()}>{ words::CHECK }</button>
                    if desk.outcome.is_none() && !desk.wants_copy {
                        <button type="button" class="plain" onclick={copy_alone}>{ words::COPY_ONLY }</button>
                    }
                </p>
            </Later>
        </section>
    }
}

fn faces(desk: &DeskHandle, work: &Work) -> Html {
    html! {
        <fieldset>
            <legend><h3>{ words::FACE }</h3></legend>
            <p class="hint">{ words::FACE_HINT }</p>
            <div class="opts">
                { for LockFace::ALL.into_iter().enumerate().map(|(index, face)| {
                    let (desk, work) = (desk.clone(), work.clone());
                    let checked = desk.face == face;
                    let onchange = Callback::from(move |_: Event| {
                        work.stop();
                        desk.dispatch(Act::Choose(face));
                    });
                    html! {
                        <label key={index} class="opt">
                            <input type="radio" name="face" {checked} {onchange} autocomplete="off" />
                            <span><b>{ words::face(face) }</b></span>
                        </label>
                    }
                }) }
            </div>
            <p class="note">{ words::OTHER_KINDS }</p>
        </fieldset>
    }
}

#[derive(Properties, PartialEq)]
struct MarkPictureProps {
    working: Working,
    marks: [(f64, f64); 2],
    moved: [bool; 2],
    active: Option<usize>,
    has_error: bool,
    mark: Callback<(usize, (f64, f64))>,
    activate: Callback<Option<usize>>,
    settle: Callback<()>,
}

#[component]
fn MarkPicture(props: &MarkPictureProps) -> Html {
    let canvas = use_canvas_of(&props.working.seen);
    let surface = use_node_ref();
    let held = use_mut_ref(|| None::<usize>);
    let (width, height) = (
        f64::from(props.working.width),
        f64::from(props.working.height),
    );
    let (marks, moved) = (props.marks, props.moved);
    let figure = use_node_ref();
    // Marks keep their size on the screen, whatever the picture's.
    let ring = RING * width / use_pixels_shown(&figure);
    let down = {
        let (surface, held, mark) = (surface.clone(), held.clone(), props.mark.clone());
        Callback::from(move |event: PointerEvent| {
            event.prevent_default();
            let Some(place) = browser::place_on(&surface, &event, width, height) else {
                return;
            };
            browser::hold_pointer(&surface, &event);
            let which = meant(&marks, moved, place, GRASP * ring);
            *held.borrow_mut() = Some(which);
            mark.emit((which, place));
        })
    };
    let moves = {
        let (surface, held, mark) = (surface.clone(), held.clone(), props.mark.clone());
        Callback::from(move |event: PointerEvent| {
            if let (Some(which), Some(place)) = (
                *held.borrow(),
                browser::place_on(&surface, &event, width, height),
            ) {
                mark.emit((which, place));
            }
        })
    };
    // The loupe hides a corner of the picture: it goes with the finger.
    let up = props
        .settle
        .reform(move |_: PointerEvent| *held.borrow_mut() = None);
    let [(ax, ay), (bx, by)] = marks;
    html! {
        <figure ref={figure} class={classes!("stage", (height > width).then_some("stage-tall"))} role="group"
            aria-label={words::MARK_PICTURE}>
            <canvas ref={canvas} aria-hidden="true" />
            <svg ref={surface} class="stage-over" viewBox={format!("0 0 {width} {height}")} preserveAspectRatio="none"
                onpointerdown={down} onpointermove={moves} onpointerup={up.clone()} onpointercancel={up}>
                <path class="mark-under" d={format!("M{ax} {ay}L{bx} {by}")} />
                <path class="mark-line" d={format!("M{ax} {ay}L{bx} {by}")} />
                { for [0, 1].map(|which| one_mark(props, which, ring)) }
            </svg>
            if let Some(which) = props.active {
                <Loupe working={props.working.clone()} place={marks[which]} />
            }
        </figure>
    }
}

/// Which mark a press is meant for: one that lies within `reach`, then the first that has not been
/// set, then the nearer.
fn meant(marks: &[(f64, f64); 2], moved: [bool; 2], (x, y): (f64, f64), reach: f64) -> usize {
    let [a, b] = marks.map(|(mx, my)| (mx - x).hypot(my - y));
    let nearer = usize::from(b < a);
    match moved {
        _ if a.min(b) <= reach => nearer,
        [false, _] => 0,
        [true, false] => 1,
        [true, true] => nearer,
    }
}

/// A ring with its letter, moved by the arrow keys.
fn one_mark(props: &MarkPictureProps, which: usize, ring: f64) -> Html {
    let (x, y) = props.marks[which];
    let (width, height) = (
        f64::from(props.working.width),
        f64::from(props.working.height),
    );
    let keys = {
        let mark = props.mark.clone();
        Callback::from(move |event: KeyboardEvent| {
            let (key, is_long) = (event.key(), event.shift_key());
            if let Some(place) = moved_by(&key, is_long, STEPS, (x, y), (width, height)) {
                event.prevent_default();
                mark.emit((which, place));
            }
        })
    };
    let focus = {
        let activate = props.activate.clone();
        Callback::from(move |_: FocusEvent| activate.emit(Some(which)))
    };
    let (name, letter) = match which {
        0 => (words::MARK_A, words::LETTER_A),
        _ => (words::MARK_B, words::LETTER_B),
    };
    let described_by = if props.has_error {
        format!("{ERROR} {KEYS}")
    } else {
        KEYS.to_owned()
    };
    // The letter stands away from the blade, on the far side of the other mark.
    let (ox, oy) = props.marks[1 - which];
    let apart = (x - ox).hypot(y - oy).max(1.0);
    let letter_x = (x + (x - ox) / apart * 2.1 * ring).clamp(ring, width - ring);
    let letter_y = (y + (y - oy) / apart * 2.1 * ring).clamp(ring, height - ring);
    html! {
        <g id={mark_id(which)} class="mark" tabindex="0" role="slider" aria-label={name} aria-describedby={described_by}
            aria-invalid={props.has_error.then_some("true")} aria-valuemin="0"
            aria-valuemax={props.working.width.to_string()} aria-valuenow={format!("{x:.0}")}
            aria-valuetext={words::mark_at((x, y), props.working.width, props.working.height)}
            onkeydown={keys} onfocus={focus}>
            <circle class="mark-under" cx={x.to_string()} cy={y.to_string()} r={ring.to_string()} />
            <circle class="mark-ring" cx={x.to_string()} cy={y.to_string()} r={ring.to_string()} />
            <circle class="mark-dot" cx={x.to_string()} cy={y.to_string()} r={(ring / 9.0).to_string()} />
            <circle class="mark-plate" cx={letter_x.to_string()} cy={letter_y.to_string()} r={ring.to_string()} />
            <text class="mark-name" x={letter_x.to_string()} y={(letter_y + 0.36 * ring).to_string()}
                font-size={(1.05 * ring).to_string()} text-anchor="middle">{ letter }</text>
        </g>
    }
}

#[derive(Properties, PartialEq)]
struct LoupeProps {
    working: Working,
    place: (f64, f64),
}

/// The surroundings of the mark that is being set, enlarged, in the half of the picture where the
/// mark is not.
#[component]
fn Loupe(props: &LoupeProps) -> Html {
    let canvas = use_node_ref();
    {
        let canvas = canvas.clone();
        let deps = (props.working.clone(), props.place);
        use_effect_with(deps, move |(working, place)| {
            browser::show_enlarged(&canvas, &working.canvas, *place, LOUPE_REACH, LOUPE_SIDE);
        });
    }
    let is_left = props.place.0 < 0.5 * f64::from(props.working.width);
    let is_high = props.place.1 < 0.5 * f64::from(props.working.height);
    html! {
        <div class={classes!("loupe", is_left.then_some("loupe-right"), is_high.then_some("loupe-low"))} aria-hidden="true">
            <canvas ref={canvas} />
            <svg viewBox="-1 -1 2 2"><path class="loupe-cross" d="M-1 0H-.15M.15 0H1M0 -1V-.15M0 .15V1" /></svg>
        </div>
    }
}

/// What the keys do.
const KEYS: &str = "picture-mark-keys";

/// About as fine as a mark can be set by a finger; and across the picture in two dozen.
const STEPS: Steps = Steps {
    short: 0.001,
    long: 0.04,
};
/// Pixels of the page: a ring's radius.
const RING: f64 = 12.0;
/// Rings around a mark within which a finger takes hold of it.
const GRASP: f64 = 2.0;
/// Pixels of the shown picture to each side, and of the loupe across.
const LOUPE_REACH: f64 = 28.0;
const LOUPE_SIDE: u32 = 168;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn press_sets_the_first_mark_then_the_second_then_the_nearer() {
        let first = [(30.0, 50.0), (70.0, 50.0)];
        assert_eq!(meant(&first, [false, false], (90.0, 10.0), 5.0), 0);
        // A key in one corner: the second press is nearer to the first mark, and still meant for the second.
        let then = [(5.0, 50.0), (70.0, 50.0)];
        assert_eq!(meant(&then, [true, false], (25.0, 50.0), 5.0), 1);
        let last = [(5.0, 50.0), (25.0, 50.0)];
        assert_eq!(meant(&last, [true, true], (12.0, 50.0), 5.0), 0);
        assert_eq!(meant(&last, [true, true], (90.0, 50.0), 5.0), 1);
    }

    #[test]
    fn mark_within_reach_is_taken_hold_of() {
        let marks = [(30.0, 50.0), (70.0, 50.0)];
        assert_eq!(meant(&marks, [false, false], (68.0, 51.0), 5.0), 1);
        assert_eq!(meant(&marks, [true, false], (31.0, 51.0), 5.0), 0);
    }
}
