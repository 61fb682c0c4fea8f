//! Files that the page is given and that it hands out, and a second tab beside the first.

use std::path::{Path, PathBuf};

use serde_json::json;
use thirtyfour::WindowHandle;

use crate::{Page, Result};

impl Page {
    /// Chooses a file in the field with this id, as the browser's own window would.
    pub async fn choose_file_in(&self, id: &str, file: &Path) -> Result<()> {
        let document = self.cdp("DOM.getDocument", json!({ "depth": 0 })).await?;
        let question =
            json!({ "nodeId": document["root"]["nodeId"], "selector": format!("#{id}") });
        let field = self.cdp("DOM.querySelector", question).await?;
        let files = json!({ "nodeId": field["nodeId"], "files": [file] });
        self.cdp("DOM.setFileInputFiles", files).await?;
        Ok(())
    }

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

    /// Drags the mouse over the first element that a selector finds, from one place to another, both in shares of its
    /// width and height.
    pub async fn drag_on(&self, selector: &str, from: (f64, f64), to: (f64, f64)) -> Result<()> {
        let [from, to] = self.places_on(selector, [from, to]).await?;
        for (kind, (x, y), button, buttons) in [
            ("mouseMoved", from, "none", 0),
            ("mousePressed", from, "left", 1),
            ("mouseMoved", to, "left", 1),
            ("mouseReleased", to, "left", 0),
        ] {
            let event = json!({
                "type": kind, "x": x, "y": y, "button": button, "buttons": buttons, "clickCount": 1,
            });
            self.cdp("Input.dispatchMouseEvent", event).await?;
        }
        Ok(())
    }

    /// The same with a finger.
    pub async fn touch_on(&self, selector: &str, from: (f64, f64), to: (f64, f64)) -> Result<()> {
        let [from, to] = self.places_on(selector, [from, to]).await?;
        for (kind, at) in [
            ("touchStart", Some(from)),
            ("touchMove", Some(to)),
            ("touchEnd", None),
        ] {
            let points: Vec<_> = at
                .map(|(x, y)| json!({ "x": x, "y": y }))
                .into_iter()
                .collect();
            let event = json!({ "type": kind, "touchPoints": points });
            self.cdp("Input.dispatchTouchEvent", event).await?;
        }
        Ok(())
    }

    /// Where places on an element are in the window, once the element is in its middle.
    async fn places_on<const N: usize>(
        &self,
        selector: &str,
        places: [(f64, f64); N],
    ) -> Result<[(f64, f64); N]> {
        let frame = self
            .run(&format!(
                "const element = document.querySelector({selector:?});
                element.scrollIntoView({{ block: 'center', behavior: 'instant' }});
                const frame = element.getBoundingClientRect();
                return [frame.left, frame.top, frame.width, frame.height];"
            ))
            .await?;
        let number = |at: usize| frame[at].as_f64().unwrap_or_default();
        Ok(places.map(|(x, y)| (number(0) + x * number(2), number(1) + y * number(3))))
    }

    /// An attribute of the first element that a selector finds.
    pub async fn text_at(&self, selector: &str, attribute: &str) -> Result<String> {
        self.text_of(&format!(
            "document.querySelector({selector:?})?.getAttribute({attribute:?}) ?? ''"
        ))
        .await
    }
}
