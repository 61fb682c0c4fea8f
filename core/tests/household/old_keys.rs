//! What becomes of today's keys: which stay, which are void, who gets no new one.

use std::collections::BTreeSet;

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::brief::AfterVisit;
use self_check_core::household::plan::{Recipient, Step, Work};
use self_check_core::household::*;

use super::any::household;
use super::chance::Chance;
use super::truth;
use crate::homes::{holder, losing};

fn planned(home: &Household, grouping: Grouping) -> Plan {
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    plan(home, choices)
}

/// One key to front and back door; the neighbour has it for the front door alone.
fn one_key_too_far() -> (Household, DoorId) {
    let people = [Role::Resident, Role::Neighbour];
    let home = quick::two_doors_alike(LockKind::PinTumbler, &people).unwrap();
    let (back, _) = home.doors().nth(1).unwrap();
    let home = home.with(Change::Needs {
        holder: holder(&home, Role::Neighbour),
        door: back,
        needs: false,
    });
    (home.unwrap(), back)
}

#[test]
fn lock_is_changed_at_the_door_that_a_key_should_not_open() {
    let (home, back) = one_key_too_far();
    let plan = planned(&home, Grouping::ByNeed);
    let doors: Vec<DoorId> = plan
        .works
        .iter()
        .map(|work| home.lock(work.lock).unwrap().door)
        .collect();
    assert_eq!(doors, [back], "at the front door the key can stay");
    assert_eq!(plan.hand_in, [], "nothing rests on a returned key");
    let copies = [
        (Recipient::Holder(holder(&home, Role::Resident)), 1),
        (Recipient::Spare, 1),
    ];
    assert_eq!(
        plan.keys[0].copies, copies,
        "the neighbour needs no new key"
    );
}

#[test]
fn key_that_still_opens_a_door_is_neither_destroyed_nor_taken_in() {
    let (home, _) = one_key_too_far();
    let plan = planned(&home, Grouping::ByNeed);
    assert_eq!(plan.void, []);
    let takes_in = |step: &Step| matches!(step, Step::ScrapOldCopies(_) | Step::HandIn(_));
    assert!(!plan.steps.iter().any(|step| takes_in(&step.step)));
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    assert_eq!(
        brief.after,
        [
            AfterVisit::OldKeyMustFail,
            AfterVisit::TryEachNewKeyWithTheDoorOpen,
            AfterVisit::CountTheNewKeys,
            AfterVisit::KeepOldKeysThatOpenOtherLocks,
        ]
    );
}

#[test]
fn fewest_locks_come_before_fewest_copies_taken_in() {
    // Two back doors and a front door with one key: it stays at the two, though the neighbour then
    // has to hand it in.
    let (home, _) = one_key_too_far();
    let (key, _) = home.keys().next().unwrap();
    let resident = holder(&home, Role::Resident);
    let side = home.next_door();
    let home = home.with(Change::AddDoor(Door::of(DoorKind::SideDoor)));
    let home = home
        .unwrap()
        .with_all([
            Change::AddLock(Lock::on(side, LockKind::PinTumbler).opened_by(key)),
            Change::Needs {
                holder: resident,
                door: side,
                needs: true,
            },
        ])
        .unwrap();
    let plan = planned(&home, Grouping::ByNeed);
    assert_eq!((plan.works.len(), plan.hand_in.len()), (1, 1));
}

