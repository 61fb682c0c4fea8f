//! The page for the locksmith: what stands on it, and what does not unless it was ticked in.

use std::collections::BTreeSet;

use self_check_core::advice::{Action, Urgency};
use self_check_core::household::brief::{
    AfterVisit, Ask, BriefKey, BriefLock, BriefRecipient, Due, KeyRank, Keying, Measure, OldKey,
    OnlyIf, Readiness, Restricted, measure,
};
use self_check_core::household::plan::Origin;
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::*;

use crate::homes::losing;

fn lost() -> (Household, Plan) {
    let home = demonstration::household();
    let home = losing(&home, Role::Sitter, Loss::NearHome);
    let (front, door) = home.doors().next().unwrap();
    let label = Some(Label::new("blue door").unwrap());
    let door = Door {
        label,
        ..door.clone()
    };
    let home = home.with(Change::SetDoor(front, door)).unwrap();
    let plan = plan(&home, Choices::default());
    (home, plan)
}

#[test]
fn brief_lists_the_locks_in_the_order_of_the_plan() {
    let (home, plan) = lost();
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    let locks: Vec<_> = brief
        .locks
        .iter()
        .map(|lock| (lock.door, lock.kind, lock.action))
        .collect();
    assert_eq!(
        locks,
        [
            (
                DoorKind::FrontDoor,
                LockKind::PinTumbler,
                Action::RekeyCylinder
            ),
            (
                DoorKind::Workshop,
                LockKind::PinTumbler,
                Action::RekeyCylinder
            ),
            // Its old key came back, which can wait.
            (
                DoorKind::RoomDoor,
                LockKind::Lever,
                Action::ChangeLockOrLevers
            ),
        ]
    );
    assert_eq!(
        brief.kinds,
        [(LockKind::PinTumbler, 2), (LockKind::Lever, 1)]
    );
    assert_eq!(
        brief.same_keyway,
        [[0, 1]],
        "keyed alike today, so they can be again"
    );
    assert!(brief.locks.iter().all(|lock| lock.has_working_key));
    assert_eq!(brief.keys.len(), 2);
    assert_eq!(brief.keys[0].locks, [0, 1]);
    assert_eq!(brief.keys[0].total, 8);
    assert_eq!(brief.locks[2].keys, [1]);
}

#[test]
fn brief_tells_no_words_roles_prices_or_urgency_unless_ticked_in() {
    let (home, plan) = lost();
    let bare = brief(&home, &plan, BriefChoices::default()).unwrap();
    assert!(
        bare.locks
            .iter()
            .all(|lock| lock.label.is_none() && lock.due.is_none())
    );
    assert!(bare.quotes.iter().all(|quote| quote.told.is_none()));
    let recipients = |brief: &Brief| -> Vec<BriefRecipient> {
        let copies = brief.keys.iter().flat_map(|key| &key.copies);
        copies.map(|&(recipient, _)| recipient).collect()
    };
    let nobody_told = |recipient: &BriefRecipient| {
        matches!(
            recipient,
            BriefRecipient::Person(None) | BriefRecipient::Spare
        )
    };
    assert!(recipients(&bare).iter().all(nobody_told));
    let choices = BriefChoices {
        labels: true,
        roles: true,
        urgency: true,
        prices: true,
        readiness: Readiness {
            shuts_well: Some(false),
            ..Readiness::default()
        },
    };
    let told = brief(&home, &plan, choices).unwrap();
    assert_eq!(
        told.locks[0].label.as_ref().map(Label::as_str),
        Some("blue door")
    );
    let soon = Due {
        urgency: Some(Urgency::Soon),
        may_be_sooner: true,
    };
    assert_eq!(told.locks[0].due, Some(soon));
    assert_eq!(
        (bare.visit, told.visit.map(|it| it.due)),
        (None, Some(soon))
    );
    assert!(told.quotes.iter().all(|quote| quote.told.is_some()));
    assert!(recipients(&told).contains(&BriefRecipient::Person(Some(Role::Neighbour))));
    assert_eq!(told.readiness.shuts_well, Some(false));
    let totals = |brief: &Brief| -> Vec<u64> { brief.keys.iter().map(|key| key.total).collect() };
    assert_eq!(totals(&bare), totals(&told));
}

