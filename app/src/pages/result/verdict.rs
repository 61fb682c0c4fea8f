//! The first thing said: who could have done what, and what the secret is worth.

use self_check_core::assess::{Assessment, Level};
use yew::prelude::*;

use crate::copy;
use crate::drawing::pouch;

/// The headline and, where it is shown, the level with its pouch.
pub fn verdict(assessment: &Assessment, shows_level: bool) -> Html {
    let headline = copy::headline(&assessment.headline);
    if !shows_level {
        return html! { <h1 tabindex="-1">{ headline }</h1> };
    }
    let meaning = copy::level_meaning(assessment.level, &assessment.headline);
    html! {
        <div class="verdict">
            { pouch(assessment.level) }
            <div>
                { level_line(assessment.level) }
                <h1 tabindex="-1">{ headline }</h1>
                <p class="lede">
                    { for copy::headline_groups(&assessment.headline) }{ " " }{ meaning }
                </p>
                if let Some(number) = copy::number_on_the_key(assessment.number) {
                    <p class="lede">{ number }</p>
                }
            </div>
        </div>
    }
}

/// The level's word.
pub fn level_line(level: Level) -> Html {
    html! { <p class={classes!("level", level_class(level))}>{ copy::level(level).name }</p> }
}

fn level_class(level: Level) -> &'static str {
    match level {
        Level::Kept => "level-kept",
        Level::CannotBeToldYet => "level-unknown",
        Level::InDoubt => "level-doubt",
        Level::GivenAway => "level-away",
    }
}
