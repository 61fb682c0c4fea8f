//! One person: what they carry, what opens to them, and their ring lost in one press.

use std::collections::BTreeMap;
use std::rc::Rc;

use self_check_core::household::{
    Change, CopyId, HolderId, KeyId, Loss, Opening, Place, Reach, WayKind,
};
use yew::prelude::*;

use super::super::forms::HolderForm;
use super::super::{PLAN, route};
use super::{Desk, Open, losses};
use crate::copy::Listed;
use crate::copy::en::household::board as words;
use crate::household::{HouseholdAct, Overview};
use crate::ui::{Field, choose_among};

/// So many doors or keys are named in a row; more are counted.
const MOST_NAMED: usize = 12;

/// The row of a person, or its form.
pub fn row(desk: &Desk, holder: HolderId) -> Html {
    let opener = format!("change-person-{}", holder.number());
    if desk.is_open(Open::Person(holder)) {
        return html! {
            <li key={holder.number()} class="open-form">
                <HolderForm overview={Rc::clone(&desk.overview)} holder={Some(holder)} onclose={desk.closer(opener)} />
            </li>
        };
    }
    let overview = &desk.overview;
    let name = overview.names.holder(holder);
    let part = overview.household.holder(holder);
    let reach = overview.reach(holder);
    html! {
        <li key={holder.number()}>
            <h3>{ name }</h3>
            if part.is_some_and(|part| part.no_longer_should) {
                <p class="when when-soon">{ words::NO_LONGER }</p>
            }
            <dl class="facts">
                <dt>{ words::CARRIES }</dt><dd>{ carried(overview, holder) }</dd>
                <dt>{ words::OPENS }</dt><dd>{ reach.map(|reach| opened(overview, reach)).unwrap_or_default() }</dd>
            </dl>
            if overview.lost.contains_key(&holder) {
                { lost(desk, holder) }
            }
            <p class="row">
                { lose(desk, holder) }
                { desk.opener(Open::Person(holder), opener, "plain", words::CHANGE_PERSON, name) }
            </p>
        </li>
    }
}

/// The keys on the ring: how many, and what each is for.
fn carried(overview: &Overview, holder: HolderId) -> String {
    let copies = overview.rings.get(&holder).into_iter().flatten();
    keys_told(overview, copies)
}

fn keys_told<'a>(overview: &Overview, copies: impl Iterator<Item = &'a CopyId>) -> String {
    let mut counts: BTreeMap<KeyId, usize> = BTreeMap::new();
    for copy in copies.filter_map(|&copy| overview.household.copy(copy)) {
        *counts.entry(copy.key).or_default() += 1;
    }
    let more = counts.values().skip(MOST_NAMED).sum();
    let doors = |key| match overview.doors_of(key) {
        [] => words::NO_DOOR_YET.to_owned(),
        _ => overview.names.key_for(key),
    };
    let named = counts.into_iter().take(MOST_NAMED);
    let named: Vec<(String, usize)> = named.map(|(key, count)| (doors(key), count)).collect();
    words::carries(&named, more)
}

/// The doors that open, and those that open in part.
pub fn opened(overview: &Overview, reach: &Reach) -> String {
    let names = &overview.names;
    let mut whole = reach.opened();
    let named = names.doors(whole.by_ref().take(MOST_NAMED));
    let more = whole.count();
    let held = |reach: &&self_check_core::household::DoorReach| {
        matches!(reach.opening, Opening::Part { .. })
    };
    let parts = reach.doors.iter().filter(held).take(MOST_NAMED);
    let parts = parts.map(|part| format!("{} ({})", names.door(part.door), words::IN_PART));
    let all: Vec<String> = std::iter::once(named)
        .filter(|named| !named.is_empty())
        .chain((more > 0).then(|| words::and_more(more)))
        .chain(parts)
        .collect();
    if all.is_empty() {
        words::OPENS_NONE.to_owned()
    } else {
        all.join("; ")
    }
}

