//! Costs by hand, from prices made up for the test.

use proptest::prelude::*;
use self_check_core::advice::Urgency;
use self_check_core::household::*;

use super::any::household;
use crate::homes::{holder, losing};

fn price(low: u64, high: u64) -> Option<PriceRange> {
    Some(PriceRange::new(low, high).unwrap())
}

/// Two doors keyed alike, four people, one of whom lost the ring.
fn lost() -> Household {
    let people = [
        Role::Resident,
        Role::Resident,
        Role::Neighbour,
        Role::Sitter,
    ];
    let home = quick::two_doors_alike(LockKind::PinTumbler, &people).unwrap();
    losing(&home, Role::Sitter, Loss::NearHome)
}

fn priced(home: &Household, prices: Prices) -> Household {
    home.with(Change::SetPrices(prices)).unwrap()
}

#[test]
fn cost_of_a_visit_is_call_out_cylinders_and_copies() {
    let prices = Prices::default()
        .with(PriceItem::CallOut, price(5_000, 8_000))
        .with(PriceItem::RekeyedCylinder, price(2_000, 2_500))
        .with(PriceItem::Copy, price(400, 700));
    let home = priced(&lost(), prices);
    let cost = plan(&home, Choices::default()).cost(&home).unwrap();
    assert_eq!(cost.missing, []);
    assert_eq!(cost.known.low(), 5_000 + 2 * 2_000 + 4 * 400);
    assert_eq!(cost.known.high(), 8_000 + 2 * 2_500 + 4 * 700);
}

#[test]
fn cost_with_copies_included_charges_the_rest() {
    let mut prices = Prices::default().with(PriceItem::Copy, price(100, 100));
    prices.copies_included = 3;
    let charged = |kind: LockKind| {
        let home = priced(&lost(), prices.clone());
        let kinds = home.locks().map(|(id, lock)| {
            Change::SetLock(
                id,
                Lock {
                    kind,
                    ..lock.clone()
                },
            )
        });
        let home = home.with_all(kinds.collect::<Vec<_>>()).unwrap();
        let cost = plan(&home, Choices::default()).cost(&home).unwrap();
        (cost.known.low(), cost.known.high())
    };
    // Four copies for two locks that share a key. Rekeyed, no key comes with them; two new cylinders bring
    // six; of locks of an unknown kind it is not known.
    assert_eq!(charged(LockKind::PinTumbler), (400, 400));
    assert_eq!(charged(LockKind::EuropeanProfile), (0, 0));
    assert_eq!(charged(LockKind::NotSure), (0, 400));
}

#[test]
fn what_comes_with_one_lock_of_two_keys_is_counted_once() {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::EuropeanProfile, &people).unwrap();
    let (lock, part) = home.locks().next().unwrap();
    let second = home.next_key();
    let mut part = part.clone();
    part.keys.insert(second);
    part.arrangement = Arrangement::CentralLock;
    let sitter = holder(&home, Role::Sitter);
    let home = home.with_all([
        Change::AddKey(Key::default()),
        Change::SetLock(lock, part),
        Change::Give {
            key: second,
            to: sitter,
            copies: 2,
        },
        Change::LoseRing {
            holder: sitter,
            loss: Loss::NearHome,
        },
    ]);
    let plan = plan(&home.unwrap(), Choices::default());
    // Two copies of each of two keys; with the one cylinder come three.
    let copies = |quantities: Quantities| quantities.of(Priced::Item(PriceItem::Copy));
    assert_eq!(plan.copies_to_cut(), 4);
    assert_eq!(
        (
            copies(plan.quantities(3)),
            copies(plan.quantities_at_most(3))
        ),
        (2, 2)
    );
}

#[test]
fn cost_without_prices_names_what_is_missing_and_invents_nothing() {
    let home = lost();
    let cost = plan(&home, Choices::default()).cost(&home).unwrap();
    assert_eq!(
        cost.missing,
        [
            PriceItem::CallOut,
            PriceItem::RekeyedCylinder,
            PriceItem::Copy
        ]
    );
    assert_eq!(cost.known, PriceRange::default());
    assert!(cost.lines.iter().all(|line| line.total.is_none()));
}

