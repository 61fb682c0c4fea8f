//! How hard the texts are to read.
//!
//! Measure: the grade of Kincaid, Fishburne, Rogers and Chissom, "Derivation of New Readability
//! Formulas for Navy Enlisted Personnel", Research Branch Report 8-75, 1975 (coefficients from
//! memory, the same in every program that offers it):
//! 0.39 words per sentence + 11.8 syllables per word - 15.59. A grade is a school year in the
//! United States, in which pupils are about five years older than its number.
//!
//! Limits: a reading age of about 12 is grade 7, which no page may exceed; a page is what is met
//! together, one question or one action included. All texts together stay below grade 5, so that
//! the whole keeps well clear of what a single page may reach.

use super::gathered::{Page, all};

const LIMIT_OF_A_PAGE: f64 = 7.0;
const LIMIT_OF_ALL: f64 = 5.0;

/// One sentence swings far more than a page; this is what a school leaver reads. Our own limit.
const LIMIT_OF_A_SENTENCE: f64 = 12.0;

/// With fewer words than this, one long word decides the grade.
const WORDS_TO_GRADE: usize = 6;

/// Words up to the next full stop, colon or semicolon, where a reader can rest. Our own limit.
const LONGEST_STRETCH: usize = 28;

/// A choice is read at a glance. Our own limit.
const LONGEST_LABEL: usize = 12;

#[derive(Clone, Copy, Debug, Default)]
struct Measure {
    words: usize,
    sentences: usize,
    syllables: usize,
}

impl Measure {
    fn of(text: &str) -> Self {
        let mut measure = Self::default();
        for sentence in sentences(text) {
            measure.sentences += 1;
            for word in words(sentence) {
                measure.words += 1;
                measure.syllables += syllables(&word);
            }
        }
        measure
    }

    fn grade(self) -> f64 {
        let words = self.words as f64;
        0.39 * words / self.sentences as f64 + 11.8 * self.syllables as f64 / words - 15.59
    }
}

#[test]
fn pages_read_at_the_age_of_twelve() {
    let mut graded: Vec<(f64, usize, String)> = Vec::new();
    for page in all() {
        let measure = Measure::of(&page.prose());
        if measure.words > 0 {
            graded.push((measure.grade(), measure.words, page.name));
        }
    }
    graded.sort_by(|a, b| b.0.total_cmp(&a.0));
    for (grade, words, name) in &graded {
        println!(
            "grade {grade:4.1}, age {:4.1}, {words:4} words: {name}",
            grade + 5.0
        );
    }
    let too_hard: Vec<&(f64, usize, String)> = graded
        .iter()
        .filter(|(grade, _, _)| *grade > LIMIT_OF_A_PAGE)
        .collect();
    assert!(too_hard.is_empty(), "{too_hard:?}");
    let together: Vec<String> = all().iter().map(Page::prose).collect();
    let measure = Measure::of(&together.join("\n"));
    println!(
        "all: grade {:.2}, {} words, {:.1} a sentence",
        measure.grade(),
        measure.words,
        measure.words as f64 / measure.sentences as f64
    );
    assert!(measure.grade() <= LIMIT_OF_ALL);
}

/// On a page of many lines one hard line would drown: a claim of the rule table is read alone.
#[test]
fn sentences_alone_are_not_hard_either() {
    let mut graded: Vec<(f64, String)> = Vec::new();
    for page in all() {
        for sentence in page.texts.iter().flat_map(|text| stretches(text)) {
            let measure = Measure::of(sentence);
            if measure.words >= WORDS_TO_GRADE {
                graded.push((measure.grade(), format!("{}: {sentence}", page.name)));
            }
        }
    }
    graded.sort_by(|a, b| b.0.total_cmp(&a.0));
    for (grade, sentence) in graded.iter().take(5) {
        println!("grade {grade:.1}: {sentence}");
    }
    graded.retain(|(grade, _)| *grade > LIMIT_OF_A_SENTENCE);
    assert!(graded.is_empty(), "{graded:#?}");
}

