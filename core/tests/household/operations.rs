//! Everything that can be asked of a household, for measuring natively and in the browser.

use self_check_core::household::*;

/// One operation.
pub struct Operation<'h> {
    /// Its name.
    pub name: &'static str,
    /// Does it once; whether it did anything.
    pub run: Box<dyn Fn() -> bool + 'h>,
}

/// The name of the one that does the work of several.
pub const COMPARE: &str = "compare";

/// All operations on `home`.
pub fn operations<'h>(home: &'h Household) -> Vec<Operation<'h>> {
    let Some(((key, _), (holder, _))) = home.keys().next().zip(home.holders().next()) else {
        return Vec::new();
    };
    let text = file::export(home).unwrap_or_default();
    let history = History::of(home.clone());
    let mut all: Vec<Operation<'h>> = Vec::new();
    let mut add =
        |name: &'static str, run: Box<dyn Fn() -> bool + 'h>| all.push(Operation { name, run });
    add(
        "move a copy",
        Box::new(move || home.with(give(key, holder)).is_ok()),
    );
    add(
        "lose a ring",
        Box::new(move || home.with(lose(holder)).is_ok()),
    );
    add(
        "record a step",
        Box::new(move || history.with(lose(holder)).is_ok()),
    );
    add(
        "reach of a ring",
        Box::new(move || home.reach_of_ring(holder).is_ok()),
    );
    add(
        "reach of everybody",
        Box::new(|| !home.reach_of_everybody().is_empty()),
    );
    add("exposed keys", Box::new(|| !exposed_keys(home).is_empty()));
    add("gaps", Box::new(|| !gaps(home).is_empty()));
    for (grouping, names) in [
        (
            Grouping::AsNow,
            ["plan as now", "carry out as now", "brief as now"],
        ),
        (
            Grouping::AllAlike,
            ["plan all alike", "carry out all alike", "brief all alike"],
        ),
        (
            Grouping::ByNeed,
            ["plan by need", "carry out by need", "brief by need"],
        ),
    ] {
        let (done, written) = (planned(home, grouping), planned(home, grouping));
        let choices = BriefChoices::default();
        add(
            names[0],
            Box::new(move || !planned(home, grouping).is_empty()),
        );
        add(names[1], Box::new(move || done.carried_out(home).is_ok()));
        add(
            names[2],
            Box::new(move || brief(home, &written, choices).is_ok()),
        );
    }
    add("export", Box::new(|| file::export(home).is_ok()));
    add(
        "import",
        Box::new(move || file::import(text.as_bytes()).is_ok()),
    );
    add(COMPARE, Box::new(|| compare(home).len() == 3));
    all
}

fn give(key: KeyId, to: HolderId) -> Change {
    Change::Give { key, to, copies: 1 }
}

/// This ring is lost.
pub fn lose(holder: HolderId) -> Change {
    let loss = Loss::NearHome;
    Change::LoseRing { holder, loss }
}

/// The plan that groups the doors in this way.
pub fn planned(home: &Household, grouping: Grouping) -> Plan {
    let choices = Choices {
        grouping,
        ..Choices::default()
    };
    plan(home, choices)
}
