//! What may have given the secret away, and what each took.

use self_check_core::exposure::{Exposure, Reading};
use yew::prelude::*;

use crate::copy::{self, site};
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

fn exposure(exposure: &Exposure) -> Html {
    html! {
        <li key={exposure.event as usize}>
            <h3>{ copy::event(exposure.event) }</h3>
            if exposure.reading == Reading::Held {
                <p class="number">{ site::NO_GUESSING }</p>
            } else if let Some(left) = exposure.keys_left {
                <p class="number">{ site::keys_left(left) }</p>
            }
            <p class="note">
                if exposure.reading == Reading::CutsSeen {
                    <a href={Route::Distance}>{ site::DISTANCE }</a>{ ". " }
                }
                { copy::reading(exposure.reading) }{ " " }
                { copy::knows_the_door(exposure.knows_the_door) }{ " " }
                { copy::standing(exposure.standing) }
            </p>
        </li>
    }
}
