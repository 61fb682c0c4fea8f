//! Checks and household say the same of the same loss.

use self_check_core::advice::{Action, Urgency};
use self_check_core::household::{
    Change, Choices, DoorKind, Finding, FoundExposure, LockKind, Loss, Role, exposed_keys, file,
    plan, quick,
};
use self_check_core::questions::Choice;

use crate::common::{assessed, urgency};

use Choice::*;

/// How soon the check of a key that went missing in this way asks for the lock.
fn advised(loss: Loss) -> Option<Urgency> {
    let way: &[Choice] = match loss {
        Loss::NotSaid => &[],
        Loss::MislaidIndoors => &[MislaidIndoors],
        Loss::FarAway => &[LostFarAway],
        Loss::NearHome => &[LostNearHome],
        Loss::WithTheAddress => &[LostFarAway, AddressOnRingOrKey],
        Loss::Stolen => &[StolenOrTaken],
        Loss::NotReturned => &[NotReturned],
    };
    let ticks = [&[KeyMissing, NotChanged], way].concat();
    urgency(&assessed(&ticks), Action::RekeyCylinder)
}

#[test]
fn losses_are_as_urgent_as_a_check_of_the_same_loss() {
    for &loss in Loss::ALL {
        assert_eq!(loss.urgency(), advised(loss), "{loss:?}");
    }
}

#[test]
fn former_holder_is_as_urgent_as_a_check_of_one() {
    let finding = Finding::of(&assessed(&[SomeoneHadIt, NoLongerShould, NotChanged]));
    assert_eq!(finding.exposure, FoundExposure::Exposed(Urgency::Soon));
    let home =
        quick::one_door(DoorKind::FlatDoor, LockKind::PinTumbler, &[Role::Flatmate]).unwrap();
    let (holder, _) = home.holders().next().unwrap();
    let no_longer = true;
    let home = home
        .with(Change::NoLongerShould { holder, no_longer })
        .unwrap();
    assert_eq!(exposed_keys(&home)[0].urgency, Urgency::Soon);
}

#[test]
fn finding_of_a_key_only_seen_exposes_nothing() {
    let seen = assessed(&[LookAtMyKeys, ChangedAndCounted, CarriedInView]);
    assert_eq!(Finding::of(&seen).exposure, FoundExposure::NotExposed);
}

#[test]
fn finding_flows_into_the_plan_and_out_of_it() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::Lever, &[Role::Resident]).unwrap();
    let (key, _) = home.keys().next().unwrap();
    assert!(plan(&home, Choices::default()).works.is_empty());
    let finding = Some(Finding::of(&assessed(&[
        KeyMissing,
        StolenOrTaken,
        NotChanged,
    ])));
    let exposed = home.with(Change::Check { key, finding }).unwrap();
    let works = plan(&exposed, Choices::default()).works;
    assert_eq!(works[0].urgency, Urgency::Today);
    assert_eq!(works[0].actions, [Action::ChangeLockOrLevers]);
    let finding = None;
    let again = exposed.with(Change::Check { key, finding }).unwrap();
    assert_eq!(again, home);
}

#[test]
fn safety_first_keeps_prints_and_chases_nothing() {
    use self_check_core::household::{BriefChoices, SafetyFirst, brief, plan::Step};
    let home = quick::two_doors(LockKind::PinTumbler, &[Role::Resident, Role::Friend]).unwrap();
    let (key, _) = home.keys().next().unwrap();
    let finding = Some(Finding::of(&assessed(&[
        SomeoneHadIt,
        UneasyPerson,
        NotChanged,
    ])));
    let (friend, _) = home.holders().nth(1).unwrap();
    let no_longer = true;
    let home = home
        .with(Change::Check { key, finding })
        .unwrap()
        .with(Change::NoLongerShould {
            holder: friend,
            no_longer,
        })
        .unwrap();
    let plan = plan(&home, Choices::default());
    assert_eq!(plan.steps[0].step, Step::PlanWithSupport);
    assert!(!plan.works.is_empty());
    let steps: Vec<&Step> = plan.steps.iter().map(|step| &step.step).collect();
    let visit = steps
        .iter()
        .position(|step| matches!(step, Step::LocksmithVisit(_)));
    let take = steps.iter().position(|step| **step == Step::TakeNewKeys);
    assert!(
        take.is_some() && visit < take,
        "the new keys are somebody's: {steps:?}"
    );
    for step in &plan.steps {
        assert!(!matches!(
            step.step,
            Step::GetCopiesBack(_) | Step::CutCopies(_) | Step::HandOver(..) | Step::HandIn(_)
        ));
    }
    assert_eq!(
        brief(&home, &plan, BriefChoices::default()),
        Err(SafetyFirst)
    );
    assert_eq!(file::export(&home), Err(file::ExportError::SafetyFirst));
}

#[test]
fn plan_of_a_check_elsewhere_puts_safety_first_and_finds_nothing_on_these_keys() {
    use self_check_core::household::plan::{Note, Step};
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::Lever, &[Role::Resident]).unwrap();
    let (key, _) = home.keys().next().unwrap();
    let choices = Choices {
        safety_first: true,
        ..Choices::default()
    };
    assert_eq!(plan(&home, choices).notes, [Note::NotChecked(key)]);
    let (copy, _) = home.copies().next().unwrap();
    let loss = Loss::NotReturned;
    let home = home.with(Change::Lose { copy, loss }).unwrap();
    let careful = plan(&home, choices);
    assert!(careful.safety_first);
    assert_eq!(careful.steps[0].step, Step::PlanWithSupport);
    let chases = |step: &Step| matches!(step, Step::GetCopiesBack(_) | Step::CutCopies(_));
    assert!(!careful.steps.iter().any(|step| chases(&step.step)));
}
