//! The least set of locks to be seen to, against every set of up to twelve locks.

use std::collections::BTreeSet;

use self_check_core::household::*;

use super::chance::Chance;
use super::truth;

/// A household of `locks` locks, each on a door of its own, some master keyed, with a few keys of
/// which some are exposed in one way or another.
pub fn home(locks: usize, chance: &mut Chance) -> Household {
    let mut home = Household::empty();
    let mut keys = Vec::new();
    for _ in 0..1 + chance.below(6) {
        keys.push(home.next_key());
        home = home.with(Change::AddKey(Key::default())).unwrap();
    }
    let mut holders = Vec::new();
    for _ in 0..1 + chance.below(4) {
        holders.push(home.next_holder());
        let holder = Holder {
            no_longer_should: chance.once_in(5),
            ..Holder::of(Role::Resident)
        };
        home = home.with(Change::AddHolder(holder)).unwrap();
    }
    for _ in 0..locks {
        let door = home.next_door();
        home = home
            .with(Change::AddDoor(Door::of(DoorKind::SideDoor)))
            .unwrap();
        let mut lock =
            Lock::on(door, LockKind::PinTumbler).opened_by(keys[chance.below(keys.len())]);
        if chance.once_in(3) {
            lock.arrangement = Arrangement::MasterKeyed;
            lock.keys.insert(keys[chance.below(keys.len())]);
        }
        home = home.with(Change::AddLock(lock)).unwrap();
    }
    for &key in &keys {
        for _ in 0..chance.below(4) {
            let holder = holders[chance.below(holders.len())];
            let place = match chance.below(6) {
                0 => Place::Lost {
                    by: Some(holder),
                    loss: Loss::FarAway,
                    from_safe: None,
                },
                1 => Place::AtHome {
                    returned_by: Some(holder),
                },
                _ => Place::Held(holder),
            };
            home = home.with(Change::AddCopy(KeyCopy { key, place })).unwrap();
        }
    }
    home
}

/// Whether, with new keys for `rekeyed` alone, no exposed key opens anything.
fn closes(home: &Household, rekeyed: &BTreeSet<LockId>) -> bool {
    home.locks()
        .filter(|(lock, _)| !rekeyed.contains(lock))
        .all(|(_, lock)| lock.keys.iter().all(|&key| !truth::is_exposed(home, key)))
}

/// Every smallest set of locks that closes the household.
fn smallest(home: &Household) -> Vec<BTreeSet<LockId>> {
    let locks: Vec<LockId> = home.locks().map(|(lock, _)| lock).collect();
    let mut found: Vec<BTreeSet<LockId>> = Vec::new();
    for bits in 0_u32..1 << locks.len() {
        let chosen: BTreeSet<LockId> = locks
            .iter()
            .enumerate()
            .filter(|(place, _)| bits >> place & 1 == 1)
            .map(|(_, &lock)| lock)
            .collect();
        let best = found.first().map_or(usize::MAX, BTreeSet::len);
        if chosen.len() <= best && closes(home, &chosen) {
            if chosen.len() < best {
                found.clear();
            }
            found.push(chosen);
        }
    }
    found
}

#[test]
fn plan_as_now_is_the_smallest_of_all_sets_of_up_to_twelve_locks() {
    let mut chance = Chance::seeded(7);
    let (mut some, mut all) = (0, 0);
    for locks in 0..=12 {
        for _ in 0..if locks < 11 { 30 } else { 6 } {
            let home = home(locks, &mut chance);
            let plan = plan(&home, Choices::default());
            let planned: BTreeSet<LockId> = plan.works.iter().map(|work| work.lock).collect();
            assert_eq!(smallest(&home), std::slice::from_ref(&planned));
            some += usize::from(!planned.is_empty() && planned.len() < locks);
            all += 1;
        }
    }
    assert!(
        some * 3 > all,
        "too few households with something to choose: {some} of {all}"
    );
}
