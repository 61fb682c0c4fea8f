//! Served as a host would: under a path, and under the headers that are published with the site.

use self_check_tests::{Host, Look, Result, journey_at, troubled_journey_at};

use crate::walking::{arrive, to_the_examples_result};

#[test]
fn site_under_a_path_and_its_own_headers_works_whole() -> Result<()> {
    let host = Host::under("/some/where/keys/")?;
    journey_at(&host.address, Look::DESKTOP, async |page| {
        to_the_examples_result(page).await?;
        for (link, title) in [
            ("Learn", "Learn"),
            (
                "Who could read it from where",
                "Who could read it from where",
            ),
            ("How to check this page", "How to check this page"),
        ] {
            page.click("link", link).await?;
            arrive(page, title).await?;
        }
        assert_eq!(
            page.run("return crossOriginIsolated;").await?,
            true,
            "the headers have arrived"
        );
        assert_eq!(
            page.run("return location.pathname;").await?,
            "/some/where/keys/"
        );
        Ok(())
    })
}

#[test]
fn no_text_becomes_markup_script_or_worker() -> Result<()> {
    let host = Host::under("/")?;
    troubled_journey_at(&host.address, Look::DESKTOP, async |page| {
        page.open().await?;
        for attempt in [
            "document.body.innerHTML = '<b>x</b>'",
            "document.createElement('script').src = 'boot.js'",
            "new Worker('worker.js')",
            "navigator.serviceWorker.register('worker.js')",
            "trustedTypes.createPolicy('another', {})",
            "trustedTypes.createPolicy('self-check', {})",
        ] {
            let outcome = page
                .run(&format!(
                    "try {{ await ({attempt}); return 'done'; }} catch (fault) {{ return fault.name; }}"
                ))
                .await?;
            assert_eq!(outcome, "TypeError", "{attempt}");
        }
        Ok(())
    })
}
