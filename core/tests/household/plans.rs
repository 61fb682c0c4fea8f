//! Plans by hand: verbs, owners, masters, key safes, copies for whom.

use self_check_core::advice::{Action, Urgency};
use self_check_core::household::plan::{Note, Origin, Recipient, Step};
use self_check_core::household::remedy::{WhoActs, remedy};
use self_check_core::household::*;

use crate::homes::{holder, losing};

fn decided_by(kind: DoorKind, who_decides: WhoDecides) -> Door {
    Door {
        who_decides,
        ..Door::of(kind)
    }
}

fn as_now(home: &Household) -> Plan {
    plan(home, Choices::default())
}

#[test]
fn each_lock_has_its_right_verb() {
    use Action::*;
    use DoorKind::*;
    use LockKind::*;
    use WhoDecides::{AnotherOwner, Household, Landlord, Manager};
    let cases: [(LockKind, DoorKind, WhoDecides, &[Action]); 14] = [
        (PinTumbler, FrontDoor, Household, &[RekeyCylinder]),
        (NotSure, FrontDoor, Household, &[RekeyCylinder]),
        (EuropeanProfile, BackDoor, Household, &[ChangeCylinder]),
        (Lever, FrontDoor, Household, &[ChangeLockOrLevers]),
        (SmallLock, Shed, Household, &[ReplaceSmallLock]),
        (NotSure, Mailbox, Household, &[ReplaceSmallLock]),
        (BuildingSystem, FlatDoor, Household, &[OwnerOfSystemActs]),
        (BuildingSystem, FlatDoor, Manager, &[OwnerOfSystemActs]),
        (
            BuildingSystem,
            FlatDoor,
            Landlord,
            &[TellLandlord, OwnerOfSystemActs],
        ),
        (BuildingSystem, BuildingEntrance, Manager, &[TellManager]),
        (PinTumbler, FlatDoor, Manager, &[TellManager]),
        (PinTumbler, FlatDoor, Landlord, &[TellLandlord]),
        (BuildingSystem, OtherDoor, AnotherOwner, &[TellOwner]),
        (Lever, OtherDoor, AnotherOwner, &[TellOwner]),
    ];
    for (kind, door, who, actions) in cases {
        let lock = Lock::on(DoorId::new(1), kind);
        assert_eq!(
            remedy(&lock, &decided_by(door, who)),
            actions,
            "{kind:?} {door:?} {who:?}"
        );
    }
}

#[test]
fn verbs_agree_with_those_of_a_check() {
    use self_check_core::answers::Answers;
    use self_check_core::questions::{Choice, Question};
    let cases = [
        (
            LockKind::PinTumbler,
            DoorKind::FrontDoor,
            WhoDecides::Household,
            Choice::HouseDoor,
            Choice::OwnIt,
            Choice::CutsOnOneEdge,
        ),
        (
            LockKind::Lever,
            DoorKind::FrontDoor,
            WhoDecides::Household,
            Choice::HouseDoor,
            Choice::OwnIt,
            Choice::LeverFlag,
        ),
        (
            LockKind::PinTumbler,
            DoorKind::FlatDoor,
            WhoDecides::Landlord,
            Choice::FlatDoor,
            Choice::RentPrivately,
            Choice::CutsOnOneEdge,
        ),
        (
            LockKind::PinTumbler,
            DoorKind::FlatDoor,
            WhoDecides::Manager,
            Choice::FlatDoor,
            Choice::SharedBlock,
            Choice::CutsOnOneEdge,
        ),
        (
            LockKind::BuildingSystem,
            DoorKind::BuildingEntrance,
            WhoDecides::Manager,
            Choice::BlockEntrance,
            Choice::SharedBlock,
            Choice::CutsOnOneEdge,
        ),
        (
            LockKind::SmallLock,
            DoorKind::Padlock,
            WhoDecides::Household,
            Choice::PadlockOrCabinet,
            Choice::OwnIt,
            Choice::CutsOnOneEdge,
        ),
        (
            LockKind::SmallLock,
            DoorKind::Mailbox,
            WhoDecides::Household,
            Choice::Mailbox,
            Choice::OwnIt,
            Choice::CutsOnOneEdge,
        ),
        (
            LockKind::PinTumbler,
            DoorKind::OtherDoor,
            WhoDecides::AnotherOwner,
            Choice::WorkOrAnothersHome,
            Choice::OwnIt,
            Choice::CutsOnOneEdge,
        ),
    ];
    for (kind, door, who, opens, decides, key) in cases {
        let answers = Answers::none()
            .give(Question::Opens, &[opens])
            .and_then(|answers| answers.give(Question::WhoDecides, &[decides]))
            .and_then(|answers| answers.give(Question::KeyKind, &[key]))
            .unwrap();
        let lock = Lock::on(DoorId::new(1), kind);
        let advised = self_check_core::advice::remedy::remedy(&answers);
        assert_eq!(
            remedy(&lock, &decided_by(door, who)),
            advised,
            "{kind:?} {door:?} {who:?}"
        );
    }
}

