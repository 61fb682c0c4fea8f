//! A person: what they are to the home, what they need, what they are given.

use std::collections::BTreeSet;
use std::rc::Rc;

use self_check_core::household::{
    Change, DoorId, Holder, HolderId, Household, KeyCopy, KeyId, Place, Refusal, Role, WayId,
    WayKind,
};
use yew::prelude::*;

use super::edit::Edit;
use super::filing::{label, use_filing};
use super::tick_list::TickList;
use crate::copy::en::household::{self, board as words};
use crate::household::Overview;
use crate::ui::{Field, choose, choose_among, text_field, tick};

/// So many people can be added at once.
const MOST_AT_ONCE: usize = 100;

/// Who; a new person where there is none.
#[derive(Properties, PartialEq)]
pub struct HolderFormProps {
    /// The household.
    pub overview: Rc<Overview>,
    /// The person.
    pub holder: Option<HolderId>,
    /// The form is done with.
    pub onclose: Callback<()>,
}

#[derive(Clone, Debug, PartialEq)]
struct Draft {
    role: Role,
    label: String,
    no_longer_should: bool,
    needs: Option<BTreeSet<DoorId>>,
    given: BTreeSet<KeyId>,
    /// Whether all that they had is back.
    is_all_back: bool,
    count: usize,
}

impl Draft {
    fn of(holder: Option<&Holder>) -> Self {
        Self {
            role: holder.map_or(Role::Resident, |holder| holder.role),
            label: holder
                .and_then(|holder| holder.label.as_ref())
                .map_or_else(String::new, |label| label.as_str().to_owned()),
            no_longer_should: holder.is_some_and(|holder| holder.no_longer_should),
            needs: holder.and_then(|holder| holder.needs.clone()),
            given: BTreeSet::new(),
            is_all_back: false,
            count: 1,
        }
    }

    fn holder(&self) -> Result<Holder, Refusal> {
        Ok(Holder {
            role: self.role,
            label: label(&self.label)?,
            no_longer_should: self.no_longer_should,
            needs: self.needs.clone(),
        })
    }

    /// The changes that set this person, or add such people.
    fn changes(&self, home: &Household, id: Option<HolderId>, holder: &Holder) -> Vec<Change> {
        let mut next = home.next_holder().number();
        let mut changes = Vec::new();
        let count = if id.is_some() { 1 } else { self.count };
        for _ in 0..count {
            let id = match id {
                Some(id) => {
                    changes.push(Change::SetHolder(id, holder.clone()));
                    if self.is_all_back {
                        changes.extend(all_back(home, id));
                    }
                    id
                }
                None => {
                    changes.push(Change::AddHolder(holder.clone()));
                    next += 1;
                    HolderId::new(next - 1)
                }
            };
            for &key in &self.given {
                changes.push(Change::AddCopy(KeyCopy::held(key, id)));
                next += 1;
            }
        }
        changes
    }
}

/// The remotes that a person has: one that they lost is not with them.
fn remotes_of(home: &Household, holder: HolderId) -> impl Iterator<Item = WayId> {
    let remotes = home.ways().filter(move |(_, way)| {
        way.kind == WayKind::Remote
            && way.known_by.contains(&holder)
            && !way.lost_by.contains_key(&holder)
    });
    remotes.map(|(id, _)| id)
}

/// What the person has is in the home, given back by them; a remote is with them no more.
fn all_back(home: &Household, holder: HolderId) -> Vec<Change> {
    let to = Place::AtHome {
        returned_by: Some(holder),
    };
    let copies = home.ring_of(holder);
    let copies = copies.map(|(copy, _)| Change::Move { copy, to });
    let remotes = remotes_of(home, holder).map(|way| Change::Knows {
        holder,
        way,
        knows: false,
    });
    copies.chain(remotes).collect()
}

