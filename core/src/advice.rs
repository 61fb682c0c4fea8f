//! What to do: the actions, how urgent each is, and who does it.
//!
//! Urgency belongs to each action, not to the check as a whole.

pub mod remedy;
pub mod rules;
mod settle;

use crate::answers::{Answers, QuestionSet};
use crate::questions::Question;
use crate::sources::Source;
use crate::verdict::Verdict;

pub use rules::{RuleId, rules};
pub use settle::advise;

/// How soon, least first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Urgency {
    /// From now on, every day.
    Habit,
    /// At the next occasion; nothing is lost by waiting for it.
    WhenConvenient,
    /// Within days.
    Soon,
    /// Today.
    Today,
}

/// One thing to do, in the order in which equally urgent ones are best done: what is free and quick,
/// and what somebody must be asked first, before what costs a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Action {
    /// Plan with a local support service before changing anything.
    PlanWithSupport,
    /// Report it to the police.
    CallPolice,
    /// Take the picture down or replace it.
    TakePictureDown,
    /// Take tag or address off the key.
    TakeAddressOff,
    /// Bring in a spare that is hidden outside.
    MoveTheSpare,
    /// Get copies back.
    GetCopiesBack,
    /// Count the copies.
    CountCopies,
    /// Tell the landlord and ask in writing.
    TellLandlord,
    /// Tell the manager of the building or the association.
    TellManager,
    /// Tell the owner or employer whose door it is.
    TellOwner,
    /// Tell the people to whom the home is let.
    TellTenants,
    /// Look after the door until the lock is changed.
    StopGap,
    /// Ask the insurer.
    AskInsurer,
    /// Have the cylinder rekeyed.
    RekeyCylinder,
    /// Have the cylinder changed.
    ChangeCylinder,
    /// Have the lock or its levers changed.
    ChangeLockOrLevers,
    /// Replace the padlock, mailbox or cabinet lock.
    ReplaceSmallLock,
    /// Leave the change to whoever owns the key system.
    OwnerOfSystemActs,
    /// Have a specialist see to the vehicle's key.
    SeeVehicleSpecialist,
    /// Keep the number, or the key it stands on, away from its door and keys.
    KeepNumberApart,
    /// Change the code of the key safe or door, and remove users who should not have it.
    ChangeCodesAndUsers,
    /// Have plain copies cut from the code or the best original.
    CutPlainCopies,
    /// Have the code removed from the key.
    HaveCodeRemoved,
    /// Re-order with the registration card.
    ReorderByCard,
    /// Consider a restricted blank at the next change.
    RestrictedBlank,
    /// Carry and keep the key covered.
    CarryCovered,
    /// Take the house key off the ring before handing over the rest.
    HandOverWithoutHouseKey,
    /// Look again indoors before anything else.
    LookAgainIndoors,
    /// Nothing to do; look again when something changes.
    NothingToDo,
}

/// Who carries an action out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Doer {
    /// The person at the page.
    Yourself,
    /// A locksmith they have checked.
    Locksmith,
    /// Whoever runs the building's key system.
    SystemOwner,
    /// A vehicle specialist.
    VehicleSpecialist,
}

/// What a rule asks for when it applies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Call {
    /// This action.
    For(Action),
    /// Old keys must stop working; which action does that depends on the lock and on who decides,
    /// see [`remedy`].
    Remedy,
}

/// One row of the rule table: a claim, and what follows where it holds.
#[derive(Clone, Copy, Debug)]
pub struct Rule {
    /// The claim.
    pub id: RuleId,
    /// The questions that decide it. It is shown no other answer.
    pub needs: QuestionSet,
    /// Whether the claim holds.
    pub applies: fn(&Answers) -> Verdict,
    /// What follows.
    pub calls: Call,
    /// How soon.
    pub urgency: Urgency,
    /// Where the claim, the action and its urgency come from.
    pub sources: &'static [&'static Source],
}

/// One action with its urgency and the rules that call for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Advice {
    /// What to do.
    pub action: Action,
    /// How soon: the most urgent of its reasons.
    pub urgency: Urgency,
    /// The claims it rests on, most urgent first; empty for "nothing to do".
    pub because: Vec<RuleId>,
}

