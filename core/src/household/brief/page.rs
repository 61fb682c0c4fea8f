//! From household and plan to the page.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use crate::advice::Urgency;

use super::super::grouping::keyways::Keyways;
use super::super::index::Index;
use super::super::kinds::{Arrangement, DoorKind, LockKind};
use super::super::plan::{Origin, Plan, PlannedKey, Recipient, Step, Work};
use super::super::remedy::WhoActs;
use super::super::{DoorId, Household, KeyId, LockId};
use super::keying::{keying, old_keys, put_ranks, restricted};
use super::quotes::quotes;
use super::{
    AfterVisit, Ask, Brief, BriefChoices, BriefKey, BriefLock, BriefRecipient, DoorToOpen, Due,
    KeyRank, Keying, MatchedLock, SafetyFirst, Visit,
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
    let own = keys_of_the_page(&index, plan, &works);
    let locks: Vec<BriefLock> = works
        .iter()
        .filter_map(|work| lock_of(&index, plan, work, &own, choices))
        .collect();
    let mut keys: Vec<BriefKey> = own
        .iter()
        .map(|key| BriefKey {
            is_new: key.today.is_none(),
            rank: KeyRank::Alone,
            is_left: key.planned.is_none(),
            is_at_hand: key.today.is_some_and(|key| index.is_at_hand(key)),
            locks: key.locks.iter().filter_map(place_of).collect(),
            other_doors: other_doors(&index, key.locks.iter().filter(|it| place_of(it).is_none())),
            copies: key
                .planned
                .map_or_else(Vec::new, |(_, key)| copies_of(household, key, choices)),
            total: key.planned.map_or(0, |(_, key)| key.copy_count()),
        })
        .collect();
    let opens: Vec<usize> = own.iter().map(|key| key.locks.len()).collect();
    let several = locks.iter().filter(|it| it.keying == Keying::MasterKeyed);
    let several: Vec<&[usize]> = several.map(|lock| lock.keys.as_slice()).collect();
    put_ranks(&mut keys, &opens, &several);
    let outlying = outlying(household, &works);
    let to_open = to_open(household, plan, &locks, choices);
    let opened = opened(household, &locks, &to_open, choices);
    Ok(Brief {
        readiness: choices.readiness,
        matched: matched(&index, &own, &works, choices),
        to_open,
        opened,
        visit: choices
            .urgency
            .then(|| visit(&works, plan, opened, choices))
            .flatten(),
        kinds: kinds_of(&locks),
        same_keyway: same_keyway(&index, &works),
        quotes: quotes(household, plan, opened, choices),
        old_keys: old_keys(&index, &works),
        after: after(&index, plan, &works, &keys, &outlying),
        outlying,
        locks,
        keys,
        ask: ASK,
    })
}

/// A key of the page.
struct PageKey<'a> {
    /// What the plan says of it, with its place there; nothing of one that a lock of the page goes on
    /// taking beside a new one.
    planned: Option<(usize, &'a PlannedKey)>,
    /// Which key of today it is, if it stays.
    today: Option<KeyId>,
    locks: Vec<LockId>,
}

/// The keys of the page in the order of the first lock that each opens there; those of which only copies
/// are wanted last.
fn keys_of_the_page<'a>(index: &Index<'_>, plan: &'a Plan, works: &[&Work]) -> Vec<PageKey<'a>> {
    let first_place = |locks: &[LockId]| works.iter().position(|work| locks.contains(&work.lock));
    let planned = plan.keys.iter().enumerate();
    let planned = planned.filter(|(_, key)| {
        key.who == WhoActs::Household && (first_place(&key.locks).is_some() || is_only_copies(key))
    });
    let mut keys: Vec<PageKey<'a>> = planned
        .map(|(place, key)| PageKey {
            planned: Some((place, key)),
            today: match key.origin {
                Origin::Kept(key) => Some(key),
                Origin::New { .. } => None,
            },
            locks: key.locks.clone(),
        })
        .collect();
    let left: BTreeSet<KeyId> = works
        .iter()
        .filter(|work| !is_central(index, work.lock))
        .flat_map(|work| left_in(index, work))
        .collect();
    for id in left {
        if keys.iter().all(|key| key.today != Some(id)) {
            let drops = |lock: &LockId| {
                let mut works = plan.works.iter();
                works.any(|work| work.lock == *lock && work.drops.contains(&id))
            };
            let opened = index.opened_by(id).iter().copied();
            keys.push(PageKey {
                planned: None,
                today: Some(id),
                locks: opened.filter(|lock| !drops(lock)).collect(),
            });
        }
    }
    keys.sort_by_key(|key| first_place(&key.locks).unwrap_or(works.len()));
    keys
}

