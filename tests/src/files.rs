//! Files that the page is given and that it hands out, and a second tab beside the first.

use std::path::{Path, PathBuf};

use serde_json::json;
use thirtyfour::WindowHandle;

use crate::{Page, Result};

impl Page {
    /// Lets the browser save files into this folder, without asking where.
    pub async fn save_files_in(&self, folder: &Path) -> Result<()> {
        std::fs::create_dir_all(folder)?;
        let wish = json!({ "behavior": "allow", "downloadPath": folder });
        self.cdp("Browser.setDownloadBehavior", wish).await?;
        Ok(())
    }

    /// Waits for a file of this name in a folder, whole, and gives its content.
    pub async fn saved_file(&self, folder: &Path, name: &str) -> Result<Vec<u8>> {
        let path = folder.join(name);
        // The browser writes under another name until the file is whole.
        self.wait_until(&format!("{name} is saved"), async || Ok(path.exists()))
            .await?;
        Ok(std::fs::read(path)?)
    }

    /// Chooses a file in the page's one field for files, as the browser's own window for that would.
    pub async fn choose_file(&self, path: &Path) -> Result<()> {
        let question =
            json!({ "expression": "document.querySelector('main input[type=\"file\"]')" });
        let field = self.cdp("Runtime.evaluate", question).await?;
        let path: PathBuf = path.canonicalize()?;
        let files = json!({ "objectId": field["result"]["objectId"], "files": [path] });
        self.cdp("DOM.setFileInputFiles", files).await?;
        Ok(())
    }

    /// Makes the browser's storage for the site hold at most so many bytes; `None` as much as it will.
    pub async fn set_storage_limit(&self, bytes: Option<u64>) -> Result<()> {
        let mut wish = json!({ "origin": self.site });
        if let Some(bytes) = bytes {
            wish["quotaSize"] = bytes.into();
        }
        self.cdp("Storage.overrideQuotaForOrigin", wish).await?;
        Ok(())
    }

    /// The tab that is looked at.
    pub async fn tab(&self) -> Result<WindowHandle> {
        Ok(self.driver.window().await?)
    }

    /// Opens another tab, which is looked at from now on.
    pub async fn open_tab(&self) -> Result<WindowHandle> {
        let tab = self.driver.new_tab().await?;
        self.go_to_tab(&tab).await?;
        Ok(tab)
    }

    /// Looks at another tab from now on.
    pub async fn go_to_tab(&self, tab: &WindowHandle) -> Result<()> {
        Ok(self.driver.switch_to_window(tab.clone()).await?)
    }
}
