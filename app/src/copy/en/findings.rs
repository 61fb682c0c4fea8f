//! What a check finds: levels, urgencies, events, and how each stands.

use self_check_core::advice::Urgency;
use self_check_core::assess::{Headline, Level, NoCount};
use self_check_core::exposure::{Event, Reading, Standing};
use self_check_core::questions::Question;
use self_check_core::sources::SourceKind;
use self_check_core::verdict::Verdict;

use super::questions::short;
use crate::copy::Named;

/// The name of a level, and what it means. It speaks of the key, never of the door.
pub fn level(level: Level) -> Named {
    match level {
        Level::Kept => Named {
            name: "Private",
            meaning: "Nothing in your answers gave the key away.",
        },
        Level::CannotBeToldYet => Named {
            name: "Cannot be told yet",
            meaning: "Too little is known to say.",
        },
        Level::InDoubt => Named {
            name: "In doubt",
            meaning: "Someone could have read or copied the key. That does not mean they did.",
        },
        Level::GivenAway => Named {
            name: "No longer private",
            meaning: "Treat the key as known to someone who should not have it. That does not mean they will use it.",
        },
    }
}

/// What a level means beside a headline: where a change ended what had happened, that is not nothing.
pub fn level_meaning(of: Level, headline: &Headline) -> &'static str {
    match (of, headline) {
        (Level::Kept, Headline::EndedByChange) => ENDED,
        _ => level(of).meaning,
    }
}

/// Beside a key whose lock was changed.
const ENDED: &str = "What happened before the change no longer counts.";

/// The name of an urgency and what it means.
pub fn urgency(urgency: Urgency) -> Named {
    match urgency {
        Urgency::Today => Named {
            name: "Today",
            meaning: "Before the day ends.",
        },
        Urgency::Soon => Named {
            name: "Soon",
            meaning: "Within days.",
        },
        Urgency::WhenConvenient => Named {
            name: "When convenient",
            meaning: "At the next good occasion. It need not be today.",
        },
        Urgency::Habit => Named {
            name: "Habit",
            meaning: "From now on, whenever it comes up.",
        },
    }
}

/// What happened, as a line of a list.
pub fn event(event: Event) -> &'static str {
    match event {
        Event::Stolen => "The key was stolen or taken",
        Event::NotReturned => "The key was not given back",
        Event::LostNearHome => "The key was lost near home",
        Event::LostFarAway => "The key was lost far from home",
        Event::AwayAndCameBack => "The key was away with someone unknown",
        Event::MissingSomehow => "The key is missing",
        Event::FormerOccupants => "People who lived there before may have keys",
        Event::FormerHolder => "Someone should no longer have a key",
        Event::UneasyPerson => "Someone who makes you uneasy had a key",
        Event::HadItAlone => "Someone had the key alone for a while",
        Event::ShortLetGuests => "Short-let guests had a key",
        Event::UncountedCopies => "Some copies cannot be placed",
        Event::PublicPicture => "A picture of the key is or was in public",
        Event::ListingPicture => "A listing shows the key",
        Event::PrivatePicture => "A few people have a picture of the key",
        Event::OnCalls => "The key shows on calls or streams",
        Event::OnADoorbell => "A doorbell camera sees the key",
        Event::CarriedInView => "The key is carried in plain view",
        Event::LiesInSight => "The key lies where it can be seen",
        Event::HiddenOutside => "A spare is hidden outside",
        Event::NumberOnLockFace => "A number stands on the front of the lock",
        Event::HelperNow => "Someone who helps you has a key",
        Event::TrustedCircle => "People you trust have a key",
    }
}

