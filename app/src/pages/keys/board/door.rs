//! One door: its locks with their keys, and the other ways in.

use std::rc::Rc;

use self_check_core::advice::Urgency;
use self_check_core::household::{
    Change, DoorId, HolderId, LockId, Loss, Reply, Way, WayId, WayKind,
};
use yew::prelude::*;

use super::super::forms::{DoorForm, LockForm, WayForm, keys_in};
use super::{DOORS, Desk, Open, due, losses};
use crate::copy::Listed;
use crate::copy::en::household::board as words;
use crate::drawing::DoorDrawing;
use crate::household::{HouseholdAct, Overview};
use crate::ui::{Field, choose_among};

/// So many keys or people are named; more are counted.
const MOST_NAMED: usize = 8;

/// The id of the press that opens its form.
pub fn opener_id(door: DoorId) -> String {
    format!("change-door-{}", door.number())
}

/// The row of a door, or its form.
pub fn row(desk: &Desk, door: DoorId) -> Html {
    let opener = opener_id(door);
    if desk.is_open(Open::Door(door)) {
        return html! {
            <li key={door.number()} class="open-form">
                <DoorForm overview={Rc::clone(&desk.overview)} door={Some(door)} onclose={desk.closer(opener, DOORS)} />
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
                    <p class="when when-soon">{ if overview.is_held(door) { words::HELD } else { words::OPEN_TO_OTHERS } }</p>
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
        <LockForm overview={Rc::clone(&desk.overview)} {door} lock={None::<LockId>} onclose={desk.closer(add_lock_id(door), DOORS)} />
    }
}

fn new_way(desk: &Desk, door: DoorId) -> Html {
    if !desk.is_open(Open::NewWay(door)) {
        return html! {};
    }
    html! {
        <WayForm overview={Rc::clone(&desk.overview)} {door} way={None::<WayId>} onclose={desk.closer(add_way_id(door), DOORS)} />
    }
}

fn lock_row(desk: &Desk, door: DoorId, id: LockId) -> Html {
    let opener = format!("change-lock-{}", id.number());
    let overview = &desk.overview;
    if desk.is_open(Open::Lock(id)) {
        return html! {
            <li key={id.number()} class="open-form">
                <LockForm overview={Rc::clone(overview)} {door} lock={Some(id)} onclose={desk.closer(opener, &opener_id(door))} />
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

fn change_way_id(way: WayId) -> String {
    format!("change-way-{}", way.number())
}

fn how_id(way: WayId, place: usize) -> String {
    format!("way-lost-{}-{place}", way.number())
}

fn whose_id(way: WayId, place: usize) -> String {
    format!("way-whose-{}-{place}", way.number())
}

fn way_row(desk: &Desk, door: DoorId, id: WayId) -> Html {
    let opener = change_way_id(id);
    let overview = &desk.overview;
    if desk.is_open(Open::Way(id)) {
        return html! {
            <li key={id.number()} class="open-form">
                <WayForm overview={Rc::clone(overview)} {door} way={Some(id)} onclose={desk.closer(opener, &opener_id(door))} />
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
            { for losses_here(overview, id, way).into_iter().enumerate().map(|(place, loss)| asked(desk, id, way, loss, place)) }
            { given(desk, id, way) }
            { desk.opener(Open::Way(id), opener, "plain", words::CHANGE_WAY, overview.names.way(id)) }
        </li>
    }
}

/// A remote that was lost: whose, where that is known, and how it went.
type LostRemote = (Option<HolderId>, Loss);

/// The losses of a remote that are asked about beside it. What went together with keys or with another
/// remote is asked beside the person.
fn losses_here(overview: &Overview, id: WayId, way: &Way) -> Vec<LostRemote> {
    if way.kind != WayKind::Remote {
        return Vec::new();
    }
    let went_alone = |holder: &HolderId| {
        let mut lost = overview.lost.get(holder).into_iter().flatten();
        lost.all(|(_, lost)| {
            !lost.remotes.contains(&id) || (lost.copies.is_empty() && lost.remotes.len() == 1)
        })
    };
    let alone = way.lost_by.iter().filter(|(holder, _)| went_alone(holder));
    let alone = alone.map(|(&holder, &loss)| (Some(holder), loss));
    alone
        .chain(way.given_away.map(|loss| (None, loss)))
        .collect()
}

/// One remote is lost. Where one person alone has one, it was theirs.
fn lose_one(way: &mut Way) {
    let mut known_by = way.known_by.iter();
    match (known_by.next(), known_by.next()) {
        (Some(&only), None) if way.kind == WayKind::Remote => {
            way.lost_by.insert(only, Loss::NotSaid);
        }
        _ => way.given_away = Some(Loss::NotSaid),
    }
}

/// The way in without this loss of a remote.
fn without(way: &Way, by: Option<HolderId>) -> Way {
    let mut next = way.clone();
    match by {
        Some(holder) => {
            next.lost_by.remove(&holder);
        }
        None => next.given_away = None,
    }
    next
}

/// The way in with a remote lost by this person, or by nobody knows whom.
fn with_loss(mut way: Way, (by, loss): LostRemote) -> Way {
    match by {
        Some(holder) => {
            way.lost_by.insert(holder, loss);
        }
        None => way.given_away = Some(loss),
    }
    way
}

/// Whose a lost remote may have been: nobody knows, or one of those who have one and have not lost it
/// otherwise.
fn may_be_whose(way: &Way, by: Option<HolderId>) -> Vec<Option<HolderId>> {
    let is_another_unknown = by.is_some() && way.given_away.is_some();
    let unknown = (!is_another_unknown).then_some(None);
    let known_by = way.known_by.iter().copied();
    let people = known_by.filter(|holder| by == Some(*holder) || !way.lost_by.contains_key(holder));
    unknown.into_iter().chain(people.map(Some)).collect()
}

/// Whose a lost remote was, and how it went.
fn asked(desk: &Desk, id: WayId, way: &Way, (by, loss): LostRemote, place: usize) -> Html {
    let overview = &desk.overview;
    let name = overview.names.way(id);
    let label = |question: &str| match by.filter(|_| way.losses().nth(1).is_some()) {
        Some(holder) => format!("{question} ({name}, {})", overview.names.holder(holder)),
        None => format!("{question} ({name})"),
    };
    let set = move |next: Way| HouseholdAct::Make(vec![Change::SetWay(id, next)]);
    let onhow = {
        let (state, rest) = (desk.state.clone(), without(way, by));
        Callback::from(move |value: String| {
            if let Some(loss) = Loss::of(&value) {
                state.dispatch(set(with_loss(rest.clone(), (by, loss))));
            }
        })
    };
    let people = may_be_whose(way, by);
    let value = |by: Option<HolderId>| by.map_or(String::new(), |by| by.number().to_string());
    let onwhose = {
        let (desk, rest, people) = (desk.clone(), without(way, by), people.clone());
        let others = losses_here(overview, id, &rest);
        Callback::from(move |chosen: String| {
            let mut people = people.iter().copied();
            let Some(now) = people.find(|&by| value(by) == chosen) else {
                return;
            };
            desk.state
                .dispatch(set(with_loss(rest.clone(), (now, loss))));
            // Of what went with that person's keys it is asked beside them.
            let before = others.iter().filter(|(by, _)| match (by, now) {
                (Some(by), Some(now)) => *by < now,
                (Some(_), None) => true,
                (None, _) => false,
            });
            desk.go_to_first(&[&whose_id(id, before.count()), &change_way_id(id)]);
        })
    };
    let list = people.iter().map(|&by| {
        let name = by.map_or(words::NOT_KNOWN, |by| overview.names.holder(by));
        (value(by), name.to_owned())
    });
    let whose = label(words::WHOSE);
    let how = label(words::HOW_LOST);
    html! {
        <>
            if people.len() > 1 {
                { choose_among(Field::new(&whose_id(id, place), &whose), list.collect(), &value(by), onwhose) }
            }
            { choose_among(Field::new(&how_id(id, place), &how), losses(), loss.id(), onhow) }
        </>
    }
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
    let mut presses = Vec::new();
    if way.losses().next().is_none() {
        let mut next = way.clone();
        lose_one(&mut next);
        presses.push((words::way_lost(way.kind), next));
    } else {
        // Of several that are lost, and of what went with keys, it is said beside the person.
        if let [(by, _)] = losses_here(&desk.overview, id, way)[..] {
            presses.push((words::FOUND, without(way, by)));
        }
        let mut next = way.clone();
        next.take_back();
        presses.push((words::way_changed(way.kind), next));
    }
    let name = desk.overview.names.way(id);
    html! {
        <>
            { for presses.into_iter().map(|(label, next)| {
                let act = desk.press(move |_| HouseholdAct::Make(vec![Change::SetWay(id, next.clone())]));
                let desk = desk.clone();
                let onclick = Callback::from(move |event: MouseEvent| {
                    act.emit(event);
                    // Other presses stand there now: on to what is asked, or to the way in itself.
                    desk.go_to_first(&[&whose_id(id, 0), &how_id(id, 0), &change_way_id(id)]);
                });
                html! {
                    <button key={label} type="button" class="plain" {onclick} aria-label={words::about(label, name)}>{ label }</button>
                }
            }) }
        </>
    }
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{DoorKind, Household, LockKind, Role, quick};

    use super::*;

    /// A gate with a remote that these people have.
    fn gate(people: &[Role]) -> (Household, Vec<HolderId>, WayId) {
        let home = quick::one_door(DoorKind::Gate, LockKind::PinTumbler, people);
        let home = home.unwrap_or_default();
        let door = home.doors().next().map_or(DoorId::new(0), |(id, _)| id);
        let holders: Vec<HolderId> = home.holders().map(|(id, _)| id).collect();
        let id = home.next_way();
        let known_by = holders.iter().copied().collect();
        let remote = Way {
            known_by,
            ..Way::at(door, WayKind::Remote)
        };
        let home = home.with(Change::AddWay(remote)).unwrap_or_default();
        (home, holders, id)
    }

    fn way(home: &Household, id: WayId) -> Way {
        let unknown = Way::at(DoorId::new(0), WayKind::Remote);
        home.way(id).cloned().unwrap_or(unknown)
    }

    #[test]
    fn lost_remote_of_one_person_alone_was_theirs() {
        let (home, holders, id) = gate(&[Role::Resident]);
        let mut lost = way(&home, id);
        lose_one(&mut lost);
        assert_eq!(lost.lost_by, [(holders[0], Loss::NotSaid)].into());
        assert_eq!(lost.given_away, None);
        let home = home.with(Change::SetWay(id, lost.clone()));
        let overview = Overview::of(&home.unwrap_or_default());
        let here = losses_here(&overview, id, &lost);
        assert_eq!(here, [(Some(holders[0]), Loss::NotSaid)]);
    }

    #[test]
    fn lost_remote_of_one_of_several_is_theirs_once_that_is_said() {
        let (home, holders, id) = gate(&[Role::Resident, Role::Child]);
        let before = way(&home, id);
        let mut lost = before.clone();
        lose_one(&mut lost);
        assert_eq!(
            (lost.given_away, lost.lost_by.len()),
            (Some(Loss::NotSaid), 0)
        );
        let all = [None, Some(holders[0]), Some(holders[1])];
        assert_eq!(may_be_whose(&lost, None), all);
        let by = Some(holders[1]);
        let told = with_loss(without(&lost, None), (by, Loss::NotSaid));
        assert_eq!(told.lost_by, [(holders[1], Loss::NotSaid)].into());
        assert_eq!(told.given_away, None);
        assert_eq!(may_be_whose(&told, by), all, "it can be said otherwise");
        assert_eq!(without(&told, by), before, "it turned up");
        let second = with_loss(told, (None, Loss::Stolen));
        assert_eq!(may_be_whose(&second, None), [None, Some(holders[0])]);
        assert_eq!(may_be_whose(&second, by), [Some(holders[0]), by]);
    }

    #[test]
    fn remote_lost_with_keys_is_asked_about_beside_the_person() {
        let (home, holders, id) = gate(&[Role::Resident, Role::Child]);
        let holder = holders[0];
        let loss = Loss::NotSaid;
        let lost = home.with(Change::LoseRing { holder, loss });
        let lost = lost.unwrap_or_default();
        let remote = way(&lost, id);
        assert_eq!(remote.lost_by.len(), 1);
        assert_eq!(losses_here(&Overview::of(&lost), id, &remote), []);
    }
}
