//! Which words the texts may not use, and which they must explain.

use super::gathered::{action, all, keep_safely, safety};
use crate::copy::{self, Term};
use self_check_core::advice::Action;

/// The trade's and the field's words that a householder need not learn, and words that frighten or
/// blame.
const NEVER: &[&str] = &[
    // jargon
    "keyway",
    "bitting",
    "pinning",
    "pin tumbler",
    "tumbler",
    "mortise",
    "escutcheon",
    "rights amplification",
    "entropy",
    "sigma",
    "probability",
    "algorithm",
    "exposure",
    "compromised",
    "duplicate",
    "authorised",
    "mitigate",
    "vulnerability",
    "utilise",
    "webassembly",
    "wasm",
    "metadata",
    "cache",
    "dimple",
    "warded",
    // fright and blame
    "burglar",
    "burglars",
    "criminal",
    "intruder",
    "attacker",
    "hacker",
    "victim",
    "terrible",
    "beware",
    "careless",
    "foolish",
    "your fault",
    "should have known",
    "you failed",
    "at risk",
    "immediately",
    "urgent",
    // spelling of another shore
    "color",
    "neighbor",
    "neighbors",
    "license",
    "apartment",
];

#[test]
fn texts_use_no_word_of_the_list() {
    let mut faults = Vec::new();
    for page in all() {
        for text in &page.texts {
            let lower = text.to_lowercase();
            for word in NEVER.iter().filter(|word| has_word(&lower, word)) {
                faults.push(format!("{}: “{word}” in: {text}", page.name));
            }
        }
    }
    none(&faults);
}

/// A meaning stands before the first use of its term on a page, or within this many letters of it.
const BESIDE: usize = 80;

#[test]
fn terms_are_explained_where_they_are_first_used() {
    let mut faults = Vec::new();
    for page in all().iter().filter(|page| page.name != "terms") {
        // On the page for the locksmith the reader speaks of their own card.
        let whole = page.whole().to_lowercase();
        let whole = whole.replace(" our card", " your card");
        for id in Term::ALL {
            let words = copy::term(id);
            let first_use = words
                .forms
                .iter()
                .filter_map(|form| place_of(&whole, form))
                .min();
            let meaning = whole.find(words.beside);
            let is_missing = first_use
                .is_some_and(|used| meaning.is_none_or(|explained| explained > used + BESIDE));
            if is_missing {
                faults.push(format!(
                    "{}: {} without “{}”",
                    page.name, words.name, words.beside
                ));
            }
        }
    }
    none(&faults);
}

#[test]
fn terms_each_stand_on_some_page() {
    let pages = all();
    for id in Term::ALL {
        let words = copy::term(id);
        let is_used = pages
            .iter()
            .filter(|page| page.name != "terms")
            .any(|page| {
                let whole = page.whole().to_lowercase();
                words.forms.iter().any(|form| has_word(&whole, form))
            });
        assert!(is_used, "{}", words.name);
    }
}

/// On the branch of somebody who is worried about a person.
#[test]
fn safety_asks_nobody_to_ask_list_keep_print_or_copy() {
    let pages = [
        safety(),
        action(Action::PlanWithSupport),
        action(Action::ChangeCodesAndUsers),
        keep_safely(),
    ];
    let mut faults = Vec::new();
    for page in pages {
        let whole = page.whole().to_lowercase();
        for word in [
            "get back",
            "copies back",
            "key back",
            "give back",
            "list",
            "print",
            "copy",
            "copies",
            "keep on this device",
            "save",
            "download",
        ] {
            if whole.contains(word) {
                faults.push(format!("{}: “{word}”", page.name));
            }
        }
    }
    none(&faults);
}

#[test]
fn safety_page_holds_each_of_its_cautions() {
    let whole = safety().whole();
    for needed in [
        "emergency number",
        "domestic-abuse service",
        "before you change a lock",
        "against the law",
        "cannot see",
        "opens by app",
        "code of a key safe",
        "cameras",
        "tracker",
        "shared account",
        "history",
    ] {
        assert!(whole.contains(needed), "{needed}");
    }
}

/// The page says how long a passphrase must be, and the program holds it to that.
#[test]
fn least_length_of_a_passphrase_is_the_one_told() {
    use crate::copy::keep;
    let least = format!("at least {} letters", crate::sealed::LEAST_LETTERS);
    for text in [keep::PASSPHRASE_HINT, keep::TOO_SHORT] {
        assert!(text.to_lowercase().contains(&least), "{text}");
    }
}

