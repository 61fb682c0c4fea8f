//! The questions: what is asked, where to look, and what the answer changes.

use self_check_core::answers::Answers;
use self_check_core::path::{comes_before, is_missing_path};
use self_check_core::questions::{Choice, Question};

use super::site;
use crate::copy::QuestionWords;

const NOT_SURE: &str = "I am not sure";

/// The words around `question` as the answers so far make it meant: since when it asks, and
/// whether the key is in the hand. Pages show these.
pub fn question_on(question: Question, answers: &Answers) -> QuestionWords {
    let usual = self::question(question);
    if question == Question::Copies && was_changed_before(question, answers) {
        after_a_change(question, usual)
    } else if is_missing_path(answers) {
        on_the_missing_path(question, usual)
    } else if question == Question::Holders && answers.has(Choice::LetItOut) {
        QuestionWords {
            hint: LET_HOLDERS,
            ..usual
        }
    } else if question == Question::NumberElsewhere && is_small_lock(answers) {
        QuestionWords {
            title: "Where does a number of this lock or key stand?",
            ..usual
        }
    } else if question == Question::ChangedSince {
        QuestionWords {
            title: changed_since_title(answers),
            ..usual
        }
    } else if was_changed_before(question, answers) {
        after_a_change(question, usual)
    } else {
        usual
    }
}

/// Beside the question who has had the key to a home that is let.
const LET_HOLDERS: &str = "Count those who live there now as the household of the home. Think of former tenants, agents and helpers, and of anyone who held it out of sight.";

/// Whether the key opens a lock on whose front a number often stands.
fn is_small_lock(answers: &Answers) -> bool {
    answers.has_any(&[Choice::Mailbox, Choice::PadlockOrCabinet])
}

/// What stands beside the words for "not sure".
pub fn not_sure_hint(question: Question, answers: &Answers) -> &'static str {
    if question == Question::KeyKind && is_missing_path(answers) {
        site::NO_COPY_HINT
    } else {
        site::NOT_SURE_HINT
    }
}

