//! What the plan aims at: how the doors share keys, how many spares, and when.

use self_check_core::household::plan::Plan;
use self_check_core::household::{Choices, Grouping};
use yew::prelude::*;

use crate::copy::Listed;
use crate::copy::en::household::{self, plan as words};
use crate::household::{HouseholdAct, HouseholdHandle};
use crate::ui::{Field, choose_among, tick};

/// So many spares can be asked for.
const MOST_SPARES: u8 = 5;

/// The choices, folded: the plan as it stands is what most people need.
pub fn choices(state: &HouseholdHandle, plan: &Plan) -> Html {
    let now = plan.choices;
    html! {
        <details class="screen-only">
            <summary>{ words::CHOICES }</summary>
            <fieldset>
                <legend>{ words::GROUPING }</legend>
                <div class="opts">{ for Grouping::all().iter().map(|&grouping| option(state, now, grouping)) }</div>
            </fieldset>
            if !plan.safety_first {
                { spares(state, now) }
            }
            <div class="opts">
                { tick(words::AFTER_HOURS, None, now.after_hours, choose(state, move |after_hours| Choices { after_hours, ..now })) }
            </div>
        </details>
    }
}

fn choose<T: 'static>(
    state: &HouseholdHandle,
    choices: impl Fn(T) -> Choices + 'static,
) -> Callback<T> {
    let state = state.clone();
    Callback::from(move |value: T| state.dispatch(HouseholdAct::Choose(choices(value))))
}

fn option(state: &HouseholdHandle, now: Choices, grouping: Grouping) -> Html {
    let onchange = choose(state, move |_: Event| Choices { grouping, ..now });
    html! {
        <label key={grouping.id()} class="opt">
            <input type="radio" name="grouping" checked={now.grouping == grouping} {onchange} autocomplete="off" />
            <span><b>{ grouping.words() }</b><small>{ household::grouping_meaning(grouping) }</small></span>
        </label>
    }
}

fn spares(state: &HouseholdHandle, now: Choices) -> Html {
    let list = (0..=MOST_SPARES).map(|count| (count.to_string(), count.to_string()));
    let list = std::iter::once((String::new(), words::SPARES_AS_NOW.to_owned())).chain(list);
    let value = now
        .spares
        .map_or_else(String::new, |spares| spares.to_string());
    let onvalue = choose(state, move |value: String| Choices {
        spares: value.parse().ok(),
        ..now
    });
    choose_among(
        Field::new("spares", words::SPARES),
        list.collect(),
        &value,
        onvalue,
    )
}
