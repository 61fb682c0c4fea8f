//! What other tabs of this page in the same browser are told, and tell, about what is kept on the device.

use gloo::events::EventListener;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{BroadcastChannel, MessageEvent};
use yew::Callback;

use super::kept::Mark;

const CHANNEL: &str = "self-check";

/// What happened in another tab.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum News {
    /// The record was written and now has this mark.
    Written(Mark),
    /// What was kept was taken away.
    Emptied,
}

/// Listens to the other tabs for as long as it lives.
pub struct Tabs {
    channel: BroadcastChannel,
    _listener: EventListener,
}

impl Tabs {
    /// Calls `hear` with all news; nothing where the browser has no such channel, as then writing alone finds out.
    pub fn listen(hear: Callback<News>) -> Option<Self> {
        let channel = BroadcastChannel::new(CHANNEL).ok()?;
        let listener = EventListener::new(&channel, "message", move |event| {
            let data = event.dyn_ref::<MessageEvent>().map(MessageEvent::data);
            if let Some(news) = data.and_then(|data| read(&data)) {
                hear.emit(news);
            }
        });
        Some(Self {
            channel,
            _listener: listener,
        })
    }

    /// Tells every other tab.
    pub fn tell(&self, news: News) {
        let _ = self.channel.post_message(&write(news));
    }
}

impl Drop for Tabs {
    fn drop(&mut self) {
        self.channel.close();
    }
}

/// Tells every tab, this one too if it listens: for a tab that does not.
pub fn tell_tabs(news: News) {
    if let Ok(channel) = BroadcastChannel::new(CHANNEL) {
        let _ = channel.post_message(&write(news));
        channel.close();
    }
}

/// A mark as its number, and nothing for "emptied".
fn write(news: News) -> JsValue {
    match news {
        News::Written(mark) => mark.number().into(),
        News::Emptied => JsValue::NULL,
    }
}

fn read(data: &JsValue) -> Option<News> {
    if data.is_null() {
        return Some(News::Emptied);
    }
    data.as_f64().map(|number| News::Written(Mark::new(number)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn start_script_tells_on_this_channel() {
        let script = include_str!("../../../public/boot.js");
        assert!(script.contains(&format!("new BroadcastChannel(\"{CHANNEL}\")")));
        assert!(
            script.contains("postMessage(null)"),
            "as “emptied” is written here"
        );
    }
}
