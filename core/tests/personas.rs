//! People the product is for, each with the most that may be asked of them.

mod common;

use common::{assessed, highest, urgency};
use self_check_core::advice::{Action, RuleId, Urgency};
use self_check_core::answers::Answers;
use self_check_core::assess::{Count, Headline, Level, NoCount, Number, WayOut, assess};
use self_check_core::exposure::{Event, Standing};
use self_check_core::path::{Path, Stop};
use self_check_core::questions::{Choice::*, Question};

const REMEDIES: [Action; 5] = [
    Action::RekeyCylinder,
    Action::ChangeCylinder,
    Action::ChangeLockOrLevers,
    Action::ReplaceSmallLock,
    Action::OwnerOfSystemActs,
];

fn people_could_have_copied(people: &[Event]) -> Headline {
    Headline::CouldHaveCopied {
        people: people.to_vec(),
        also: Vec::new(),
    }
}

#[test]
fn lock_changed_family_copies_in_pocket_without_number_has_nothing_to_do() {
    let result = assessed(&[]);
    assert_eq!(highest(&result), None);
    assert_eq!(urgency(&result, Action::NothingToDo), Some(Urgency::Habit));
    assert_eq!(result.level, Level::Kept);
    assert_eq!(result.headline, Headline::NobodyOutside);
    assert_eq!(result.number, Number::NotKnown);
}

#[test]
fn same_household_on_a_lanyard_gets_a_habit() {
    let result = assessed(&[CarriedInView]);
    assert_eq!(highest(&result), Some(Urgency::Habit));
    assert_eq!(urgency(&result, Action::CarryCovered), Some(Urgency::Habit));
}

#[test]
fn number_of_a_blank_has_nothing_to_do() {
    let result = assessed(&[FourOrMoreDigits, SameOnOtherKeys]);
    assert_eq!(result.number, Number::NamesTheBlank);
    assert_eq!(highest(&result), None);
    assert_eq!(result.level, Level::Kept);
}

#[test]
fn code_seen_by_family_alone_and_covered_waits_until_convenient() {
    let result = assessed(&[FourOrMoreDigits, OnlyThisLock]);
    assert_eq!(highest(&result), Some(Urgency::WhenConvenient));
    assert_eq!(result.headline, Headline::NobodyOutside);
    assert_eq!(result.number, Number::IsTheCode);
    assert!(
        REMEDIES
            .iter()
            .all(|&remedy| urgency(&result, remedy).is_none())
    );
}

#[test]
fn valet_with_the_ring_and_no_link_waits_until_convenient() {
    let result = assessed(&[SomeoneHadIt, HadItAlone, NotChanged]);
    assert_eq!(highest(&result), Some(Urgency::WhenConvenient));
    assert_eq!(
        urgency(&result, Action::HandOverWithoutHouseKey),
        Some(Urgency::Habit)
    );
}

#[test]
fn valet_with_the_ring_and_car_papers_is_soon() {
    let result = assessed(&[SomeoneHadIt, HadItAlone, NotChanged, PapersWithIt]);
    assert_eq!(highest(&result), Some(Urgency::Soon));
    assert_eq!(urgency(&result, Action::RekeyCylinder), Some(Urgency::Soon));
}

#[test]
fn key_lost_far_off_without_link_waits_until_convenient() {
    let result = assessed(&[KeyMissing, LostFarAway, NotChanged]);
    assert_eq!(highest(&result), Some(Urgency::WhenConvenient));
    assert_eq!(result.headline, Headline::KeyIsOut(WayOut::LostFarAway));
}

#[test]
fn key_lost_near_home_is_soon() {
    let result = assessed(&[KeyMissing, LostNearHome, NotChanged]);
    assert_eq!(highest(&result), Some(Urgency::Soon));
}

