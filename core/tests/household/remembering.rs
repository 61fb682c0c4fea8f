//! What was within reach of wrong hands stays exposed once it is so no more: it may have been copied.

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::plan::Recipient;
use self_check_core::household::*;

use super::any::household;
use super::truth;
use crate::homes::{holder, losing};

/// A resident with the key, and a neighbour who knows the code of a key safe with a copy in it.
fn with_a_safe() -> (Household, HolderId, WayId) {
    let home = quick::one_door(DoorKind::BackDoor, LockKind::PinTumbler, &[Role::Resident]);
    let home = home.unwrap();
    let (door, _) = home.doors().next().unwrap();
    let (key, _) = home.keys().next().unwrap();
    let neighbour = home.next_holder();
    let home = home.with(Change::AddHolder(Holder::of(Role::Neighbour)));
    let home = home.unwrap();
    let way = home.next_way();
    let safe = Way {
        known_by: [neighbour].into(),
        ..Way::at(door, WayKind::KeySafe)
    };
    let place = Place::InKeySafe(way);
    let home = home.with_all([
        Change::AddWay(safe),
        Change::AddCopy(KeyCopy { key, place }),
    ]);
    (home.unwrap(), neighbour, way)
}

fn edited(home: &Household, way: WayId, edit: fn(&mut Way)) -> Household {
    let mut part = home.way(way).unwrap().clone();
    edit(&mut part);
    home.with(Change::SetWay(way, part)).unwrap()
}

fn as_now(home: &Household) -> Plan {
    plan(home, Choices::default())
}

#[test]
fn new_code_leaves_the_key_that_lay_in_the_safe_exposed() {
    let (home, neighbour, way) = with_a_safe();
    let out = edited(&home, way, |way| way.given_away = Some(Loss::NotSaid));
    let changed = edited(&out, way, Way::take_back);
    let (before, plan) = (as_now(&out), as_now(&changed));
    assert_eq!(plan.ways, [], "the code is seen to");
    assert_eq!(plan.works, before.works);
    assert_eq!(plan.keys, before.keys);
    assert_eq!(plan.void, before.void);
    let by = [ExposedBy::MayBeCopied(Urgency::Soon)];
    assert_eq!(plan.exposed[0].by, by);
    assert!(as_now(&plan.carried_out(&changed).unwrap()).is_empty());

    let no_longer = true;
    let left = home.with(Change::NoLongerShould {
        holder: neighbour,
        no_longer,
    });
    let left = left.unwrap();
    let knows = false;
    let unticked = left.with(Change::Knows {
        holder: neighbour,
        way,
        knows,
    });
    let removed = left.with(Change::RemoveHolder(neighbour));
    for after in [unticked.unwrap(), removed.unwrap()] {
        assert_eq!(exposed_keys(&after)[0].urgency, Urgency::Soon);
    }
}

#[test]
fn key_taken_out_of_an_open_safe_stays_exposed() {
    let (home, _, way) = with_a_safe();
    let out = edited(&home, way, |way| way.given_away = Some(Loss::NotSaid));
    let inside = |(_, copy): &(CopyId, &KeyCopy)| copy.place == Place::InKeySafe(way);
    let (copy, _) = home.copies().find(inside).unwrap();
    let to = Place::AtHome { returned_by: None };
    let emptied = |home: &Household| home.with(Change::Move { copy, to }).unwrap();
    assert_eq!(exposed_keys(&emptied(&out))[0].urgency, Urgency::Soon);
    assert_eq!(exposed_keys(&emptied(&home)), []);
}

#[test]
fn whoever_took_a_key_out_of_a_safe_has_its_code() {
    let (home, neighbour, way) = with_a_safe();
    let inside = |(_, copy): &(CopyId, &KeyCopy)| copy.place == Place::InKeySafe(way);
    let (copy, _) = home.copies().find(inside).unwrap();
    let gone = |home: &Household, loss| home.with(Change::Lose { copy, loss }).unwrap();
    for &loss in Loss::ALL {
        let was_taken = matches!(loss, Loss::NotSaid | Loss::Stolen | Loss::NotReturned);
        let due = ways_to_change(&gone(&home, loss)).contains_key(&way);
        assert_eq!(due, was_taken, "{loss:?}");
    }
    let stolen = gone(&gone(&home, Loss::NotSaid), Loss::Stolen);
    let plan = as_now(&stolen);
    assert_eq!(plan.ways[0].stays_with, [neighbour]);
    let copies = &plan.keys[0].copies;
    assert!(copies.contains(&(Recipient::KeySafe(way), 1)), "{copies:?}");
    let after = plan.carried_out(&stolen).unwrap();
    assert!(as_now(&after).is_empty());
    assert_eq!(
        after.reach_of_holder(neighbour).unwrap().doors,
        home.reach_of_holder(neighbour).unwrap().doors
    );
    let text = file::export(&stolen).unwrap();
    assert_eq!(file::import(text.as_bytes()), Ok(stolen.clone()));
    let without = stolen.with(Change::RemoveWay(way)).unwrap();
    assert!(truth::fits_together(&without));
}

