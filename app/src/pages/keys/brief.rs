//! The page for the locksmith: what may stand on it, and the page itself, which prints on one sheet.

mod sheet;
mod ticks;

use self_check_core::household::brief::Ask;
use self_check_core::household::{brief, plan};
use yew::prelude::*;

use super::{BRIEF, OverviewProps, example_note, on_paper, pages, paper_note, use_keys_page};
use crate::browser;
use crate::copy::en::household::brief as words;
use crate::ui::use_household;
use sheet::sheet;
use ticks::ticks;

/// The page. Where safety comes first there is none, and nothing prints.
#[component]
pub fn BriefPage(props: &OverviewProps) -> Html {
    use_keys_page(words::TITLE);
    let state = use_household();
    let overview = &props.overview;
    let print = Callback::from(|_: MouseEvent| browser::print());
    let household = state.household().clone();
    let made = use_memo(
        (household, state.choices_to_plan(), state.brief),
        |(household, choices, ticked)| brief(household, &plan(household, *choices), *ticked),
    );
    html! {
        <article class={classes!("brief-page", on_paper(&state))}>
            { paper_note(&state) }
            <div class="narrow screen-only">
                { example_note(&state) }
                <h1 tabindex="-1">{ words::TITLE }</h1>
                { match &*made {
                    Err(_) => html! { <p class="caution">{ words::SAFETY }</p> },
                    Ok(made) if made.is_empty() && made.to_open.is_empty() => html! { <p>{ words::NOTHING }</p> },
                    Ok(made) => html! {
                        <>
                            <p class="lede">{ words::LEDE }</p>
                            { ticks(&state, made) }
                            if !made.is_empty() {
                                <details>
                                    <summary>{ words::TRADE_WORDS }</summary>
                                    <dl class="facts">
                                        { for words::WORDS.iter().map(|(word, means)| html! {
                                            <><dt>{ word }</dt><dd>{ means }</dd></>
                                        }) }
                                    </dl>
                                </details>
                            }
                            if made.is_empty() {
                                <p>{ words::NOTHING }</p>
                            } else {
                                if made.opened > 0 && !made.to_open.is_empty() {
                                    <p class="note">{ words::ASK_WHO_DECIDES }</p>
                                }
                                if made.asked().any(|ask| ask == Ask::InsurersGrade) {
                                    <p class="note">{ words::INSURER }</p>
                                }
                                <p class="note">{ words::PRINT_CAUTION }</p>
                                <p class="row">
                                    <button type="button" class="press" onclick={print}>{ words::PRINT }</button>
                                </p>
                            }
                        </>
                    },
                } }
            </div>
            { match &*made {
                Ok(made) if !made.is_empty() => sheet(made, overview),
                _ => html! {},
            } }
            { pages(&state, Some(BRIEF)) }
        </article>
    }
}
