//! The key belongs to somebody else's lock, to a home that is let, or to a vehicle.

use super::{RuleId, call, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::answers::Answers;
use crate::facts::{certain, is_unaccounted_for, missing};
use crate::questions::{Choice, Question};
use crate::sources::{LOSS_PRACTICE, TENANCY_PRACTICE, TRADE_LOCK_KINDS, URGENCY_JUDGEMENT};
use crate::verdict::{Verdict, ticked};

use Choice::*;
use Question::{ChangedSince, MissingHow, Opens, Reason, WhoDecides};

pub(super) static ROWS: &[Rule] = &[
    rule(
        RuleId::TenantsNeedTheirWayIn,
        &[WhoDecides],
        |answers| ticked(answers, &[LetItOut]),
        call(Action::TellTenants),
        Urgency::Habit,
        &[&TENANCY_PRACTICE, &URGENCY_JUDGEMENT],
    ),
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
        &[Reason, MissingHow, ChangedSince, Opens],
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
        .or(missing(answers, &[AwayAndCameBack]))
}
