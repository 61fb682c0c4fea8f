//! The rule table: each row a claim, the questions that decide it, what follows, how soon, and why
//! that is believed.
//!
//! How soon an exposure calls for an action is our own judgement throughout
//! ([`sources::URGENCY_JUDGEMENT`]); the other sources of a row say why the action helps.

mod carried;
mod codes;
mod elsewhere;
mod holders;
mod missing;
mod pictures;

use crate::advice::{Action, Call, Rule, Urgency};
use crate::answers::{Answers, QuestionSet};
use crate::questions::Question;
use crate::sources::Source;
use crate::verdict::Verdict;

/// The claims of the rule table, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(
    missing_docs,
    reason = "each name is the claim; the page holds the words"
)]
pub enum RuleId {
    // A key is missing.
    StolenKeyIsOut,
    StolenKeyIsReported,
    KeyWithTheAddressIsOut,
    KeyWithTheAddressIsReported,
    InsurerMayPayAfterTheft,
    InsurerMayPayAfterLossWithAddress,
    StolenKeyNeedsCareUntilTheVisit,
    KeyWithTheAddressNeedsCareUntilTheVisit,
    SecondLockBridgesTheTime,
    BoltHoldsOnlyBesideSomeone,
    SharedEntranceKeyIsOut,
    LandlordHearsOfTheSharedEntrance,
    KeyNearHomeIsOut,
    KeyWasAwayWithTheAddress,
    KeyWasAway,
    KeyWasNotReturned,
    UnreturnedKeyIsAskedBack,
    KeyIsUnaccountedFor,
    MislaidKeyMayTurnUp,
    // Somebody had it.
    SafetyComesFirst,
    UneasyPersonMayKeepACopy,
    FormerHolderMayKeepACopy,
    FormerHolderIsAskedForCopies,
    FormerOccupantsMayKeepCopies,
    FormerOccupantsAreAskedForKeys,
    HadItAloneWithTheAddress,
    HadItAloneMayKeepACopy,
    OnlyNeededKeysAreHandedOver,
    GuestsMayKeepCopies,
    LockWasNeverChanged,
    CopiesAreUnaccountedFor,
    UnaccountedCopiesMayBeOut,
    CopiesWereNeverCounted,
    FormerHolderKnowsTheCode,
    // A number is on it.
    CodeWasWithOutsiders,
    CodeIsTheKey,
    PlainCopiesCarryNoCode,
    UnseenCodeMayBeRemoved,
    NumberHangsWithTheKeys,
    NumberStandsOnTheLock,
    NumberTiesTheKeyToItsDoor,
    CardCutsTheCopies,
    CardIsGuarded,
    WordsDoNotStopCopying,
    // A picture shows it.
    PictureTellsItsDoor,
    PictureWithItsDoorIsTakenDown,
    PublicPictureIsTakenDown,
    SharedPictureIsTakenBack,
    CameraSeesTheKey,
    // How it is carried and kept.
    AddressHangsOnTheKey,
    PapersTravelWithTheKey,
    SpareIsHiddenOutside,
    SafeCodeGoesRound,
    KeyIsCarriedInView,
    KeyLiesInSight,
    // Somebody else's lock.
    TenantsNeedTheirWayIn,
    AnothersKeyIsOut,
    AnothersKeyWasShared,
    AnothersKeyFollowsTheirRules,
    VehicleKeyIsOut,
    VehicleKeyIsForASpecialist,
}

/// The table, by what each part is about.
static PARTS: [&[Rule]; 6] = [
    missing::ROWS,
    holders::ROWS,
    codes::ROWS,
    pictures::ROWS,
    carried::ROWS,
    elsewhere::ROWS,
];

/// Every rule, in the order in which a list of equals shows what they call for.
pub fn rules() -> impl Iterator<Item = &'static Rule> {
    PARTS.iter().copied().flatten()
}

/// A row whose urgency is our judgement beside the sources given.
const fn rule(
    id: RuleId,
    needs: &[Question],
    applies: fn(&Answers) -> Verdict,
    calls: Call,
    urgency: Urgency,
    sources: &'static [&'static Source],
) -> Rule {
    Rule {
        id,
        needs: QuestionSet::of(needs),
        applies,
        calls,
        urgency,
        sources,
    }
}

const fn call(action: Action) -> Call {
    Call::For(action)
}

/// Old keys must stop working, this soon.
const fn remedy(
    id: RuleId,
    needs: &[Question],
    applies: fn(&Answers) -> Verdict,
    urgency: Urgency,
    sources: &'static [&'static Source],
) -> Rule {
    rule(id, needs, applies, Call::Remedy, urgency, sources)
}

#[cfg(test)]
mod tests;