/// The form of a person.
#[component]
pub fn HolderForm(props: &HolderFormProps) -> Html {
    let filing = use_filing(&props.onclose);
    let overview = Rc::clone(&props.overview);
    let known = props
        .holder
        .and_then(|holder| overview.household.holder(holder));
    let draft = use_state(|| Draft::of(known));
    let edit = Edit(draft.clone());
    let keys = use_memo(overview.household.clone(), |household| {
        let keys = household.keys();
        keys.map(|(id, _)| (id.number(), words::key_to(&overview.names.key_in_a_row(id))))
            .collect::<Vec<_>>()
    });
    let doors = use_memo(overview.household.clone(), |household| {
        let doors = household.doors();
        doors
            .map(|(id, _)| (id.number(), overview.names.door(id).to_owned()))
            .collect::<Vec<_>>()
    });
    let title = match props.holder {
        Some(holder) => overview.names.holder(holder).to_owned(),
        None => words::ADD_PERSON.to_owned(),
    };
    let onsave = {
        let (filing, draft, overview, holder) = (
            filing.clone(),
            draft.clone(),
            Rc::clone(&overview),
            props.holder,
        );
        Callback::from(move |()| match draft.holder() {
            Err(refusal) => {
                draft.set(Draft {
                    label: String::new(),
                    ..(*draft).clone()
                });
                filing.refuse("person-label", household::refusal(refusal, &overview.names));
            }
            Ok(part) => {
                let changes = draft.changes(&overview.household, holder, &part);
                filing.file(&overview, "person-role", changes);
            }
        })
    };
    let onremove = props.holder.map(|holder| {
        let (filing, overview) = (filing.clone(), Rc::clone(&overview));
        Callback::from(move |()| filing.remove(&overview, Change::RemoveHolder(holder)))
    });
    let label = Field {
        hint: Some(words::LABEL_HINT),
        error: filing.wrong_with("person-label"),
        ..Field::new("person-label", words::LABEL)
    };
    let given: BTreeSet<u32> = draft.given.iter().map(|key| key.number()).collect();
    let ongive = edit.with(|draft: &mut Draft, (key, is_ticked): (u32, bool)| {
        if is_ticked {
            draft.given.insert(KeyId::new(key));
        } else {
            draft.given.remove(&KeyId::new(key));
        }
    });
    let has_something = props.holder.is_some_and(|holder| {
        overview.rings.contains_key(&holder)
            || remotes_of(&overview.household, holder).next().is_some()
    });
    let fields = html! {
        <>
            { choose(Field::new("person-role", words::ROLE), draft.role,
                edit.with(|draft: &mut Draft, role| draft.role = role)) }
            { text_field(label, &draft.label, edit.with(|draft: &mut Draft, label| draft.label = label)) }
            if props.holder.is_none() {
                { how_many(&draft, &edit) }
            }
            if !keys.is_empty() {
                <TickList id="person-keys" legend={words::GIVE_KEYS} items={keys} ticked={given} ontick={ongive} />
            }
            if !doors.is_empty() {
                { needs(&overview, props.holder, doors, &draft, &edit) }
            }
            if !filing.is_careful() {
                <div class="opts">
                    if has_something {
                        { tick(words::ALL_BACK, Some(words::ALL_BACK_HINT), draft.is_all_back,
                            edit.with(|draft: &mut Draft, is_ticked| draft.is_all_back = is_ticked)) }
                    }
                    { tick(words::NO_LONGER_LABEL, Some(words::NO_LONGER_HINT), draft.no_longer_should,
                        edit.with(|draft: &mut Draft, is_ticked| draft.no_longer_should = is_ticked)) }
                </div>
            }
        </>
    };
    filing.sheet(&title, fields, onsave, onremove)
}

fn how_many(draft: &Draft, edit: &Edit<Draft>) -> Html {
    let counts = (1..=MOST_AT_ONCE).map(|count| (count.to_string(), count.to_string()));
    choose_among(
        Field::new("person-count", words::HOW_MANY_PEOPLE),
        counts.collect(),
        &draft.count.to_string(),
        edit.with(|draft: &mut Draft, count: String| draft.count = count.parse().unwrap_or(1)),
    )
}

