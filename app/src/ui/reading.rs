//! A page to read, from its words.

use yew::prelude::*;

use crate::copy::{Block, PageWords, site};

/// Heading, opening line and blocks.
pub fn reading(words: &PageWords) -> Html {
    html! {
        <>
            <h1 tabindex="-1">{ words.title }</h1>
            <p class="lede">{ words.lede }</p>
            { for words.blocks.iter().map(block) }
        </>
    }
}

/// The same as a part of a page, under a heading with this id.
pub fn reading_part(words: &PageWords, id: &'static str) -> Html {
    html! {
        <>
            <h2 {id}>{ words.title }</h2>
            <p>{ words.lede }</p>
            { for words.blocks.iter().map(block) }
        </>
    }
}

fn block(block: &Block) -> Html {
    match *block {
        Block::Heading(text) => html! { <h2>{ text }</h2> },
        Block::Paragraph(text) => html! { <p>{ text }</p> },
        Block::List(items) => html! { <ul>{ for items.iter().map(item) }</ul> },
        Block::Steps(items) => html! { <ol class="steps">{ for items.iter().map(item) }</ol> },
        Block::Caution(text) => html! {
            <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ text }</p>
        },
        Block::Figure(figure) => super::figure::figure(figure),
        Block::Source(source) => html! { <p class="src">{ super::source_line(source) }</p> },
        Block::Regions => super::regions::regions(),
    }
}

fn item(text: &&'static str) -> Html {
    html! { <li>{ *text }</li> }
}
