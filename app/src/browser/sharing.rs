//! Taking the result along, when the person asks for it.

use gloo::utils::window;
use js_sys::Reflect;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Opens the browser's print dialogue.
pub fn print() {
    let _ = window().print();
}

/// Puts `text` on the clipboard; false where the browser does not allow it.
pub async fn copy_text(text: &str) -> bool {
    try_copy(text).await.is_ok()
}

async fn try_copy(text: &str) -> Result<(), JsValue> {
    let navigator = window().navigator();
    // Absent in a page that was not loaded over a secure connection.
    if Reflect::get(&navigator, &"clipboard".into())?.is_undefined() {
        return Err(JsValue::UNDEFINED);
    }
    JsFuture::from(navigator.clipboard().write_text(text)).await?;
    Ok(())
}
