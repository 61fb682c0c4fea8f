//! What the exposures together make of the secret.

use super::Level;
use crate::exposure::{Event, Exposure, Standing, somebody_has_it};
use crate::sources::{LEVEL_JUDGEMENT, Source};

impl Level {
    /// What the levels rest on.
    pub const SOURCES: &[&Source] = &[&LEVEL_JUDGEMENT];

    /// The gravest level that any exposure asks for.
    pub(crate) fn of(exposures: &[Exposure]) -> Self {
        exposures.iter().map(one).max().unwrap_or(Self::Kept)
    }
}

fn one(exposure: &Exposure) -> Level {
    match exposure.standing {
        Standing::EndedByChange => Level::Kept,
        Standing::Unknown(_) | Standing::NotRuledOut => Level::CannotBeToldYet,
        Standing::Counts | Standing::ByChoice => certain(exposure),
    }
}

/// Given away: somebody has the key now who should not, or anybody may find or see it with its door. In
/// doubt: somebody could have. Kept: whoever has it was given it by choice. Our assumption throughout,
/// see [`Level::SOURCES`].
fn certain(exposure: &Exposure) -> Level {
    match exposure.event {
        event if somebody_has_it(event) => Level::GivenAway,
        Event::LostFarAway
        | Event::MissingSomehow
        | Event::PublicPicture
        | Event::ListingPicture
            if exposure.knows_the_door.is_certain() =>
        {
            Level::GivenAway
        }
        Event::HelperNow | Event::TrustedCircle => Level::Kept,
        _ => Level::InDoubt,
    }
}
