use std::rc::Rc;

use self_check_core::advice::Urgency;
use self_check_core::household::{
    Change, DoorId, DoorKind, FoundExposure, Grouping, HolderId, KeyCopy, Lock, LockKind, Loss,
    Opening, Place, Role, Way, WayKind, file, plan, plan::Step, quick,
};

use super::*;

fn after(state: &HouseholdState, acts: impl IntoIterator<Item = HouseholdAct>) -> HouseholdState {
    let begun = Rc::new(state.clone());
    let ended = acts.into_iter().fold(begun, Reducible::reduce);
    (*ended).clone()
}

fn two_doors() -> Household {
    quick::two_doors_alike(LockKind::PinTumbler, &[Role::Resident, Role::Sitter])
        .unwrap_or_default()
}

fn holder(household: &Household, role: Role) -> HolderId {
    let found = household.holders().find(|(_, holder)| holder.role == role);
    found.map_or(HolderId::new(0), |(id, _)| id)
}

fn begun() -> HouseholdState {
    after(
        &HouseholdState::default(),
        [HouseholdAct::Become(two_doors())],
    )
}

fn lose_the_sitters_ring(state: &HouseholdState) -> HouseholdAct {
    HouseholdAct::Make(vec![Change::LoseRing {
        holder: holder(state.household(), Role::Sitter),
        loss: Loss::NearHome,
    }])
}

const FOUND: Finding = Finding {
    exposure: FoundExposure::Exposed(Urgency::Soon),
    safety_first: false,
};

/// The finding of the check that was begun from a key on the board.
fn of_begun_key(finding: Finding) -> HouseholdAct {
    HouseholdAct::TakeOver {
        finding,
        is_of_begun_key: true,
    }
}

/// The finding of a check that was begun elsewhere.
fn of_another(finding: Finding) -> HouseholdAct {
    HouseholdAct::TakeOver {
        finding,
        is_of_begun_key: false,
    }
}

fn first_key(state: &HouseholdState) -> KeyId {
    let first = state.household().keys().next();
    first.map_or(KeyId::new(0), |(id, _)| id)
}

#[test]
fn undo_and_redo_go_through_every_step() {
    let first = begun();
    let second = after(&first, [lose_the_sitters_ring(&first)]);
    assert_ne!(first.household(), second.household());
    let back = after(&second, [HouseholdAct::Undo]);
    assert_eq!(back.household(), first.household());
    assert!(back.can_redo() && back.can_undo());
    let empty = after(&back, [HouseholdAct::Undo]);
    assert!(empty.household().is_empty() && !empty.can_undo());
    let forward = after(&empty, [HouseholdAct::Redo, HouseholdAct::Redo]);
    assert_eq!(forward.household(), second.household());
    assert!(!forward.can_redo());
}

#[test]
fn refused_changes_are_told_and_leave_everything() {
    let state = begun();
    let gone = self_check_core::household::DoorId::new(999);
    let refused = after(
        &state,
        [HouseholdAct::Make(vec![
            Change::AddKey(Key::default()),
            Change::RemoveDoor(gone),
        ])],
    );
    assert_eq!(refused.household(), state.household(), "all or none");
    assert_eq!(
        refused.news.told,
        Some(Told::Refused(Refusal::UnknownDoor(gone)))
    );
    assert_eq!(refused.news.count, state.news.count + 1);
}

#[test]
fn emptied_state_holds_nothing_and_cannot_bring_it_back() {
    let state = begun();
    let state = after(&state, [lose_the_sitters_ring(&state), of_another(FOUND)]);
    let empty = after(&state, [HouseholdAct::Empty]);
    let told = News {
        told: Some(Told::Emptied),
        count: state.news.count + 1,
    };
    assert_eq!(
        empty,
        HouseholdState {
            news: told,
            ..HouseholdState::default()
        }
    );
    let tried = after(&empty, [HouseholdAct::Undo, HouseholdAct::Redo]);
    assert!(tried.household().is_empty());
}

