//! What may stand on the page, and what is known before the visit.

use self_check_core::household::{Brief, BriefChoices};
use yew::prelude::*;

use crate::copy::en::household::brief as words;
use crate::household::{HouseholdAct, HouseholdHandle};
use crate::ui::{Field, choose_among, tick};

/// The ticks and the three questions, which are about the work at the door; where a door is only to be
/// opened, the first of them.
pub fn ticks(state: &HouseholdHandle, brief: &Brief) -> Html {
    let sees_to_a_lock = !brief.locks.is_empty();
    let now = state.brief;
    let box_of = |label, is_ticked, put: fn(BriefChoices, bool) -> BriefChoices| {
        let state = state.clone();
        let ontick = Callback::from(move |is_ticked: bool| {
            state.dispatch(HouseholdAct::ChooseBrief(put(state.brief, is_ticked)));
        });
        tick(label, None, is_ticked, ontick)
    };
    html! {
        <>
            <fieldset>
                <legend><h2>{ words::TICKS }</h2></legend>
                <div class="opts opts-columns">
                    { box_of(words::LABELS, now.labels, |choices, labels| BriefChoices { labels, ..choices }) }
                    { box_of(words::ROLES, now.roles, |choices, roles| BriefChoices { roles, ..choices }) }
                    { box_of(words::URGENCY, now.urgency, |choices, urgency| BriefChoices { urgency, ..choices }) }
                    { box_of(words::PRICES, now.prices, |choices, prices| BriefChoices { prices, ..choices }) }
                </div>
            </fieldset>
            if sees_to_a_lock || !brief.to_open.is_empty() {
            <details>
                <summary>{ words::BEFORE }</summary>
                <div class="fields">
                { question(state, "can-get-in", words::CAN_GET_IN, now.readiness.can_get_in,
                    |choices, answer| choices.readiness.can_get_in = answer) }
                if sees_to_a_lock {
                    { question(state, "shuts-well", words::SHUTS_WELL, now.readiness.shuts_well,
                        |choices, answer| choices.readiness.shuts_well = answer) }
                    { question(state, "has-proof", words::HAS_PROOF, now.readiness.has_proof,
                        |choices, answer| choices.readiness.has_proof = answer) }
                }
                </div>
            </details>
            }
        </>
    }
}

fn question(
    state: &HouseholdHandle,
    id: &str,
    label: &str,
    now: Option<bool>,
    put: fn(&mut BriefChoices, Option<bool>),
) -> Html {
    let list = [("", words::BLANK), ("yes", words::YES), ("no", words::NO)];
    let list = list.map(|(value, words)| (value.to_owned(), words.to_owned()));
    let value = match now {
        None => "",
        Some(true) => "yes",
        Some(false) => "no",
    };
    let state = state.clone();
    let onvalue = Callback::from(move |value: String| {
        let mut choices = state.brief;
        put(
            &mut choices,
            match value.as_str() {
                "yes" => Some(true),
                "no" => Some(false),
                _ => None,
            },
        );
        state.dispatch(HouseholdAct::ChooseBrief(choices));
    });
    choose_among(Field::new(id, label), list.to_vec(), value, onvalue)
}