/// A returned key proves nothing, and the answer to that stands beside it.
#[test]
fn copies_back_never_stands_without_rekeying() {
    let words = copy::action(Action::GetCopiesBack);
    assert!(
        words
            .how
            .contains("A returned key proves nothing: only rekeying")
    );
}

#[test]
fn removing_a_code_names_every_condition_and_caution() {
    let whole = action(Action::HaveCodeRemoved).whole();
    for needed in [
        "of your own",
        "plain key",
        "card",
        "nobody you do not trust",
        "house papers",
        "shoulder",
        "blade",
        "tip",
        "eye guards",
        "gloves",
        "metal dust",
        "Wash your hands",
        "children",
        "cleaned before",
        "Never do this to a landlord’s key",
    ] {
        assert!(whole.contains(needed), "{needed}");
    }
}

#[test]
fn stop_gap_keeps_every_way_out_open() {
    let whole = action(Action::StopGap).whole();
    assert!(whole.contains("Never glue, wedge or chain"), "{whole}");
    let speak_of_a_bolt = |text: &&str| text.contains("bolt");
    let told = copy::AROUND_AN_ACTION;
    assert_eq!(told.iter().filter(|text| speak_of_a_bolt(text)).count(), 2);
    for text in told
        .iter()
        .copied()
        .filter(|text| speak_of_a_bolt(text))
        .chain([&*whole])
    {
        for needed in ["awake and inside", "every way out easy"] {
            assert!(text.contains(needed), "{needed}: {text}");
        }
    }
}

#[test]
fn locksmiths_are_always_ones_the_reader_has_checked() {
    use self_check_core::advice::Doer;
    for id in Action::ALL {
        if id.doer() == Doer::Locksmith {
            let who = copy::action(id).who;
            let words = "A locksmith you have checked (licensed where your region licenses them).";
            assert!(who.starts_with(words), "{id:?}");
        }
    }
}

/// No digits that could be taken for a code, and no emergency number: those differ by country.
/// Years and numbers with separators are told apart by their shape.
#[test]
fn texts_hold_no_digits_that_look_like_a_code() {
    let mut faults = Vec::new();
    for page in all() {
        for text in &page.texts {
            for word in text.split(|letter: char| !letter.is_alphanumeric() && letter != ',') {
                let word = word.trim_matches(',');
                let digits = word.chars().filter(char::is_ascii_digit).count();
                let letters = word.chars().filter(|l| l.is_alphabetic()).count();
                let is_year = letters == 0 && (word.starts_with("19") || word.starts_with("20"));
                let is_grouped = word.contains(',');
                let is_plain =
                    digits < 3 || is_grouped || (digits == 4 && is_year) || is_round(word);
                if !is_plain || (digits > 0 && letters > 0) {
                    faults.push(format!("{}: {word} in: {text}", page.name));
                }
            }
        }
    }
    none(&faults);
}

#[test]
fn texts_are_set_with_care() {
    let mut faults = Vec::new();
    for page in all() {
        for text in page.texts.iter().filter(|text| !text.is_empty()) {
            if text.trim() != text {
                faults.push(format!("{}: space around: {text}", page.name));
            }
            for slip in ["!", "  ", "'", "\"", " ,", " .", "..", "—", " – "] {
                if text.contains(slip) {
                    faults.push(format!("{}: “{slip}” in: {text}", page.name));
                }
            }
        }
    }
    none(&faults);
}

/// All faults at once: one run, one round of mending.
fn none(faults: &[String]) {
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

/// 100 is a number of things; a code is seldom so round.
fn is_round(word: &str) -> bool {
    word.len() == 3 && word.ends_with("00")
}

fn has_word(text: &str, word: &str) -> bool {
    place_of(text, word).is_some()
}

/// Where `word` first stands in `text` as a word of its own.
fn place_of(text: &str, word: &str) -> Option<usize> {
    let is_edge = |letter: Option<char>| letter.is_none_or(|l| !l.is_alphanumeric());
    text.match_indices(word).map(|(at, _)| at).find(|&at| {
        is_edge(text[..at].chars().next_back()) && is_edge(text[at + word.len()..].chars().next())
    })
}
