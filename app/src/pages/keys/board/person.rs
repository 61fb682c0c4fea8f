//! One person: what they carry, what opens to them, and their ring lost in one press.

use std::collections::BTreeMap;
use std::rc::Rc;

use self_check_core::household::{
    Change, CopyId, HolderId, KeyId, Loss, Opening, Place, Reach, Way, WayKind,
};
use yew::prelude::*;

use super::super::forms::HolderForm;
use super::super::{PLAN, route};
use super::{Desk, Open, PEOPLE, losses};
use crate::copy::Listed;
use crate::copy::en::household::board as words;
use crate::household::{Asked, HouseholdAct, Lost, Overview};
use crate::ui::{Field, choose_among};

/// So many doors or keys are named in a row; more are counted.
const MOST_NAMED: usize = 12;

/// The id of the press that opens their form.
pub fn opener_id(holder: HolderId) -> String {
    format!("change-person-{}", holder.number())
}

/// The row of a person, or its form.
pub fn row(desk: &Desk, holder: HolderId) -> Html {
    let opener = opener_id(holder);
    if desk.is_open(Open::Person(holder)) {
        return html! {
            <li key={holder.number()} class="open-form">
                <HolderForm overview={Rc::clone(&desk.overview)} holder={Some(holder)} onclose={desk.closer(opener, PEOPLE)} />
            </li>
        };
    }
    let overview = &desk.overview;
    let name = overview.names.holder(holder);
    let part = overview.household.holder(holder);
    let reach = overview.reach(holder);
    html! {
        <li key={holder.number()}>
            <h3 id={title_id(holder)} tabindex="-1">{ name }</h3>
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

fn title_id(holder: HolderId) -> String {
    format!("person-{}", holder.number())
}

fn lost_id(holder: HolderId) -> String {
    format!("lost-{}", holder.number())
}

/// What was lost, what opens to whoever finds it, how it went, and where to go from here.
fn lost(desk: &Desk, holder: HolderId) -> Html {
    let overview = &desk.overview;
    let losses = overview.lost.get(&holder).map_or(&[][..], Vec::as_slice);
    let name = overview.names.holder(holder);
    let gravest = losses.iter().map(|&(loss, _)| loss).reduce(Loss::graver);
    let has_keys = losses.iter().any(|(_, lost)| !lost.copies.is_empty());
    let title = words::ring_is_lost(name, gravest.unwrap_or(Loss::NotSaid), has_keys);
    html! {
        <div class="lost">
            <h4 id={lost_id(holder)} tabindex="-1">{ title }</h4>
            { for losses.iter().enumerate().map(|(place, (loss, lost))| {
                // Each field and button says whose, and of what where one person lost things in
                // different ways.
                let whose = match losses {
                    [_] => name.to_owned(),
                    _ => format!("{name}: {}", things(overview, lost).join("; ")),
                };
                let id = format!("how-{}-{place}", holder.number());
                went_alike(desk, holder, (*loss, lost), &id, &whose)
            }) }
            <p class="row">
                <a class="press" href={route(Some(PLAN))} aria-label={words::about(words::SEE_PLAN_NOW, name)}>
                    { words::SEE_PLAN_NOW }
                </a>
            </p>
        </div>
    }
}

/// What was lost, in words: keys, then each remote.
fn things(overview: &Overview, lost: &Lost) -> Vec<String> {
    let keys = (!lost.copies.is_empty()).then(|| keys_told(overview, lost.copies.iter()));
    let remotes = lost.remotes.iter();
    let remotes = remotes.map(|&way| overview.names.way(way).to_owned());
    keys.into_iter().chain(remotes).collect()
}

/// What went in the same way.
fn went_alike(
    desk: &Desk,
    holder: HolderId,
    (loss, lost): (Loss, &Lost),
    id: &str,
    whose: &str,
) -> Html {
    let overview = &desk.overview;
    let opens = match loss {
        Loss::NotReturned => words::KEPT_OPENS,
        _ => words::LOST_OPENS,
    };
    let onvalue = {
        let (desk, lost, id) = (desk.clone(), lost.clone(), id.to_owned());
        Callback::from(move |value: String| {
            if let Some(loss) = Loss::of(&value) {
                let changes = went(&desk.overview, Asked::Holder(holder), &lost, loss);
                desk.state.dispatch(HouseholdAct::Make(changes));
                // What went in the same way now has one list.
                desk.go_to_first(&[&id, &lost_id(holder)]);
            }
        })
    };
    let found = {
        let act = desk.press({
            let lost = lost.clone();
            move |overview| HouseholdAct::Make(turned_up(overview, holder, &lost))
        });
        let desk = desk.clone();
        Callback::from(move |event: MouseEvent| {
            act.emit(event);
            // What is still lost, or the person who has it all again.
            desk.go_to_first(&[&lost_id(holder), &title_id(holder)]);
        })
    };
    let how = format!("{} ({whose})", words::HOW_LOST);
    html! {
           <>
               <dl class="facts">
                   <dt>{ words::WENT }</dt><dd>{ things(overview, lost).join("; ") }</dd>
                   <dt>{ opens }</dt><dd>{ opened(overview, &overview.reach_of_lost(holder, lost)) }</dd>
               </dl>
               { choose_among(Field::new(id, &how), losses(), loss.id(), onvalue) }
               <p class="row">
                   <button type="button" class="plain" onclick={found} aria-label={words::about(words::FOUND, whose)}>
    { words::FOUND }
                   </button>
               </p>
           </>
       }
}

/// All of this went in this way.
pub fn went(overview: &Overview, asked: Asked, lost: &Lost, loss: Loss) -> Vec<Change> {
    let by = match asked {
        Asked::Holder(holder) => Some(holder),
        Asked::Nobody | Asked::Way(_) => None,
    };
    let copies = lost.copies.iter();
    let copies = copies.map(|&copy| Change::Lose { copy, loss });
    let remotes = edited(overview, lost, |way| match by {
        Some(holder) => {
            way.lost_by.insert(holder, loss);
        }
        None => way.given_away = Some(loss),
    });
    copies.chain(remotes).collect()
}

/// All of this is back on the ring.
fn turned_up(overview: &Overview, holder: HolderId, lost: &Lost) -> Vec<Change> {
    let copies = lost.copies.iter().map(|&copy| Change::Move {
        copy,
        to: Place::Held(holder),
    });
    let remotes = edited(overview, lost, |way| {
        way.lost_by.remove(&holder);
    });
    copies.chain(remotes).collect()
}

/// The remotes, each with this done to it.
fn edited(overview: &Overview, lost: &Lost, edit: impl Fn(&mut Way)) -> Vec<Change> {
    let remotes = lost.remotes.iter();
    let ways = remotes.filter_map(|&id| Some((id, overview.household.way(id)?.clone())));
    ways.map(|(id, mut way)| {
        edit(&mut way);
        Change::SetWay(id, way)
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{
        DoorId, DoorKind, Household, Key, LockKind, Role, WayId, demonstration, quick,
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

    /// What this person lost, together what went in the same way.
    fn losses_of(overview: &Overview, holder: HolderId) -> Vec<(Loss, Lost)> {
        overview.lost.get(&holder).cloned().unwrap_or_default()
    }

    #[test]
    fn ring_that_turns_up_is_as_it_was_with_its_remote() {
        let (before, holder, lost) = lost();
        let overview = Overview::of(&lost);
        let losses = losses_of(&overview, holder);
        let [(Loss::NotSaid, gone)] = &losses[..] else {
            panic!("{losses:?}");
        };
        assert_eq!((gone.copies.len(), gone.remotes.len()), (2, 1));
        let back = lost.with_all(turned_up(&overview, holder, gone));
        assert_eq!(back, Ok(before));
    }

    /// A gate with a remote that a resident and a child have, and keys or none.
    fn with_a_remote(has_keys: bool) -> (Household, [HolderId; 2], WayId) {
        let people = [Role::Resident, Role::Child];
        let home = quick::one_door(DoorKind::Gate, LockKind::PinTumbler, &people);
        let home = home.unwrap_or_default();
        let door = home.doors().next().map_or(DoorId::new(0), |(id, _)| id);
        let known_by: Vec<HolderId> = home.holders().map(|(id, _)| id).collect();
        let people = [known_by[0], known_by[1]];
        let way = home.next_way();
        let known_by = known_by.into_iter().collect();
        let remote = Way {
            known_by,
            ..Way::at(door, WayKind::Remote)
        };
        let without = home.copies().filter(|_| !has_keys);
        let without: Vec<Change> = without.map(|(id, _)| Change::RemoveCopy(id)).collect();
        let home = home.with_all(without.into_iter().chain([Change::AddWay(remote)]));
        (home.unwrap_or_default(), people, way)
    }

    #[test]
    fn ring_that_turns_up_leaves_anothers_remote_lost() {
        let (home, [one, other], way) = with_a_remote(true);
        let lose = |holder, loss| Change::LoseRing { holder, loss };
        let stolen = home.with(lose(one, Loss::Stolen)).unwrap_or_default();
        let both = stolen.with(lose(other, Loss::MislaidIndoors));
        let both = both.unwrap_or_default();
        assert!(both.way(way).is_some_and(|way| way.lost_by.len() == 2));
        let overview = Overview::of(&both);
        let losses = losses_of(&overview, other);
        let back = both.with_all(turned_up(&overview, other, &losses[0].1));
        assert_eq!(back, Ok(stolen));
    }

    #[test]
    fn remote_lost_alone_can_be_asked_about_and_turn_up() {
        let (home, [one, other], way) = with_a_remote(false);
        let loss = Loss::NotSaid;
        let lost = home.with(Change::LoseRing { holder: one, loss });
        let lost = lost.unwrap_or_default();
        let overview = Overview::of(&lost);
        let remotes = vec![way];
        let gone = Lost {
            remotes,
            ..Lost::default()
        };
        assert_eq!(losses_of(&overview, one), [(loss, gone.clone())]);
        assert_eq!(losses_of(&overview, other), []);
        let asked = overview.losses_not_said();
        assert_eq!(
            asked.into_iter().collect::<Vec<_>>(),
            [(Asked::Holder(one), gone.clone())]
        );
        assert_eq!(
            lost.with_all(turned_up(&overview, one, &gone)),
            Ok(home.clone())
        );
        let mut given = home
            .way(way)
            .cloned()
            .unwrap_or_else(|| Way::at(DoorId::new(0), WayKind::Remote));
        given.given_away = Some(loss);
        let given = home.with(Change::SetWay(way, given)).unwrap_or_default();
        let overview = Overview::of(&given);
        assert_eq!(
            overview.losses_not_said().into_keys().collect::<Vec<_>>(),
            [Asked::Way(way)]
        );
        let said = given.with_all(went(&overview, Asked::Way(way), &gone, Loss::Stolen));
        let said = said.unwrap_or_default();
        assert_eq!(
            said.way(way).and_then(|way| way.given_away),
            Some(Loss::Stolen)
        );
        assert!(Overview::of(&said).losses_not_said().is_empty());
    }

    #[test]
    fn what_went_in_different_ways_is_told_and_asked_apart() {
        let home = quick::two_doors(LockKind::PinTumbler, &[Role::Neighbour]).unwrap_or_default();
        let copies: Vec<CopyId> = home.copies().map(|(id, _)| id).collect();
        let lose = |place: usize, loss| Change::Lose {
            copy: copies[place],
            loss,
        };
        let lost = home.with_all([lose(0, Loss::FarAway), lose(1, Loss::Stolen)]);
        let lost = lost.unwrap_or_default();
        let overview = Overview::of(&lost);
        let holder = home.holders().next().map_or(HolderId::new(0), |(id, _)| id);
        let losses = losses_of(&overview, holder);
        let told: Vec<_> = losses
            .iter()
            .map(|(loss, lost)| (*loss, &lost.copies[..]))
            .collect();
        assert_eq!(
            told,
            [(Loss::FarAway, &copies[..1]), (Loss::Stolen, &copies[1..])]
        );
        let doors = |lost: &Lost| overview.reach_of_lost(holder, lost).doors.len();
        assert_eq!(
            losses
                .iter()
                .map(|(_, lost)| doors(lost))
                .collect::<Vec<_>>(),
            [1, 1]
        );
        let said = went(
            &overview,
            Asked::Holder(holder),
            &losses[0].1,
            Loss::NearHome,
        );
        let said = Overview::of(&lost.with_all(said).unwrap_or_default());
        let told: Vec<Loss> = losses_of(&said, holder)
            .iter()
            .map(|&(loss, _)| loss)
            .collect();
        assert_eq!(told, [Loss::NearHome, Loss::Stolen]);
    }

    #[test]
    fn way_of_losing_is_the_same_for_everything_on_the_ring() {
        let (before, holder, lost) = lost();
        let overview = Overview::of(&lost);
        let losses = losses_of(&overview, holder);
        let loss = Loss::Stolen;
        let stolen = lost.with_all(went(&overview, Asked::Holder(holder), &losses[0].1, loss));
        assert_eq!(stolen, before.with(Change::LoseRing { holder, loss }));
    }
}
