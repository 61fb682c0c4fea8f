//! The first sentence of a result: people and deeds. It counts groups the person named, and never
//! people nobody counted.

use self_check_core::assess::Headline;
use self_check_core::exposure::Event;

/// One sentence.
pub fn headline(headline: &Headline) -> String {
    let fixed = match headline {
        Headline::SafetyFirst => "Your safety comes first. The key can wait.",
        Headline::VehicleOnly => "A vehicle’s key is a job for a specialist.",
        Headline::AnothersDoor => "This is someone else’s door, so they decide what is done.",
        Headline::MayTurnUp => "Your key is most likely still indoors.",
        Headline::KeyIsOut(event) => return key_is_out(*event),
        Headline::KeyIsOutWithItsDoor => {
            "Your key is lost, and something with it tells which door it opens."
        }
        Headline::CouldHaveCopied(events) => return could_have_copied(events),
        Headline::PictureTellsItsDoor => {
            "A picture shows your key together with the door it opens."
        }
        Headline::CouldBeRead(events) => return could_be_read(events),
        Headline::CannotBeToldYet => {
            "There is too little to go on yet, and that is no cause for alarm."
        }
        Headline::EndedByChange => {
            "The lock was changed after what happened, so the old key opens nothing."
        }
        Headline::OnlyByChoice => "Only people you chose to trust have your key.",
        Headline::NobodyOutside { with_a_code: false } => {
            "As far as you know, nobody outside your home has had your key."
        }
        Headline::NobodyOutside { with_a_code: true } => {
            "As far as you know, nobody outside your home has had your key, but its number alone would be enough to have one made."
        }
    };
    fixed.to_owned()
}

fn key_is_out(event: Event) -> String {
    match event {
        Event::Stolen => "Someone took your key and still has it.".to_owned(),
        Event::NotReturned => "Someone has not given your key back.".to_owned(),
        Event::LostNearHome => {
            "Your key is lost near home, where a finder might guess the door.".to_owned()
        }
        Event::LostFarAway => "Your key is lost far from home, and someone may find it.".to_owned(),
        Event::AwayAndCameBack => {
            "Your key was away with someone you do not know, who could have had a copy made."
                .to_owned()
        }
        Event::MissingSomehow => "Your key is missing, and nobody knows how.".to_owned(),
        Event::FormerOccupants
        | Event::FormerHolder
        | Event::UneasyPerson
        | Event::HadItAlone
        | Event::ShortLetGuests
        | Event::UncountedCopies
        | Event::PublicPicture
        | Event::ListingPicture
        | Event::PrivatePicture
        | Event::OnCalls
        | Event::OnADoorbell
        | Event::CarriedInView
        | Event::LiesInSight
        | Event::HiddenOutside
        | Event::NumberOnLockFace
        | Event::HelperNow
        | Event::TrustedCircle => could_have_copied(&[event]),
    }
}

fn could_have_copied(events: &[Event]) -> String {
    match events {
        [event] => format!(
            "{} could have had a copy made.",
            capitalised(people(*event))
        ),
        _ => format!(
            "{} groups of people outside your home could have had a copy made.",
            how_many(events.len())
        ),
    }
}

/// Who the headline's groups are, where it counts more than one.
pub fn headline_groups(headline: &Headline) -> Option<String> {
    match headline {
        Headline::CouldHaveCopied(events) if events.len() > 1 => {
            Some(format!("They are {}.", listed(events)))
        }
        _ => None,
    }
}

fn could_be_read(events: &[Event]) -> String {
    format!(
        "{} could have read your key, perhaps without knowing its door.",
        capitalised(&listed(events))
    )
}

/// Who took part in an event, as the subject of a sentence.
fn people(event: Event) -> &'static str {
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

fn listed(events: &[Event]) -> String {
    let mut text = String::new();
    for (index, event) in events.iter().enumerate() {
        if index > 0 {
            text.push_str(if index + 1 == events.len() {
                " and "
            } else {
                ", "
            });
        }
        text.push_str(people(*event));
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
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headline_one_group_is_named_alone() {
        let one = Headline::CouldHaveCopied(vec![Event::HadItAlone]);
        assert_eq!(
            headline(&one),
            "Whoever had it alone for a while could have had a copy made."
        );
    }

    #[test]
    fn headline_several_groups_are_counted_and_then_named() {
        let groups = Headline::CouldHaveCopied(vec![
            Event::FormerOccupants,
            Event::HadItAlone,
            Event::ShortLetGuests,
        ]);
        assert_eq!(
            headline(&groups),
            "Three groups of people outside your home could have had a copy made."
        );
        assert_eq!(
            headline_groups(&groups).as_deref(),
            Some(
                "They are whoever lived there before, whoever had it alone for a while and your short-let guests."
            )
        );
    }

    #[test]
    fn headline_readers_stand_at_the_front_of_the_sentence() {
        for events in [
            vec![Event::OnCalls],
            vec![Event::OnCalls, Event::CarriedInView],
        ] {
            let words = headline(&Headline::CouldBeRead(events));
            assert!(
                words.starts_with("People on your calls or streams"),
                "{words}"
            );
        }
    }
}