#[test]
fn cost_of_one_of_two_ways_is_counted_only_where_it_is_the_least() {
    let told = |items: &[(PriceItem, u64, u64)], what| {
        let told = items.iter();
        let prices = told.fold(Prices::default(), |prices, &(item, low, high)| {
            prices.with(item, price(low, high))
        });
        let mut one = Quantities::default();
        one.add(what, 1);
        let cost = prices.cost(&one).unwrap();
        assert_eq!(cost.lines[0].total, None);
        let known = (cost.known.low(), cost.known.high());
        (known, cost.lines[0].at_least, cost.missing)
    };
    use PriceItem::{CallOut, CallOutAfterHours, NewCylinder, RekeyedCylinder};
    // A visit costs at least what it costs in ordinary hours; what it costs at night says nothing of that.
    let visit = Priced::CallOutAtAnyHour;
    assert_eq!(
        told(&[(CallOut, 50, 80)], visit),
        ((50, 80), price(50, 80), vec![CallOutAfterHours])
    );
    assert_eq!(
        told(&[(CallOutAfterHours, 90, 120)], visit),
        ((0, 0), None, vec![CallOut])
    );
    // Either of a rekeyed lock and a new one may be the cheaper.
    let lock = Priced::RekeyedOrNew;
    assert_eq!(
        told(&[(RekeyedCylinder, 20, 30)], lock),
        ((0, 0), None, vec![NewCylinder])
    );
    assert_eq!(
        told(&[(NewCylinder, 60, 70)], lock),
        ((0, 0), None, vec![RekeyedCylinder])
    );
}

#[test]
fn cost_after_hours_asks_for_that_price() {
    let home = lost();
    let choices = Choices {
        after_hours: true,
        ..Choices::default()
    };
    let cost = plan(&home, choices).cost(&home).unwrap();
    assert!(cost.missing.contains(&PriceItem::CallOutAfterHours));
    assert!(!cost.missing.contains(&PriceItem::CallOut));
}

#[test]
fn cost_of_a_theft_reaches_from_ordinary_hours_to_after_hours() {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::two_doors_alike(LockKind::PinTumbler, &people).unwrap();
    let prices = Prices::default()
        .with(PriceItem::CallOut, price(60, 90))
        .with(PriceItem::CallOutAfterHours, price(110, 180))
        .with(PriceItem::RekeyedCylinder, price(0, 0))
        .with(PriceItem::Copy, price(0, 0));
    let cost = |loss, grouping| {
        let home = priced(&losing(&home, Role::Sitter, loss), prices.clone());
        let choices = Choices {
            grouping,
            ..Choices::default()
        };
        let cost = plan(&home, choices).cost(&home).unwrap();
        assert_eq!(cost.missing, []);
        (cost.known.low(), cost.known.high())
    };
    for &grouping in Grouping::ALL {
        assert_eq!(cost(Loss::Stolen, grouping), (60, 180), "{grouping:?}");
        assert_eq!(cost(Loss::NearHome, grouping), (60, 90), "{grouping:?}");
    }
    let home = priced(&losing(&home, Role::Sitter, Loss::Stolen), prices);
    for way in compare(&home) {
        let cost = home.prices().cost(&way.set_up).unwrap();
        assert_eq!((cost.known.low(), cost.known.high()), (60, 180));
    }
}

#[test]
fn ways_of_sharing_keys_come_to_the_same_where_nothing_can_be_shared_otherwise() {
    let same = |home: &Household| {
        let ways = compare(home);
        ways.iter().all(|way| way.comes_to_the_same_as(&ways[0]))
    };
    let people = [Role::Resident, Role::Sitter];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    assert!(same(&home));
    assert!(same(&losing(&home, Role::Sitter, Loss::Stolen)));
    let alike = quick::two_doors_alike(LockKind::PinTumbler, &people).unwrap();
    assert!(same(&alike));
    let (key, _) = home.keys().next().unwrap();
    assert!(same(
        &home.with(Change::AddCopy(KeyCopy::spare(key))).unwrap()
    ));
    assert!(!same(
        &quick::two_doors(LockKind::PinTumbler, &people).unwrap()
    ));
    assert!(!same(&demonstration::household()));
}

