//! The second program: fetched when one of its pages is first opened, at home in the frame of the first, and told apart
//! by nobody who does not watch the network.

use self_check_tests::{Look, Page, Result, journey, troubled_journey};

use crate::walking::{
    LOOK_OVER, arrive, choose_scene, heading, not_sure_to_the_end, to_the_examples_result,
};

const START: &str = "How private is your key?";
const MISSING: &str = "This page could not be loaded";
const DISTANCE: &str = "Who could read it from where";

#[test]
fn second_part_is_fetched_once_and_only_for_its_own_pages() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        to_the_examples_result(page).await?;
        page.click("link", "Sharpen the number").await?;
        arrive(page, "Count along the key").await?;
        page.click("link", "House Key Self-Check").await?;
        arrive(page, START).await?;
        page.wait_for_text("your browser has listed no request.")
            .await?;
        assert_eq!(files_of_second_part(page).await?, Vec::<String>::new());

        page.click("link", "Learn").await?;
        arrive(page, "Learn").await?;
        page.click("link", DISTANCE).await?;
        arrive(page, DISTANCE).await?;
        page.click("link", "House Key Self-Check").await?;
        arrive(page, START).await?;
        page.wait_for_text("no request but for the second part of this site.")
            .await?;
        page.click("link", "How to check this page").await?;
        arrive(page, "How to check this page").await?;
        page.wait_for_text("no request but for the second part of this site.")
            .await?;
        page.click("link", "Learn").await?;
        arrive(page, "Learn").await?;
        let files = files_of_second_part(page).await?;
        let mut endings: Vec<&str> = files
            .iter()
            .filter_map(|file| file.rsplit('.').next())
            .collect();
        endings.sort_unstable();
        assert_eq!(endings, ["css", "js", "wasm"], "{files:?}");
        Ok(())
    })
}

async fn files_of_second_part(page: &Page) -> Result<Vec<String>> {
    let record = page.record().await?;
    let requests = record.for_second_part(&page.site).into_iter();
    Ok(requests.map(|request| request.url.clone()).collect())
}

#[test]
fn title_focus_and_scroll_follow_across_the_programs() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.run("scrollTo(0, document.body.scrollHeight);").await?;
        // The first time it is fetched, the second time it is there already.
        for _ in 0..2 {
            page.click("link", "Learn").await?;
            at_the_top_of(page, "Learn").await?;
            page.run("scrollTo(0, document.body.scrollHeight);").await?;
            page.click("link", "House Key Self-Check").await?;
            at_the_top_of(page, START).await?;
        }
        page.back().await?;
        at_the_top_of(page, "Learn").await?;
        page.back().await?;
        at_the_top_of(page, START).await?;
        page.forward().await?;
        at_the_top_of(page, "Learn").await
    })
}

/// The page with this heading is shown from its top, has it in its title and the focus on it.
async fn at_the_top_of(page: &Page, wanted: &str) -> Result<()> {
    arrive(page, wanted).await?;
    page.wait_until(&format!("focus is on the heading “{wanted}”"), async || {
        let focused = page
            .run("return document.activeElement.matches('main h1') ? document.activeElement.textContent : '';")
            .await?;
        Ok(focused == wanted)
    })
    .await?;
    assert_eq!(
        page.title().await?,
        format!("{wanted} · House Key Self-Check")
    );
    assert_eq!(page.run("return scrollY;").await?, 0, "at “{wanted}”");
    Ok(())
}

#[test]
fn first_page_of_all_leaves_focus_at_the_top() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/learn").await?;
        arrive(page, "Learn").await?;
        assert_eq!(
            page.run("return document.activeElement === document.body;")
                .await?,
            true
        );
        assert_eq!(page.title().await?, "Learn · House Key Self-Check");
        Ok(())
    })
}

