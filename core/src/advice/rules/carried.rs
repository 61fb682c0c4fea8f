//! How the key is carried and kept, and what travels with it.

use super::{RuleId, call, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::facts::{began_with, certain};
use crate::questions::{Choice, Question};
use crate::sources::{KEYS_OUT_OF_SIGHT, OPTICAL_DECODING, TRADE_KEY_CARE, URGENCY_JUDGEMENT};
use crate::verdict::ticked;

use Choice::*;
use Question::{Kept, Link, Reason};

pub(super) static ROWS: &[Rule] = &[
    rule(
        RuleId::AddressHangsOnTheKey,
        &[Reason, Link],
        |answers| ticked(answers, &[AddressOnRingOrKey]).and_not(began_with(answers, KeyMissing)),
        call(Action::TakeAddressOff),
        Urgency::Today,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::PapersTravelWithTheKey,
        &[Reason, Link],
        |answers| ticked(answers, &[PapersWithIt]).and_not(began_with(answers, KeyMissing)),
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
        &[Kept],
        |answers| ticked(answers, &[CarriedInView]),
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
