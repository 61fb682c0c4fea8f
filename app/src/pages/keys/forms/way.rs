//! A way in without a cylinder: a code, a key safe, a remote, an app.

use std::collections::BTreeSet;
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
    /// The form is done with; true where the way is gone.
    pub onclose: Callback<bool>,
}

/// The form of a way in.
#[component]
pub fn WayForm(props: &WayFormProps) -> Html {
    let filing = use_filing(&props.onclose);
    let overview = Rc::clone(&props.overview);
    let known = props.way.and_then(|way| overview.household.way(way));
    let draft = use_state(|| {
        known
            .cloned()
            .unwrap_or_else(|| Way::at(props.door, WayKind::DoorCode))
    });
    let edit = Edit(draft.clone());
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
        let (filing, draft, overview, way) = (
            filing.clone(),
            draft.clone(),
            Rc::clone(&overview),
            props.way,
        );
        Callback::from(move |()| {
            let part = (*draft).clone();
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
    let ticked: BTreeSet<u32> = draft
        .known_by
        .iter()
        .map(|holder| holder.number())
        .collect();
    let ontick = edit.with(|draft: &mut Way, (holder, is_ticked): (u32, bool)| {
        let holder = HolderId::new(holder);
        if is_ticked {
            draft.known_by.insert(holder);
        } else {
            draft.known_by.remove(&holder);
        }
    });
    let fields = html! {
        <>
            { choose(kind, draft.kind, edit.with(|draft: &mut Way, kind| draft.kind = kind)) }
            if !items.is_empty() {
                <TickList id="way-known" legend={words::WAY_KNOWN} {items} {ticked} {ontick} />
            }
        </>
    };
    filing.sheet(&title, fields, onsave, onremove)
}