#[test]
fn cost_of_a_lock_nobody_knows_spans_rekeying_a_new_cylinder_and_a_lever_lock() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::NotSure, &[Role::Resident]).unwrap();
    let (copy, _) = home.copies().next().unwrap();
    let loss = Loss::FarAway;
    let home = home.with(Change::Lose { copy, loss }).unwrap();
    let prices = Prices::default()
        .with(PriceItem::RekeyedCylinder, price(20, 30))
        .with(PriceItem::NewCylinder, price(25, 90));
    let cost = |prices: Prices| {
        let home = priced(&home, prices);
        plan(&home, Choices::default()).cost(&home).unwrap()
    };
    let lacking = cost(prices.clone());
    assert!(lacking.missing.contains(&PriceItem::LockOrLevers));
    let cost = cost(prices.with(PriceItem::LockOrLevers, price(60, 110)));
    assert_eq!((cost.known.low(), cost.known.high()), (20, 110));
    let plan = plan(&home, Choices::default());
    let page = brief(&home, &plan, BriefChoices::default()).unwrap();
    let of = |item| page.quotes.iter().find(|quote| quote.item == item);
    let quoted = [
        PriceItem::RekeyedCylinder,
        PriceItem::NewCylinder,
        PriceItem::LockOrLevers,
    ]
    .map(|item| of(item).map(|quote| (quote.count, quote.planned)));
    assert_eq!(
        quoted,
        [Some((Some(1), 1)), Some((Some(1), 0)), Some((Some(1), 0))]
    );
}

#[test]
fn cost_too_large_to_count_is_refused() {
    let prices = Prices::default().with(PriceItem::Copy, price(0, PriceRange::MOST));
    let mut quantities = Quantities::default();
    quantities.add(Priced::Item(PriceItem::Copy), u64::MAX);
    assert_eq!(prices.cost(&quantities), Err(TooMuch));
    quantities.add(Priced::Item(PriceItem::Copy), u64::MAX);
    assert_eq!(
        quantities.of(Priced::Item(PriceItem::Copy)),
        u64::MAX,
        "does not wrap"
    );
}

#[test]
fn small_locks_alone_need_nobody_to_come() {
    let home = quick::one_door(DoorKind::Padlock, LockKind::SmallLock, &[Role::Resident]).unwrap();
    let (copy, _) = home.copies().next().unwrap();
    let loss = Loss::FarAway;
    let home = home.with(Change::Lose { copy, loss }).unwrap();
    let cost = plan(&home, Choices::default()).cost(&home).unwrap();
    assert_eq!(cost.missing, [PriceItem::SmallLock, PriceItem::Copy]);
}

#[test]
fn lost_ring_costs_by_grouping_what_it_opens() {
    let home =
        quick::two_doors_alike(LockKind::PinTumbler, &[Role::Resident, Role::Neighbour]).unwrap();
    let (neighbour, _) = home.holders().nth(1).unwrap();
    let (back, _) = home.doors().nth(1).unwrap();
    let home = home
        .with(Change::Needs {
            holder: neighbour,
            door: back,
            needs: false,
        })
        .unwrap();
    let sides = compare(&home);
    let carried = |grouping: usize| -> Vec<usize> {
        let holders = sides[grouping].holders.iter();
        holders.map(|holder| holder.keys_carried).collect()
    };
    let lost = |grouping: usize| -> Vec<usize> {
        let holders = sides[grouping].holders.iter();
        holders.map(|holder| holder.locks_if_lost).collect()
    };
    assert_eq!((lost(0), lost(2)), (vec![2, 2], vec![2, 1]));
    assert_eq!(
        sides.iter().map(|side| side.grouping).collect::<Vec<_>>(),
        Grouping::ALL
    );
    assert_eq!(
        (carried(0), carried(1), carried(2)),
        (vec![1, 1], vec![1, 1], vec![2, 1])
    );
    assert_eq!(sides[0].doors_beyond_need(), 1);
    assert_eq!(sides[2].doors_beyond_need(), 0);
    assert_eq!((sides[0].locks_to_set_up, sides[2].locks_to_set_up), (0, 1));
}

/// The household of the demonstration with every door of its own keyed alike.
fn all_alike(home: &Household) -> Plan {
    let choices = Choices {
        grouping: Grouping::AllAlike,
        ..Choices::default()
    };
    plan(home, choices)
}

