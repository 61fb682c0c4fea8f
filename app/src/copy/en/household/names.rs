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

/// The name of a key: what it opens.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct KeyName {
    /// As it stands alone or first.
    alone: String,
    /// After “the key to”.
    within: String,
    /// The same with “and” before the last.
    in_words: String,
}

/// The names of a household's parts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Names {
    doors: BTreeMap<DoorId, Name>,
    locks: BTreeMap<LockId, Name>,
    /// The locks of doors with several, counted on each door.
    numbers: BTreeMap<LockId, usize>,
    keys: BTreeMap<KeyId, KeyName>,
    holders: BTreeMap<HolderId, Name>,
    ways: BTreeMap<WayId, Name>,
}

/// Before the last of a row.
const AND: &str = " and ";

/// So many doors or locks name a key; more are counted.
const MOST_OF_A_NAME: usize = 3;

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
        let numbers = numbers_on_doors(household);
        let mut names = Self {
            locks: locks(household, &doors, &numbers),
            numbers,
            holders: told_apart(holders.collect()),
            ways: told_apart(ways.collect()),
            keys: BTreeMap::new(),
            doors,
        };
        names.keys = names.keys_of(household);
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

    /// The same where its door is called otherwise.
    pub fn lock_on(&self, id: LockId, door: &str) -> String {
        lock_on(door, self.numbers.get(&id).copied())
    }

    /// The name of a key: the doors it opens, or the locks where it does not open all of a door.
    pub fn key(&self, id: KeyId) -> &str {
        self.keys.get(&id).map_or("", |key| &key.alone)
    }

    /// What a key opens, within a sentence: after “the key to”.
    pub fn key_in_a_row(&self, id: KeyId) -> String {
        self.keys
            .get(&id)
            .map(|key| key.within.clone())
            .unwrap_or_default()
    }

    /// The same, with “and” before the last.
    pub fn key_for(&self, id: KeyId) -> String {
        self.keys
            .get(&id)
            .map(|key| key.in_words.clone())
            .unwrap_or_default()
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

    fn keys_of(&self, household: &Household) -> BTreeMap<KeyId, KeyName> {
        let mut opened: BTreeMap<KeyId, Vec<LockId>> =
            household.keys().map(|(id, _)| (id, Vec::new())).collect();
        let mut on_door: BTreeMap<DoorId, usize> = BTreeMap::new();
        for (id, lock) in household.locks() {
            *on_door.entry(lock.door).or_default() += 1;
            for key in &lock.keys {
                opened.entry(*key).or_default().push(id);
            }
        }
        let named = opened
            .into_iter()
            .map(|(key, locks)| (key, key_to(&self.opened_by(household, &locks, &on_door))));
        let mut keys: BTreeMap<KeyId, KeyName> = named.collect();
        let alone = keys.iter().map(|(&id, key)| (id, key.alone.as_str()));
        for (id, number) in numbers_of_alike(alone, |text, number| {
            format!("{text}{}", key_number(number))
        }) {
            if let Some(key) = keys.get_mut(&id) {
                let number = key_number(number);
                for text in [&mut key.alone, &mut key.within, &mut key.in_words] {
                    text.push_str(&number);
                }
            }
        }
        keys
    }

    /// What names the key to these locks: each door all of whose locks it opens, each lock of the others.
    fn opened_by(
        &self,
        household: &Household,
        locks: &[LockId],
        on_door: &BTreeMap<DoorId, usize>,
    ) -> Vec<&Name> {
        let door_of = |lock: LockId| household.lock(lock).map(|lock| lock.door);
        let mut of_door: BTreeMap<DoorId, usize> = BTreeMap::new();
        for door in locks.iter().filter_map(|&lock| door_of(lock)) {
            *of_door.entry(door).or_default() += 1;
        }
        let mut named = Vec::new();
        for &lock in locks {
            let Some(door) = door_of(lock) else { continue };
            if of_door.get(&door) != on_door.get(&door) {
                named.extend(self.locks.get(&lock));
            } else if let Some(name) = self.doors.get(&door)
                && !named.contains(&name)
            {
                named.push(name);
            }
        }
        named
    }
}

