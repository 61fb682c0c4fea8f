//! A number stands on the key, its lock or its tag.

use super::{RuleId, call, remedy, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::answers::Answers;
use crate::facts::{carries_a_code, certain};
use crate::questions::{Choice, Question};
use crate::sources::{
    DO_NOT_DUPLICATE, PRINTED_KEYS, TRADE_CODES, TRADE_KEY_CARE, TRADE_REKEYING, URGENCY_JUDGEMENT,
};
use crate::verdict::{Verdict, ticked};

use Choice::*;
use Question::{Holders, KeyKind, Marking, NumberElsewhere, NumberIs, Seen, WhoDecides};

const CODE: &[Question] = &[Marking, NumberIs];

pub(super) static ROWS: &[Rule] = &[
    rule(
        RuleId::CodeWasWithOutsiders,
        &[Marking, NumberIs, Holders],
        |answers| {
            carries_a_code(answers).and(ticked(answers, &[HelperNow, HadItAlone, ShortLetGuests]))
        },
        call(Action::CutPlainCopies),
        Urgency::Soon,
        &[&TRADE_CODES, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::CodeIsTheKey,
        CODE,
        carries_a_code,
        call(Action::KeepNumberApart),
        Urgency::WhenConvenient,
        &[&TRADE_CODES, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::PlainCopiesCarryNoCode,
        CODE,
        carries_a_code,
        call(Action::CutPlainCopies),
        Urgency::WhenConvenient,
        &[&TRADE_CODES, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::UnseenCodeMayBeRemoved,
        &[Marking, NumberIs, Holders, KeyKind, Seen, WhoDecides],
        |answers| certain(has_an_own_code_nobody_else_saw(answers)),
        call(Action::HaveCodeRemoved),
        Urgency::WhenConvenient,
        &[&TRADE_CODES, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::NumberHangsWithTheKeys,
        &[NumberElsewhere],
        |answers| ticked(answers, &[NumberOnTag]),
        call(Action::KeepNumberApart),
        Urgency::Soon,
        &[&TRADE_CODES, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::NumberStandsOnTheLock,
        &[NumberElsewhere],
        |answers| ticked(answers, &[NumberOnLockFace]),
        Urgency::WhenConvenient,
        &[&TRADE_CODES, &TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::NumberTiesTheKeyToItsDoor,
        &[NumberIs],
        |answers| ticked(answers, &[FlatHolderOrDate]),
        call(Action::CutPlainCopies),
        Urgency::WhenConvenient,
        &[&TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::CardCutsTheCopies,
        &[NumberIs],
        |answers| ticked(answers, &[OnCardOrPaper]),
        call(Action::ReorderByCard),
        Urgency::Habit,
        &[&TRADE_CODES, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::CardIsGuarded,
        &[NumberIs],
        |answers| ticked(answers, &[OnCardOrPaper]),
        call(Action::KeepNumberApart),
        Urgency::Habit,
        &[&TRADE_CODES, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::WordsDoNotStopCopying,
        &[Marking],
        |answers| ticked(answers, &[WordsAgainstCopying]),
        call(Action::RestrictedBlank),
        Urgency::Habit,
        &[&DO_NOT_DUPLICATE, &PRINTED_KEYS, &URGENCY_JUDGEMENT],
    ),
];

/// Only an own, plain, unregistered key whose number no one untrusted saw: anything not known for
/// certain speaks against taking metal off a key.
fn has_an_own_code_nobody_else_saw(answers: &Answers) -> bool {
    let only_trusted = answers.has_any(&[Household, TrustedCircle])
        && !answers.has_any(&[
            HelperNow,
            HadItAlone,
            ShortLetGuests,
            NoLongerShould,
            UneasyPerson,
        ]);
    let is_plain = answers.has_any(&[CutsOnOneEdge, CutsOnBothEdges]);
    let is_own = answers.has_any(&[OwnIt, LetItOut]);
    carries_a_code(answers) == Verdict::Applies
        && only_trusted
        && is_plain
        && is_own
        && answers.has(NoPicture)
        && !answers.has(WornMarking)
}
