//! Where a copy can be put, as a list to choose from.

use self_check_core::household::{HolderId, Loss, Place, WayId, WayKind};

use crate::copy::en::household::board as words;
use crate::household::Overview;

/// A place a copy can be put, as the value of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Where {
    /// On somebody's ring.
    With(HolderId),
    /// In a key safe.
    InSafe(WayId),
    /// In the home.
    Home,
    /// Out of the household's hands.
    Lost,
    /// Destroyed.
    Scrapped,
}

impl Where {
    /// Where a place is.
    pub fn of(place: Place) -> Self {
        match place {
            Place::Held(holder) => Self::With(holder),
            Place::InKeySafe(way) => Self::InSafe(way),
            Place::AtHome { .. } => Self::Home,
            Place::Lost { .. } => Self::Lost,
            Place::Scrapped { .. } => Self::Scrapped,
        }
    }

    /// Its value in a list.
    pub fn value(self) -> String {
        match self {
            Self::With(holder) => format!("with-{}", holder.number()),
            Self::InSafe(way) => format!("safe-{}", way.number()),
            Self::Home => "home".to_owned(),
            Self::Lost => "lost".to_owned(),
            Self::Scrapped => "scrapped".to_owned(),
        }
    }

    /// The one of this value.
    pub fn read(value: &str) -> Option<Self> {
        let number = |text: &str| text.parse().ok();
        match value {
            "home" => Some(Self::Home),
            "lost" => Some(Self::Lost),
            "scrapped" => Some(Self::Scrapped),
            _ => match value.split_once('-')? {
                ("with", text) => number(text).map(HolderId::new).map(Self::With),
                ("safe", text) => number(text).map(WayId::new).map(Self::InSafe),
                _ => None,
            },
        }
    }

    /// The place, for a copy that was at `before`.
    pub fn place(self, before: Place) -> Place {
        let by = before.had_by();
        match self {
            Self::With(holder) => Place::Held(holder),
            Self::InSafe(way) => Place::InKeySafe(way),
            Self::Home => Place::AtHome { returned_by: by },
            Self::Lost => Place::Lost {
                by,
                loss: Loss::NotSaid,
                from_safe: before.key_safe(),
            },
            Self::Scrapped => Place::Scrapped { by },
        }
    }
}

/// Every place a copy can be in.
pub fn places(overview: &Overview, with_the_gone: bool) -> Vec<(String, String)> {
    let household = &overview.household;
    let people = household.holders().map(|(id, _)| {
        (
            Where::With(id).value(),
            overview.names.holder(id).to_owned(),
        )
    });
    let safes = household
        .ways()
        .filter(|(_, way)| way.kind == WayKind::KeySafe);
    let safes = safes.map(|(id, _)| (Where::InSafe(id).value(), overview.names.way(id).to_owned()));
    let gone = [
        (Where::Lost.value(), words::PLACE_LOST.to_owned()),
        (Where::Scrapped.value(), words::PLACE_SCRAPPED.to_owned()),
    ];
    let gone = gone.into_iter().filter(|_| with_the_gone);
    std::iter::once((Where::Home.value(), words::PLACE_HOME.to_owned()))
        .chain(people)
        .chain(safes)
        .chain(gone)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_come_back_from_their_values() {
        for place in [
            Where::With(HolderId::new(12)),
            Where::InSafe(WayId::new(3)),
            Where::Home,
            Where::Lost,
            Where::Scrapped,
        ] {
            assert_eq!(Where::read(&place.value()), Some(place));
        }
        assert_eq!(Where::read("with-nobody"), None);
    }
}
