//! Giving the page a file, and taking what it saves.

use std::path::Path;

use serde_json::json;

use crate::{Page, Result};

impl Page {
    /// Chooses a file in the field with this id, as the browser's own window would.
    pub async fn choose_file(&self, id: &str, file: &Path) -> Result<()> {
        let document = self.cdp("DOM.getDocument", json!({ "depth": 0 })).await?;
        let question =
            json!({ "nodeId": document["root"]["nodeId"], "selector": format!("#{id}") });
        let field = self.cdp("DOM.querySelector", question).await?;
        let files = json!({ "nodeId": field["nodeId"], "files": [file] });
        self.cdp("DOM.setFileInputFiles", files).await?;
        Ok(())
    }

    /// Has the browser save what is downloaded into a folder, without asking.
    pub async fn allow_downloads(&self, folder: &Path) -> Result<()> {
        let wish = json!({ "behavior": "allow", "downloadPath": folder });
        self.cdp("Browser.setDownloadBehavior", wish).await?;
        Ok(())
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
