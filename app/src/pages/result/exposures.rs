//! What may have given the secret away, and what each took.

use self_check_core::exposure::{Event, Exposure, Reading, Standing};
use yew::prelude::*;

use crate::copy::{self, picture, site};
use crate::route::Route;

/// The list of exposures; nothing where there is none.
pub fn exposures(exposures: &[Exposure]) -> Html {
    if exposures.is_empty() {
        return html! {};
    }
    html! {
        <section aria-labelledby="exposures">
            <h2 id="exposures">{ site::EXPOSURES }</h2>
            <ul class="took">{ for exposures.iter().map(exposure) }</ul>
        </section>
    }
}

/// What is open is said to be open, and nothing is told of it as if it had happened. Of people whom the
/// owner chose to trust, and of what no longer counts, no more is told than that.
fn exposure(exposure: &Exposure) -> Html {
    let is_open = copy::is_open(exposure.standing);
    html! {
        <li key={exposure.event as usize}>
            <h3>
                if is_open { { site::NOT_KNOWN }{ " " } }
                { copy::event(exposure.event) }
            </h3>
            if is_open || matches!(exposure.standing, Standing::ByChoice | Standing::EndedByChange) {
                <p class="note">{ copy::standing(exposure.standing) }</p>
            } else {
                { took(exposure) }
            }
        </li>
    }
}

/// Whether the key itself was in view: a number on a lock shows no cuts.
fn shows_its_cuts(exposure: &Exposure) -> bool {
    matches!(exposure.reading, Reading::CutsSeen | Reading::CodeSeen)
        && exposure.event != Event::NumberOnLockFace
}

/// What it let somebody do, and how many keys that leaves.
fn took(exposure: &Exposure) -> Html {
    html! {
        <>
            if matches!(exposure.reading, Reading::Held | Reading::CardHeld) {
                <p class="number">{ site::NO_GUESSING }</p>
            } else if let Some(left) = exposure.keys_left {
                <p class="number">{ site::keys_left(left) }</p>
            }
            <p class="note">
                if shows_its_cuts(exposure) {
                    <span class="screen-only">
                        <a href={Route::Distance}>{ site::DISTANCE }</a>{ ". " }
                    </span>
                }
                if is_picture(exposure.event) {
                    <span class="screen-only"><a href={Route::Picture}>{ picture::TITLE }</a>{ ". " }</span>
                }
                { copy::reading(exposure.event, exposure.reading) }{ " " }
                { copy::knows_the_door(exposure.knows_the_door) }{ " " }
                { copy::standing(exposure.standing) }
            </p>
        </>
    }
}

/// Whether there is a picture that can be checked on its own page.
const fn is_picture(event: Event) -> bool {
    matches!(
        event,
        Event::PublicPicture | Event::ListingPicture | Event::PrivatePicture
    )
}
