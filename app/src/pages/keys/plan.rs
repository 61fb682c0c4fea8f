//! The plan: what to do in which order, what holds the doors until then, and the keys there will be.

mod asking;
mod choices;
mod keys;
mod steps;

use std::collections::BTreeSet;
use std::rc::Rc;

use self_check_core::household::plan::{Note, Plan, WayWork, Work};
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::{DoorId, ExposedKey, Grouping, KeyId, Reply, WayId, plan, remedy};
use self_check_core::sources::Source;
use yew::prelude::*;

use super::bar::Bar;
use super::{
    BRIEF, OverviewProps, PLAN, example_note, on_paper, pages, route, safety_note, use_keys_page,
};
use crate::browser;
use crate::copy::en::household::{board, plan as words};
use crate::household::{HouseholdAct, HouseholdHandle, Overview, Told};
use crate::ui::{source_line, use_household};

/// The plan.
#[component]
pub fn PlanPage(props: &OverviewProps) -> Html {
    use_keys_page(words::TITLE);
    let state = use_household();
    let overview = &props.overview;
    let plan = use_memo(
        (state.household().clone(), state.choices_to_plan()),
        |(household, choices)| plan(household, *choices),
    );
    let is_just_done = state.news.told == Some(Told::CarriedOut);
    let news = use_mut_ref(|| state.news.count);
    use_effect_with(state.news.count, move |&count| {
        // What was pressed is gone: the reader is taken to the heading.
        if news.replace(count) != count && is_just_done {
            browser::arrive();
        }
    });
    let has_visit = plan.works.iter().any(|work| work.needs_a_locksmith());
    html! {
        <article class={classes!("narrow", on_paper(&state))}>
            { example_note(&state) }
            <h1 tabindex="-1">{ words::TITLE }</h1>
            <p class="lede">{ lede(&plan, is_just_done) }</p>
            { safety_note(&state) }
            <Bar overview={Rc::clone(overview)} />
            if !plan.safety_first {
                <asking::HowLost overview={Rc::clone(overview)} plan={Rc::clone(&plan)} />
            }
            if plan.choices.grouping != Grouping::AsNow {
                { needs_assumed(overview) }
            }
            { choices::choices(&state, &plan) }
            if !plan.steps.is_empty() {
                { steps::steps(overview, &plan) }
            }
            { reasons(overview, &plan) }
            if !plan.safety_first {
                { keys::keys(overview, &plan) }
            }
            { notes(overview, &plan) }
            if has_visit && !plan.safety_first {
                <p class="row screen-only">
                    <a class="press" href={route(Some(BRIEF))}>{ board::BRIEF }</a>
                </p>
            }
            if !plan.is_empty() && !plan.safety_first {
                { done(&state, &plan) }
            }
            { sources(&plan) }
            { pages(&state, Some(PLAN)) }
        </article>
    }
}

fn lede(plan: &Plan, is_just_done: bool) -> &'static str {
    if plan.is_empty() && is_just_done {
        words::NOTHING_NOW
    } else if plan.is_empty() {
        words::NOTHING
    } else if !plan.actors().contains(&WhoActs::Household) {
        if is_to_be_told(plan) {
            words::LEDE_TELL
        } else if has_left(plan) {
            words::LEDE_LEFT
        } else {
            words::LEDE_OTHERS
        }
    } else if has_left(plan) {
        words::LEDE_PART
    } else if plan.choices.grouping == Grouping::AsNow {
        words::LEDE
    } else {
        words::LEDE_REGROUPED
    }
}

/// What is taken for granted where nobody has said who needs which door.
pub fn needs_assumed(overview: &Overview) -> Html {
    if overview.needs_not_said().next().is_none() {
        return html! {};
    }
    html! {
        <p class="note">{ words::NEEDS_ASSUMED }{ " " }<a href={route(None)}>{ words::NEEDS_SAY }</a></p>
    }
}