#[test]
fn exposed_key_of_a_flat_and_its_system_is_two_peoples_matter() {
    let home = quick::flat_in_a_system(&[Role::Resident, Role::Neighbour]).unwrap();
    let home = losing(&home, Role::Neighbour, Loss::Stolen);
    let plan = as_now(&home);
    assert!(
        plan.works
            .iter()
            .all(|work| work.who == WhoActs::SystemOwner)
    );
    assert_eq!(
        plan.copies_to_cut(),
        0,
        "the owner of the system has them cut"
    );
    assert!(plan.quantities(0).of(Priced::Item(PriceItem::CallOut)) == 0);
    let told: Vec<Action> = plan
        .steps
        .iter()
        .filter_map(|step| match step.step {
            Step::Tell { action, .. } => Some(action),
            _ => None,
        })
        .collect();
    assert_eq!(told, [Action::TellManager, Action::OwnerOfSystemActs]);
    assert!(
        !plan
            .steps
            .iter()
            .any(|step| matches!(step.step, Step::LocksmithVisit(_)))
    );
}

#[test]
fn key_of_two_owners_gives_way_to_two_keys() {
    let home = quick::flat_and_entrance(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (flat_key, _) = home.keys().next().unwrap();
    let (entrance, _) = home.doors().nth(1).unwrap();
    let (lock, part) = home.locks_of(entrance).next().unwrap();
    let part = Lock {
        arrangement: Arrangement::CentralLock,
        ..part.clone()
    };
    let home = home.with(Change::SetLock(lock, part)).unwrap();
    let home = home
        .with(Change::Opens {
            key: flat_key,
            door: entrance,
            opens: true,
        })
        .unwrap();
    let (copy, _) = home.copies_of(flat_key).next().unwrap();
    let home = home
        .with(Change::Lose {
            copy,
            loss: Loss::FarAway,
        })
        .unwrap();
    let plan = as_now(&home);
    let makers: Vec<WhoActs> = plan.keys.iter().map(|key| key.who).collect();
    assert_eq!(makers, [WhoActs::Household, WhoActs::SystemOwner]);
    let after = plan.carried_out(&home).unwrap();
    assert_eq!(
        after.lock(lock).unwrap().keys.len(),
        2,
        "the other flats' key stays"
    );
}

#[test]
fn exposed_change_key_leaves_the_master_and_says_it_is_in_reach() {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let master = home.next_key();
    let mut home = home.with(Change::AddKey(Key::default())).unwrap();
    for (id, lock) in home.clone().locks() {
        let mut lock = Lock {
            arrangement: Arrangement::MasterKeyed,
            ..lock.clone()
        };
        lock.keys.insert(master);
        home = home.with(Change::SetLock(id, lock)).unwrap();
    }
    let (front_key, _) = home.keys().next().unwrap();
    let (copy, _) = home.copies_of(front_key).next().unwrap();
    let home = home
        .with(Change::Lose {
            copy,
            loss: Loss::NearHome,
        })
        .unwrap();
    let plan = as_now(&home);
    assert_eq!(plan.works.len(), 1);
    assert_eq!(plan.works[0].drops, [front_key]);
    assert!(plan.notes.contains(&Note::MasterInReach {
        exposed: front_key,
        master,
        who: WhoActs::Household,
    }));
    let after = plan.carried_out(&home).unwrap();
    assert!(
        after
            .lock(plan.works[0].lock)
            .unwrap()
            .keys
            .contains(&master)
    );
}

#[test]
fn exposed_master_is_every_lock_it_opens() {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident, Role::Caretaker]).unwrap();
    let master = home.next_key();
    let mut home = home.with(Change::AddKey(Key::default())).unwrap();
    for (id, lock) in home.clone().locks() {
        let mut lock = Lock {
            arrangement: Arrangement::MasterKeyed,
            ..lock.clone()
        };
        lock.keys.insert(master);
        home = home.with(Change::SetLock(id, lock)).unwrap();
    }
    let to = holder(&home, Role::Caretaker);
    let copy = home.next_copy();
    let home = home
        .with(Change::Give {
            key: master,
            to,
            copies: 1,
        })
        .unwrap();
    let home = home
        .with(Change::Lose {
            copy,
            loss: Loss::NearHome,
        })
        .unwrap();
    let plan = as_now(&home);
    assert_eq!(plan.works.len(), 2);
    let is_in_reach = |note: &Note| matches!(note, Note::MasterInReach { .. });
    assert!(!plan.notes.iter().any(is_in_reach), "it is the master");
    assert_eq!(plan.keys.len(), 1, "the doors' own keys stay");
    let spare = (Recipient::Spare, 1);
    assert_eq!(plan.keys[0].copies, [(Recipient::Holder(to), 1), spare]);
}

