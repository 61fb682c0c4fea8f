//! What everything in a household is called: by its kind, by its own word where it has one, and by
//! a number where several would be called the same.

use std::collections::BTreeMap;

use self_check_core::household::{DoorId, HolderId, Household, KeyId, Label, LockId, WayId};

use crate::copy::Listed;

/// The name of one thing.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Name {
    text: String,
    is_own: bool,
}

/// The names of a household's parts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Names {
    doors: BTreeMap<DoorId, Name>,
    locks: BTreeMap<LockId, Name>,
    keys: BTreeMap<KeyId, Name>,
    holders: BTreeMap<HolderId, Name>,
    ways: BTreeMap<WayId, Name>,
}

/// Before the last of a row.
const AND: &str = " and ";

/// So many doors name a key; more are counted.
const DOORS_OF_A_NAME: usize = 3;

impl Name {
    /// As it stands alone or first.
    pub fn as_str(&self) -> &str {
        &self.text
    }

    /// As it stands within a row: a word of the list begins small, an own word stays as it is.
    pub fn within(&self) -> String {
        if self.is_own {
            return self.text.clone();
        }
        let mut letters = self.text.chars();
        letters.next().map_or_else(String::new, |first| {
            first.to_lowercase().chain(letters).collect()
        })
    }

    fn of(kind: &'static str, label: Option<&Label>) -> Self {
        match label {
            Some(label) => Self {
                text: label.as_str().to_owned(),
                is_own: true,
            },
            None => Self::listed(kind),
        }
    }

    fn listed(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            is_own: false,
        }
    }
}

impl Names {
    /// Of everything in this household.
    pub fn of(household: &Household) -> Self {
        let doors = household
            .doors()
            .map(|(id, door)| (id, Name::of(door.kind.words(), door.label.as_ref())));
        let doors = told_apart(doors.collect());
        let holders = household
            .holders()
            .map(|(id, holder)| (id, Name::of(holder.role.words(), holder.label.as_ref())));
        let ways = household.ways().map(|(id, way)| {
            let door = doors.get(&way.door).map(Name::within).unwrap_or_default();
            let kind = way.kind.words();
            (id, Name::listed(format!("{kind} at {door}")))
        });
        let mut names = Self {
            locks: locks(household, &doors),
            holders: told_apart(holders.collect()),
            ways: told_apart(ways.collect()),
            keys: BTreeMap::new(),
            doors,
        };
        names.keys = told_apart(names.keys_of(household));
        names
    }

    /// The name of a door.
    pub fn door(&self, id: DoorId) -> &str {
        self.doors.get(&id).map_or("", Name::as_str)
    }

    /// The name of a lock: its door's, with a number where that door has several.
    pub fn lock(&self, id: LockId) -> &str {
        self.locks.get(&id).map_or("", Name::as_str)
    }

    /// The name of a key: the doors it opens.
    pub fn key(&self, id: KeyId) -> &str {
        self.keys.get(&id).map_or("", Name::as_str)
    }

    /// The name of a key, within a sentence.
    pub fn key_in_a_row(&self, id: KeyId) -> String {
        self.keys.get(&id).map(Name::within).unwrap_or_default()
    }

    /// The doors a key opens, within a sentence.
    pub fn key_for(&self, id: KeyId) -> String {
        let name = self.key_in_a_row(id);
        match name.rsplit_once(", ") {
            Some((doors, last)) if !last.contains(AND) => format!("{doors}{AND}{last}"),
            _ => name,
        }
    }

    /// The name of a person: what they are to the household.
    pub fn holder(&self, id: HolderId) -> &str {
        self.holders.get(&id).map_or("", Name::as_str)
    }

    /// The name of a way in: its kind and its door.
    pub fn way(&self, id: WayId) -> &str {
        self.ways.get(&id).map_or("", Name::as_str)
    }

    /// These doors in a row.
    pub fn doors(&self, ids: impl IntoIterator<Item = DoorId>) -> String {
        in_a_row(ids.into_iter().filter_map(|id| self.doors.get(&id)))
    }

    /// These doors in a row within a sentence.
    pub fn doors_within(&self, ids: impl IntoIterator<Item = DoorId>) -> String {
        let names = ids.into_iter().filter_map(|id| self.doors.get(&id));
        names.map(Name::within).collect::<Vec<_>>().join(", ")
    }

    /// These locks in a row.
    pub fn locks(&self, ids: impl IntoIterator<Item = LockId>) -> String {
        in_a_row(ids.into_iter().filter_map(|id| self.locks.get(&id)))
    }

