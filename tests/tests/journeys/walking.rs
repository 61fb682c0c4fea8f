//! How journeys answer questions: by the words a person sees.

use self_check_tests::{Page, Result};

/// The heading of the page.
pub async fn heading(page: &Page) -> Result<String> {
    let text = page
        .run("return document.querySelector('main h1')?.textContent ?? '';")
        .await?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

/// Waits for the page with this heading.
pub async fn arrive(page: &Page, wanted: &str) -> Result<()> {
    page.wait_until(&format!("the page “{wanted}” is there"), async || {
        Ok(heading(page).await? == wanted)
    })
    .await
}

/// Ticks one choice, whatever kind of box it has.
pub async fn tick(page: &Page, label: &str) -> Result<()> {
    for role in ["radio", "checkbox"] {
        if !page.all(role).await?.is_empty() {
            return page.click(role, label).await;
        }
    }
    Err(format!("there is nothing to tick, not even “{label}”").into())
}

/// Ticks these choices and goes on; waits until another page is there.
pub async fn answer(page: &Page, labels: &[&str]) -> Result<()> {
    let before = heading(page).await?;
    for label in labels {
        tick(page, label).await?;
    }
    // A page to read goes on by a link, a question by the button of its form.
    let role = if labels.is_empty() { "link" } else { "button" };
    page.click(role, "Continue").await?;
    page.wait_until(
        &format!("the page after “{before}” is there"),
        async || Ok(heading(page).await? != before),
    )
    .await
}

/// Answers "not sure" until the answers are to be looked over; returns the questions met.
pub async fn not_sure_to_the_end(page: &Page) -> Result<Vec<String>> {
    let mut met = Vec::new();
    loop {
        let now = heading(page).await?;
        if now == LOOK_OVER {
            return Ok(met);
        }
        met.push(now);
        // "Not sure" is the last line of every question, by whatever words.
        let boxes = [page.names("radio").await?, page.names("checkbox").await?].concat();
        let last: Vec<&str> = boxes.last().map(String::as_str).into_iter().collect();
        answer(page, &last).await?;
    }
}

/// From a fresh start page to the result of the example household.
pub async fn to_the_examples_result(page: &Page) -> Result<()> {
    page.open().await?;
    page.click("link", "Try it with an example").await?;
    arrive(page, LOOK_OVER).await?;
    page.click("link", "See the result").await?;
    page.wait_for_text("Take it along").await
}

/// From any page to the result of a check that tells of a feared person and of nothing else.
pub async fn to_the_safety_result(page: &Page) -> Result<()> {
    page.click("link", "House Key Self-Check").await?;
    page.click("link", "Worried about a person?").await?;
    arrive(page, "Your safety comes first").await?;
    not_sure_to_the_end(page).await?;
    page.click("link", "See the result").await?;
    page.wait_for_text("The key can wait").await
}

/// Unfolds everything that is folded.
pub async fn open_all(page: &Page) -> Result<()> {
    page.run("document.querySelectorAll('details').forEach(d => d.open = true);")
        .await?;
    Ok(())
}

/// Chooses the line with this value in the list with this id.
pub async fn choose_by_id(page: &Page, id: &str, value: &str) -> Result<()> {
    let script = format!(
        "const list = document.getElementById('{id}'); list.value = '{value}';
         list.dispatchEvent(new Event('change', {{ bubbles: true }}));
         return list.value;"
    );
    assert_eq!(page.run(&script).await?, value, "{id} has no such line");
    Ok(())
}

/// The box for "not sure" on every question.
pub const NOT_SURE: &str = "I am not sure";
/// The page before the result.
pub const LOOK_OVER: &str = "Look over your answers";
/// A calm household's answers from the second question on, in the order in which they are asked.
pub const CALM: [(&str, &[&str]); 11] = [
    ("What does the key open?", &["The door of my house"]),
    ("Who decides about this lock?", &["I do: I own the home"]),
    (
        "Has the lock been changed since you moved in or took it over?",
        &["Yes, and I know where each new key is"],
    ),
    (
        "Who has the new key, or has had it since the change?",
        &["I, and anyone who lives with me"],
    ),
    (
        "Do you know where every copy of the new key is?",
        &["Yes, I know where each one is"],
    ),
    ("What kind of key is it?", &["Cuts along one edge"]),
    ("Is anything stamped on the metal?", &["Nothing"]),
    (
        "Where is the new key carried and kept?",
        &["In a pocket or a closed bag"],
    ),
    (
        "Where could a picture of the new key be?",
        &["Nowhere that I know of"],
    ),
    (
        "If you lost the new key, what would show where it belongs?",
        &["Nothing"],
    ),
    (
        "How else is your door locked or opened?",
        &["A second lock with another key"],
    ),
];

/// Chooses a scene in the list of the distance page, by the first letters of its name.
pub async fn choose_scene(page: &Page, letters: &str) -> Result<()> {
    page.tab_to("combobox", "Choose a scene").await?;
    page.type_text(letters).await
}

/// Chooses a line of a list by its first letters, as a keyboard does.
pub async fn choose(page: &Page, list: &str, line: &str) -> Result<()> {
    page.tab_to("combobox", list).await?;
    page.type_text(line).await?;
    page.wait_until(&format!("{line:?} is chosen in {list:?}"), async || {
        let chosen = page
            .run("const list = document.activeElement; return list.options?.[list.selectedIndex]?.text ?? '';")
            .await?;
        Ok(chosen.as_str().unwrap_or_default().starts_with(line))
    })
    .await
}