#[test]
fn second_program_keeps_what_it_holds_while_another_page_is_shown() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/distance").await?;
        arrive(page, DISTANCE).await?;
        choose_scene(page, "Doorbell").await?;
        page.wait_for_text("Doorbell camera,").await?;
        page.click("link", "House Key Self-Check").await?;
        arrive(page, START).await?;
        page.click("link", "Try it with an example").await?;
        arrive(page, LOOK_OVER).await?;
        page.run("location.hash = '#/distance';").await?;
        arrive(page, DISTANCE).await?;
        page.wait_for_text("Doorbell camera,").await?;
        // And the first program has kept its answers meanwhile.
        page.back().await?;
        arrive(page, LOOK_OVER).await
    })
}

#[test]
fn what_cannot_be_fetched_is_told_and_tried_again() -> Result<()> {
    for missing in ["*/rooms-*.js", "*/rooms-*.wasm", "*/rooms-*.css"] {
        troubled_journey(Look::PHONE, async |page| {
            to_the_examples_result(page).await?;
            let result = heading(page).await?;
            page.block(&[missing]).await?;
            page.click("link", "Learn").await?;
            arrive(page, MISSING).await?;
            assert_eq!(
                page.title().await?,
                format!("{MISSING} (example) · House Key Self-Check")
            );
            page.wait_for_text("Your answers are still here").await?;
            page.wait_for_text("Then load the page anew. That forgets your answers.")
                .await?;
            assert_eq!(page.state().await?, "ready", "the check has not given up");
            page.must_be_accessible().await?;
            page.click("button", "Try again").await?;
            page.wait_until("it has been tried in vain", async || {
                Ok(page.rooms_state().await? == "failed")
            })
            .await?;
            page.back().await?;
            arrive(page, &result).await?;
            page.forward().await?;
            arrive(page, MISSING).await?;
            page.block(&[]).await?;
            page.click("button", "Try again").await?;
            arrive(page, "Learn").await
        })?;
    }
    Ok(())
}

#[test]
fn finding_waits_for_a_reader_who_leaves_before_the_second_part_is_there() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "There is a number on my key").await?;
        not_sure_to_the_end(page).await?;
        page.click("link", "See the result").await?;
        page.wait_for_text("Take it along").await?;
        let result = heading(page).await?;
        page.set_latency(1500).await?;
        page.click("button", "Take this over into keys and doors")
            .await?;
        page.wait_for_text("This page is loading").await?;
        page.back().await?;
        arrive(page, &result).await?;
        page.set_latency(0).await?;
        page.wait_until("the second part is there, too late", async || {
            Ok(page.rooms_state().await? == "ready")
        })
        .await?;
        page.click("link", "Learn").await?;
        arrive(page, "Learn").await?;
        page.click("link", "Keys and doors").await?;
        page.wait_for_text("Which key did you check?").await
    })
}

#[test]
fn second_part_without_a_network_is_told() -> Result<()> {
    troubled_journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.set_offline(true).await?;
        page.click("link", "Learn").await?;
        arrive(page, MISSING).await?;
        page.set_offline(false).await?;
        page.click("button", "Try again").await?;
        arrive(page, "Learn").await
    })
}

#[test]
fn second_program_forgets_when_the_page_is_left() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/distance").await?;
        arrive(page, DISTANCE).await?;
        choose_scene(page, "Doorbell").await?;
        page.wait_for_text("Doorbell camera,").await?;
        page.run("window.dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }));")
            .await?;
        assert_eq!(
            page.run("return document.querySelectorAll('.room').length;")
                .await?,
            0
        );
        // Whatever it still held would show where it is entered once more.
        page.run(
            "const host = document.createElement('main'); document.body.append(host);
             (await selfCheckRooms()).enter(host, true);",
        )
        .await?;
        arrive(page, DISTANCE).await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("Doorbell camera,"), "{text}");
        Ok(())
    })
}

#[test]
fn leave_now_takes_the_second_program_along() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open_at("#/distance").await?;
        arrive(page, DISTANCE).await?;
        let left = page
            .run(
                "let heard = 0;
                 addEventListener('self-check-leaving', () => heard++);
                 document.querySelector('.leave').click();
                 return [heard, document.querySelectorAll('.room').length].join();",
            )
            .await?;
        assert_eq!(left, "1,0", "the second program is told, and gone at once");
        page.wait_until("an empty page is there", async || {
            Ok(page.run("return location.href;").await? == "about:blank")
        })
        .await
    })
}
