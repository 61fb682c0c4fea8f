//! Reading a picture's file: a part after the other, for as long as somebody waits for it.

use std::time::Duration;

use self_check_tests::given::{Kind, Picture};
use self_check_tests::{Look, Page, Result, journey};

use crate::walking::arrive;

/// Counts the parts that are read of any file, and has each take a tenth of a second.
const COUNT_PARTS: &str = "
    globalThis.partsRead = 0;
    const own = Blob.prototype.arrayBuffer;
    Blob.prototype.arrayBuffer = async function() {
        globalThis.partsRead += 1;
        await new Promise(go => setTimeout(go, 100));
        return own.call(this);
    };";

async fn parts_read(page: &Page) -> Result<u64> {
    let read = page.run("return globalThis.partsRead;").await?;
    Ok(read.as_u64().unwrap_or_default())
}

/// No part is read but the one that was being read; `read` parts were read when it was stopped.
async fn reads_no_more(page: &Page, read: u64) -> Result<()> {
    tokio::time::sleep(Duration::from_secs(1)).await;
    let later = parts_read(page).await?;
    assert!(later <= read + 1, "{later} after {read}");
    Ok(())
}

#[test]
fn cancelling_and_leaving_stop_reading_a_file() -> Result<()> {
    let picture = Picture::new(Kind::Tiny)?;
    let large = picture.folder().join("large.bmp");
    let mut bytes = b"BM".to_vec();
    bytes.resize(100 << 20, 0);
    std::fs::write(&large, bytes)?;
    let longer = picture.folder().join("longer.jpg");
    let mut bytes = picture.bytes()?;
    bytes.resize(100 << 20, 0);
    std::fs::write(&longer, bytes)?;
    journey(Look::DESKTOP, async |page| {
        page.open_at("#/picture").await?;
        arrive(page, "Check a picture").await?;
        page.run(COUNT_PARTS).await?;
        for file in [&large, &longer] {
            let before = parts_read(page).await?;
            page.choose_file_in("picture-file", file).await?;
            page.wait_until("some parts are read", async || {
                Ok(parts_read(page).await? > before + 2)
            })
            .await?;
            page.click("button", "Cancel").await?;
            page.wait_for_text("Stopped.").await?;
            reads_no_more(page, parts_read(page).await?).await?;
        }
        let before = parts_read(page).await?;
        page.choose_file_in("picture-file", &large).await?;
        page.wait_until("some parts are read", async || {
            Ok(parts_read(page).await? > before + 2)
        })
        .await?;
        page.run("location.hash = '#/';").await?;
        page.wait_until("the page is left", async || {
            Ok(page
                .run("return !document.querySelector('#picture-file');")
                .await?
                == true)
        })
        .await?;
        reads_no_more(page, parts_read(page).await?).await
    })
}
