//! The keys there will be: what each opens, and how many copies for whom.

use std::collections::{BTreeMap, BTreeSet};

use self_check_core::household::plan::{Origin, Plan, PlannedKey, Recipient, Work};
use self_check_core::household::{KeyId, Reply};
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
    // A lock that others leave as it is takes no new key.
    let is_made = |place: &usize| {
        let mut works = plan.works.iter().filter(|work| work.takes.contains(place));
        let is_left = |work: &Work| work.reply == Some(Reply::LeftAsItIs);
        works.clone().next().is_none() || !works.all(is_left)
    };
    let made = plan.keys.iter().enumerate();
    let made: Vec<(usize, &PlannedKey)> = made.filter(|(place, _)| is_made(place)).collect();
    if made.is_empty() {
        return html! {};
    }
    let more = made.len().saturating_sub(MOST_KEYS);
    html! {
        <section aria-labelledby="new-keys">
            <h2 id="new-keys">{ words::KEYS }</h2>
            <dl class="answers new-keys">
                { for made.into_iter().take(MOST_KEYS).map(|(place, key)| row(overview, plan, place, key)) }
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

/// Those who get the same number of copies stand together.
fn alike(overview: &Overview, copies: &[(Recipient, u32)]) -> Vec<words::Alike> {
    let mut people: BTreeMap<u32, Vec<String>> = BTreeMap::new();
    for &(recipient, count) in copies {
        let named = people.entry(count).or_default();
        named.push(words::recipient(recipient, &overview.names));
    }
    let alike = |(each, names): (u32, Vec<String>)| words::Alike {
        each,
        people: names.len(),
        names: few(names),
    };
    people.into_iter().map(alike).collect()
}

/// The keys whose place a new one takes, and those that go on opening its locks beside it.
fn beside(overview: &Overview, plan: &Plan, key: &PlannedKey) -> Html {
    let Origin::New { replaces } = &key.origin else {
        return html! {};
    };
    let named = |keys: &mut dyn Iterator<Item = KeyId>| {
        let named = keys.map(|key| board::key_to(&overview.names.key_in_a_row(key)));
        few(named.collect()).join("; ")
    };
    let locks = key
        .locks
        .iter()
        .filter_map(|&id| overview.household.lock(id));
    let is_dropped = |key: &KeyId| plan.works.iter().any(|work| work.drops.contains(key));
    let stay: BTreeSet<KeyId> = locks
        .flat_map(|lock| lock.keys.iter().copied())
        .filter(|key| !is_dropped(key))
        .collect();
    html! {
        <>
            if !replaces.is_empty() {
                <span class="note">{ words::INSTEAD_OF }{ ": " }{ named(&mut replaces.iter().copied()) }</span>
            }
            if !stay.is_empty() {
                <span class="note">{ words::OTHER_KEYS_STAY }{ ": " }{ named(&mut stay.into_iter()) }</span>
            }
        </>
    }
}

fn row(overview: &Overview, plan: &Plan, place: usize, key: &PlannedKey) -> Html {
    let people = alike(overview, &key.copies);
    let mut handed_on: BTreeMap<Recipient, u32> = BTreeMap::new();
    for &(_, recipient) in &key.handed_on {
        *handed_on.entry(recipient).or_default() += 1;
    }
    let handed_on: Vec<(Recipient, u32)> = handed_on.into_iter().collect();
    let handed_on = alike(overview, &handed_on);
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
                if !handed_on.is_empty() {
                    <span>{ words::HANDED_ON }{ ": " }{ words::for_whom(key.handed_on.len() as u64, &handed_on) }</span>
                }
                { beside(overview, plan, key) }
                <span class="note">{ words::SEEN_TO_BY }{ ": " }{ words::who(key.who) }</span>
            </dd>
        </div>
    }
}
