//! The comparison of groupings: that it counts the same for each of them, and as the board does.

use std::collections::BTreeSet;

use proptest::prelude::*;
use self_check_core::household::*;

use super::any::household;
use super::homes::{holder, losing};
use super::truth;

/// Doors that open to the holder without need, and doors they have to get into and cannot, by the board of
/// `home`; what they need and have to get into is as it was `before`.
fn by_the_board(home: &Household, before: &Household, holder: HolderId) -> (usize, usize) {
    let opened: BTreeSet<DoorId> = home.reach_of_holder(holder).unwrap().opened().collect();
    let needs = before.needs_of(holder).unwrap();
    let has_to_enter: BTreeSet<DoorId> = if before.holder(holder).unwrap().needs.is_some() {
        needs.clone()
    } else {
        let whole = put_back(before).reach_of_holder(holder).unwrap();
        whole.opened().filter(|door| needs.contains(door)).collect()
    };
    (
        opened.difference(&needs).count(),
        has_to_enter.difference(&opened).count(),
    )
}

fn by_the_comparison(way: &Comparison, holder: HolderId) -> (usize, usize) {
    let found = way.holders.iter().find(|found| found.holder == holder);
    found.map_or((0, 0), |it| (it.doors_beyond_need, it.doors_without))
}

/// Those who should come in and kept no key back: whoever did is to know no code of the home any more.
fn welcome(home: &Household) -> Vec<HolderId> {
    let kept_back = |holder: HolderId| {
        home.copies().any(|(_, copy)| {
            matches!(copy.place, Place::Lost { by, loss: Loss::NotReturned, .. } if by == Some(holder))
        })
    };
    let holders = home.holders().map(|(id, _)| id);
    holders
        .filter(|&id| !truth::is_former(home, id) && !kept_back(id))
        .collect()
}

/// The household as if what people lost of keys to doors they need, remotes and what went from key
/// safes had turned up.
fn put_back(home: &Household) -> Household {
    let mut after = home.clone();
    for (copy, part) in home.copies() {
        let is_needed = |by: HolderId| {
            let needs = home.needs_of(by).unwrap();
            let mut locks = home.locks();
            locks.any(|(_, lock)| lock.keys.contains(&part.key) && needs.contains(&lock.door))
        };
        let to = match part.place {
            Place::Lost {
                from_safe: Some(safe),
                ..
            } => Place::InKeySafe(safe),
            Place::Lost {
                by: Some(by), loss, ..
            } if loss != Loss::NotReturned && is_needed(by) => Place::Held(by),
            _ => continue,
        };
        after = after.with(Change::Move { copy, to }).unwrap();
    }
    for (id, way) in home.ways() {
        let mut way = way.clone();
        way.lost_by.clear();
        after = after.with(Change::SetWay(id, way)).unwrap();
    }
    after
}

/// Whether the holder lost something that may turn up.
fn lost_something(home: &Household, holder: HolderId) -> bool {
    home.copies().any(|(_, copy)| match copy.place {
        Place::Lost {
            by,
            loss,
            from_safe,
        } => by == Some(holder) && loss != Loss::NotReturned || from_safe.is_some(),
        _ => false,
    }) || home
        .ways()
        .any(|(_, way)| way.lost_by.contains_key(&holder))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn comparison_counts_as_now_what_the_board_counts(home in household(120)) {
        let as_now = &compare(&home)[0];
        let whole = put_back(&home);
        for holder in welcome(&home) {
            prop_assert_eq!(by_the_comparison(as_now, holder), by_the_board(&whole, &home, holder));
        }
    }

    #[test]
    fn comparison_counts_what_the_board_counts_once_the_plan_is_carried_out(home in household(120)) {
        for way in compare(&home).iter().filter(|way| way.grouping != Grouping::AsNow) {
            let plan = plan(&home, Choices { grouping: way.grouping, ..Choices::default() });
            if !others_see_to_nothing(&plan) {
                continue;
            }
            let after = plan.carried_out(&home).unwrap();
            for (holder, part) in home.holders() {
                if !part.no_longer_should && !lost_something(&home, holder) {
                    let counted = by_the_comparison(way, holder);
                    prop_assert_eq!(counted, by_the_board(&after, &home, holder), "{:?}", way.grouping);
                }
            }
        }
    }

    #[test]
    fn everybody_opens_what_they_need_of_the_homes_own_by_another_grouping(home in household(120)) {
        for way in compare(&home).iter().filter(|way| way.grouping != Grouping::AsNow) {
            for (holder, _) in home.holders() {
                prop_assert!(by_the_comparison(way, holder).1 <= needed_of_others(&home, holder));
            }
        }
    }

    #[test]
    fn comparison_counts_the_same_keys_everywhere(home in household(120)) {
        for way in compare(&home) {
            prop_assert!(way.most_keys_carried() <= way.keys.len());
            prop_assert!(way.keys.is_sorted_by_key(|key| !key.is_own));
            let own = |lock: LockId| truth::is_own(&home, home.lock(lock).unwrap());
            let opened: BTreeSet<LockId> = way.keys.iter().flat_map(|key| key.locks.clone()).collect();
            let all = home.locks().filter(|(id, lock)| {
                !lock.keys.is_empty() || way.grouping != Grouping::AsNow && own(*id)
            });
            prop_assert_eq!(&opened, &all.map(|(id, _)| id).collect::<BTreeSet<_>>());
            let keyless = home.locks().filter(|&(id, _)| own(id) && !opened.contains(&id));
            prop_assert_eq!(&way.keyless, &keyless.map(|(id, _)| id).collect::<Vec<_>>());
            for key in &way.keys {
                prop_assert_eq!(key.is_own, key.locks.iter().any(|&lock| own(lock)));
            }
        }
    }
}