#[test]
fn brief_asks_a_price_for_everything_in_the_plan() {
    let (home, plan) = lost();
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    let counts: Vec<(PriceItem, Option<u64>, u64)> = brief
        .quotes
        .iter()
        .map(|quote| (quote.item, quote.count, quote.planned))
        .collect();
    assert_eq!(
        counts,
        [
            (PriceItem::CallOut, Some(1), 1),
            // In place of the one before: nobody has said yet how the house key was lost.
            (PriceItem::CallOutAfterHours, Some(1), 0),
            (PriceItem::RekeyedCylinder, Some(2), 2),
            (PriceItem::LockOrLevers, Some(1), 1),
            // Eight of the house key; of the room's one for the lodger, and one for what came back.
            (PriceItem::Copy, Some(10), 10),
        ]
    );
}

#[test]
fn brief_ends_with_the_old_key_tried_everywhere_before_it_is_scrapped() {
    let (home, plan) = lost();
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    assert_eq!(brief.after.first(), Some(&AfterVisit::OldKeyMustFail));
    assert_eq!(brief.after.last(), Some(&AfterVisit::ScrapTheOldKeys));
    for asked in [
        Ask::ProofThatYouMay,
        Ask::IsCodeOrAddressKept,
        Ask::RestrictedOrNot,
    ] {
        assert!(brief.ask.contains(&asked));
    }
}

/// The page for two doors alike with locks of this kind, a ring being lost in this way.
fn two_alike(kind: LockKind, loss: Loss) -> Brief {
    let home = quick::two_doors_alike(kind, &[Role::Resident]).unwrap();
    let home = losing(&home, Role::Resident, loss);
    let plan = plan(&home, Choices::default());
    let choices = BriefChoices {
        urgency: true,
        ..BriefChoices::default()
    };
    brief(&home, &plan, choices).unwrap()
}

#[test]
fn sharing_is_asked_only_where_a_lock_that_stays_is_to_share() {
    let asks = |brief: &Brief| brief.asked().any(|ask| ask == Ask::OthersNeedANewCylinder);
    let rekeyed = two_alike(LockKind::PinTumbler, Loss::NearHome);
    assert_eq!(rekeyed.can_share_as_they_are(), [[0, 1]]);
    assert!(asks(&rekeyed));
    let new_cylinders = two_alike(LockKind::EuropeanProfile, Loss::NearHome);
    assert_eq!(new_cylinders.same_keyway, [[0, 1]]);
    assert!(new_cylinders.can_share_as_they_are().is_empty());
    assert!(!asks(&new_cylinders));
    let home =
        quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let home = losing(&home, Role::Resident, Loss::NearHome);
    let plan = plan(&home, Choices::default());
    let one = brief(&home, &plan, BriefChoices::default()).unwrap();
    let asked: Vec<Ask> = one.asked().collect();
    let left_out = one.ask.iter().filter(|ask| !asked.contains(ask));
    let about_others = [Ask::InsurersGrade, Ask::OthersNeedANewCylinder];
    assert_eq!(left_out.copied().collect::<Vec<Ask>>(), about_others);
}

#[test]
fn thumb_turn_is_wanted_where_a_new_cylinder_comes_into_a_way_out() {
    let wanted = |kind| -> Vec<bool> {
        let locks = two_alike(kind, Loss::NearHome).locks;
        locks.iter().map(BriefLock::wants_a_thumb_turn).collect()
    };
    assert_eq!(wanted(LockKind::EuropeanProfile), [true, true]);
    assert_eq!(wanted(LockKind::PinTumbler), [false, false]);
}

#[test]
fn due_is_left_open_until_somebody_says_how_it_was_lost() {
    let open = two_alike(LockKind::PinTumbler, Loss::NotSaid);
    let said = two_alike(LockKind::PinTumbler, Loss::Stolen);
    let due = |page: &Brief| -> Vec<Due> { page.locks.iter().filter_map(|it| it.due).collect() };
    assert!(due(&open).iter().all(|due| due.may_be_sooner));
    let today = Due {
        urgency: Some(Urgency::Today),
        may_be_sooner: false,
    };
    assert_eq!(due(&said), [today, today]);
}

/// A workshop and a building's entrance with one key, of which the resident has a copy and another
/// is lost.
fn own_and_the_managers() -> Household {
    let home = quick::two_doors_alike(LockKind::PinTumbler, &[Role::Resident, Role::Sitter]);
    let home = home.unwrap();
    let (entrance, _) = home.doors().nth(1).unwrap();
    let managed = Door {
        who_decides: WhoDecides::Manager,
        ..Door::of(DoorKind::BuildingEntrance)
    };
    let home = home.with(Change::SetDoor(entrance, managed)).unwrap();
    losing(&home, Role::Sitter, Loss::NearHome)
}