/// Why each exposed key is exposed.
fn reasons(overview: &Overview, plan: &Plan) -> Html {
    if plan.exposed.is_empty() {
        return html! {};
    }
    html! {
        <section aria-labelledby="reasons">
            <h2 id="reasons">{ words::REASONS }</h2>
            <ul class="took">
                { for plan.exposed.iter().take(MOST_KEYS).map(|exposed| html! {
                    <li key={exposed.key.number()}>
                        <b>{ overview.names.key(exposed.key) }</b>
                        <ul class="note">
                            { why(overview, exposed) }
                        </ul>
                    </li>
                }) }
                { more_than(MOST_KEYS, plan.exposed.len()) }
            </ul>
        </section>
    }
}

fn why(overview: &Overview, exposed: &ExposedKey) -> Html {
    let reasons = words::reasons(&exposed.by, &overview.household, &overview.names);
    html! {
        <>
            { for reasons.iter().take(MOST_LINES).map(|reason| html! { <li>{ reason }</li> }) }
            { more_than(MOST_LINES, reasons.len()) }
        </>
    }
}

/// So many keys in wrong hands are explained.
const MOST_KEYS: usize = 50;
/// So many reasons or notes of one kind stand on the page; more are counted.
const MOST_LINES: usize = 12;

/// The line that counts what is not shown.
fn more_than(shown: usize, all: usize) -> Html {
    match all.saturating_sub(shown) {
        0 => html! {},
        more => html! { <li>{ board::and_more(more) }</li> },
    }
}

/// What else to mind; what is the same for many keys stands in one line.
fn notes(overview: &Overview, plan: &Plan) -> Html {
    if plan
        .notes
        .iter()
        .all(|note| matches!(note, Note::ThumbTurn(_)))
    {
        return html! {};
    }
    let (mut single, mut not_checked, mut cannot_tell) = (Vec::new(), Vec::new(), Vec::new());
    for &note in &plan.notes {
        match note {
            Note::NotChecked(key) => not_checked.push(key),
            Note::CannotTell(key) => cannot_tell.push(key),
            // The visit has it, with its caution.
            Note::ThumbTurn(_) => {}
            // All doors of one key safe stand in one line.
            Note::OpensMoreBySafe { .. } => {}
            Note::MasterInReach { .. } | Note::CameBackWithItsCard(_) => single.push(note),
        }
    }
    let by_safes = opens_more(overview, &plan.opens_more_by_safes());
    html! {
        <section aria-labelledby="notes">
            <h2 id="notes">{ words::NOTES }</h2>
            <ul>
                { for single.iter().take(MOST_LINES).map(|&note| html! { <li>{ words::note(note, &overview.names) }</li> }) }
                { more_than(MOST_LINES, single.len()) }
                { for by_safes.iter().take(MOST_LINES).map(|safe| html! { <li>{ safe }</li> }) }
                { more_than(MOST_LINES, by_safes.len()) }
                { of_keys(overview, words::NOT_CHECKED_YET, &not_checked) }
                { of_keys(overview, words::CANNOT_TELL_YET, &cannot_tell) }
            </ul>
        </section>
    }
}

/// What is said of each key safe by which more will open than today.
pub fn opens_more(overview: &Overview, more: &[(WayId, DoorId)]) -> Vec<String> {
    let safes = more.chunk_by(|one, next| one.0 == next.0);
    let told = |more: &[(WayId, DoorId)]| {
        let safe = more
            .first()
            .map_or("", |&(safe, _)| overview.names.way(safe));
        let doors = more.iter().map(|&(_, door)| door);
        let mut named = overview.names.doors_within(doors.take(MOST_LINES));
        if more.len() > MOST_LINES {
            named = format!("{named}, {}", board::and_more(more.len() - MOST_LINES));
        }
        words::opens_more(safe, &named)
    };
    safes.map(told).collect()
}

/// A note on several keys.
fn of_keys(overview: &Overview, words: &str, keys: &[KeyId]) -> Html {
    if keys.is_empty() {
        return html! {};
    }
    let named = keys
        .iter()
        .take(MOST_LINES)
        .map(|&key| overview.names.key_for(key));
    let more = keys.len().saturating_sub(MOST_LINES);
    let named: Vec<String> = named
        .chain((more > 0).then(|| board::and_more(more)))
        .collect();
    html! { <li>{ words }{ ": " }{ named.join("; ") }{ "." }</li> }
}

