//! Labels against the Unicode Character Database: which characters count as how many digits, and
//! which are not seen. The lists are `tests/data/numerals.csv` and `unseen.csv`, written by
//! `characters.py` beside them.

use std::collections::{BTreeMap, BTreeSet};

use self_check_core::household::{Label, LabelRefusal};

/// A character of the list: its number where it has one, and what it is written out with.
struct Numeral {
    value: Option<f64>,
    written_out: Vec<char>,
}

fn character(code: &str) -> char {
    char::from_u32(u32::from_str_radix(code, 16).unwrap()).unwrap()
}

fn numerals() -> BTreeMap<char, Numeral> {
    let lines = include_str!("../data/numerals.csv").lines().skip(1);
    let numeral = |line: &str| {
        let mut columns = line.split(',');
        let code = character(columns.next().unwrap());
        let value = columns.next().unwrap().parse().ok();
        let written_out = columns
            .next()
            .unwrap()
            .split(' ')
            .filter(|it| !it.is_empty());
        let written_out = written_out.map(character).collect();
        (code, Numeral { value, written_out })
    };
    lines.map(numeral).collect()
}

/// How many digits a label counts in `character`, up to three: more than that stands in none.
fn counted(character: char) -> usize {
    let is_too_much = |&times: &usize| {
        let text = format!("a{}", character.to_string().repeat(times));
        Label::new(&text) == Err(LabelRefusal::TooManyDigits)
    };
    match [1, 2, 3].iter().find(|times| is_too_much(times)) {
        Some(1) => 3,
        Some(2) => 2,
        Some(_) => 1,
        None => 0,
    }
}

#[test]
fn every_number_of_unicode_counts_as_the_digits_it_has() {
    let numerals = numerals();
    let of_value = |character: &char| match numerals.get(character).and_then(|it| it.value) {
        None => 0,
        Some(value) if value < 10.0 => 1,
        Some(_) => 2,
    };
    for (&character, numeral) in &numerals {
        let written_out: usize = numeral.written_out.iter().map(of_value).sum();
        let digits = of_value(&character).max(written_out);
        assert_eq!(counted(character), digits, "{:x}", character as u32);
    }
    assert!(numerals.len() > 2_000, "the list was read");
}

#[test]
fn what_is_no_number_counts_as_no_digit() {
    let numerals = numerals();
    // A later standard library may know numbers that the list does not.
    let others = ('\0'..=char::MAX).filter(|it| !numerals.contains_key(it) && !it.is_numeric());
    let counted: Vec<char> = others.filter(|&it| counted(it) > 0).collect();
    // The keycap ten has a picture alone, and no number.
    assert_eq!(counted, ['\u{1f51f}']);
}

#[test]
fn every_character_that_is_not_seen_is_refused_but_those_that_scripts_need() {
    let ranges = include_str!("../data/unseen.csv").lines().skip(1);
    let mut unseen: BTreeSet<char> = BTreeSet::new();
    for line in ranges {
        let mut columns = line.split(',');
        let first = character(columns.next().unwrap());
        unseen.extend(first..=character(columns.next().unwrap()));
    }
    let between = |it: char| Label::new(&format!("a{it}b"));
    assert!(unseen.len() > 100_000, "the list was read");
    for it in unseen {
        let refusal = between(it).err();
        let is_let_through = matches!(it, '\u{200c}' | '\u{200d}');
        let named = (!is_let_through).then_some(LabelRefusal::UnseenCharacter);
        assert_eq!(refusal, named, "{:x}", it as u32);
    }
}
