//! What becomes of the copies of a key that stays: who keeps theirs, who gets one that there is, and
//! what still has to be cut.

use std::collections::BTreeMap;

use super::super::index::Index;
use super::super::{CopyId, HolderId, KeyId, LockId, Place};
use super::copies::in_use;
use super::{Choices, Recipient};

/// The copies of a key that stays, dealt out.
#[derive(Default)]
pub(super) struct Allotment {
    /// What has to be cut, for whom.
    pub(super) cut: BTreeMap<Recipient, u32>,
    /// The copies that go to somebody else.
    pub(super) handed_on: Vec<(CopyId, Recipient)>,
    /// The copies with people who will not need them.
    pub(super) taken_in: Vec<CopyId>,
}

impl Allotment {
    /// Every copy has to be cut: of a new key there is none.
    pub(super) fn all_cut(wanted: BTreeMap<Recipient, u32>) -> Self {
        Self {
            cut: wanted,
            ..Self::default()
        }
    }

    /// Whether no copy is cut and none goes from one to another.
    pub(super) fn changes_nothing(&self) -> bool {
        self.cut.is_empty() && self.handed_on.is_empty()
    }

    /// Deals the copies of `key` out among those who want one to `locks`. Whoever has one keeps it. Whoever
    /// lacks one gets one that is taken in, else a spare in the home, as far as no number of spares was
    /// chosen that stays there; only the rest is cut.
    pub(super) fn of(
        index: &Index<'_>,
        choices: Choices,
        key: KeyId,
        wanted: &BTreeMap<Recipient, u32>,
        locks: &[LockId],
    ) -> Self {
        let has = has_already(index, key, locks);
        let taken_in = not_needed(index, key, wanted);
        let spares = in_the_home(index, key);
        let free: Vec<CopyId> = taken_in.iter().chain(&spares).copied().collect();
        let reserved = usize::from(choices.spares.unwrap_or(0));
        let (given, left) = free.split_at(free.len().saturating_sub(reserved));
        let mut given = given.iter();
        let mut dealt = Self::default();
        for (&recipient, &wants) in wanted.iter().filter(|&(&to, _)| to != Recipient::Spare) {
            let mut lacks = wants.saturating_sub(has.get(&recipient).copied().unwrap_or(0));
            while lacks > 0
                && let Some(&copy) = given.next()
            {
                dealt.handed_on.push((copy, recipient));
                lacks -= 1;
            }
            if lacks > 0 {
                dealt.cut.insert(recipient, lacks);
            }
        }
        let in_the_home = given.as_slice().len() + left.len();
        // Without a number chosen, a spare that is handed on need not be made up for.
        let gone = dealt.handed_on.len().saturating_sub(taken_in.len());
        let gone = if choices.spares.is_none() { gone } else { 0 };
        let wants = wanted.get(&Recipient::Spare).copied().unwrap_or(0);
        let lacks = wants.saturating_sub(count(in_the_home + gone));
        if lacks > 0 {
            dealt.cut.insert(Recipient::Spare, lacks);
        }
        dealt.taken_in = taken_in;
        dealt
    }
}

fn count(copies: usize) -> u32 {
    u32::try_from(copies).unwrap_or(u32::MAX)
}

/// How many copies of a key that stays need not be cut for these locks. One mislaid indoors may turn up;
/// but whoever carries another key to the locks today must not wait for that.
fn has_already(index: &Index<'_>, key: KeyId, locks: &[LockId]) -> BTreeMap<Recipient, u32> {
    let mut has = in_use(index, key);
    for (&recipient, count) in &mut has {
        let Recipient::Holder(holder) = recipient else {
            continue;
        };
        let (same, others): (Vec<KeyId>, Vec<KeyId>) =
            index.ring(holder).iter().partition(|&&held| held == key);
        let held = u32::try_from(same.len()).unwrap_or(u32::MAX);
        let opens = |other: &KeyId| {
            index
                .opened_by(*other)
                .iter()
                .any(|lock| locks.binary_search(lock).is_ok())
        };
        if held < *count && others.iter().any(opens) {
            *count = held;
        }
    }
    has
}

fn not_needed(index: &Index<'_>, key: KeyId, wanted: &BTreeMap<Recipient, u32>) -> Vec<CopyId> {
    let is_not_needed = |by: HolderId| !wanted.contains_key(&Recipient::Holder(by));
    copies_at(
        index,
        key,
        |place| matches!(place, Place::Held(by) if is_not_needed(by)),
    )
}

fn in_the_home(index: &Index<'_>, key: KeyId) -> Vec<CopyId> {
    copies_at(index, key, |place| matches!(place, Place::AtHome { .. }))
}

fn copies_at(index: &Index<'_>, key: KeyId, is_there: impl Fn(Place) -> bool) -> Vec<CopyId> {
    let copies = index.copies_of(key).iter().copied();
    let place = |copy: CopyId| index.household.copy(copy).map(|copy| copy.place);
    copies
        .filter(|&copy| place(copy).is_some_and(&is_there))
        .collect()
}