/// Up to five doors, each with one of up to three keys, and people who hold and need some of them.
fn small_home(chance: &mut Chance) -> Household {
    let mut home = Household::empty();
    let mut keys = Vec::new();
    for _ in 0..1 + chance.below(3) {
        keys.push(home.next_key());
        home = home.with(Change::AddKey(Key::default())).unwrap();
    }
    let mut doors = Vec::new();
    for _ in 0..2 + chance.below(4) {
        doors.push(home.next_door());
        let door = Door::of(DoorKind::OtherDoor);
        home = home.with(Change::AddDoor(door)).unwrap();
        let key = keys[chance.below(keys.len())];
        let lock = Lock::on(*doors.last().unwrap(), LockKind::PinTumbler).opened_by(key);
        home = home.with(Change::AddLock(lock)).unwrap();
    }
    for &key in &keys {
        for _ in 0..chance.below(3) {
            let spare = Change::AddCopy(KeyCopy::spare(key));
            home = home.with(spare).unwrap();
        }
    }
    for _ in 0..1 + chance.below(4) {
        let to = home.next_holder();
        let needs = doors.iter().copied().filter(|_| chance.once_in(2));
        let holder = Holder {
            needs: Some(needs.collect()),
            ..Holder::of(Role::Resident)
        };
        home = home.with(Change::AddHolder(holder)).unwrap();
        for &key in &keys {
            if chance.once_in(2) {
                let copies = 1;
                home = home.with(Change::Give { key, to, copies }).unwrap();
            }
        }
    }
    if chance.once_in(2) {
        let safe = home.next_way();
        let people = home.holders().map(|(holder, _)| holder);
        let known_by = people.filter(|_| chance.once_in(2)).collect();
        let way = Way {
            known_by,
            ..Way::at(doors[0], WayKind::KeySafe)
        };
        let key = keys[chance.below(keys.len())];
        let place = Place::InKeySafe(safe);
        let inside = Change::AddCopy(KeyCopy { key, place });
        home = home.with_all([Change::AddWay(way), inside]).unwrap();
    }
    home
}

/// The locks touched, the copies taken in and those cut, the least of them in this order, over every
/// way of letting groups keep keys, each key with at most one group, and of handing copies on.
fn least(
    home: &Household,
    spares: Option<u8>,
    groups: &[Group],
    free: &[KeyId],
) -> (usize, usize, usize) {
    let Some((group, others)) = groups.split_first() else {
        return (0, 0, 0);
    };
    let with = |kept: Option<KeyId>| {
        let left: Vec<KeyId> = free
            .iter()
            .copied()
            .filter(|&key| Some(key) != kept)
            .collect();
        let locks = group.locks.iter().filter_map(|&lock| home.lock(lock));
        let touched = locks.filter(|lock| kept.is_none_or(|key| !lock.keys.contains(&key)));
        let copies = copies(home, spares, group, kept);
        let rest = least(home, spares, others, &left);
        (
            touched.count() + rest.0,
            copies.taken_in + rest.1,
            copies.cut + rest.2,
        )
    };
    let opens = |key: &&KeyId| {
        let mut locks = group.locks.iter().filter_map(|&lock| home.lock(lock));
        locks.any(|lock| lock.keys.contains(*key))
    };
    let kept = free.iter().filter(opens).map(|&key| with(Some(key)));
    kept.chain([with(None)]).min().unwrap()
}

struct Copies {
    taken_in: usize,
    cut: usize,
}

/// The copies of one group's key, by every number that could be handed on.
fn copies(home: &Household, spares: Option<u8>, group: &Group, kept: Option<KeyId>) -> Copies {
    let count = |key: KeyId, place: Place| {
        let copies = home.copies_of(key);
        copies.filter(|(_, copy)| copy.place == place).count()
    };
    let in_the_home = Place::AtHome { returned_by: None };
    let people = group.carried_by.iter().map(|&by| Place::Held(by));
    let safes = home.ways().map(|(safe, _)| Place::InKeySafe(safe));
    let wants = |place: Place| {
        let keys = home.keys().map(|(key, _)| key).filter(|&key| {
            let mut locks = group.locks.iter().filter_map(|&lock| home.lock(lock));
            locks.any(|lock| lock.keys.contains(&key))
        });
        let today = keys.map(|key| count(key, place)).max().unwrap_or(0);
        today.max(usize::from(matches!(place, Place::Held(_))))
    };
    let places: Vec<Place> = people.chain(safes).collect();
    let spare = spares.map_or_else(|| wants(in_the_home), usize::from);
    let Some(key) = kept else {
        let all = places.iter().map(|&place| wants(place)).sum::<usize>() + spare;
        let cut = all.max(if spares.is_none() { 2 } else { 1 });
        return Copies { taken_in: 0, cut };
    };
    let taken_in = home.copies_of(key).filter(|(_, copy)| match copy.place {
        Place::Held(by) => !group.carried_by.contains(&by),
        _ => false,
    });
    let taken_in = taken_in.count();
    let has = |place: Place| count(key, place);
    let lacks = places
        .iter()
        .map(|&place| wants(place).saturating_sub(has(place)));
    let lacks: usize = lacks.sum();
    let there = taken_in + has(in_the_home);
    let cut = (0..=lacks.min(there)).map(|handed_on| {
        let need_not_stay = match spares {
            None => handed_on.saturating_sub(taken_in),
            Some(_) => 0,
        };
        let stays = there - handed_on;
        lacks - handed_on + spare.saturating_sub(need_not_stay).saturating_sub(stays)
    });
    Copies {
        taken_in,
        cut: cut.min().unwrap(),
    }
}

