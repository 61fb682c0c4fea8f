//! What holds for any household.

use std::collections::BTreeSet;

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::*;

use super::any::{grown, household, meant, raw_changes};
use super::truth;

/// A law of plans broken.
#[derive(Debug, PartialEq, Eq)]
enum Broken {
    /// An exposed key still opens a lock.
    StillOpen(LockId),
    /// Somebody who should not still knows a way in.
    WayStillOpen,
    /// A lock is seen to that need not be.
    Needless(LockId),
    /// Somebody who opened a door they need no longer does.
    LockedOut(HolderId, DoorId),
    /// Somebody's ring turns a lock of the household they do not need.
    Beyond(HolderId, LockId),
    /// Somebody gets a key to the household's own locks who needs none.
    KeyForNothing(HolderId, KeyId),
    /// Somebody does not get in at a door they need whose locks are all the household's.
    Without(HolderId, DoorId),
    /// The parts no longer fit together.
    Misfit,
}

/// What carrying out `plan` breaks.
fn broken(home: &Household, plan: &Plan) -> Vec<Broken> {
    let after = plan.carried_out(home).unwrap();
    let mut broken = Vec::new();
    broken.extend(
        truth::open_to_exposed(&after)
            .into_iter()
            .map(Broken::StillOpen),
    );
    if truth::has_an_open_way(&after) {
        broken.push(Broken::WayStillOpen);
    }
    if !truth::fits_together(&after) {
        broken.push(Broken::Misfit);
    }
    if plan.choices.grouping == Grouping::AsNow {
        let open = truth::open_to_exposed(home);
        let works = plan.works.iter().map(|work| work.lock);
        broken.extend(
            works
                .filter(|lock| !open.contains(lock))
                .map(Broken::Needless),
        );
    }
    for (holder, part) in home.holders().filter(|(_, part)| !part.no_longer_should) {
        let before = truth::turned_by_ring(home, holder);
        let now = truth::turned_by_ring(&after, holder);
        let needs = home.needs_of(holder).unwrap();
        for &door in &needs {
            let mut locks = home.locks_of(door);
            let could = home.locks_of(door).count() > 0
                && home.locks_of(door).all(|(lock, _)| before.contains(&lock));
            if could && locks.any(|(lock, _)| !now.contains(&lock)) {
                broken.push(Broken::LockedOut(holder, door));
            }
        }
        if plan.choices.grouping == Grouping::ByNeed && part.needs.is_some() {
            for (lock, part) in after.locks().filter(|(lock, _)| now.contains(lock)) {
                if truth::is_own(&after, part) && !needs.contains(&part.door) {
                    broken.push(Broken::Beyond(holder, lock));
                }
            }
        }
    }
    if plan.choices.grouping != Grouping::AsNow {
        broken.extend(keys_and_needs(home, &after));
    }
    broken
}

/// Who has a key for nothing and who none, once the doors are in groups. What was mislaid indoors may turn up,
/// so that nothing is said of whoever lost something; but whoever kept a key back has to get in elsewhere too.
fn keys_and_needs(home: &Household, after: &Household) -> Vec<Broken> {
    let mut broken = Vec::new();
    let own_only = |door: DoorId| {
        let mut locks = after.locks_of(door);
        locks.all(|(_, lock)| truth::is_own(after, lock))
    };
    let kept_back = |holder: HolderId| {
        home.copies().any(|(_, copy)| match copy.place {
            Place::Lost { by, loss, .. } => by == Some(holder) && loss == Loss::NotReturned,
            _ => false,
        })
    };
    let has_mislaid = |holder: HolderId| {
        let mut copies = home.copies();
        let mut ways = home.ways();
        copies.any(|(_, copy)| match copy.place {
            Place::Lost {
                by,
                loss,
                from_safe,
            } => {
                let from_one_they_know = from_safe
                    .is_some_and(|safe| home.way(safe).unwrap().known_by.contains(&holder));
                from_one_they_know || by == Some(holder) && loss != Loss::NotReturned
            }
            _ => false,
        }) || ways.any(|(_, way)| way.lost_by.contains_key(&holder))
    };
    for (holder, _) in after.holders() {
        let had = truth::turned_by_ring(home, holder);
        let needs = home.needs_of(holder).unwrap();
        let new = after.copies().filter(|&(id, copy)| {
            let before = home.copy(id).map(|copy| copy.place);
            copy.place == Place::Held(holder) && before != Some(copy.place)
        });
        for (_, copy) in new {
            let opened = || {
                let locks = after.locks();
                locks.filter(|(_, lock)| lock.keys.contains(&copy.key))
            };
            let is_own = opened().all(|(_, lock)| truth::is_own(after, lock));
            let is_used = opened().any(|(id, lock)| {
                had.contains(&id)
                    || needs.contains(&lock.door)
                        && !truth::opens_without_carrying_a_key(home, holder, id)
            });
            if is_own && !is_used && !has_mislaid(holder) && !kept_back(holder) {
                broken.push(Broken::KeyForNothing(holder, copy.key));
            }
        }
        let opened: Vec<DoorId> = after.reach_of_holder(holder).unwrap().opened().collect();
        // Where nobody has said what they need, only what opened to them before.
        let before: Vec<DoorId> = home.reach_of_holder(holder).unwrap().opened().collect();
        let is_told = home.holder(holder).unwrap().needs.is_some();
        let without = needs
            .iter()
            .filter(|&&door| own_only(door) && after.locks_of(door).count() > 0)
            .filter(|door| is_told || before.contains(door))
            .filter(|door| !opened.contains(door) && !has_mislaid(holder));
        broken.extend(without.map(|&door| Broken::Without(holder, door)));
    }
    broken
}