/// The words around `question` in the usual order.
pub fn question(question: Question) -> QuestionWords {
    match question {
        Question::Reason => QuestionWords {
            title: "What brings you here?",
            hint: "Choose what fits best. You can change it later.",
            why: "It decides which question comes first. Your answers stay in this page until you close or reload it.",
            not_sure: "I am not sure where to start",
            drawing_title: "A house key and its parts",
            drawing_desc: "A drawn key lies flat. The bow is the part you hold. The blade is the part that goes into the lock. The shoulder is the step that stops the key. The cuts are the dips along its edge.",
        },
        Question::MissingHow => QuestionWords {
            title: "How did the key go missing?",
            hint: "Think of the last time you used it, and where you went after that.",
            why: "A key lost far away, with nothing to show which door it opens, matters far less than a stolen one.",
            not_sure: NOT_SURE,
            drawing_title: "Where a key may be",
            drawing_desc: "A home, its street and a far town side by side. Below each, a dotted outline shows a key that is not there.",
        },
        Question::Opens => QuestionWords {
            title: "What does the key open?",
            hint: "If you like, try the key in your other locks.",
            why: "Each kind of lock is given a new key in its own way. Locks that share one key are called keyed alike: to lose one key is to lose them all.",
            not_sure: NOT_SURE,
            drawing_title: "What a key may open",
            drawing_desc: "Drawn side by side: a front door, a flat door, a shared entrance, a shed, a mailbox, a padlock, a car and an office.",
        },
        Question::WhoDecides => QuestionWords {
            title: "Who decides about this lock?",
            hint: "If you rent, look in your agreement under keys or locks. If the key opens a shared entrance too, answer for your own door.",
            why: "To change a lock without a right to do so can break an agreement or a law. The answer shows whom to ask first.",
            not_sure: NOT_SURE,
            drawing_title: "Your own door and a shared one",
            drawing_desc: "A building with its front cut away. One inner door belongs to one home. The entrance below it serves every home.",
        },
        Question::ChangedSince => QuestionWords {
            title: "Has the lock been changed since you moved in or took it over?",
            hint: "Changed means a new lock, or a new cylinder (the part the key goes into). Rekeyed means the same lock, set to a new key. Both count, and so does a lock that was new when you came.",
            why: "A change puts an end to all that happened to the old key. It helps only as long as you know where each new key is.",
            not_sure: NOT_SURE,
            drawing_title: "Before and after a change",
            drawing_desc: "The same lock twice. Before, an old white key turns it. After, the old key is crossed out and a new brass key turns it.",
        },
        Question::Copies => QuestionWords {
            title: "Do you know where every copy of this key is?",
            hint: "Count those you were given and those you had made. Look on rings, on hooks and in drawers.",
            why: "A copy that no one can place could be in anyone’s hands. Counting costs nothing.",
            not_sure: NOT_SURE,
            drawing_title: "A key and its copies",
            drawing_desc: "Four hooks in a row. A key hangs on three of them. The fourth is empty.",
        },
        Question::Holders => QuestionWords {
            title: "Who has this key, or has had it?",
            hint: "Think of anyone who held it out of your sight, even for a short time. If you rent, leave out the landlord’s own key.",
            why: "With a key in hand, anyone can have a copy made in minutes. So who had it matters more than who saw it.",
            not_sure: NOT_SURE,
            drawing_title: "The hands a key goes through",
            drawing_desc: "A key in the middle. Lines lead from it to a home, a neighbour’s house, a parked car, a toolbox and a suitcase.",
        },
        Question::KeyKind => QuestionWords {
            title: "What kind of key is it?",
            hint: "Lay it flat and look at the blade (the part that goes into the lock). Compare it with the drawings.",
            why: "The kind decides how many different keys there can be, and how such a lock gets a new one. Some kinds have no fair count; the rest of the check works just the same.",
            not_sure: NOT_SURE,
            drawing_title: "Eight kinds of key",
            drawing_desc: "Eight drawings in the order of the choices. First, dips along one edge; dips along both edges; round hollows on the flat side; a tube. Then a stem with a flag; a simple inside-door key; a thick plastic head; and a card beside a small tag.",
        },
        Question::Marking => QuestionWords {
            title: "Is anything stamped on the metal?",
            hint: "Look on both faces of the bow (the part you hold), along its rim, and beside the shoulder (the step that stops the key). Tilt it under a lamp: old stamps are shallow. Nothing needs to be typed.",
            why: "A number that stands only on the keys to one lock is often its key code: a key can be cut from it by someone who never saw yours.",
            not_sure: NOT_SURE,
            drawing_title: "Where a stamp may stand",
            drawing_desc: "A key from the side. Dashed frames mark three places: the face of the part you hold, its rim, and a spot beside the step where the key meets the lock.",
        },
        Question::NumberIs => QuestionWords {
            title: "What kind of number is it?",
            hint: "Compare it with the keys to your other doors. Then look at the cards and papers that came with the lock. There is no need to type it.",
            why: "The number may only name the blank (the uncut key), which tells a stranger nothing. Or it may be the key code: a key can be cut from it.",
            not_sure: NOT_SURE,
            drawing_title: "Two kinds of number",
            drawing_desc: "Two doors, each with its key beside it, drawn twice. Above, both keys bear the same mark. Below, one key bears a mark and the other does not.",
        },
        Question::NumberElsewhere => QuestionWords {
            title: "Where else is the key’s number written?",
            hint: "Look at the front of the lock, at tags on the ring, and in the papers you keep. If the number stands nowhere else, say so.",
            why: "A number on the front of a lock can be read by anyone who walks past. With your papers at home it is in a good place.",
            not_sure: NOT_SURE,
            drawing_title: "Where a number may stand",
            drawing_desc: "Three things side by side, each with a dashed frame where a number may be: the front of a small lock, a tag on a key ring, and a folded paper.",
        },
        Question::Kept => QuestionWords {
            title: "Where is the key carried and kept?",
            hint: "Think of an ordinary day: on the way, at work, at home.",
            why: "A key in plain view can be caught by a camera. That calls for a small change of habit, not for a new lock.",
            not_sure: NOT_SURE,
            drawing_title: "Ways to carry and keep a key",
            drawing_desc: "Six small drawings. First, a closed bag; a key on a cord round the neck; and a window with a key. Then a car seat, a plant pot, and a small box with a code.",
        },
        Question::Seen => QuestionWords {
            title: "Where could a picture of the key be?",
            hint: "Think of moving-in pictures, things for sale, your desk, your hand. Please take no new picture for this.",
            why: "A clear picture can be enough to have a key copied. One that shows the place too should come down first.",
            not_sure: NOT_SURE,
            drawing_title: "Where pictures of a key turn up",
            drawing_desc: "Five small drawings, each with a key: in a message, in a public post, by the sign of a home for sale, in a video call, and in view of a doorbell.",
        },
        Question::Link => QuestionWords {
            title: "If you lost this key, what would show where it belongs?",
            hint: "Look at the ring, its tags, and what you carry with it. In a car, think of its papers and of “home” on its map. If there is a picture of the key, look at what else it shows.",
            why: "A key is of little use to a stranger who cannot tell which door it opens.",
            not_sure: NOT_SURE,
            drawing_title: "What can tie a key to its door",
            drawing_desc: "A key ring with a tag. Beside it lie a wallet, a letter and a picture of a front door.",
        },
        Question::OtherWays => QuestionWords {
            title: "How else is your door locked or opened?",
            hint: "Look at the door from inside and outside.",
            why: "A second lock with another key gives you time. A code or an app is one more thing to look after.",
            not_sure: NOT_SURE,
            drawing_title: "A door with more than one lock",
            drawing_desc: "A door seen from inside. It has a main lock, a second lock above it, a bolt, and a pad with buttons.",
        },
    }
}

