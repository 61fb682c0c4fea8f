//! The page as a picture and on paper.

use std::path::Path;

use thirtyfour::common::print::PrintParameters;

use crate::{Page, Result};

impl Page {
    /// A PNG of what the window shows.
    pub async fn window_picture(&self) -> Result<Vec<u8>> {
        Ok(self.driver.screenshot_as_png().await?)
    }

    /// A PNG of the whole page, top to bottom.
    pub async fn whole_picture(&self) -> Result<Vec<u8>> {
        let look = *self.look.borrow();
        let height = self
            .run("return document.documentElement.scrollHeight;")
            .await?;
        let height = height
            .as_u64()
            .and_then(|height| u32::try_from(height).ok());
        let tall = look.metrics(height.unwrap_or(look.height).max(look.height));
        self.cdp("Emulation.setDeviceMetricsOverride", tall).await?;
        let picture = self.window_picture().await;
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            look.metrics(look.height),
        )
        .await?;
        picture
    }

    /// The page printed to PDF.
    pub async fn print(&self) -> Result<Vec<u8>> {
        Ok(self.driver.print_page(PrintParameters::default()).await?)
    }
}

/// Writes a picture, with the folders on the way to it.
pub(crate) fn write(path: &Path, content: &[u8]) -> Result<()> {
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder)?;
    }
    Ok(std::fs::write(path, content)?)
}