/// What an event let somebody read.
pub fn reading(event: Event, reading: Reading) -> &'static str {
    match reading {
        Reading::Held => held(event),
        Reading::CardHeld => {
            "They have it or had it in hand. It opens until it is cancelled, and some cards and fobs can be copied."
        }
        Reading::CodeSeen if event != Event::NumberOnLockFace => {
            "They could see its cuts (the dips and hollows in it), and note its number. How much the cuts tell depends on how near and how sharp. To someone with the maker’s list the number leaves one or a few keys to try."
        }
        Reading::CodeSeen => {
            "They could note that number. To someone with the maker’s list that leaves one or a few keys to try; to anyone else it may leave them all."
        }
        Reading::CutsSeen => {
            "They could see its cuts (the dips and hollows in it). How much that tells depends on how near and how sharp."
        }
    }
}

fn held(event: Event) -> &'static str {
    match event {
        Event::Stolen | Event::NotReturned => {
            "They have it in hand. It opens the door, and copies can be made from it."
        }
        Event::LostNearHome | Event::LostFarAway | Event::MissingSomehow => {
            "Whoever finds it holds a key. It opens the door, and copies can be made from it."
        }
        Event::FormerOccupants => "They had keys to this lock, and may have some still.",
        Event::UncountedCopies => "Whoever has such a copy holds a key, with no reading at all.",
        Event::HiddenOutside => "Whoever finds it holds a key, with no reading at all.",
        _ => "They had it in hand. A copy can be made from it with no reading at all.",
    }
}

/// Whether whoever took part can tell the door.
pub fn knows_the_door(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Applies => "They most likely know what it opens.",
        Verdict::DoesNotApply => "Nothing you told us shows them what it opens.",
        Verdict::Unknown(_) => "They may or may not know what it opens.",
    }
}

/// Whether it is open if an event happened at all, so that nothing is told of it as a fact.
pub fn is_open(standing: Standing) -> bool {
    matches!(standing, Standing::Unknown(_) | Standing::NotRuledOut)
}

/// How an event stands today.
pub fn standing(standing: Standing) -> String {
    match standing {
        // What is listed counts; only what does not is said to be otherwise.
        Standing::Counts => String::new(),
        Standing::Unknown(Question::Copies) => {
            "Until the copies are counted, nobody knows.".to_owned()
        }
        Standing::Unknown(question) => format!(
            "This may count. You were not sure of the answer to “{}”.",
            short(question)
        ),
        Standing::NotRuledOut => {
            "You did not say that they had one, but they may have had.".to_owned()
        }
        Standing::EndedByChange => {
            "The lock was changed since, so this no longer counts.".to_owned()
        }
        Standing::ByChoice => {
            "You gave it to them yourself, so this does not count against the key.".to_owned()
        }
    }
}

/// That a claim of the rule table waits for an answer.
pub fn waits_for(question: Question) -> String {
    format!("Open until you can answer “{}”", short(question))
}

/// Why there is no number of keys.
pub fn no_count(reason: NoCount) -> &'static str {
    match reason {
        NoCount::KindNotModelled => {
            "We give no number of keys here: for this kind of key or lock, makers differ too much. The advice holds all the same."
        }
        NoCount::NoCuts => {
            "We give no number of keys here: nothing is cut that could be counted. What matters is who is let in, and who can change that."
        }
        NoCount::SharedSystem => {
            "We give no number of keys here. In a shared building or at work, other keys may open the same lock, so it would mislead."
        }
        NoCount::Vehicle => {
            "We give no number of keys here. You told us that a vehicle is among what it opens, and such keys often hold a chip. So a number would mislead."
        }
    }
}

/// How far a source can be trusted.
pub fn source_kind(kind: SourceKind) -> Named {
    match kind {
        SourceKind::Published => Named {
            name: "Published",
            meaning: "Read in the source itself.",
        },
        SourceKind::Secondary => Named {
            name: "As quoted by others",
            meaning: "Quoted by other pages. The source’s own text was not seen.",
        },
        SourceKind::CommonPractice => Named {
            name: "Common practice",
            meaning: "What the trade commonly does.",
        },
        SourceKind::FromMemory => Named {
            name: "From memory",
            meaning: "Remembered, not seen.",
        },
        SourceKind::OurAssumption => Named {
            name: "Our assumption",
            meaning: "Chosen by us, with the reason beside it.",
        },
    }
}