/// What stands below the drawing of `question`, where the drawing alone does not tell what it means.
pub fn caption(question: Question) -> Option<&'static str> {
    (question == Question::NumberIs).then_some(
        "Above, both keys bear the same mark: it names the blank (the uncut key). Below, only one key does: most likely it is the key code (a key can be cut from it).",
    )
}

/// The name of `question` in the list of answers and on its Change link.
pub fn short(question: Question) -> &'static str {
    match question {
        Question::Reason => "What brings you here",
        Question::MissingHow => "How it went missing",
        Question::Opens => "What it opens",
        Question::WhoDecides => "Who decides",
        Question::ChangedSince => "Lock changed",
        Question::Copies => "Copies",
        Question::Holders => "Who had it",
        Question::KeyKind => "Kind of key",
        Question::Marking => "Stamped on it",
        Question::NumberIs => "Kind of number",
        Question::NumberElsewhere => "Number elsewhere",
        Question::Kept => "Carried and kept",
        Question::Seen => "Pictures of it",
        Question::Link => "Points to the door",
        Question::OtherWays => "Other locks and ways in",
    }
}

/// How to find out what the answer to `question` was "not sure" about, as the answers make it
/// possible: a key that is gone cannot be tried in a lock.
pub fn find_out_on(question: Question, answers: &Answers) -> &'static str {
    match question {
        Question::Opens if is_missing_path(answers) => OPENS_WITHOUT_THE_KEY,
        Question::Link if is_missing_path(answers) => LINK_WITHOUT_THE_KEY,
        Question::ChangedSince if asks_since_an_event(answers) => CHANGED_SINCE_AN_EVENT,
        _ => find_out(question),
    }
}

const OPENS_WITHOUT_THE_KEY: &str = "If you have a copy, try it in the locks you use. Never force it. If you have none, see which of your locks no key at hand opens.";
const LINK_WITHOUT_THE_KEY: &str = "Go through in your mind what hung on the ring, and what went missing with it. Ask the people you live with what they remember.";
const CHANGED_SINCE_AN_EVENT: &str = "Look for a bill, or ask the people you live with. A locksmith can often tell from the lock itself. If nobody knows, take it that the lock was not changed.";

/// Every such way, for the tests of the words.
#[cfg(test)]
pub const OTHER_WAYS_TO_FIND_OUT: [&str; 3] = [
    OPENS_WITHOUT_THE_KEY,
    LINK_WITHOUT_THE_KEY,
    CHANGED_SINCE_AN_EVENT,
];

/// Whether the question about a change asks since something that happened, and not since a move.
fn asks_since_an_event(answers: &Answers) -> bool {
    answers.has_any(&[
        Choice::KeyMissing,
        Choice::SharedAPicture,
        Choice::SomeoneHadIt,
        Choice::WorriedAboutAPerson,
    ])
}

