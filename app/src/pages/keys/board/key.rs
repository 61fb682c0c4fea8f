//! One key on its hook: what it opens, where its copies are, and whether it could be in wrong hands.

use std::rc::Rc;

use self_check_core::advice::Urgency;
use self_check_core::household::{Change, CopyId, HolderId, KeyId, Loss, Place};
use yew::prelude::*;

use super::super::forms::KeyForm;
use super::{Desk, KEYS, Open, losses, place_words};
use crate::browser;
use crate::copy::en::household::{board as words, plan as plan_words};
use crate::copy::{self, Listed};
use crate::drawing::{DoorDrawing, HungKey, urgency_mark};
use crate::household::{HouseholdAct, Overview};
use crate::route::Route;
use crate::ui::{Field, choose_among, use_household};

/// So many doors are drawn; the name says the rest.
const MOST_DRAWN: usize = 4;
/// So many reasons are given; more are counted.
const MOST_REASONS: usize = 4;
/// So many people are named; more are counted.
const MOST_PEOPLE: usize = 8;
/// So many copies are listed; the form shows all.
const MOST_COPIES: usize = 24;

/// The id of the press that opens its form.
pub fn opener_id(key: KeyId) -> String {
    format!("change-key-{}", key.number())
}

/// The id of its heading.
pub fn title_id(key: KeyId) -> String {
    format!("key-{}", key.number())
}

/// The row of a key, or its form.
pub fn row(desk: &Desk, key: KeyId) -> Html {
    let opener = opener_id(key);
    if desk.is_open(Open::Key(key)) {
        return html! {
            <li key={key.number()} class="open-form">
                <KeyForm overview={Rc::clone(&desk.overview)} key_id={Some(key)} onclose={desk.closer(opener, KEYS)} />
            </li>
        };
    }
    let overview = &desk.overview;
    let name = overview.names.key(key);
    let exposed = overview.exposed.get(&key);
    html! {
        <li key={key.number()} class="hook">
            <HungKey is_marked={exposed.is_some()} />
            <div>
                if let Some(exposed) = exposed {
                    { due(exposed.urgency, exposed.may_be_sooner()) }
                }
                <h3 id={title_id(key)} tabindex="-1">{ name }</h3>
                { doors(overview, key) }
                if let Some(exposed) = exposed {
                    <ul class="reasons-short">
                        { for reasons(plan_words::reasons(&exposed.by, &overview.household, &overview.names))
                            .into_iter()
                            .map(|reason| html! { <li>{ reason }</li> }) }
                    </ul>
                }
                { who_has_it(overview, key) }
                { copies(desk, key) }
                <p class="note">{ words::finding(overview.household.key(key).and_then(|key| key.finding)) }</p>
                { left_out(overview, key) }
                <p class="row">
                    <CheckThisKey key_id={key} name={name.to_owned()} />
                    { desk.opener(Open::Key(key), opener, "plain", words::CHANGE_KEY, &overview.names.key_in_a_row(key)) }
                </p>
            </div>
        </li>
    }
}

/// The first of these, and how many more there are.
fn reasons(all: Vec<String>) -> Vec<String> {
    let more = all.len().saturating_sub(MOST_REASONS);
    let first = all.into_iter().take(MOST_REASONS);
    first
        .chain((more > 0).then(|| words::and_more(more)))
        .collect()
}

/// Who has a copy that the check may have left out.
fn left_out(overview: &Overview, key: KeyId) -> Html {
    let people = overview.left_out_by_the_check(key);
    if people.is_empty() {
        return html! {};
    }
    let more = people.len().saturating_sub(MOST_PEOPLE);
    let named = overview.names.holders(people.into_iter().take(MOST_PEOPLE));
    html! { <p class="note">{ words::left_out(&named, more) }</p> }
}

/// How soon, as a mark and a word. While nobody has said how a key was lost, the answer decides.
pub fn due(urgency: Urgency, may_be_sooner: bool) -> Html {
    let words = match (may_be_sooner, urgency) {
        (false, urgency) => copy::urgency(urgency).name,
        (true, Urgency::Soon | Urgency::Today) => words::SOON_OR_TODAY,
        (true, Urgency::Habit | Urgency::WhenConvenient) => words::DEPENDS,
    };
    let class = match urgency {
        Urgency::Habit => "when-habit",
        Urgency::WhenConvenient => "when-convenient",
        Urgency::Soon => "when-soon",
        Urgency::Today => "when-today",
    };
    html! {
        <p class={classes!("when", class)}>{ urgency_mark(urgency) }{ words }</p>
    }
}

/// The doors it opens, drawn.
fn doors(overview: &Overview, key: KeyId) -> Html {
    let is_out = overview.exposed.contains_key(&key);
    let doors = overview.doors_of(key).iter().take(MOST_DRAWN);
    html! {
        <p class="small-doors">
            { for doors.filter_map(|&door| overview.household.door(door)).map(|door| html! {
                <DoorDrawing kind={door.kind} is_marked={is_out} />
            }) }
        </p>
    }
}

