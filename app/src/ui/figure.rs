//! The drawings of the pages to read, each with its caption.

use yew::prelude::*;

use crate::copy::{self, Figure, FigureWords, Term, site};
use crate::drawing::{DrawnPattern, KeyDrawing, KeyParts, NumberedCuts, Part, Stamp};

/// A drawing in its frame; nothing where none is drawn yet.
pub fn figure(figure: Figure) -> Html {
    let words = copy::figure(figure);
    match drawn(figure, &words) {
        Some(drawing) => html! {
            <figure class="plate">
                { drawing }
                <figcaption>{ words.caption }</figcaption>
            </figure>
        },
        None => html! {},
    }
}

fn drawn(figure: Figure, words: &FigureWords) -> Option<Html> {
    let FigureWords { title, desc, .. } = *words;
    let drawing = match figure {
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
        Figure::CopiesOfCopies => return None,
    };
    Some(drawing)
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