#[test]
fn stolen_key_or_key_lost_with_the_address_is_today() {
    let stolen = assessed(&[KeyMissing, StolenOrTaken, NotChanged]);
    assert_eq!(
        urgency(&stolen, Action::RekeyCylinder),
        Some(Urgency::Today)
    );
    assert_eq!(urgency(&stolen, Action::CallPolice), Some(Urgency::Today));
    assert_eq!(urgency(&stolen, Action::StopGap), Some(Urgency::Today));
    let with_address = assessed(&[KeyMissing, LostFarAway, NotChanged, AddressOnRingOrKey]);
    assert_eq!(
        urgency(&with_address, Action::RekeyCylinder),
        Some(Urgency::Today)
    );
    assert_eq!(stolen.level, Level::GivenAway);
}

#[test]
fn former_flatmate_who_kept_one_is_soon() {
    let result = assessed(&[SomeoneHadIt, NoLongerShould, NotChanged]);
    assert_eq!(highest(&result), Some(Urgency::Soon));
    assert_eq!(urgency(&result, Action::RekeyCylinder), Some(Urgency::Soon));
    assert_eq!(
        result.headline,
        people_could_have_copied(&[Event::FormerHolder])
    );
}

#[test]
fn uneasy_person_gets_the_safety_page_and_no_headline_level() {
    for changes in [
        &[WorriedAboutAPerson][..],
        &[SomeoneHadIt, UneasyPerson, NotChanged],
    ] {
        let answers = common::but(changes);
        let result = assess(&answers, None);
        assert!(Path::replay(&answers).stops().contains(&Stop::Safety));
        assert!(result.safety_first);
        assert_eq!(result.headline, Headline::SafetyFirst);
        assert_eq!(result.advised.actions[0].action, Action::PlanWithSupport);
        assert_eq!(urgency(&result, Action::GetCopiesBack), None);
        assert_eq!(urgency(&result, Action::CountCopies), None);
    }
}

#[test]
fn just_moved_in_is_soon_for_former_occupants() {
    let result = assessed(&[JustMovedIn, NotChanged]);
    assert_eq!(highest(&result), Some(Urgency::Soon));
    assert_eq!(urgency(&result, Action::RekeyCylinder), Some(Urgency::Soon));
    assert_eq!(
        result.headline,
        people_could_have_copied(&[Event::FormerOccupants])
    );
}

#[test]
fn tenant_just_moved_in_asks_the_landlord_and_is_never_told_to_rekey() {
    let result = assessed(&[JustMovedIn, NotChanged, FlatDoor, RentPrivately]);
    assert_eq!(urgency(&result, Action::TellLandlord), Some(Urgency::Soon));
    assert_eq!(urgency(&result, Action::RekeyCylinder), None);
}

#[test]
fn public_picture_with_its_place_comes_down_today_and_the_lock_is_rekeyed_soon() {
    let result = assessed(&[SharedAPicture, PicturePublic, PictureShowsPlace, NotChanged]);
    assert_eq!(
        urgency(&result, Action::TakePictureDown),
        Some(Urgency::Today)
    );
    assert_eq!(urgency(&result, Action::RekeyCylinder), Some(Urgency::Soon));
    assert_eq!(result.headline, Headline::PictureTellsItsDoor);
}

#[test]
fn block_entrance_key_lost_is_told_to_the_manager_today_without_rekeying() {
    for decider in [SharedBlock, OwnIt, RentPrivately] {
        let result = assessed(&[KeyMissing, LostFarAway, BlockEntrance, decider]);
        assert_eq!(urgency(&result, Action::TellManager), Some(Urgency::Today));
        assert_eq!(urgency(&result, Action::RekeyCylinder), None);
    }
}

#[test]
fn not_sure_all_the_way_is_calm_with_at_most_three_things_to_find_out() {
    let mut answers = Answers::none();
    while let Some(open) = Path::replay(&answers).first_open() {
        if let Stop::Ask(question) = Path::replay(&answers).stops()[open] {
            answers = answers.give_not_sure(question);
        }
    }
    let result = assess(&answers, None);
    assert_eq!(highest(&result), Some(Urgency::WhenConvenient));
    assert!((1..=3).contains(&result.advised.find_out.len()));
    assert_eq!(result.level, Level::CannotBeToldYet);
    assert_eq!(result.headline, Headline::CannotBeToldYet);
    assert!(result.advised.find_out.contains(&Question::Holders));
}

