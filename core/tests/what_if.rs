//! What following the advice would leave.

mod common;

use common::assessed;
use self_check_core::advice::Action;
use self_check_core::assess::{Count, Level};
use self_check_core::exposure::Standing;
use self_check_core::questions::Choice::*;
use self_check_core::what_if::{choices, from_today};

#[test]
fn rekeying_ends_what_a_former_holder_could_do() {
    let result = assessed(&[SomeoneHadIt, NoLongerShould, NotChanged]);
    assert!(choices(&result).contains(&Action::RekeyCylinder));
    let then = from_today(&result, &[Action::RekeyCylinder]);
    assert_eq!(then.level, Level::Kept);
    assert!(
        then.still_advised
            .iter()
            .all(|advice| advice.action != Action::GetCopiesBack)
    );
    let Count::Counted { of, left } = then.count else {
        panic!("a pin tumbler key is counted");
    };
    assert_eq!(of.untouched(), left);
}

#[test]
fn taking_a_picture_down_does_not_undo_that_it_was_seen() {
    let result = assessed(&[SharedAPicture, PicturePublic, PictureShowsPlace, NotChanged]);
    let then = from_today(&result, &[Action::TakePictureDown]);
    assert_eq!(then.level, result.level);
    assert_eq!(then.exposures, result.exposures);
    assert_eq!(then.count, result.count);
}

#[test]
fn a_new_lock_with_the_old_habit_leaves_the_new_key_in_view() {
    let result = assessed(&[SomeoneHadIt, NoLongerShould, NotChanged, CarriedInView]);
    let rekeyed = from_today(&result, &[Action::RekeyCylinder]);
    assert_eq!(rekeyed.level, Level::InDoubt);
    let and_covered = from_today(&result, &[Action::RekeyCylinder, Action::CarryCovered]);
    assert_eq!(and_covered.level, Level::Kept);
    assert!(
        and_covered
            .exposures
            .iter()
            .all(|exposure| exposure.standing != Standing::Counts)
    );
}

#[test]
fn doing_nothing_changes_nothing() {
    let result = assessed(&[SomeoneHadIt, HadItAlone, NotChanged, PapersWithIt]);
    let then = from_today(&result, &[]);
    assert_eq!((then.level, then.count), (result.level, result.count));
    assert_eq!(then.still_advised, result.advised.actions);
}

#[test]
fn a_stolen_card_is_answered_by_a_new_code() {
    let result = assessed(&[KeyMissing, StolenOrTaken, NotChanged, CardFobCodeOrPhone]);
    assert!(choices(&result).contains(&Action::ChangeCodesAndUsers));
    let then = from_today(&result, &[Action::ChangeCodesAndUsers]);
    assert_eq!((result.level, then.level), (Level::GivenAway, Level::Kept));
}

/// The other lock that the key opens is its owner's to change: until then the old key still works there.
#[test]
fn a_new_lock_of_ones_own_does_not_speak_for_anothers() {
    let result = assessed(&[
        SomeoneHadIt,
        NoLongerShould,
        NotChanged,
        HouseDoor,
        WorkOrAnothersHome,
    ]);
    let then = from_today(&result, &[Action::RekeyCylinder]);
    assert_eq!(then.level, result.level);
    assert_eq!(choices(&result), []);
}

#[test]
fn nothing_is_offered_that_would_change_nothing() {
    let result = assessed(&[
        SharedAPicture,
        PicturePublic,
        PictureShowsPlace,
        NotChanged,
        AddressOnRingOrKey,
    ]);
    let advised = |action| {
        let mut actions = result.advised.actions.iter();
        actions.any(|advice| advice.action == action)
    };
    assert!(advised(Action::TakePictureDown) && advised(Action::TakeAddressOff));
    assert_eq!(choices(&result), [Action::RekeyCylinder]);
}
