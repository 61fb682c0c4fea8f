//! Ways of grouping the doors side by side: what each takes to set up, what everybody carries, and
//! what a lost ring would mean.

mod ring;

use std::collections::{BTreeMap, BTreeSet};

use super::grouping::{groups_of, own_locks};
use super::index::Index;
use super::kinds::Grouping;
use super::plan::{Choices, plan_with};
use super::{Group, HolderId, Household, LockId, Quantities};
use ring::{Ring, RingKey, keys_by};

/// One way of grouping the doors.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comparison {
    /// Which way.
    pub grouping: Grouping,
    /// The groups of the household's own locks.
    pub groups: Vec<Group>,
    /// How many different keys open the household's own locks.
    pub keys: usize,
    /// The locks to be seen to before it is so, those of exposed keys included.
    pub locks_to_set_up: usize,
    /// The same where no lock can be set to a key that stays.
    pub locks_at_most: usize,
    /// What that takes.
    pub set_up: Quantities,
    /// What it takes at most.
    pub set_up_at_most: Quantities,
    /// Everybody who carries a key or needs a door, in the order of their ids.
    pub holders: Vec<HolderComparison>,
}

/// What a way of grouping means for one holder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HolderComparison {
    /// Who.
    pub holder: HolderId,
    /// How many different keys they carry.
    pub keys_carried: usize,
    /// How many cylinders have to be rekeyed when their ring is lost.
    pub locks_if_lost: usize,
    /// How many doors their ring turns a lock of without need.
    pub doors_beyond_need: usize,
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

    /// Doors opened without need, over all rings.
    pub fn doors_beyond_need(&self) -> usize {
        self.numbers(|holder| holder.doors_beyond_need).sum()
    }

    /// Whether both come to the same in everything counted, for everybody.
    pub fn comes_to_the_same_as(&self, other: &Self) -> bool {
        self.keys == other.keys
            && self.locks_to_set_up == other.locks_to_set_up
            && self.set_up == other.set_up
            && self.set_up_at_most == other.set_up_at_most
            && self.holders == other.holders
    }

    fn numbers(&self, number: impl Fn(&HolderComparison) -> usize) -> impl Iterator<Item = usize> {
        self.holders.iter().map(number)
    }
}

/// The ways of grouping the doors, in the order of [`Grouping::ALL`].
///
/// As now counts what everybody carries today, and what they lost as if they carried it still: it is
/// replaced. The other groupings give everybody the keys to the doors they need, see
/// [`Group::carried_by`]. Keys to a
/// building's, landlord's or neighbour's locks are carried in each of them and count in each.
/// People who no longer should come in are left out: they carry nothing afterwards.
pub fn compare(household: &Household) -> Vec<Comparison> {
    let index = Index::of(household);
    let own = own_locks(&index).into_iter().collect();
    let all = Grouping::ALL.iter();
    all.map(|&grouping| comparison(&index, &own, grouping))
        .collect()
}

fn comparison(index: &Index<'_>, own: &BTreeSet<LockId>, grouping: Grouping) -> Comparison {
    let groups = groups_of(index, grouping);
    let keys = keys_by(index, own, grouping, &groups);
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    let set_up = plan_with(index, choices, &groups);
    let mut rings: BTreeMap<HolderId, Vec<&RingKey>> = BTreeMap::new();
    for key in &keys {
        for &holder in key.carried_by() {
            rings.entry(holder).or_default().push(key);
        }
    }
    let holders = index.household.holders().filter_map(|(holder, _)| {
        let ring = Ring::new(rings.remove(&holder).unwrap_or_default());
        let needs = index.needs(holder);
        if ring.is_empty() && needs.is_empty() {
            return None;
        }
        let doors = ring.doors();
        let needed = needs
            .iter()
            .filter(|door| doors.binary_search(door).is_ok());
        Some(HolderComparison {
            holder,
            keys_carried: ring.key_count(),
            locks_if_lost: ring.locks().len(),
            doors_beyond_need: doors.len() - needed.count(),
        })
    });
    let holders = holders.collect();
    let included = index.household.prices().copies_included;
    Comparison {
        grouping,
        keys: keys.iter().filter(|key| key.is_own()).count(),
        locks_to_set_up: set_up.works.len(),
        locks_at_most: set_up.locks_at_most(),
        set_up: set_up.quantities(included),
        set_up_at_most: set_up.quantities_at_most(included),
        holders,
        groups,
    }
}