#[test]
fn lock_changed_after_the_loss_ends_it() {
    let result = assessed(&[
        KeyMissing,
        StolenOrTaken,
        AddressOnRingOrKey,
        ChangedAndCounted,
    ]);
    assert_eq!(highest(&result), None);
    assert_eq!(result.headline, Headline::EndedByChange);
}

#[test]
fn vehicle_key_alone_is_for_a_specialist() {
    let result = assessed(&[Vehicle]);
    assert_eq!(result.headline, Headline::VehicleOnly);
    assert_eq!(
        urgency(&result, Action::SeeVehicleSpecialist),
        Some(Urgency::Habit)
    );
}

#[test]
fn short_let_guests_and_copies_out_of_sight_can_wait() {
    let guests = assessed(&[ShortLetGuests, SomeoneHadIt, NotChanged]);
    let copies = assessed(&[OneOrTwoUnaccounted]);
    for result in [guests, copies] {
        assert_eq!(highest(&result), Some(Urgency::WhenConvenient));
        assert_eq!(
            urgency(&result, Action::RekeyCylinder),
            Some(Urgency::WhenConvenient)
        );
    }
}

#[test]
fn feared_person_with_a_right_to_the_home_gets_a_plan_and_no_new_lock() {
    let result = assessed(&[
        WorriedAboutAPerson,
        UneasyPerson,
        SharedWithRightHolder,
        NotChanged,
    ]);
    assert_eq!(
        urgency(&result, Action::PlanWithSupport),
        Some(Urgency::Today)
    );
    for remedy in REMEDIES {
        assert_eq!(urgency(&result, remedy), None);
    }
}

#[test]
fn valet_before_the_change_says_nothing_of_the_new_key() {
    let result = assessed(&[
        SomeoneHadIt,
        HadItAlone,
        ChangedAndCounted,
        FourOrMoreDigits,
        OnlyThisLock,
    ]);
    assert_eq!(result.headline, Headline::EndedByChange);
    assert_eq!(
        urgency(&result, Action::CutPlainCopies),
        Some(Urgency::WhenConvenient),
        "for the number alone"
    );
}

/// Grinding a number off cannot be undone: one doubt is enough to leave it.
#[test]
fn number_is_removed_only_from_an_own_plain_key_that_nobody_else_saw() {
    let plain = [FourOrMoreDigits, OnlyThisLock];
    let removed = |changes: &[_]| {
        let result = assessed(&[&plain, changes].concat());
        urgency(&result, Action::HaveCodeRemoved)
    };
    assert_eq!(removed(&[]), Some(Urgency::WhenConvenient));
    for doubt in [
        &[FlatDoor, BlockEntrance][..],
        &[HouseDoor, WorkOrAnothersHome],
        &[HouseDoor, Vehicle],
        &[RentPrivately],
        &[SharedWithRightHolder],
        &[SharedBlock],
        &[CarriedInView],
        &[InTheCar, PocketOrClosedBag],
        &[HiddenOutside],
        &[NeverCounted],
        &[OneOrTwoUnaccounted],
        &[ChangedCopiesUnknown],
        &[NotChanged],
        &[NumberOnTag],
        &[NumberOnLockFace],
        &[HelperNow, Household],
        &[ShortLetGuests],
        &[PictureSharedWithFew],
        &[Dimples],
        &[OnCardOrPaper],
        &[LetItOut],
        &[PadlockOrCabinet],
        &[GarageShedOrGate],
    ] {
        assert_eq!(removed(doubt), None, "{doubt:?}");
    }
    for open in [
        Question::Opens,
        Question::WhoDecides,
        Question::ChangedSince,
        Question::Holders,
        Question::Copies,
        Question::KeyKind,
        Question::Kept,
        Question::Seen,
        Question::NumberElsewhere,
    ] {
        let answers = common::but(&plain).give_not_sure(open);
        let result = assess(&answers, None);
        assert_eq!(urgency(&result, Action::HaveCodeRemoved), None, "{open:?}");
    }
}