fn last_lines(home: &Household) -> Vec<AfterVisit> {
    let plan = plan(home, Choices::default());
    let brief = brief(home, &plan, BriefChoices::default());
    brief.unwrap().after
}

#[test]
fn key_that_a_lock_of_others_still_takes_after_the_visit_is_not_destroyed() {
    assert_eq!(
        last_lines(&own_and_the_managers()),
        [
            AfterVisit::OldKeyMustFail,
            AfterVisit::TryEachNewKeyWithTheDoorOpen,
            AfterVisit::CountTheNewKeys,
            AfterVisit::KeepOldKeysThatOpenOtherLocks,
        ]
    );
}

#[test]
fn key_of_which_every_copy_is_gone_is_neither_tried_nor_destroyed() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]);
    let home = losing(&home.unwrap(), Role::Resident, Loss::NearHome);
    for home in [
        home,
        losing(&own_and_the_managers(), Role::Resident, Loss::NearHome),
    ] {
        assert_eq!(
            last_lines(&home),
            [
                AfterVisit::TryEachNewKeyWithTheDoorOpen,
                AfterVisit::CountTheNewKeys,
            ]
        );
    }
}

#[test]
fn brief_leaves_out_what_others_do() {
    let home = quick::flat_and_entrance(LockKind::EuropeanProfile, &[Role::Resident]).unwrap();
    let home = losing(&home, Role::Resident, Loss::Stolen);
    let plan = plan(&home, Choices::default());
    assert_eq!(plan.works.len(), 2);
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    let doors: Vec<DoorKind> = brief.locks.iter().map(|lock| lock.door).collect();
    assert_eq!(doors, [DoorKind::FlatDoor]);
    assert_eq!(brief.keys.len(), 1);
    assert!(!brief.locks[0].has_working_key);
}

#[test]
fn brief_lists_a_small_lock_that_the_plan_deals_with() {
    let home = demonstration::household();
    let (cabinet, _) = home
        .doors()
        .find(|(_, door)| door.kind == DoorKind::Cabinet)
        .unwrap();
    let key = home
        .locks_of(cabinet)
        .find_map(|(_, lock)| lock.keys.first().copied());
    let (copy, _) = home.copies_of(key.unwrap()).next().unwrap();
    let loss = Loss::NearHome;
    let home = home.with(Change::Lose { copy, loss }).unwrap();
    let plan = plan(&home, Choices::default());
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    let small = brief
        .locks
        .iter()
        .find(|lock| lock.door == DoorKind::Cabinet)
        .unwrap();
    assert_eq!(small.action, Action::ReplaceSmallLock);
    assert_eq!(small.keys.len(), 1, "its new key stands on the page too");
    let asked = brief
        .quotes
        .iter()
        .find(|quote| quote.item == PriceItem::SmallLock);
    assert_eq!(asked.unwrap().count, Some(1));
}

#[test]
fn key_of_today_that_is_copied_is_known_by_its_door() {
    let home = demonstration::household();
    let choices = Choices {
        grouping: Grouping::AllAlike,
        ..Choices::default()
    };
    let plan = plan(&home, choices);
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    let kept: Vec<_> = brief.keys.iter().filter(|key| !key.is_new).collect();
    assert!(kept.len() > 1, "{kept:?}");
    let mut known: Vec<_> = kept.iter().map(|key| key.other_doors.clone()).collect();
    known.sort();
    known.dedup();
    assert_eq!(known.len(), kept.len(), "each by another door: {known:?}");
    let is_known = |key: &BriefKey| !key.locks.is_empty() || !key.other_doors.is_empty();
    assert!(brief.keys.iter().all(is_known));
}

