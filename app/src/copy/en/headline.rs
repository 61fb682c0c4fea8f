//! The first sentence of a result: people and deeds. It counts groups the person named, and never
//! people nobody counted.

use self_check_core::assess::{Headline, Number, WayOut};
use self_check_core::exposure::Event;

/// What the number on the key is, where that is known.
pub fn number_on_the_key(number: Number) -> Option<&'static str> {
    match number {
        Number::NotKnown => None,
        Number::NamesTheBlank => Some(
            "The number on the key stands on keys to other doors too. It names the blank (the uncut key) and tells a stranger nothing. If you did not hold it beside another key, do so once.",
        ),
        Number::MayBeTheCode => Some(
            "There is a number on the key, and you do not know yet if it is the key code (a key can be cut from it). Until you know, keep it covered.",
        ),
        Number::IsTheCode => Some(
            "The number on the key is most likely its key code (a key can be cut from it). So keep it covered.",
        ),
    }
}

/// One sentence.
pub fn headline(headline: &Headline) -> String {
    let fixed = match headline {
        Headline::SafetyFirst => "Your safety comes first. The key can wait.",
        Headline::VehicleOnly => "A vehicle’s key is a job for a specialist.",
        Headline::AnothersDoor => "This is someone else’s door, so they decide what is done.",
        Headline::VehicleAndAnothersDoor => {
            "A vehicle’s key is a job for a specialist, and the other door is for its owner to decide."
        }
        Headline::MayTurnUp => "Your key is most likely still indoors.",
        Headline::KeyIsOut(way) => key_is_out(*way),
        Headline::KeyIsOutWithItsDoor => {
            "Your key is lost, and something with it tells which door it opens."
        }
        Headline::CouldHaveCopied { people, also } => return could_have_copied(people, also),
        Headline::PictureTellsItsDoor => {
            "A picture shows your key together with the door it opens."
        }
        Headline::CouldBeRead {
            readers,
            without_its_door,
        } => return could_be_read(readers, *without_its_door),
        Headline::CannotBeToldYet => {
            "There is too little to go on yet, and that is no cause for alarm."
        }
        Headline::EndedByChange => {
            "The lock was changed after what happened, so the old key opens nothing."
        }
        Headline::OnlyByChoice => "Only people you chose to give it to have your key.",
        Headline::NobodyOutside => "As far as you know, nobody outside your home has had your key.",
    };
    fixed.to_owned()
}

fn key_is_out(way: WayOut) -> &'static str {
    match way {
        WayOut::Stolen => "Someone took your key and still has it.",
        WayOut::NotReturned => "Someone has not given your key back.",
        WayOut::LostNearHome => "Your key is lost near home, where a finder might guess the door.",
        WayOut::LostFarAway => "Your key is lost far from home, and someone may find it.",
        WayOut::AwayAndCameBack => {
            "Your key was away with someone you do not know, who could have had a copy made."
        }
        WayOut::Somehow => "Your key is missing, and nobody knows how.",
    }
}

fn could_have_copied(people: &[Event], also: &[Event]) -> String {
    match (people, also) {
        ([], []) => String::new(),
        ([], [thing, ..]) => could_be_copied(*thing).to_owned(),
        ([event], _) => format!("{} could have had a copy made.", capitalised(who(*event))),
        _ => format!(
            "{} groups of people outside your home could have had a copy made.",
            how_many(people.len())
        ),
    }
}

/// What could let anybody have a copy, where no people are named.
fn could_be_copied(thing: Event) -> &'static str {
    match thing {
        Event::UncountedCopies => "A copy that you cannot place could be in anyone’s hands.",
        Event::HiddenOutside => "A spare hidden outside can be found, used or copied by anyone.",
        Event::NumberOnLockFace => {
            "Anyone who notes the number on the front of the lock could have a key made from it."
        }
        _ => "Someone could have had a copy made.",
    }
}

/// Who the headline's groups are, where it counts more than one, and what comes beside them.
pub fn headline_groups(headline: &Headline) -> Option<String> {
    let Headline::CouldHaveCopied { people, also } = headline else {
        return None;
    };
    let groups = (people.len() > 1).then(|| format!("They are: {}.", listed(people, who)));
    let told = usize::from(people.is_empty());
    let rest = also.get(told..).filter(|rest| !rest.is_empty());
    let rest = rest.map(|rest| format!("There is also {}.", listed(rest, what)));
    let lines: Vec<String> = groups.into_iter().chain(rest).collect();
    (!lines.is_empty()).then(|| lines.join(" "))
}

