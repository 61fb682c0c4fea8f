//! A small estate, for measuring: blocks of flats with entrances in a building's system, sheds and
//! stores of the household's own, people who need a few doors and some who need many.

use std::collections::BTreeSet;

use self_check_core::household::*;

/// How large.
#[derive(Clone, Copy, Debug)]
pub struct Size {
    pub doors: usize,
    pub copies: usize,
    pub holders: usize,
}

impl Size {
    /// About 500 doors, 2,000 copies and 300 holders.
    pub const SMALL_ESTATE: Self = Self {
        doors: 500,
        copies: 2_000,
        holders: 300,
    };

    /// A part of the small estate.
    pub const fn hundredths(hundredths: usize) -> Self {
        let full = Self::SMALL_ESTATE;
        Self {
            doors: full.doors * hundredths / 100,
            copies: full.copies * hundredths / 100,
            holders: full.holders * hundredths / 100,
        }
    }
}

/// An estate of this size, with a ring in a hundred lost and somebody in fifty who no longer should
/// come in. Every door has a lock, every tenth belongs to the building's system, every fourth is
/// master keyed.
pub fn estate(size: Size) -> Result<Household, Refusal> {
    let mut changes = Vec::new();
    let mut next = 1;
    let mut id = || {
        next += 1;
        next - 1
    };
    let doors: Vec<DoorId> = (0..size.doors)
        .map(|number| {
            let kind = DoorKind::ALL[number % DoorKind::ALL.len()];
            changes.push(Change::AddDoor(Door::of(kind)));
            DoorId::new(id())
        })
        .collect();
    let keys: Vec<KeyId> = (0..=size.doors / 2)
        .map(|_| {
            changes.push(Change::AddKey(Key::default()));
            KeyId::new(id())
        })
        .collect();
    let master = keys[0];
    for (number, &door) in doors.iter().enumerate() {
        let kind = if number % 10 == 9 {
            LockKind::BuildingSystem
        } else {
            [LockKind::PinTumbler, LockKind::EuropeanProfile][number % 2]
        };
        let own = keys[1 + number / 2 % (keys.len() - 1)];
        let is_master_keyed = number % 4 == 3;
        let mut lock = Lock::on(door, kind).opened_by(own);
        if is_master_keyed {
            lock.arrangement = Arrangement::MasterKeyed;
            lock.keys = BTreeSet::from([own, master]);
        }
        changes.push(Change::AddLock(lock));
        id();
    }
    let holders: Vec<HolderId> = (0..size.holders)
        .map(|number| {
            let many = if number % 20 == 0 { doors.len() / 3 } else { 6 };
            let needed = (0..many).map(|step| doors[(number * 7 + step * 3) % doors.len()]);
            changes.push(Change::AddHolder(Holder {
                needs: Some(needed.collect()),
                no_longer_should: number % 50 == 49,
                ..Holder::of(Role::ALL[number % Role::ALL.len()])
            }));
            HolderId::new(id())
        })
        .collect();
    for number in 0..size.copies {
        let key = keys[number * 7 % keys.len()];
        let holder = holders[number % holders.len()];
        let is_lost = number % holders.len() % 100 == 17;
        changes.push(Change::AddCopy(KeyCopy {
            key,
            place: if is_lost {
                Place::Lost {
                    by: Some(holder),
                    loss: Loss::NearHome,
                    from_safe: None,
                }
            } else {
                Place::Held(holder)
            },
        }));
    }
    Household::empty().with_all(changes)
}

#[test]
fn part_of_the_estate_is_as_large_a_part_of_everything() {
    let quarter = estate(Size::hundredths(25)).unwrap();
    assert_eq!(
        (
            quarter.doors().len(),
            quarter.copies().len(),
            quarter.holders().len()
        ),
        (125, 500, 75)
    );
}

#[test]
fn estate_has_the_size_asked_for() {
    let estate = estate(Size::SMALL_ESTATE).unwrap();
    assert_eq!(
        (
            estate.doors().len(),
            estate.copies().len(),
            estate.holders().len()
        ),
        (500, 2_000, 300)
    );
    let plan = plan(&estate, Choices::default());
    assert!(
        plan.works.len() > 5 && plan.works.len() < 400,
        "{}",
        plan.works.len()
    );
}