/// The presses that say who has done their part: one for everything where only one acts, else one each. Others
/// may also be told only, or leave it as it is.
fn done(state: &HouseholdHandle, plan: &Rc<Plan>) -> Html {
    let actors = plan.actors();
    let others: BTreeSet<WhoActs> = actors
        .iter()
        .copied()
        .filter(|&who| who != WhoActs::Household)
        .collect();
    let carried_out = |who: WhoActs| {
        let (state, plan) = (state.clone(), Rc::clone(plan));
        let acted = BTreeSet::from([who]);
        let onclick = Callback::from(move |_: MouseEvent| {
            match plan.carried_out_by(state.household(), &acted) {
                Ok(after) => state.dispatch(HouseholdAct::CarryOut(after)),
                Err(refusal) => state.dispatch(HouseholdAct::Refuse(refusal)),
            }
        });
        let label = match who {
            WhoActs::Household if others.is_empty() => words::DONE,
            who => words::done_by(who),
        };
        press(label, onclick)
    };
    let replied = |by: BTreeSet<WhoActs>, reply: Reply, label: &'static str| {
        let (state, plan) = (state.clone(), Rc::clone(plan));
        let onclick = Callback::from(move |_: MouseEvent| {
            let after = plan.replied(state.household(), &by, reply);
            state.dispatch(HouseholdAct::CarryOut(after));
        });
        press(label, onclick)
    };
    let told = if plan.asks_of_the_household() {
        words::done_by(WhoActs::Household)
    } else {
        words::TOLD
    };
    let has_own_part = actors.contains(&WhoActs::Household);
    html! {
        <section class="screen-only" aria-labelledby="done">
            <h2 id="done">{ words::DONE_TITLE }</h2>
            if !others.is_empty() {
                <p>{ if others.iter().any(|&who| is_waited_for(plan, who)) { words::DONE_OR_LEFT } else { words::DONE_BY_OTHERS } }</p>
            }
            <p>{ words::DONE_NOTE }</p>
            if has_own_part {
                { carried_out(WhoActs::Household) }
            } else if is_to_be_told(plan) {
                { replied(others.clone(), Reply::Waiting, told) }
            }
            { for others.iter().map(|&who| html! {
                <>
                    { carried_out(who) }
                    if is_waited_for(plan, who) {
                        { replied(BTreeSet::from([who]), Reply::LeftAsItIs, words::left_by(who)) }
                    }
                </>
            }) }
        </section>
    }
}

/// Whether others have yet to be told.
fn is_to_be_told(plan: &Plan) -> bool {
    plan.works.iter().any(Work::is_to_be_told) || plan.ways.iter().any(WayWork::is_to_be_told)
}

fn has_left(plan: &Plan) -> bool {
    plan.works.iter().any(Work::is_left)
        || plan
            .ways
            .iter()
            .any(|work| work.reply == Some(Reply::LeftAsItIs))
}

/// Whether all that these decide about was told to them and they have not said that they leave it.
fn is_waited_for(plan: &Plan, who: WhoActs) -> bool {
    let works = plan.works.iter().filter(|work| work.who == who);
    let ways = plan.ways.iter().filter(|work| work.who() == who);
    let replies = works
        .map(|work| work.reply)
        .chain(ways.map(|work| work.reply));
    let first_of_all = replies.min().flatten();
    first_of_all == Some(Reply::Waiting)
}

fn press(label: &str, onclick: Callback<MouseEvent>) -> Html {
    html! { <p class="row"><button type="button" class="press-quiet" {onclick}>{ label }</button></p> }
}

/// What the plan rests on.
fn sources(plan: &Plan) -> Html {
    let regrouped: &[&Source] = match plan.choices.grouping {
        Grouping::AsNow => &[],
        Grouping::AllAlike | Grouping::ByNeed => Grouping::SOURCES,
    };
    let mut all: Vec<&Source> = Vec::new();
    for source in Plan::SOURCES.iter().chain(remedy::SOURCES).chain(regrouped) {
        if !all.iter().any(|known| known.id == source.id) {
            all.push(source);
        }
    }
    html! {
        <details>
            <summary>{ words::SOURCES }</summary>
            <ul class="sources">{ for all.into_iter().map(|source| html! { <li>{ source_line(source) }</li> }) }</ul>
        </details>
    }
}
