//! The trade's terms, each with its meaning.

use crate::copy::{Term, TermWords};

/// The words on `term`.
pub fn term(term: Term) -> TermWords {
    match term {
        Term::Bow => TermWords {
            name: "Bow",
            meaning: "The part of the key that you hold.",
            beside: "the part you hold",
            forms: &["bow"],
        },
        Term::Blade => TermWords {
            name: "Blade",
            meaning: "The part of the key that goes into the lock.",
            beside: "the part that goes into the lock",
            forms: &["blade"],
        },
        Term::Shoulder => TermWords {
            name: "Shoulder",
            meaning: "The step where the blade begins. It stops the key at the right place in the lock.",
            beside: "the step that stops the key",
            forms: &["shoulder"],
        },
        Term::Cut => TermWords {
            name: "Cut",
            meaning: "A dip in the edge of the blade. The cuts make the key yours.",
            beside: "dip",
            forms: &["cuts"],
        },
        Term::Depth => TermWords {
            name: "Depth",
            meaning: "How deep a cut goes. A lock uses a few fixed depths.",
            beside: "how deep",
            forms: &["depth", "depths"],
        },
        Term::Blank => TermWords {
            name: "Blank",
            meaning: "An uncut key. All keys to one kind of lock are made from the same blank.",
            beside: "uncut key",
            forms: &["blank", "blanks"],
        },
        Term::KeyCode => TermWords {
            name: "Key code",
            meaning: "A number from which a locksmith can cut the key without seeing it.",
            beside: "a key can be cut from it",
            forms: &["key code", "key codes"],
        },
        Term::Cylinder => TermWords {
            name: "Cylinder",
            meaning: "The part of the lock that the key goes into. It can mostly be changed alone.",
            beside: "the part the key goes into",
            forms: &["cylinder", "cylinders"],
        },
        Term::EuropeanProfile => TermWords {
            name: "European profile",
            meaning: "A long cylinder that slides out of the door once a screw in the door’s edge is undone.",
            beside: "slides out of the door",
            forms: &["european profile"],
        },
        Term::Rekey => TermWords {
            name: "Rekey",
            meaning: "To set a lock to a new key. The lock stays; the old keys stop working.",
            beside: "set to a new key",
            forms: &["rekey", "rekeyed", "rekeying", "rekeys"],
        },
        Term::KeyedAlike => TermWords {
            name: "Keyed alike",
            meaning: "Said of locks that share one key.",
            beside: "share one key",
            forms: &["keyed alike"],
        },
        Term::Restricted => TermWords {
            name: "Restricted key",
            meaning: "A key that dealers copy only for the holder of its card.",
            beside: "copy only with your card",
            forms: &["restricted"],
        },
        Term::LeverLock => TermWords {
            name: "Lever lock",
            meaning: "A lock in which flat plates, the levers, hold the bolt until the right key lifts them.",
            beside: "flat plates",
            forms: &["lever lock", "lever", "levers"],
        },
        Term::Deadbolt => TermWords {
            name: "Deadbolt",
            meaning: "A bolt that does not spring back. Only the key or a knob inside moves it.",
            beside: "a bolt that does not spring back",
            forms: &["deadbolt"],
        },
        Term::ThumbTurn => TermWords {
            name: "Thumb-turn",
            meaning: "A knob inside the door that opens the lock without a key.",
            beside: "a knob you turn by hand",
            forms: &["thumb-turn"],
        },
        Term::KeySafe => TermWords {
            name: "Key safe",
            meaning: "A small box with a code, fixed outside, that holds a spare key.",
            beside: "a small box with a code",
            forms: &["key safe", "key safes"],
        },
        Term::Fob => TermWords {
            name: "Fob",
            meaning: "A small tag that opens a door when held to a reader.",
            beside: "small tag",
            forms: &["fob", "fobs"],
        },
    }
}
