//! Shapes of marking on the bow. A digit is a filled square and a letter an open triangle: no
//! drawing shows a code, not even an invented one.

use self_check_core::questions::Choice;
use yew::prelude::*;

use super::key::{BOW, BOW_CENTRE, EYE};
use super::path::{circle, polygon, rectangle};
use super::view::{Ink, draw};

/// The view box of a bow alone.
pub const VIEW: &str = "-25 -8 30 24.4";

/// A bow with this kind of marking; nothing for a choice of another question.
pub fn marking(choice: Choice) -> Option<Html> {
    let marks = match choice {
        Choice::NothingMarked => html! {},
        Choice::OneToThreeDigits => draw(Ink::Solid, row(&[Digit, Digit])),
        Choice::FourOrMoreDigits => draw(Ink::Solid, row(&[Digit, Digit, Digit, Digit, Digit])),
        Choice::LettersWithDigits => html! {
            <>
                { draw(Ink::Contour, row(&[Letter, Blank, Blank, Blank])) }
                { draw(Ink::Solid, row(&[Blank, Digit, Digit, Digit])) }
            </>
        },
        Choice::LettersOrPictureOnly => html! {
            <>
                { draw(Ink::Fine, LEAF) }
                { draw(Ink::Contour, row(&[Blank, Blank, Letter, Letter])) }
            </>
        },
        Choice::WordsAgainstCopying => draw(Ink::Solid, WORDS),
        Choice::WornMarking => draw(Ink::Ghost, row(&[Digit, Digit, Digit, Digit])),
        _ => return None,
    };
    Some(html! {
        <>
            { draw(Ink::Metal, "M-2 0H5V8.4H-2Z") }
            { draw(Ink::Metal, BOW) }
            { draw(Ink::Hole, circle(EYE.0, EYE.1)) }
            { marks }
        </>
    })
}

use Character::{Blank, Digit, Letter};

#[derive(Clone, Copy)]
enum Character {
    Digit,
    Letter,
    Blank,
}

/// Where the marking stands: between the eye and the shoulder.
const MIDDLE: (f64, f64) = (BOW_CENTRE.0 + 4.2, BOW_CENTRE.1);
const STEP: f64 = 2.5;
const WIDTH: f64 = 1.7;
const TALL: f64 = 2.6;

const WORDS: &str = "M-14.6 -.1H-10.8V1.1H-14.6ZM-9.6 -.1H-4.6V1.1H-9.6ZM-14.6 3.6H-12V4.8H-14.6ZM-10.8 3.6H-4V4.8H-10.8ZM-14 7.3H-8.6V8.5H-14ZM-7.4 7.3H-5.2V8.5H-7.4Z";
const LEAF: &str =
    "M-14.8 6.4C-14.8 2.8 -12.6 1.6 -9.8 1.6 -9.8 5 -11.6 6.6 -14.8 6.4ZM-14.8 6.4L-11.4 3.2";

fn row(characters: &[Character]) -> String {
    let left = MIDDLE.0 - (STEP * (characters.len() as f64 - 1.0) + WIDTH) / 2.0;
    let top = MIDDLE.1 - TALL / 2.0;
    let mut d = String::new();
    for (index, character) in characters.iter().enumerate() {
        let x = left + STEP * index as f64;
        match character {
            Digit => d.push_str(&rectangle((x, top), WIDTH, TALL)),
            Letter => d.push_str(&polygon(&[
                (x, top + TALL),
                (x + WIDTH / 2.0, top),
                (x + WIDTH, top + TALL),
            ])),
            Blank => {}
        }
    }
    d
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_is_centred_and_holds_only_what_it_draws() {
        let one = row(&[Digit]);
        assert_eq!(one.matches('Z').count(), 1);
        assert_eq!(row(&[Digit, Blank, Letter]).matches('Z').count(), 2);
        // Five digits stay between the eye's edge and the shoulder.
        let half = (STEP * 4.0 + WIDTH) / 2.0;
        assert!(MIDDLE.0 - half > -15.8 && MIDDLE.0 + half < -2.0);
    }
}
