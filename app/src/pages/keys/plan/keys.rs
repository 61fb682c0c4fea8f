//! The keys there will be: what each opens, and how many copies for whom.

use std::collections::BTreeMap;

use self_check_core::household::plan::{Origin, Plan, PlannedKey};
use yew::prelude::*;

use super::steps::key_name;
use crate::copy::en::household::{board, plan as words};
use crate::household::Overview;

/// So many keys are listed.
const MOST_KEYS: usize = 50;
/// So many people are named for one key.
const MOST_PEOPLE: usize = 24;

/// The table.
pub fn keys(overview: &Overview, plan: &Plan) -> Html {
    if plan.keys.is_empty() {
        return html! {};
    }
    let more = plan.keys.len().saturating_sub(MOST_KEYS);
    html! {
        <section aria-labelledby="new-keys">
            <h2 id="new-keys">{ words::KEYS }</h2>
            <dl class="answers new-keys">
                { for plan.keys.iter().enumerate().take(MOST_KEYS).map(|(place, key)| row(overview, plan, place, key)) }
            </dl>
            if more > 0 {
                <p class="note">{ board::and_more(more) }</p>
            }
        </section>
    }
}

/// The first of them, and how many more there are.
fn few(mut names: Vec<String>) -> Vec<String> {
    let more = names.len().saturating_sub(MOST_PEOPLE);
    names.truncate(MOST_PEOPLE);
    names.extend((more > 0).then(|| board::and_more(more)));
    names
}

fn row(overview: &Overview, plan: &Plan, place: usize, key: &PlannedKey) -> Html {
    // Those who get the same number of copies stand together.
    let mut people: BTreeMap<u32, Vec<String>> = BTreeMap::new();
    for &(recipient, count) in &key.copies {
        let named = people.entry(count).or_default();
        named.push(words::recipient(recipient, &overview.names));
    }
    let alike = |(each, names): (u32, Vec<String>)| words::Alike {
        each,
        people: names.len(),
        names: few(names),
    };
    let people: Vec<words::Alike> = people.into_iter().map(alike).collect();
    let is_kept = matches!(key.origin, Origin::Kept(_));
    html! {
        <div key={place}>
            <dt>{ key_name(overview, plan, place) }</dt>
            <dd>
                if is_kept {
                    <span>{ words::KEPT_KEY }</span>
                }
                if people.is_empty() {
                    <span>{ words::NO_NEW_COPIES }</span>
                } else {
                    <span>{ words::copies_there_will_be(is_kept, key.copy_count(), &people) }</span>
                }
                <span class="note">{ words::SEEN_TO_BY }{ ": " }{ words::who(key.who) }</span>
            </dd>
        </div>
    }
}
