//! The list of classes at the head of the component styles, held to the rules below it.

use std::collections::BTreeSet;

const STYLES: [&str; 4] = [
    include_str!("../../styles/base.css"),
    include_str!("../../styles/components.css"),
    include_str!("../../styles/rooms.css"),
    include_str!("../../styles/print.css"),
];

fn is_name(character: char) -> bool {
    character.is_ascii_lowercase() || character.is_ascii_digit() || character == '-'
}

/// The classes in the selectors of a style sheet without its comments.
fn classes(css: &str) -> BTreeSet<String> {
    let parts = css
        .split("/*")
        .map(|part| part.split_once("*/").map_or(part, |(_, rules)| rules));
    let text: String = parts.collect();
    text.match_indices('.')
        .map(|(at, _)| {
            text[at + 1..]
                .chars()
                .take_while(|&next| is_name(next))
                .collect::<String>()
        })
        .filter(|name| name.starts_with(|first: char| first.is_ascii_lowercase()))
        .collect()
}

/// The words of the list; what stands in brackets explains. Each line begins with the name of a part
/// of the page, or as many spaces.
fn listed() -> BTreeSet<String> {
    const MARGIN: usize = 15;
    let list = STYLES[1].split_once("*/").map_or("", |(list, _)| list);
    let lines = list.lines().skip(2).filter_map(|line| line.get(MARGIN..));
    let mut depth = 0;
    let names: String = lines
        .flat_map(|line| line.chars().chain([' ']))
        .filter(|&character| {
            depth += i32::from(character == '(');
            let is_outside = depth == 0;
            depth -= i32::from(character == ')');
            is_outside
        })
        .collect();
    names.split_whitespace().map(str::to_owned).collect()
}

#[test]
fn every_class_is_listed_and_every_entry_is_a_class() {
    let there: BTreeSet<String> = STYLES.iter().flat_map(|css| classes(css)).collect();
    let listed = listed();
    assert!(there.len() > 100, "the style sheets were not read");
    assert_eq!(
        there.difference(&listed).collect::<Vec<_>>(),
        Vec::<&String>::new(),
        "not listed"
    );
    assert_eq!(
        listed.difference(&there).collect::<Vec<_>>(),
        Vec::<&String>::new(),
        "no such class"
    );
}