#[test]
fn copies_are_for_those_who_had_the_key_and_need_the_door() {
    let people = [
        Role::Resident,
        Role::Neighbour,
        Role::Cleaner,
        Role::FormerOccupant,
    ];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::EuropeanProfile, &people).unwrap();
    let (key, _) = home.keys().next().unwrap();
    let (door, _) = home.doors().next().unwrap();
    let resident = holder(&home, Role::Resident);
    let neighbour = holder(&home, Role::Neighbour);
    let cleaner = holder(&home, Role::Cleaner);
    let former = holder(&home, Role::FormerOccupant);
    let safe = home.next_way();
    let home = home
        .with(Change::AddWay(Way::at(door, WayKind::KeySafe)))
        .unwrap();
    let home = home
        .with_all([
            Change::Give {
                key,
                to: resident,
                copies: 1,
            },
            Change::Needs {
                holder: cleaner,
                door,
                needs: false,
            },
            Change::NoLongerShould {
                holder: former,
                no_longer: true,
            },
        ])
        .unwrap()
        .with_all([
            Change::AddCopy(KeyCopy {
                key,
                place: Place::InKeySafe(safe),
            }),
            Change::AddCopy(KeyCopy::spare(key)),
            Change::AddCopy(KeyCopy {
                key,
                place: Place::AtHome {
                    returned_by: Some(former),
                },
            }),
        ])
        .unwrap();
    let plan = as_now(&home);
    assert_eq!(
        plan.keys[0].origin,
        Origin::New {
            replaces: vec![key]
        }
    );
    assert_eq!(
        plan.keys[0].copies,
        [
            (Recipient::Holder(resident), 2),
            (Recipient::Holder(neighbour), 1),
            (Recipient::KeySafe(safe), 1),
            (Recipient::Spare, 2),
        ]
    );
    let spares = Some(3);
    let more = super::plans::plan(
        &home,
        Choices {
            spares,
            ..Choices::default()
        },
    );
    assert_eq!(more.copies_to_cut(), 7);
    assert!(
        plan.steps
            .iter()
            .any(|step| matches!(&step.step, Step::GetCopiesBack(copies) if copies.len() == 1))
    );
}

#[test]
fn whoever_lost_a_copy_gets_the_new_one() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::Lever, &[Role::Sitter]).unwrap();
    let sitter = holder(&home, Role::Sitter);
    let home = losing(&home, Role::Sitter, Loss::NotSaid);
    let plan = as_now(&home);
    let spare = (Recipient::Spare, 1);
    assert_eq!(plan.keys[0].copies, [(Recipient::Holder(sitter), 1), spare]);
    let chosen = Choices {
        spares: Some(0),
        ..Choices::default()
    };
    let chosen = super::plans::plan(&home, chosen);
    assert_eq!(chosen.keys[0].copies, [(Recipient::Holder(sitter), 1)]);
}

#[test]
fn key_that_only_wrong_hands_had_leaves_two_copies_at_home() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::Lever, &[Role::Tenant]).unwrap();
    let tenant = holder(&home, Role::Tenant);
    let home = home
        .with(Change::NoLongerShould {
            holder: tenant,
            no_longer: true,
        })
        .unwrap();
    assert_eq!(as_now(&home).keys[0].copies, [(Recipient::Spare, 2)]);
}