#[test]
fn sentences_stay_short() {
    let mut faults = Vec::new();
    for page in all() {
        for stretch in page.texts.iter().flat_map(|text| stretches(text)) {
            let length = words(stretch).count();
            if length > LONGEST_STRETCH {
                faults.push(format!("{}: {length} words: {stretch}", page.name));
            }
        }
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn choices_are_short() {
    use self_check_core::questions::Question;
    for choice in Question::ALL.into_iter().flat_map(|id| id.row().choices) {
        let words_of = crate::copy::choice(*choice);
        for text in [words_of.label, words_of.hint.unwrap_or("")] {
            assert!(words(text).count() <= LONGEST_LABEL, "{text}");
        }
    }
}

/// A measure that cannot tell hard from plain would pass everything.
#[test]
fn grade_tells_hard_from_plain() {
    let hard = "Unauthorised duplication constitutes a considerable vulnerability, necessitating immediate professional reconfiguration of the affected mechanism.";
    let plain = "If someone may have made a copy, have the lock set to a new key.";
    assert!(Measure::of(hard).grade() > 15.0);
    assert!(Measure::of(plain).grade() < 5.0);
}

/// Counted by hand, and the same in a pronouncing dictionary. Over all texts the rules below agree
/// with that dictionary (CMUdict) but for the listed exceptions.
#[test]
fn syllables_of_words_counted_by_hand() {
    let counted = [
        ("key", 1),
        ("keys", 1),
        ("locksmith", 2),
        ("cylinder", 3),
        ("opened", 2),
        ("changed", 1),
        ("number", 2),
        ("someone", 2),
        ("people", 2),
        ("picture", 2),
        ("insurer", 3),
        ("before", 2),
        ("sure", 1),
        ("safe", 1),
        ("safety", 2),
        ("emergency", 4),
        ("uneasy", 3),
        ("source’s", 2),
        ("else’s", 2),
        ("listed", 2),
        ("makes", 1),
        ("places", 2),
        ("used", 1),
        ("idea", 3),
        ("association", 5),
        ("little", 2),
        ("rekeyed", 2),
    ];
    for (word, count) in counted {
        assert_eq!(syllables(word), count, "{word}");
    }
}

fn sentences(text: &str) -> impl Iterator<Item = &str> {
    text.split(['.', '?', '!', '\n'])
        .map(str::trim)
        .filter(|sentence| sentence.chars().any(char::is_alphabetic))
}

fn stretches(text: &str) -> impl Iterator<Item = &str> {
    sentences(text).flat_map(|sentence| sentence.split([':', ';']))
}

fn words(sentence: &str) -> impl Iterator<Item = String> {
    sentence
        .split(|letter: char| letter.is_whitespace() || "-–—/".contains(letter))
        .map(|word| {
            word.chars()
                .filter(|letter| letter.is_alphanumeric() || *letter == '’')
                .collect::<String>()
                .to_lowercase()
        })
        .filter(|word| word.chars().any(char::is_alphanumeric))
}

/// Syllables of an English word by its spelling: groups of vowels, less silent endings, plus what
/// two vowels in a row hide. Words that the rules get wrong stand in a list.
fn syllables(word: &str) -> usize {
    let word = word.replace('’', "");
    if word.chars().any(|letter| letter.is_ascii_digit()) {
        return SYLLABLES_OF_A_NUMBER;
    }
    if let Some((_, count)) = EXCEPTIONS.iter().find(|(listed, _)| *listed == word) {
        return *count;
    }
    let letters: Vec<char> = word.chars().collect();
    let is_vowel = |index: usize| "aeiouy".contains(letters[index]);
    let mut count = (0..letters.len())
        .filter(|&index| is_vowel(index) && (index == 0 || !is_vowel(index - 1)))
        .count();
    for hiatus in ["ia", "io", "iu", "eo", "ua", "ying", "uing", "eing"] {
        count += word.matches(hiatus).count();
    }
    for joined in [
        "cia", "tia", "cio", "tio", "sio", "gio", "qua", "gua", "xio",
    ] {
        count -= word.matches(joined).count();
    }
    if has_silent_ending(&letters) {
        count -= 1;
    }
    count.max(1)
}

/// A final "e", "es" or "ed" after a consonant that does not need it to be spoken.
fn has_silent_ending(letters: &[char]) -> bool {
    let from_the_end = |back: usize| letters.len().checked_sub(back).map(|at| letters[at]);
    let is_consonant = |letter: Option<char>| letter.is_some_and(|l| !"aeiouy".contains(l));
    let makes_le =
        |back: usize| from_the_end(back) == Some('l') && is_consonant(from_the_end(back + 1));
    match (from_the_end(2), from_the_end(1)) {
        (before, Some('e')) => is_consonant(before) && !makes_le(2),
        (Some('e'), Some('s')) => {
            is_consonant(from_the_end(3))
                && !from_the_end(3).is_some_and(|letter| "sxzcg".contains(letter))
                && !matches!(
                    (from_the_end(4), from_the_end(3)),
                    (Some('c' | 's'), Some('h'))
                )
                && !makes_le(3)
        }
        (Some('e'), Some('d')) => {
            is_consonant(from_the_end(3))
                && !from_the_end(3).is_some_and(|letter| "td".contains(letter))
                && !makes_le(3)
        }
        _ => false,
    }
}

/// Numbers in digits are few; most are read in about three.
const SYLLABLES_OF_A_NUMBER: usize = 3;

/// Words of these texts that the rules get wrong, corrected by a pronouncing dictionary.
const EXCEPTIONS: &[(&str, usize)] = &[
    ("someone", 2),
    ("someones", 2),
    ("anyone", 3),
    ("anyones", 3),
    ("association", 5),
    ("business", 2),
    ("called", 1),
    ("centre", 2),
    ("drawers", 1),
    ("elsewhere", 2),
    ("employer", 3),
    ("european", 4),
    ("everything", 3),
    ("idea", 3),
    ("likely", 2),
    ("millimetre", 4),
    ("million", 2),
    ("people", 2),
    ("peoples", 2),
    ("safety", 2),
    ("something", 2),
    ("sometimes", 2),
    ("undoes", 2),
    ("whoever", 3),
    ("wireless", 2),
];
