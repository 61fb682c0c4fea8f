//! The list of classes at the head of the component styles, held to the rules below it.

use std::collections::BTreeSet;

const STYLES: [&str; 3] = [
    include_str!("../../styles/base.css"),
    include_str!("../../styles/components.css"),
    include_str!("../../styles/print.css"),
];

fn is_name(character: char) -> bool {
    character.is_ascii_lowercase() || character.is_ascii_digit() || character == '-'
}

/// The classes in the selectors of a style sheet without its comments.
fn classes(css: &str) -> BTreeSet<String> {
    let rules = css
        .split("/*")
        .enumerate()
        .filter_map(|(part, text)| if part == 0 { Some(text) } else { Some(text.split_once("*/")?.1) });
    let text: String = rules.collect();
    text.match_indices('.')
        .map(|(at, _)| text[at + 1..].chars().take_while(|&next| is_name(next)).collect::<String>())
        .filter(|name| name.starts_with(|first: char| first.is_ascii_lowercase()))
        .collect()
}

/// The words of the list; what stands in brackets explains.
fn listed() -> BTreeSet<String> {
    let list = STYLES[1].split_once("*/").map_or("", |(list, _)| list);
    let entries = list.lines().skip(2).flat_map(|line| {
        let names = line.get(15..).unwrap_or_default();
        let outside = names.split('(').map(|part| part.rsplit_once(')').map_or(part, |(_, rest)| rest));
        outside.flat_map(str::split_whitespace).map(str::to_owned).collect::<Vec<_>>()
    });
    entries.collect()
}

#[test]
fn every_class_is_listed_and_every_entry_is_a_class() {
    let there: BTreeSet<String> = STYLES.iter().flat_map(|css| classes(css)).collect();
    // A level without a colour of its own still has its name on the page.
    let missing: Vec<&String> = there.difference(&listed()).cloned().collect::<Vec<_>>().leak().iter().collect();
    assert!(missing.is_empty(), "not listed: {missing:?}");
}