#[test]
fn loaded_household_takes_the_place_of_the_present_one_in_one_step() {
    let text = file::export(&demonstration::household()).unwrap_or_default();
    let loaded = file::import(text.as_bytes()).unwrap_or_default();
    let load = HouseholdAct::Load(loaded.clone(), LoadedFrom::File);
    let state = after(&begun(), [load]);
    assert_eq!(state.household(), &loaded);
    assert_eq!(
        after(&state, [HouseholdAct::Undo]).household(),
        &two_doors()
    );
}

#[test]
fn example_leaves_nothing_of_itself_behind_a_loaded_household() {
    let state = after(
        &HouseholdState::default(),
        [
            HouseholdAct::TryExample,
            HouseholdAct::Load(two_doors(), LoadedFrom::File),
        ],
    );
    assert!(!state.is_example && !state.can_undo());
    assert_eq!(state.household(), &two_doors());
}

#[test]
fn household_kept_on_the_device_begins_with_nothing_to_undo_and_leaves_a_finding_waiting() {
    let load = HouseholdAct::Load(two_doors(), LoadedFrom::Device);
    let state = after(
        &HouseholdState::default(),
        [of_another(FOUND), load.clone()],
    );
    assert!(!state.can_undo());
    assert_eq!(state.waiting, Some(FOUND));
    assert_eq!(state.news.told, Some(Told::Loaded(LoadedFrom::Device)));
    // A board that was emptied by undoing is not one that never held anything.
    let undone = after(&begun(), [HouseholdAct::Undo, load]);
    assert!(undone.can_undo());
}

#[test]
fn finding_goes_to_the_key_whose_check_was_begun() {
    let state = begun();
    let key = state.household().keys().next().map(|(id, _)| id);
    let Some(key) = key else {
        panic!("there is a key")
    };
    let state = after(&state, [HouseholdAct::BeginCheck(key), of_begun_key(FOUND)]);
    let checked = state.household().key(key).and_then(|key| key.finding);
    assert_eq!(
        (checked, state.waiting, state.checking),
        (Some(FOUND), None, None)
    );
    assert_eq!(state.news.told, Some(Told::TakenOver(key)));
}

#[test]
fn finding_of_another_check_waits_until_its_key_is_told() {
    let state = after(&begun(), [of_another(FOUND)]);
    assert_eq!(state.waiting, Some(FOUND));
    assert_eq!(state.household(), begun().household());
    let let_go = after(&state, [HouseholdAct::LetGo]);
    assert_eq!(let_go.waiting, None);
    let new = after(&state, [HouseholdAct::Assign(None)]);
    assert_eq!(new.household().keys().len(), 2);
    assert_eq!(new.waiting, None);
}

#[test]
fn finding_of_another_check_than_the_one_begun_waits() {
    let state = begun();
    let begin = HouseholdAct::BeginCheck(first_key(&state));
    let state = after(&state, [begin, of_another(FOUND)]);
    assert_eq!((state.waiting, state.checking), (Some(FOUND), None));
    assert_eq!(state.household(), begun().household());
}

#[test]
fn finding_waits_where_the_key_of_that_id_may_be_another_by_now() {
    let state = begun();
    let begin = HouseholdAct::BeginCheck(first_key(&state));
    let other = quick::two_doors(LockKind::PinTumbler, &[Role::Resident]).unwrap_or_default();
    let load = HouseholdAct::Load(other.clone(), LoadedFrom::File);
    let lose = lose_the_sitters_ring(&state);
    for between in [
        vec![load],
        vec![lose.clone(), HouseholdAct::Undo],
        vec![lose, HouseholdAct::Undo, HouseholdAct::Redo],
        vec![HouseholdAct::Become(other)],
    ] {
        let acts = [begin.clone()].into_iter().chain(between.clone());
        let state = after(&state, acts.chain([of_begun_key(FOUND)]));
        assert_eq!(state.waiting, Some(FOUND), "{between:?}");
        let mut keys = state.household().keys();
        assert!(keys.len() > 0 && keys.all(|(_, key)| key.finding.is_none()));
    }
}

