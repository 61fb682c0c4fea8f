//! One door: its locks with their keys, and the other ways in.

use std::rc::Rc;

use self_check_core::advice::Urgency;
use self_check_core::household::{Change, DoorId, LockId, Loss, Reply, Way, WayId, WayKind};
use yew::prelude::*;

use super::super::forms::{DoorForm, LockForm, WayForm, keys_in};
use super::{Desk, Open, due, losses};
use crate::copy::Listed;
use crate::copy::en::household::board as words;
use crate::drawing::DoorDrawing;
use crate::household::{HouseholdAct, Overview};
use crate::ui::{Field, choose_among};

/// So many keys or people are named; more are counted.
const MOST_NAMED: usize = 8;

/// The row of a door, or its form.
pub fn row(desk: &Desk, door: DoorId) -> Html {
    let opener = format!("change-door-{}", door.number());
    if desk.is_open(Open::Door(door)) {
        return html! {
            <li key={door.number()} class="open-form">
                <DoorForm overview={Rc::clone(&desk.overview)} door={Some(door)} onclose={desk.closer(opener)} />
            </li>
        };
    }
    let overview = &desk.overview;
    let Some(part) = overview.household.door(door) else {
        return html! {};
    };
    let name = overview.names.door(door);
    let is_open = overview.open_to_others.contains(&door);
    let locks = overview.locks.get(&door).map_or(&[][..], Vec::as_slice);
    let ways = overview.ways.get(&door).map_or(&[][..], Vec::as_slice);
    html! {
        <li key={door.number()} class="leaf">
            <DoorDrawing kind={part.kind} is_marked={is_open} />
            <div>
                <h3>{ name }</h3>
                if is_open {
                    <p class="when when-soon">{ words::OPEN_TO_OTHERS }</p>
                }
                if let Some(who) = words::decides(part.who_decides, part.kind) {
                    <p class="note">{ who }</p>
                }
                if locks.is_empty() {
                    <p class="note">{ words::NO_LOCK }</p>
                }
                <ul class="locks">
                    { for locks.iter().map(|&lock| lock_row(desk, door, lock)) }
                    { for ways.iter().map(|&way| way_row(desk, door, way)) }
                </ul>
                { new_lock(desk, door) }
                { new_way(desk, door) }
                <p class="row">
                    { desk.opener(Open::Door(door), opener, "plain", words::CHANGE_DOOR, name) }
                    { desk.opener(Open::NewLock(door), add_lock_id(door), "plain", words::ADD_LOCK, name) }
                    { desk.opener(Open::NewWay(door), add_way_id(door), "plain", words::ADD_WAY, name) }
                </p>
            </div>
        </li>
    }
}

fn add_lock_id(door: DoorId) -> String {
    format!("add-lock-{}", door.number())
}

fn add_way_id(door: DoorId) -> String {
    format!("add-way-{}", door.number())
}

fn new_lock(desk: &Desk, door: DoorId) -> Html {
    if !desk.is_open(Open::NewLock(door)) {
        return html! {};
    }
    html! {
        <LockForm overview={Rc::clone(&desk.overview)} {door} lock={None::<LockId>} onclose={desk.closer(add_lock_id(door))} />
    }
}

fn new_way(desk: &Desk, door: DoorId) -> Html {
    if !desk.is_open(Open::NewWay(door)) {
        return html! {};
    }
    html! {
        <WayForm overview={Rc::clone(&desk.overview)} {door} way={None::<WayId>} onclose={desk.closer(add_way_id(door))} />
    }
}

fn lock_row(desk: &Desk, door: DoorId, id: LockId) -> Html {
    let opener = format!("change-lock-{}", id.number());
    let overview = &desk.overview;
    if desk.is_open(Open::Lock(id)) {
        return html! {
            <li key={id.number()} class="open-form">
                <LockForm overview={Rc::clone(overview)} {door} lock={Some(id)} onclose={desk.closer(opener)} />
            </li>
        };
    }
    let Some(lock) = overview.household.lock(id) else {
        return html! {};
    };
    let keys = lock.keys.iter().take(MOST_NAMED);
    let mut keys: Vec<String> = keys.map(|&key| overview.names.key_in_a_row(key)).collect();
    if lock.keys.len() > MOST_NAMED {
        keys.push(words::and_more(lock.keys.len() - MOST_NAMED));
    }
    html! {
        <li key={id.number()}>
            <span>
                { words::lock_kind(lock.kind) }{ ". " }
                if keys.is_empty() {
                    { words::NO_KEY }
                } else {
                    { words::KEYS_OF_DOOR }{ ": " }{ keys.join("; ") }
                }
                { reply(lock.reply) }
            </span>
            { desk.opener(Open::Lock(id), opener, "plain", words::CHANGE_LOCK, overview.names.lock(id)) }
        </li>
    }
}

/// What came of telling those who decide.
fn reply(reply: Option<Reply>) -> Html {
    let words = match reply {
        None => return html! {},
        Some(Reply::Waiting) => words::WAITED_FOR,
        Some(Reply::LeftAsItIs) => words::LEFT_AS_IT_IS,
    };
    html! { <>{ ". " }{ words }</> }
}

