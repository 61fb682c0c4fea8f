//! Groupings, against every way of grouping up to eight doors.

use std::collections::BTreeSet;

use self_check_core::household::*;

use super::chance::Chance;

/// Every partition of `0..count`, each as the number of its part for every element (restricted
/// growth strings). There are as many as the Bell number of `count`.
fn partitions(count: usize) -> Vec<Vec<usize>> {
    fn grow(parts: &mut Vec<usize>, count: usize, all: &mut Vec<Vec<usize>>) {
        if parts.len() == count {
            all.push(parts.clone());
            return;
        }
        let next = parts.iter().max().map_or(0, |most| most + 1);
        for part in 0..=next {
            parts.push(part);
            grow(parts, count, all);
            parts.pop();
        }
    }
    let mut all = Vec::new();
    grow(&mut Vec::new(), count, &mut all);
    all
}

/// What a ring that opens every door to which a key is used costs by a partition: keys carried, locks to
/// rekey when it is lost.
fn ring(partition: &[usize], uses: &BTreeSet<usize>) -> (usize, usize) {
    let opened = opened(partition, uses);
    let carried: BTreeSet<usize> = uses.iter().map(|&door| partition[door]).collect();
    (carried.len(), opened.len())
}

/// The doors that such a ring opens.
fn opened(partition: &[usize], uses: &BTreeSet<usize>) -> BTreeSet<usize> {
    let is_carried = |part: usize| uses.iter().any(|&door| partition[door] == part);
    let doors = 0..partition.len();
    doors.filter(|&door| is_carried(partition[door])).collect()
}

struct Case {
    home: Household,
    holders: Vec<HolderId>,
    /// The doors each of them needs.
    needs: Vec<BTreeSet<usize>>,
    /// Those of them to which they use a key: they know no code there.
    uses: Vec<BTreeSet<usize>>,
    /// The doors at which each of them knows a code.
    codes: Vec<BTreeSet<usize>>,
    locks: Vec<LockId>,
}

/// Doors with a lock of one kind each, some with a code too, and people who need some of them and know some
/// codes.
fn case(doors: usize, people: usize, chance: &mut Chance) -> Case {
    let mut home = Household::empty();
    let mut ids = Vec::new();
    let mut locks = Vec::new();
    for _ in 0..doors {
        let door = home.next_door();
        ids.push(door);
        home = home
            .with(Change::AddDoor(Door::of(DoorKind::OtherDoor)))
            .unwrap();
        locks.push(home.next_lock());
        home = home
            .with(Change::AddLock(Lock::on(door, LockKind::PinTumbler)))
            .unwrap();
    }
    let mut holders = Vec::new();
    let (mut needs, mut uses) = (Vec::new(), Vec::new());
    let mut codes = Vec::new();
    let mut known = Vec::new();
    for &door in ids.iter().filter(|_| chance.once_in(3)) {
        codes.push((home.next_way(), door));
        let code = Way::at(door, WayKind::DoorCode);
        home = home.with(Change::AddWay(code)).unwrap();
    }
    for _ in 0..people {
        let needed: BTreeSet<usize> = (0..doors).filter(|_| chance.once_in(2)).collect();
        holders.push(home.next_holder());
        let holder = Holder {
            needs: Some(needed.iter().map(|&door| ids[door]).collect()),
            ..Holder::of(Role::Resident)
        };
        home = home.with(Change::AddHolder(holder)).unwrap();
        let mut used = needed.clone();
        let mut opened_by_code = BTreeSet::new();
        for &(way, door) in codes.iter().filter(|_| chance.once_in(2)) {
            let knows = Change::Knows {
                holder: holders[holders.len() - 1],
                way,
                knows: true,
            };
            home = home.with(knows).unwrap();
            used.retain(|&number| ids[number] != door);
            opened_by_code.extend((0..doors).filter(|&number| ids[number] == door));
        }
        needs.push(needed);
        uses.push(used);
        known.push(opened_by_code);
    }
    Case {
        home,
        holders,
        needs,
        uses,
        codes: known,
        locks,
    }
}

/// A grouping as a partition.
fn as_partition(case: &Case, grouping: Grouping) -> Vec<usize> {
    let groups = groups(&case.home, grouping);
    let of = |lock: &LockId| groups.iter().position(|group| group.locks.contains(lock));
    case.locks.iter().map(|lock| of(lock).unwrap()).collect()
}

/// Whether `candidate` is what by need claims to be, among all partitions: for nobody more locks
/// to rekey than by any other, and of those in which nobody's ring opens a door to which they use no
/// key, the fewest keys for everybody at once.
fn is_best_by_need(candidate: &[usize], all: &[Vec<usize>], uses: &[BTreeSet<usize>]) -> bool {
    all.iter().all(|other| {
        let nobody_beyond = uses.iter().all(|uses| ring(other, uses).1 == uses.len());
        uses.iter().all(|uses| {
            let (keys, locks) = ring(candidate, uses);
            let (other_keys, other_locks) = ring(other, uses);
            locks <= other_locks && (!nobody_beyond || keys <= other_keys)
        })
    })
}

#[test]
fn partitions_are_as_many_as_bell_numbers() {
    // Bell numbers, OEIS A000110.
    let bell = [1, 1, 2, 5, 15, 52, 203, 877, 4140];
    for (count, bell) in bell.into_iter().enumerate() {
        assert_eq!(partitions(count).len(), bell);
    }
}