#[test]
fn code_that_a_former_holder_takes_along_is_out_though_nobody_says_who() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::Lever, &[]).unwrap();
    let (door, _) = home.doors().next().unwrap();
    for (no_longer_should, due) in [(true, Some(Urgency::Soon)), (false, None)] {
        let cleaner = home.next_holder();
        let part = Holder {
            no_longer_should,
            ..Holder::of(Role::Cleaner)
        };
        let home = home.with(Change::AddHolder(part)).unwrap();
        let way = home.next_way();
        let code = Way {
            known_by: [cleaner].into(),
            ..Way::at(door, WayKind::DoorCode)
        };
        let gone = home.with_all([Change::AddWay(code), Change::RemoveHolder(cleaner)]);
        assert_eq!(ways_to_change(&gone.unwrap()).get(&way).copied(), due);
    }
}

#[test]
fn key_that_comes_back_from_whoever_took_or_kept_it_may_have_been_copied() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Cleaner]);
    let home = home.unwrap();
    let cleaner = holder(&home, Role::Cleaner);
    let (copy, _) = home.copies().next().unwrap();
    let (key, part) = home.keys().next().map(|(id, key)| (id, *key)).unwrap();
    for restricted in [None, Some(false), Some(true)] {
        let part = Key { restricted, ..part };
        let home = home.with(Change::SetKey(key, part)).unwrap();
        for &loss in Loss::ALL {
            let lost = losing(&home, Role::Cleaner, loss);
            let returned_by = Some(cleaner);
            for to in [Place::AtHome { returned_by }, Place::Held(cleaner)] {
                let back = lost.with(Change::Move { copy, to }).unwrap();
                let due = exposed_keys(&back).first().map(|key| key.urgency);
                let was_taken = matches!(loss, Loss::Stolen | Loss::NotReturned);
                let may_be = was_taken && restricted != Some(true);
                assert_eq!(due, may_be.then_some(Urgency::WhenConvenient), "{loss:?}");
            }
        }
    }
}

/// A key safe with two copies, and their ids.
fn safe_with_two_copies() -> (Household, WayId, [CopyId; 2]) {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[]).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let (key, _) = home.keys().next().unwrap();
    let way = home.next_way();
    let mut home = home
        .with(Change::AddWay(Way::at(door, WayKind::KeySafe)))
        .unwrap();
    let place = Place::InKeySafe(way);
    let copies = [(); 2].map(|()| {
        let copy = home.next_copy();
        home = home.with(Change::AddCopy(KeyCopy { key, place })).unwrap();
        copy
    });
    (home, way, copies)
}

#[test]
fn code_counts_as_out_only_while_nobody_has_said_how_a_copy_went() {
    let (home, way, [one, other]) = safe_with_two_copies();
    let is_out = |home: &Household| ways_to_change(home).contains_key(&way);
    let lose = |home: &Household, copy, loss| home.with(Change::Lose { copy, loss }).unwrap();
    let unsaid = lose(&lose(&home, one, Loss::NotSaid), other, Loss::NotSaid);
    assert!(is_out(&unsaid));
    let half = lose(&unsaid, one, Loss::FarAway);
    assert!(is_out(&half), "of the other nobody has said it");
    let said = lose(&half, other, Loss::MislaidIndoors);
    assert!(!is_out(&said));
    let back = half.with(Change::Move {
        copy: other,
        to: Place::InKeySafe(way),
    });
    assert!(!is_out(&back.unwrap()), "it has turned up");
    assert!(is_out(&lose(&half, other, Loss::Stolen)));
}

#[test]
fn code_said_to_be_out_stays_out_whatever_is_said_of_a_copy() {
    let (home, way, [copy, _]) = safe_with_two_copies();
    let out = edited(&home, way, |way| way.given_away = Some(Loss::NotSaid));
    let lost = out
        .with(Change::Lose {
            copy,
            loss: Loss::NotSaid,
        })
        .unwrap();
    let said = lost
        .with(Change::Lose {
            copy,
            loss: Loss::FarAway,
        })
        .unwrap();
    assert!(ways_to_change(&said).contains_key(&way));
}

