//! Where a file comes from: the chooser, a drop, a paste. And its bytes.

use gloo::events::EventListener;
use gloo::utils::document;
use js_sys::Uint8Array;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{ClipboardEvent, File, FileList, HtmlInputElement};
use yew::prelude::*;

/// A file on this device, not yet read.
pub type LocalFile = File;

/// The file chosen in the field that `event` comes from. The field is emptied, so that the same file
/// can be chosen again.
pub fn input_file(event: &Event) -> Option<File> {
    let input = event.target_dyn_into::<HtmlInputElement>()?;
    let file = first(input.files());
    input.set_value("");
    file
}

/// The file dropped on the page.
pub fn dropped_file(event: &DragEvent) -> Option<File> {
    first(event.data_transfer()?.files())
}

/// Calls `take` with each file that is pasted, until the listener is dropped.
pub fn when_pasted(take: impl Fn(File) + 'static) -> EventListener {
    EventListener::new(&document(), "paste", move |event| {
        let event = event.dyn_ref::<ClipboardEvent>();
        let files = event.and_then(|event| event.clipboard_data()?.files());
        if let Some(file) = first(files) {
            take(file);
        }
    })
}

fn first(files: Option<FileList>) -> Option<File> {
    files?.get(0)
}

/// About a megabyte of a file from a place on; none behind its end. Errs where the browser cannot read
/// the file, as when it was moved meanwhile.
pub async fn part_of_file(file: &File, from: usize) -> Result<Vec<u8>, JsValue> {
    let part = file.slice_with_f64_and_f64(from as f64, (from + BYTES_AT_ONCE) as f64)?;
    let buffer = JsFuture::from(part.array_buffer()).await?;
    Ok(Uint8Array::new(&buffer).to_vec())
}

/// So many are copied and looked through in a few milliseconds on a slow phone.
const BYTES_AT_ONCE: usize = 1 << 20;
