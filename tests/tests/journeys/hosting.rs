//! Served as a host would: under a path, and under the headers that are published with the site.

use self_check_tests::{Host, Look, Result, journey_at, one_file, troubled_journey_at};

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
fn site_and_its_one_file_tell_the_same_build_and_what_is_served_has_its_sum() -> Result<()> {
    let host = Host::under("/")?;
    let sums = host.text("SHA256SUMS")?;
    let mut listed: Vec<&str> = sums
        .lines()
        .filter_map(|line| Some(line.split_once("  ")?.1))
        .collect();
    listed.sort_unstable();
    let mut served = host.names();
    // One is read by the host alone; the other cannot hold its own sum.
    served.retain(|name| name != "_headers" && name != "SHA256SUMS");
    assert_eq!(listed, served);
    let one_file = one_file()?;
    let stem = one_file.file_stem().unwrap_or_default().to_string_lossy();
    let build = stem.rsplit('-').next().unwrap_or_default();
    journey_at(&host.address, Look::DESKTOP, async |page| {
        page.open_at("#/about").await?;
        arrive(page, "How to check this page").await?;
        page.wait_for_text(&format!("This page is build {build}."))
            .await?;
        page.wait_for_text(&format!("sha256sum {stem}.html")).await
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