fn planned(home: &Household, grouping: Grouping) -> Plan {
    plan(
        home,
        Choices {
            grouping,
            ..Choices::default()
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn changes_keep_the_parts_together(home in household(120)) {
        prop_assert!(truth::fits_together(&home));
    }

    #[test]
    fn plan_breaks_no_law(home in household(120)) {
        for &grouping in Grouping::ALL {
            prop_assert_eq!(broken(&home, &planned(&home, grouping)), [], "{:?}", grouping);
        }
    }

    #[test]
    fn plan_after_the_plan_is_empty(home in household(120)) {
        for &grouping in Grouping::ALL {
            let after = planned(&home, grouping).carried_out(&home).unwrap();
            let again = plan(&after, Choices::default());
            prop_assert!(again.works.is_empty() && again.ways.is_empty());
        }
    }

    #[test]
    fn plan_by_a_grouping_brings_the_locks_into_its_groups(home in household(120)) {
        for grouping in [Grouping::AllAlike, Grouping::ByNeed] {
            let after = planned(&home, grouping).carried_out(&home).unwrap();
            let wanted: Vec<_> = groups(&home, grouping).into_iter().map(|group| group.locks).collect();
            let mut seen = std::collections::BTreeSet::new();
            for group in wanted {
                let keys: std::collections::BTreeSet<_> =
                    group.iter().map(|&lock| after.lock(lock).unwrap().keys.clone()).collect();
                prop_assert_eq!(keys.len(), 1);
                prop_assert!(keys.iter().all(|keys| keys.len() == 1));
                prop_assert!(keys.into_iter().all(|keys| seen.insert(keys)), "two groups share a key");
            }
        }
    }

    #[test]
    fn what_others_decide_stays_open_until_they_have_acted(home in household(120)) {
        let is_ours = |who: WhoActs| who == WhoActs::Household;
        let part = |plan: &Plan, ours: bool| -> Vec<_> {
            let works = plan.works.iter().filter(|work| is_ours(work.who) == ours);
            let works = works.map(|work| (Some(work.lock), None, work.urgency));
            let ways = plan.ways.iter().filter(|work| is_ours(work.who()) == ours);
            works.chain(ways.map(|work| (None, Some(work.way), work.urgency))).collect()
        };
        for &grouping in Grouping::ALL {
            let before = planned(&home, grouping);
            for ours in [true, false] {
                let acted = before.actors().into_iter().filter(|&who| is_ours(who) == ours);
                let after = before.carried_out_by(&home, &acted.collect()).unwrap();
                prop_assert!(truth::fits_together(&after));
                let left = planned(&after, Grouping::AsNow);
                prop_assert_eq!(part(&left, ours), [], "{:?}", grouping);
                let open = |plan: &Plan| -> Vec<_> {
                    let exposed = |lock| plan.works.iter().any(|work| Some(work.lock) == lock && !work.exposed.is_empty());
                    let part = part(plan, !ours).into_iter();
                    part.filter(|&(lock, ..)| lock.is_none() || exposed(lock)).collect()
                };
                // A key safe that only a new key in it would put in wrong hands is in none without it.
                let today = ways_to_change(&home);
                let is_open_today = |way: Option<WayId>| way.is_none_or(|way| today.contains_key(&way));
                let (mut was, is) = (open(&before), open(&left));
                was.retain(|&(_, way, _)| is_open_today(way));
                let ids = |open: &[(Option<LockId>, Option<WayId>, Urgency)]| -> BTreeSet<_> {
                    open.iter().map(|&(lock, way, _)| (lock, way)).collect()
                };
                prop_assert_eq!(ids(&was), ids(&is), "{:?}", grouping);
                for (lock, way, urgency) in was {
                    let is_as_urgent = |&(of, by, now): &(_, _, Urgency)| (of, by) == (lock, way) && now == urgency;
                    prop_assert!(is.iter().any(is_as_urgent), "{:?} {:?} {:?}", grouping, lock, way);
                }
                let all = left.carried_out(&after).unwrap();
                prop_assert_eq!(truth::open_to_exposed(&all), Default::default());
                prop_assert!(!truth::has_an_open_way(&all));
            }
        }
    }

    #[test]
    fn exposed_keys_are_those_of_the_definition(home in household(120)) {
        let found: Vec<KeyId> = exposed_keys(&home).into_iter().map(|key| key.key).collect();
        let opens = |key: KeyId| home.locks().any(|(_, lock)| lock.keys.contains(&key));
        let told: Vec<KeyId> = home
            .keys()
            .map(|(key, _)| key)
            .filter(|&key| opens(key) && truth::is_exposed(&home, key))
            .collect();
        prop_assert_eq!(found, told);
    }

    #[test]
    fn nobody_is_left_with_one_single_new_key(home in household(120)) {
        for &grouping in Grouping::ALL {
            let plan = planned(&home, grouping);
            let new = plan.keys.iter().filter(|key| matches!(key.origin, self_check_core::household::plan::Origin::New { .. }));
            for key in new.filter(|key| key.who == WhoActs::Household) {
                prop_assert!(key.copy_count() >= 2, "{:?}", key);
                let self_check_core::household::plan::Origin::New { replaces } = &key.origin else { continue };
                let at_home = |old: &KeyId| {
                    let copies = home.copies_of(*old);
                    copies.filter(|(_, copy)| matches!(copy.place, Place::AtHome { .. })).count()
                };
                let spares = key.copies.iter().find(|(to, _)| *to == self_check_core::household::plan::Recipient::Spare);
                let spares = spares.map_or(0, |&(_, count)| count as usize);
                prop_assert!(replaces.iter().all(|old| spares >= at_home(old)), "{:?}", key);
            }
        }
    }

    #[test]
    fn ring_turns_what_its_keys_open(home in household(120)) {
        for (holder, _) in home.holders() {
            let reach = home.reach_of_ring(holder).unwrap();
            let turned: Vec<LockId> = truth::turned_by_ring(&home, holder).into_iter().collect();
            prop_assert_eq!(reach.locks, turned);
        }
    }

    #[test]
    fn losing_a_ring_never_shortens_the_plan(
        home in household(80), which in any::<usize>(), how in 0..Loss::ALL.len(),
    ) {
        let loss = Loss::ALL[how];
        if let Some((holder, _)) = home.holders().nth(which % home.holders().len().max(1)) {
            let before = plan(&home, Choices::default());
            let lost = home.with(Change::LoseRing { holder, loss }).unwrap();
            let after = plan(&lost, Choices::default());
            for work in &before.works {
                let later = after.works.iter().find(|later| later.lock == work.lock);
                prop_assert!(later.is_some_and(|later| later.urgency >= work.urgency));
            }
            for way in &before.ways {
                let later = after.ways.iter().find(|later| later.way == way.way);
                prop_assert!(later.is_some_and(|later| later.urgency >= way.urgency));
            }
            let reach = home.reach_of_ring(holder).unwrap();
            for lock in reach.locks.into_iter().filter(|_| loss.urgency().is_some()) {
                prop_assert!(after.works.iter().any(|work| work.lock == lock));
            }
        }
    }

    #[test]
    fn undo_inverts_and_redo_inverts_undo(changes in raw_changes(60)) {
        let mut history = History::of(Household::empty());
        let mut states = vec![history.present().clone()];
        for &raw in &changes {
            if let Ok(next) = history.with(meant(history.present(), raw)) {
                if next.present() != history.present() {
                    states.push(next.present().clone());
                }
                history = next;
            }
        }
        prop_assert_eq!(history.steps_back(), states.len() - 1);
        for state in states.iter().rev().skip(1) {
            history = history.undone().unwrap();
            prop_assert_eq!(history.present(), state);
        }
        prop_assert!(history.undone().is_none());
        for state in states.iter().skip(1) {
            history = history.redone().unwrap();
            prop_assert_eq!(history.present(), state);
        }
        prop_assert!(history.redone().is_none());
    }

    #[test]
    fn record_leads_back_to_the_household(home in household(120)) {
        let text = file::export(&home).unwrap();
        prop_assert_eq!(file::import(text.as_bytes()), Ok(home));
    }

    #[test]
    fn record_cut_short_anywhere_is_refused(home in household(40)) {
        let text = file::export(&home).unwrap();
        for end in 0..text.len() {
            prop_assert!(file::import(&text.as_bytes()[..end]).is_err(), "cut at {end}");
        }
    }

    #[test]
    fn record_with_one_byte_changed_is_refused_or_fits(
        home in household(60), place in any::<usize>(), byte in any::<u8>(),
    ) {
        let mut bytes = file::export(&home).unwrap().into_bytes();
        let place = place % bytes.len();
        bytes[place] = byte;
        if let Ok(home) = file::import(&bytes) {
            prop_assert!(truth::fits_together(&home));
            let text = file::export(&home).unwrap();
            prop_assert_eq!(file::import(text.as_bytes()), Ok(home));
        }
    }
}

/// Households in which the mutations below have something to break.
fn with_an_exposed_key() -> Household {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident, Role::Sitter]).unwrap();
    let (copy, _) = home.copies().next().unwrap();
    let loss = Loss::NearHome;
    home.with(Change::Lose { copy, loss }).unwrap()
}