#[test]
fn lock_set_to_a_key_that_stays_is_so_only_if_it_can_be() {
    let home = demonstration::household();
    let choices = Choices {
        grouping: Grouping::AllAlike,
        ..Choices::default()
    };
    let plan = plan(&home, choices);
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    let doubtful = plan
        .works
        .iter()
        .filter(|work| work.only_if_keyed_to.is_some());
    assert!(doubtful.clone().count() > 0);
    for work in doubtful.clone() {
        let kept = Origin::Kept(work.only_if_keyed_to.unwrap());
        let key = work
            .takes
            .iter()
            .find(|&&place| plan.keys[place].origin == kept);
        assert!(key.is_some(), "{work:?}");
        assert_ne!(work.price, Priced::Item(PriceItem::RekeyedCylinder));
    }
    // The page says so of the same locks, each by the key's place there.
    let told = brief
        .locks
        .iter()
        .filter(|lock| lock.only_if_keyed_to.is_some());
    let told: Vec<LockId> = told.map(|lock| lock.lock).collect();
    let own = doubtful.filter(|work| work.who == WhoActs::Household);
    let own: Vec<LockId> = own.map(|work| work.lock).collect();
    assert!(!own.is_empty());
    assert_eq!(told, own);
    for lock in &brief.locks {
        let Some(key) = lock.only_if_keyed_to else {
            continue;
        };
        assert!(lock.keys.contains(&key) && !brief.keys[key].is_new);
        assert!(brief.matched.iter().any(|matched| matched.key == key));
    }
}

#[test]
fn brief_of_a_small_lock_alone_asks_for_no_visit() {
    let home = quick::one_door(DoorKind::Padlock, LockKind::SmallLock, &[Role::Resident]).unwrap();
    let home = losing(&home, Role::Resident, Loss::NearHome);
    let plan = plan(&home, Choices::default());
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    assert_eq!(brief.locks.len(), 1);
    let items: Vec<PriceItem> = brief.quotes.iter().map(|quote| quote.item).collect();
    assert_eq!(items, [PriceItem::SmallLock, PriceItem::Copy]);
}

#[test]
fn brief_of_a_theft_asks_for_both_prices_of_a_visit() {
    let counts = |people: &[Role], loss: Loss, after_hours: bool| {
        let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, people).unwrap();
        let home = losing(&home, people[0], loss);
        let choices = Choices {
            after_hours,
            ..Choices::default()
        };
        let plan = plan(&home, choices);
        let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
        let of = |item| brief.quotes.iter().find(|quote| quote.item == item);
        [PriceItem::CallOut, PriceItem::CallOutAfterHours]
            .map(|item| of(item).map(|it| (it.count, it.planned)))
    };
    let two = [Role::Sitter, Role::Resident];
    assert_eq!(
        counts(&two, Loss::Stolen, false),
        [Some((Some(1), 1)), Some((Some(1), 0))]
    );
    assert_eq!(counts(&two, Loss::Stolen, true), [None, Some((Some(1), 1))]);
    assert_eq!(
        counts(&two, Loss::NearHome, false),
        [Some((Some(1), 1)), Some((None, 0))]
    );
    // The only key to the only door is gone: the visit that opens it does not wait.
    let one = [Role::Resident];
    assert_eq!(
        counts(&one, Loss::NearHome, false),
        [Some((Some(1), 1)), Some((Some(1), 0))]
    );
}

/// A front door with its own key and a master key, which is the back door's only key; the sitter's own key to
/// the front door is lost.
fn master_keyed(arrangement: Arrangement) -> Household {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::two_doors(LockKind::PinTumbler, &people).unwrap();
    let (back, _) = home.doors().nth(1).unwrap();
    let (_, back_lock) = home.locks_of(back).next().unwrap();
    let back_key = *back_lock.keys.first().unwrap();
    let (front, lock) = home.locks().next().unwrap();
    let mut lock = lock.clone();
    lock.keys.insert(back_key);
    lock.arrangement = arrangement;
    let home = home.with(Change::SetLock(front, lock)).unwrap();
    let sitter = crate::homes::holder(&home, Role::Sitter);
    let mut ring = home.ring_of(sitter);
    let (copy, _) = ring.find(|(_, copy)| copy.key != back_key).unwrap();
    let loss = Loss::NearHome;
    home.with(Change::Lose { copy, loss }).unwrap()
}

#[test]
fn key_that_a_changed_lock_goes_on_taking_stands_on_the_page() {
    let home = master_keyed(Arrangement::MasterKeyed);
    let made = plan(&home, Choices::default());
    let page = brief(&home, &made, BriefChoices::default()).unwrap();
    assert_eq!(page.locks.len(), 1);
    let keys = &page.locks[0].keys;
    assert_eq!((keys.len(), page.keys.len()), (2, 2));
    let master = &page.keys[keys[1]];
    assert!(page.keys[keys[0]].is_new && !master.is_new && master.is_left && master.is_at_hand);
    assert_eq!((&master.locks, master.total), (&vec![0], 0));
    assert_eq!(master.other_doors, [DoorKind::BackDoor]);
    assert!(!page.is_about_sharing(), "the lock takes both today");
    // What stands on the page is what opens the lock afterwards.
    let after = made.carried_out(&home).unwrap();
    let lock = after.lock(page.locks[0].lock).unwrap();
    assert_eq!(lock.keys.len(), keys.len());
}

