#![allow(clippy::unwrap_used)]

use self_check_core::household::{Change, Door, DoorKind, demonstration};

use super::*;
use Act::*;

fn mark(number: f64) -> Mark {
    Mark::new(number)
}

fn record(household: &Household, number: f64) -> Found {
    let text = file::export(household).unwrap();
    Found::Record(Record {
        mark: mark(number),
        text,
    })
}

fn damaged(number: f64) -> Found {
    Found::Record(Record {
        mark: mark(number),
        text: "{".into(),
    })
}

fn example() -> Household {
    demonstration::household()
}

fn changed() -> Household {
    example()
        .with(Change::AddDoor(Door::of(DoorKind::Shed)))
        .unwrap()
}

fn after(keeping: Keeping, acts: impl IntoIterator<Item = Act>) -> Keeping {
    acts.into_iter()
        .fold(keeping, |keeping, act| keeping.after(act))
}

/// Keeping turned on with nothing kept before, and the example written.
fn on() -> Keeping {
    let acts = [
        Looked(Found::Nothing, example()),
        TurnOn,
        Begin(example()),
        Wrote(example(), Ok(Outcome::Done(mark(0.1)))),
    ];
    after(Keeping::Looking, acts)
}

#[test]
fn keeping_is_off_until_asked_for() {
    let keeping = after(Keeping::Looking, [Looked(Found::Nothing, example())]);
    assert_eq!(keeping, Keeping::Off(None));
    assert_eq!(keeping.due(&example()), None);
    assert_eq!(keeping.due(&changed()), None);
}

#[test]
fn turning_on_writes_at_once_where_nothing_may_be() {
    let keeping = after(Keeping::Off(None), [TurnOn]);
    assert_eq!(keeping.due(&example()), Some(Expected::Nothing));
    let keeping = after(keeping, [Begin(example())]);
    assert_eq!(keeping.due(&changed()), None, "one writing at a time");
    let keeping = after(keeping, [Wrote(example(), Ok(Outcome::Done(mark(0.1))))]);
    assert_eq!(keeping.due(&example()), None);
    assert_eq!(keeping.due(&changed()), Some(Expected::Mark(mark(0.1))));
}

#[test]
fn change_made_while_writing_is_written_next() {
    let keeping = after(
        on(),
        [
            Begin(changed()),
            Wrote(changed(), Ok(Outcome::Done(mark(0.2)))),
        ],
    );
    assert_eq!(keeping.due(&changed()), None);
    assert_eq!(keeping.due(&example()), Some(Expected::Mark(mark(0.2))));
}

#[test]
fn what_is_kept_and_on_the_page_alike_goes_on_being_kept() {
    let keeping = after(
        Keeping::Looking,
        [Looked(record(&example(), 0.3), example())],
    );
    assert_eq!(keeping.due(&example()), None);
    assert_eq!(keeping.due(&changed()), Some(Expected::Mark(mark(0.3))));
}

#[test]
fn something_else_kept_is_never_written_over_without_a_choice() {
    for found in [
        record(&changed(), 0.3),
        damaged(0.3),
        Found::Foreign,
        Found::Later,
    ] {
        let keeping = after(Keeping::Looking, [Looked(found.clone(), example())]);
        assert!(
            matches!(
                keeping,
                Keeping::Other {
                    met: Met::AtFirst,
                    ..
                }
            ),
            "{found:?}"
        );
        for act in [
            TurnOn,
            TryAgain,
            Begin(example()),
            Wrote(example(), Err(KeepTrouble::Full)),
        ] {
            assert_eq!(after(keeping.clone(), [act.clone()]), keeping, "{act:?}");
        }
        assert_eq!(keeping.due(&example()), None);
        let left = after(keeping.clone(), [LeaveBoth]);
        assert_eq!(left, Keeping::Off(Some(WhyOff::LeftAsTheyAre)));
        let chosen = after(keeping.clone(), [KeepMine]);
        let expected = match found {
            Found::Record(_) => Some(Expected::Mark(mark(0.3))),
            _ => None,
        };
        assert_eq!(chosen.due(&example()), expected, "{found:?}");
    }
}