#[test]
fn most_is_what_the_plan_takes_where_no_key_can_stay() {
    // By hand: the back door's key stays, to which front door and workshop are to be set. Where they cannot, the
    // back door is seen to as well. The shed's padlock and the cabinet's lock cannot share a key.
    let home = demonstration::household();
    let plan = all_alike(&home);
    let locks = |quantities: &Quantities| {
        let cylinders = quantities.of(Priced::RekeyedOrNew)
            + quantities.of(Priced::KindNotKnown)
            + quantities.of(Priced::Item(PriceItem::NewCylinder))
            + quantities.of(Priced::Item(PriceItem::RekeyedCylinder));
        let small = quantities.of(Priced::Item(PriceItem::SmallLock));
        (cylinders, small)
    };
    let (least, most) = (plan.quantities(0), plan.quantities_at_most(0));
    assert_eq!((locks(&least), locks(&most)), ((2, 0), (3, 0)));
    assert_eq!((plan.works.len(), plan.locks_at_most()), (3, 4));
    let copies = |quantities: &Quantities| quantities.of(Priced::Item(PriceItem::Copy));
    // To all cylinders: one each for six people and the key safe, two for the second resident, who lost
    // one: nine, of which four are there. To the room: the lodger's and a spare. To the cabinet: one for the
    // second resident, who has none; to the shed a spare is handed on.
    assert_eq!((copies(&least), copies(&most)), (5 + 2 + 1, 9 + 2 + 1));
    let brief = brief(&home, &plan, BriefChoices::default()).unwrap();
    let asked = |item| {
        let quote = brief.quotes.iter().find(|quote| quote.item == item);
        quote.and_then(|quote| quote.count)
    };
    assert_eq!(asked(PriceItem::NewCylinder), Some(3));
    assert_eq!(asked(PriceItem::SmallLock), None);
    assert_eq!(asked(PriceItem::Copy), Some(copies(&most)));
    let cost = plan.cost(&home).unwrap();
    let prices = home.prices();
    let (low, high) = (prices.cost(&least).unwrap(), prices.cost(&most).unwrap());
    assert_eq!(cost.known.low(), low.known.low());
    assert_eq!(cost.known.high(), high.known.high());
    // Visit, two cylinders rekeyed or new, one lever lock, copies; then the visit at night, for nobody has said
    // how the house key was lost, and one new cylinder more.
    assert_eq!(cost.known.low(), 100 * (60 + 2 * 18 + 60 + 8 * 4));
    let most = 180 + 2 * 70 + 110 + 12 * 9 + 70;
    assert_eq!(cost.known.high(), 100 * most);
}

/// The plan for the same groups where every key that stays and is in doubt is out, so that none can stay.
fn with_none_kept(home: &Household, doubtful: &Plan) -> Plan {
    let kept = doubtful.keys.iter().filter(|key| key.otherwise.is_some());
    let kept = kept.filter_map(|key| match key.origin {
        plan::Origin::Kept(key) => Some(key),
        plan::Origin::New { .. } => None,
    });
    let exposure = FoundExposure::Exposed(Urgency::WhenConvenient);
    let finding = Some(Finding {
        exposure,
        safety_first: false,
    });
    let out = kept.map(|key| Change::Check { key, finding });
    let home = home.with_all(out.collect::<Vec<_>>()).unwrap();
    plan(&home, doubtful.choices)
}

