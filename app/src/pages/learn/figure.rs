//! The drawings of the pages to read, each with its caption.

use self_check_core::hand::Copying;
use yew::prelude::*;

use crate::copy::{self, Figure, FigureWords, Term, site};
use crate::drawing::{Bar, Bars, DrawnPattern, KeyDrawing, KeyParts, NumberedCuts, Part, Stamp};

/// A drawing in its frame.
pub fn figure(figure: Figure) -> Html {
    let words = copy::figure(figure);
    html! {
        <figure class="plate">
            { drawn(figure, &words) }
            <figcaption>{ words.caption }</figcaption>
        </figure>
    }
}

fn drawn(figure: Figure, words: &FigureWords) -> Html {
    let FigureWords { title, desc, .. } = *words;
    match figure {
        Figure::PartsOfAKey => html! { <KeyParts {title} {desc} parts={parts()} /> },
        Figure::CutsAndNumbers => html! { <NumberedCuts {title} {desc} under={letters()} /> },
        Figure::StampAndKey => html! {
            <div class="pair">
                <KeyDrawing {title} {desc} stamp={STAMPED} frame=true />
                <KeyDrawing />
            </div>
        },
        Figure::HiddenCut => html! {
            <NumberedCuts {title} {desc} pattern={DrawnPattern::HIDDEN_CUT} />
        },
        Figure::CopiesOfCopies => html! { <Bars {title} {desc} bars={copies()} /> },
    }
}

/// Copies each cut from the one before, and how many of a hundred still fit.
fn copies() -> Vec<Bar> {
    let cuts = DrawnPattern::DEMONSTRATION.depths().len() as u8;
    (1..=5)
        .map(|generation| {
            let share = Copying::ORDINARY
                .chance_all_cuts_fit(generation, cuts)
                .get();
            Bar {
                share,
                above: format!("{:.0}", 100.0 * share).into(),
                below: site::copy_number(generation).into(),
            }
        })
        .collect()
}

const STAMPED: Stamp = Stamp::Digits(5);

fn parts() -> Vec<(Part, AttrValue)> {
    let named = |part, term| (part, AttrValue::from(copy::term(term).name));
    vec![
        named(Part::Bow, Term::Bow),
        named(Part::Shoulder, Term::Shoulder),
        named(Part::Blade, Term::Blade),
        named(Part::Cut, Term::Cut),
        (Part::Groove, site::GROOVE.into()),
        (Part::Tip, site::TIP.into()),
    ]
}

/// An invented numbering: a letter for each depth of the demonstration key, deeper cuts later in
/// the alphabet. It is nobody's code.
fn letters() -> Vec<AttrValue> {
    DrawnPattern::DEMONSTRATION
        .depths()
        .iter()
        .map(|&depth| char::from(b'A' + depth).to_string().into())
        .collect()
}