fn others_see_to_nothing(plan: &Plan) -> bool {
    let own = remedy::WhoActs::Household;
    plan.ways.iter().all(|work| work.who() == own) && plan.works.iter().all(|work| work.who == own)
}

/// How many doors they need that are not the household's own, or have no lock.
fn needed_of_others(home: &Household, holder: HolderId) -> usize {
    let needs = home.needs_of(holder).unwrap();
    let is_own = |door: &DoorId| {
        let has_a_lock = home.locks_of(*door).count() > 0;
        has_a_lock
            && home
                .locks_of(*door)
                .all(|(_, lock)| truth::is_own(home, lock))
    };
    needs.iter().filter(|door| !is_own(door)).count()
}

#[test]
fn households_of_the_comparison_hold_what_it_speaks_of() {
    use super::any::{grown, raw_changes};
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let mut counts = [0; 6];
    for _ in 0..400 {
        let changes = raw_changes(120).new_tree(&mut runner).unwrap().current();
        let home = grown(&changes);
        let ways = compare(&home);
        let holders = || ways[0].holders.iter();
        counts[0] += usize::from(holders().any(|it| it.missing > 0));
        counts[1] += usize::from(holders().any(|it| it.doors_beyond_need > 0));
        // As now breaks the law that holds for the other groupings.
        counts[2] +=
            usize::from(holders().any(|it| it.doors_without > needed_of_others(&home, it.holder)));
        counts[3] += usize::from(ways[1].doors_beyond_need() > ways[2].doors_beyond_need());
        counts[4] += usize::from(ways[0].keys.iter().any(|key| !key.is_own));
        let planned = Choices {
            grouping: Grouping::AllAlike,
            ..Choices::default()
        };
        counts[5] += usize::from(
            ways[1].doors_beyond_need() > 0 && others_see_to_nothing(&plan(&home, planned)),
        );
    }
    assert!(counts.iter().all(|&count| count >= 5), "{counts:?}");
}

fn row(way: &Comparison, id: HolderId) -> HolderComparison {
    let found = way.holders.iter().find(|found| found.holder == id);
    *found.unwrap()
}

#[test]
fn whoever_has_more_locks_to_lose_by_need_lacked_keys_before() {
    // By hand: Resident 2 has no key to the cabinet and none to the shed, the partner turns the front
    // door's lock without need.
    let home = demonstration::household();
    let ways = compare(&home);
    let (second, _) = home
        .holders()
        .filter(|(_, part)| part.role == Role::Resident)
        .nth(1)
        .unwrap();
    let counts = |id| {
        let one = |way: &Comparison| {
            let row = row(way, id);
            (row.locks_if_lost, row.doors_without, row.doors_beyond_need)
        };
        ways.iter().map(one).collect::<Vec<_>>()
    };
    assert_eq!(counts(second), [(3, 2, 0), (5, 0, 0), (5, 0, 0)]);
    assert_eq!(
        counts(holder(&home, Role::WorkshopPartner)),
        [(3, 0, 1), (4, 0, 2), (2, 0, 0)]
    );
}

#[test]
fn lost_key_counts_as_carried_only_while_a_door_of_it_is_needed() {
    let home = demonstration::household();
    let lost = losing(&home, Role::WorkshopPartner, Loss::NearHome);
    let partner = holder(&lost, Role::WorkshopPartner);
    let now = |home: &Household| row(&compare(home)[0], partner);
    assert_eq!((now(&home).keys_carried, now(&home).missing), (2, 0));
    assert_eq!((now(&lost).keys_carried, now(&lost).missing), (2, 2));
    assert_eq!(now(&lost).locks_if_lost, now(&home).locks_if_lost);
    let (cabinet, _) = home
        .doors()
        .find(|(_, door)| door.kind == DoorKind::Cabinet)
        .unwrap();
    let spared = Change::Needs {
        holder: partner,
        door: cabinet,
        needs: false,
    };
    // The plan gives no cabinet key back then.
    let lost = lost.with(spared).unwrap();
    assert_eq!((now(&lost).keys_carried, now(&lost).missing), (1, 1));
    let after = plan(&lost, Choices::default()).carried_out(&lost).unwrap();
    assert_eq!((now(&after).keys_carried, now(&after).missing), (1, 0));
    // A key that was not given back is not theirs.
    let kept = losing(&home, Role::WorkshopPartner, Loss::NotReturned);
    let rows = &compare(&kept)[0].holders;
    assert!(
        rows.iter()
            .all(|row| row.holder != partner || row.keys_carried == 0)
    );
}