/// What a check advises.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Advised {
    /// What to do, most urgent first.
    pub actions: Vec<Advice>,
    /// Questions whose answer would change what to do, weightiest first; at most three.
    pub find_out: Vec<Question>,
    /// Every rule with its verdict, in the table's order: why and why not.
    pub considered: Vec<(RuleId, Verdict)>,
    /// How old keys would stop working here, whether that is called for or not.
    pub remedies: Vec<Action>,
}

impl Advised {
    /// The advice after which old keys no longer work, in its order: what some rule calls for as the
    /// remedy here. What the owner of somebody else's door or a vehicle specialist then does is not
    /// known, so to ask them is none.
    pub fn remedies_due(&self) -> impl Iterator<Item = &Advice> {
        self.actions.iter().filter(|advice| {
            !advice.action.is_for_another_to_decide()
                && self.remedies.contains(&advice.action)
                && rules()
                    .filter(|rule| advice.because.contains(&rule.id))
                    .any(|rule| rule.calls == Call::Remedy)
        })
    }
}

impl Rule {
    /// Whether a worse answer may make the rule fall away: it is for the mild case alone.
    pub fn is_a_relief(&self) -> bool {
        matches!(
            self.calls,
            Call::For(Action::HaveCodeRemoved | Action::LookAgainIndoors)
        )
    }

    /// Whether the rule applies under `answers`, judged on the questions it needs alone.
    pub fn verdict(&self, answers: &Answers) -> Verdict {
        (self.applies)(&answers.only(self.needs))
    }
}

impl Action {
    /// Whether it hands the matter to somebody who alone decides what is done to a lock of theirs.
    pub(crate) fn is_for_another_to_decide(self) -> bool {
        matches!(self, Self::TellOwner | Self::SeeVehicleSpecialist)
    }

    /// Every action, in the order in which a list of equals shows them.
    pub const ALL: [Self; 29] = [
        Self::PlanWithSupport,
        Self::CallPolice,
        Self::TakePictureDown,
        Self::TakeAddressOff,
        Self::MoveTheSpare,
        Self::GetCopiesBack,
        Self::CountCopies,
        Self::TellLandlord,
        Self::TellManager,
        Self::TellOwner,
        Self::TellTenants,
        Self::StopGap,
        Self::AskInsurer,
        Self::RekeyCylinder,
        Self::ChangeCylinder,
        Self::ChangeLockOrLevers,
        Self::ReplaceSmallLock,
        Self::OwnerOfSystemActs,
        Self::SeeVehicleSpecialist,
        Self::KeepNumberApart,
        Self::ChangeCodesAndUsers,
        Self::CutPlainCopies,
        Self::HaveCodeRemoved,
        Self::ReorderByCard,
        Self::RestrictedBlank,
        Self::CarryCovered,
        Self::HandOverWithoutHouseKey,
        Self::LookAgainIndoors,
        Self::NothingToDo,
    ];

    /// Who carries it out.
    pub fn doer(self) -> Doer {
        match self {
            Self::RekeyCylinder
            | Self::ChangeCylinder
            | Self::ChangeLockOrLevers
            | Self::CutPlainCopies
            | Self::HaveCodeRemoved
            | Self::RestrictedBlank => Doer::Locksmith,
            Self::OwnerOfSystemActs => Doer::SystemOwner,
            Self::SeeVehicleSpecialist => Doer::VehicleSpecialist,
            Self::PlanWithSupport
            | Self::CallPolice
            | Self::TellLandlord
            | Self::TellManager
            | Self::TellOwner
            | Self::TellTenants
            | Self::StopGap
            | Self::ReplaceSmallLock
            | Self::TakePictureDown
            | Self::TakeAddressOff
            | Self::KeepNumberApart
            | Self::ChangeCodesAndUsers
            | Self::MoveTheSpare
            | Self::AskInsurer
            | Self::GetCopiesBack
            | Self::CountCopies
            | Self::ReorderByCard
            | Self::CarryCovered
            | Self::HandOverWithoutHouseKey
            | Self::LookAgainIndoors
            | Self::NothingToDo => Doer::Yourself,
        }
    }
}