#[test]
fn kept_keys_touch_the_fewest_locks_take_the_fewest_copies_in_and_cut_the_fewest() {
    let mut chance = Chance::seeded(23);
    let (mut taken_in, mut handed_on) = (0, 0);
    for _ in 0..400 {
        let home = small_home(&mut chance);
        let keys: Vec<KeyId> = home.keys().map(|(key, _)| key).collect();
        let spares = [None, Some(0), Some(1), Some(2)][chance.below(4)];
        for grouping in [Grouping::AllAlike, Grouping::ByNeed] {
            let choices = Choices {
                grouping,
                spares,
                ..Choices::default()
            };
            let plan = plan(&home, choices);
            let cut = usize::try_from(plan.copies_to_cut()).unwrap();
            let found = (plan.works.len(), plan.hand_in.len(), cut);
            let groups = groups(&home, grouping);
            assert_eq!(found, least(&home, spares, &groups, &keys), "{choices:?}");
            taken_in += plan.hand_in.len();
            handed_on += plan.keys.iter().flat_map(|key| &key.handed_on).count();
        }
    }
    assert!(taken_in > 20, "some have to be taken in: {taken_in}");
    assert!(handed_on > 20, "some are handed on: {handed_on}");
}

/// A shed with two spares in the home, needed by two people who have no key to it.
fn two_spares_for_a_shed() -> (Household, [HolderId; 2]) {
    let home = Household::empty();
    let shed = home.next_door();
    let home = home
        .with(Change::AddDoor(Door::of(DoorKind::Shed)))
        .unwrap();
    let key = home.next_key();
    let lock = Lock::on(shed, LockKind::SmallLock).opened_by(key);
    let spare = || Change::AddCopy(KeyCopy::spare(key));
    let parts = [
        Change::AddKey(Key::default()),
        Change::AddLock(lock),
        spare(),
        spare(),
    ];
    let mut home = home.with_all(parts).unwrap();
    let people = [(); 2].map(|()| {
        let id = home.next_holder();
        let needs = Some([shed].into());
        let resident = Holder {
            needs,
            ..Holder::of(Role::Resident)
        };
        home = home.with(Change::AddHolder(resident)).unwrap();
        id
    });
    (home, people)
}

#[test]
fn spares_in_the_home_are_handed_on_before_copies_are_cut() {
    let (home, people) = two_spares_for_a_shed();
    let plan = planned(&home, Grouping::ByNeed);
    assert_eq!((plan.copies_to_cut(), plan.works.len()), (0, 0));
    let handed_on: Vec<Recipient> = plan.keys[0].handed_on.iter().map(|&(_, to)| to).collect();
    assert_eq!(handed_on, people.map(Recipient::Holder));
    let steps: Vec<&Step> = plan.steps.iter().map(|step| &step.step).collect();
    let to = |person| Step::HandOver(Recipient::Holder(person), vec![(0, 1)]);
    assert_eq!(steps, people.map(to).iter().collect::<Vec<_>>());
    let after = plan.carried_out(&home).unwrap();
    assert_eq!(after.copies().len(), 2);
    assert_eq!(gaps(&after), []);
}

#[test]
fn spares_that_shall_stay_in_the_home_are_not_handed_on() {
    let (home, _) = two_spares_for_a_shed();
    let cut = |spares| {
        let choices = Choices {
            grouping: Grouping::ByNeed,
            spares: Some(spares),
            ..Choices::default()
        };
        plan(&home, choices).copies_to_cut()
    };
    assert_eq!([0, 1, 2, 3].map(cut), [0, 1, 2, 3]);
}

