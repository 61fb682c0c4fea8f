//! One question. Choosing never moves on; "Continue" does.

use self_check_core::questions::{Choice, Question};
use yew::prelude::*;

use crate::copy::{self, site};
use crate::drawing::{choice_drawing, is_drawn_by_choices, question_drawing};
use crate::route::Route;
use crate::session::{Act, SessionHandle};
use crate::ui::{
    Length, error_summary, go_to_error_summary, page_links, progress, use_page, use_session,
};

/// Which question, and where it stands.
#[derive(Properties, PartialEq)]
pub struct QuestionPageProps {
    /// Its place in the path.
    pub n: usize,
    /// How many pages the path has.
    pub length: Length,
    /// The question.
    pub question: Question,
}

/// One question, its drawing, its choices and why it is asked.
#[component]
pub fn QuestionPage(props: &QuestionPageProps) -> Html {
    let QuestionPageProps {
        n,
        length,
        question,
    } = *props;
    let session = use_session();
    let tries = use_state(|| 0_usize);
    let has_error = *tries > 0 && !session.ticks.is_answered(question);
    use_page(page_title(n, has_error));
    use_effect_with(*tries, |&tries| {
        if tries > 0 {
            go_to_error_summary();
        }
    });
    let words = copy::question_on(question, &session.relevant());
    let onsubmit = on_continue(session.clone(), tries.clone(), n, question);
    html! {
        <div class="narrow">
            if has_error {
                { error_summary(site::nothing_chosen(question), choice_id(0).into()) }
            }
            { progress(n, length) }
            <form {onsubmit} novalidate=true autocomplete="off">
                <fieldset aria-describedby={described_by(has_error)}>
                    <legend><h1 class="question-title" tabindex="-1">{ words.title }</h1></legend>
                    <p id="hint" class="hint">
                        { words.hint }
                        if question.row().takes_several {
                            { " " }{ site::TICK_ALL }
                        }
                    </p>
                    if !is_drawn_by_choices(question) {
                        <figure class="plate ask-figure">
                            { question_drawing(question, words.drawing_title, words.drawing_desc) }
                            if let Some(words) = copy::caption(question) {
                                <figcaption>{ words }</figcaption>
                            }
                        </figure>
                    }
                    if has_error {
                        <p id="error" class="error">{ site::nothing_chosen(question) }</p>
                    }
                    <div class="opts">
                        { for question.row().choices.iter().enumerate().map(|(index, &choice)| {
                            option_row(&session, index, choice)
                        }) }
                        { not_sure_row(&session, question, words.not_sure) }
                    </div>
                </fieldset>
                <details class="why">
                    <summary>{ site::WHY_WE_ASK }</summary>
                    <p>{ words.why }</p>
                </details>
                <p class="row">
                    <button type="submit" class="press">{ site::CONTINUE }</button>
                    { page_links(&session, n) }
                </p>
            </form>
        </div>
    }
}

fn page_title(n: usize, has_error: bool) -> String {
    let title = site::step_title(n + 1);
    if has_error {
        site::error_page_title(&title)
    } else {
        title
    }
}

/// The hint is read first, then what is wrong.
fn described_by(has_error: bool) -> &'static str {
    if has_error { "hint error" } else { "hint" }
}

/// Ids count the rows: an id that named a choice would show up in what the browser remembers.
fn choice_id(index: usize) -> String {
    format!("choice-{index}")
}

fn option_row(session: &SessionHandle, index: usize, choice: Choice) -> Html {
    let words = copy::choice(choice);
    let onchange = {
        let session = session.clone();
        Callback::from(move |_: Event| session.dispatch(Act::Tick(choice)))
    };
    row(Row {
        index,
        takes_several: choice.question().row().takes_several,
        is_ticked: session.ticks.has(choice),
        class: "opt",
        label: words.label,
        hint: words.hint,
        drawing: choice_drawing(choice),
        onchange,
    })
}

fn not_sure_row(session: &SessionHandle, question: Question, label: &'static str) -> Html {
    let onchange = {
        let session = session.clone();
        Callback::from(move |_: Event| session.dispatch(Act::TickNotSure(question)))
    };
    row(Row {
        index: question.row().choices.len(),
        takes_several: question.row().takes_several,
        is_ticked: session.ticks.is_not_sure(question),
        class: "opt opt-apart",
        label,
        hint: Some(copy::not_sure_hint(question, &session.relevant())),
        drawing: html! {},
        onchange,
    })
}

struct Row {
    index: usize,
    takes_several: bool,
    is_ticked: bool,
    class: &'static str,
    label: &'static str,
    hint: Option<&'static str>,
    drawing: Html,
    onchange: Callback<Event>,
}

fn row(row: Row) -> Html {
    let kind = if row.takes_several {
        "checkbox"
    } else {
        "radio"
    };
    html! {
        <label key={row.index} class={row.class}>
            <input id={choice_id(row.index)} type={kind} name="choice" value={row.index.to_string()}
                checked={row.is_ticked} onchange={row.onchange} autocomplete="off" />
            <span>
                <b>{ row.label }</b>
                if let Some(hint) = row.hint {
                    <small>{ hint }</small>
                }
            </span>
            { row.drawing }
        </label>
    }
}

fn on_continue(
    session: SessionHandle,
    tries: UseStateHandle<usize>,
    n: usize,
    question: Question,
) -> Callback<SubmitEvent> {
    Callback::from(move |event: SubmitEvent| {
        event.prevent_default();
        if !session.ticks.is_answered(question) {
            tries.set(*tries + 1);
            return;
        }
        let next = session.confirmed(question).after(n);
        session.dispatch(Act::Confirm(question));
        Route::Check { n: next }.go();
    })
}