/// The press that marks the whole ring lost; nothing where there is nothing on it.
fn lose(desk: &Desk, holder: HolderId) -> Html {
    let overview = &desk.overview;
    let has_remote = overview.household.ways().any(|(_, way)| {
        way.kind == WayKind::Remote
            && way.known_by.contains(&holder)
            && !way.lost_by.contains_key(&holder)
    });
    if !overview.rings.contains_key(&holder) && !has_remote {
        return html! {};
    }
    let name = overview.names.holder(holder);
    let title = lost_id(holder);
    let act = desk.press(move |_| {
        HouseholdAct::Make(vec![Change::LoseRing {
            holder,
            loss: Loss::NotSaid,
        }])
    });
    let desk = desk.clone();
    let onclick = Callback::from(move |event: MouseEvent| {
        act.emit(event);
        desk.go_to(&title);
    });
    html! {
           <button type="button" class="press-quiet" {onclick} aria-label={words::about(words::LOSE_RING, name)}>
    { words::LOSE_RING }
           </button>
       }
}

fn lost_id(holder: HolderId) -> String {
    format!("lost-{}", holder.number())
}

/// What was lost, what opens to whoever finds it, how it went, and where to go from here.
fn lost(desk: &Desk, holder: HolderId) -> Html {
    let overview = &desk.overview;
    let copies: Vec<CopyId> = overview.lost.get(&holder).cloned().unwrap_or_default();
    let name = overview.names.holder(holder);
    let losses_told =
        copies
            .iter()
            .filter_map(|&copy| match overview.household.copy(copy)?.place {
                Place::Lost { loss, .. } => Some(loss),
                _ => None,
            });
    let loss = losses_told.max().unwrap_or(Loss::NotSaid);
    let reach = overview.reach_of_lost(holder);
    let keys = keys_told(overview, copies.iter());
    let opens = match loss {
        Loss::NotReturned => words::KEPT_OPENS,
        _ => words::LOST_OPENS,
    };
    let onvalue = {
        let (desk, copies) = (desk.clone(), copies.clone());
        Callback::from(move |value: String| {
            if let Some(loss) = Loss::of(&value) {
                desk.state.dispatch(HouseholdAct::Make(went(
                    &desk.overview,
                    Some(holder),
                    &copies,
                    loss,
                )));
            }
        })
    };
    let found = desk.press({
        let copies = copies.clone();
        move |overview| HouseholdAct::Make(turned_up(overview, holder, &copies))
    });
    let field = format!("how-{}", holder.number());
    // Several people may have lost a ring: each field and link says whose.
    let how = format!("{} ({name})", words::HOW_LOST);
    html! {
           <div class="lost">
               <h4 id={lost_id(holder)} tabindex="-1">{ words::ring_is_lost(name, loss) }</h4>
               <dl class="facts">
                   <dt>{ words::KEYS }</dt><dd>{ keys }</dd>
                   <dt>{ opens }</dt><dd>{ opened(overview, &reach) }</dd>
               </dl>
               { choose_among(Field::new(&field, &how), losses(), loss.id(), onvalue) }
               <p class="row">
                   <a class="press" href={route(Some(PLAN))} aria-label={words::about(words::SEE_PLAN_NOW, name)}>
                       { words::SEE_PLAN_NOW }
                   </a>
                   <button type="button" class="plain" onclick={found} aria-label={words::about(words::FOUND, name)}>
    { words::FOUND }
                   </button>
               </p>
           </div>
       }
}

/// All that was lost from this ring went in this way.
pub fn went(
    overview: &Overview,
    by: Option<HolderId>,
    copies: &[CopyId],
    loss: Loss,
) -> Vec<Change> {
    let lost = copies.iter().map(|&copy| Change::Move {
        copy,
        to: Place::Lost { by, loss },
    });
    let remotes = by.map(|holder| remotes(overview, holder, Some(loss)));
    lost.chain(remotes.into_iter().flatten()).collect()
}

/// Everything is back on the ring.
fn turned_up(overview: &Overview, holder: HolderId, copies: &[CopyId]) -> Vec<Change> {
    let back = copies.iter().map(|&copy| Change::Move {
        copy,
        to: Place::Held(holder),
    });
    back.chain(remotes(overview, holder, None)).collect()
}