    /// These people in a row.
    pub fn holders(&self, ids: impl IntoIterator<Item = HolderId>) -> String {
        in_a_row(ids.into_iter().filter_map(|id| self.holders.get(&id)))
    }

    fn keys_of(&self, household: &Household) -> BTreeMap<KeyId, Name> {
        let mut doors: BTreeMap<KeyId, Vec<DoorId>> =
            household.keys().map(|(id, _)| (id, Vec::new())).collect();
        for (_, lock) in household.locks() {
            for key in &lock.keys {
                if let Some(doors) = doors.get_mut(key)
                    && !doors.contains(&lock.door)
                {
                    doors.push(lock.door);
                }
            }
        }
        doors
            .into_iter()
            .map(|(key, doors)| (key, self.key_to(&doors)))
            .collect()
    }

    fn key_to(&self, doors: &[DoorId]) -> Name {
        let Some(first) = doors.first().and_then(|door| self.doors.get(door)) else {
            return Name::listed("A key that opens nothing yet");
        };
        let named = doors.iter().take(DOORS_OF_A_NAME).copied();
        let more = doors.len().saturating_sub(DOORS_OF_A_NAME);
        let text = match more {
            0 => self.doors(named),
            more => format!("{} and {more} more", self.doors(named)),
        };
        Name {
            text,
            is_own: first.is_own,
        }
    }
}

/// Names one after another: the first as it stands alone.
fn in_a_row<'a>(names: impl IntoIterator<Item = &'a Name>) -> String {
    let mut row = String::new();
    for name in names {
        if row.is_empty() {
            row.push_str(name.as_str());
        } else {
            row.push_str(", ");
            row.push_str(&name.within());
        }
    }
    row
}

/// The locks by their doors; a door with several counts them.
fn locks(household: &Household, doors: &BTreeMap<DoorId, Name>) -> BTreeMap<LockId, Name> {
    let mut on_door: BTreeMap<DoorId, usize> = BTreeMap::new();
    for (_, lock) in household.locks() {
        *on_door.entry(lock.door).or_default() += 1;
    }
    let mut seen: BTreeMap<DoorId, usize> = BTreeMap::new();
    let named = household.locks().map(|(id, lock)| {
        let door = doors.get(&lock.door);
        let mut name = door.cloned().unwrap_or_else(|| Name::listed(""));
        if on_door.get(&lock.door).is_some_and(|&count| count > 1) {
            let number = seen.entry(lock.door).or_default();
            *number += 1;
            name.text = format!("{}, lock {number}", name.text);
        }
        (id, name)
    });
    named.collect()
}

/// Numbers the names that occur more than once, in the order of the ids.
fn told_apart<I: Ord + Copy>(mut names: BTreeMap<I, Name>) -> BTreeMap<I, Name> {
    let mut counts: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    for name in names.values() {
        counts.entry(name.text.clone()).or_default().0 += 1;
    }
    for name in names.values_mut() {
        if let Some((count, seen)) = counts.get_mut(&name.text)
            && *count > 1
        {
            *seen += 1;
            name.text = format!("{} {seen}", name.text);
        }
    }
    names
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{Change, Door, DoorKind, demonstration};

    use super::*;

    #[test]
    fn names_tell_everything_in_the_example_apart() {
        let household = demonstration::household();
        let names = Names::of(&household);
        let holders: Vec<&str> = household
            .holders()
            .map(|(id, _)| names.holder(id))
            .collect();
        assert_eq!(holders[..2], ["Resident 1", "Resident 2"]);
        let keys: Vec<&str> = household.keys().map(|(id, _)| names.key(id)).collect();
        assert_eq!(
            keys,
            [
                "Front door, workshop",
                "Back door",
                "Room door",
                "Cabinet",
                "Shed"
            ]
        );
        let shared = household.keys().next().map(|(id, _)| names.key_for(id));
        assert_eq!(shared.as_deref(), Some("front door and workshop"));
        let ways: Vec<&str> = household.ways().map(|(id, _)| names.way(id)).collect();
        assert_eq!(
            ways,
            ["Key safe at back door", "Remote, fob or card at gate"]
        );
    }

    #[test]
    fn own_words_stay_as_they_are_within_a_row() {
        let label = Label::new("Boiler room").ok();
        let door = Door {
            label,
            ..Door::of(DoorKind::OtherDoor)
        };
        let household = Household::empty()
            .with_all([
                Change::AddDoor(Door::of(DoorKind::FrontDoor)),
                Change::AddDoor(door),
            ])
            .unwrap_or_default();
        let names = Names::of(&household);
        let all = household.doors().map(|(id, _)| id);
        assert_eq!(names.doors(all), "Front door, Boiler room");
    }
}
