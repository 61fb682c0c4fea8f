//! A check's finding that waits to be told which key it is about.

use std::rc::Rc;

use self_check_core::household::{Finding, KeyId};
use yew::prelude::*;

use crate::copy::en::household::board as words;
use crate::household::{HouseholdAct, Overview};
use crate::ui::{Field, choose_among, use_household};

/// The finding, and the keys it can be about.
#[derive(Properties, PartialEq)]
pub struct WaitingProps {
    /// What the check found.
    pub finding: Finding,
    /// The household.
    pub overview: Rc<Overview>,
}

/// Which key was it?
#[component]
pub fn Waiting(props: &WaitingProps) -> Html {
    let state = use_household();
    let chosen = use_state(|| props.overview.household.keys().next().map(|(key, _)| key));
    let act = |act: HouseholdAct| {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| state.dispatch(act.clone()))
    };
    let onvalue = {
        let chosen = chosen.clone();
        Callback::from(move |value: String| chosen.set(value.parse().ok().map(KeyId::new)))
    };
    let keys = props.overview.household.keys().map(|(key, _)| {
        let words = props.overview.names.key(key).to_owned();
        (key.number().to_string(), words)
    });
    let list: Vec<(String, String)> = keys
        .chain([(String::new(), words::WAITING_NEW.to_owned())])
        .collect();
    let now = chosen.map_or_else(String::new, |key| key.number().to_string());
    html! {
        <section class="notice" aria-labelledby="waiting">
            <h2 id="waiting">{ words::WAITING }</h2>
            <p>{ words::WAITING_LEDE }{ " " }{ words::finding(Some(props.finding)) }</p>
            { choose_among(Field::new("waiting-key", words::KEYS), list, &now, onvalue) }
            <p class="row">
                <button type="button" class="press" onclick={act(HouseholdAct::Assign(*chosen))}>
                    { words::WAITING_TAKE }
                </button>
                <button type="button" class="plain" onclick={act(HouseholdAct::LetGo)}>
                    { words::WAITING_DROP }
                </button>
            </p>
        </section>
    }
}
