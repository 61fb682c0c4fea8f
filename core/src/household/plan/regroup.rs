//! All alike or by need: the household's own locks come into groups with one key each.

use std::collections::{BTreeMap, BTreeSet};

use crate::advice::{Action, Urgency};

use super::super::grouping::keep::{self, Candidates};
use super::super::grouping::keyways::{Keyways, Sharing};
use super::super::grouping::own_locks;
use super::super::index::Index;
use super::super::kinds::{LockKind, PriceItem};
use super::super::remedy::{WhoActs, most_urgent};
use super::super::{CopyId, ExposedKey, Group, KeyId, LockId, Priced};
use super::allot::Allotment;
use super::copies::{choose_spares, enough, in_use};
use super::replace::{lock_and_door, work_on};
use super::{Choices, Origin, Otherwise, PlannedKey, Recipient, Work};

/// Plans the household's own locks and gives the copies of kept keys that have to be handed in.
pub(super) fn regroup(
    index: &Index<'_>,
    choices: Choices,
    groups: &[Group],
    exposed: &BTreeMap<KeyId, ExposedKey>,
    works: &mut BTreeMap<LockId, Work>,
    keys: &mut Vec<PlannedKey>,
) -> Vec<CopyId> {
    let mut wanted = wanted_copies(index, groups);
    for wanted in &mut wanted {
        choose_spares(wanted, choices);
    }
    let kept = kept_keys(index, choices, groups, exposed, &wanted);
    let keyways = Keyways::of(index);
    let mut hand_in = Vec::new();
    for ((group, kept), mut wanted) in groups.iter().zip(kept).zip(wanted) {
        let stays = |lock: LockId| kept.is_some_and(|key| opens_it_alone(index, key, lock));
        let (untouched, touched): (Vec<LockId>, Vec<LockId>) =
            group.locks.iter().partition(|&&lock| stays(lock));
        let dealt = kept.map(|key| Allotment::of(index, choices, key, &wanted, &group.locks));
        enough(&mut wanted, choices);
        let of_a_new_key = wanted.values().copied().map(u64::from).sum();
        let dealt = dealt.unwrap_or_else(|| Allotment::all_cut(wanted));
        let anchor = anchor(&keyways, &untouched, &group.locks);
        let mut is_in_doubt = false;
        for &id in &touched {
            if let Some(mut work) = work(index, exposed, &keyways, anchor, id, keys.len()) {
                work.drops.retain(|&key| Some(key) != kept);
                let surely = Priced::Item(PriceItem::RekeyedCylinder);
                work.only_if_keyed_to = kept.filter(|_| work.price != surely);
                is_in_doubt |= work.only_if_keyed_to.is_some();
                works.insert(id, work);
            }
        }
        if kept.is_none() || !touched.is_empty() || !dealt.changes_nothing() {
            keys.push(PlannedKey {
                origin: kept.map_or_else(|| replaces(index, &touched), Origin::Kept),
                who: WhoActs::Household,
                locks: group.locks.clone(),
                copies: dealt.cut.into_iter().collect(),
                handed_on: dealt.handed_on,
                otherwise: is_in_doubt.then(|| Otherwise {
                    locks: seen_to_otherwise(index, &untouched),
                    copies: of_a_new_key,
                }),
            });
        }
        hand_in.extend(dealt.taken_in);
    }
    hand_in
}

/// The locks that take the key that stays, each with what is paid for where that key cannot stay: what is
/// rekeyed alone may need a new cylinder to share a key.
fn seen_to_otherwise(index: &Index<'_>, untouched: &[LockId]) -> Vec<(LockId, Priced)> {
    let locks = untouched.iter().filter_map(|&id| {
        let (lock, door) = lock_and_door(index, id)?;
        let price = match work_on(id, lock, door).price {
            Priced::Item(PriceItem::RekeyedCylinder) => Priced::RekeyedOrNew,
            price => price,
        };
        Some((id, price))
    });
    locks.collect()
}

/// The key each group keeps. A key may stay where it is not exposed and opens nothing but the
/// household's own locks. First count the locks that stay untouched; among equals, fewer copies to be
/// taken in; then fewer copies to be cut.
fn kept_keys(
    index: &Index<'_>,
    choices: Choices,
    groups: &[Group],
    exposed: &BTreeMap<KeyId, ExposedKey>,
    wanted: &[BTreeMap<Recipient, u32>],
) -> Vec<Option<KeyId>> {
    let own: BTreeSet<LockId> = own_locks(index).into_iter().collect();
    let may_stay = |key: KeyId| {
        !exposed.contains_key(&key) && index.opened_by(key).iter().all(|lock| own.contains(lock))
    };
    let mut numbers: BTreeMap<KeyId, usize> = BTreeMap::new();
    let mut keys: Vec<KeyId> = Vec::new();
    // No sum over the groups of a lesser count reaches one of a greater: a key stays with one group, so
    // that each copy is counted once, or twice where a spare that is handed on need not be made up for.
    let above = 2 * index.household.copies().len() as i64 + 1;
    let candidates: Candidates = groups
        .iter()
        .zip(wanted)
        .map(|(group, wanted)| {
            let mut untouched: BTreeMap<usize, i64> = BTreeMap::new();
            for lock in group
                .locks
                .iter()
                .filter_map(|&lock| index.household.lock(lock))
            {
                if let (Some(&key), 1) = (lock.keys.first(), lock.keys.len())
                    && may_stay(key)
                {
                    let number = *numbers.entry(key).or_insert_with(|| {
                        keys.push(key);
                        keys.len() - 1
                    });
                    *untouched.entry(number).or_default() += 1;
                }
            }
            let mut of_a_new_key = wanted.clone();
            enough(&mut of_a_new_key, choices);
            let of_a_new_key: i64 = of_a_new_key.values().copied().map(i64::from).sum();
            let weight = |(number, untouched): (usize, i64)| {
                let key: KeyId = *keys.get(number)?;
                let dealt = Allotment::of(index, choices, key, wanted, &group.locks);
                let taken_in = dealt.taken_in.len() as i64;
                let cut: i64 = dealt.cut.values().copied().map(i64::from).sum();
                let weight = (untouched * above - taken_in) * above + of_a_new_key - cut;
                Some((number, weight))
            };
            untouched.into_iter().filter_map(weight).collect()
        })
        .collect();
    keep::best(&candidates, keys.len())
        .into_iter()
        .map(|kept| kept.and_then(|number| keys.get(number).copied()))
        .collect()
}