#[test]
fn check_of_a_key_leaves_what_another_check_found_waiting() {
    let state = begun();
    let calm = Finding {
        exposure: FoundExposure::NotExposed,
        safety_first: false,
    };
    let key = first_key(&state);
    let state = after(&state, [of_another(FOUND), HouseholdAct::BeginCheck(key)]);
    assert_eq!(state.waiting, Some(FOUND));
    let state = after(&state, [of_begun_key(calm)]);
    let checked = state.household().key(key).and_then(|key| key.finding);
    assert_eq!((checked, state.waiting), (Some(calm), Some(FOUND)));
}

#[test]
fn finding_that_is_let_go_is_told() {
    let state = after(&begun(), [of_another(FOUND), HouseholdAct::LetGo]);
    assert_eq!((state.waiting, state.news.told), (None, Some(Told::LetGo)));
}

/// Something ticked in for the page that the locksmith is given, and something chosen for the plan.
fn ticked() -> [HouseholdAct; 2] {
    let mut brief = BriefChoices::default();
    brief.readiness.can_get_in = Some(true);
    let choices = Choices {
        spares: Some(3),
        ..Choices::default()
    };
    [
        HouseholdAct::ChooseBrief(brief),
        HouseholdAct::Choose(choices),
    ]
}

/// Whether nothing is chosen or ticked.
fn is_unticked(state: &HouseholdState) -> bool {
    state.brief == BriefChoices::default() && state.choices == Choices::default()
}

#[test]
fn answers_about_one_home_are_not_those_about_another() {
    let own = after(&begun(), ticked());
    let other = demonstration::household();
    let load = HouseholdAct::Load(other.clone(), LoadedFrom::File);
    let loaded = after(&own, [of_another(FOUND), load]);
    assert!(is_unticked(&loaded) && loaded.homes != own.homes);
    assert_eq!(loaded.waiting, Some(FOUND), "its key is still to be told");
    // Nor do they go back or forth by undo and redo.
    let back = after(&after(&loaded, ticked()), [HouseholdAct::Undo]);
    assert_eq!(back.household(), &two_doors());
    assert!(is_unticked(&back) && back.homes != loaded.homes);
    let forth = after(&after(&back, ticked()), [HouseholdAct::Redo]);
    assert_eq!(forth.household(), &other);
    assert!(is_unticked(&forth));
}

#[test]
fn answers_about_a_home_stay_for_as_long_as_it_is_the_same() {
    let state = after(&begun(), ticked());
    let lost = after(&state, [lose_the_sitters_ring(&state)]);
    let again = HouseholdAct::Load(lost.household().clone(), LoadedFrom::File);
    let acts = [HouseholdAct::Undo, HouseholdAct::Redo, again];
    let ended = after(&lost, acts);
    assert_eq!((ended.brief, ended.choices), (state.brief, state.choices));
    assert_eq!(ended.homes, state.homes);
}

#[test]
fn finding_of_a_key_that_was_removed_waits() {
    let state = begun();
    let Some((key, _)) = state.household().keys().next() else {
        panic!("there is a key")
    };
    let state = after(
        &state,
        [
            HouseholdAct::BeginCheck(key),
            HouseholdAct::Make(vec![Change::RemoveKey(key)]),
            of_begun_key(FOUND),
        ],
    );
    assert_eq!(state.waiting, Some(FOUND));
}