/// The kinds of the doors these locks are on, each door once.
fn other_doors<'a>(index: &Index<'_>, locks: impl Iterator<Item = &'a LockId>) -> Vec<DoorKind> {
    let mut seen = BTreeSet::new();
    let doors = locks.filter_map(|&lock| index.door_of(lock));
    let each = doors.filter(|&door| seen.insert(door));
    each.filter_map(|door| index.household.door(door))
        .map(|door| door.kind)
        .collect()
}

/// The keys of today that the lock goes on taking.
fn left_in<'i>(index: &'i Index<'_>, work: &'i Work) -> impl Iterator<Item = KeyId> + 'i {
    let lock = index.household.lock(work.lock);
    let keys = lock.into_iter().flat_map(|lock| &lock.keys).copied();
    keys.filter(|key| !work.drops.contains(key))
}

/// Whether the lock takes the own keys of many: they are not told one by one.
fn is_central(index: &Index<'_>, lock: LockId) -> bool {
    let lock = index.household.lock(lock);
    lock.is_some_and(|lock| lock.arrangement == Arrangement::CentralLock)
}

/// A key that stays and of which only copies are wanted.
fn is_only_copies(key: &PlannedKey) -> bool {
    matches!(key.origin, Origin::Kept(_)) && !key.copies.is_empty()
}