#[test]
fn code_changed_since_a_copy_went_is_not_out_for_what_is_said_of_it_then() {
    let (home, way, [copy, _]) = safe_with_two_copies();
    let lost = home
        .with(Change::Lose {
            copy,
            loss: Loss::NotSaid,
        })
        .unwrap();
    let changed = edited(&lost, way, Way::take_back);
    let said = changed
        .with(Change::Lose {
            copy,
            loss: Loss::Stolen,
        })
        .unwrap();
    assert!(!ways_to_change(&said).contains_key(&way));
    let refilled = said
        .with(Change::Move {
            copy,
            to: Place::InKeySafe(way),
        })
        .unwrap();
    let again = refilled
        .with(Change::Lose {
            copy,
            loss: Loss::Stolen,
        })
        .unwrap();
    assert!(ways_to_change(&again).contains_key(&way));
}

proptest! {
    #[test]
    fn new_code_makes_no_key_less_exposed(home in household(120)) {
        for (id, way) in home.ways() {
            let mut part = way.clone();
            part.take_back();
            part.known_by.clear();
            let after = home.with(Change::SetWay(id, part)).unwrap();
            let due = |home: &Household| -> Vec<_> {
                exposed_keys(home).into_iter().map(|key| (key.key, key.urgency)).collect()
            };
            prop_assert_eq!(due(&after), due(&home));
        }
    }

    #[test]
    fn key_taken_out_of_a_safe_gives_its_code_away(home in household(120)) {
        for (copy, part) in home.copies() {
            let Place::InKeySafe(way) = part.place else { continue };
            for loss in [Loss::NotSaid, Loss::Stolen, Loss::NotReturned] {
                let gone = home.with(Change::Lose { copy, loss }).unwrap();
                prop_assert!(ways_to_change(&gone).contains_key(&way));
                prop_assert!(truth::fits_together(&gone));
            }
        }
    }

    #[test]
    fn what_is_said_first_or_later_of_a_loss_comes_to_the_same(home in household(120)) {
        // Where a way is out in no way that counts, that is forgotten with what was assumed; a second copy
        // that went unsaid keeps the code out, though it was changed between the two; and whoever was told
        // that it is not said yet has to be told anew.
        let counts = |way: &Way| way.given_away != Some(Loss::MislaidIndoors);
        let is_unsaid = |place| matches!(place, Place::Lost { loss: Loss::NotSaid, from_safe: Some(_), .. });
        prop_assume!(home.ways().all(|(_, way)| counts(way)));
        prop_assume!(!home.copies().any(|(_, copy)| is_unsaid(copy.place)));
        let without_replies = {
            let locks = home.locks().map(|(id, lock)| Change::SetLock(id, Lock { reply: None, ..lock.clone() }));
            let ways = home.ways().map(|(id, way)| Change::SetWay(id, Way { reply: None, ..way.clone() }));
            locks.chain(ways).collect::<Vec<_>>()
        };
        let home = home.with_all(without_replies).unwrap();
        for (copy, part) in home.copies() {
            if matches!(part.place, Place::Lost { .. }) {
                continue;
            }
            let unsaid = home.with(Change::Lose { copy, loss: Loss::NotSaid }).unwrap();
            for &loss in Loss::ALL {
                let said = Change::Lose { copy, loss };
                let (first, later) = (home.with(said.clone()), unsaid.with(said));
                prop_assert_eq!(first.unwrap(), later.unwrap(), "{:?}", loss);
            }
        }
    }

    #[test]
    fn copy_that_was_out_leaves_its_key_exposed_wherever_it_goes(home in household(120)) {
        let exposed = |home: &Household, key: KeyId| exposed_keys(home).iter().any(|it| it.key == key);
        for (id, copy) in home.copies().filter(|(_, copy)| exposed(&home, copy.key)) {
            let needs_a_card = home.key(copy.key).unwrap().restricted == Some(true);
            let is_merely_lost = matches!(
                copy.place,
                Place::Lost { by, loss, .. }
                    if !matches!(loss, Loss::Stolen | Loss::NotReturned) && by.is_none_or(|by| !truth::is_former(&home, by))
            );
            if is_merely_lost || (needs_a_card && !matches!(copy.place, Place::InKeySafe(_))) {
                continue;
            }
            let good = home.holders().find(|(_, part)| !part.no_longer_should);
            let held = good.map(|(holder, _)| Place::Held(holder));
            for to in held.into_iter().chain([Place::AtHome { returned_by: None }, Place::Scrapped { by: None }]) {
                let after = home.with(Change::Move { copy: id, to }).unwrap();
                prop_assert!(exposed(&after, copy.key), "{:?} to {:?}", copy.place, to);
            }
        }
    }
}