/// The doors they need, or that nobody has said.
fn needs(
    overview: &Overview,
    holder: Option<HolderId>,
    items: Rc<Vec<(u32, String)>>,
    draft: &Draft,
    edit: &Edit<Draft>,
) -> Html {
    let told = holder.and_then(|holder| overview.household.needs_of(holder).ok());
    let told = told.unwrap_or_default();
    let onsaid = edit.with(move |draft: &mut Draft, is_not_said: bool| {
        draft.needs = (!is_not_said).then(|| told.clone());
    });
    let needs = draft.needs.clone();
    let ontick = edit.with(|draft: &mut Draft, (door, is_ticked): (u32, bool)| {
        let needs = draft.needs.get_or_insert_default();
        if is_ticked {
            needs.insert(DoorId::new(door));
        } else {
            needs.remove(&DoorId::new(door));
        }
    });
    html! {
        <>
            <div class="opts">{ tick(words::NEEDS_NOT_SAID, None, needs.is_none(), onsaid) }</div>
            if let Some(needs) = needs {
                <TickList id="person-needs" legend={words::NEEDS} {items}
                    ticked={needs.iter().map(|door| door.number()).collect::<BTreeSet<u32>>()} {ontick} />
            }
        </>
    }
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{LockKind, quick};
    use self_check_core::household::{Loss, Way, demonstration};

    use super::*;

    #[test]
    fn people_added_at_once_each_have_their_copies() {
        let home = quick::two_doors(LockKind::NotSure, &[Role::Resident]).unwrap_or_default();
        let draft = Draft {
            role: Role::Tenant,
            count: 3,
            given: home.keys().map(|(id, _)| id).collect(),
            ..Draft::of(None)
        };
        let Ok(holder) = draft.holder() else {
            panic!("no label was given")
        };
        let changes = draft.changes(&home, None, &holder);
        let after = home.with_all(changes).unwrap_or_default();
        assert_eq!((after.holders().len(), after.copies().len()), (4, 8));
        for (id, holder) in after
            .holders()
            .filter(|(_, holder)| holder.role == Role::Tenant)
        {
            assert_eq!(after.ring_of(id).count(), 2, "{holder:?}");
        }
    }

    #[test]
    fn one_tick_brings_all_that_somebody_had_back_given_back_by_them() {
        let home = demonstration::household();
        let partner = |(_, holder): &(HolderId, &Holder)| holder.role == Role::WorkshopPartner;
        let Some((id, part)) = home.holders().find(partner) else {
            panic!("the example has a workshop partner")
        };
        let ring: Vec<_> = home.ring_of(id).map(|(copy, _)| copy).collect();
        let remotes: Vec<WayId> = remotes_of(&home, id).collect();
        assert!(ring.len() > 1 && !remotes.is_empty());
        let draft = Draft {
            is_all_back: true,
            no_longer_should: true,
            ..Draft::of(Some(part))
        };
        let Ok(holder) = draft.holder() else {
            panic!("the label was there before")
        };
        let changes = draft.changes(&home, Some(id), &holder);
        let after = home.with_all(changes).unwrap_or_default();
        let returned_by = Some(id);
        for copy in ring {
            let place = after.copy(copy).map(|copy| copy.place);
            assert_eq!(place, Some(Place::AtHome { returned_by }));
        }
        for way in remotes {
            assert!(
                after
                    .way(way)
                    .is_some_and(|way| !way.known_by.contains(&id))
            );
        }
        assert!(after.holder(id).is_some_and(|part| part.no_longer_should));
    }

    #[test]
    fn remote_that_somebody_lost_does_not_come_back_with_the_rest() {
        let home = demonstration::household();
        let remote = |(_, way): &(WayId, &Way)| way.kind == WayKind::Remote;
        let Some((id, way)) = home.ways().find(remote) else {
            panic!("the example has a remote")
        };
        let Some(&holder) = way.known_by.first() else {
            panic!("somebody has it")
        };
        let loss = Loss::Stolen;
        let home = home.with(Change::LoseRing { holder, loss });
        let home = home.unwrap_or_default();
        let after = home.with_all(all_back(&home, holder));
        assert_eq!(after.unwrap_or_default().way(id), home.way(id));
    }
}