#[test]
fn key_safe_whose_code_is_out_exposes_the_key_in_it() {
    let home =
        quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (key, _) = home.keys().next().unwrap();
    let (door, _) = home.doors().next().unwrap();
    let safe = home.next_way();
    let way = Way {
        given_away: Some(Loss::WithTheAddress),
        ..Way::at(door, WayKind::KeySafe)
    };
    let home = home.with(Change::AddWay(way)).unwrap();
    let home = home
        .with(Change::AddCopy(KeyCopy {
            key,
            place: Place::InKeySafe(safe),
        }))
        .unwrap();
    let plan = as_now(&home);
    assert!(matches!(plan.exposed[0].by[..], [ExposedBy::KeySafe(_, way)] if way == safe));
    assert_eq!(plan.ways[0].action, Action::ChangeCodesAndUsers);
    assert_eq!(
        (plan.ways[0].urgency, plan.works[0].urgency),
        (Urgency::Today, Urgency::Today)
    );
    let first = plan.steps.iter().take(4).map(|step| step.step.clone());
    assert_eq!(
        first.collect::<Vec<_>>(),
        [
            Step::EmptyKeySafes(vec![safe]),
            Step::ChangeWays(WayKind::KeySafe, vec![safe]),
            Step::CallPolice,
            Step::StopGap,
        ]
    );
}

#[test]
fn nobody_needs_a_locksmith_today_for_a_shed() {
    let home = quick::one_door(DoorKind::Shed, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let home = losing(&home, Role::Resident, Loss::Stolen);
    let plan = as_now(&home);
    assert_eq!(plan.works[0].urgency, Urgency::Soon);
    assert!(!plan.steps.iter().any(|step| step.step == Step::StopGap));
    assert!(plan.steps.iter().any(|step| step.step == Step::CallPolice));
}

#[test]
fn stolen_remote_and_code_are_for_police_and_insurer() {
    let home = quick::one_door(DoorKind::Garage, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (door, _) = home.doors().next().unwrap();
    for kind in [WayKind::Remote, WayKind::KeySafe] {
        for (loss, is_for_the_police) in [(Loss::Stolen, true), (Loss::NearHome, false)] {
            let out = Way {
                given_away: Some(loss),
                ..Way::at(door, kind)
            };
            let plan = as_now(&home.with(Change::AddWay(out)).unwrap());
            let has = |asked: Step| plan.steps.iter().any(|step| step.step == asked);
            assert_eq!(
                has(Step::CallPolice),
                is_for_the_police,
                "{kind:?} {loss:?}"
            );
            assert_eq!(
                has(Step::AskInsurer),
                is_for_the_police,
                "{kind:?} {loss:?}"
            );
        }
    }
}

#[test]
fn second_lock_with_another_key_holds_the_door_until_the_visit() {
    let home =
        quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let home = losing(&home, Role::Resident, Loss::Stolen);
    let (door, _) = home.doors().next().unwrap();
    let second = home.next_lock();
    let key = home.next_key();
    let home = home.with(Change::AddKey(Key::default())).unwrap();
    let second_lock = if second.number() == key.number() {
        LockId::new(home.next_lock().number())
    } else {
        second
    };
    let home = home
        .with(Change::AddLock(
            Lock::on(door, LockKind::Lever).opened_by(key),
        ))
        .unwrap();
    let plan = as_now(&home);
    assert_eq!(plan.stop_gaps[0].holding, [second_lock]);
    assert_eq!(plan.works.len(), 1);
}

#[test]
fn key_mislaid_indoors_is_looked_for_before_anything_else() {
    let home =
        quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (copy, _) = home.copies().next().unwrap();
    let home = home
        .with(Change::Lose {
            copy,
            loss: Loss::MislaidIndoors,
        })
        .unwrap();
    let plan = as_now(&home);
    assert!(plan.works.is_empty() && plan.exposed.is_empty());
    assert_eq!(
        plan.steps[0].step,
        Step::LookAgainIndoors {
            copies: vec![copy],
            remotes: Vec::new()
        }
    );
}

#[test]
fn new_cylinder_in_a_way_out_asks_for_a_thumb_turn() {
    let home = quick::two_doors_alike(LockKind::EuropeanProfile, &[Role::Resident]).unwrap();
    let (first, lock) = home.locks().next().unwrap();
    let has_one = Lock {
        inside: Some(Inside::ThumbTurn),
        ..lock.clone()
    };
    let home = home.with(Change::SetLock(first, has_one)).unwrap();
    let (second, _) = home.locks().nth(1).unwrap();
    let (copy, _) = home.copies().next().unwrap();
    let home = home
        .with(Change::Lose {
            copy,
            loss: Loss::NearHome,
        })
        .unwrap();
    let notes = as_now(&home).notes;
    assert_eq!(notes, [Note::ThumbTurn(second)]);
}

#[test]
fn locks_of_another_keyway_need_a_new_cylinder_to_be_keyed_alike() {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let alike = Choices {
        grouping: Grouping::AllAlike,
        ..Choices::default()
    };
    let price = |home: &Household| {
        let plan = plan(home, alike);
        assert_eq!(plan.works.len(), 1, "one key stays");
        (plan.works[0].actions.clone(), plan.works[0].price)
    };
    assert_eq!(
        price(&home),
        (vec![Action::RekeyCylinder], Priced::RekeyedOrNew)
    );
    let stated = |numbers: [u8; 2]| {
        let locks: Vec<(LockId, Lock)> =
            home.locks().map(|(id, lock)| (id, lock.clone())).collect();
        let set = locks.into_iter().zip(numbers).map(|((id, lock), number)| {
            let keyway = Some(Keyway::new(number).unwrap());
            Change::SetLock(id, Lock { keyway, ..lock })
        });
        home.with_all(set).unwrap()
    };
    let rekeyed = Priced::Item(PriceItem::RekeyedCylinder);
    assert_eq!(
        price(&stated([1, 1])),
        (vec![Action::RekeyCylinder], rekeyed)
    );
    let new = Priced::Item(PriceItem::NewCylinder);
    assert_eq!(price(&stated([1, 2])), (vec![Action::ChangeCylinder], new));
}

#[test]
fn grouping_by_need_takes_back_what_somebody_will_not_need() {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident, Role::Neighbour]).unwrap();
    let neighbour = holder(&home, Role::Neighbour);
    let (back, _) = home.doors().nth(1).unwrap();
    let home = home
        .with(Change::Needs {
            holder: neighbour,
            door: back,
            needs: false,
        })
        .unwrap();
    let by_need = Choices {
        grouping: Grouping::ByNeed,
        ..Choices::default()
    };
    let plan = plan(&home, by_need);
    assert!(plan.works.is_empty(), "both keys stay");
    assert_eq!(plan.hand_in.len(), 1);
    let after = plan.carried_out(&home).unwrap();
    assert!(gaps(&after).is_empty());
    assert_eq!(gaps(&home).len(), 1);
}

