//! Counting the cut positions with a ruler on the screen, to sharpen the number on the result.

use self_check_core::assess::Positions;
use yew::prelude::*;

use crate::browser;
use crate::copy::site;
use crate::drawing::{CARD_SHORT_SIDE, ruler_length, true_ruler};
use crate::route::Route;
use crate::session::{Act, SessionHandle};
use crate::ui::{use_page, use_session};

/// The width of the card on a screen whose pixels are as large as style sheets take them to be:
/// 96 to the inch.
const CARD_AT_FIRST: u16 = 204;
/// The narrowest and widest a card can be on any screen in use, in pixels of the page. Our
/// assumption: 50 to 300 pixels to the inch.
const CARD_RANGE: (u16, u16) = (106, 638);

/// The page.
#[component]
pub fn Ruler() -> Html {
    use_page(site::RULER.to_owned());
    let session = use_session();
    let from_tip = use_state(|| false);
    let card = session.card_width.unwrap_or(CARD_AT_FIRST);
    let pixels_per_mm = f64::from(card) / CARD_SHORT_SIDE;
    let frame = use_node_ref();
    let room = use_room_in(&frame);
    let widest = (ruler_length() * pixels_per_mm).max(f64::from(card));
    let is_too_wide = room.is_some_and(|room| widest > room);
    html! {
        <div class="narrow">
            <h1 tabindex="-1">{ site::RULER }</h1>
            <p class="lede">{ site::RULER_LEDE }</p>
            <h2>{ site::RULER_SCALE }</h2>
            <p>{ site::RULER_SCALE_HOW }</p>
            { card_frame(card) }
            { slider(card, &session) }
            <h2>{ site::RULER_LAY }</h2>
            <p>{ site::RULER_LAY_HOW }</p>
            <label class="opt">
                <input type="checkbox" checked={*from_tip} autocomplete="off"
                    onchange={let from_tip = from_tip.clone(); move |_| from_tip.set(!*from_tip)} />
                <span><b>{ site::RULER_FROM_TIP }</b></span>
            </label>
            // Always there, so that a screen reader hears what comes into it.
            <div role="status">
                if is_too_wide {
                    <p class="notice">{ site::RULER_TOO_WIDE }</p>
                }
            </div>
            <div class="true-size" ref={frame}>
                { true_ruler(site::RULER, site::RULER_DESC, pixels_per_mm, *from_tip) }
            </div>
            <p class="note">{ site::RULER_HIDDEN }</p>
            { counted(&session) }
            <p class="note">{ site::RULER_KEPT }</p>
            <p class="row">{ back(&session) }</p>
        </div>
    }
}

/// The room in an element, measured anew when the window changes, as when a phone is turned.
#[hook]
fn use_room_in(element: &NodeRef) -> Option<f64> {
    let room = use_state_eq(|| None);
    {
        let (element, room) = (element.clone(), room.clone());
        use_effect_with((), move |()| {
            let measure = move || room.set(browser::room_in(&element));
            measure();
            let listener = browser::on_resize(measure);
            move || drop(listener)
        });
    }
    *room
}

/// The upper end of a card that stands upright, as wide as its short side is taken to be: open below, or
/// it would look like a whole card lying on its long side.
fn card_frame(card: u16) -> Html {
    html! {
        <div class="true-size">
            <svg class="card-frame" aria-hidden="true" focusable="false" width={card.to_string()} height="84">
                <path class="card-edge" d={format!("M1 84V9A8 8 0 0 1 9 1H{}A8 8 0 0 1 {} 9V84", card - 9, card - 1)} />
            </svg>
        </div>
    }
}

fn slider(card: u16, session: &SessionHandle) -> Html {
    let set = {
        let session = session.clone();
        move |width: u16| {
            session.dispatch(Act::SetCardWidth(width.clamp(CARD_RANGE.0, CARD_RANGE.1)));
        }
    };
    let oninput = {
        let set = set.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(value) = browser::slider_value(&event) {
                set(value as u16);
            }
        })
    };
    let step = |by: i16| {
        let set = set.clone();
        Callback::from(move |_: MouseEvent| set(card.saturating_add_signed(by)))
    };
    html! {
        <div class="slider-row">
            <label for="card">{ site::RULER_SLIDER }</label>
            <input id="card" class="slider" type="range" min={CARD_RANGE.0.to_string()}
                max={CARD_RANGE.1.to_string()} step="1" value={card.to_string()}
                aria-valuetext={site::pixels(card)} {oninput} autocomplete="off" />
            <div class="row">
                <button type="button" class="press-quiet" onclick={step(-1)}>{ site::RULER_NARROWER }</button>
                <button type="button" class="press-quiet" onclick={step(1)}>{ site::RULER_WIDER }</button>
            </div>
        </div>
    }
}

/// What was counted. Nothing else about the key is asked.
fn counted(session: &SessionHandle) -> Html {
    let options = [
        (Some(Positions::Five), site::RULER_FIVE),
        (Some(Positions::Six), site::RULER_SIX),
        (None, site::RULER_OTHER),
    ];
    html! {
        <fieldset>
            <legend><h2>{ site::RULER_COUNT }</h2></legend>
            <div class="opts">
                { for options.into_iter().enumerate().map(|(index, (positions, word))| {
                    let session = session.clone();
                    let checked = session.positions == positions;
                    let onchange = Callback::from(move |_: Event| session.dispatch(Act::CountPositions(positions)));
                    html! {
                        <label key={index} class="opt">
                            <input type="radio" name="positions" {checked} {onchange} autocomplete="off" />
                            <span><b>{ word }</b></span>
                        </label>
                    }
                }) }
            </div>
        </fieldset>
    }
}

/// Back to the result, or to the start where there is none yet.
fn back(session: &SessionHandle) -> Html {
    let path = session.path();
    if path.first_open().is_some() {
        return html! { <a class="press" href={Route::Start}>{ site::CHECK_A_KEY }</a> };
    }
    let n = path.stops().len() - 1;
    html! { <a class="press" href={Route::Check { n }}>{ site::SEE_RESULT }</a> }
}
