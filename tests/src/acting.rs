//! Acting on the page with a mouse and with keys, through the browser's own input.

use serde_json::json;
use thirtyfour::Key;

use crate::{Node, Page, Result};

/// More stops than any page of the site has.
const MOST_TAB_STOPS: usize = 200;

impl Page {
    /// Clicks the element of this role and name (see [`Page::find`]), where a person would.
    pub async fn click(&self, role: &str, name: &str) -> Result<()> {
        let node = self.find(role, name).await?;
        self.click_on(&node).await
    }

    /// Clicks an element. Whatever lies on top of it gets the click instead, as it would from a person.
    pub async fn click_on(&self, node: &Node) -> Result<()> {
        let element = json!({ "backendNodeId": node.element });
        self.cdp("DOM.scrollIntoViewIfNeeded", element).await?;
        let (x, y) = self.place_of(node).await?;
        for (kind, button, clicks) in [
            ("mouseMoved", "none", 0),
            ("mousePressed", "left", 1),
            ("mouseReleased", "left", 1),
        ] {
            let event =
                json!({ "type": kind, "x": x, "y": y, "button": button, "clickCount": clicks });
            self.cdp("Input.dispatchMouseEvent", event).await?;
        }
        Ok(())
    }

    /// The middle of an element's first line, once it has come to rest.
    async fn place_of(&self, node: &Node) -> Result<(f64, f64)> {
        let mut before = None;
        for _ in 0..50 {
            let question = json!({ "backendNodeId": node.element });
            let answer = self.cdp("DOM.getContentQuads", question).await?;
            let quad = &answer["quads"][0];
            let number = |at: usize| quad[at].as_f64();
            if let (Some(x1), Some(y1), Some(x2), Some(y2)) =
                (number(0), number(1), number(4), number(5))
            {
                let now = ((x1 + x2) / 2.0, (y1 + y2) / 2.0);
                if before == Some(now) {
                    return Ok(now);
                }
                before = Some(now);
            }
            tokio::time::sleep(std::time::Duration::from_millis(20)).await;
        }
        Err(format!(
            "the {} named {:?} is nowhere to be clicked",
            node.role, node.name
        )
        .into())
    }

    /// Presses one key, for example `Tab`, `Shift+Tab`, `Enter`, `Space`, `Escape` or `ArrowDown`.
    pub async fn press(&self, key: &str) -> Result<()> {
        let (shift, name) = match key.strip_prefix("Shift+") {
            Some(name) => (true, name),
            None => (false, key),
        };
        let code = match name {
            "Tab" => Key::Tab.value(),
            "Enter" => Key::Enter.value(),
            "Escape" => Key::Escape.value(),
            "Space" => ' ',
            "ArrowUp" => Key::Up.value(),
            "ArrowDown" => Key::Down.value(),
            "ArrowLeft" => Key::Left.value(),
            "ArrowRight" => Key::Right.value(),
            "Home" => Key::Home.value(),
            "End" => Key::End.value(),
            "PageUp" => Key::PageUp.value(),
            "PageDown" => Key::PageDown.value(),
            "Delete" => Key::Delete.value(),
            _ => return Err(format!("there is no key {key:?}").into()),
        };
        let keys = self.driver.action_chain();
        let keys = match shift {
            true => keys
                .key_down(Key::Shift)
                .send_keys(code.to_string())
                .key_up(Key::Shift),
            false => keys.send_keys(code.to_string()),
        };
        keys.perform().await?;
        self.presses.set(self.presses.get() + 1);
        Ok(())
    }

    /// How many keys have been pressed since the page was first opened.
    pub fn presses(&self) -> usize {
        self.presses.get()
    }

    /// Types a text into what has the focus.
    pub async fn type_text(&self, text: &str) -> Result<()> {
        self.driver.action_chain().send_keys(text).perform().await?;
        self.presses.set(self.presses.get() + text.chars().count());
        Ok(())
    }

    /// Presses Tab until the element of this role and name has the focus.
    pub async fn tab_to(&self, role: &str, name: &str) -> Result<()> {
        let wanted = self.find(role, name).await?;
        let mut passed = Vec::new();
        for _ in 0..MOST_TAB_STOPS {
            self.press("Tab").await?;
            let focused = self.focused().await?;
            if focused.element == wanted.element {
                return Ok(());
            }
            passed.push(format!("{} {:?}", focused.role, focused.name));
        }
        passed.truncate(20);
        Err(format!("Tab never came to the {role} named {name:?}; it came by {passed:?}").into())
    }

    /// Goes one page back, as the browser's own button does.
    pub async fn back(&self) -> Result<()> {
        Ok(self.driver.back().await?)
    }

    /// Goes one page forward, as the browser's own button does.
    pub async fn forward(&self) -> Result<()> {
        Ok(self.driver.forward().await?)
    }
}
