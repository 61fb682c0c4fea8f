//! Keys and doors: who holds what, what a lost key opens, what has to be rekeyed, and for whom the
//! new keys are.
//!
//! A [`Household`] is a value. Every change gives a new one or a [`Refusal`]; the old one stays as
//! it was, so that undo is a list of values, see [`History`]. Cloning is cheap: unchanged parts are
//! shared.
//!
//! | To | Use |
//! |---|---|
//! | start | [`Household::empty`], [`quick`] for ordinary homes, [`demonstration`] for the example |
//! | change it | [`Household::with`] and [`Change`]; ids of what will be added next: [`Household::next_door`] and its like |
//! | undo and redo | [`History`] |
//! | take over what a check found | [`Finding::of`], [`Change::Check`] |
//! | say that a copy or ring is lost | [`Change::Lose`], [`Change::LoseRing`] |
//! | ask what opens to whom | [`Household::reach_of_copy`], [`Household::reach_of_ring`], [`Household::reach_of_holder`] |
//! | ask which keys are exposed and why | [`exposed_keys`] |
//! | ask which other ways in have to be changed | [`ways_to_change`] |
//! | plan | [`plan()`]; after the visit: [`Plan::carried_out_by`] those who acted |
//! | see who opens more or less than they need | [`gaps()`] |
//! | compare ways of grouping the doors | [`groups()`], [`compare()`] |
//! | ask what it costs | [`Prices`], [`Plan::cost`] |
//! | print the page for the locksmith | [`brief()`] |
//! | keep it | [`file::export`], [`file::import`] |
//!
//! ```
//! use self_check_core::household::*;
//! use self_check_core::advice::Action;
//!
//! let home = quick::two_doors_alike(LockKind::PinTumbler, &[Role::Resident, Role::Neighbour])?;
//! let (neighbour, _) = home.holders().find(|(_, holder)| holder.role == Role::Neighbour).ok_or("a neighbour")?;
//! let home = home.with(Change::LoseRing { holder: neighbour, loss: Loss::NearHome })?;
//! let plan = plan(&home, Choices::default());
//! assert_eq!(plan.works.len(), 2, "keyed alike: one loss is both doors");
//! assert!(plan.works.iter().all(|work| work.actions == [Action::RekeyCylinder]));
//! assert!(exposed_keys(&plan.carried_out(&home)?).is_empty());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! What is absent is absent on purpose: no name, no address, no code, no depth of a cut. A key is
//! known by the locks it opens, a person by what they are to the household.

pub mod brief;
mod change;
pub mod compare;
pub mod demonstration;
mod exposed;
pub mod file;
mod gaps;
mod grouping;
mod history;
mod index;
mod kinds;
mod label;
mod limits;
mod parts;
pub mod plan;
mod prices;
mod put;
pub mod quick;
mod reach;
mod refusal;
pub mod remedy;
mod restricted;

use std::collections::BTreeMap;
use std::sync::Arc;

pub use brief::{Brief, BriefChoices, SafetyFirst, brief};
pub use change::Change;
pub use compare::{ComparedKey, Comparison, HolderComparison, compare};
pub use exposed::{ExposedBy, ExposedKey, Finding, FoundExposure, exposed_keys, ways_to_change};
pub use gaps::{Gap, gaps};
pub use grouping::{Group, groups};
pub use history::History;
pub use kinds::{
    Arrangement, DoorKind, Grouping, Inside, LockKind, Loss, Material, PriceItem, Reply, Role,
    WayKind, WhoDecides,
};
pub use label::{Label, LabelRefusal};
pub use limits::Limit;
pub use parts::{CylinderLengths, Door, Holder, Key, KeyCopy, Keyway, Lock, Place, Way};
pub use plan::{Choices, Otherwise, Plan, plan};
pub use prices::{Cost, CostLine, PriceRange, PriceRefusal, Priced, Prices, Quantities, TooMuch};
pub use reach::{DoorReach, Opening, Reach};
pub use refusal::Refusal;

