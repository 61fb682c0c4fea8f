//! What the browser holds for this site: its own answer, asked anew.

use gloo::utils::{document, window};
use js_sys::{Array, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Storage;

use super::kept::{Found, database_names, read_kept};

/// What was found. `None` where this browser does not say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Left {
    /// Whether a record of doors and keys is kept.
    pub record: Option<bool>,
    /// Databases.
    pub databases: Option<u32>,
    /// Entries in the two simple stores, of this tab and of all.
    pub entries: Option<u32>,
    /// Cookies.
    pub cookies: Option<u32>,
    /// Caches. They hold the page itself and nothing a person has told it.
    pub caches: Option<u32>,
}

/// Asks the browser.
pub async fn what_is_left() -> Left {
    Left {
        record: read_kept().await.ok().map(|found| found != Found::Nothing),
        databases: databases().await.ok(),
        entries: entries(),
        cookies: cookies(),
        caches: caches().await.ok(),
    }
}

async fn databases() -> Result<u32, JsValue> {
    let names = database_names().await?;
    u32::try_from(names.len()).map_err(|_| JsValue::UNDEFINED)
}

fn entries() -> Option<u32> {
    let length = |store: Result<Option<Storage>, JsValue>| store.ok()??.length().ok();
    Some(length(window().local_storage())? + length(window().session_storage())?)
}

fn cookies() -> Option<u32> {
    let text = Reflect::get(&document(), &"cookie".into())
        .ok()?
        .as_string()?;
    let cookies = text.split(';').filter(|cookie| !cookie.trim().is_empty());
    u32::try_from(cookies.count()).ok()
}

async fn caches() -> Result<u32, JsValue> {
    let names: Array = JsFuture::from(window().caches()?.keys())
        .await?
        .dyn_into()?;
    Ok(names.length())
}
