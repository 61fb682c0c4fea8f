//! What was lost asks for beside new locks and codes: the police, looking again, asking back.

use super::super::exposed::no_longer_should;
use super::super::index::Index;
use super::super::kinds::{Loss, WayKind, WhoDecides};
use super::super::remedy::{WhoActs, who_acts};
use super::super::{CopyId, Household, Place, Way, WayId};
use super::replace::lock_and_door;

/// What the copies and ways that are out ask for beside new locks and codes.
pub(super) struct Losses {
    /// Whether something was stolen, or lost with the address.
    pub(super) is_for_the_police: bool,
    /// The copies mislaid indoors.
    pub(super) mislaid: Vec<CopyId>,
    /// The ways in of which a remote was mislaid indoors.
    pub(super) mislaid_remotes: Vec<WayId>,
    /// The copies with people who should give them back.
    pub(super) to_get_back: Vec<CopyId>,
}

impl Losses {
    pub(super) fn of(index: &Index<'_>) -> Self {
        let household = index.household;
        let ways = household.ways();
        let is_own = |way: &Way| {
            let door = household.door(way.door);
            door.is_none_or(|door| door.who_decides == WhoDecides::Household)
        };
        let open = ways.filter(|(_, way)| way.reply.is_none() || is_own(way));
        let mut ways = open.flat_map(|(_, way)| way.losses());
        let mut losses = Self {
            is_for_the_police: ways.any(is_for_the_police),
            mislaid: Vec::new(),
            mislaid_remotes: mislaid_remotes(household),
            to_get_back: Vec::new(),
        };
        for (id, copy) in household.copies() {
            let opens_something = !index.opened_by(copy.key).is_empty();
            // Once everybody who decides about its locks was told, the household's own part is done.
            let opened = index.opened_by(copy.key).iter();
            let mut opened = opened.filter_map(|&lock| lock_and_door(index, lock));
            let is_open = opened.any(|(lock, door)| {
                lock.reply.is_none() || who_acts(lock, door) == WhoActs::Household
            });
            match copy.place {
                Place::Held(holder) if no_longer_should(household, holder) && is_open => {
                    losses.to_get_back.push(id);
                }
                Place::Lost { loss, .. } if opens_something => {
                    losses.is_for_the_police |= is_open && is_for_the_police(loss);
                    match loss {
                        Loss::MislaidIndoors => losses.mislaid.push(id),
                        Loss::NotReturned if is_open => losses.to_get_back.push(id),
                        Loss::NotReturned
                        | Loss::NotSaid
                        | Loss::FarAway
                        | Loss::NearHome
                        | Loss::WithTheAddress
                        | Loss::Stolen => {}
                    }
                }
                Place::Held(_)
                | Place::Lost { .. }
                | Place::InKeySafe(_)
                | Place::AtHome { .. }
                | Place::Scrapped { .. } => {}
            }
        }
        losses
    }
}

fn mislaid_remotes(household: &Household) -> Vec<WayId> {
    let ways = household.ways();
    let is_mislaid = |way: &Way| {
        let mut losses = way.losses();
        way.kind == WayKind::Remote && losses.any(|loss| loss == Loss::MislaidIndoors)
    };
    ways.filter(|(_, way)| is_mislaid(way))
        .map(|(id, _)| id)
        .collect()
}

const fn is_for_the_police(loss: Loss) -> bool {
    matches!(loss, Loss::WithTheAddress | Loss::Stolen)
}
