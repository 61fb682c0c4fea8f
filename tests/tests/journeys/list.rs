//! The list in the page: shown wherever the check cannot run, and gone where it can.

use self_check_tests::{Look, Page, Result, Scheme, journey, troubled_journey};

const LIST: &str = "Check your house key with this list";

#[test]
fn list_is_shown_without_scripts() -> Result<()> {
    journey(Look::PHONE, async |page| {
        page.set_scripts(false).await?;
        page.load_only("").await?;
        let headings = page.names("heading").await?;
        assert!(headings.contains(&LIST.to_owned()), "{headings:?}");
        // The protocol's own scripts do not run either, so the text is read as a screen reader is given it.
        let text = page.names("StaticText").await?.join(" ");
        assert!(text.contains("Scripts are off"), "{text}");
        assert!(
            text.contains("Do not type the number on your key"),
            "{text}"
        );
        assert!(!text.contains("could not start"), "{text}");
        Ok(())
    })
}

#[test]
fn list_is_gone_once_the_check_is_there() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        assert_eq!(page.state().await?, "ready");
        let headings = page.names("heading").await?;
        assert!(!headings.contains(&LIST.to_owned()), "{headings:?}");
        let level_ones = page
            .run("return document.querySelectorAll('h1').length;")
            .await?;
        assert_eq!(level_ones, 1);
        Ok(())
    })
}

#[test]
fn list_says_what_to_do_when_the_program_is_missing() -> Result<()> {
    for missing in ["*.wasm", "*/check-*.js"] {
        troubled_journey(Look::DESKTOP, async |page| {
            page.block(&[missing]).await?;
            page.open().await?;
            assert_eq!(page.state().await?, "failed", "without {missing}");
            could_not_start(page).await
        })?;
    }
    Ok(())
}

#[test]
fn list_is_shown_when_even_the_first_script_is_missing() -> Result<()> {
    troubled_journey(Look::DESKTOP, async |page| {
        page.block(&["*/boot-*.js"]).await?;
        page.load_only("").await?;
        page.wait_for_text(LIST).await
    })
}

#[test]
fn list_is_shown_where_webassembly_is_missing() -> Result<()> {
    troubled_journey(Look::DESKTOP, async |page| {
        let source = "delete globalThis.WebAssembly;";
        page.cdp(
            "Page.addScriptToEvaluateOnNewDocument",
            serde_json::json!({ "source": source }),
        )
        .await?;
        page.open().await?;
        assert_eq!(page.state().await?, "failed");
        could_not_start(page).await
    })
}

async fn could_not_start(page: &Page) -> Result<()> {
    page.wait_for_text("The guided check could not start in this browser.")
        .await?;
    page.wait_for_text(LIST).await?;
    let text = page.visible_text().await?;
    assert!(
        !text.contains("still loading") && !text.contains("has stopped"),
        "{text}"
    );
    let focus = page.focused_id().await?;
    assert_eq!(focus, "could-not-start");
    Ok(())
}

#[test]
fn failure_later_wipes_the_check_and_shows_the_list() -> Result<()> {
    troubled_journey(Look::DESKTOP, async |page| {
        page.open().await?;
        assert_eq!(page.state().await?, "ready");
        page.run("dispatchEvent(new Event('self-check-failed'));")
            .await?;
        page.wait_for_text("The guided check has stopped").await?;
        assert_eq!(page.state().await?, "failed");
        let left = page
            .run("return document.getElementById('app').childNodes.length;")
            .await?;
        assert_eq!(left, 0, "nothing of the check is left in the page");
        assert_eq!(page.title().await?, "House Key Self-Check");
        assert_eq!(page.focused_id().await?, "has-stopped");
        page.reload().await?;
        assert_eq!(page.state().await?, "ready", "reloading starts again");
        Ok(())
    })
}

#[test]
fn fault_of_something_else_leaves_the_check_alone() -> Result<()> {
    troubled_journey(Look::DESKTOP, async |page| {
        page.open().await?;
        let foreign =
            "const e = new Error('not ours'); e.stack = 'at chrome-extension://abc/x.js:1:1';";
        page.run(&format!(
            "{foreign} dispatchEvent(new ErrorEvent('error', {{ error: e }}));"
        ))
        .await?;
        page.run(
            "dispatchEvent(new ErrorEvent('error', { message: 'ResizeObserver loop limit' }));",
        )
        .await?;
        assert_eq!(page.state().await?, "ready");
        Ok(())
    })
}

#[test]
fn list_is_accessible_in_every_look() -> Result<()> {
    let looks = [
        Look::DESKTOP,
        Look {
            scheme: Scheme::Dark,
            ..Look::PHONE
        },
        Look::NARROW,
        Look {
            forced_colours: true,
            ..Look::DESKTOP
        },
    ];
    troubled_journey(Look::DESKTOP, async |page| {
        page.block(&["*.wasm"]).await?;
        page.open().await?;
        for look in looks {
            page.set_look(look).await?;
            page.must_be_accessible().await?;
            assert!(page.fits_its_width().await?, "{look:?}");
        }
        Ok(())
    })
}

#[test]
fn list_prints_with_all_its_parts() -> Result<()> {
    troubled_journey(
        Look {
            on_paper: true,
            ..Look::DESKTOP
        },
        async |page| {
            page.block(&["*.wasm"]).await?;
            page.open().await?;
            let text = page.visible_text().await?;
            for heading in page.names("heading").await? {
                assert!(text.contains(&heading), "{heading} is on paper");
            }
            assert!(
                !text.contains("Leave now"),
                "what only works on a screen is not on paper"
            );
            let paper = page.print().await?;
            assert!(paper.starts_with(b"%PDF-"), "the page prints");
            Ok(())
        },
    )
}