/// Doors, locks, keys, copies and people, all parts fitting together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Household {
    next: u32,
    doors: Arc<BTreeMap<DoorId, Door>>,
    locks: Arc<BTreeMap<LockId, Lock>>,
    keys: Arc<BTreeMap<KeyId, Key>>,
    copies: Arc<BTreeMap<CopyId, KeyCopy>>,
    holders: Arc<BTreeMap<HolderId, Holder>>,
    ways: Arc<BTreeMap<WayId, Way>>,
    prices: Arc<Prices>,
}

macro_rules! parts {
    ($($(#[$doc:meta])* $id:ident $part:ident $section:ident $one:ident $next:ident;)*) => {
        $($(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $id(u32);

        impl $id {
            /// The id of this number, as read from a form field or a record.
            pub const fn new(number: u32) -> Self {
                Self(number)
            }

            /// Its number.
            pub const fn number(self) -> u32 {
                self.0
            }
        })*

        impl Household {
            $(/// Every one with its id, in the order in which they were added.
            pub fn $section(&self) -> impl ExactSizeIterator<Item = ($id, &$part)> + Clone {
                self.$section.iter().map(|(&id, part)| (id, part))
            }

            /// The one with this id.
            pub fn $one(&self, id: $id) -> Option<&$part> {
                self.$section.get(&id)
            }

            /// The id that the next part added will have, if it is one of these. Every part added
            /// takes the next number, so ask just before adding.
            pub const fn $next(&self) -> $id {
                $id(self.next)
            })*
        }
    };
}

parts! {
    /// A door of one household.
    DoorId Door doors door next_door;
    /// A lock of one household.
    LockId Lock locks lock next_lock;
    /// A key of one household.
    KeyId Key keys key next_key;
    /// A copy of one household.
    CopyId KeyCopy copies copy next_copy;
    /// A holder of one household.
    HolderId Holder holders holder next_holder;
    /// A way in of one household.
    WayId Way ways way next_way;
}

impl Household {
    /// No door, no key, nobody.
    pub fn empty() -> Self {
        Self {
            next: 1,
            doors: Arc::default(),
            locks: Arc::default(),
            keys: Arc::default(),
            copies: Arc::default(),
            holders: Arc::default(),
            ways: Arc::default(),
            prices: Arc::default(),
        }
    }

    /// Whether there is nothing in it.
    pub fn is_empty(&self) -> bool {
        self.doors.is_empty()
            && self.locks.is_empty()
            && self.keys.is_empty()
            && self.copies.is_empty()
            && self.holders.is_empty()
            && self.ways.is_empty()
            && *self.prices == Prices::default()
    }

    /// The locks on a door.
    pub fn locks_of(&self, door: DoorId) -> impl Iterator<Item = (LockId, &Lock)> {
        self.locks().filter(move |(_, lock)| lock.door == door)
    }

    /// The copies of a key, wherever they are.
    pub fn copies_of(&self, key: KeyId) -> impl Iterator<Item = (CopyId, &KeyCopy)> {
        self.copies().filter(move |(_, copy)| copy.key == key)
    }

    /// The copies on a holder's ring.
    pub fn ring_of(&self, holder: HolderId) -> impl Iterator<Item = (CopyId, &KeyCopy)> {
        self.copies()
            .filter(move |(_, copy)| copy.place == Place::Held(holder))
    }

    /// The household's own prices.
    pub fn prices(&self) -> &Prices {
        &self.prices
    }

    /// Whether a check told of a person who makes somebody uneasy. Then safety comes first: nothing
    /// offers to keep, print or copy, or to ask for copies back.
    pub fn puts_safety_first(&self) -> bool {
        self.keys()
            .filter_map(|(_, key)| key.finding)
            .any(|finding| finding.safety_first)
    }
}

impl Default for Household {
    fn default() -> Self {
        Self::empty()
    }
}
