//! Short pages to read.

mod figure;
mod regions;

use self_check_core::sources::{self, Source};
use yew::prelude::*;

use crate::copy::{self, Block, LearnPage, Term, picture, site};
use crate::route::Route;
use crate::ui::{reading_with, source_line, use_page};
use figure::figure;
use regions::regions;

/// The list of pages.
#[component]
pub fn Learn() -> Html {
    use_page(site::LEARN.to_owned());
    html! {
        <div class="narrow">
            <h1 tabindex="-1">{ site::LEARN }</h1>
            <p class="lede">{ site::LEARN_LEDE }</p>
            <ul class="contents">
                <li>
                    <a href={Route::Distance}>
                        <b>{ site::DISTANCE }</b><span>{ site::DISTANCE_LEDE }</span>
                    </a>
                </li>
                <li>
                    <a href={Route::Picture}>
                        <b>{ picture::TITLE }</b><span>{ picture::LEDE }</span>
                    </a>
                </li>
                { for LearnPage::ALL.into_iter().enumerate().map(|(index, page)| entry(index, page)) }
            </ul>
            <section aria-labelledby="words">
                <h2 id="words">{ site::WORDS }</h2>
                <dl class="terms">{ for Term::ALL.into_iter().map(term) }</dl>
            </section>
            <details>
                <summary>{ site::SOURCES }</summary>
                <ul class="sources">{ for every_source().map(source_item) }</ul>
            </details>
        </div>
    }
}

/// Everything that a figure, a rule or a note rests on.
fn every_source() -> impl Iterator<Item = &'static Source> {
    sources::ALL.iter().chain(sources::regional::ALL).copied()
}

fn source_item(source: &'static Source) -> Html {
    html! { <li key={source.id}>{ source_line(source) }</li> }
}

fn term(term: Term) -> Html {
    let words = copy::term(term);
    html! { <><dt>{ words.name }</dt><dd>{ words.meaning }</dd></> }
}

fn entry(index: usize, page: LearnPage) -> Html {
    let words = copy::learn(page);
    html! {
        <li key={index}>
            <a href={Route::LearnPage { n: index + 1 }}>
                <b>{ words.title }</b><span>{ words.lede }</span>
            </a>
        </li>
    }
}

/// Which page to read.
#[derive(Properties, PartialEq)]
pub struct ReadProps {
    /// Its number, from 1.
    pub n: usize,
}

/// One page, and the way to the next.
#[component]
pub fn Read(props: &ReadProps) -> Html {
    let n = props.n;
    let Some(&page) = n.checked_sub(1).and_then(|index| LearnPage::ALL.get(index)) else {
        return html! { <NoSuchPage /> };
    };
    html! { <ReadPage {page} {n} /> }
}

/// Leads from a number without a page to the list.
#[component]
fn NoSuchPage() -> Html {
    use_effect_with((), |()| Route::Learn.go_instead());
    html! {}
}

#[derive(Properties, PartialEq)]
struct ReadPageProps {
    page: LearnPage,
    n: usize,
}

#[component]
fn ReadPage(props: &ReadPageProps) -> Html {
    let words = copy::learn(props.page);
    use_page(words.title.to_owned());
    let next = LearnPage::ALL.get(props.n).map(|&page| copy::learn(page));
    html! {
        <article class="narrow prose">
            { reading_with(&words, apart) }
            <p class="row">
                if let Some(next) = next {
                    <a class="press" href={Route::LearnPage { n: props.n + 1 }}>
                        { site::next_page(next.title) }
                    </a>
                }
                <a class="plain" href={Route::Learn}>{ site::ALL_PAGES }</a>
            </p>
        </article>
    }
}

fn apart(block: &Block) -> Html {
    match block {
        Block::Figure(shown) => figure(*shown),
        Block::Regions => regions(),
        _ => html! {},
    }
}
