//! Ways of grouping the doors side by side: what each costs to set up, what everybody carries, and
//! what a lost ring would mean.

use std::collections::{BTreeMap, BTreeSet};

use super::exposed::no_longer_should;
use super::grouping::{groups_of, own_locks};
use super::index::Index;
use super::kinds::{Grouping, PriceItem};
use super::plan::{Choices, plan};
use super::remedy::{price_of, remedy};
use super::{DoorId, Group, HolderId, Household, KeyId, LockId, Priced, Quantities};

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
    let shared = Shared::of(&index);
    Grouping::ALL
        .iter()
        .map(|&grouping| shared.comparison(&index, grouping))
        .collect()
}

/// What a holder's ring costs by one grouping: the cylinders by price and the copies.
pub fn if_lost(household: &Household, grouping: Grouping, holder: HolderId) -> Quantities {
    let index = Index::of(household);
    let shared = Shared::of(&index);
    let keys = shared.keys_by(&index, grouping);
    let ring = Ring::of(&keys, holder);
    let mut quantities = Quantities::default();
    for &lock in &ring.locks {
        quantities.add(price_of_lock(&index, lock), 1);
    }
    if quantities.iter().any(|(what, _)| needs_a_visit(what)) {
        quantities.add(Priced::Item(PriceItem::CallOut), 1);
    }
    let included = u64::from(household.prices().copies_included);
    for key in ring.own_keys(&keys) {
        let charged = key.copies.saturating_sub(included);
        quantities.add(Priced::Item(PriceItem::Copy), charged);
    }
    quantities
}

/// What all groupings share.
struct Shared {
    own: BTreeSet<LockId>,
    needs: BTreeMap<HolderId, BTreeSet<DoorId>>,
}

/// A key as one grouping has it: what it opens and how many copies of it there are.
struct GroupKey {
    locks: Vec<LockId>,
    copies: u64,
    is_own: bool,
    carried_by: Vec<HolderId>,
}

/// What one holder carries by one grouping.
struct Ring {
    keys: Vec<usize>,
    locks: Vec<LockId>,
}

impl Shared {
    fn of(index: &Index<'_>) -> Self {
        let holders = index.household.holders();
        let stay = holders.filter(|(_, holder)| !holder.no_longer_should);
        Self {
            own: own_locks(index).into_iter().collect(),
            needs: stay.map(|(id, _)| (id, index.needs(id))).collect(),
        }
    }

    fn comparison(&self, index: &Index<'_>, grouping: Grouping) -> Comparison {
        let keys = self.keys_by(index, grouping);
        let set_up = plan(
            index.household,
            Choices {
                grouping,
                ..Choices::default()
            },
        );
        let mut carried: BTreeMap<HolderId, Vec<usize>> = BTreeMap::new();
        for (number, key) in keys.iter().enumerate() {
            for &holder in &key.carried_by {
                carried.entry(holder).or_default().push(number);
            }
        }
        let people = self
            .needs
            .iter()
            .filter(|(holder, needs)| !needs.is_empty() || carried.contains_key(holder));
        let holders = people.map(|(&holder, needs)| {
            let ring = Ring::with(&keys, carried.get(&holder).cloned().unwrap_or_default());
            let doors: BTreeSet<DoorId> = ring
                .locks
                .iter()
                .filter_map(|&lock| index.door_of(lock))
                .collect();
            HolderComparison {
                holder,
                keys_carried: ring.keys.len(),
                locks_if_lost: ring.locks.len(),
                doors_beyond_need: doors.difference(needs).count(),
                copies_if_lost: ring.own_keys(&keys).map(|key| key.copies).sum(),
            }
        });
        Comparison {
            grouping,
            groups: groups_of(index, grouping),
            keys: keys.iter().filter(|key| key.is_own).count(),
            locks_to_set_up: set_up.works.len(),
            set_up: set_up.quantities(index.household.prices().copies_included),
            holders: holders.collect(),
        }
    }

    /// The keys by one grouping: those of the groups, and the keys to others' locks as they are.
    fn keys_by(&self, index: &Index<'_>, grouping: Grouping) -> Vec<GroupKey> {
        let mut keys = self.keys_as_now(index, |locks| match grouping {
            Grouping::AsNow => locks.to_vec(),
            Grouping::AllAlike | Grouping::ByNeed => {
                let others = locks.iter().filter(|lock| !self.own.contains(lock));
                others.copied().collect()
            }
        });
        if grouping != Grouping::AsNow {
            keys.extend(
                groups_of(index, grouping)
                    .into_iter()
                    .map(|group| GroupKey {
                        copies: group.needed_by.len().max(1) as u64,
                        carried_by: group.needed_by,
                        locks: group.locks,
                        is_own: true,
                    }),
            );
        }
        keys
    }

    fn keys_as_now(
        &self,
        index: &Index<'_>,
        opens: impl Fn(&[LockId]) -> Vec<LockId>,
    ) -> Vec<GroupKey> {
        let mut carried_by: BTreeMap<KeyId, Vec<HolderId>> = BTreeMap::new();
        for &holder in self.needs.keys() {
            for key in index.whole_ring(holder) {
                carried_by.entry(key).or_default().push(holder);
            }
        }
        let keys = index.household.keys();
        keys.map(|(key, _)| {
            let locks = opens(index.opened_by(key));
            GroupKey {
                copies: copies_in_use(index, key),
                is_own: locks.iter().any(|lock| self.own.contains(lock)),
                carried_by: carried_by.remove(&key).unwrap_or_default(),
                locks,
            }
        })
        .filter(|key| !key.locks.is_empty())
        .collect()
    }
}

impl Ring {
    fn of(keys: &[GroupKey], holder: HolderId) -> Self {
        let carried = keys.iter().enumerate();
        let carried = carried.filter(|(_, key)| key.carried_by.contains(&holder));
        Self::with(keys, carried.map(|(number, _)| number).collect())
    }

    fn with(keys: &[GroupKey], carried: Vec<usize>) -> Self {
        let opened = carried.iter().filter_map(|&number| keys.get(number));
        let mut locks: Vec<LockId> = opened.flat_map(|key| key.locks.iter().copied()).collect();
        locks.sort_unstable();
        locks.dedup();
        Self {
            keys: carried,
            locks,
        }
    }

    fn own_keys<'k>(&'k self, keys: &'k [GroupKey]) -> impl Iterator<Item = &'k GroupKey> {
        let carried = self.keys.iter().filter_map(|&number| keys.get(number));
        carried.filter(|key| key.is_own)
    }
}

fn copies_in_use(index: &Index<'_>, key: KeyId) -> u64 {
    let copies = index.copies_of(key).iter();
    let places = copies.filter_map(|&copy| index.household.copy(copy));
    let in_use = places.filter(|copy| match copy.place {
        super::Place::Scrapped { .. } => false,
        place => place
            .had_by()
            .is_none_or(|holder| !no_longer_should(index.household, holder)),
    });
    in_use.count().max(1) as u64
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
        | Priced::ByOthers => false,
    }
}
