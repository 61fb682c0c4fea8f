//! The key belongs to somebody else's lock, or to a vehicle.

use super::{RuleId, call, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::answers::Answers;
use crate::facts::{certain, is_unaccounted_for};
use crate::questions::{Choice, Question};
use crate::sources::{LOSS_PRACTICE, TRADE_LOCK_KINDS, URGENCY_JUDGEMENT};
use crate::verdict::{Verdict, ticked};

use Choice::*;
use Question::{ChangedSince, MissingHow, Opens, Reason};

pub(super) static ROWS: &[Rule] = &[
    rule(
        RuleId::AnothersKeyIsOut,
        &[Reason, MissingHow, ChangedSince, Opens],
        |answers| ticked(answers, &[WorkOrAnothersHome]).and(is_unaccounted_for(answers)),
        call(Action::TellOwner),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::AnothersKeyWasShared,
        &[Reason, Opens],
        |answers| ticked(answers, &[WorkOrAnothersHome]).and(something_happened(answers)),
        call(Action::TellOwner),
        Urgency::Soon,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::AnothersKeyFollowsTheirRules,
        &[Opens],
        |answers| ticked(answers, &[WorkOrAnothersHome]),
        call(Action::TellOwner),
        Urgency::Habit,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::VehicleKeyIsOut,
        &[Reason, MissingHow, ChangedSince, Opens],
        |answers| ticked(answers, &[Vehicle]).and(is_unaccounted_for(answers)),
        call(Action::SeeVehicleSpecialist),
        Urgency::Soon,
        &[&TRADE_LOCK_KINDS, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::VehicleKeyIsForASpecialist,
        &[Opens],
        |answers| ticked(answers, &[Vehicle]),
        call(Action::SeeVehicleSpecialist),
        Urgency::Habit,
        &[&TRADE_LOCK_KINDS, &URGENCY_JUDGEMENT],
    ),
];

fn something_happened(answers: &Answers) -> Verdict {
    certain(answers.has_any(&[SharedAPicture, SomeoneHadIt]))
}
