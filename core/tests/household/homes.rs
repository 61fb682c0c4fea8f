//! People of a household found by what they are to it, and rings of theirs that are lost.

use self_check_core::household::{Change, HolderId, Household, Loss, Role};

/// The first holder with this role.
pub fn holder(home: &Household, role: Role) -> HolderId {
    let (id, _) = home.holders().find(|(_, part)| part.role == role).unwrap();
    id
}

/// The household once the ring of the first holder with this role is lost.
pub fn losing(home: &Household, role: Role, loss: Loss) -> Household {
    let holder = holder(home, role);
    home.with(Change::LoseRing { holder, loss }).unwrap()
}
