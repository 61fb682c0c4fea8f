//! A number stands on the key, its lock or its tag.

use super::{RuleId, call, remedy, rule};
use crate::advice::remedy as locks;
use crate::advice::{Action, Rule, Urgency};
use crate::answers::Answers;
use crate::facts::{carries_a_code, certain, held_by};
use crate::questions::{Choice, Question};
use crate::sources::{
    DO_NOT_DUPLICATE, PRINTED_KEYS, TRADE_CODES, TRADE_KEY_CARE, TRADE_REKEYING, URGENCY_JUDGEMENT,
};
use crate::verdict::{Verdict, ticked};

use Choice::*;
use Question::{
    ChangedSince, Copies, Holders, Kept, KeyKind, Marking, NumberElsewhere, NumberIs, Opens,
    Reason, Seen, WhoDecides,
};

const CODE: &[Question] = &[Marking, NumberIs, KeyKind];

pub(super) static ROWS: &[Rule] = &[
    rule(
        RuleId::CodeWasWithOutsiders,
        &[Marking, NumberIs, KeyKind, Reason, ChangedSince, Holders],
        |answers| {
            let outsiders = [HadItAlone, ShortLetGuests, NoLongerShould];
            carries_a_code(answers).and(held_by(answers, &outsiders))
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
        &[
            Marking,
            NumberIs,
            NumberElsewhere,
            Opens,
            WhoDecides,
            ChangedSince,
            Holders,
            Copies,
            KeyKind,
            Kept,
            Seen,
        ],
        |answers| certain(may_lose_its_code(answers)),
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

/// Grinding cannot be undone, so every condition has to be certain: a plain key, to locks that the
/// person owns and had changed, with every copy of it at hand, and a code that stands nowhere else and
/// that nobody saw whom they do not trust.
fn may_lose_its_code(answers: &Answers) -> bool {
    is_own_and_plain(answers)
        && carries_a_code(answers) == Verdict::Applies
        && !answers.has(WornMarking)
        && !answers.has_any(&[NumberOnTag, NumberOnLockFace])
        && !answers.is_not_sure(NumberElsewhere)
        && nobody_else_saw_it(answers)
}

fn is_own_and_plain(answers: &Answers) -> bool {
    answers.has(OwnIt)
        && locks::decides_alone(answers)
        && !answers.is_not_sure(Opens)
        && answers.has_any(&[CutsOnOneEdge, CutsOnBothEdges])
}

fn nobody_else_saw_it(answers: &Answers) -> bool {
    let outsiders = [
        HelperNow,
        HadItAlone,
        ShortLetGuests,
        NoLongerShould,
        UneasyPerson,
    ];
    let in_view = [CarriedInView, HomeInSight, InTheCar, HiddenOutside];
    answers.has(ChangedAndCounted)
        && answers.has(AllAccountedFor)
        && answers.has_any(&[Household, TrustedCircle])
        && !answers.has_any(&outsiders)
        && answers.has_any(&[PocketOrClosedBag, KeySafe])
        && !answers.has_any(&in_view)
        && answers.has(NoPicture)
}
