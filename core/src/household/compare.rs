//! Ways of grouping the doors side by side: what each takes to set up, what everybody carries, and
//! what a lost ring would mean.

mod ring;

use std::collections::BTreeSet;

use super::grouping::{groups_of, own_locks};
use super::index::Index;
use super::kinds::Grouping;
use super::plan::{Choices, plan_with};
use super::{DoorId, HolderId, Household, LockId, Quantities, WayId};
use ring::Rings;

/// One way of grouping the doors.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comparison {
    /// Which way.
    pub grouping: Grouping,
    /// The different keys that open something, whoever has one; the household's own first.
    pub keys: Vec<ComparedKey>,
    /// The household's own locks to which there is no key.
    pub keyless: Vec<LockId>,
    /// The key safes by which a door opens once it is so that nobody could enter by them before, see
    /// [`Note::OpensMoreBySafe`](super::plan::Note::OpensMoreBySafe); in the order of the ids.
    pub opens_more: Vec<(WayId, DoorId)>,
    /// The locks to be seen to before it is so, those of exposed keys included.
    pub locks_to_set_up: usize,
    /// The same where no lock can be set to a key that stays.
    pub locks_at_most: usize,
    /// What that takes.
    pub set_up: Quantities,
    /// What it takes at most.
    pub set_up_at_most: Quantities,
    /// Everybody who carries a key, needs a door or gets in by a way, in the order of their ids.
    pub holders: Vec<HolderComparison>,
}

/// A key as a way of grouping has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ComparedKey {
    /// The locks it opens; never empty, in the order of their ids.
    pub locks: Vec<LockId>,
    /// Whether it opens a lock the household decides about.
    pub is_own: bool,
}

/// What a way of grouping means for one holder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HolderComparison {
    /// Who.
    pub holder: HolderId,
    /// How many different keys they carry.
    pub keys_carried: usize,
    /// How many of these count though today they are lost.
    pub missing: usize,
    /// How many cylinders have to be rekeyed when their ring is lost.
    pub locks_if_lost: usize,
    /// How many doors open to them without need, as [`super::gaps()`] counts.
    pub doors_beyond_need: usize,
    /// How many doors they need and cannot open, as [`super::gaps()`] counts.
    pub doors_without: usize,
}

impl Comparison {
    /// The most cylinders that one lost ring would cost.
    pub fn most_locks_if_lost(&self) -> usize {
        self.numbers(|holder| holder.locks_if_lost)
            .max()
            .unwrap_or(0)
    }

    /// The most keys that anybody carries.
    pub fn most_keys_carried(&self) -> usize {
        self.numbers(|holder| holder.keys_carried)
            .max()
            .unwrap_or(0)
    }

    /// Doors that open without need, over everybody.
    pub fn doors_beyond_need(&self) -> usize {
        self.numbers(|holder| holder.doors_beyond_need).sum()
    }

    /// Doors that people need and cannot open, over everybody.
    pub fn doors_without(&self) -> usize {
        self.numbers(|holder| holder.doors_without).sum()
    }

    /// Whether both come to the same in everything counted, for everybody.
    pub fn comes_to_the_same_as(&self, other: &Self) -> bool {
        let holders = |way: &Self| -> Vec<HolderComparison> {
            let all = way.holders.iter();
            all.map(|&holder| HolderComparison {
                missing: 0,
                ..holder
            })
            .collect()
        };
        self.keys.len() == other.keys.len()
            && self.locks_to_set_up == other.locks_to_set_up
            && self.set_up == other.set_up
            && self.set_up_at_most == other.set_up_at_most
            && holders(self) == holders(other)
    }

    fn numbers(&self, number: impl Fn(&HolderComparison) -> usize) -> impl Iterator<Item = usize> {
        self.holders.iter().map(number)
    }
}

/// The ways of grouping the doors, in the order of [`Grouping::ALL`].
///
/// As now counts what everybody carries today, and what they lost of keys to doors they need as if they
/// carried it still: it is replaced or turns up. The other groupings give everybody the keys to the
/// doors they need, see [`Group::carried_by`](super::Group::carried_by), so that as now somebody may carry
/// fewer keys only because they lack one: [`HolderComparison::doors_without`]. Keys to a building's,
/// landlord's or neighbour's locks are carried in each of them and count in each.
///
/// What opens to somebody is counted as [`super::gaps()`] counts: with the ways in they know and the keys in
/// key safes, and only where every lock turns. What went from a key safe counts as put back.
/// People who no longer should come in are left out: they carry nothing afterwards.
pub fn compare(household: &Household) -> Vec<Comparison> {
    let index = Index::of(household);
    let own = own_locks(&index).into_iter().collect();
    let all = Grouping::ALL.iter();
    all.map(|&grouping| comparison(&index, &own, grouping))
        .collect()
}

fn comparison(index: &Index<'_>, own: &BTreeSet<LockId>, grouping: Grouping) -> Comparison {
    let household = index.household;
    let groups = groups_of(index, grouping);
    let rings = Rings::of(index, own, grouping, &groups);
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    let set_up = plan_with(index, choices, &groups);
    let holders = household.holders().filter_map(|(holder, part)| {
        let ring = rings.ring(index, holder);
        let needs = index.needs(holder);
        let is_left_out = ring.doors.is_empty() && ring.keys_carried == 0 && needs.is_empty();
        if part.no_longer_should || is_left_out {
            return None;
        }
        let needed = needs
            .iter()
            .filter(|door| ring.doors.binary_search(door).is_ok());
        let needed = needed.count();
        let has_to_enter = index.has_to_enter(holder);
        let without = has_to_enter.filter(|door| ring.doors.binary_search(door).is_err());
        Some(HolderComparison {
            holder,
            keys_carried: ring.keys_carried,
            missing: ring.missing,
            locks_if_lost: ring.locks,
            doors_beyond_need: ring.doors.len() - needed,
            doors_without: without.count(),
        })
    });
    let holders = holders.collect();
    let is_keyless = |lock: &LockId| {
        let lock = household.lock(*lock);
        grouping == Grouping::AsNow && lock.is_some_and(|lock| lock.keys.is_empty())
    };
    let included = household.prices().copies_included;
    let mut keys = rings.into_keys();
    keys.sort_by_key(|key| !key.is_own);
    Comparison {
        grouping,
        keys,
        keyless: own.iter().copied().filter(is_keyless).collect(),
        opens_more: set_up.opens_more_by_safes(),
        locks_to_set_up: set_up.works.len(),
        locks_at_most: set_up.locks_at_most(),
        set_up: set_up.quantities(included),
        set_up_at_most: set_up.quantities_at_most(included),
        holders,
    }
}