#[test]
fn plan_that_only_takes_a_copy_in_is_something_to_do() {
    let people = [Role::Resident, Role::Neighbour];
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let (holder, needs) = (holder(&home, Role::Neighbour), false);
    let home = home.with(Change::Needs {
        holder,
        door,
        needs,
    });
    let grouping = Grouping::ByNeed;
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    let plan = plan(&home.unwrap(), choices);
    assert_eq!((plan.hand_in.len(), plan.steps.len()), (1, 1));
    assert!(!plan.is_empty());
}

#[test]
fn nobody_waits_for_a_mislaid_key_in_place_of_one_they_carry() {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (front_key, _) = home.keys().next().unwrap();
    let (copy, _) = home.copies_of(front_key).next().unwrap();
    let loss = Loss::MislaidIndoors;
    let home = home.with(Change::Lose { copy, loss }).unwrap();
    let resident = holder(&home, Role::Resident);
    let grouping = Grouping::AllAlike;
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    let after = plan(&home, choices).carried_out(&home).unwrap();
    assert_eq!(after.reach_of_ring(resident).unwrap().opened().count(), 2);
    let one_key = quick::two_doors_alike(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let (copy, _) = one_key.copies().next().unwrap();
    let mislaid = one_key.with(Change::Lose { copy, loss }).unwrap();
    assert!(plan(&mislaid, choices).is_empty(), "it may turn up");
}

#[test]
fn nothing_exposed_is_nothing_to_do() {
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap();
    let plan = as_now(&home);
    assert!(plan.is_empty() && plan.steps.is_empty());
    assert_eq!(plan.carried_out(&home), Ok(home.clone()));
    assert_eq!(plan.notes.len(), 2, "two keys not checked yet");
    assert_eq!(
        as_now(&Household::empty()).carried_out(&Household::empty()),
        Ok(Household::empty())
    );
}
