//! The style sheet's colours, held to the contrast that the Web Content Accessibility Guidelines 2.2
//! ask for: 4.5 to 1 for text (success criterion 1.4.3), 3 to 1 for parts and their states (1.4.11).
//! Relative luminance and contrast ratio are computed as those guidelines define them.

const TOKENS: &str = include_str!("../../styles/tokens.css");

/// Text, and every ground it stands on.
const TEXT: [(&str, &[&str]); 10] = [
    ("ink", &["paper", "sheet", "brass-pale"]),
    ("ink-soft", &["paper", "sheet"]),
    ("brass", &["paper", "sheet"]),
    ("act", &["paper", "sheet"]),
    ("act-ink", &["act", "act-deep"]),
    ("plate-ink", &["brass-plate"]),
    ("paper", &["ink"]),
    ("kept", &["paper", "sheet"]),
    ("doubt", &["paper", "sheet"]),
    ("away", &["paper", "sheet"]),
];

/// Borders, marks and strokes that carry meaning, and what they stand on.
const PARTS: [(&str, &[&str]); 6] = [
    ("ink", &["paper", "sheet", "brass-pale", "leather"]),
    ("edge", &["paper", "sheet"]),
    ("brass", &["paper", "sheet"]),
    ("away", &["paper", "sheet", "brass-pale"]),
    ("plate-ink", &["brass-plate"]),
    ("focus", &["paper", "sheet"]),
];

#[derive(Clone, Copy, Debug)]
enum Scheme {
    Light,
    Dark,
}

/// A colour's relative luminance.
fn luminance(hex: &str) -> Option<f64> {
    let channel = |at: usize| {
        let value = u8::from_str_radix(hex.get(at..at + 2)?, 16).ok()?;
        let share = f64::from(value) / 255.0;
        Some(if share <= 0.04045 {
            share / 12.92
        } else {
            ((share + 0.055) / 1.055).powf(2.4)
        })
    };
    Some(0.2126 * channel(1)? + 0.7152 * channel(3)? + 0.0722 * channel(5)?)
}

fn contrast(one: f64, other: f64) -> f64 {
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// The luminance of a token: the first time it is set in the scheme's own part of the file.
fn token(name: &str, scheme: Scheme) -> Option<f64> {
    let (light, rest) = TOKENS.split_once("@media (prefers-color-scheme: dark) {")?;
    let (dark, _) = rest.split_once("@media")?;
    let part = match scheme {
        Scheme::Light => light,
        Scheme::Dark => dark,
    };
    let value = part.split_once(&format!("--{name}: "))?.1;
    luminance(value.split_once(';')?.0)
}

/// Every pair that falls short of `least`, with its ratio.
fn short_of(least: f64, pairs: &[(&str, &[&str])]) -> Vec<String> {
    let mut short = Vec::new();
    for scheme in [Scheme::Light, Scheme::Dark] {
        for (name, grounds) in pairs {
            for ground in *grounds {
                let ratio = token(name, scheme)
                    .zip(token(ground, scheme))
                    .map_or(0.0, |(one, other)| contrast(one, other));
                println!("{scheme:?} {name} on {ground}: {ratio:.2}");
                if ratio < least {
                    short.push(format!("{scheme:?} {name} on {ground}: {ratio:.2}"));
                }
            }
        }
    }
    short
}

#[test]
fn text_stands_out_by_at_least_four_and_a_half() {
    assert_eq!(short_of(4.5, &TEXT), Vec::<String>::new());
}

#[test]
fn parts_stand_out_by_at_least_three() {
    assert_eq!(short_of(3.0, &PARTS), Vec::<String>::new());
}

/// Published values: black on white is 21 to 1; #767676 on white is the well-known least grey, 4.54.
#[test]
fn contrast_equals_published_values() {
    let ratio = |one, other| {
        luminance(one)
            .zip(luminance(other))
            .map(|(a, b)| contrast(a, b))
    };
    assert!(ratio("#000000", "#ffffff").is_some_and(|ratio| (ratio - 21.0).abs() < 1e-9));
    assert!(ratio("#767676", "#ffffff").is_some_and(|ratio| (ratio - 4.54).abs() < 0.005));
}

#[test]
fn a_pair_that_falls_short_is_found() {
    assert_eq!(short_of(4.5, &[("line", &["paper"])]).len(), 2);
    assert_eq!(short_of(4.5, &[("no-such-token", &["paper"])]).len(), 2);
}