#[test]
fn safety_outlasts_emptying_and_leaves_copies_alone() {
    let state = begun();
    let state = after(
        &state,
        [lose_the_sitters_ring(&state), HouseholdAct::PutSafetyFirst],
    );
    assert!(state.puts_safety_first());
    let steps = plan(state.household(), state.choices_to_plan()).steps;
    assert_eq!(
        steps.first().map(|step| &step.step),
        Some(&Step::PlanWithSupport)
    );
    let chases = steps.iter().any(|step| {
        matches!(
            step.step,
            Step::GetCopiesBack(_)
                | Step::HandOver(..)
                | Step::CutCopies(_)
                | Step::HandIn(_)
                | Step::ChangedByOthers { .. }
        )
    });
    assert!(!chases, "{steps:?}");
    let cautious = after(&state, [HouseholdAct::Empty]);
    assert!(cautious.puts_safety_first());
}

#[test]
fn reach_of_a_lost_ring_is_what_the_ring_opened() {
    let household = demonstration::household();
    for (id, _) in household.holders() {
        let before = household.reach_of_ring(id);
        let lost = household.with(Change::LoseRing {
            holder: id,
            loss: Loss::Stolen,
        });
        let Ok(lost) = lost else {
            panic!("a ring can be lost")
        };
        let already = Overview::of(&household).lost.contains_key(&id);
        if !already {
            let overview = Overview::of(&lost);
            let gone = overview.lost.get(&id).and_then(|lost| lost.first());
            let reach = gone.map(|(_, gone)| overview.reach_of_lost(id, gone));
            assert_eq!(before, Ok(reach.unwrap_or_default()));
        }
    }
}

#[test]
fn overview_of_the_example_tells_what_stands_open() {
    let overview = Overview::of(&demonstration::household());
    let open: Vec<DoorKind> = overview
        .open_to_others
        .iter()
        .filter_map(|&door| overview.household.door(door))
        .map(|door| door.kind)
        .collect();
    assert_eq!(
        open,
        [DoorKind::FrontDoor, DoorKind::RoomDoor, DoorKind::Workshop]
    );
    assert_eq!(overview.exposed.len(), 2);
    let neighbour = holder(&overview.household, Role::Neighbour);
    let reach = overview.reach(neighbour);
    let doors = reach.map(|reach| reach.doors.len());
    assert_eq!(doors, Some(2));
    assert!(
        reach
            .into_iter()
            .flat_map(|reach| &reach.doors)
            .all(|door| door.opening == Opening::Whole)
    );
}

#[test]
fn check_that_finds_nothing_is_held_beside_those_who_have_a_copy() {
    let home = two_doors();
    let (key, _) = home.keys().next().unwrap_or_else(|| panic!("a key"));
    let sitter = home.holders().find(|(_, part)| part.role == Role::Sitter);
    let with = |exposure, safety_first| {
        let finding = Some(Finding {
            exposure,
            safety_first,
        });
        let checked = home.with(Change::Check { key, finding });
        Overview::of(&checked.unwrap_or_default()).left_out_by_the_check(key)
    };
    let sitter: Vec<_> = sitter.map(|(id, _)| id).into_iter().collect();
    assert_eq!(with(FoundExposure::NotExposed, false), sitter);
    assert_eq!(with(FoundExposure::NotExposed, true), []);
    assert_eq!(with(FoundExposure::Exposed(Urgency::Soon), false), []);
    assert_eq!(Overview::of(&home).left_out_by_the_check(key), []);
}

#[test]
fn news_is_said_until_its_page_is_left_and_later_news_stays() {
    let state = begun();
    let changed = after(&state, [lose_the_sitters_ring(&state)]);
    assert_eq!(changed.news.told, Some(Told::Changed));
    let count = changed.news.count;
    let left = after(&changed, [HouseholdAct::Heard(count)]);
    assert_eq!(left.news, News { told: None, count });
    let undone = after(&changed, [HouseholdAct::Undo, HouseholdAct::Heard(count)]);
    assert_eq!(undone.news.told, Some(Told::Undone));
}