#[test]
fn law_fails_for_a_plan_that_leaves_a_lock_out() {
    let home = with_an_exposed_key();
    let mut plan = planned(&home, Grouping::AsNow);
    let left_out = plan.works.pop().unwrap();
    assert!(broken(&home, &plan).contains(&Broken::StillOpen(left_out.lock)));
}

#[test]
fn law_fails_for_a_plan_that_touches_a_lock_too_many() {
    let home = with_an_exposed_key();
    let mut plan = planned(&home, Grouping::AsNow);
    let touched = plan.works[0].lock;
    let (other, _) = home.locks().find(|&(lock, _)| lock != touched).unwrap();
    let mut needless = plan.works[0].clone();
    needless.lock = other;
    needless.drops = home.lock(other).unwrap().keys.iter().copied().collect();
    plan.works.push(needless);
    assert!(broken(&home, &plan).contains(&Broken::Needless(other)));
}

#[test]
fn law_fails_for_a_plan_that_forgets_a_persons_copy() {
    let home = with_an_exposed_key();
    let mut plan = planned(&home, Grouping::AsNow);
    plan.keys[0].copies.clear();
    let broken = broken(&home, &plan);
    assert!(
        broken
            .iter()
            .any(|law| matches!(law, Broken::LockedOut(..)))
    );
}