#[test]
fn grouping_by_need_is_best_among_all_groupings_of_up_to_eight_doors() {
    let mut chance = Chance::seeded(11);
    let mut without_a_key = 0;
    for doors in 1..=8 {
        let all = partitions(doors);
        for people in 0..=5 {
            for _ in 0..3 {
                let case = case(doors, people, &mut chance);
                let by_need = as_partition(&case, Grouping::ByNeed);
                assert!(is_best_by_need(&by_need, &all, &case.uses));
                without_a_key += case.needs.iter().map(BTreeSet::len).sum::<usize>();
                without_a_key -= case.uses.iter().map(BTreeSet::len).sum::<usize>();
            }
        }
    }
    assert!(without_a_key > 20, "some get in by a code: {without_a_key}");
}

#[test]
fn grouping_all_alike_carries_the_fewest_keys_of_all_groupings() {
    let mut chance = Chance::seeded(12);
    for doors in 1..=8 {
        let case = case(doors, 4, &mut chance);
        let alike = as_partition(&case, Grouping::AllAlike);
        for other in partitions(doors) {
            for uses in &case.uses {
                assert!(ring(&alike, uses).0 <= ring(&other, uses).0);
            }
        }
    }
}

#[test]
fn best_by_need_fails_for_every_other_grouping_that_differs_in_what_people_carry() {
    let mut chance = Chance::seeded(13);
    let case = case(6, 3, &mut chance);
    let all = partitions(6);
    let by_need = as_partition(&case, Grouping::ByNeed);
    let rings = |partition: &[usize]| -> Vec<_> {
        case.uses.iter().map(|uses| ring(partition, uses)).collect()
    };
    let best = rings(&by_need);
    for other in &all {
        assert_eq!(
            is_best_by_need(other, &all, &case.uses),
            rings(other) == best
        );
    }
    assert!(all.iter().any(|other| rings(other) != best));
}

#[test]
fn comparison_counts_what_the_partitions_count() {
    let mut chance = Chance::seeded(14);
    for doors in 1..=8 {
        let case = case(doors, 4, &mut chance);
        for comparison in compare(&case.home) {
            if comparison.grouping == Grouping::AsNow {
                continue;
            }
            let partition = as_partition(&case, comparison.grouping);
            for (number, holder) in case.holders.iter().enumerate() {
                let (needs, uses) = (&case.needs[number], &case.uses[number]);
                let codes = &case.codes[number];
                let found = comparison
                    .holders
                    .iter()
                    .find(|found| found.holder == *holder);
                let (keys, locks) = ring(&partition, uses);
                let opened: BTreeSet<usize> = &opened(&partition, uses) | codes;
                match found {
                    None => assert!(needs.is_empty() && codes.is_empty()),
                    Some(found) => {
                        assert_eq!((found.keys_carried, found.locks_if_lost), (keys, locks));
                        assert_eq!(found.doors_beyond_need, opened.difference(needs).count());
                        assert_eq!(found.doors_without, 0);
                    }
                }
            }
        }
    }
}

#[test]
fn grouping_keeps_kinds_apart_that_cannot_share_a_key() {
    let home = Household::empty();
    let door = home.next_door();
    let mut home = home
        .with(Change::AddDoor(Door::of(DoorKind::FrontDoor)))
        .unwrap();
    for kind in [
        LockKind::PinTumbler,
        LockKind::EuropeanProfile,
        LockKind::Lever,
        LockKind::SmallLock,
    ] {
        home = home.with(Change::AddLock(Lock::on(door, kind))).unwrap();
    }
    let sizes: Vec<usize> = groups(&home, Grouping::AllAlike)
        .iter()
        .map(|group| group.locks.len())
        .collect();
    assert_eq!(sizes, [2, 1, 1], "cylinders; levers; small locks");
}

#[test]
fn grouping_keeps_padlocks_apart_from_the_locks_of_cabinets_and_mailboxes() {
    let kinds = [
        DoorKind::Padlock,
        DoorKind::Shed,
        DoorKind::Cabinet,
        DoorKind::Mailbox,
    ];
    let mut home = Household::empty();
    for kind in kinds {
        let door = home.next_door();
        let lock = Lock::on(door, LockKind::SmallLock);
        let parts = [Change::AddDoor(Door::of(kind)), Change::AddLock(lock)];
        home = home.with_all(parts).unwrap();
    }
    let sizes = |home: &Household| -> Vec<usize> {
        let groups = groups(home, Grouping::AllAlike);
        groups.iter().map(|group| group.locks.len()).collect()
    };
    assert_eq!(sizes(&home), [2, 2], "padlocks; cabinet and mailbox");
    // What shares a key today can share one.
    let key = home.next_key();
    let mut home = home.with(Change::AddKey(Key::default())).unwrap();
    let locks: Vec<(LockId, Lock)> = home.locks().map(|(id, lock)| (id, lock.clone())).collect();
    for (id, lock) in &locks[1..3] {
        let lock = lock.clone().opened_by(key);
        home = home.with(Change::SetLock(*id, lock)).unwrap();
    }
    assert_eq!(sizes(&home), [3, 1], "padlocks and the cabinet; mailbox");
}
