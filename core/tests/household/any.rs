//! Any household: whatever a run of changes makes of an empty one, refused changes left out.

use proptest::collection::vec;
use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::*;

/// A change in numbers; which parts they mean depends on the household.
pub type Raw = (u8, u16, u16, u16);

pub fn raw_changes(most: usize) -> impl Strategy<Value = Vec<Raw>> {
    vec(
        (0_u8..41, any::<u16>(), any::<u16>(), any::<u16>()),
        0..most,
    )
}

/// A household of up to `most` changes.
pub fn household(most: usize) -> impl Strategy<Value = Household> {
    raw_changes(most).prop_map(|changes| grown(&changes))
}

pub fn grown(changes: &[Raw]) -> Household {
    changes.iter().fold(Household::empty(), |home, &raw| {
        let change = meant(&home, raw);
        home.with(change).unwrap_or(home)
    })
}

fn pick<T: Copy>(from: &[T], number: u16) -> T {
    from[usize::from(number) % from.len()]
}

/// An id of the list, or one that nobody has.
fn one<I>(ids: impl ExactSizeIterator<Item = I>, number: u16, unknown: I) -> I {
    let count = ids.len();
    let mut ids = ids;
    if count == 0 || number % 31 == 30 {
        return unknown;
    }
    ids.nth(usize::from(number) % count).unwrap_or(unknown)
}

fn label(number: u16) -> Option<Label> {
    let texts = [
        "garden",
        "upstairs 2",
        "ключ",
        "\"quoted\\\"",
        "北の扉",
        "é\u{301}",
    ];
    number
        .is_multiple_of(3)
        .then(|| Label::new(pick(&texts, number / 3)).unwrap())
}

fn maybe<T: Copy>(from: &[T], number: u16) -> Option<T> {
    number.is_multiple_of(2).then(|| pick(from, number / 2))
}