/// Who has it, at a glance.
fn who_has_it(overview: &Overview, key: KeyId) -> Html {
    let copies = overview.copies.get(&key).into_iter().flatten();
    let mut people: Vec<HolderId> = Vec::new();
    let (mut safes, mut is_at_home) = (Vec::new(), false);
    for copy in copies.filter_map(|&copy| overview.household.copy(copy)) {
        match copy.place {
            Place::Held(holder) if !people.contains(&holder) => people.push(holder),
            Place::InKeySafe(way) if !safes.contains(&way) => safes.push(way),
            Place::AtHome { .. } => is_at_home = true,
            Place::Held(_) | Place::InKeySafe(_) | Place::Lost { .. } | Place::Scrapped { .. } => {}
        }
    }
    let more = people.len().saturating_sub(MOST_PEOPLE);
    let named = overview.names.holders(people.into_iter().take(MOST_PEOPLE));
    let all: Vec<String> = std::iter::once(named)
        .filter(|named| !named.is_empty())
        .chain((more > 0).then(|| words::and_more(more)))
        .chain(
            safes
                .into_iter()
                .map(|way| overview.names.way(way).to_owned()),
        )
        .chain(is_at_home.then(|| words::AT_HOME.to_owned()))
        .collect();
    if all.is_empty() {
        return html! {};
    }
    html! {
        <dl class="facts"><dt>{ words::WITH }</dt><dd>{ all.join("; ") }</dd></dl>
    }
}

/// Where its copies are, each to be marked lost in one press.
fn copies(desk: &Desk, key: KeyId) -> Html {
    let overview = &desk.overview;
    let copies = overview.copies.get(&key).map_or(&[][..], Vec::as_slice);
    if copies.is_empty() {
        return html! { <p class="note">{ words::NO_COPIES }</p> };
    }
    let name = overview.names.key(key);
    let mut out: Vec<(&str, usize)> = Vec::new();
    for copy in copies
        .iter()
        .filter_map(|&copy| overview.household.copy(copy))
    {
        if let Place::Lost { loss, .. } = copy.place {
            let how = words::gone(loss);
            match out.iter_mut().find(|(known, _)| *known == how) {
                Some((_, count)) => *count += 1,
                None => out.push((how, 1)),
            }
        }
    }
    html! {
        <details class="copies">
            <summary>{ words::copies(copies.len(), &out) }</summary>
            <ul class="copy-list">
                { for copies.iter().take(MOST_COPIES).map(|&copy| copy_row(desk, name, copy)) }
            </ul>
        </details>
    }
}

fn copy_row(desk: &Desk, name: &str, id: CopyId) -> Html {
    let overview = &desk.overview;
    let Some(copy) = overview.household.copy(id) else {
        return html! {};
    };
    let place = place_words(overview, id);
    let lose = {
        let act = desk.press(move |_| {
            HouseholdAct::Make(vec![Change::Lose {
                copy: id,
                loss: Loss::NotSaid,
            }])
        });
        let desk = desk.clone();
        Callback::from(move |event: MouseEvent| {
            act.emit(event);
            desk.go_to(&how_id(id));
        })
    };
    html! {
           <li key={id.number()}>
               <span>{ place.clone() }</span>
               if let Place::Lost { by, loss, .. } = copy.place {
                   { how(desk, id, by, loss) }
               } else if !matches!(copy.place, Place::Scrapped { .. }) {
                   <button type="button" class="plain" onclick={lose} aria-label={words::about(words::LOSE_COPY, &format!("{name}, {place}"))}>
    { words::LOSE_COPY }
                   </button>
               }
           </li>
       }
}

fn how_id(copy: CopyId) -> String {
    format!("copy-lost-{}", copy.number())
}

fn how(desk: &Desk, copy: CopyId, by: Option<HolderId>, loss: Loss) -> Html {
    let state = desk.state.clone();
    let onvalue = Callback::from(move |value: String| {
        if let Some(loss) = Loss::of(&value) {
            state.dispatch(HouseholdAct::Make(vec![Change::Lose { copy, loss }]));
        }
    });
    let overview = &desk.overview;
    let key = overview.household.copy(copy).map(|copy| copy.key);
    let key = key.map(|key| overview.names.key_in_a_row(key));
    let by = by.map(|holder| overview.names.holder(holder));
    let label = words::how_lost(by, &key.unwrap_or_default());
    let id = how_id(copy);
    choose_among(Field::new(&id, &label), losses(), loss.id(), onvalue)
}

/// Which key.
#[derive(Properties, PartialEq)]
struct CheckThisKeyProps {
    key_id: KeyId,
    name: String,
}

/// To this key's own check. It starts afresh: answers about another key would be wrong for this one.
#[component]
fn CheckThisKey(props: &CheckThisKeyProps) -> Html {
    let state = use_household();
    let key = props.key_id;
    let onclick = Callback::from(move |_: MouseEvent| {
        state.dispatch(HouseholdAct::BeginCheck(key));
        browser::begin_anew();
        Route::Check { n: 0 }.go();
    });
    html! {
           <button type="button" class="plain" {onclick} aria-label={words::about(words::CHECK_KEY, &props.name)}>
    { words::CHECK_KEY }
           </button>
       }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reasons_that_are_not_given_are_counted() {
        let all = |count: usize| (1..=count).map(|reason| reason.to_string()).collect();
        assert_eq!(reasons(all(4)), ["1", "2", "3", "4"]);
        assert_eq!(reasons(all(6)), ["1", "2", "3", "4", "and 2 more"]);
    }

    #[test]
    fn people_the_check_left_out_are_all_named_or_counted() {
        assert!(words::left_out("sitter, tenant", 0).contains("sitter, tenant. "));
        assert!(words::left_out("sitter, tenant", 3).contains("sitter, tenant and 3 more. "));
    }
}