#[test]
fn keys_of_a_central_lock_are_not_told_one_by_one() {
    let home = master_keyed(Arrangement::CentralLock);
    let made = plan(&home, Choices::default());
    let page = brief(&home, &made, BriefChoices::default()).unwrap();
    assert!(page.locks[0].keeps_many_keys);
    assert_eq!((page.locks[0].keys.len(), page.keys.len()), (1, 1));
}

#[test]
fn locks_that_are_to_differ_are_not_said_to_share_and_letters_follow_the_locks() {
    // Front door and workshop, keyed alike today, get a key each: not the same people need them.
    let (home, _) = lost();
    for &grouping in Grouping::ALL {
        let choices = Choices {
            grouping,
            ..Choices::default()
        };
        let page = brief(&home, &plan(&home, choices), BriefChoices::default()).unwrap();
        for group in page.can_share_as_they_are() {
            let shares = |key: &BriefKey| group.iter().all(|lock| key.locks.contains(lock));
            assert!(page.keys.iter().any(shares), "{grouping:?} {group:?}");
        }
        let first: Vec<usize> = page.locks.iter().map(|lock| lock.keys[0]).collect();
        let mut seen = first.clone();
        seen.dedup();
        assert!(seen.is_sorted() && seen[0] == 0, "{grouping:?} {first:?}");
    }
    let choices = Choices {
        grouping: Grouping::ByNeed,
        ..Choices::default()
    };
    let page = brief(&home, &plan(&home, choices), BriefChoices::default()).unwrap();
    assert_eq!(page.same_keyway, [[0, 1]]);
    assert!(page.can_share_as_they_are().is_empty());
}

#[test]
fn page_for_copies_alone_asks_nothing_about_work_at_the_door() {
    let people = [Role::Resident];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let needs = Some([door].into());
    let sitter = Holder {
        needs,
        ..Holder::of(Role::Sitter)
    };
    let home = home.with(Change::AddHolder(sitter)).unwrap();
    let choices = Choices {
        grouping: Grouping::ByNeed,
        ..Choices::default()
    };
    let page = brief(&home, &plan(&home, choices), BriefChoices::default()).unwrap();
    assert!(page.locks.is_empty() && page.keys.len() == 1);
    let at_the_door = |ask| matches!(ask, Ask::WholePriceBeforeWork | Ask::LicenceAndPapers);
    assert!(!page.asked().any(at_the_door));
    assert!(page.asked().any(|ask| ask == Ask::RestrictedOrNot));
}

fn with_restricted(home: &Household, key: KeyId, restricted: Option<bool>) -> Household {
    let part = *home.key(key).unwrap();
    home.with(Change::SetKey(key, Key { restricted, ..part }))
        .unwrap()
}

#[test]
fn restricted_key_of_a_lock_that_takes_several_is_told_which_it_is() {
    let home = master_keyed(Arrangement::MasterKeyed);
    let (front, lock) = home.locks().next().unwrap();
    let opens = |key: &KeyId| {
        home.locks()
            .filter(|(_, lock)| lock.keys.contains(key))
            .count()
    };
    let (mut own, mut master) = (None, None);
    for &key in &lock.keys {
        let which = if opens(&key) > 1 {
            &mut master
        } else {
            &mut own
        };
        *which = Some(key);
    }
    let told = |home: &Household| {
        let page = brief(
            home,
            &plan(home, Choices::default()),
            BriefChoices::default(),
        )
        .unwrap();
        assert_eq!(page.locks[0].lock, front);
        page.locks[0].restricted
    };
    for (of_own, of_master, which) in [
        (Some(false), Some(true), Some(Restricted::Master)),
        (Some(true), None, Some(Restricted::Own)),
        (Some(true), Some(true), Some(Restricted::All)),
        (Some(false), Some(false), None),
        (Some(false), None, None),
    ] {
        let home = with_restricted(&home, own.unwrap(), of_own);
        let home = with_restricted(&home, master.unwrap(), of_master);
        assert_eq!(told(&home), which, "{of_own:?} {of_master:?}");
    }
    let home = master_keyed(Arrangement::CentralLock);
    let home = with_restricted(&home, master.unwrap(), Some(true));
    assert_eq!(told(&home), Some(Restricted::Some), "no master there");
}