#[test]
fn master_key_is_one_of_the_keys_as_now() {
    let mut home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let master = home.next_key();
    home = home.with(Change::AddKey(Key::default())).unwrap();
    let locks: Vec<(LockId, Lock)> = home.locks().map(|(id, lock)| (id, lock.clone())).collect();
    for (id, mut lock) in locks {
        lock.arrangement = Arrangement::MasterKeyed;
        lock.keys.insert(master);
        home = home.with(Change::SetLock(id, lock)).unwrap();
    }
    let sizes = |way: &Comparison| {
        way.keys
            .iter()
            .map(|key| key.locks.len())
            .collect::<Vec<_>>()
    };
    assert_eq!(sizes(&compare(&home)[0]), [1, 1, 2]);
}

#[test]
fn keys_to_what_others_decide_about_are_counted_like_the_homes_own() {
    let home = quick::flat_and_entrance(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    for way in compare(&home) {
        let own: Vec<bool> = way.keys.iter().map(|key| key.is_own).collect();
        assert_eq!(own, [true, false]);
        assert_eq!(way.most_keys_carried(), 2);
    }
}

#[test]
fn whoever_will_not_know_the_key_safe_any_more_carries_a_key() {
    // The friend kept a key to the front door, where the key safe hangs. What lies in it opens the shed, which
    // they still need.
    let people = [Role::Resident, Role::Friend];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let (front, _) = home.doors().next().unwrap();
    let friend = holder(&home, Role::Friend);
    let key = home.next_key();
    let home = home.with(Change::AddKey(Key::default())).unwrap();
    let shed = home.next_door();
    let home = home
        .with(Change::AddDoor(Door::of(DoorKind::Shed)))
        .unwrap();
    let lock = Lock::on(shed, LockKind::PinTumbler).opened_by(key);
    let home = home.with(Change::AddLock(lock)).unwrap();
    let safe = home.next_way();
    let in_the_safe = |door: DoorId| {
        let way = Way {
            known_by: BTreeSet::from([friend]),
            ..Way::at(door, WayKind::KeySafe)
        };
        let place = Place::InKeySafe(safe);
        let needs = |door: DoorId, needs: bool| Change::Needs {
            holder: friend,
            door,
            needs,
        };
        home.with_all([
            Change::AddWay(way),
            Change::AddCopy(KeyCopy { key, place }),
            needs(front, false),
            needs(shed, true),
        ])
        .unwrap()
    };
    let kept_back = |home: &Household| losing(home, Role::Friend, Loss::NotReturned);
    let carried = |home: &Household, grouping: usize| {
        let ways = compare(home);
        let row = row(&ways[grouping], friend);
        (row.keys_carried, row.doors_without)
    };
    let (at_the_front, at_the_shed) = (in_the_safe(front), in_the_safe(shed));
    for home in [&at_the_front, &at_the_shed] {
        assert_eq!(carried(home, 2), (0, 0), "they take it from there");
    }
    assert_eq!(carried(&kept_back(&at_the_front), 2), (1, 0));
    assert_eq!(carried(&kept_back(&at_the_shed), 2), (0, 0));
    // All alike, the key in it opens the front door too.
    assert_eq!(carried(&kept_back(&at_the_shed), 1), (1, 0));
}

/// A front door with two locks and a key each; the resident has both, the cleaner the first.
fn one_key_of_two() -> Household {
    let people = [Role::Resident, Role::Cleaner];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::EuropeanProfile, &people).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let second = home.next_key();
    let home = home.with(Change::AddKey(Key::default())).unwrap();
    let lever = Lock::on(door, LockKind::Lever).opened_by(second);
    let to = holder(&home, Role::Resident);
    let give = Change::Give {
        key: second,
        to,
        copies: 2,
    };
    home.with_all([Change::AddLock(lever), give]).unwrap()
}

#[test]
fn one_key_of_two_is_no_need_of_the_other_while_nobody_says_so() {
    let home = one_key_of_two();
    let cleaner = holder(&home, Role::Cleaner);
    assert!(gaps(&home).iter().all(|gap| gap.without.is_empty()));
    let choices = Choices {
        grouping: Grouping::ByNeed,
        ..Choices::default()
    };
    assert!(
        plan(&home, choices).is_empty(),
        "nothing is cut for the cleaner"
    );
    for way in compare(&home)
        .iter()
        .filter(|way| way.grouping != Grouping::AllAlike)
    {
        assert_eq!(
            by_the_comparison(way, cleaner),
            (0, 0),
            "{:?}",
            way.grouping
        );
    }
    let (door, _) = home.doors().next().unwrap();
    let needs = Change::Needs {
        holder: cleaner,
        door,
        needs: true,
    };
    let told = home.with(needs).unwrap();
    assert_eq!(gaps(&told)[0].without, [door]);
    assert_eq!(plan(&told, choices).copies_to_cut(), 1);
}