#[test]
fn copies_are_not_a_tenants_to_order() {
    for decider in [RentPrivately, SocialOrEmployersHome, SharedBlock] {
        let result = assessed(&[decider, FourOrMoreDigits, OnlyThisLock, WordsAgainstCopying]);
        assert_eq!(urgency(&result, Action::CutPlainCopies), None);
        assert_eq!(urgency(&result, Action::RestrictedBlank), None);
        assert!(urgency(&result, Action::KeepNumberApart).is_some());
    }
}

#[test]
fn spare_that_may_lie_outside_is_never_nothing_to_do() {
    for open in [Question::Kept, Question::NumberElsewhere] {
        let answers = common::but(&[PadlockOrCabinet]).give_not_sure(open);
        let result = assess(&answers, None);
        assert_eq!(result.level, Level::CannotBeToldYet);
        assert_eq!(urgency(&result, Action::NothingToDo), None);
        assert!(result.advised.find_out.contains(&open));
    }
}

#[test]
fn doorbell_camera_and_key_by_the_window_are_habits_that_leave_a_doubt() {
    for seen in [DoorbellCamera, HomeInSight, InTheCar] {
        let result = assessed(&[seen]);
        assert_eq!(highest(&result), Some(Urgency::Habit));
        assert_eq!(result.level, Level::InDoubt);
    }
}

/// That path asks about a change since the person had a key, and nothing about who lived there before.
#[test]
fn worried_person_is_told_of_no_former_occupants() {
    let result = assessed(&[WorriedAboutAPerson, UneasyPerson, NotChanged]);
    let events: Vec<Event> = result.exposures.iter().map(|found| found.event).collect();
    assert!(events.contains(&Event::UneasyPerson) && !events.contains(&Event::FormerOccupants));
}

#[test]
fn former_cleaner_with_the_number_counts_as_someone_who_had_it() {
    let result = assessed(&[
        SomeoneHadIt,
        NoLongerShould,
        NotChanged,
        FourOrMoreDigits,
        OnlyThisLock,
    ]);
    let rekey = result.advised.actions.iter();
    let reasons = rekey
        .filter(|advice| advice.action == Action::RekeyCylinder)
        .flat_map(|advice| &advice.because);
    assert!(
        reasons
            .into_iter()
            .any(|&id| id == RuleId::CodeWasWithOutsiders)
    );
}

/// A copy that nobody can place may be the former flatmate's own: it is told beside them, not counted
/// as one more group; and a spare under a pot is no group of people.
#[test]
fn headline_counts_people_and_tells_the_rest_beside_them() {
    let result = assessed(&[
        SomeoneHadIt,
        NotChanged,
        NoLongerShould,
        HadItAlone,
        OneOrTwoUnaccounted,
        HiddenOutside,
        PicturePublic,
    ]);
    assert_eq!(
        result.headline,
        Headline::CouldHaveCopied {
            people: vec![Event::FormerHolder, Event::HadItAlone],
            also: vec![
                Event::UncountedCopies,
                Event::HiddenOutside,
                Event::PublicPicture
            ],
        }
    );
}

#[test]
fn spare_outside_alone_is_told_without_people() {
    let result = assessed(&[HiddenOutside]);
    let expected = Headline::CouldHaveCopied {
        people: Vec::new(),
        also: vec![Event::HiddenOutside],
    };
    assert_eq!(result.headline, expected);
}

#[test]
fn second_lock_and_bolt_are_told_of_also_where_the_key_is_lost_with_its_address() {
    for (way, rule) in [
        (SecondLockOtherKey, RuleId::SecondLockBridgesTheTime),
        (BoltOrChainOnly, RuleId::BoltHoldsOnlyBesideSomeone),
    ] {
        let result = assessed(&[KeyMissing, LostFarAway, NotChanged, PapersWithIt, way]);
        let because = result
            .advised
            .actions
            .iter()
            .find(|advice| advice.action == Action::StopGap)
            .map(|advice| advice.because.clone());
        assert!(because.unwrap_or_default().contains(&rule), "{rule:?}");
    }
}

