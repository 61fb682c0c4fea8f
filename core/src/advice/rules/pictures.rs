//! A picture or a camera shows the key. Being seen by somebody who cannot tell the door leads to
//! habits and free steps alone.

use super::{RuleId, call, remedy, rule};
use crate::advice::{Action, Rule, Urgency};
use crate::facts::{picture_tells_its_door, pictured};
use crate::questions::{Choice, Question};
use crate::sources::{OPTICAL_DECODING, TRADE_KEY_CARE, TRADE_REKEYING, URGENCY_JUDGEMENT};

use Choice::*;
use Question::{ChangedSince, KeyKind, Link, Reason, Seen};

const PICTURE: &[Question] = &[Reason, ChangedSince, Seen, KeyKind];
const PICTURE_AND_PLACE: &[Question] = &[Reason, ChangedSince, Seen, Link, KeyKind];

pub(super) static ROWS: &[Rule] = &[
    remedy(
        RuleId::PictureTellsItsDoor,
        PICTURE_AND_PLACE,
        picture_tells_its_door,
        Urgency::Soon,
        &[&OPTICAL_DECODING, &TRADE_REKEYING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::PictureWithItsDoorIsTakenDown,
        PICTURE_AND_PLACE,
        picture_tells_its_door,
        call(Action::TakePictureDown),
        Urgency::Today,
        &[&OPTICAL_DECODING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::PublicPictureIsTakenDown,
        PICTURE,
        |answers| pictured(answers, &[PicturePublic]),
        call(Action::TakePictureDown),
        Urgency::Soon,
        &[&OPTICAL_DECODING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::SharedPictureIsTakenBack,
        PICTURE,
        |answers| pictured(answers, &[PictureSharedWithFew]),
        call(Action::TakePictureDown),
        Urgency::WhenConvenient,
        &[&OPTICAL_DECODING, &URGENCY_JUDGEMENT],
    ),
    rule(
        RuleId::CameraSeesTheKey,
        PICTURE,
        |answers| pictured(answers, &[CallsOrStreams, DoorbellCamera]),
        call(Action::CarryCovered),
        Urgency::Habit,
        &[&OPTICAL_DECODING, &TRADE_KEY_CARE, &URGENCY_JUDGEMENT],
    ),
];
