//! A key is missing.

use super::{RuleId, call, remedy, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::answers::Answers;
use crate::facts::{is_unaccounted_for, is_with_a_stranger, missing, opens_a_home, tells_its_door};
use crate::questions::{Choice, Question};
use crate::sources::{LOSS_PRACTICE, TRADE_REKEYING, URGENCY_JUDGEMENT};
use crate::verdict::{Verdict, ticked};

use Choice::*;
use Question::{ChangedSince, Link, MissingHow, NumberIs, Opens, OtherWays, Reason, WhoDecides};

const HOW: &[Question] = &[Reason, MissingHow, ChangedSince];
const HOW_AND_LINK: &[Question] = &[Reason, MissingHow, ChangedSince, Link, NumberIs];

pub(super) static ROWS: &[Rule] = &[
    remedy(
        RuleId::StolenKeyIsOut,
        HOW,
        is_stolen,
        Urgency::Today,
        &[&LOSS_PRACTICE, &TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::StolenKeyIsReported,
        HOW,
        is_stolen,
        call(Action::CallPolice),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::KeyWithTheAddressIsOut,
        HOW_AND_LINK,
        is_out_with_its_door,
        Urgency::Today,
        &[&LOSS_PRACTICE, &TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::KeyWithTheAddressIsReported,
        HOW_AND_LINK,
        is_out_with_papers,
        call(Action::CallPolice),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::InsurerMayPayAfterTheft,
        HOW,
        is_stolen,
        call(Action::AskInsurer),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::InsurerMayPayAfterLossWithAddress,
        HOW_AND_LINK,
        is_out_with_papers,
        call(Action::AskInsurer),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::StolenKeyNeedsCareUntilTheVisit,
        &[Reason, MissingHow, ChangedSince, Opens],
        is_stolen_and_opens_a_home,
        call(Action::StopGap),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::KeyWithTheAddressNeedsCareUntilTheVisit,
        &[Reason, MissingHow, ChangedSince, Link, NumberIs, Opens],
        |answers| is_out_with_its_door(answers).and(opens_a_home(answers)),
        call(Action::StopGap),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::SecondLockBridgesTheTime,
        UNTIL_THE_VISIT,
        |answers| needs_care_until_the_visit(answers).and(ticked(answers, &[SecondLockOtherKey])),
        call(Action::StopGap),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::BoltHoldsOnlyBesideSomeone,
        UNTIL_THE_VISIT,
        |answers| needs_care_until_the_visit(answers).and(ticked(answers, &[BoltOrChainOnly])),
        call(Action::StopGap),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::SharedEntranceKeyIsOut,
        &[Reason, MissingHow, ChangedSince, Opens],
        |answers| {
            let is_lost = missing(answers, &[LostFarAway, LostNearHome, StolenOrTaken]);
            is_lost.and(ticked(answers, &[BlockEntrance]))
        },
        call(Action::TellManager),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::LandlordHearsOfTheSharedEntrance,
        &[Reason, MissingHow, ChangedSince, Opens, WhoDecides],
        |answers| {
            let is_lost = missing(answers, &[LostFarAway, LostNearHome, StolenOrTaken]);
            let rents = ticked(answers, &[RentPrivately, SocialOrEmployersHome]);
            is_lost.and(ticked(answers, &[BlockEntrance])).and(rents)
        },
        call(Action::TellLandlord),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::KeyNearHomeIsOut,
        HOW,
        |answers| missing(answers, &[LostNearHome, StolenOrTaken]),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::KeyWasAwayWithTheAddress,
        HOW_AND_LINK,
        |answers| missing(answers, &[AwayAndCameBack]).and(tells_its_door(answers)),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::KeyWasAway,
        HOW,
        |answers| missing(answers, &[AwayAndCameBack]),
        Urgency::WhenConvenient,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::KeyWasNotReturned,
        HOW,
        |answers| missing(answers, &[NotReturned]),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::UnreturnedKeyIsAskedBack,
        HOW,
        |answers| missing(answers, &[NotReturned]),
        call(Action::GetCopiesBack),
        Urgency::Soon,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    remedy(
        RuleId::KeyIsUnaccountedFor,
        HOW,
        is_unaccounted_for,
        Urgency::WhenConvenient,
        &[&TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::MislaidKeyMayTurnUp,
        HOW,
        |answers| missing(answers, &[MislaidIndoors]),
        call(Action::LookAgainIndoors),
        Urgency::Today,
        &[&LOSS_PRACTICE, &URGENCY_JUDGEMENT],
    ),
];

const UNTIL_THE_VISIT: &[Question] = &[
    Reason,
    MissingHow,
    ChangedSince,
    Link,
    NumberIs,
    Opens,
    OtherWays,
];

fn needs_care_until_the_visit(answers: &Answers) -> Verdict {
    is_stolen(answers)
        .or(is_out_with_its_door(answers))
        .and(opens_a_home(answers))
}

fn is_stolen_and_opens_a_home(answers: &Answers) -> Verdict {
    is_stolen(answers).and(opens_a_home(answers))
}

fn is_stolen(answers: &Answers) -> Verdict {
    missing(answers, &[StolenOrTaken])
}

fn is_out_with_its_door(answers: &Answers) -> Verdict {
    is_with_a_stranger(answers).and(tells_its_door(answers))
}

fn is_out_with_papers(answers: &Answers) -> Verdict {
    is_with_a_stranger(answers).and(ticked(answers, &[PapersWithIt, AddressOnRingOrKey]))
}