fn lock_of(
    index: &Index<'_>,
    plan: &Plan,
    work: &Work,
    own: &[PageKey<'_>],
    choices: BriefChoices,
) -> Option<BriefLock> {
    let lock = index.household.lock(work.lock)?;
    let door = index.household.door(lock.door)?;
    let keys: Vec<usize> = own
        .iter()
        .enumerate()
        .filter(|(_, key)| match (key.planned, key.today) {
            (Some((place, _)), _) => work.takes.contains(&place),
            (None, today) => left_in(index, work).any(|left| today == Some(left)),
        })
        .map(|(place, _)| place)
        .collect();
    let keeps_many_keys = is_central(index, work.lock) && left_in(index, work).next().is_some();
    Some(BriefLock {
        lock: work.lock,
        door: door.kind,
        label: door.label.clone().filter(|_| choices.labels),
        material: door.material,
        kind: lock.kind,
        action: *work.actions.first()?,
        inside: lock.inside,
        lengths: lock.lengths,
        keying: keying(lock, keys.len(), keeps_many_keys),
        restricted: restricted(index, lock),
        has_working_key: lock.keys.iter().any(|&key| index.is_at_hand(key)),
        is_shut: plan.shut.contains(&lock.door),
        keys,
        keeps_many_keys,
        only_if_keyed_to: work.only_if_keyed_to.and_then(|kept| {
            let mut keys = own.iter();
            keys.position(|key| key.today == Some(kept))
        }),
        is_of_the_visit: work.needs_a_locksmith(),
        due: choices.urgency.then(|| due_of(plan, work)),
        may_be_new: work.price.may_be_new(),
    })
}

/// How soon the step is due that sees to the lock: what is seen to in one go is due at once.
fn due_of(plan: &Plan, work: &Work) -> Due {
    let mut steps = plan.steps.iter();
    let step = steps.find(|step| match &step.step {
        Step::LocksmithVisit(locks) | Step::ReplaceSmallLocks(locks) => locks.contains(&work.lock),
        _ => false,
    });
    match step {
        Some(step) => due(step.urgency, step.may_be_sooner),
        None => due(work.urgency, work.may_be_sooner()),
    }
}

/// How soon is not known while nobody has said how the key was lost.
fn due(urgency: Urgency, may_be_sooner: bool) -> Due {
    let is_open = may_be_sooner && urgency < Urgency::Soon;
    Due {
        urgency: Some(urgency).filter(|_| !is_open),
        may_be_sooner,
    }
}

/// When the visit is due: a door that somebody stands before is opened today.
fn visit(works: &[&Work], plan: &Plan, opened: u64, choices: BriefChoices) -> Option<Visit> {
    let today = due(Urgency::Today, false);
    let mut of_the_visit = works.iter().filter(|work| work.needs_a_locksmith());
    let for_the_locks = of_the_visit.next().map(|work| due_of(plan, work));
    let is_shut_out = opened > 0 && choices.readiness.can_get_in == Some(false);
    match for_the_locks {
        Some(due) if !is_shut_out => Some(Visit {
            due,
            is_today_to_open: opened > 0 && due != today,
        }),
        None if opened == 0 => None,
        _ => Some(Visit {
            due: today,
            is_today_to_open: false,
        }),
    }
}

/// The kinds of outlying doors with a lock that is not on the page, each once: where an old key is
/// forgotten.
fn outlying(household: &Household, works: &[&Work]) -> Vec<DoorKind> {
    let others = household
        .locks()
        .filter(|(id, _)| works.iter().all(|work| work.lock != *id));
    let doors = others.filter_map(|(_, lock)| household.door(lock.door));
    let with_a_lock: BTreeSet<DoorKind> = doors.map(|door| door.kind).collect();
    let all = [DoorKind::Shed, DoorKind::Gate, DoorKind::Padlock];
    let all = all.into_iter();
    all.filter(|kind| with_a_lock.contains(kind)).collect()
}

/// The locks that stay of each key that a lock of the page shall take.
fn matched(
    index: &Index<'_>,
    own: &[PageKey<'_>],
    works: &[&Work],
    choices: BriefChoices,
) -> Vec<MatchedLock> {
    let is_on_page = |lock: LockId| works.iter().any(|work| work.lock == lock);
    let kept = own.iter().enumerate().filter(|(_, key)| {
        let is_kept = key.planned.is_some() && key.today.is_some();
        is_kept && key.locks.iter().any(|&lock| is_on_page(lock))
    });
    let locks = kept.flat_map(|(place, key)| key.locks.iter().map(move |&lock| (place, lock)));
    let staying = locks.filter(|&(_, lock)| !is_on_page(lock));
    let matched = staying.filter_map(|(key, id)| {
        let lock = index.household.lock(id)?;
        let door = index.household.door(lock.door)?;
        Some(MatchedLock {
            lock: id,
            door: door.kind,
            label: door.label.clone().filter(|_| choices.labels),
            kind: lock.kind,
            material: door.material,
            inside: lock.inside,
            lengths: lock.lengths,
            has_working_key: lock.keys.iter().any(|&key| index.is_at_hand(key)),
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

/// The doors to which no key is at hand and none of whose locks the page sees to.
fn to_open(
    household: &Household,
    plan: &Plan,
    locks: &[BriefLock],
    choices: BriefChoices,
) -> Vec<DoorToOpen> {
    let on_page = doors_of(household, locks.iter());
    let others = plan.shut.iter().filter(|door| !on_page.contains(door));
    let to_open = others.filter_map(|&id| {
        let door = household.door(id)?;
        Some(DoorToOpen {
            door: id,
            kind: door.kind,
            label: door.label.clone().filter(|_| choices.labels),
        })
    });
    to_open.collect()
}

/// How many doors may have to be opened first: no key to them is at hand, and nobody has said that they
/// can get in. Where nobody can, it is one at least.
fn opened(
    household: &Household,
    locks: &[BriefLock],
    to_open: &[DoorToOpen],
    choices: BriefChoices,
) -> u64 {
    let shut = doors_of(household, locks.iter().filter(|lock| lock.is_shut));
    let doors = (shut.len() + to_open.len()) as u64;
    let is_about_a_door = !locks.is_empty() || !to_open.is_empty();
    match choices.readiness.can_get_in {
        Some(true) => 0,
        Some(false) if is_about_a_door => doors.max(1),
        Some(false) | None => doors,
    }
}

fn doors_of<'a>(
    household: &Household,
    locks: impl Iterator<Item = &'a BriefLock>,
) -> BTreeSet<DoorId> {
    let locks = locks.filter_map(|lock| household.lock(lock.lock));
    locks.map(|lock| lock.door).collect()
}

const ASK: &[Ask] = &[
    Ask::WholePriceBeforeWork,
    Ask::LicenceAndPapers,
    Ask::ProofThatYouMay,
    Ask::KeysThatComeWithIt,
    Ask::InsurersGrade,
    Ask::RestrictedOrNot,
    Ask::OthersNeedANewCylinder,
    Ask::IsCodeOrAddressKept,
    Ask::CodeOnNewKeys,
];

/// Old keys that are at hand must fail where locks no longer take them. They are destroyed only where
/// the locks of this page are all that they open: what others see to may take them a while yet.
fn after(
    index: &Index<'_>,
    plan: &Plan,
    works: &[&Work],
    keys: &[BriefKey],
    outlying: &[DoorKind],
) -> Vec<AfterVisit> {
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
        (
            AfterVisit::TryOldKeyInOutlyingDoors,
            !void.is_empty() && !outlying.is_empty(),
        ),
        (AfterVisit::ScrapTheOldKeys, !void.is_empty()),
    ];
    let told = all.into_iter().filter(|&(_, is_told)| is_told);
    told.map(|(after, _)| after).collect()
}
