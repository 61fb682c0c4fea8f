//! From household and plan to the page.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use crate::advice::Urgency;

use super::super::grouping::keyways::Keyways;
use super::super::index::Index;
use super::super::kinds::{LockKind, PriceItem};
use super::super::plan::{Origin, Plan, PlannedKey, Recipient, Work};
use super::super::remedy::WhoActs;
use super::super::{DoorId, Household, KeyId, LockId, Priced};
use super::{
    AfterVisit, Ask, Brief, BriefChoices, BriefKey, BriefLock, BriefRecipient, MatchedLock, Quote,
    SafetyFirst,
};

/// The page for the locksmith: the household's own works of `plan`, small locks too, which locksmiths
/// sell. Locks that others see to are not on it.
pub fn brief(
    household: &Household,
    plan: &Plan,
    choices: BriefChoices,
) -> Result<Brief, SafetyFirst> {
    if plan.safety_first || household.puts_safety_first() {
        return Err(SafetyFirst);
    }
    let index = Index::of(household);
    let works: Vec<&Work> = plan
        .works
        .iter()
        .filter(|work| work.who == WhoActs::Household)
        .collect();
    let place_of = |lock: &LockId| works.iter().position(|work| work.lock == *lock);
    let own: Vec<(usize, &PlannedKey)> = plan
        .keys
        .iter()
        .enumerate()
        .filter(|(_, key)| key.who == WhoActs::Household)
        .filter(|(_, key)| {
            key.locks.iter().any(|lock| place_of(lock).is_some()) || is_only_copies(key)
        })
        .collect();
    let locks: Vec<BriefLock> = works
        .iter()
        .filter_map(|work| lock_of(&index, plan, work, &own, choices))
        .collect();
    let keys: Vec<BriefKey> = own
        .iter()
        .map(|(_, key)| BriefKey {
            is_new: matches!(key.origin, Origin::New { .. }),
            locks: key.locks.iter().filter_map(place_of).collect(),
            other_doors: key
                .locks
                .iter()
                .filter(|&lock| place_of(lock).is_none())
                .filter_map(|&lock| household.lock(lock))
                .filter_map(|lock| household.door(lock.door))
                .map(|door| door.kind)
                .collect(),
            copies: copies_of(household, key, choices),
            total: key.copy_count(),
        })
        .collect();
    Ok(Brief {
        readiness: choices.readiness,
        matched: matched(&index, &own, &works, choices),
        kinds: kinds_of(&locks),
        same_keyway: same_keyway(&index, &works),
        quotes: quotes(
            household,
            plan,
            to_open(household, &locks, choices),
            choices,
        ),
        after: after(&index, plan, &works, &keys),
        locks,
        keys,
        ask: ASK,
    })
}

/// A key that stays and of which only copies are wanted.
fn is_only_copies(key: &PlannedKey) -> bool {
    matches!(key.origin, Origin::Kept(_)) && !key.copies.is_empty()
}

fn lock_of(
    index: &Index<'_>,
    plan: &Plan,
    work: &Work,
    own: &[(usize, &PlannedKey)],
    choices: BriefChoices,
) -> Option<BriefLock> {
    let lock = index.household.lock(work.lock)?;
    let door = index.household.door(lock.door)?;
    let mut old = lock.keys.iter().filter_map(|&key| index.household.key(key));
    // How soon is not known while nobody has said how the key was lost.
    let is_open = work.may_be_sooner() && work.urgency < Urgency::Soon;
    Some(BriefLock {
        lock: work.lock,
        door: door.kind,
        label: door.label.clone().filter(|_| choices.labels),
        material: door.material,
        kind: lock.kind,
        action: *work.actions.first()?,
        inside: lock.inside,
        lengths: lock.lengths,
        arrangement: lock.arrangement,
        restricted: old.find_map(|key| key.restricted),
        has_working_key: lock.keys.iter().any(|&key| index.is_at_hand(key)),
        is_shut: plan.shut.contains(&lock.door),
        keys: work
            .takes
            .iter()
            .filter_map(|take| own.iter().position(|(place, _)| place == take))
            .collect(),
        only_if_keyed_to: work.only_if_keyed_to.and_then(|kept| {
            let mut keys = own.iter();
            keys.position(|(_, key)| key.origin == Origin::Kept(kept))
        }),
        urgency: choices.urgency.then_some(work.urgency).filter(|_| !is_open),
        may_be_sooner: choices.urgency && work.may_be_sooner(),
    })
}

/// The locks that stay of each key that a lock of the page shall take.
fn matched(
    index: &Index<'_>,
    own: &[(usize, &PlannedKey)],
    works: &[&Work],
    choices: BriefChoices,
) -> Vec<MatchedLock> {
    let is_on_page = |lock: LockId| works.iter().any(|work| work.lock == lock);
    let kept = own.iter().enumerate().filter(|(_, (_, key))| {
        matches!(key.origin, Origin::Kept(_)) && key.locks.iter().any(|&lock| is_on_page(lock))
    });
    let locks = kept.flat_map(|(place, (_, key))| key.locks.iter().map(move |&lock| (place, lock)));
    let staying = locks.filter(|&(_, lock)| !is_on_page(lock));
    let matched = staying.filter_map(|(key, lock)| {
        let lock = index.household.lock(lock)?;
        let door = index.household.door(lock.door)?;
        Some(MatchedLock {
            door: door.kind,
            label: door.label.clone().filter(|_| choices.labels),
            kind: lock.kind,
            key,
        })
    });
    matched.collect()
}