/// How to find out what the answer to `question` was "not sure" about.
pub fn find_out(question: Question) -> &'static str {
    match question {
        Question::Reason => "Read the start page once more and choose the line that fits best.",
        Question::MissingHow => {
            "Walk back through the day: where you last used the key, and where you sat down after that. Call those places."
        }
        Question::Opens => {
            "Try the key in the locks you use. If it turns with ease, it belongs there. Never force it."
        }
        Question::WhoDecides => {
            "Look in your agreement or deeds. If that does not help, ask a local housing advice service."
        }
        Question::ChangedSince => {
            "Look for a bill, or ask whoever had the home before you. A locksmith can often tell from the lock itself. If nobody knows, take it that the lock was not changed."
        }
        Question::Copies => {
            "Lay out the keys you have at home and count them. Compare that with how many you were given."
        }
        Question::Holders => {
            "Go through the past year in your mind: repairs, holidays, moves, guests. Write nothing down if someone else could read it."
        }
        Question::KeyKind => {
            "Hold the key under a lamp beside the drawings. A locksmith can name the kind at a glance."
        }
        Question::Marking => {
            "Clean the key with a dry cloth and tilt it under a lamp. Look at both faces and the rim."
        }
        Question::NumberIs => {
            "Look at the keys to other doors. The same number there means it names the uncut key. A locksmith can tell you too: ask in person, and send no picture."
        }
        Question::NumberElsewhere => {
            "Look at the front of the lock, at the tags on your ring, and in the papers that came with it."
        }
        Question::Kept => "Watch yourself for a day: where is the key when you do not think of it?",
        Question::Seen => {
            "Search your albums and posts around the day you moved in or got the key. Look at sale listings of your home as well."
        }
        Question::Link => {
            "Empty the ring, bag or pocket on a table and read each thing as a stranger would."
        }
        Question::OtherWays => "Walk to the door and look at it from both sides.",
    }
}

fn changed_since_title(answers: &Answers) -> &'static str {
    if answers.has(Choice::JustMovedIn) {
        "Has the lock been changed since you moved in?"
    } else if answers.has(Choice::SharedAPicture) {
        "Has the lock been changed since the picture was shared?"
    } else if answers.has(Choice::SomeoneHadIt) {
        "Has the lock been changed since those people had the key?"
    } else if answers.has(Choice::WorriedAboutAPerson) {
        "Has the lock been changed since that person last had a key?"
    } else {
        question(Question::ChangedSince).title
    }
}

fn was_changed_before(question: Question, answers: &Answers) -> bool {
    answers.has_any(&[Choice::ChangedAndCounted, Choice::ChangedCopiesUnknown])
        && comes_before(Question::ChangedSince, question, answers)
}

fn after_a_change(question: Question, usual: QuestionWords) -> QuestionWords {
    let title = match question {
        Question::Copies => "Do you know where every copy of the new key is?",
        Question::Holders => "Who has the new key, or has had it since the change?",
        Question::Kept => "Where is the new key carried and kept?",
        Question::Seen => "Where could a picture of the new key be?",
        Question::Link => "If you lost the new key, what would show where it belongs?",
        Question::Reason
        | Question::MissingHow
        | Question::Opens
        | Question::WhoDecides
        | Question::ChangedSince
        | Question::KeyKind
        | Question::Marking
        | Question::NumberIs
        | Question::NumberElsewhere
        | Question::OtherWays => usual.title,
    };
    QuestionWords { title, ..usual }
}

fn on_the_missing_path(question: Question, usual: QuestionWords) -> QuestionWords {
    match question {
        Question::Opens => QuestionWords {
            title: "What does the missing key open?",
            hint: "If you have a copy, try it in your other locks.",
            ..usual
        },
        Question::Link => QuestionWords {
            title: "What could tell a finder which door it opens?",
            hint: "Think of what hung on the ring and what went missing with it.",
            ..usual
        },
        Question::ChangedSince => QuestionWords {
            title: "Has the lock been changed since the key went missing?",
            ..usual
        },
        Question::Copies => QuestionWords {
            title: "Do you know where every other copy is?",
            ..usual
        },
        Question::KeyKind => QuestionWords {
            title: "What kind of key is it?",
            hint: "Take a copy of the missing key, if you have one. Lay it flat and look at the blade (the part that goes into the lock).",
            not_sure: "I have no copy here",
            ..usual
        },
        Question::Reason
        | Question::MissingHow
        | Question::WhoDecides
        | Question::Holders
        | Question::Marking
        | Question::NumberIs
        | Question::NumberElsewhere
        | Question::Kept
        | Question::Seen
        | Question::OtherWays => usual,
    }
}