#[test]
fn copy_taken_in_is_handed_on_after_that() {
    let people = [Role::Resident, Role::Neighbour];
    let home = quick::two_doors(LockKind::PinTumbler, &people).unwrap();
    let (back, _) = home.doors().nth(1).unwrap();
    let (back_key, _) = home.keys().nth(1).unwrap();
    let (resident, neighbour) = (
        holder(&home, Role::Resident),
        holder(&home, Role::Neighbour),
    );
    let has = |by: HolderId| {
        let mut copies = home.copies_of(back_key);
        copies
            .find(|(_, copy)| copy.place == Place::Held(by))
            .unwrap()
            .0
    };
    let (kept, given_back) = (has(resident), has(neighbour));
    let home = home.with_all([
        Change::RemoveCopy(kept),
        Change::Needs {
            holder: resident,
            door: back,
            needs: true,
        },
        Change::Needs {
            holder: neighbour,
            door: back,
            needs: false,
        },
    ]);
    let home = home.unwrap();
    let plan = planned(&home, Grouping::ByNeed);
    let steps: Vec<&Step> = plan.steps.iter().map(|step| &step.step).collect();
    let taken_in = Step::HandIn(vec![given_back]);
    let handed_on = Step::HandOver(Recipient::Holder(resident), vec![(0, 1)]);
    assert_eq!(steps, [&taken_in, &handed_on]);
    let after = plan.carried_out(&home).unwrap();
    assert_eq!(after.copy(given_back).unwrap().place, Place::Held(resident));
}

/// A sitter who did not give the house key back.
fn not_given_back() -> (Household, HolderId) {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::two_doors_alike(LockKind::PinTumbler, &people).unwrap();
    let home = losing(&home, Role::Sitter, Loss::NotReturned);
    let sitter = holder(&home, Role::Sitter);
    (home, sitter)
}

#[test]
fn whoever_did_not_give_a_key_back_gets_no_new_one() {
    let (home, sitter) = not_given_back();
    let (front, _) = home.doors().next().unwrap();
    let needed = home.with(Change::Needs {
        holder: sitter,
        door: front,
        needs: true,
    });
    for home in [home, needed.unwrap()] {
        for &grouping in Grouping::ALL {
            let plan = planned(&home, grouping);
            assert_eq!(plan.works.len(), 2, "{grouping:?}");
            for key in &plan.keys {
                let mut copies = key.copies.iter();
                assert!(
                    copies.all(|&(recipient, _)| recipient != Recipient::Holder(sitter)),
                    "{grouping:?}: {key:?}"
                );
            }
            let after = plan.carried_out(&home).unwrap();
            assert_eq!(gaps(&after), [], "nobody is said to lack a key");
        }
    }
}

#[test]
fn whoever_did_not_give_a_key_back_is_told_no_new_code() {
    let (home, sitter) = not_given_back();
    let (front, _) = home.doors().next().unwrap();
    let way = home.next_way();
    let home = home.with_all([
        Change::AddWay(Way {
            given_away: Some(Loss::NotSaid),
            ..Way::at(front, WayKind::DoorCode)
        }),
        Change::Knows {
            holder: sitter,
            way,
            knows: true,
        },
    ]);
    let plan = planned(&home.unwrap(), Grouping::AsNow);
    assert_eq!(plan.ways[0].without, [sitter]);
    assert_eq!(plan.ways[0].stays_with, []);
}

/// The household once a way in of this kind hangs at the first door, known to everybody; a key safe
/// holds a copy of the first key.
fn with_a_way(home: &Household, kind: WayKind) -> (Household, WayId) {
    let (door, _) = home.doors().next().unwrap();
    let (key, _) = home.keys().next().unwrap();
    let way = home.next_way();
    let known_by = home.holders().map(|(holder, _)| holder).collect();
    let at_the_door = Way::at(door, kind);
    let added = home.with(Change::AddWay(Way {
        known_by,
        ..at_the_door
    }));
    let home = added.unwrap();
    let place = Place::InKeySafe(way);
    let filled = match kind {
        WayKind::KeySafe => home.with(Change::AddCopy(KeyCopy { key, place })).unwrap(),
        WayKind::DoorCode | WayKind::Remote | WayKind::App => home,
    };
    (filled, way)
}