#[test]
fn key_gone_with_its_address_is_today_however_it_went() {
    let answers = common::but(&[KeyMissing, AddressOnRingOrKey, NotChanged]);
    let result = assess(&answers.give_not_sure(Question::MissingHow), None);
    assert_eq!(result.headline, Headline::KeyIsOutWithItsDoor);
    for action in [
        Action::CallPolice,
        Action::AskInsurer,
        Action::StopGap,
        Action::RekeyCylinder,
    ] {
        assert_eq!(urgency(&result, action), Some(Urgency::Today), "{action:?}");
    }
}

#[test]
fn tenant_of_a_garage_asks_before_its_lock_is_changed() {
    let result = assessed(&[
        SomeoneHadIt,
        GarageShedOrGate,
        RentPrivately,
        NoLongerShould,
    ]);
    assert_eq!(urgency(&result, Action::TellLandlord), Some(Urgency::Soon));
    assert_eq!(urgency(&result, Action::RekeyCylinder), None);
}

#[test]
fn card_is_not_read_and_has_no_number_to_cut_from() {
    for changes in [
        &[CardFobCodeOrPhone, CarriedInView][..],
        &[
            CardFobCodeOrPhone,
            SharedAPicture,
            PicturePublic,
            PictureShowsPlace,
        ],
        &[
            CardFobCodeOrPhone,
            NumberOnIt,
            FourOrMoreDigits,
            OnlyThisLock,
        ],
    ] {
        let result = assessed(changes);
        assert_eq!(result.headline, Headline::NobodyOutside, "{changes:?}");
        assert_eq!(result.level, Level::Kept);
        assert_eq!(result.number, Number::NotKnown);
        assert_eq!(urgency(&result, Action::ChangeCodesAndUsers), None);
        assert_eq!(urgency(&result, Action::CarryCovered), None);
    }
}

#[test]
fn key_to_a_car_and_to_work_is_for_others_to_decide() {
    let result = assessed(&[Vehicle, WorkOrAnothersHome]);
    assert_eq!(result.headline, Headline::VehicleAndAnothersDoor);
    assert!(result.headline.is_for_others());
    // The lock was asked about before the key told that it is a car's.
    let moved = assessed(&[JustMovedIn, NotChanged, Vehicle]);
    assert_eq!(moved.exposures, []);
    assert_eq!(
        urgency(&moved, Action::SeeVehicleSpecialist),
        Some(Urgency::Habit)
    );
}

#[test]
fn worried_person_whose_lock_was_changed_since_is_told_that_it_ended() {
    let standing = |changes: &[_]| {
        let result = assessed(&[&[WorriedAboutAPerson], changes].concat());
        let found = result.exposures.into_iter();
        let found = found.filter(|exposure| exposure.event == Event::UneasyPerson);
        found.map(|exposure| exposure.standing).collect::<Vec<_>>()
    };
    assert_eq!(standing(&[ChangedAndCounted]), [Standing::EndedByChange]);
    assert_eq!(standing(&[NotChanged]), [Standing::NotRuledOut]);
}

#[test]
fn key_that_came_back_is_looked_after_and_its_lock_changed_when_convenient() {
    let result = assessed(&[KeyMissing, AwayAndCameBack, NotChanged]);
    assert_eq!(
        urgency(&result, Action::RekeyCylinder),
        Some(Urgency::WhenConvenient)
    );
    let with_address = assessed(&[KeyMissing, AwayAndCameBack, NotChanged, AddressOnRingOrKey]);
    assert_eq!(
        urgency(&with_address, Action::TakeAddressOff),
        Some(Urgency::Today)
    );
    let at_work = assessed(&[KeyMissing, AwayAndCameBack, WorkOrAnothersHome]);
    assert_eq!(urgency(&at_work, Action::TellOwner), Some(Urgency::Soon));
}

