//! The result: people and deeds first, then the level and the rule, then what to do.

mod exposures;
mod find_out;
mod letter;
mod rests_on;
mod rule;
mod take_along;
mod take_over;
mod text;
mod to_do;
mod verdict;
mod what_if;
mod why;

use self_check_core::advice::Urgency;
use self_check_core::assess::{Count, assess};
use self_check_core::household::Finding;
use self_check_core::path::Stop;
use yew::prelude::*;

use crate::browser;
use crate::copy::{self, site};
use crate::route::Route;
use crate::session::Act;
use crate::ui::{Forget, reading_part, use_page, use_session};
use exposures::exposures;
use find_out::find_out;
use rests_on::rests_on;
use rule::rule;
use take_along::take_along;
use take_over::{take_over, use_safety_told};
use to_do::to_do;
use verdict::verdict;
use what_if::WhatIf;
use why::why;

/// Where the page stands.
#[derive(Properties, PartialEq)]
pub struct ResultPageProps {
    /// Its place in the path.
    pub n: usize,
}

/// The result of the check.
#[component]
pub fn ResultPage(props: &ResultPageProps) -> Html {
    use_page(site::RESULT_TITLE.to_owned());
    let session = use_session();
    let path = session.path();
    let assessment = assess(&session.answers, session.positions);
    let finding = Finding::of(&assessment);
    use_safety_told(&session, finding);
    let is_asked_for = !assessment.safety_first || session.level_asked_for;
    let shows_level = is_asked_for && !assessment.headline.is_for_others();
    use_effect_with(session.level_asked_for, |&asked_for| {
        if asked_for {
            browser::arrive();
        }
    });
    let ask = {
        let session = session.clone();
        Callback::from(move |_: MouseEvent| session.dispatch(Act::AskForLevel))
    };
    let do_this = to_do(
        &assessment.advised,
        &session.answers,
        assessment.safety_first,
    );
    // What has to be done today comes before every number.
    let mut actions = assessment.advised.actions.iter();
    let is_urgent = actions.any(|advice| advice.urgency == Urgency::Today);
    html! {
        <div class="narrow">
            { verdict(&assessment, shows_level) }
            if !is_asked_for {
                <p class="row">
                    <button type="button" class="plain" onclick={ask}>{ site::SHOW_LEVEL }</button>
                </p>
            }
            if is_urgent { { do_this.clone() } }
            if shows_level {
                { rule(&assessment.count) }
                { sharpen(&assessment.count) }
                { exposures(&assessment.exposures) }
                { rests_on(&assessment.count) }
            }
            if !is_urgent { { do_this } }
            if shows_level {
                <WhatIf assessment={assessment.clone()} />
            }
            // To search or to count can be noticed by a feared person.
            if !assessment.safety_first {
                { find_out(&assessment.advised.find_out, &session.answers, &path) }
                <section class="beside" aria-labelledby="matters">
                    { reading_part(&copy::matters_more(), "matters") }
                </section>
            }
            if is_asked_for {
                { why(&assessment.advised.considered) }
            }
            { take_over(&session, finding) }
            if !assessment.safety_first {
                { take_along(&assessment, &session.answers, session.is_example) }
            }
            { onward(path.position(Stop::LookOver).unwrap_or(props.n)) }
        </div>
    }
}

/// The way to the ruler, where there is a number that it sharpens.
fn sharpen(count: &Count) -> Html {
    match count {
        // Where one key is left, no count of positions changes that.
        Count::Counted { left, .. } if left.most > 1.0 => html! {
            <p class="note screen-only">
                <a class="plain" href={Route::Ruler}>{ site::SHARPEN }</a>
            </p>
        },
        Count::Counted { .. } | Count::NotCounted(_) => html! {},
    }
}

/// Where to go from here.
fn onward(answers: usize) -> Html {
    html! {
        <p class="row screen-only">
            <a class="plain" href={Route::Check { n: answers }}>
                { site::CHANGE_ANSWERS }
            </a>
            <Forget onforgotten={|()| Route::Start.go()} />
        </p>
    }
}