#[test]
fn refused_writing_shows_what_stands_there() {
    let theirs = record(&changed(), 0.4);
    let refused = Wrote(example(), Ok(Outcome::Refused(theirs)));
    let keeping = after(on(), [Begin(example()), refused.clone()]);
    let Keeping::Other { kept, met } = &keeping else {
        unreachable!("{keeping:?}");
    };
    assert_eq!(*kept, Kept::Household(changed(), mark(0.4)));
    assert_eq!(*met, Met::FromAnotherTab);
    let taken = after(keeping, [Taken]);
    assert_eq!(taken.due(&changed()), None);
    assert_eq!(taken.due(&example()), Some(Expected::Mark(mark(0.4))));
    // Turned on where something is kept already: it was there before.
    let keeping = after(Keeping::Off(None), [TurnOn, Begin(example()), refused]);
    assert!(matches!(
        keeping,
        Keeping::Other {
            met: Met::AtFirst,
            ..
        }
    ));
}

#[test]
fn record_that_is_gone_is_told_and_not_written_anew() {
    let keeping = after(
        on(),
        [
            Begin(changed()),
            Wrote(changed(), Ok(Outcome::Refused(Found::Nothing))),
        ],
    );
    assert_eq!(keeping, Keeping::Off(Some(WhyOff::TakenAway)));
    assert_eq!(
        after(on(), [TakenAway]),
        Keeping::Off(Some(WhyOff::TakenAway))
    );
    assert_eq!(after(Keeping::Off(None), [TakenAway]), Keeping::Off(None));
}

#[test]
fn failed_writing_waits_for_a_change_or_another_try() {
    for trouble in [KeepTrouble::Denied, KeepTrouble::Full, KeepTrouble::Failed] {
        let keeping = after(on(), [Begin(changed()), Wrote(changed(), Err(trouble))]);
        assert_eq!(keeping.due(&changed()), None, "no endless trying");
        assert_eq!(keeping.due(&example()), Some(Expected::Mark(mark(0.1))));
        let again = after(keeping, [TryAgain]);
        assert_eq!(again.due(&changed()), Some(Expected::Mark(mark(0.1))));
    }
}

#[test]
fn news_of_another_tab_is_a_choice_and_ones_own_is_none() {
    let own = record(&example(), 0.1);
    assert_eq!(after(on(), [Heard(own, changed())]), on());
    let theirs = record(&changed(), 0.5);
    let keeping = after(on(), [Heard(theirs.clone(), example())]);
    assert!(matches!(
        keeping,
        Keeping::Other {
            met: Met::FromAnotherTab,
            ..
        }
    ));
    // The same came to be on both: nothing to choose.
    let keeping = after(on(), [Heard(theirs.clone(), changed())]);
    assert_eq!(keeping.due(&changed()), None);
    assert!(matches!(keeping, Keeping::On { .. }));
    // A tab that keeps nothing does not care, and one that is writing will be refused.
    for bystander in [
        Keeping::Off(None),
        Keeping::Looking,
        after(on(), [Begin(changed())]),
    ] {
        assert_eq!(
            after(bystander.clone(), [Heard(theirs.clone(), example())]),
            bystander
        );
    }
    // The choice shows what was written last.
    let later = after(
        keeping,
        [Heard(record(&Household::empty(), 0.6), example())],
    );
    let Keeping::Other { kept, .. } = later else {
        unreachable!();
    };
    assert_eq!(kept, Kept::Household(Household::empty(), mark(0.6)));
}

#[test]
fn turning_off_takes_away_only_what_this_tab_knows() {
    let off = after(on(), [TurnedOff(Ok(Outcome::Done(mark(0.0))))]);
    assert_eq!(off, Keeping::Off(None));
    let refused = TurnedOff(Ok(Outcome::Refused(record(&changed(), 0.7))));
    assert!(matches!(after(on(), [refused]), Keeping::Other { .. }));
    let failed = after(on(), [TurnedOff(Err(KeepTrouble::Failed))]);
    assert_eq!(
        failed,
        Keeping::Off(Some(WhyOff::StillThere(KeepTrouble::Failed)))
    );
}

#[test]
fn writing_that_ends_after_emptying_changes_nothing() {
    let keeping = after(on(), [Begin(changed()), Emptied]);
    assert_eq!(keeping, Keeping::Off(None));
    let done = Wrote(changed(), Ok(Outcome::Done(mark(0.8))));
    assert_eq!(after(keeping, [done]), Keeping::Off(None));
}
