//! The household of the demonstration: a terraced house with a workshop behind it. Nobody lives
//! there, and every figure in it, the prices too, is invented.
//!
//! The house key opens front door and workshop, keyed alike, so that the neighbour with the spare
//! could walk into the workshop and the workshop partner into the house. One copy of it is
//! missing. The lodger's room still has the lock of the lodger before. A key safe at the back door
//! holds a back door key; the yard gate opens by remote.

use std::collections::BTreeSet;

use crate::advice::Urgency;

use super::kinds::{DoorKind, Inside, LockKind, Loss, Material, PriceItem, Role, WayKind};
use super::{
    Change, Door, DoorId, Finding, FoundExposure, Holder, HolderId, Household, Key, KeyCopy, KeyId,
    Lock, Place, PriceRange, Prices, Refusal, Way,
};

/// The invented household.
pub fn household() -> Household {
    furnished().unwrap_or_default()
}

fn furnished() -> Result<Household, Refusal> {
    let mut home = Builder(Household::empty());
    let house_key = home.key(Some(Finding {
        exposure: FoundExposure::Exposed(Urgency::Soon),
        safety_first: false,
    }))?;
    let kept = Finding {
        exposure: FoundExposure::NotExposed,
        safety_first: false,
    };
    let back_key = home.key(Some(kept))?;
    let room_key = home.key(None)?;
    let cabinet_key = home.key(None)?;
    let shed_key = home.key(Some(kept))?;

    let front = home.door(DoorKind::FrontDoor, Some(Material::Wood))?;
    let back = home.door(DoorKind::BackDoor, Some(Material::Plastic))?;
    let room = home.door(DoorKind::RoomDoor, Some(Material::Wood))?;
    let workshop = home.door(DoorKind::Workshop, Some(Material::Metal))?;
    let cabinet = home.door(DoorKind::Cabinet, None)?;
    let shed = home.door(DoorKind::Shed, Some(Material::Wood))?;
    let gate = home.door(DoorKind::Gate, Some(Material::Metal))?;

    home.lock(front, LockKind::PinTumbler, house_key, Inside::ThumbTurn)?;
    home.lock(back, LockKind::EuropeanProfile, back_key, Inside::Key)?;
    home.lock(room, LockKind::Lever, room_key, Inside::Key)?;
    home.lock(workshop, LockKind::PinTumbler, house_key, Inside::ThumbTurn)?;
    home.lock(cabinet, LockKind::SmallLock, cabinet_key, Inside::Nothing)?;
    home.lock(shed, LockKind::SmallLock, shed_key, Inside::Nothing)?;

    let all_but_the_room = [front, back, workshop, cabinet, shed, gate];
    let first = home.holder(Role::Resident, &all_but_the_room)?;
    let second = home.holder(Role::Resident, &all_but_the_room)?;
    let lodger = home.holder(Role::Lodger, &[front, back, room])?;
    let neighbour = home.holder(Role::Neighbour, &[front])?;
    let dog_walker = home.holder(Role::DogWalker, &[front])?;
    let sitter = home.holder(Role::Sitter, &[front, back])?;
    let partner = home.holder(Role::WorkshopPartner, &[workshop, cabinet, gate])?;
    let former = home.holder(Role::FormerOccupant, &[])?;
    home.make(Change::NoLongerShould {
        holder: former,
        no_longer: true,
    })?;

    for holder in [
        first, second, lodger, neighbour, dog_walker, sitter, partner,
    ] {
        home.copy(house_key, Place::Held(holder))?;
    }
    home.copy(
        house_key,
        Place::Lost {
            by: Some(second),
            loss: Loss::NotSaid,
            from_safe: None,
        },
    )?;
    for holder in [first, second, lodger] {
        home.copy(back_key, Place::Held(holder))?;
    }
    let safe = home.0.next_way();
    home.way(back, WayKind::KeySafe, &[first, second, sitter])?;
    home.copy(back_key, Place::InKeySafe(safe))?;
    home.way(gate, WayKind::Remote, &[first, second, partner])?;
    home.copy(room_key, Place::Held(lodger))?;
    let returned_by = Some(former);
    home.copy(room_key, Place::AtHome { returned_by })?;
    home.copy(cabinet_key, Place::Held(first))?;
    home.copy(cabinet_key, Place::Held(partner))?;
    home.copy(shed_key, Place::Held(first))?;
    home.copy(shed_key, Place::AtHome { returned_by: None })?;
    home.make(Change::SetPrices(prices()?))?;
    Ok(home.0)
}

/// Invented prices.
fn prices() -> Result<Prices, Refusal> {
    let told = [
        (PriceItem::CallOut, 60, 90),
        (PriceItem::CallOutAfterHours, 110, 180),
        (PriceItem::RekeyedCylinder, 18, 30),
        (PriceItem::NewCylinder, 35, 70),
        (PriceItem::LockOrLevers, 60, 110),
        (PriceItem::SmallLock, 10, 25),
        (PriceItem::Copy, 4, 9),
    ];
    told.into_iter()
        .try_fold(Prices::default(), |prices, (item, low, high)| {
            let price = PriceRange::new(low * 100, high * 100)?;
            Ok(prices.with(item, Some(price)))
        })
}

struct Builder(Household);

impl Builder {
    fn make(&mut self, change: Change) -> Result<(), Refusal> {
        self.0 = self.0.with(change)?;
        Ok(())
    }

    fn key(&mut self, finding: Option<Finding>) -> Result<KeyId, Refusal> {
        let id = self.0.next_key();
        self.make(Change::AddKey(Key {
            restricted: Some(false),
            finding,
            may_be_copied: None,
        }))?;
        Ok(id)
    }

    fn door(&mut self, kind: DoorKind, material: Option<Material>) -> Result<DoorId, Refusal> {
        let id = self.0.next_door();
        self.make(Change::AddDoor(Door {
            material,
            ..Door::of(kind)
        }))?;
        Ok(id)
    }

    fn lock(
        &mut self,
        door: DoorId,
        kind: LockKind,
        key: KeyId,
        inside: Inside,
    ) -> Result<(), Refusal> {
        self.make(Change::AddLock(Lock {
            inside: Some(inside),
            ..Lock::on(door, kind).opened_by(key)
        }))
    }

    fn holder(&mut self, role: Role, needs: &[DoorId]) -> Result<HolderId, Refusal> {
        let id = self.0.next_holder();
        self.make(Change::AddHolder(Holder {
            needs: Some(needs.iter().copied().collect()),
            ..Holder::of(role)
        }))?;
        Ok(id)
    }

    fn copy(&mut self, key: KeyId, place: Place) -> Result<(), Refusal> {
        self.make(Change::AddCopy(KeyCopy { key, place }))
    }

    fn way(&mut self, door: DoorId, kind: WayKind, known_by: &[HolderId]) -> Result<(), Refusal> {
        self.make(Change::AddWay(Way {
            known_by: known_by.iter().copied().collect::<BTreeSet<_>>(),
            ..Way::at(door, kind)
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn household_fits_together() {
        assert!(furnished().is_ok());
    }
}