/// Without roles nobody can be told from another: a key safe's copy counts as a spare.
fn copies_of(
    household: &Household,
    key: &PlannedKey,
    choices: BriefChoices,
) -> Vec<(BriefRecipient, u32)> {
    let mut copies: Vec<(BriefRecipient, u32)> = Vec::new();
    let mut spares = 0;
    for &(recipient, count) in &key.copies {
        match recipient {
            Recipient::Holder(holder) => {
                let role = household.holder(holder).map(|holder| holder.role);
                let told = role.filter(|_| choices.roles);
                copies.push((BriefRecipient::Person(told), count));
            }
            Recipient::KeySafe(_) | Recipient::Spare => spares += count,
        }
    }
    copies.sort_by_key(|&(recipient, count)| (Reverse(count), recipient));
    if spares > 0 {
        copies.push((BriefRecipient::Spare, spares));
    }
    copies
}

fn kinds_of(locks: &[BriefLock]) -> Vec<(LockKind, usize)> {
    let count = |kind: LockKind| locks.iter().filter(|lock| lock.kind == kind).count();
    let all = LockKind::ALL.iter().map(|&kind| (kind, count(kind)));
    let mut kinds: Vec<(LockKind, usize)> = all.filter(|&(_, count)| count > 0).collect();
    kinds.sort_by_key(|&(_, count)| Reverse(count));
    kinds
}

fn same_keyway(index: &Index<'_>, works: &[&Work]) -> Vec<Vec<usize>> {
    let keyways = Keyways::of(index);
    let mut classes: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (place, work) in works.iter().enumerate() {
        if let Some(class) = keyways.class(work.lock) {
            classes.entry(class).or_default().push(place);
        }
    }
    classes
        .into_values()
        .filter(|locks| locks.len() > 1)
        .collect()
}

/// How many doors may have to be opened first: no key to them is at hand, and nobody has said that they
/// can get in.
fn to_open(household: &Household, locks: &[BriefLock], choices: BriefChoices) -> u64 {
    if choices.readiness.can_get_in == Some(true) {
        return 0;
    }
    let shut = locks.iter().filter(|lock| lock.is_shut);
    let doors = shut.filter_map(|lock| household.lock(lock.lock));
    let doors: BTreeSet<DoorId> = doors.map(|lock| lock.door).collect();
    doors.len() as u64
}

fn quotes(household: &Household, plan: &Plan, to_open: u64, choices: BriefChoices) -> Vec<Quote> {
    let quantities = plan.quantities_at_most(0);
    let either = quantities.of(Priced::RekeyedOrNew);
    let visit = |item: PriceItem| match plan.visit() {
        Some(Priced::CallOutAtAnyHour) => Some(1),
        Some(Priced::Item(it)) if it == item => Some(1),
        // Its price is asked for in case the visit comes to that.
        Some(_) if item == PriceItem::CallOutAfterHours => None,
        _ => Some(0),
    };
    let count = |item: PriceItem| match item {
        PriceItem::CallOut | PriceItem::CallOutAfterHours => visit(item),
        PriceItem::RekeyedCylinder | PriceItem::NewCylinder => {
            Some(quantities.of(Priced::Item(item)) + either)
        }
        PriceItem::Opening => Some(to_open),
        PriceItem::LockOrLevers | PriceItem::SmallLock | PriceItem::Copy => {
            Some(quantities.of(Priced::Item(item)))
        }
    };
    let instead = |item: PriceItem| match item {
        PriceItem::CallOutAfterHours => u64::from(plan.visit() == Some(Priced::CallOutAtAnyHour)),
        PriceItem::NewCylinder => either,
        _ => 0,
    };
    let items = PriceItem::ALL.iter().copied();
    items
        .map(|item| Quote {
            item,
            count: count(item),
            instead: instead(item),
            told: household.prices().of(item).filter(|_| choices.prices),
        })
        .filter(|quote| quote.count != Some(0))
        .collect()
}

const ASK: &[Ask] = &[
    Ask::WholePriceBeforeWork,
    Ask::LicenceAndPapers,
    Ask::ProofThatYouMay,
    Ask::KeysThatComeWithIt,
    Ask::RestrictedOrNot,
    Ask::OthersNeedANewCylinder,
    Ask::IsCodeOrAddressKept,
    Ask::CodeOnNewKeys,
];

/// Old keys that are at hand must fail where locks no longer take them. They are destroyed only where
/// the locks of this page are all that they open: what others see to may take them a while yet.
fn after(index: &Index<'_>, plan: &Plan, works: &[&Work], keys: &[BriefKey]) -> Vec<AfterVisit> {
    let is_of_the_page = |lock: &LockId| works.iter().any(|work| work.lock == *lock);
    let is_void =
        |key: &KeyId| plan.void.contains(key) && index.opened_by(*key).iter().all(is_of_the_page);
    let dropped: BTreeSet<KeyId> = works.iter().flat_map(|work| work.drops.clone()).collect();
    let old = dropped.into_iter().filter(|&key| index.is_at_hand(key));
    let (void, stay): (Vec<KeyId>, Vec<KeyId>) = old.partition(is_void);
    let has_new = keys.iter().any(|key| key.total > 0);
    let all = [
        (
            AfterVisit::OldKeyMustFail,
            !void.is_empty() || !stay.is_empty(),
        ),
        (AfterVisit::TryEachNewKeyWithTheDoorOpen, has_new),
        (AfterVisit::CountTheNewKeys, has_new),
        (AfterVisit::KeepOldKeysThatOpenOtherLocks, !stay.is_empty()),
        (AfterVisit::TryOldKeyInShedGateAndPadlock, !void.is_empty()),
        (AfterVisit::ScrapTheOldKeys, !void.is_empty()),
    ];
    let told = all.into_iter().filter(|&(_, is_told)| is_told);
    told.map(|(after, _)| after).collect()
}