#[test]
fn code_known_to_whoever_kept_a_key_to_its_door_is_changed() {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::two_doors_alike(LockKind::PinTumbler, &people).unwrap();
    let (sitter, resident) = (holder(&home, Role::Sitter), holder(&home, Role::Resident));
    for kind in [WayKind::KeySafe, WayKind::DoorCode, WayKind::App] {
        let (home, way) = with_a_way(&home, kind);
        let home = losing(&home, Role::Sitter, Loss::NotReturned);
        for &grouping in Grouping::ALL {
            let plan = planned(&home, grouping);
            let [work] = &plan.ways[..] else {
                panic!("{kind:?}: {:?}", plan.ways);
            };
            assert_eq!((work.way, work.urgency), (way, Urgency::Soon), "{kind:?}");
            assert_eq!(
                (&work.without[..], &work.stays_with[..]),
                (&[sitter][..], &[resident][..])
            );
            let after = plan.carried_out(&home).unwrap();
            assert!(!after.way(way).unwrap().known_by.contains(&sitter));
            assert!(
                !after
                    .reach_of_holder(sitter)
                    .unwrap()
                    .opened()
                    .any(|_| true),
                "{kind:?}"
            );
        }
    }
}

#[test]
fn key_safe_elsewhere_is_changed_where_a_key_in_it_opens_the_door_of_a_key_kept_back() {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::two_doors(LockKind::PinTumbler, &people).unwrap();
    let (back, _) = home.doors().nth(1).unwrap();
    let (home, way) = with_a_way(&home, WayKind::KeySafe);
    let at_the_back = Way {
        door: back,
        ..home.way(way).unwrap().clone()
    };
    let home = home.with(Change::SetWay(way, at_the_back)).unwrap();
    let (front_key, _) = home.keys().next().unwrap();
    let sitter = holder(&home, Role::Sitter);
    let kept_back = home
        .copies_of(front_key)
        .find(|(_, copy)| copy.place == Place::Held(sitter));
    let (copy, _) = kept_back.unwrap();
    let loss = Loss::NotReturned;
    let home = home.with(Change::Lose { copy, loss }).unwrap();
    let plan = planned(&home, Grouping::AsNow);
    assert_eq!(plan.ways.len(), 1);
    assert_eq!(plan.ways[0].without, [sitter]);
}

#[test]
fn whoever_kept_back_the_key_of_a_shed_stays_with_a_code_of_the_home() {
    let people = [Role::Resident, Role::Neighbour];
    let home = quick::two_doors(LockKind::PinTumbler, &people).unwrap();
    let neighbour = holder(&home, Role::Neighbour);
    let (shed, _) = home.doors().nth(1).unwrap();
    let home = home.with(Change::SetDoor(shed, Door::of(DoorKind::Shed)));
    let (home, way) = with_a_way(&home.unwrap(), WayKind::DoorCode);
    let out = Way {
        given_away: Some(Loss::NearHome),
        ..home.way(way).unwrap().clone()
    };
    let (shed_key, _) = home.keys().nth(1).unwrap();
    let kept_back = home
        .copies_of(shed_key)
        .find(|(_, copy)| copy.place == Place::Held(neighbour));
    let (copy, _) = kept_back.unwrap();
    let loss = Loss::NotReturned;
    let home = home.with_all([Change::SetWay(way, out), Change::Lose { copy, loss }]);
    let plan = planned(&home.unwrap(), Grouping::AsNow);
    assert_eq!(plan.ways[0].without, []);
    assert!(plan.ways[0].stays_with.contains(&neighbour));
}

#[test]
fn key_of_the_buildings_door_stays_out_when_our_own_lock_is_done() {
    use self_check_core::household::remedy::WhoActs;
    let people = [Role::Resident, Role::Sitter];
    let home = quick::flat_and_entrance(LockKind::PinTumbler, &people).unwrap();
    let home = losing(&home, Role::Sitter, Loss::NotReturned);
    let both = planned(&home, Grouping::AsNow);
    let actors: Vec<WhoActs> = both.actors().into_iter().collect();
    assert_eq!(actors, [WhoActs::Household, WhoActs::SystemOwner]);
    let ours = both.carried_out_by(&home, &[actors[0]].into_iter().collect());
    let ours = ours.unwrap();
    let left = planned(&ours, Grouping::AsNow);
    let entrance_key = home.keys().nth(1).map(|(key, _)| key);
    let out: Vec<KeyId> = exposed_keys(&ours).iter().map(|key| key.key).collect();
    assert_eq!(out, Vec::from_iter(entrance_key));
    let kinds: Vec<DoorKind> = left
        .stop_gaps
        .iter()
        .map(|gap| home.door(gap.door).unwrap().kind)
        .collect();
    assert_eq!((left.works.len(), kinds), (1, Vec::new()));
    let done = left.carried_out(&ours).unwrap();
    assert!(planned(&done, Grouping::AsNow).is_empty());
}

