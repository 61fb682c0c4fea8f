//! Ways of grouping the doors side by side: what each takes to set up, what everybody carries, and
//! what a lost ring would mean.

mod ring;

use std::collections::{BTreeMap, BTreeSet};

use super::grouping::{groups_of, own_locks};
use super::index::Index;
use super::kinds::{Grouping, PriceItem};
use super::plan::{Choices, plan_with};
use super::remedy::{price_of, remedy};
use super::{Group, HolderId, Household, LockId, Priced, Quantities};
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
    /// What that takes.
    pub set_up: Quantities,
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
    /// How many copies have to be cut when their ring is lost.
    pub copies_if_lost: u64,
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
            && self.holders == other.holders
    }

    fn numbers(&self, number: impl Fn(&HolderComparison) -> usize) -> impl Iterator<Item = usize> {
        self.holders.iter().map(number)
    }
}

/// The ways of grouping the doors, in the order of [`Grouping::ALL`].
///
/// As now counts what everybody carries today, and what they lost as if they carried it still: it is
/// replaced. The other groupings give everybody the keys to the doors they need. Keys to a
/// building's, landlord's or neighbour's locks are carried in each of them and count in each.
/// People who no longer should come in are left out: they carry nothing afterwards.
pub fn compare(household: &Household) -> Vec<Comparison> {
    let index = Index::of(household);
    let own = own_locks(&index).into_iter().collect();
    let all = Grouping::ALL.iter();
    all.map(|&grouping| comparison(&index, &own, grouping))
        .collect()
}

/// What it takes to make good the loss of a holder's ring by one grouping: a visit, the locks, the
/// copies. By a grouping other than today's, each who needs a door has one copy of its key.
pub fn if_lost(household: &Household, grouping: Grouping, holder: HolderId) -> Quantities {
    let index = Index::of(household);
    let own = own_locks(&index).into_iter().collect();
    let keys = keys_by(&index, &own, grouping, &groups_of(&index, grouping));
    let ring = Ring::new(
        keys.iter()
            .filter(|key| key.is_carried_by(holder))
            .collect(),
    );
    let mut quantities = Quantities::default();
    for &lock in ring.locks().iter() {
        quantities.add(price_of_lock(&index, lock), 1);
    }
    if quantities.iter().any(|(what, _)| needs_a_visit(what)) {
        quantities.add(Priced::Item(PriceItem::CallOut), 1);
    }
    let included = u64::from(household.prices().copies_included);
    for copies in ring.own_copies() {
        quantities.add(
            Priced::Item(PriceItem::Copy),
            copies.saturating_sub(included),
        );
    }
    quantities
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
            copies_if_lost: ring.own_copies().sum(),
        })
    });
    let holders = holders.collect();
    Comparison {
        grouping,
        keys: keys.iter().filter(|key| key.is_own()).count(),
        locks_to_set_up: set_up.works.len(),
        set_up: set_up.quantities(index.household.prices().copies_included),
        holders,
        groups,
    }
}

fn price_of_lock(index: &Index<'_>, id: LockId) -> Priced {
    let lock = index.household.lock(id);
    let door = lock.and_then(|lock| index.household.door(lock.door));
    match (lock, door) {
        (Some(lock), Some(door)) => remedy(lock, door)
            .first()
            .map_or(Priced::ByOthers, |&action| price_of(action, lock.kind)),
        _ => Priced::ByOthers,
    }
}

fn needs_a_visit(what: Priced) -> bool {
    match what {
        Priced::Item(
            PriceItem::RekeyedCylinder | PriceItem::NewCylinder | PriceItem::LockOrLevers,
        )
        | Priced::RekeyedOrNew => true,
        Priced::Item(
            PriceItem::CallOut
            | PriceItem::CallOutAfterHours
            | PriceItem::SmallLock
            | PriceItem::Copy,
        )
        | Priced::CallOutAtAnyHour
        | Priced::ByOthers => false,
    }
}
