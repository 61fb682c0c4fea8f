//! A short own word for a door or a person, that cannot hold a code.

mod numerals;

use core::fmt;

use numerals::digits_in;

/// A label of at most [`Label::MOST_CHARACTERS`] characters, of which at most
/// [`Label::MOST_DIGITS`] are digits, in any script.
///
/// A key's code has at least three digits, an address and a telephone number as many. Both limits
/// are our assumption: with four digits allowed, a short code would fit.
///
/// ```
/// use self_check_core::household::{Label, LabelRefusal};
/// assert_eq!(Label::new(" garden room ")?.as_str(), "garden room");
/// assert!(Label::new("flat 12").is_ok());
/// assert_eq!(Label::new("4 7 1"), Err(LabelRefusal::TooManyDigits));
/// assert_eq!(Label::new("٤٧١"), Err(LabelRefusal::TooManyDigits));
/// # Ok::<(), LabelRefusal>(())
/// ```
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Label(Box<str>);

/// Why a label is refused. It never carries what was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LabelRefusal {
    /// Nothing that is seen: no character, or blank ones alone.
    Empty,
    /// More than [`Label::MOST_CHARACTERS`] characters.
    TooLong,
    /// More than [`Label::MOST_DIGITS`] digits: it could be a code.
    TooManyDigits,
    /// It holds a character that is not seen: a line break, a control or formatting character.
    UnseenCharacter,
}

impl Label {
    /// The most characters (Unicode scalar values) a label has.
    pub const MOST_CHARACTERS: usize = 24;

    /// The most digits a label has.
    pub const MOST_DIGITS: usize = 2;

    /// A label of `text` without the spaces around it.
    pub fn new(text: &str) -> Result<Self, LabelRefusal> {
        let text = text.trim();
        if text.chars().all(is_blank) {
            return Err(LabelRefusal::Empty);
        }
        if text.chars().nth(Self::MOST_CHARACTERS).is_some() {
            return Err(LabelRefusal::TooLong);
        }
        if text.chars().any(is_unseen) {
            return Err(LabelRefusal::UnseenCharacter);
        }
        if text.chars().map(digits_in).sum::<usize>() > Self::MOST_DIGITS {
            return Err(LabelRefusal::TooManyDigits);
        }
        Ok(Self(text.into()))
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// Shows that there is a label, not what it says: own words belong in no log.
impl fmt::Debug for Label {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Label(..)")
    }
}

impl fmt::Display for LabelRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Empty => "empty label",
            Self::TooLong => "label too long",
            Self::TooManyDigits => "too many digits in label",
            Self::UnseenCharacter => "unseen character in label",
        })
    }
}

impl core::error::Error for LabelRefusal {}

/// Whether a character is not seen, or turns the reading order: nothing that a label needs, and
/// room to hide a number in. Controls, formatting characters, private use, separators and what else
/// Unicode has programs ignore; but joiners and variation selectors, which some scripts need, are let
/// through.
fn is_unseen(character: char) -> bool {
    character.is_control()
        || matches!(character,
            '\u{ad}' | '\u{34f}' | '\u{600}'..='\u{605}' | '\u{61c}' | '\u{6dd}' | '\u{70f}'
            | '\u{890}' | '\u{891}' | '\u{8e2}'
            | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}' | '\u{180b}'..='\u{180f}'
            | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{3164}' | '\u{feff}' | '\u{ffa0}'
            | '\u{fff0}'..='\u{ffff}' | '\u{e000}'..='\u{f8ff}'
            | '\u{110bd}' | '\u{110cd}' | '\u{13430}'..='\u{1343f}'
            | '\u{1bca0}'..='\u{1bca3}' | '\u{1d173}'..='\u{1d17a}'
            | '\u{e0000}'..='\u{10ffff}')
}

/// Whether a character leaves nothing to be seen where it stands alone: spaces, the joiners and
/// variation selectors that are let through, and two signs that are blank by design.
fn is_blank(character: char) -> bool {
    character.is_whitespace()
        || matches!(
            character,
            '\u{200c}' | '\u{200d}' | '\u{fe00}'..='\u{fe0f}' | '\u{2800}' | '\u{1d159}'
        )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn label_at_the_limits_is_taken() {
        assert!(Label::new(&"é".repeat(24)).is_ok());
        assert_eq!(Label::new(&"é".repeat(25)), Err(LabelRefusal::TooLong));
        assert!(Label::new("room 42").is_ok());
        assert_eq!(Label::new("room 421"), Err(LabelRefusal::TooManyDigits));
        for blank in [" \u{3000} ", "\u{200d}", "\u{2800}\u{200c}", "\u{fe0f}"] {
            assert_eq!(Label::new(blank), Err(LabelRefusal::Empty));
        }
    }

    #[test]
    fn label_with_three_digits_of_any_script_is_refused() {
        for text in [
            "१२३",
            "๑๒๓",
            "１２３",
            "𝟏𝟐𝟑",
            "①②③",
            "¹²³",
            "₁₂₃",
            "ⅠⅡⅢ",
            "½¼¾",
            "三五二",
            "1٢3",
            "⑫⑫",
            "1️⃣2️⃣3️⃣",
            "㍢㏠",
            "廿三卅四",
            "十十",
            "\u{f9d1}\u{f9d1}\u{f9d1}",
            "𒐀𒐁𒐂",
        ] {
            assert_eq!(Label::new(text), Err(LabelRefusal::TooManyDigits), "{text}");
        }
    }

    #[test]
    fn label_with_what_is_not_seen_is_refused() {
        for text in [
            "a\nb",
            "a\u{202e}b",
            "a\u{200b}b",
            "a\u{e0031}b",
            "a\u{e000}b",
        ] {
            assert_eq!(Label::new(text), Err(LabelRefusal::UnseenCharacter));
        }
        assert!(Label::new("می\u{200c}خواهم").is_ok());
    }

    #[test]
    fn refusal_and_debug_never_tell_the_text() {
        let refusal = Label::new("4711 secret").map_err(|refusal| format!("{refusal} {refusal:?}"));
        assert!(refusal.is_err_and(|text| !text.contains("4711") && !text.contains("secret")));
        let label = Label::new("workbench").map(|label| format!("{label:?}"));
        assert!(label.is_ok_and(|text| !text.contains("workbench")));
    }
}