#[test]
fn key_that_came_back_waits_and_one_that_needs_the_card_stays() {
    use self_check_core::household::plan::Note;
    let people = [Role::Resident, Role::Sitter];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let sitter = holder(&home, Role::Sitter);
    let (key, _) = home.keys().next().unwrap();
    let (copy, _) = home.ring_of(sitter).next().unwrap();
    let no_longer = true;
    let left = Change::NoLongerShould {
        holder: sitter,
        no_longer,
    };
    let has_it = home.with(left).unwrap();
    let back = |restricted: Option<bool>| {
        let returned_by = Some(sitter);
        let to = Place::AtHome { returned_by };
        let part = Key {
            restricted,
            ..Key::default()
        };
        has_it
            .with_all([Change::Move { copy, to }, Change::SetKey(key, part)])
            .unwrap()
    };
    let due = |home: &Household| exposed_keys(home).first().map(|key| key.urgency);
    assert_eq!(due(&has_it), Some(Urgency::Soon));
    assert_eq!(due(&back(None)), Some(Urgency::WhenConvenient));
    assert_eq!(due(&back(Some(false))), Some(Urgency::WhenConvenient));
    let guarded = back(Some(true));
    assert_eq!(due(&guarded), None);
    let plan = planned(&guarded, Grouping::AsNow);
    assert!(plan.is_empty());
    assert!(plan.notes.contains(&Note::CameBackWithItsCard(key)));
    let restricted = Some(true);
    let part = Key {
        restricted,
        ..Key::default()
    };
    let kept = has_it.with(Change::SetKey(key, part)).unwrap();
    assert_eq!(due(&kept), Some(Urgency::Soon), "it did not come back");
}

fn opens_only_own(home: &Household, key: KeyId) -> bool {
    let mut opened = home.locks().filter(|(_, lock)| lock.keys.contains(&key));
    opened.all(|(_, lock)| truth::is_own(home, lock))
}