/// For each group, how many copies of its key everybody shall have: those who carry it as many as they
/// have of the keys to it today, at least one; a key safe one if what lies in it opens
/// the group; spares as today.
fn wanted_copies(index: &Index<'_>, groups: &[Group]) -> Vec<BTreeMap<Recipient, u32>> {
    let mut group_of: BTreeMap<LockId, usize> = BTreeMap::new();
    for (number, group) in groups.iter().enumerate() {
        group_of.extend(group.locks.iter().map(|&lock| (lock, number)));
    }
    let opened = |key: KeyId| -> BTreeSet<usize> {
        let locks = index.opened_by(key).iter();
        locks
            .filter_map(|lock| group_of.get(lock))
            .copied()
            .collect()
    };
    let one_each = |group: &Group| {
        let people = group.carried_by.iter();
        people
            .map(|&holder| (Recipient::Holder(holder), 1))
            .collect()
    };
    let mut wanted: Vec<BTreeMap<Recipient, u32>> = groups.iter().map(one_each).collect();
    for (key, _) in index.household.keys() {
        let groups = opened(key);
        if groups.is_empty() {
            continue;
        }
        for (recipient, count) in in_use(index, key) {
            for &number in &groups {
                let Some(wanted) = wanted.get_mut(number) else {
                    continue;
                };
                match recipient {
                    Recipient::Holder(_) => {
                        if let Some(wants) = wanted.get_mut(&recipient) {
                            *wants = (*wants).max(count);
                        }
                    }
                    Recipient::KeySafe(_) | Recipient::Spare => {
                        let wants = wanted.entry(recipient).or_default();
                        *wants = (*wants).max(count);
                    }
                }
            }
        }
    }
    wanted
}

fn opens_it_alone(index: &Index<'_>, key: KeyId, lock: LockId) -> bool {
    let lock = index.household.lock(lock);
    lock.is_some_and(|lock| lock.keys.len() == 1 && lock.keys.contains(&key))
}

fn replaces(index: &Index<'_>, touched: &[LockId]) -> Origin {
    let locks = touched
        .iter()
        .filter_map(|&lock| index.household.lock(lock));
    let keys: BTreeSet<KeyId> = locks.flat_map(|lock| lock.keys.iter().copied()).collect();
    Origin::New {
        replaces: keys.into_iter().collect(),
    }
}

/// A lock whose keyway the group takes: one that stays untouched, else one of the most common
/// keyway.
fn anchor(keyways: &Keyways, untouched: &[LockId], locks: &[LockId]) -> Option<LockId> {
    if let Some(&lock) = untouched.first() {
        return Some(lock);
    }
    let mut counts: BTreeMap<usize, (usize, LockId)> = BTreeMap::new();
    for &lock in locks {
        if let Some(class) = keyways.class(lock) {
            counts.entry(class).or_insert((0, lock)).0 += 1;
        }
    }
    let first_of_most = |&(count, lock): &(usize, LockId)| (count, std::cmp::Reverse(lock));
    counts
        .into_values()
        .max_by_key(first_of_most)
        .map(|(_, lock)| lock)
}

fn work(
    index: &Index<'_>,
    exposed: &BTreeMap<KeyId, ExposedKey>,
    keyways: &Keyways,
    anchor: Option<LockId>,
    id: LockId,
    key: usize,
) -> Option<Work> {
    let (lock, door) = lock_and_door(index, id)?;
    let mut work = work_on(id, lock, door);
    let sharing = anchor.map_or(Sharing::Same, |anchor| keyways.sharing(anchor, id));
    if work.actions == [Action::RekeyCylinder] {
        match sharing {
            Sharing::Same => {}
            Sharing::Different => {
                work.actions = vec![Action::ChangeCylinder];
                work.price = Priced::Item(PriceItem::NewCylinder);
            }
            Sharing::Unknown if lock.kind == LockKind::NotSure => {}
            Sharing::Unknown => work.price = Priced::RekeyedOrNew,
        }
    }
    work.exposed = lock
        .keys
        .iter()
        .copied()
        .filter(|key| exposed.contains_key(key))
        .collect();
    let why = work.exposed.iter().filter_map(|key| exposed.get(key));
    let asked = why
        .map(|why| why.urgency)
        .max()
        .unwrap_or(Urgency::WhenConvenient);
    work.urgency = asked.min(most_urgent(door));
    work.drops = lock.keys.iter().copied().collect();
    work.takes = vec![key];
    Some(work)
}
