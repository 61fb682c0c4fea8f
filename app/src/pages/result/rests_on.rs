//! What the level, the number and "knows the door" rest on, each figure with its source.

use self_check_core::assess::{Count, Level};
use self_check_core::grades::Mark;
use self_check_core::sources::{
    DOOR_JUDGEMENT, EUROPEAN_KEY_DIMENSIONS, Source, TRADE_KEY_DIMENSIONS,
};
use yew::prelude::*;

use crate::copy::site;
use crate::ui::source_line;

/// The list, folded: it is for whoever doubts a number, not for a first reading.
pub fn rests_on(count: &Count) -> Html {
    let mut sources: Vec<&Source> = Level::SOURCES.to_vec();
    if let Count::Counted { .. } = count {
        sources.extend([&TRADE_KEY_DIMENSIONS, &EUROPEAN_KEY_DIMENSIONS]);
        sources.extend([Mark::LowestGrade, Mark::PocketfulOfKeys].map(Mark::source));
    }
    sources.push(&DOOR_JUDGEMENT);
    html! {
        <details>
            <summary>{ site::RESTS_ON }</summary>
            <ul class="sources">{ for sources.into_iter().map(|source| html! { <li>{ source_line(source) }</li> }) }</ul>
        </details>
    }
}
