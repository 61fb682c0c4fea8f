//! Files: one saved to the person's own folder, one chosen by the person.

use gloo::file::{Blob, File, ObjectUrl};
use gloo::timers::callback::Timeout;
use gloo::utils::document;
use js_sys::Uint8Array;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{HtmlAnchorElement, HtmlInputElement};
use yew::prelude::*;

/// How long a browser may take to begin saving before its temporary address is taken back, in milliseconds. Our
/// assumption; taken back too early, nothing is saved, and later costs only memory.
const UNTIL_TAKEN_BACK_MS: u32 = 10_000;

/// Why a chosen file was not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileTrouble {
    /// It is larger than was asked for. Nothing of it was read.
    TooLarge,
    /// The browser could not read it: it was moved, changed or taken away.
    CouldNotRead,
}

/// Hands `content` to the browser as a file to save; false where the browser does not offer that. Nothing goes over the
/// network. Whether the person then lets it be saved, no page is told.
pub fn save_file(name: &str, kind: &str, content: &[u8]) -> bool {
    let Ok(link) = document().create_element("a") else {
        return false;
    };
    let link: HtmlAnchorElement = link.unchecked_into();
    let address = ObjectUrl::from(Blob::new_with_options(content, Some(kind)));
    link.set_href(&address);
    link.set_download(name);
    link.click();
    Timeout::new(UNTIL_TAKEN_BACK_MS, move || drop(address)).forget();
    true
}

/// The file that was chosen in the field `event` comes from. The field is emptied, so that the same file can be chosen
/// again.
pub fn chosen_file(event: &Event) -> Option<File> {
    let field: HtmlInputElement = event.target_dyn_into()?;
    let file = field.files()?.get(0);
    field.set_value("");
    file.map(File::from)
}

/// Reads a file that has at most `most` bytes; asks for its size first.
pub async fn read_file(file: &File, most: usize) -> Result<Vec<u8>, FileTrouble> {
    if usize::try_from(file.size()).map_or(true, |size| size > most) {
        return Err(FileTrouble::TooLarge);
    }
    let file: &web_sys::File = file.as_ref();
    let read = JsFuture::from(file.array_buffer()).await;
    let content = read.map_err(|_| FileTrouble::CouldNotRead)?;
    Ok(Uint8Array::new(&content).to_vec())
}

/// What stands in the field that `node` holds.
pub fn text_in(node: &NodeRef) -> String {
    let field = node.cast::<HtmlInputElement>();
    field.map(|field| field.value()).unwrap_or_default()
}

/// Empties the field that `node` holds. For what must not stay on the page.
pub fn empty_field(node: &NodeRef) {
    if let Some(field) = node.cast::<HtmlInputElement>() {
        field.set_value("");
    }
}
