//! For whom copies are cut.

use std::collections::{BTreeMap, BTreeSet};

use super::super::exposed::no_longer_should;
use super::super::index::Index;
use super::super::kinds::Loss;
use super::super::remedy::WhoActs;
use super::super::{DoorId, HolderId, KeyId, LockId, Place};
use super::{Choices, Recipient};

/// How many copies of a key each recipient has or had, of those who shall have one again. What
/// somebody did not give back is not replaced; what came back lies in the home, a spare whoever had it.
pub(super) fn in_use(index: &Index<'_>, key: KeyId) -> BTreeMap<Recipient, u32> {
    let household = index.household;
    let stays = |holder: HolderId| !no_longer_should(household, holder);
    let mut counts: BTreeMap<Recipient, u32> = BTreeMap::new();
    let copies = index.copies_of(key).iter();
    for copy in copies.filter_map(|&copy| household.copy(copy)) {
        let recipient = match copy.place {
            Place::InKeySafe(way)
            | Place::Lost {
                from_safe: Some(way),
                ..
            } => Recipient::KeySafe(way),
            Place::Lost {
                loss: Loss::NotReturned,
                ..
            } => continue,
            Place::Held(holder)
            | Place::Lost {
                by: Some(holder), ..
            } if stays(holder) => Recipient::Holder(holder),
            Place::AtHome { .. } => Recipient::Spare,
            Place::Held(_) | Place::Lost { .. } | Place::Scrapped { .. } => {
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
    who: WhoActs,
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
    match who {
        WhoActs::Household => enough(&mut copies, choices),
        WhoActs::Landlord | WhoActs::SystemOwner | WhoActs::AnotherOwner => {
            at_least(1, &mut copies);
        }
    }
    copies.into_iter().collect()
}

/// Two of each new key, for a single one that is lost locks everybody out (common practice); only one
/// where the household chose how many spares it wants.
pub(super) fn enough(copies: &mut BTreeMap<Recipient, u32>, choices: Choices) {
    at_least(if choices.spares.is_none() { 2 } else { 1 }, copies);
}

/// So many copies at least, those that lack as spares.
fn at_least(least: u32, copies: &mut BTreeMap<Recipient, u32>) {
    let count = copies
        .values()
        .fold(0, |sum: u32, &count| sum.saturating_add(count));
    if count < least {
        *copies.entry(Recipient::Spare).or_default() += least - count;
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
