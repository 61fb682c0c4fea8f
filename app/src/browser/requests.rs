//! What the browser says this page has fetched. It is the browser's list, not the page's word.

use gloo::utils::{document, window};
use wasm_bindgen::JsCast;
use web_sys::PerformanceEntry;

/// What was fetched so far.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Requests {
    /// Every address in the browser's list, in the order of time.
    pub all: Vec<String>,
    /// How many of them lie outside the address this page came from.
    pub elsewhere: usize,
    /// How many began after the page was ready and are not for the second program.
    pub after_ready: usize,
    /// Whether the second program is among them.
    pub second_part: bool,
    /// Whether what the browser fetches to call a kept page by its name is among them: it does so by
    /// itself, each time the page is opened.
    pub kept_page: bool,
}

/// A mark in the browser's own record, which both programs can read.
const READY: &str = "self-check-ready";

/// Notes that the page is ready: it has no reason to fetch anything from now on.
pub fn mark_ready() {
    if let Some(performance) = window().performance() {
        let _ = performance.mark(READY);
    }
}

/// Reads the browser's list; absent where the browser keeps none.
pub fn requests() -> Option<Requests> {
    let performance = window().performance()?;
    let here = window().location().origin().unwrap_or_default();
    let marks = performance.get_entries_by_name(READY);
    let mark: Option<PerformanceEntry> = marks.get(0).dyn_into().ok();
    let ready = mark.map_or(f64::INFINITY, |mark| mark.start_time());
    let second_part = second_part();
    let manifest = document().query_selector("link[rel=manifest]");
    let is_kept = manifest.is_ok_and(|link| link.is_some());
    let mut found = Requests::default();
    for entry in performance.get_entries_by_type("resource").iter() {
        let entry: PerformanceEntry = entry.unchecked_into();
        let address = entry.name();
        let is_here = belongs_here(&address, &here);
        found.elsewhere += usize::from(!is_here);
        // A second attempt at fetching is told from the first by a fragment.
        let file = address.split('#').next().unwrap_or_default();
        if is_here && second_part.iter().any(|name| file.ends_with(name)) {
            found.second_part = true;
        } else if is_here && is_kept && names_a_kept_page(file) {
            found.kept_page = true;
        } else {
            found.after_ready += usize::from(entry.start_time() > ready);
        }
        found.all.push(address);
    }
    Some(found)
}

/// The names of the second program's files, as the start script knows them. They carry the sum of
/// what is in them, so that no other file has such a name.
fn second_part() -> Vec<String> {
    let Ok(Some(boot)) = document().query_selector("script[data-rooms-script]") else {
        return Vec::new();
    };
    ["data-rooms-script", "data-rooms-wasm", "data-rooms-style"]
        .into_iter()
        .filter_map(|name| boot.get_attribute(name))
        .collect()
}

/// Whether a file is the manifest of a kept page or one of its icons.
fn names_a_kept_page(file: &str) -> bool {
    let name = file.rsplit('/').next().unwrap_or_default();
    let is_icon = name.starts_with("icon") && (name.ends_with(".svg") || name.ends_with(".png"));
    is_icon || name == "manifest.webmanifest"
}

/// Whether `address` was answered by this page itself or by where it came from.
fn belongs_here(address: &str, here: &str) -> bool {
    let within = address
        .strip_prefix(here)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with('/'));
    within || address.starts_with("data:") || address.starts_with("blob:")
}

#[cfg(test)]
mod tests {
    use super::names_a_kept_page;

    #[test]
    fn manifest_and_icons_name_a_kept_page() {
        for name in [
            "manifest.webmanifest",
            "icon.svg",
            "icon-maskable.svg",
            "icon-180.png",
        ] {
            assert!(
                names_a_kept_page(&format!("https://example.org/keys/{name}")),
                "{name}"
            );
        }
        for name in ["", "index.html", "worker.js", "icon.js", "icon/else.txt"] {
            assert!(
                !names_a_kept_page(&format!("https://example.org/{name}")),
                "{name}"
            );
        }
    }
}