#[test]
fn keys_to_a_flat_that_others_decide_about_stay_until_they_have_acted() {
    let home = quick::flat_and_entrance(LockKind::PinTumbler, &[Role::Resident, Role::Sitter]);
    let home = home.unwrap();
    let (flat, _) = home.doors().next().unwrap();
    let landlord = Door {
        who_decides: WhoDecides::Landlord,
        ..Door::of(DoorKind::FlatDoor)
    };
    let home = home.with(Change::SetDoor(flat, landlord)).unwrap();
    let home = losing(&home, Role::Resident, Loss::Stolen);
    let plan = planned(&home, Grouping::AsNow);
    let theirs: Vec<KeyId> = home.keys().map(|(key, _)| key).collect();
    assert_eq!((plan.void.len(), &plan.given_back), (0, &theirs));
    let last = &plan.steps.last().unwrap().step;
    let keys = vec![0, 1];
    assert_eq!(*last, Step::ChangedByOthers { keys, old: theirs });
    let told = |step: &Step| matches!(step, Step::ScrapOldCopies(_) | Step::HandOver(..));
    assert!(!plan.steps.iter().any(|step| told(&step.step)));
    let watched: Vec<DoorId> = plan.stop_gaps.iter().map(|gap| gap.door).collect();
    assert_eq!(watched, [flat], "nobody watches the entrance of a building");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn no_key_of_a_lock_that_others_decide_about_is_told_to_be_destroyed(home in household(120)) {
        for &grouping in Grouping::ALL {
            for step in planned(&home, grouping).steps {
                match step.step {
                    Step::ScrapOldCopies(keys) => {
                        prop_assert!(keys.iter().all(|&key| opens_only_own(&home, key)));
                    }
                    Step::ChangedByOthers { old, .. } => {
                        prop_assert!(!old.iter().any(|&key| opens_only_own(&home, key)));
                    }
                    _ => {}
                }
            }
        }
    }

    #[test]
    fn void_keys_are_those_that_open_nothing_afterwards(home in household(120)) {
        let opening = |home: &Household| -> BTreeSet<KeyId> {
            home.locks().flat_map(|(_, lock)| lock.keys.clone()).collect()
        };
        for &grouping in Grouping::ALL {
            let plan = planned(&home, grouping);
            let after = plan.carried_out(&home).unwrap();
            let gone: Vec<KeyId> = opening(&home).difference(&opening(&after)).copied().collect();
            // A key to a lock that others leave as it is goes back to nobody.
            let is_left = |key: &KeyId| {
                let mut left = plan.works.iter().filter(|work| work.is_left());
                left.any(|work| home.lock(work.lock).unwrap().keys.contains(key))
            };
            let (own, others): (Vec<KeyId>, Vec<KeyId>) = gone
                .iter()
                .filter(|key| !is_left(key))
                .partition(|&&key| opens_only_own(&home, key));
            prop_assert_eq!(&plan.void, &own, "{:?}", grouping);
            prop_assert_eq!(&plan.given_back, &others, "{:?}", grouping);
            for copy in &plan.hand_in {
                let key = home.copy(*copy).unwrap().key;
                prop_assert!(!gone.contains(&key), "what is void is not taken in as kept");
            }
            for step in &plan.steps {
                if let Step::ScrapOldCopies(keys) = &step.step {
                    prop_assert!(keys.iter().all(|key| own.contains(key)));
                }
            }
            let page = brief(&home, &plan, BriefChoices::default()).unwrap();
            let on_page: Vec<&Work> = plan
                .works
                .iter()
                .filter(|work| work.who == remedy::WhoActs::Household)
                .collect();
            let is_at_hand = |key: &KeyId| home.copies_of(*key).any(|(_, copy)| match copy.place {
                Place::Held(by) => !truth::is_former(&home, by),
                Place::InKeySafe(_) | Place::AtHome { .. } => true,
                Place::Lost { .. } | Place::Scrapped { .. } => false,
            });
            let dropped: BTreeSet<KeyId> = on_page.iter().flat_map(|work| work.drops.clone()).collect();
            let dropped: Vec<KeyId> = dropped.into_iter().filter(is_at_hand).collect();
            // What opens nothing once the locks of the page are done, whatever others still do.
            let is_void_here = |key: &KeyId| {
                let mut opened = home.locks().filter(|(_, lock)| lock.keys.contains(key));
                opened.all(|(id, _)| {
                    on_page.iter().any(|work| work.lock == id && work.drops.contains(key))
                })
            };
            let says = |what: AfterVisit| page.after.contains(&what);
            prop_assert_eq!(
                says(AfterVisit::ScrapTheOldKeys),
                dropped.iter().any(is_void_here)
            );
            prop_assert_eq!(
                says(AfterVisit::KeepOldKeysThatOpenOtherLocks),
                dropped.iter().any(|key| !is_void_here(key))
            );
        }
    }

    #[test]
    fn nobody_gets_a_new_key_to_a_door_whose_key_they_did_not_give_back(home in household(120)) {
        for &grouping in Grouping::ALL {
            for planned in planned(&home, grouping).keys {
                let doors: BTreeSet<DoorId> =
                    planned.locks.iter().map(|&lock| home.lock(lock).unwrap().door).collect();
                for (recipient, _) in planned.copies {
                    let Recipient::Holder(to) = recipient else { continue };
                    let kept_back = home.copies().filter(|(_, copy)| {
                        matches!(copy.place, Place::Lost { by, loss: Loss::NotReturned, .. } if by == Some(to))
                    });
                    let closed: BTreeSet<DoorId> = kept_back
                        .flat_map(|(_, copy)| {
                            let key = copy.key;
                            home.locks().filter(move |(_, lock)| lock.keys.contains(&key))
                        })
                        .map(|(_, lock)| lock.door)
                        .collect();
                    prop_assert!(
                        !doors.is_subset(&closed),
                        "{:?}: {:?} gets a key to {:?}", grouping, to, doors
                    );
                }
            }
        }
    }
}
