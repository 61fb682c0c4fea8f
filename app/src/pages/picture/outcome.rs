//! What was measured, in three bands, with what makes it safer. Never a count and never a scale.

use self_check_core::assess::Level;
use self_check_core::metadata::{self, PictureFile, Precision};
use self_check_core::picture::{self, Judgement, Readable};
use yew::prelude::*;

use super::desk::{Opened, Outcome};
use crate::copy::picture as words;
use crate::drawing::pouch;
use crate::route::Route;
use crate::ui::source_line;

/// Whether the file leads to a door, or to its street.
fn names_a_door(read: &PictureFile) -> bool {
    let place = read.metadata.place.map(|place| place.precision());
    matches!(place, Some(Precision::House | Precision::Street))
}

/// The result.
pub fn section(opened: &Opened, outcome: &Outcome) -> Html {
    let Judgement { readable, .. } = outcome.judgement;
    let band = words::band(outcome.judgement, &outcome.caveats);
    let (level, class) = match readable {
        Readable::Yes => (Level::GivenAway, "level-away"),
        Readable::Partly => (Level::InDoubt, "level-doubt"),
        Readable::No => (Level::Kept, "level-kept"),
        Readable::CannotTell => (Level::CannotBeToldYet, "level-unknown"),
    };
    let read = &opened.read;
    let has_more = read.metadata.has_others || read.has_more_behind || read.is_animated;
    let is_read = matches!(readable, Readable::Yes | Readable::Partly);
    let sources = picture::SOURCES.iter().chain(&metadata::SOURCES);
    html! {
        <section aria-labelledby="picture-outcome">
            <div class="verdict">
                { pouch(level) }
                <div>
                    <h2 id="picture-outcome" class={classes!("level", class)} tabindex="-1">{ band.name }</h2>
                    <p class="lede">{ band.meaning }</p>
                </div>
            </div>
            <p class="note">{ words::BY_YOUR_MARKS }</p>
            if !is_read && has_more {
                <p class="caution">{ words::MORE_IN_FILE }</p>
            }
            if is_read && names_a_door(read) {
                <p class="caution"><strong>{ words::WITH_ITS_PLACE }</strong></p>
            }
            <h3>{ words::SAFER }</h3>
            <p>{ band.to_do }</p>
            <h3>{ words::ELSEWHERE }</h3>
            <ul>
                <li>{ words::ORIGINALS }</li>
                <li>{ words::LOOK_AROUND }</li>
                <li>{ words::NOT_UNSEEN }</li>
            </ul>
            if is_read {
                <p><a class="alone" href={Route::Check { n: 0 }}>{ words::TO_THE_CHECK }</a></p>
            }
            <details>
                <summary>{ words::KEEP_IN_MIND }</summary>
                <p>{ words::ESTIMATE }</p>
                <ul>{ for outcome.caveats.iter().map(|caveat| html! { <li>{ words::caveat(*caveat) }</li> }) }</ul>
                <h4>{ words::RESTS_ON }</h4>
                <ul class="sources">
                    { for sources.map(|source| html! { <li key={source.id}>{ source_line(source) }</li> }) }
                </ul>
                <p class="note">{ words::ALL_SOURCES }</p>
            </details>
        </section>
    }
}
