//! A way in without a cylinder: a code, a key safe, a remote, an app.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use self_check_core::household::{
    Change, DoorId, HolderId, Household, KeyCopy, KeyId, Place, Way, WayId, WayKind,
};
use yew::prelude::*;

use super::edit::Edit;
use super::filing::use_filing;
use super::tick_list::TickList;
use crate::copy::en::household::board as words;
use crate::household::Overview;
use crate::ui::{Field, choose};

/// Which way in; a new one where there is none.
#[derive(Properties, PartialEq)]
pub struct WayFormProps {
    /// The household.
    pub overview: Rc<Overview>,
    /// The door it opens.
    pub door: DoorId,
    /// The way in.
    pub way: Option<WayId>,
    /// The form is done with; true where the way is gone.
    pub onclose: Callback<bool>,
}

/// What was edited. The rest stays as it is by then: while the form is open a remote can be lost in
/// another row.
#[derive(Clone, Debug, Default, PartialEq)]
struct Edited {
    kind: Option<WayKind>,
    known_by: BTreeMap<HolderId, bool>,
    lies_in_it: BTreeMap<KeyId, bool>,
}

impl Edited {
    /// The way in with what was edited.
    fn applied_to(&self, mut way: Way) -> Way {
        way.kind = self.kind.unwrap_or(way.kind);
        for (&holder, &knows) in &self.known_by {
            if knows {
                way.known_by.insert(holder);
            } else {
                way.known_by.remove(&holder);
            }
        }
        way
    }

    /// The keys put into the key safe or taken out of it: a copy more for each key put in, and what is
    /// taken out lies in the home.
    fn of_the_keys_in_it(&self, household: &Household, safe: WayId) -> Vec<Change> {
        let place = Place::InKeySafe(safe);
        let lying = |key: KeyId| {
            let copies = household.copies_of(key);
            copies.filter(move |(_, copy)| copy.place == place)
        };
        let mut changes = Vec::new();
        for (&key, &lies_in_it) in &self.lies_in_it {
            if !lies_in_it {
                let to = Place::AtHome { returned_by: None };
                changes.extend(lying(key).map(|(copy, _)| Change::Move { copy, to }));
            } else if lying(key).next().is_none() {
                changes.push(Change::AddCopy(KeyCopy { key, place }));
            }
        }
        changes
    }
}

/// The form of a way in.
#[component]
pub fn WayForm(props: &WayFormProps) -> Html {
    let filing = use_filing(&props.onclose);
    let overview = Rc::clone(&props.overview);
    let known = props.way.and_then(|way| overview.household.way(way));
    let known = known.cloned();
    let known = known.unwrap_or_else(|| Way::at(props.door, WayKind::DoorCode));
    let edited = use_state(Edited::default);
    let edit = Edit(edited.clone());
    let now = edited.applied_to(known);
    let items = use_memo(overview.household.clone(), |household| {
        let names = &overview.names;
        let people = household.holders();
        people
            .map(|(id, _)| (id.number(), names.holder(id).to_owned()))
            .collect::<Vec<_>>()
    });
    let title = match props.way {
        Some(way) => overview.names.way(way).to_owned(),
        None => format!("{}: {}", words::ADD_WAY, overview.names.door(props.door)),
    };
    let onsave = {
        let (filing, part, overview, way, edited) = (
            filing.clone(),
            now.clone(),
            Rc::clone(&overview),
            props.way,
            edited.clone(),
        );
        Callback::from(move |()| {
            let part = part.clone();
            let id = way.unwrap_or_else(|| overview.household.next_way());
            let keys = if part.kind == WayKind::KeySafe {
                edited.of_the_keys_in_it(&overview.household, id)
            } else {
                Vec::new()
            };
            let change = match way {
                Some(way) => Change::SetWay(way, part),
                None => Change::AddWay(part),
            };
            filing.file(&overview, "way-kind", [vec![change], keys].concat());
        })
    };
    let onremove = props.way.map(|way| {
        let (filing, overview) = (filing.clone(), Rc::clone(&overview));
        Callback::from(move |()| filing.remove(&overview, Change::RemoveWay(way)))
    });
    let kind = Field {
        error: filing.wrong_with("way-kind"),
        ..Field::new("way-kind", words::WAY_KIND)
    };
    let ticked: BTreeSet<u32> = now.known_by.iter().map(|holder| holder.number()).collect();
    let ontick = edit.with(|edited: &mut Edited, (holder, is_ticked): (u32, bool)| {
        edited.known_by.insert(HolderId::new(holder), is_ticked);
    });
    let keys = use_memo(overview.household.clone(), |household| {
        let keys = household.keys();
        let named = |key: KeyId| overview.names.key(key).to_owned();
        keys.map(|(key, _)| (key.number(), named(key)))
            .collect::<Vec<_>>()
    });
    let lying = keys_in(&overview.household, props.way);
    let lying: BTreeSet<u32> = keys
        .iter()
        .map(|&(key, _)| key)
        .filter(|&key| {
            let key = KeyId::new(key);
            let told = edited.lies_in_it.get(&key).copied();
            told.unwrap_or_else(|| lying.contains(&key))
        })
        .collect();
    let onput = edit.with(|edited: &mut Edited, (key, is_ticked): (u32, bool)| {
        edited.lies_in_it.insert(KeyId::new(key), is_ticked);
    });
    let fields = html! {
        <>
            { choose(kind, now.kind, edit.with(|edited: &mut Edited, kind| edited.kind = Some(kind))) }
            if now.kind == WayKind::KeySafe && !keys.is_empty() {
                <TickList id="way-keys" legend={words::WAY_KEYS} hint={words::WAY_KEYS_HINT} items={keys} ticked={lying} ontick={onput} />
            }
            if !items.is_empty() {
                <TickList id="way-known" legend={words::WAY_KNOWN} {items} {ticked} {ontick} />
            }
        </>
    };
    filing.sheet(&title, fields, onsave, onremove)
}

