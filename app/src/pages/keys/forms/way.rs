//! A way in without a cylinder: a code, a key safe, a remote, an app.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use self_check_core::household::{Change, DoorId, HolderId, Way, WayId, WayKind};
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
    /// The form is done with.
    pub onclose: Callback<()>,
}

/// What was edited. The rest stays as it is by then: while the form is open a remote can be lost in
/// another row.
#[derive(Clone, Debug, Default, PartialEq)]
struct Edited {
    kind: Option<WayKind>,
    known_by: BTreeMap<HolderId, bool>,
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
        let (filing, part, overview, way) =
            (filing.clone(), now.clone(), Rc::clone(&overview), props.way);
        Callback::from(move |()| {
            let part = part.clone();
            let change = match way {
                Some(way) => Change::SetWay(way, part),
                None => Change::AddWay(part),
            };
            filing.file(&overview, "way-kind", vec![change]);
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
    let fields = html! {
        <>
            { choose(kind, now.kind, edit.with(|edited: &mut Edited, kind| edited.kind = Some(kind))) }
            if !items.is_empty() {
                <TickList id="way-known" legend={words::WAY_KNOWN} {items} {ticked} {ontick} />
            }
        </>
    };
    filing.sheet(&title, fields, onsave, onremove)
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{Household, LockKind, Loss, Role, quick};

    use super::*;

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
