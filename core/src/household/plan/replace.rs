//! As now: each exposed key gives way to one new key that opens what it opened.

use std::collections::BTreeMap;

use super::super::index::Index;
use super::super::remedy::{WhoActs, most_urgent, price_of, remedy, who_acts};
use super::super::{Door, ExposedKey, KeyId, Lock, LockId, Priced};
use super::copies::of_a_replacement;
use super::{Choices, Origin, PlannedKey, Work};

/// Plans the locks of which `concerns` says so. Where one exposed key opens locks of several
/// owners, each owner has a new key made: nobody can have theirs keyed to another's system.
pub(super) fn replace(
    index: &Index<'_>,
    choices: Choices,
    exposed: &BTreeMap<KeyId, ExposedKey>,
    concerns: impl Fn(WhoActs) -> bool,
    works: &mut BTreeMap<LockId, Work>,
    keys: &mut Vec<PlannedKey>,
) {
    for (&key, why) in exposed {
        let mut by_owner: BTreeMap<WhoActs, Vec<LockId>> = BTreeMap::new();
        for &id in index.opened_by(key) {
            let Some((lock, door)) = lock_and_door(index, id) else {
                continue;
            };
            let who = who_acts(lock, door);
            if concerns(who) {
                by_owner.entry(who).or_default().push(id);
            }
        }
        for (who, locks) in by_owner {
            for &id in &locks {
                if let Some((lock, door)) = lock_and_door(index, id) {
                    let work = works.entry(id).or_insert_with(|| work_on(id, lock, door));
                    work.urgency = work.urgency.max(why.urgency.min(most_urgent(door)));
                    work.exposed.push(key);
                    work.drops.push(key);
                    work.takes.push(keys.len());
                }
            }
            keys.push(PlannedKey {
                origin: Origin::New {
                    replaces: vec![key],
                },
                who,
                copies: of_a_replacement(index, choices, key, who, &locks),
                locks,
                handed_on: Vec::new(),
                otherwise: None,
            });
        }
    }
}

pub(super) fn lock_and_door<'a>(index: &Index<'a>, lock: LockId) -> Option<(&'a Lock, &'a Door)> {
    let lock = index.household.lock(lock)?;
    Some((lock, index.household.door(lock.door)?))
}

/// The work on a lock, with the right verb and nothing yet to drop or take.
pub(super) fn work_on(id: LockId, lock: &Lock, door: &Door) -> Work {
    let actions = remedy(lock, door);
    let price = actions
        .first()
        .map_or(Priced::ByOthers, |&action| price_of(action, lock.kind));
    let who = who_acts(lock, door);
    Work {
        lock: id,
        actions,
        who,
        urgency: crate::advice::Urgency::Habit,
        could_be: crate::advice::Urgency::Habit,
        exposed: Vec::new(),
        drops: Vec::new(),
        takes: Vec::new(),
        only_if_keyed_to: None,
        price,
        reply: lock.reply.filter(|_| who != WhoActs::Household),
    }
}
