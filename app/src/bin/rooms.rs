//! The second program; see [`self_check_app::rooms`].

use self_check_app::{Host, rooms};
use wasm_bindgen::prelude::wasm_bindgen;

fn main() {
    rooms::start();
}

/// Shows the program in `host`; the first program calls it whenever the reader comes to one of its
/// pages.
#[wasm_bindgen]
pub fn enter(host: &Host, is_first_page: bool) {
    rooms::enter(host, is_first_page);
}