#[test]
fn law_fails_for_a_grouping_that_gives_a_key_too_many() {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident, Role::Neighbour]).unwrap();
    let (neighbour, _) = home.holders().nth(1).unwrap();
    let (back, _) = home.doors().nth(1).unwrap();
    let home = home
        .with(Change::Needs {
            holder: neighbour,
            door: back,
            needs: false,
        })
        .unwrap();
    let mut plan = planned(&home, Grouping::ByNeed);
    assert_eq!(broken(&home, &plan), []);
    plan.hand_in.clear();
    let broken = broken(&home, &plan);
    assert!(broken.iter().any(|law| matches!(law, Broken::Beyond(..))));
}

#[test]
fn law_fails_for_a_plan_that_forgets_a_way_in() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::Lever, &[Role::Cleaner]).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let (cleaner, _) = home.holders().next().unwrap();
    let way = home.next_way();
    let home = home
        .with_all([
            Change::AddWay(Way::at(door, WayKind::DoorCode)),
            Change::Knows {
                holder: cleaner,
                way,
                knows: true,
            },
            Change::NoLongerShould {
                holder: cleaner,
                no_longer: true,
            },
        ])
        .unwrap();
    let mut plan = planned(&home, Grouping::AsNow);
    assert_eq!(broken(&home, &plan), []);
    plan.ways.clear();
    assert_eq!(broken(&home, &plan), [Broken::WayStillOpen]);
}

#[test]
fn households_of_the_laws_hold_what_the_laws_speak_of() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let mut counts = [0; 6];
    for _ in 0..400 {
        let changes = raw_changes(120).new_tree(&mut runner).unwrap().current();
        let home = grown(&changes);
        let plan = planned(&home, Grouping::ByNeed);
        counts[0] += usize::from(!exposed_keys(&home).is_empty());
        counts[1] += usize::from(home.locks().any(|(_, lock)| lock.keys.len() > 1));
        counts[2] += usize::from(!plan.ways.is_empty());
        counts[3] += usize::from(!plan.hand_in.is_empty());
        counts[4] += usize::from(
            plan.keys
                .iter()
                .any(|key| matches!(key.origin, plan::Origin::Kept(_))),
        );
        counts[5] += usize::from(
            home.copies()
                .any(|(_, copy)| matches!(copy.place, Place::InKeySafe(_))),
        );
    }
    assert!(counts.iter().all(|&count| count >= 5), "{counts:?}");
}
