//! Boxes to tick for each of many: found by a word and shown page by page where there are many.

use std::collections::BTreeSet;
use std::rc::Rc;

use yew::prelude::*;

use crate::copy::en::household::board as words;
use crate::ui::{Field, text_field, tick};

/// So many boxes are shown at once; those ticked come first.
const MOST_SHOWN: usize = 24;

/// The boxes.
#[derive(Properties, PartialEq)]
pub struct TickListProps {
    /// An id, one on the page.
    pub id: AttrValue,
    /// What is asked.
    pub legend: AttrValue,
    /// A few words more.
    #[prop_or_default]
    pub hint: Option<AttrValue>,
    /// Each with its number and its words.
    pub items: Rc<Vec<(u32, String)>>,
    /// The numbers that are ticked.
    pub ticked: BTreeSet<u32>,
    /// A box is ticked, or the tick taken off.
    pub ontick: Callback<(u32, bool)>,
}

/// The list. What was ticked when it was opened stands first, and stays there.
#[component]
pub fn TickList(props: &TickListProps) -> Html {
    let text = use_state(String::new);
    let first = use_state(|| props.ticked.clone());
    let is_long = props.items.len() > MOST_SHOWN;
    let sought = text.to_lowercase();
    let fits = |item: &&(u32, String)| {
        !is_long || sought.is_empty() || item.1.to_lowercase().contains(&sought)
    };
    let (ticked, others): (Vec<_>, Vec<_>) = props
        .items
        .iter()
        .filter(fits)
        .partition(|(number, _)| is_long && first.contains(number));
    let found = ticked.len() + others.len();
    let shown = ticked.into_iter().chain(others).take(MOST_SHOWN);
    let ontext = {
        let text = text.clone();
        Callback::from(move |sought: String| text.set(sought))
    };
    html! {
        <fieldset id={&props.id} class="tick-list" tabindex="-1">
            <legend>{ &props.legend }</legend>
            if let Some(hint) = &props.hint {
                <p class="hint">{ hint }</p>
            }
            if is_long {
                { text_field(Field::new(&format!("{}-find", props.id), words::FIND), &text, ontext) }
                <p class="note" role="status">{ words::shown(found.min(MOST_SHOWN), found) }</p>
            }
            <div class="opts opts-columns">
                { for shown.map(|(number, name)| {
                    let number = *number;
                    let ontick = props.ontick.reform(move |is_ticked| (number, is_ticked));
                    html! {
                        <div key={number}>
                            { tick(name.clone(), None, props.ticked.contains(&number), ontick) }
                        </div>
                    }
                }) }
            </div>
        </fieldset>
    }
}
