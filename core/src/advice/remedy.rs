//! How old keys stop working: which action that takes depends on the lock and on who decides.

use crate::advice::{Action, Urgency};
use crate::answers::{Answers, QuestionSet};
use crate::order::sort_few;
use crate::questions::{Choice, Question};
use crate::sources::{Source, TRADE_LOCK_KINDS};

use Choice::*;

/// The questions that decide the remedy.
pub const NEEDS: QuestionSet =
    QuestionSet::of(&[Question::Opens, Question::WhoDecides, Question::KeyKind]);

/// What the choice of a remedy rests on.
pub const SOURCES: &[&Source] = &[&TRADE_LOCK_KINDS];

/// The actions after which old keys no longer open what this key opens, and by whom. Never empty:
/// where nobody knows what the key opens, it is taken to open a home.
///
/// Source: common practice of the trade, [`SOURCES`]. A block's, work's
/// or neighbour's lock never yields rekeying by the person who asks.
pub fn remedy(answers: &Answers) -> Vec<Action> {
    let mut actions = Vec::with_capacity(3);
    let opens_home =
        answers.has_any(&[HouseDoor, FlatDoor]) || answers.is_not_sure(Question::Opens);
    if answers.has(BlockEntrance) {
        actions.push(Action::TellManager);
        if rents(answers) {
            actions.push(Action::TellLandlord);
        } else if opens_home {
            actions.push(Action::OwnerOfSystemActs);
        }
    } else if opens_home {
        actions.push(for_a_building(answers));
    }
    if answers.has(GarageShedOrGate) && !answers.has(BlockEntrance) && !opens_home {
        actions.push(for_a_building(answers));
    }
    if answers.has(Mailbox) {
        actions.push(for_a_mailbox(answers));
    }
    if answers.has(PadlockOrCabinet) {
        actions.push(Action::ReplaceSmallLock);
    }
    if answers.has(Vehicle) {
        actions.push(Action::SeeVehicleSpecialist);
    }
    if answers.has(WorkOrAnothersHome) {
        actions.push(Action::TellOwner);
    }
    if actions.is_empty() {
        actions.push(for_a_building(answers));
    }
    sort_few(&mut actions, |action| *action);
    actions.dedup();
    actions
}

/// The most urgent a remedy can be for what the key opens: nobody needs a locksmith the same day
/// for a mailbox, a shed or a cabinet. Our assumption, [`crate::sources::URGENCY_JUDGEMENT`].
pub fn most_urgent(answers: &Answers) -> Urgency {
    let a_home = [
        HouseDoor,
        FlatDoor,
        BlockEntrance,
        WorkOrAnothersHome,
        Vehicle,
    ];
    if answers.has_any(&a_home) || answers.is_not_sure(Question::Opens) {
        Urgency::Today
    } else {
        Urgency::Soon
    }
}

/// Whether whoever asks decides alone about every lock that the key opens, as far as they told.
pub fn decides_alone(answers: &Answers) -> bool {
    let others = [
        BlockEntrance,
        WorkOrAnothersHome,
        Vehicle,
        RentPrivately,
        SocialOrEmployersHome,
        SharedBlock,
    ];
    !answers.has_any(&others)
}

fn for_a_building(answers: &Answers) -> Action {
    if rents(answers) {
        Action::TellLandlord
    } else if answers.has(SharedBlock) {
        Action::TellManager
    } else {
        for_own_lock(answers)
    }
}

fn for_a_mailbox(answers: &Answers) -> Action {
    if rents(answers) {
        Action::TellLandlord
    } else if answers.has(SharedBlock) {
        Action::TellManager
    } else {
        Action::ReplaceSmallLock
    }
}

fn for_own_lock(answers: &Answers) -> Action {
    if answers.has_any(&[Dimples, PlasticHeadWithChip]) {
        Action::ChangeCylinder
    } else if answers.has_any(&[LeverFlag, InteriorWarded]) {
        Action::ChangeLockOrLevers
    } else if answers.has(CardFobCodeOrPhone) {
        Action::ChangeCodesAndUsers
    } else {
        Action::RekeyCylinder
    }
}

fn rents(answers: &Answers) -> bool {
    answers.has_any(&[RentPrivately, SocialOrEmployersHome])
}