#[test]
fn what_changes_nothing_is_told_as_nothing() {
    let state = begun();
    let prices = state.household().prices().clone();
    let same = HouseholdAct::Make(vec![Change::SetPrices(prices)]);
    let saved = after(&state, [same]);
    assert_eq!(saved.news.told, Some(Told::Unchanged));
    assert_eq!(saved.undoes(), state.undoes());
}

#[test]
fn other_way_of_sharing_keys_is_told_and_another_choice_is_not() {
    let state = after(&begun(), [HouseholdAct::Undo, HouseholdAct::Redo]);
    let told = state.news;
    let choices = Choices {
        spares: Some(2),
        ..Choices::default()
    };
    let chosen = after(&state, [HouseholdAct::Choose(choices)]);
    assert_eq!(chosen.news, told);
    let choices = Choices {
        grouping: Grouping::AllAlike,
        ..choices
    };
    let chosen = after(&chosen, [HouseholdAct::Choose(choices)]);
    assert_eq!(chosen.news.told, Some(Told::Planned));
}

#[test]
fn key_that_only_came_back_and_a_lost_remote_are_counted_apart() {
    let home = two_doors();
    let holder = holder(&home, Role::Sitter);
    let door = home.doors().next().map_or(DoorId::new(0), |(id, _)| id);
    let remote = Way {
        known_by: [holder].into(),
        ..Way::at(door, WayKind::Remote)
    };
    let home = home.with(Change::AddWay(remote)).unwrap_or_default();
    let returned_by = Some(holder);
    let back = home.ring_of(holder).map(|(copy, _)| Change::Move {
        copy,
        to: Place::AtHome { returned_by },
    });
    let gone = Change::NoLongerShould {
        holder,
        no_longer: true,
    };
    let back = home.with_all(back.chain([gone]).collect::<Vec<_>>());
    let out = Overview::of(&back.unwrap_or_default()).out();
    assert_eq!((out.keys, out.is_only_copied), (1, true));
    // The remote did not come back.
    assert_eq!((out.remotes, out.ways), (1, 0));
    let loss = Loss::NearHome;
    let lost = home.with(Change::LoseRing { holder, loss });
    let out = Overview::of(&lost.unwrap_or_default()).out();
    assert_eq!((out.keys, out.is_only_copied), (1, false));
    assert_eq!((out.remotes, out.ways), (1, 0));
}

#[test]
fn door_is_held_while_one_of_its_locks_turns_to_nobody_else() {
    let home = quick::one_door(DoorKind::FrontDoor, LockKind::Lever, &[Role::Cleaner]);
    let home = home.unwrap_or_default();
    let Some((door, _)) = home.doors().next() else {
        panic!("there is a door");
    };
    let second = home.next_key();
    let lock = Lock::on(door, LockKind::PinTumbler).opened_by(second);
    let spare = Change::AddCopy(KeyCopy::spare(second));
    let parts = [Change::AddKey(Key::default()), Change::AddLock(lock), spare];
    let home = home.with_all(parts).unwrap_or_default();
    let is_held = |home: &Household| Overview::of(home).is_held(door);
    assert!(!is_held(&home), "nothing is out");
    let lost: Vec<Household> = home
        .copies()
        .map(|(copy, _)| {
            let loss = Loss::NearHome;
            home.with(Change::Lose { copy, loss }).unwrap_or_default()
        })
        .collect();
    assert_eq!(lost.iter().map(is_held).collect::<Vec<_>>(), [true, true]);
    let both = home.copies().fold(home.clone(), |home, (copy, _)| {
        let loss = Loss::NearHome;
        home.with(Change::Lose { copy, loss }).unwrap_or_default()
    });
    assert!(!is_held(&both));
    let code = Way {
        given_away: Some(Loss::NotSaid),
        ..Way::at(door, WayKind::DoorCode)
    };
    let with_a_code = lost[0].with(Change::AddWay(code)).unwrap_or_default();
    assert!(!is_held(&with_a_code), "the code opens it whatever holds");
}
