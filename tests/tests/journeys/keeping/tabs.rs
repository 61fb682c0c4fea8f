//! Two tabs: neither writes over what the other has kept without a choice.

use self_check_tests::{Look, Page, Result, journey};

use super::{IS_KEPT, PAGE, holds, keep_it, wait_to_hold, with_a_home, with_a_shed_more};

const FROM_ANOTHER_TAB: &str = "Another tab of this page has kept something else.";

/// A second tab that shows what the first has kept.
async fn second_tab(page: &Page, wanted: &str) -> Result<()> {
    page.open_tab().await?;
    page.open_at(PAGE).await?;
    wait_to_hold(page, wanted).await?;
    page.wait_for_text(IS_KEPT).await
}

#[test]
fn change_in_one_tab_is_a_choice_in_the_other() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let home = with_a_home(page).await?;
        keep_it(page).await?;
        let first = page.tab().await?;
        second_tab(page, &home).await?;
        let second = page.tab().await?;
        let theirs = with_a_shed_more(page).await?;
        page.wait_for_text(IS_KEPT).await?;

        page.go_to_tab(&first).await?;
        page.wait_for_text(FROM_ANOTHER_TAB).await?;
        assert_eq!(holds(page).await?, home, "nothing changes by itself");
        page.must_be_accessible().await?;
        page.click("button", "Show what is kept").await?;
        wait_to_hold(page, &theirs).await?;
        page.wait_for_text(IS_KEPT).await?;

        // The other way round: what stands here is to win, and the other tab is told.
        let mine = with_a_shed_more(page).await?;
        page.wait_for_text(IS_KEPT).await?;
        page.go_to_tab(&second).await?;
        page.wait_for_text(FROM_ANOTHER_TAB).await?;
        assert_eq!(holds(page).await?, theirs);
        page.click("button", "Keep what is on this page instead")
            .await?;
        page.wait_for_text(IS_KEPT).await?;
        page.go_to_tab(&first).await?;
        page.wait_for_text(FROM_ANOTHER_TAB).await?;
        assert_eq!(holds(page).await?, mine);
        page.reload().await?;
        wait_to_hold(page, &theirs).await
    })
}

#[test]
fn tab_that_heard_nothing_is_refused_before_it_writes_over_another() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let home = with_a_home(page).await?;
        keep_it(page).await?;
        let first = page.tab().await?;
        second_tab(page, &home).await?;
        let second = page.tab().await?;
        page.run("BroadcastChannel.prototype.postMessage = () => {};")
            .await?;
        with_a_shed_more(page).await?;
        let theirs = with_a_shed_more(page).await?;
        page.wait_for_text(IS_KEPT).await?;

        page.go_to_tab(&first).await?;
        page.wait_for_text(IS_KEPT).await?;
        let mine = with_a_shed_more(page).await?;
        assert_ne!(mine, theirs);
        page.wait_for_text(FROM_ANOTHER_TAB).await?;
        page.click("button", "Leave both as they are").await?;
        page.wait_for_text("What is on this page is not kept")
            .await?;
        assert_eq!(holds(page).await?, mine);

        page.go_to_tab(&second).await?;
        page.reload().await?;
        wait_to_hold(page, &theirs).await
    })
}

#[test]
fn emptying_in_one_tab_is_told_in_the_other_and_takes_nothing_from_it() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let home = with_a_home(page).await?;
        keep_it(page).await?;
        let first = page.tab().await?;
        second_tab(page, &home).await?;
        page.click("button", "Empty everything").await?;
        page.wait_for_text("Emptied.").await?;
        page.go_to_tab(&first).await?;
        page.wait_for_text("was taken away, in another tab").await?;
        let more = with_a_shed_more(page).await?;
        crate::forgetting::keeps_nothing(page).await?;
        keep_it(page).await?;
        page.reload().await?;
        wait_to_hold(page, &more).await
    })
}

#[test]
fn tabs_that_count_alike_are_told_apart() -> Result<()> {
    journey(Look::PHONE, async |page| {
        let home = with_a_home(page).await?;
        keep_it(page).await?;
        let first = page.tab().await?;
        second_tab(page, &home).await?;
        page.click("button", "This ring is lost: Resident").await?;
        page.wait_for_text("Resident: lost keys").await?;
        page.wait_for_text(IS_KEPT).await?;
        page.go_to_tab(&first).await?;
        page.wait_for_text(FROM_ANOTHER_TAB).await?;
        page.wait_for_text("The numbers agree, but this differs: where copies are.")
            .await?;
        page.must_be_accessible().await
    })
}