/// What the numbers mean in this household. Adding comes often, so that it grows.
pub fn meant(home: &Household, (kind, a, b, c): Raw) -> Change {
    let door = |number| one(home.doors().map(|(id, _)| id), number, DoorId::new(900_000));
    let lock = |number| one(home.locks().map(|(id, _)| id), number, LockId::new(900_000));
    let key = |number| one(home.keys().map(|(id, _)| id), number, KeyId::new(900_000));
    let copy = |number| {
        one(
            home.copies().map(|(id, _)| id),
            number,
            CopyId::new(900_000),
        )
    };
    let holder = |number| {
        one(
            home.holders().map(|(id, _)| id),
            number,
            HolderId::new(900_000),
        )
    };
    let way = |number| one(home.ways().map(|(id, _)| id), number, WayId::new(900_000));
    let new_door = || Door {
        kind: pick(DoorKind::ALL, a),
        label: label(b),
        who_decides: if c % 5 == 0 {
            pick(WhoDecides::ALL, c / 5)
        } else {
            WhoDecides::Household
        },
        material: maybe(Material::ALL, c),
    };
    let new_lock = || Lock {
        door: door(a),
        kind: pick(LockKind::ALL, b),
        keys: [key(b), key(c)]
            .into_iter()
            .take(usize::from(c % 3))
            .collect(),
        arrangement: pick(Arrangement::ALL, b / 7),
        inside: maybe(Inside::ALL, c),
        keyway: (a % 2 == 0).then(|| Keyway::new(1 + (b % 3) as u8).unwrap()),
        lengths: (b % 4 == 0).then(|| CylinderLengths::new(30, 35).unwrap()),
        reply: maybe(Reply::ALL, b),
    };
    let place = || match b % 6 {
        0 | 1 => Place::Held(holder(c)),
        2 => Place::InKeySafe(way(c)),
        3 => Place::AtHome {
            returned_by: (c % 2 == 0).then(|| holder(c / 2)),
        },
        4 => Place::Lost {
            by: (c % 2 == 0).then(|| holder(c / 2)),
            loss: pick(Loss::ALL, c),
            from_safe: (c % 5 == 0).then(|| way(c)),
        },
        _ => Place::Scrapped {
            by: (c % 2 == 0).then(|| holder(c / 2)),
        },
    };
    let new_holder = || Holder {
        role: pick(Role::ALL, a),
        label: label(b),
        no_longer_should: c % 6 == 0,
        needs: (c % 3 == 0).then(|| [door(a), door(b)].into_iter().collect()),
    };
    let new_way = || Way {
        door: door(a),
        kind: pick(WayKind::ALL, b),
        known_by: [holder(b), holder(c)]
            .into_iter()
            .take(usize::from(c % 3))
            .collect(),
        given_away: (c % 7 == 0).then(|| pick(Loss::ALL, b)),
        is_assumed: b % 2 == 0,
        lost_by: (a % 7 == 0)
            .then(|| (holder(c), pick(Loss::ALL, a)))
            .into_iter()
            .collect(),
        reply: maybe(Reply::ALL, c),
    };
    let finding = || {
        (a % 3 > 0).then_some(Finding {
            exposure: match b % 6 {
                0 => FoundExposure::Exposed(Urgency::WhenConvenient),
                1 => FoundExposure::Exposed(Urgency::Today),
                2 => FoundExposure::CannotTell,
                _ => FoundExposure::NotExposed,
            },
            safety_first: false,
        })
    };
    let price = || {
        let low = u64::from(a);
        (c % 4 > 0).then(|| PriceRange::new(low, low + u64::from(c)).unwrap())
    };
    match kind {
        0..=3 => Change::AddDoor(new_door()),
        4..=8 => Change::AddLock(new_lock()),
        9..=11 => Change::AddKey(Key {
            restricted: maybe(&[true, false], a),
            finding: finding(),
            may_be_copied: (c % 9 == 0).then(|| pick(&[Urgency::WhenConvenient, Urgency::Soon], a)),
        }),
        12..=18 => Change::AddCopy(KeyCopy {
            key: key(a),
            place: place(),
        }),
        19..=21 => Change::AddHolder(new_holder()),
        22 => Change::AddWay(new_way()),
        23 => Change::SetDoor(door(b), new_door()),
        24 => Change::SetLock(lock(c), new_lock()),
        25 => Change::SetHolder(holder(b), new_holder()),
        26 => Change::SetWay(way(c), new_way()),
        27 => Change::Opens {
            key: key(a),
            door: door(b),
            opens: c % 4 > 0,
        },
        39 => Change::OpensLock {
            key: key(a),
            lock: lock(b),
            opens: c % 4 > 0,
        },
        28 => Change::Give {
            key: key(a),
            to: holder(b),
            copies: c % 4,
        },
        29 => Change::Move {
            copy: copy(a),
            to: place(),
        },
        30 => Change::Lose {
            copy: copy(a),
            loss: pick(Loss::ALL, b),
        },
        31 => Change::LoseRing {
            holder: holder(a),
            loss: pick(Loss::ALL, b),
        },
        32 => Change::Check {
            key: key(b),
            finding: finding(),
        },
        33 => Change::Needs {
            holder: holder(a),
            door: door(b),
            needs: c % 3 > 0,
        },
        34 => Change::Knows {
            holder: holder(a),
            way: way(b),
            knows: c % 3 > 0,
        },
        35 => Change::NoLongerShould {
            holder: holder(a),
            no_longer: b % 3 == 0,
        },
        36 => Change::SetPrices(home.prices().with(pick(PriceItem::ALL, b), price())),
        37 => match a % 4 {
            0 => Change::RemoveDoor(door(b)),
            1 => Change::RemoveLock(lock(b)),
            2 => Change::RemoveKey(key(b)),
            _ => Change::RemoveCopy(copy(b)),
        },
        38 => match a % 2 {
            0 => Change::RemoveHolder(holder(b)),
            _ => Change::RemoveWay(way(b)),
        },
        _ => Change::SetKey(
            key(a),
            Key {
                restricted: maybe(&[true, false], b),
                finding: finding(),
                may_be_copied: None,
            },
        ),
    }
}
