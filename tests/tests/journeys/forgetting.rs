//! Nothing the person answers outlives the page, or shows anywhere but in it.

use self_check_tests::{KEPT, Look, Page, Result, journey};

use crate::walking::{LOOK_OVER, NOT_SURE, answer, arrive, heading};

/// Fails if the browser keeps anything for the site.
pub async fn keeps_nothing(page: &Page) -> Result<()> {
    let kept = page.run(KEPT).await?;
    assert_eq!(kept, "", "kept at {}", heading(page).await?);
    Ok(())
}

#[test]
fn answers_show_in_no_address_title_history_or_store() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        page.click("link", "Someone had my key").await?;
        arrive(page, "Who has this key, or has had it?").await?;
        answer(
            page,
            &[
                "Someone who should no longer have one",
                "Guests of a short let",
            ],
        )
        .await?;
        let mut step = 3;
        loop {
            let address = page
                .run("return location.pathname + location.search + location.hash;")
                .await?;
            assert_eq!(address, format!("/#/check/{}", step - 1));
            assert!(page.run("return history.state;").await?.is_null());
            keeps_nothing(page).await?;
            if heading(page).await? == LOOK_OVER {
                break;
            }
            assert_eq!(
                page.title().await?,
                format!("Step {step} · House Key Self-Check")
            );
            answer(page, &[NOT_SURE]).await?;
            step += 1;
        }
        assert!(step >= 12, "{step} pages");
        assert_eq!(
            page.title().await?,
            format!("{LOOK_OVER} · House Key Self-Check")
        );
        page.click("link", "See the result").await?;
        page.wait_for_text("Do this").await?;
        assert_eq!(page.title().await?, "Your result · House Key Self-Check");
        keeps_nothing(page).await
    })
}

#[test]
fn leave_now_forgets_and_back_brings_nothing_back() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Someone had my key").await?;
        arrive(page, "Who has this key, or has had it?").await?;
        answer(page, &["Guests of a short let"]).await?;
        page.click("button", "Leave now").await?;
        page.wait_until("an empty page is there", async || {
            Ok(page.run("return location.href;").await? == "about:blank")
        })
        .await?;
        page.back().await?;
        no_answer_comes_back(page).await?;
        // "Back" loads the page anew; the browser brings nothing of it back.
        page.loaded_on_the_way(1).await?;
        page.reload().await?;
        no_answer_comes_back(page).await?;
        page.open_at("#/check/2").await?;
        no_answer_comes_back(page).await?;
        keeps_nothing(page).await
    })
}

#[test]
fn reload_forgets_and_says_so() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Someone had my key").await?;
        arrive(page, "Who has this key, or has had it?").await?;
        answer(page, &["Guests of a short let"]).await?;
        page.reload().await?;
        page.wait_for_text("How private is your key?").await?;
        page.wait_for_text("it begins here").await?;
        no_answer_comes_back(page).await
    })
}

#[test]
fn page_empties_itself_when_it_is_left() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.open().await?;
        page.click("link", "Someone had my key").await?;
        arrive(page, "Who has this key, or has had it?").await?;
        answer(page, &["Guests of a short let"]).await?;
        page.run("window.dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }));")
            .await?;
        let left = page
            .run("return document.querySelector('main')?.textContent ?? '';")
            .await?;
        assert_eq!(left, "");
        Ok(())
    })
}

/// The start page, or nothing of the site at all; no tick anywhere.
async fn no_answer_comes_back(page: &Page) -> Result<()> {
    page.wait_until("the page has come to rest", async || {
        let href = page.run("return location.href;").await?;
        Ok(href == "about:blank" || matches!(&*page.state().await?, "ready" | "failed"))
    })
    .await?;
    let ticked = page
        .run("return document.querySelectorAll('input:checked').length;")
        .await?;
    assert_eq!(ticked, 0);
    let text = page.visible_text().await?;
    assert!(!text.contains("short let"), "{text}");
    Ok(())
}
