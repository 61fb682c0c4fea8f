//! How the key is carried and kept, and what travels with it.

use super::{RuleId, call, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::answers::Answers;
use crate::facts::{began_with, certain, is_a_card, missing};
use crate::questions::{Choice, Question};
use crate::sources::{KEYS_OUT_OF_SIGHT, OPTICAL_DECODING, TRADE_KEY_CARE, URGENCY_JUDGEMENT};
use crate::verdict::{Verdict, ticked};

use Choice::*;
use Question::{ChangedSince, Kept, KeyKind, Link, MissingHow, Reason};

pub(super) static ROWS: &[Rule] = &[
    rule(
        RuleId::AddressHangsOnTheKey,
        &[Reason, MissingHow, ChangedSince, Link],
        |answers| ticked(answers, &[AddressOnRingOrKey]).and(is_at_hand(answers)),
        call(Action::TakeAddressOff),
        Urgency::Today,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::PapersTravelWithTheKey,
        &[Reason, MissingHow, ChangedSince, Link],
        |answers| ticked(answers, &[PapersWithIt]).and(is_at_hand(answers)),
        call(Action::TakeAddressOff),
        Urgency::Habit,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::SpareIsHiddenOutside,
        &[Kept],
        |answers| ticked(answers, &[HiddenOutside]),
        call(Action::MoveTheSpare),
        Urgency::Soon,
        &[&KEYS_OUT_OF_SIGHT, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::SafeCodeGoesRound,
        &[Kept],
        |answers| ticked(answers, &[KeySafe]),
        call(Action::ChangeCodesAndUsers),
        Urgency::WhenConvenient,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::KeyIsCarriedInView,
        &[Kept, KeyKind],
        |answers| ticked(answers, &[CarriedInView]).and_not(is_a_card(answers)),
        call(Action::CarryCovered),
        Urgency::Habit,
        &[&OPTICAL_DECODING, &TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::KeyLiesInSight,
        &[Kept],
        |answers| certain(answers.has_any(&[HomeInSight, InTheCar])),
        call(Action::CarryCovered),
        Urgency::Habit,
        &[&KEYS_OUT_OF_SIGHT, &URGENCY_JUDGEMENT],
    ),
];

/// Whether the key is there to be looked after: not missing, or back.
fn is_at_hand(answers: &Answers) -> Verdict {
    let is_back = missing(answers, &[AwayAndCameBack]);
    began_with(answers, KeyMissing).negated().or(is_back)
}