#[test]
fn new_key_in_place_of_several_is_restricted_where_one_of_them_was() {
    let people = [Role::Resident];
    let home = quick::two_doors(LockKind::PinTumbler, &people).unwrap();
    let keys: Vec<KeyId> = home.keys().map(|(key, _)| key).collect();
    let home = with_restricted(&home, keys[0], Some(false));
    let home = with_restricted(&home, keys[1], Some(true));
    let home = losing(&home, Role::Resident, Loss::NearHome);
    let choices = Choices {
        grouping: Grouping::AllAlike,
        ..Choices::default()
    };
    let made = plan(&home, choices);
    assert_eq!(made.keys.len(), 1, "both doors get one new key");
    let after = made.carried_out(&home).unwrap();
    let restricted: Vec<_> = after.keys().map(|(_, key)| key.restricted).collect();
    assert_eq!(restricted, [Some(true)]);
}

#[test]
fn door_with_two_locks_on_one_key_is_named_once() {
    let people = [Role::Resident];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let (key, _) = home.keys().next().unwrap();
    let second = Lock::on(door, LockKind::Lever).opened_by(key);
    let home = home.with(Change::AddLock(second)).unwrap();
    let sitter = Holder {
        needs: Some([door].into()),
        ..Holder::of(Role::Sitter)
    };
    let home = home.with(Change::AddHolder(sitter)).unwrap();
    let choices = Choices {
        grouping: Grouping::ByNeed,
        ..Choices::default()
    };
    let page = brief(&home, &plan(&home, choices), BriefChoices::default()).unwrap();
    assert_eq!(page.keys.len(), 1);
    assert_eq!(page.keys[0].other_doors, [DoorKind::FrontDoor]);
}

#[test]
fn locks_that_stay_are_known_each_by_its_own_id() {
    let home = demonstration::household();
    let choices = Choices {
        grouping: Grouping::AllAlike,
        ..Choices::default()
    };
    let page = brief(&home, &plan(&home, choices), BriefChoices::default()).unwrap();
    let seen_to = page.locks.iter().map(|lock| lock.lock);
    let staying = page.matched.iter().map(|lock| lock.lock);
    let all: Vec<LockId> = seen_to.chain(staying).collect();
    let each: BTreeSet<LockId> = all.iter().copied().collect();
    assert!(!page.matched.is_empty());
    assert_eq!(each.len(), all.len());
    for matched in &page.matched {
        assert_eq!(home.lock(matched.lock).unwrap().kind, matched.kind);
    }
}

#[test]
fn grade_is_asked_about_only_where_a_new_lock_may_come() {
    let asks = |kind: LockKind| {
        let people = [Role::Resident, Role::Sitter];
        let home = quick::one_door(DoorKind::FrontDoor, kind, &people).unwrap();
        let home = losing(&home, Role::Sitter, Loss::NearHome);
        let made = plan(&home, Choices::default());
        let page = brief(&home, &made, BriefChoices::default()).unwrap();
        page.asked().any(|ask| ask == Ask::InsurersGrade)
    };
    assert!(asks(LockKind::EuropeanProfile));
    assert!(asks(LockKind::NotSure));
    assert!(!asks(LockKind::SmallLock));
}

/// Two doors, each with its own key, and a master key to both; everybody has one of each, and the sitter has
/// lost the master key alone.
fn master_pair() -> Household {
    let people = [Role::Resident, Role::Sitter];
    let mut home = quick::two_doors(LockKind::PinTumbler, &people).unwrap();
    let master = home.next_key();
    home = home.with(Change::AddKey(Key::default())).unwrap();
    let locks: Vec<(LockId, Lock)> = home.locks().map(|(id, it)| (id, it.clone())).collect();
    for (id, mut lock) in locks {
        lock.keys.insert(master);
        lock.arrangement = Arrangement::MasterKeyed;
        home = home.with(Change::SetLock(id, lock)).unwrap();
    }
    for role in people {
        let copy = KeyCopy::held(master, crate::homes::holder(&home, role));
        home = home.with(Change::AddCopy(copy)).unwrap();
    }
    let sitter = crate::homes::holder(&home, Role::Sitter);
    let mut ring = home.ring_of(sitter);
    let (copy, _) = ring.find(|(_, copy)| copy.key == master).unwrap();
    let loss = Loss::NearHome;
    home.with(Change::Lose { copy, loss }).unwrap()
}