fn could_be_read(readers: &[Event], without_its_door: bool) -> String {
    let but = if without_its_door {
        ", but nothing you told us shows them its door"
    } else {
        ""
    };
    format!(
        "{} could have read your key{but}.",
        capitalised(&listed(readers, who))
    )
}

/// What stands beside the people, as the object of a sentence.
fn what(event: Event) -> &'static str {
    match event {
        Event::UncountedCopies => "a copy that you cannot place",
        Event::HiddenOutside => "a spare hidden outside",
        Event::NumberOnLockFace => "the number on the front of the lock",
        Event::PublicPicture => "a picture that is or was in public",
        Event::ListingPicture => "a listing that shows the key",
        _ => who(event),
    }
}

/// Who took part in an event, as the subject of a sentence.
fn who(event: Event) -> &'static str {
    match event {
        Event::Stolen => "whoever took it",
        Event::NotReturned => "whoever has not given it back",
        Event::LostNearHome | Event::LostFarAway | Event::MissingSomehow => "whoever finds it",
        Event::AwayAndCameBack => "whoever had it while it was away",
        Event::FormerOccupants => "whoever lived there before",
        Event::FormerHolder => "someone who should no longer have a key",
        Event::UneasyPerson => "someone who makes you uneasy",
        Event::HadItAlone => "whoever had it alone for a while",
        Event::ShortLetGuests => "your short-let guests",
        Event::UncountedCopies => "whoever has a copy you cannot place",
        Event::PublicPicture => "people who saw a public picture",
        Event::ListingPicture => "people who saw the listing",
        Event::PrivatePicture => "the people you sent a picture to",
        Event::OnCalls => "people on your calls or streams",
        Event::OnADoorbell => "whoever sees the doorbell’s pictures",
        Event::CarriedInView => "people near you when you carry it",
        Event::LiesInSight => "people who pass where it lies",
        Event::HiddenOutside => "whoever found the spare outside",
        Event::NumberOnLockFace => "anyone who noted the number on the lock",
        Event::HelperNow => "someone who helps you",
        Event::TrustedCircle => "people you trust",
    }
}

fn listed(events: &[Event], name: fn(Event) -> &'static str) -> String {
    let mut text = String::new();
    for (index, event) in events.iter().enumerate() {
        if index > 0 {
            text.push_str(if index + 1 == events.len() {
                " and "
            } else {
                ", "
            });
        }
        text.push_str(name(*event));
    }
    text
}

fn how_many(groups: usize) -> &'static str {
    match groups {
        2 => "Two",
        3 => "Three",
        4 => "Four",
        5 => "Five",
        _ => "Several",
    }
}

fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| {
            // All letters are English: those of every script would weigh many kilobytes.
            let first = first.to_ascii_uppercase();
            [first].into_iter().chain(letters).collect()
        })
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn copied(people: &[Event], also: &[Event]) -> Headline {
        Headline::CouldHaveCopied {
            people: people.to_vec(),
            also: also.to_vec(),
        }
    }

    #[test]
    fn headline_one_group_is_named_alone() {
        let one = copied(&[Event::HadItAlone], &[]);
        let words = "Whoever had it alone for a while could have had a copy made.";
        assert_eq!(headline(&one), words);
        assert_eq!(headline_groups(&one), None);
    }

    #[test]
    fn headline_several_groups_are_counted_and_then_named() {
        let people = [
            Event::FormerOccupants,
            Event::HadItAlone,
            Event::ShortLetGuests,
        ];
        let groups = copied(&people, &[Event::HiddenOutside, Event::PublicPicture]);
        assert_eq!(
            headline(&groups),
            "Three groups of people outside your home could have had a copy made."
        );
        assert_eq!(
            headline_groups(&groups).as_deref(),
            Some(
                "They are: whoever lived there before, whoever had it alone for a while and your short-let guests. There is also a spare hidden outside and a picture that is or was in public."
            )
        );
    }

    #[test]
    fn headline_without_people_tells_of_the_copy_and_then_of_the_rest() {
        let things = copied(&[], &[Event::UncountedCopies, Event::ListingPicture]);
        assert_eq!(
            headline(&things),
            "A copy that you cannot place could be in anyone’s hands."
        );
        assert_eq!(
            headline_groups(&things).as_deref(),
            Some("There is also a listing that shows the key.")
        );
    }

    #[test]
    fn headline_readers_stand_at_the_front_of_the_sentence() {
        for events in [
            vec![Event::OnCalls],
            vec![Event::OnCalls, Event::CarriedInView],
        ] {
            let words = headline(&Headline::CouldBeRead {
                readers: events,
                without_its_door: true,
            });
            assert!(
                words.starts_with("People on your calls or streams"),
                "{words}"
            );
        }
    }
}