/// The key to these.
fn key_to(opened: &[&Name]) -> KeyName {
    if opened.is_empty() {
        return KeyName {
            alone: "A key that opens nothing yet".to_owned(),
            within: "no door yet".to_owned(),
            in_words: "no door yet".to_owned(),
        };
    }
    let named = || opened.iter().take(MOST_OF_A_NAME).copied();
    let more = opened.len().saturating_sub(MOST_OF_A_NAME);
    let and_more = match more {
        0 => String::new(),
        more => format!("{AND}{more} more"),
    };
    let within: Vec<String> = named().map(Name::within).collect();
    let in_words = match within.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, others)) if more == 0 => format!("{}{AND}{last}", others.join(", ")),
        _ => within.join(", "),
    };
    KeyName {
        alone: format!("{}{and_more}", in_a_row(named())),
        within: format!("{}{and_more}", within.join(", ")),
        in_words: format!("{in_words}{and_more}"),
    }
}

/// After the names of keys that open the same.
fn key_number(number: usize) -> String {
    format!(" (key {number})")
}

/// A lock by its door, and by its number where there is one: in brackets, so that it cannot be read as the
/// door's.
fn lock_on(door: &str, number: Option<usize>) -> String {
    match number {
        Some(number) => format!("{door} (lock {number})"),
        None => door.to_owned(),
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

/// The locks of doors with several, counted on each door in the order of the ids.
fn numbers_on_doors(household: &Household) -> BTreeMap<LockId, usize> {
    let mut on_door: BTreeMap<DoorId, Vec<LockId>> = BTreeMap::new();
    for (id, lock) in household.locks() {
        on_door.entry(lock.door).or_default().push(id);
    }
    let several = on_door.into_values().filter(|locks| locks.len() > 1);
    several
        .flat_map(|locks| locks.into_iter().zip(1..))
        .collect()
}

/// The locks by their doors.
fn locks(
    household: &Household,
    doors: &BTreeMap<DoorId, Name>,
    numbers: &BTreeMap<LockId, usize>,
) -> BTreeMap<LockId, Name> {
    let named = household.locks().map(|(id, lock)| {
        let door = doors.get(&lock.door);
        let mut name = door.cloned().unwrap_or_else(|| Name::listed(""));
        name.text = lock_on(&name.text, numbers.get(&id).copied());
        (id, name)
    });
    named.collect()
}

/// Numbers the names that occur more than once, in the order of the ids.
fn told_apart<I: Ord + Copy>(mut names: BTreeMap<I, Name>) -> BTreeMap<I, Name> {
    let texts = names.iter().map(|(&id, name)| (id, name.as_str()));
    for (id, number) in numbers_of_alike(texts, numbered) {
        if let Some(name) = names.get_mut(&id) {
            name.text = numbered(&name.text, number);
        }
    }
    names
}

fn numbered(text: &str, number: usize) -> String {
    format!("{text} {number}")
}

/// A number for each text that stands for several, counted for each in the order of the ids. A number is
/// left out where the text with it is the name of something else; capitals make no difference.
fn numbers_of_alike<'a, I: Ord + Copy>(
    texts: impl Iterator<Item = (I, &'a str)>,
    with_number: impl Fn(&str, usize) -> String,
) -> BTreeMap<I, usize> {
    let mut alike: BTreeMap<String, Vec<I>> = BTreeMap::new();
    for (id, text) in texts {
        let text = text.chars().flat_map(char::to_lowercase).collect();
        alike.entry(text).or_default().push(id);
    }
    let is_taken = |text: &str| alike.contains_key(text);
    let several = alike.iter().filter(|(_, ids)| ids.len() > 1);
    let numbered = several.flat_map(|(text, ids)| {
        let free = (1..).filter(|&number| !is_taken(&with_number(text, number)));
        ids.iter().copied().zip(free)
    });
    numbered.collect()
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{
        Arrangement, Change, Door, DoorKind, Key, Lock, LockKind, demonstration,
    };

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

    fn door(kind: DoorKind, label: Option<&str>) -> Change {
        let label = label.and_then(|label| Label::new(label).ok());
        Change::AddDoor(Door {
            label,
            ..Door::of(kind)
        })
    }

    fn with(changes: impl IntoIterator<Item = Change>) -> Household {
        let home = Household::empty().with_all(changes);
        assert!(home.is_ok(), "{:?}", home.err());
        home.unwrap_or_default()
    }

    fn keys_for(household: &Household) -> Vec<[String; 3]> {
        let names = Names::of(household);
        let keys = household.keys();
        let all = |id| {
            [
                names.key(id).to_owned(),
                names.key_in_a_row(id),
                names.key_for(id),
            ]
        };
        keys.map(|(id, _)| all(id)).collect()
    }

    /// Doors of these kinds with these own words, and keys that each open these locks, by their places: a door
    /// has as many locks as `locks` names it.
    fn home(doors: &[(DoorKind, Option<&str>)], locks: &[usize], keys: &[&[usize]]) -> Household {
        let home = with(doors.iter().map(|&(kind, label)| door(kind, label)));
        let ids: Vec<DoorId> = home.doors().map(|(id, _)| id).collect();
        let added = vec![Change::AddKey(Key::default()); keys.len()];
        let home = home.with_all(added).unwrap_or_default();
        let opens = home.keys().map(|(id, _)| id).zip(keys);
        let opens: Vec<(KeyId, &&[usize])> = opens.collect();
        let locks = locks.iter().enumerate().filter_map(|(place, &door)| {
            let keys = opens.iter().filter(|(_, locks)| locks.contains(&place));
            Some(Change::AddLock(Lock {
                keys: keys.map(|&(key, _)| key).collect(),
                arrangement: Arrangement::MasterKeyed,
                ..Lock::on(*ids.get(door)?, LockKind::PinTumbler)
            }))
        });
        home.with_all(locks).unwrap_or_default()
    }

    #[test]
    fn keys_to_two_locks_of_one_door_are_not_called_as_two_doors() {
        let front = (DoorKind::FrontDoor, None);
        let shed = (DoorKind::Shed, None);
        let household = home(&[front, shed], &[0, 0, 1], &[&[0], &[1, 2], &[0, 1]]);
        let lock_1 = [
            "Front door (lock 1)",
            "front door (lock 1)",
            "front door (lock 1)",
        ];
        let lock_2 = [
            "Front door (lock 2), shed",
            "front door (lock 2), shed",
            "front door (lock 2) and shed",
        ];
        let both = ["Front door", "front door", "front door"];
        assert_eq!(keys_for(&household), [lock_1, lock_2, both]);
        let names = Names::of(&household);
        let locks: Vec<&str> = household.locks().map(|(id, _)| names.lock(id)).collect();
        assert_eq!(
            locks,
            ["Front door (lock 1)", "Front door (lock 2)", "Shed"]
        );
    }

    #[test]
    fn keys_that_open_the_same_are_counted_as_keys() {
        let doors = [(DoorKind::FrontDoor, None), (DoorKind::BackDoor, None)];
        let household = home(&doors, &[0, 1], &[&[0, 1], &[0, 1]]);
        let second = [
            "Front door, back door (key 2)",
            "front door, back door (key 2)",
            "front door and back door (key 2)",
        ];
        assert_eq!(keys_for(&household)[1], second);
    }

    #[test]
    fn key_that_opens_nothing_has_a_name_in_every_place() {
        let household = home(&[], &[], &[&[], &[]]);
        let second = [
            "A key that opens nothing yet (key 2)",
            "no door yet (key 2)",
            "no door yet (key 2)",
        ];
        assert_eq!(keys_for(&household)[1], second);
        let one = home(&[], &[], &[&[]]);
        let named = keys_for(&one);
        assert_eq!(named[0][1..], ["no door yet", "no door yet"]);
    }

    #[test]
    fn own_word_with_a_comma_stays_one_door() {
        let household = home(&[(DoorKind::Shed, Some("shed, left"))], &[0], &[&[0]]);
        assert_eq!(keys_for(&household), [["shed, left"; 3]]);
    }

    #[test]
    fn number_that_makes_the_name_of_another_is_left_out() {
        let shed = (DoorKind::Shed, None);
        let household = home(&[shed, shed, (DoorKind::Shed, Some("shed 2"))], &[], &[]);
        let names = Names::of(&household);
        let doors: Vec<&str> = household.doors().map(|(id, _)| names.door(id)).collect();
        assert_eq!(doors, ["Shed 1", "Shed 3", "shed 2"]);
    }
}