/// The remotes that went with the ring: each lost in this way, or back.
fn remotes(overview: &Overview, holder: HolderId, lost: Option<Loss>) -> Vec<Change> {
    let ways = overview.household.ways();
    let gone = ways.filter(|(_, way)| way.lost_by.contains_key(&holder));
    gone.map(|(id, way)| {
        let mut way = way.clone();
        match lost {
            Some(loss) => way.lost_by.insert(holder, loss),
            None => way.lost_by.remove(&holder),
        };
        Change::SetWay(id, way)
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{
        DoorId, DoorKind, Household, Key, LockKind, Role, Way, demonstration, quick,
    };

    use super::*;

    fn lost() -> (Household, HolderId, Household) {
        let household = demonstration::household();
        let partner = household
            .holders()
            .find(|(_, holder)| holder.role == Role::WorkshopPartner);
        let holder = partner.map_or(HolderId::new(0), |(id, _)| id);
        let loss = Loss::NotSaid;
        let lost = household.with(Change::LoseRing { holder, loss });
        (household, holder, lost.unwrap_or_default())
    }

    #[test]
    fn one_key_for_two_doors_reads_unlike_two_keys() {
        let carried_by_the_first = |home: &Household| {
            let first = home.holders().next().map(|(id, _)| id);
            first
                .map(|holder| carried(&Overview::of(home), holder))
                .unwrap_or_default()
        };
        let people = [Role::Resident];
        let alike = quick::two_doors_alike(LockKind::PinTumbler, &people).unwrap_or_default();
        assert_eq!(
            carried_by_the_first(&alike),
            "1 key, for front door and back door"
        );
        let two = quick::two_doors(LockKind::PinTumbler, &people).unwrap_or_default();
        assert_eq!(
            carried_by_the_first(&two),
            "2 keys: one for front door; one for back door"
        );
        let to = two.holders().next().map_or(HolderId::new(0), |(id, _)| id);
        let first = two.keys().next().map_or(KeyId::new(0), |(id, _)| id);
        let spare = two.next_key();
        let more = two.with_all([
            Change::AddKey(Key::default()),
            Change::Give {
                key: first,
                to,
                copies: 1,
            },
            Change::Give {
                key: spare,
                to,
                copies: 1,
            },
        ]);
        assert_eq!(
            carried_by_the_first(&more.unwrap_or_default()),
            "4 keys: 2 the same for front door; one for back door; one for no door yet"
        );
        assert_eq!(carried_by_the_first(&Household::empty()), "");
    }

    #[test]
    fn ring_that_turns_up_is_as_it_was_with_its_remote() {
        let (before, holder, lost) = lost();
        let overview = Overview::of(&lost);
        let copies = overview.lost.get(&holder).cloned().unwrap_or_default();
        assert_eq!(copies.len(), 2);
        let back = lost.with_all(turned_up(&overview, holder, &copies));
        assert_eq!(back, Ok(before));
    }

    #[test]
    fn ring_that_turns_up_leaves_anothers_remote_lost() {
        let home = quick::one_door(
            DoorKind::Gate,
            LockKind::PinTumbler,
            &[Role::Resident, Role::Child],
        );
        let home = home.unwrap_or_default();
        let people: Vec<HolderId> = home.holders().map(|(id, _)| id).collect();
        let door = home.doors().next().map_or(DoorId::new(0), |(id, _)| id);
        let way = home.next_way();
        let known_by = people.iter().copied().collect();
        let remote = Way {
            known_by,
            ..Way::at(door, WayKind::Remote)
        };
        let lose = |place: usize, loss| Change::LoseRing {
            holder: people[place],
            loss,
        };
        let stolen = home.with_all([Change::AddWay(remote), lose(0, Loss::Stolen)]);
        let stolen = stolen.unwrap_or_default();
        let both = stolen
            .with(lose(1, Loss::MislaidIndoors))
            .unwrap_or_default();
        let overview = Overview::of(&both);
        let back = both.with_all(turned_up(&overview, people[1], &overview.lost[&people[1]]));
        assert_eq!(back, Ok(stolen));
        assert!(both.way(way).is_some_and(|way| way.lost_by.len() == 2));
    }

    #[test]
    fn way_of_losing_is_the_same_for_everything_on_the_ring() {
        let (before, holder, lost) = lost();
        let overview = Overview::of(&lost);
        let copies = overview.lost.get(&holder).cloned().unwrap_or_default();
        let stolen = lost.with_all(went(&overview, Some(holder), &copies, Loss::Stolen));
        let loss = Loss::Stolen;
        assert_eq!(stolen, before.with(Change::LoseRing { holder, loss }));
    }
}