/// Whether a key stays with other locks than in the plan before: then other locks get a new one.
fn a_key_moved(home: &Household, before: &Plan, after: &Plan) -> bool {
    let touches = |plan: &Plan, id: LockId| plan.works.iter().any(|work| work.lock == id);
    let kept = after
        .keys
        .iter()
        .filter_map(|planned| match planned.origin {
            plan::Origin::Kept(key) => Some((key, &planned.locks)),
            plan::Origin::New { .. } => None,
        });
    kept.into_iter().any(|(key, stays_with)| {
        let opened = home.locks().filter(|(_, lock)| lock.keys.contains(&key));
        opened
            .filter(|(id, _)| !stays_with.contains(id))
            .any(|(id, _)| touches(after, id) && !touches(before, id))
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn at_most_is_not_exceeded_by_the_plan_in_which_no_doubtful_key_stays(
        home in household(120),
    ) {
        let included = 0;
        for grouping in [Grouping::AllAlike, Grouping::ByNeed] {
            let choices = Choices { grouping, ..Choices::default() };
            let doubtful = plan(&home, choices);
            let without = with_none_kept(&home, &doubtful);
            // Without those keys others may stay: then fewer locks are touched than the most.
            prop_assert!(without.works.len() <= doubtful.locks_at_most());
            let most = doubtful.quantities_at_most(included);
            let least = doubtful.quantities(included);
            for (what, count) in least.iter() {
                prop_assert!(most.of(what) >= count);
            }
            let cylinders = |quantities: &Quantities| {
                quantities.of(Priced::RekeyedOrNew)
                    + quantities.of(Priced::KindNotKnown)
                    + quantities.of(Priced::Item(PriceItem::NewCylinder))
                    + quantities.of(Priced::Item(PriceItem::RekeyedCylinder))
            };
            if a_key_moved(&home, &doubtful, &without) {
                continue;
            }
            let wanted = without.quantities(included);
            prop_assert!(cylinders(&wanted) <= cylinders(&most));
            for item in [PriceItem::SmallLock, PriceItem::LockOrLevers, PriceItem::Copy] {
                let item = Priced::Item(item);
                prop_assert!(wanted.of(item) <= most.of(item), "{:?} {:?}", grouping, item);
            }
        }
    }
}

/// What the plan costs by invented prices: a visit, or one at night; opening a door; a cylinder rekeyed, which
/// costs nothing here, as do copies.
fn opened(home: &Household) -> (Vec<CostLine>, (u64, u64)) {
    let prices = Prices::default()
        .with(PriceItem::CallOut, price(60, 90))
        .with(PriceItem::CallOutAfterHours, price(110, 180))
        .with(PriceItem::Opening, price(50, 95))
        .with(PriceItem::RekeyedCylinder, price(0, 0))
        .with(PriceItem::Copy, price(0, 0));
    let home = priced(home, prices);
    let cost = plan(&home, Choices::default()).cost(&home).unwrap();
    assert_eq!(cost.missing, []);
    (cost.lines, (cost.known.low(), cost.known.high()))
}

#[test]
fn cost_of_a_door_to_which_no_key_is_left_counts_opening_it() {
    let alone = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]);
    let lost = losing(&alone.unwrap(), Role::Resident, Loss::FarAway);
    let (lines, sum) = opened(&lost);
    let opening = lines
        .iter()
        .find(|line| line.what == Priced::Item(PriceItem::Opening))
        .unwrap();
    assert_eq!((opening.count, opening.at_most), (0, 1));
    // From a visit in ordinary hours that finds the door open, to one at night that opens it.
    assert_eq!(sum, (60, 180 + 95));
    let people = [Role::Resident, Role::Sitter];
    let two = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let (lines, sum) = opened(&losing(&two, Role::Sitter, Loss::FarAway));
    assert!(lines.iter().all(|line| line.what != opening.what));
    assert_eq!(sum, (60, 90));
}

#[test]
fn cost_of_opening_a_landlords_door_has_a_visit_with_it() {
    let home = quick::one_door(DoorKind::FlatDoor, LockKind::PinTumbler, &[Role::Resident]);
    let home = losing(&home.unwrap(), Role::Resident, Loss::FarAway);
    let (door, _) = home.doors().next().unwrap();
    let let_out = Door {
        who_decides: WhoDecides::Landlord,
        ..Door::of(DoorKind::FlatDoor)
    };
    let home = home.with(Change::SetDoor(door, let_out)).unwrap();
    assert_eq!(opened(&home).1, (0, 180 + 95));
}

#[test]
fn cost_while_nobody_has_said_how_it_was_lost_reaches_as_far_as_any_answer() {
    let people = [Role::Resident, Role::Sitter];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let sum = |loss| opened(&losing(&home, Role::Sitter, loss)).1;
    let open = sum(Loss::NotSaid);
    assert_eq!(open, (60, 180));
    for &loss in Loss::ALL {
        assert!(sum(loss).1 <= open.1, "{loss:?}");
    }
}