/// The keys in a key safe.
fn lying_in_it(overview: &Overview, id: WayId, way: &Way) -> Html {
    if way.kind != WayKind::KeySafe {
        return html! {};
    }
    let keys = keys_in(&overview.household, Some(id));
    let named = keys.iter().take(MOST_NAMED);
    let mut named: Vec<String> = named.map(|&key| overview.names.key_in_a_row(key)).collect();
    if keys.len() > MOST_NAMED {
        named.push(words::and_more(keys.len() - MOST_NAMED));
    }
    html! {
        if named.is_empty() {
            { ". " }{ words::NOTHING_IN_IT }
        } else {
            { ". " }{ words::IN_IT }{ ": " }{ named.join("; ") }
        }
    }
}

fn way_row(desk: &Desk, door: DoorId, id: WayId) -> Html {
    let opener = format!("change-way-{}", id.number());
    let overview = &desk.overview;
    if desk.is_open(Open::Way(id)) {
        return html! {
            <li key={id.number()} class="open-form">
                <WayForm overview={Rc::clone(overview)} {door} way={Some(id)} onclose={desk.closer(opener)} />
            </li>
        };
    }
    let Some(way) = overview.household.way(id) else {
        return html! {};
    };
    let known = way.known_by.iter().take(MOST_NAMED).copied();
    let known = overview.names.holders(known);
    let is_given = overview.open_ways.get(&id).copied();
    html! {
        <li key={id.number()}>
            <span>
                { way.kind.words() }{ ". " }
                if known.is_empty() {
                    { words::KNOWN_BY_NOBODY }
                } else {
                    { if way.kind == WayKind::Remote { words::IS_WITH } else { words::KNOWN_BY } }{ ": " }{ known }
                    if way.known_by.len() > MOST_NAMED {
                        { ", " }{ words::and_more(way.known_by.len() - MOST_NAMED) }
                    }
                }
                { lying_in_it(overview, id, way) }
                if is_given.is_some() {
                    { ". " }<strong>{ words::WAY_GIVEN }</strong>
                }
                { reply(way.reply) }
            </span>
            if let Some(urgency) = is_given {
                { due(urgency, may_be_sooner(way, urgency)) }
            }
            { how(desk, id, way) }
            { given(desk, id, way) }
            { desk.opener(Open::Way(id), opener, "plain", words::CHANGE_WAY, overview.names.way(id)) }
        </li>
    }
}

/// How a remote went, where nobody is known to have lost theirs: that is asked beside the person.
fn how(desk: &Desk, id: WayId, way: &Way) -> Html {
    let Some(loss) = way.given_away.filter(|_| way.kind == WayKind::Remote) else {
        return html! {};
    };
    let (state, next) = (desk.state.clone(), way.clone());
    let onvalue = Callback::from(move |value: String| {
        if let Some(loss) = Loss::of(&value) {
            let given_away = Some(loss);
            let next = Way {
                given_away,
                ..next.clone()
            };
            state.dispatch(HouseholdAct::Make(vec![Change::SetWay(id, next)]));
        }
    });
    let label = format!("{} ({})", words::HOW_LOST, desk.overview.names.way(id));
    let field = format!("way-lost-{}", id.number());
    choose_among(Field::new(&field, &label), losses(), loss.id(), onvalue)
}

/// Whether it depends on how a remote was lost, which nobody has said yet.
fn may_be_sooner(way: &Way, urgency: Urgency) -> bool {
    let mut losses = way.losses();
    way.kind == WayKind::Remote
        && urgency < Urgency::Today
        && losses.any(|loss| loss == Loss::NotSaid)
}

/// The presses that mark a way given away, or take the mark back: a remote turned up, or it was changed.
fn given(desk: &Desk, id: WayId, way: &Way) -> Html {
    let is_remote = way.kind == WayKind::Remote;
    let changed = |label: &'static str, change: fn(&mut Way)| {
        let mut next = way.clone();
        change(&mut next);
        (label, next)
    };
    let mut presses = Vec::new();
    if way.losses().next().is_none() {
        presses.push(changed(words::way_lost(way.kind), |way| {
            way.given_away = Some(Loss::NotSaid);
        }));
    } else {
        // Of a remote that somebody lost it is said beside that person.
        if is_remote && way.given_away.is_some() {
            presses.push(changed(words::FOUND, |way| way.given_away = None));
        }
        presses.push(changed(words::way_changed(way.kind), Way::take_back));
    }
    let name = desk.overview.names.way(id);
    html! {
        <>
            { for presses.into_iter().map(|(label, next)| {
                let onclick = desk.press(move |_| HouseholdAct::Make(vec![Change::SetWay(id, next.clone())]));
                html! {
                    <button type="button" class="plain" {onclick} aria-label={words::about(label, name)}>{ label }</button>
                }
            }) }
        </>
    }
}
