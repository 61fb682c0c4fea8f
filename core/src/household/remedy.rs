//! The right verb for each lock, and who acts.

use crate::advice::{Action, Urgency};
use crate::sources::{Source, TRADE_LOCK_KINDS, URGENCY_JUDGEMENT};

use super::kinds::{DoorKind, LockKind, PriceItem, WhoDecides};
use super::{Door, Lock, Priced};

/// Whose matter a lock is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WhoActs {
    /// The household, with a locksmith or by itself.
    Household,
    /// The landlord.
    Landlord,
    /// Whoever runs the building or its key system.
    SystemOwner,
    /// Another owner.
    AnotherOwner,
}

/// What the verbs and their urgencies rest on.
pub const SOURCES: &[&Source] = &[&TRADE_LOCK_KINDS, &URGENCY_JUDGEMENT];

/// Whose matter the lock on this door is. A cylinder of a building's system is its owner's,
/// whoever decides about the door.
pub const fn who_acts(lock: &Lock, door: &Door) -> WhoActs {
    match (lock.kind, door.who_decides) {
        (_, WhoDecides::AnotherOwner) => WhoActs::AnotherOwner,
        (LockKind::BuildingSystem, _) | (_, WhoDecides::Manager) => WhoActs::SystemOwner,
        (_, WhoDecides::Landlord) => WhoActs::Landlord,
        (_, WhoDecides::Household) => WhoActs::Household,
    }
}

/// The actions after which old keys no longer open the lock; never empty. It is the household's
/// counterpart of [`crate::advice::remedy::remedy`]: a landlord's, block's or neighbour's lock
/// never yields rekeying by the household.
pub fn remedy(lock: &Lock, door: &Door) -> Vec<Action> {
    match who_acts(lock, door) {
        WhoActs::AnotherOwner => vec![Action::TellOwner],
        WhoActs::Landlord => vec![Action::TellLandlord],
        WhoActs::Household => vec![for_own_lock(lock.kind, door.kind)],
        WhoActs::SystemOwner => {
            let owner = match (lock.kind, door.kind) {
                (LockKind::BuildingSystem, kind) if !matches!(kind, DoorKind::BuildingEntrance) => {
                    Action::OwnerOfSystemActs
                }
                _ => Action::TellManager,
            };
            match door.who_decides {
                WhoDecides::Landlord => vec![Action::TellLandlord, owner],
                WhoDecides::Household | WhoDecides::Manager | WhoDecides::AnotherOwner => {
                    vec![owner]
                }
            }
        }
    }
}

/// The most urgent a lock can be, by its door: nobody needs a locksmith the same day for a shed.
pub const fn most_urgent(door: &Door) -> Urgency {
    if door.kind.leads_into_a_home() || matches!(door.who_decides, WhoDecides::AnotherOwner) {
        Urgency::Today
    } else {
        Urgency::Soon
    }
}

/// What is paid for when the household has the lock seen to.
pub(super) const fn price_of(action: Action, kind: LockKind) -> Priced {
    match action {
        Action::RekeyCylinder => match kind {
            LockKind::NotSure => Priced::KindNotKnown,
            _ => Priced::Item(PriceItem::RekeyedCylinder),
        },
        Action::ChangeCylinder => Priced::Item(PriceItem::NewCylinder),
        Action::ChangeLockOrLevers => Priced::Item(PriceItem::LockOrLevers),
        Action::ReplaceSmallLock => Priced::Item(PriceItem::SmallLock),
        _ => Priced::ByOthers,
    }
}

const fn for_own_lock(lock: LockKind, door: DoorKind) -> Action {
    match (lock, door) {
        (LockKind::SmallLock, _)
        | (LockKind::NotSure, DoorKind::Mailbox | DoorKind::Cabinet | DoorKind::Padlock) => {
            Action::ReplaceSmallLock
        }
        (LockKind::PinTumbler | LockKind::NotSure, _) => Action::RekeyCylinder,
        (LockKind::EuropeanProfile, _) => Action::ChangeCylinder,
        (LockKind::Lever, _) => Action::ChangeLockOrLevers,
        (LockKind::BuildingSystem, _) => Action::OwnerOfSystemActs,
    }
}

/// What to do about a way in without a cylinder at this door: change code and users, or have
/// whoever decides about the door do it.
pub(super) const fn for_a_way(door: &Door) -> Action {
    match door.who_decides {
        WhoDecides::Household => Action::ChangeCodesAndUsers,
        WhoDecides::Landlord => Action::TellLandlord,
        WhoDecides::Manager => Action::TellManager,
        WhoDecides::AnotherOwner => Action::TellOwner,
    }
}
