//! People the product is for, each with the most that may be asked of them.

mod common;

use common::{assessed, highest, urgency};
use self_check_core::advice::{Action, Urgency};
use self_check_core::answers::Answers;
use self_check_core::assess::{Headline, Level, assess};
use self_check_core::exposure::Event;
use self_check_core::path::{Path, Stop};
use self_check_core::questions::{Choice::*, Question};

const REMEDIES: [Action; 5] = [
    Action::RekeyCylinder,
    Action::ChangeCylinder,
    Action::ChangeLockOrLevers,
    Action::ReplaceSmallLock,
    Action::OwnerOfSystemActs,
];

#[test]
fn lock_changed_family_copies_in_pocket_without_number_has_nothing_to_do() {
    let result = assessed(&[]);
    assert_eq!(highest(&result), None);
    assert_eq!(urgency(&result, Action::NothingToDo), Some(Urgency::Habit));
    assert_eq!(result.level, Level::Kept);
    assert_eq!(
        result.headline,
        Headline::NobodyOutside { with_a_code: false }
    );
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
    assert_eq!(highest(&result), None);
    assert_eq!(result.level, Level::Kept);
}

#[test]
fn code_seen_by_family_alone_and_covered_waits_until_convenient() {
    let result = assessed(&[FourOrMoreDigits, OnlyThisLock]);
    assert_eq!(highest(&result), Some(Urgency::WhenConvenient));
    assert_eq!(
        result.headline,
        Headline::NobodyOutside { with_a_code: true }
    );
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
    assert_eq!(result.headline, Headline::KeyIsOut(Event::LostFarAway));
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
        Headline::CouldHaveCopied(vec![Event::FormerHolder])
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
        Headline::CouldHaveCopied(vec![Event::FormerOccupants])
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
