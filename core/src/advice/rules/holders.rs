//! Somebody has or had the key, or a copy.

use super::{RuleId, call, remedy, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::facts::{
    began_with, held_by, is_uneasy, never_changed_since_taking_over, tells_its_door,
};
use crate::questions::{Choice, Question};
use crate::sources::{
    MOVING_IN_SURVEY, SAFETY_PLANNING, TRADE_KEY_CARE, TRADE_REKEYING, URGENCY_JUDGEMENT,
};
use crate::verdict::ticked;

use Choice::*;
use Question::{ChangedSince, Copies, Holders, Kept, Link, NumberIs, Opens, OtherWays, Reason};

const WHO: &[Question] = &[Reason, ChangedSince, Holders];

pub(super) static ROWS: &[Rule] = &[
    rule(
        RuleId::SafetyComesFirst,
        &[Reason, Holders],
        is_uneasy,
        call(Action::PlanWithSupport),
        Urgency::Today,
        &[&SAFETY_PLANNING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::UneasyPersonMayKeepACopy,
        WHO,
        |answers| held_by(answers, &[UneasyPerson]),
        Urgency::Soon,
        &[&TRADE_REKEYING, &SAFETY_PLANNING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::FormerHolderMayKeepACopy,
        WHO,
        |answers| held_by(answers, &[NoLongerShould]),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::FormerHolderIsAskedForCopies,
        WHO,
        |answers| held_by(answers, &[NoLongerShould]),
        call(Action::GetCopiesBack),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::FormerOccupantsMayKeepCopies,
        &[Reason, ChangedSince, Opens],
        |answers| never_changed_since_taking_over(answers).and(began_with(answers, JustMovedIn)),
        Urgency::Soon,
        &[&MOVING_IN_SURVEY, &TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::FormerOccupantsAreAskedForKeys,
        &[Reason, ChangedSince, Opens],
        |answers| never_changed_since_taking_over(answers).and(began_with(answers, JustMovedIn)),
        call(Action::GetCopiesBack),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::HadItAloneWithTheAddress,
        &[Reason, ChangedSince, Holders, Link, NumberIs],
        |answers| held_by(answers, &[HadItAlone]).and(tells_its_door(answers)),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::HadItAloneMayKeepACopy,
        WHO,
        |answers| held_by(answers, &[HadItAlone]),
        Urgency::WhenConvenient,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::OnlyNeededKeysAreHandedOver,
        &[Holders],
        |answers| ticked(answers, &[HadItAlone]),
        call(Action::HandOverWithoutHouseKey),
        Urgency::Habit,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::GuestsMayKeepCopies,
        WHO,
        |answers| held_by(answers, &[ShortLetGuests]),
        Urgency::WhenConvenient,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::LockWasNeverChanged,
        &[Reason, ChangedSince, Opens],
        never_changed_since_taking_over,
        Urgency::WhenConvenient,
        &[&MOVING_IN_SURVEY, &TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::CopiesAreUnaccountedFor,
        &[Copies],
        |answers| ticked(answers, &[OneOrTwoUnaccounted]),
        call(Action::CountCopies),
        Urgency::WhenConvenient,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::UnaccountedCopiesMayBeOut,
        &[Copies],
        |answers| ticked(answers, &[OneOrTwoUnaccounted]),
        Urgency::WhenConvenient,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::CopiesWereNeverCounted,
        &[Copies],
        |answers| ticked(answers, &[NeverCounted]),
        call(Action::CountCopies),
        Urgency::WhenConvenient,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::FormerHolderKnowsTheCode,
        &[Holders, Kept, OtherWays],
        |answers| {
            ticked(answers, &[NoLongerShould, UneasyPerson])
                .and(ticked(answers, &[KeySafe]).or(ticked(answers, &[CodeOrAppToo])))
        },
        call(Action::ChangeCodesAndUsers),
        Urgency::Soon,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
];
