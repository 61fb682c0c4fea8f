//! The keys that stay when doors are grouped anew, against every choice of keys.

use std::collections::BTreeSet;

use self_check_core::household::*;

use super::chance::Chance;
use super::subsets::home;
use super::truth;

/// The fewest locks touched, over every way of giving each group one of today's keys or a new one,
/// no key to two groups, no exposed key to any.
fn fewest_touched(home: &Household, groups: &[Group]) -> usize {
    let keys: Vec<KeyId> = home
        .keys()
        .map(|(key, _)| key)
        .filter(|&key| !truth::is_exposed(home, key))
        .collect();
    try_group(home, groups, &keys, &mut BTreeSet::new())
}

fn try_group(
    home: &Household,
    groups: &[Group],
    keys: &[KeyId],
    given: &mut BTreeSet<KeyId>,
) -> usize {
    let Some((group, rest)) = groups.split_first() else {
        return 0;
    };
    let mut fewest = group.locks.len() + try_group(home, rest, keys, given);
    for &key in keys {
        if given.insert(key) {
            let only = BTreeSet::from([key]);
            let touched = group
                .locks
                .iter()
                .filter(|&&lock| home.lock(lock).unwrap().keys != only)
                .count();
            fewest = fewest.min(touched + try_group(home, rest, keys, given));
            given.remove(&key);
        }
    }
    fewest
}

/// With needs, so that groups by need are several.
fn with_needs(mut home: Household, chance: &mut Chance) -> Household {
    let doors: Vec<DoorId> = home.doors().map(|(door, _)| door).collect();
    let holders: Vec<HolderId> = home.holders().map(|(holder, _)| holder).collect();
    for &holder in &holders {
        for &door in &doors {
            let needs = chance.once_in(2);
            home = home
                .with(Change::Needs {
                    holder,
                    door,
                    needs,
                })
                .unwrap();
        }
    }
    home
}

#[test]
fn grouping_touches_as_few_locks_as_any_choice_of_keys() {
    let mut chance = Chance::seeded(21);
    let mut kept = 0;
    for locks in 1..=6 {
        for _ in 0..40 {
            let home = home(locks, &mut chance);
            let home = with_needs(home, &mut chance);
            for grouping in [Grouping::AllAlike, Grouping::ByNeed] {
                let choices = Choices {
                    grouping,
                    ..Choices::default()
                };
                let plan = plan(&home, choices);
                let groups = groups(&home, grouping);
                assert_eq!(plan.works.len(), fewest_touched(&home, &groups));
                kept += locks - plan.works.len();
            }
        }
    }
    assert!(kept > 100, "no household kept a key");
}

#[test]
fn grouping_that_keeps_the_likeliest_key_of_each_group_in_turn_can_touch_more() {
    // First group: two locks of key a, one of key b. Second group: two locks of key a alone.
    // Taking the likeliest key first gives a to the first group and nothing to the second: three
    // touched. The other way round: b stays with the first, a with the second: two touched.
    let mut home = Household::empty();
    let a = home.next_key();
    home = home.with(Change::AddKey(Key::default())).unwrap();
    let b = home.next_key();
    home = home.with(Change::AddKey(Key::default())).unwrap();
    let mut doors = Vec::new();
    for key in [a, a, b, a, a] {
        let door = home.next_door();
        home = home
            .with(Change::AddDoor(Door::of(DoorKind::OtherDoor)))
            .unwrap();
        let lock = Lock::on(door, LockKind::PinTumbler).opened_by(key);
        home = home.with(Change::AddLock(lock)).unwrap();
        doors.push(door);
    }
    for needed in [&doors[..3], &doors[3..]] {
        let holder = Holder {
            needs: Some(needed.iter().copied().collect()),
            ..Holder::of(Role::Employee)
        };
        home = home.with(Change::AddHolder(holder)).unwrap();
    }
    let choices = Choices {
        grouping: Grouping::ByNeed,
        ..Choices::default()
    };
    assert_eq!(plan(&home, choices).works.len(), 2);
}
