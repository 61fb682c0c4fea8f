//! Where what people can open and what they need part.

use std::collections::BTreeSet;

use super::index::Index;
use super::{DoorId, HolderId, Household, Reach};

/// One holder whose reach and needs part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gap {
    /// Who.
    pub holder: HolderId,
    /// Doors they need and cannot open. Where nobody has said what they need, a door of which they have one
    /// lock's key of several is none.
    pub without: Vec<DoorId>,
    /// Doors they can open and do not need.
    pub beyond: Vec<DoorId>,
}

/// Everybody whose reach and needs part, in the order of their ids. Ask it of the household today,
/// or after a plan.
pub fn gaps(household: &Household) -> Vec<Gap> {
    let index = Index::of(household);
    let all = household.holders().map(|(holder, _)| {
        let opened: BTreeSet<DoorId> = Reach::of_holder(&index, holder).opened().collect();
        let needs = index.needs(holder);
        Gap {
            holder,
            without: {
                let has_to_enter = index.has_to_enter(holder);
                has_to_enter.filter(|door| !opened.contains(door)).collect()
            },
            beyond: opened.difference(needs).copied().collect(),
        }
    });
    all.filter(|gap| !gap.without.is_empty() || !gap.beyond.is_empty())
        .collect()
}