/// The keys that lie in a key safe.
pub fn keys_in(household: &Household, safe: Option<WayId>) -> BTreeSet<KeyId> {
    let copies = household.copies();
    let inside = copies.filter(|(_, copy)| safe.map(Place::InKeySafe) == Some(copy.place));
    inside.map(|(_, copy)| copy.key).collect()
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{LockKind, Loss, Role, quick};

    use super::*;

    #[test]
    fn keys_are_put_into_a_safe_and_taken_out_by_their_ticks() {
        let home = quick::two_doors(LockKind::NotSure, &[Role::Resident]).unwrap_or_default();
        let keys: Vec<KeyId> = home.keys().map(|(key, _)| key).collect();
        let door = home.doors().next().map_or(DoorId::new(0), |(id, _)| id);
        let safe = home.next_way();
        let put = |home: &Household, ticks: &[(KeyId, bool)]| {
            let edited = Edited {
                lies_in_it: ticks.iter().copied().collect(),
                ..Edited::default()
            };
            let changes = edited.of_the_keys_in_it(home, safe);
            home.with_all(changes).unwrap_or_default()
        };
        let hung = home.with(Change::AddWay(Way::at(door, WayKind::KeySafe)));
        let both = put(
            &hung.unwrap_or_default(),
            &[(keys[0], true), (keys[1], true)],
        );
        assert_eq!(keys_in(&both, Some(safe)).len(), 2);
        assert_eq!(both.copies().len(), home.copies().len() + 2);
        let same = put(&both, &[(keys[0], true)]);
        assert_eq!(same, both, "it lies in it already");
        let one = put(&both, &[(keys[0], false)]);
        assert_eq!(keys_in(&one, Some(safe)), BTreeSet::from([keys[1]]));
        assert_eq!(
            one.copies().len(),
            both.copies().len(),
            "it lies in the home"
        );
    }

    #[test]
    fn what_happens_in_other_rows_while_the_form_is_open_stays() {
        let people = [Role::Resident, Role::Child];
        let home = quick::two_doors(LockKind::NotSure, &people).unwrap_or_default();
        let holders: Vec<HolderId> = home.holders().map(|(id, _)| id).collect();
        let door = home.doors().next().map_or(DoorId::new(0), |(id, _)| id);
        let id = home.next_way();
        let remote = Way {
            known_by: holders.iter().copied().collect(),
            ..Way::at(door, WayKind::Remote)
        };
        let home = home.with(Change::AddWay(remote)).unwrap_or_default();
        let edited = Edited {
            known_by: [(holders[1], false)].into(),
            ..Edited::default()
        };
        let (holder, loss) = (holders[0], Loss::Stolen);
        let lost = home.with(Change::LoseRing { holder, loss });
        let lost = lost.unwrap_or_default();
        let way = |home: &Household| {
            home.way(id)
                .cloned()
                .unwrap_or_else(|| panic!("it is there"))
        };
        let saved = lost.with(Change::SetWay(id, edited.applied_to(way(&lost))));
        let saved = way(&saved.unwrap_or_default());
        assert_eq!(saved.lost_by, [(holder, loss)].into());
        assert_eq!(saved.known_by, [holder].into());
        assert_eq!(saved.kind, WayKind::Remote);
    }
}
