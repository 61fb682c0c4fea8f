//! A page to read, from its words.

use yew::prelude::*;

use crate::copy::{Block, PageWords, site};

/// What shows a block that not every page has: a drawing, or the rows of regions.
pub type Apart = fn(&Block) -> Html;

/// Heading, opening line and blocks, for a page that is all words.
pub fn reading(words: &PageWords) -> Html {
    reading_with(words, |_| html! {})
}

/// The same for a page with blocks that are shown in its own way. The two are apart so that a
/// program without drawings to read by does not carry them.
pub fn reading_with(words: &PageWords, apart: Apart) -> Html {
    html! {
        <>
            <h1 tabindex="-1">{ words.title }</h1>
            <p class="lede">{ words.lede }</p>
            { for words.blocks.iter().map(|part| block(part, apart)) }
        </>
    }
}

/// The same as a part of a page, under a heading with this id.
pub fn reading_part(words: &PageWords, id: &'static str) -> Html {
    html! {
        <>
            <h2 {id}>{ words.title }</h2>
            <p>{ words.lede }</p>
            { for words.blocks.iter().map(|part| block(part, |_| html! {})) }
        </>
    }
}

fn block(block: &Block, apart: Apart) -> Html {
    match *block {
        Block::Heading(text) => html! { <h2>{ text }</h2> },
        Block::Paragraph(text) => html! { <p>{ text }</p> },
        Block::List(items) => html! { <ul>{ for items.iter().map(item) }</ul> },
        Block::Steps(items) => html! { <ol class="steps">{ for items.iter().map(item) }</ol> },
        Block::Caution(text) => html! {
            <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ text }</p>
        },
        Block::Source(source) => html! { <p class="src">{ super::source_line(source) }</p> },
        Block::Figure(_) | Block::Regions => apart(block),
    }
}

fn item(text: &&'static str) -> Html {
    html! { <li>{ *text }</li> }
}