fn page_of(home: &Household, grouping: Grouping) -> Brief {
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    let ticked = BriefChoices {
        urgency: true,
        ..BriefChoices::default()
    };
    brief(home, &plan(home, choices), ticked).unwrap()
}

#[test]
fn master_pair_says_which_key_is_the_master_and_which_stay_and_which_must_fail() {
    let page = page_of(&master_pair(), Grouping::AsNow);
    let keying: Vec<Keying> = page.locks.iter().map(|lock| lock.keying).collect();
    assert_eq!(keying, [Keying::MasterKeyed, Keying::MasterKeyed]);
    let keys = page.keys.iter();
    let keys: Vec<_> = keys
        .map(|key| (key.is_new, key.rank, &key.locks[..]))
        .collect();
    assert_eq!(
        keys,
        [
            (true, KeyRank::Master, &[0, 1][..]),
            (false, KeyRank::Own, &[0]),
            (false, KeyRank::Own, &[1]),
        ]
    );
    let old = OldKey {
        rank: KeyRank::Master,
        locks: vec![0, 1],
    };
    assert_eq!(page.old_keys, [old], "the residents' is at hand");
    assert_eq!((page.master_keyed(), page.keyed_alike()), (2, 0));
    assert!(
        !page.is_about_sharing(),
        "one master key may enter two keyholes"
    );
}

#[test]
fn pair_that_gets_one_key_is_master_keyed_no_more() {
    let page = page_of(&master_pair(), Grouping::AllAlike);
    assert_eq!(page.keys.len(), 1);
    for lock in &page.locks {
        assert_eq!(lock.keying, Keying::OneKeyAfterwards);
    }
    let old = page.old_keys.iter();
    let old: Vec<_> = old.map(|key| (key.rank, &key.locks[..])).collect();
    assert_eq!(
        old,
        [
            (KeyRank::Own, &[0][..]),
            (KeyRank::Master, &[0, 1]),
            (KeyRank::Own, &[1]),
        ]
    );
    assert_eq!((page.master_keyed(), page.keyed_alike()), (0, 2));
}

#[test]
fn one_visit_has_one_date_and_a_small_lock_its_own() {
    let home = demonstration::household();
    let cabinet = home
        .doors()
        .find(|(_, door)| door.kind == DoorKind::Cabinet);
    let (cabinet, _) = cabinet.unwrap();
    let key = home
        .locks_of(cabinet)
        .find_map(|(_, lock)| lock.keys.first().copied());
    let finding = Some(Finding {
        exposure: FoundExposure::Exposed(Urgency::WhenConvenient),
        safety_first: false,
    });
    let key = key.unwrap();
    let home = home.with(Change::Check { key, finding }).unwrap();
    let home = losing(&home, Role::Sitter, Loss::Stolen);
    let made = plan(&home, Choices::default());
    let own = made
        .works
        .iter()
        .filter(|work| work.who == WhoActs::Household);
    let rows: BTreeSet<Urgency> = own.map(|work| work.urgency).collect();
    assert!(
        rows.len() > 2,
        "by itself each lock has another date: {rows:?}"
    );
    let page = page_of(&home, Grouping::AsNow);
    let visit = page.visit.unwrap();
    assert_eq!(visit.due.urgency, Some(Urgency::Today));
    for lock in &page.locks {
        assert_eq!(lock.is_of_the_visit, lock.door != DoorKind::Cabinet);
        assert_eq!(lock.due == Some(visit.due), lock.is_of_the_visit);
    }
}

#[test]
fn visit_is_due_today_where_a_door_has_to_be_opened() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]);
    let home = losing(&home.unwrap(), Role::Resident, Loss::NearHome);
    let made = plan(&home, Choices::default());
    let of = |can_get_in: Option<bool>| {
        let readiness = Readiness {
            can_get_in,
            ..Readiness::default()
        };
        let choices = BriefChoices {
            urgency: true,
            readiness,
            ..BriefChoices::default()
        };
        let visit = brief(&home, &made, choices).unwrap().visit.unwrap();
        (visit.due.urgency.unwrap(), visit.is_today_to_open)
    };
    assert_eq!(of(None), (Urgency::Soon, true));
    assert_eq!(of(Some(true)), (Urgency::Soon, false));
    assert_eq!(of(Some(false)), (Urgency::Today, false));
}

