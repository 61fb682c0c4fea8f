//! What the keys in key safes turn once the plan is carried out.

use std::collections::{BTreeMap, BTreeSet};

use super::super::index::Index;
use super::super::kinds::WayKind;
use super::super::{KeyId, LockId, WayId};
use super::{Note, Origin, PlannedKey, Recipient, Work};

/// For each key safe, the locks that the keys in it turn.
pub(super) type TurnedBySafes = BTreeMap<WayId, BTreeSet<LockId>>;

/// What the keys in each key safe turn afterwards: those that stay there, those that the plan puts in, and
/// those that went from there and may turn up.
pub(super) fn turned(index: &Index<'_>, works: &[Work], keys: &[PlannedKey]) -> TurnedBySafes {
    let mut turned = TurnedBySafes::new();
    let drops = works.iter().map(|work| (work.lock, &work.drops));
    let drops: BTreeMap<LockId, &Vec<KeyId>> = drops.collect();
    for (safe, way) in index.household.ways() {
        if way.kind == WayKind::KeySafe {
            let meant: BTreeSet<KeyId> = index.meant_for_safe(safe).iter().copied().collect();
            let locks = meant.iter().flat_map(|&key| {
                let locks = index.opened_by(key).iter().copied();
                let drops = &drops;
                locks.filter(move |lock| !drops.get(lock).is_some_and(|keys| keys.contains(&key)))
            });
            turned.insert(safe, locks.collect());
        }
    }
    for planned in keys {
        for safe in safes_of(index, planned) {
            turned.entry(safe).or_default().extend(&planned.locks);
        }
    }
    turned
}

/// The key safes in which there will be a copy of a planned key.
fn safes_of(index: &Index<'_>, planned: &PlannedKey) -> BTreeSet<WayId> {
    let stays = match planned.origin {
        Origin::Kept(key) => index.copies_of(key),
        Origin::New { .. } => &[],
    };
    let stays = stays.iter().filter_map(|&copy| index.household.copy(copy));
    let stays = stays.filter_map(|copy| copy.place.key_safe());
    let cut = planned.copies.iter().map(|&(recipient, _)| recipient);
    let put_in = cut.chain(planned.handed_on.iter().map(|&(_, recipient)| recipient));
    let put_in = put_in.filter_map(|recipient| match recipient {
        Recipient::KeySafe(safe) => Some(safe),
        Recipient::Holder(_) | Recipient::Spare => None,
    });
    stays.chain(put_in).collect()
}

/// The doors that nobody could enter by a key safe before and that open by it now.
pub(super) fn opens_more(index: &Index<'_>, turned: &TurnedBySafes) -> Vec<Note> {
    let mut notes = Vec::new();
    for (&safe, locks) in turned {
        let meant = index.meant_for_safe(safe).iter();
        let before: BTreeSet<LockId> = meant
            .flat_map(|&key| index.opened_by(key))
            .copied()
            .collect();
        if locks.is_subset(&before) {
            continue;
        }
        let doors = |locks: &BTreeSet<LockId>| {
            let locks: Vec<LockId> = locks.iter().copied().collect();
            index.doors_opened_by(&locks)
        };
        let before = doors(&before);
        let now = doors(locks).into_iter();
        let more = now.filter(|door| before.binary_search(door).is_err());
        notes.extend(more.map(|door| Note::OpensMoreBySafe { safe, door }));
    }
    notes
}
