//! For whom copies are cut.

use std::collections::{BTreeMap, BTreeSet};

use super::super::exposed::no_longer_should;
use super::super::index::Index;
use super::super::kinds::Loss;
use super::super::{DoorId, HolderId, KeyId, LockId, Place};
use super::{Choices, Recipient};

/// How many copies of a key each recipient has or had, of those who shall have one again. What
/// somebody did not give back is not replaced.
pub(super) fn in_use(index: &Index<'_>, key: KeyId) -> BTreeMap<Recipient, u32> {
    let household = index.household;
    let stays = |holder: HolderId| !no_longer_should(household, holder);
    let mut counts: BTreeMap<Recipient, u32> = BTreeMap::new();
    let copies = index.copies_of(key).iter();
    for copy in copies.filter_map(|&copy| household.copy(copy)) {
        let recipient = match copy.place {
            Place::Lost {
                loss: Loss::NotReturned,
                ..
            } => continue,
            Place::Held(holder)
            | Place::Lost {
                by: Some(holder), ..
            } if stays(holder) => Recipient::Holder(holder),
            Place::InKeySafe(way) => Recipient::KeySafe(way),
            Place::AtHome { returned_by } if returned_by.is_none_or(stays) => Recipient::Spare,
            Place::Held(_) | Place::AtHome { .. } | Place::Lost { .. } | Place::Scrapped { .. } => {
                continue;
            }
        };
        *counts.entry(recipient).or_default() += 1;
    }
    counts
}

/// The copies of the key that takes another's place on `locks`: everybody who had the old one and
/// needs a door of these gets as many as they had.
pub(super) fn of_a_replacement(
    index: &Index<'_>,
    choices: Choices,
    key: KeyId,
    locks: &[LockId],
) -> Vec<(Recipient, u32)> {
    let doors: BTreeSet<DoorId> = locks
        .iter()
        .filter_map(|&lock| index.door_of(lock))
        .collect();
    let mut copies = in_use(index, key);
    copies.retain(|&recipient, _| match recipient {
        Recipient::Holder(holder) => !index.needs(holder).is_disjoint(&doors),
        Recipient::KeySafe(_) | Recipient::Spare => true,
    });
    choose_spares(&mut copies, choices);
    at_least_one(&mut copies);
    copies.into_iter().collect()
}

/// A new key of which nobody has a copy would lock everybody out: then one stays in the home.
pub(super) fn at_least_one(copies: &mut BTreeMap<Recipient, u32>) {
    if copies.is_empty() {
        copies.insert(Recipient::Spare, 1);
    }
}

pub(super) fn choose_spares(copies: &mut BTreeMap<Recipient, u32>, choices: Choices) {
    match choices.spares {
        None => {}
        Some(0) => {
            copies.remove(&Recipient::Spare);
        }
        Some(spares) => {
            copies.insert(Recipient::Spare, spares.into());
        }
    }
}
