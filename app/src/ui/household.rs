//! Keys and doors, for the pages that show them.

use yew::prelude::*;

use crate::household::{HouseholdHandle, HouseholdState};

/// Keys and doors, from the nearest provider.
#[hook]
pub fn use_household() -> HouseholdHandle {
    let own = use_reducer(HouseholdState::default);
    use_context::<HouseholdHandle>().unwrap_or(own)
}