#[test]
fn whoever_brings_a_lock_is_told_what_to_measure() {
    let lengths = CylinderLengths::new(30, 35).unwrap();
    for (kind, known, may_be_new, expected) in [
        (LockKind::Lever, None, true, Measure::CaseAndBackset),
        (LockKind::PinTumbler, None, true, Measure::TypeAndLength),
        (LockKind::PinTumbler, None, false, Measure::Nothing),
        (LockKind::EuropeanProfile, None, false, Measure::Lengths),
        (LockKind::NotSure, None, true, Measure::KindFirst),
        (
            LockKind::PinTumbler,
            Some(lengths),
            true,
            Measure::Known(lengths),
        ),
    ] {
        assert_eq!(measure(kind, known, may_be_new), expected, "{kind:?}");
    }
    // All alike in the example: the lever lock is new, and round ones may have to be.
    let home = demonstration::household();
    let page = page_of(&home, Grouping::AllAlike);
    let asked = |kind: LockKind| -> Vec<Measure> {
        let locks = page.locks.iter().filter(|lock| lock.kind == kind);
        locks.map(BriefLock::measure).collect()
    };
    assert_eq!(asked(LockKind::Lever), [Measure::CaseAndBackset]);
    assert_eq!(asked(LockKind::PinTumbler), [Measure::TypeAndLength; 2]);
    // The lock that they are matched to is known as well as the household knows it.
    let back = page
        .matched
        .iter()
        .find(|it| it.door == DoorKind::BackDoor)
        .unwrap();
    assert_eq!(
        (back.material, back.inside),
        (Some(Material::Plastic), Some(Inside::Key))
    );
    assert_eq!(
        (back.measure(), back.has_working_key),
        (Measure::Lengths, true)
    );
    let (_, lock) = home.locks().find(|(id, _)| *id == back.lock).unwrap();
    let lengths = Some(lengths);
    let lock = Lock {
        lengths,
        ..lock.clone()
    };
    let home = home.with(Change::SetLock(back.lock, lock)).unwrap();
    let page = page_of(&home, Grouping::AllAlike);
    assert!(page.matched.iter().any(|it| it.lengths == lengths));
}

#[test]
fn more_than_planned_is_asked_for_with_its_reason() {
    let page = page_of(&demonstration::household(), Grouping::AllAlike);
    let of = |item| {
        let quote = page.quotes.iter().find(|quote| quote.item == item).unwrap();
        (quote.planned, quote.count, quote.only_if.as_slice())
    };
    let stays = &[OnlyIf::CannotTakeTheKeyThatStays][..];
    assert_eq!(of(PriceItem::RekeyedCylinder), (2, Some(2), &[][..]));
    assert_eq!(of(PriceItem::NewCylinder), (0, Some(3), stays));
    assert_eq!(of(PriceItem::LockOrLevers), (1, Some(1), &[][..]));
    let (planned, most, why) = of(PriceItem::Copy);
    assert!(most > Some(planned));
    assert_eq!(why, stays);
    let people = [Role::Resident, Role::Sitter];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::NotSure, &people).unwrap();
    let page = page_of(
        &losing(&home, Role::Sitter, Loss::NearHome),
        Grouping::AsNow,
    );
    let quotes = page
        .quotes
        .iter()
        .filter(|quote| quote.is_in_place_of_another());
    let quotes: Vec<_> = quotes
        .map(|it| (it.item, it.planned, it.only_if.as_slice()))
        .collect();
    let turns_out = &[OnlyIf::KindTurnsOutSo][..];
    assert_eq!(
        quotes,
        [
            (PriceItem::NewCylinder, 0, turns_out),
            (PriceItem::LockOrLevers, 0, turns_out),
        ]
    );
}

#[test]
fn old_key_is_tried_in_outlying_doors_only_where_one_has_a_lock() {
    let (home, made) = lost();
    let page = brief(&home, &made, BriefChoices::default()).unwrap();
    // The yard gate opens by remote.
    assert_eq!(page.outlying, [DoorKind::Shed]);
    assert!(page.after.contains(&AfterVisit::TryOldKeyInOutlyingDoors));
    let people = [Role::Resident, Role::Sitter];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let home = losing(&home, Role::Sitter, Loss::NearHome);
    let page = page_of(&home, Grouping::AsNow);
    assert!(page.outlying.is_empty());
    assert!(page.after.contains(&AfterVisit::ScrapTheOldKeys));
    assert!(!page.after.contains(&AfterVisit::TryOldKeyInOutlyingDoors));
}