#[test]
fn landlord_tells_the_tenants_before_the_lock_is_changed() {
    let result = assessed(&[LetItOut, SomeoneHadIt, NoLongerShould, NotChanged]);
    assert_eq!(urgency(&result, Action::TellTenants), Some(Urgency::Soon));
    assert_eq!(urgency(&result, Action::RekeyCylinder), Some(Urgency::Soon));
    let calm = assessed(&[LetItOut]);
    assert_eq!(urgency(&calm, Action::TellTenants), Some(Urgency::Habit));
}

#[test]
fn people_from_before_a_move_are_counted_once() {
    let result = assessed(&[JustMovedIn, NotChanged, NoLongerShould]);
    assert_eq!(
        result.headline,
        people_could_have_copied(&[Event::FormerOccupants])
    );
}

#[test]
fn helper_with_the_number_is_trusted_and_plain_copies_can_wait() {
    let result = assessed(&[HelperNow, Household, FourOrMoreDigits, OnlyThisLock]);
    assert_eq!(result.headline, Headline::OnlyByChoice);
    assert_eq!(
        urgency(&result, Action::CutPlainCopies),
        Some(Urgency::WhenConvenient)
    );
}

#[test]
fn readers_at_the_door_are_not_said_to_miss_it() {
    for (seen, expected) in [(CarriedInView, true), (DoorbellCamera, false)] {
        let Headline::CouldBeRead {
            without_its_door, ..
        } = assessed(&[seen]).headline
        else {
            panic!("{seen:?} lets somebody read it");
        };
        assert_eq!(without_its_door, expected, "{seen:?}");
    }
}

#[test]
fn key_lost_far_off_is_in_doubt_unless_its_address_went_with_it() {
    let far = assessed(&[KeyMissing, LostFarAway, NotChanged]);
    assert_eq!(far.level, Level::InDoubt);
    let with_address = assessed(&[KeyMissing, LostFarAway, NotChanged, AddressOnRingOrKey]);
    assert_eq!(with_address.level, Level::GivenAway);
}

#[test]
fn key_mislaid_indoors_is_looked_for_today() {
    let result = assessed(&[KeyMissing, MislaidIndoors, NotChanged]);
    assert_eq!(
        urgency(&result, Action::LookAgainIndoors),
        Some(Urgency::Today)
    );
    assert_eq!(result.advised.actions.len(), 1);
}

#[test]
fn tenant_tells_landlord_and_manager_of_a_lost_entrance_key_on_the_same_day() {
    let result = assessed(&[KeyMissing, LostFarAway, BlockEntrance, RentPrivately]);
    for action in [Action::TellManager, Action::TellLandlord] {
        assert_eq!(urgency(&result, action), Some(Urgency::Today), "{action:?}");
    }
}

#[test]
fn small_lock_alone_has_no_number_of_keys() {
    for lock in [Mailbox, PadlockOrCabinet] {
        let small = assessed(&[lock]).count;
        assert_eq!(small, Count::NotCounted(NoCount::KindNotModelled));
        let beside_a_door = assessed(&[HouseDoor, lock]).count;
        assert!(matches!(beside_a_door, Count::Counted { .. }));
    }
}

#[test]
fn whoever_hands_over_a_home_is_asked_for_its_keys() {
    let result = assessed(&[JustMovedIn, NotChanged]);
    assert_eq!(urgency(&result, Action::GetCopiesBack), Some(Urgency::Soon));
}

/// In a theft from a tenant everything hangs on the landlord, who is called right after the police.
#[test]
fn tenant_after_a_theft_calls_the_landlord_second() {
    let result = assessed(&[
        KeyMissing,
        StolenOrTaken,
        NotChanged,
        FlatDoor,
        RentPrivately,
    ]);
    let order: Vec<Action> = result
        .advised
        .actions
        .iter()
        .map(|one| one.action)
        .collect();
    assert_eq!(
        order,
        [
            Action::CallPolice,
            Action::TellLandlord,
            Action::StopGap,
            Action::AskInsurer
        ]
    );
}
