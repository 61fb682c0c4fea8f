//! A source, as a line to read.

use self_check_core::sources::Source;

use crate::copy;

/// Who, what, when and where in it, as far as known, and how far it can be trusted.
pub fn source_line(source: &Source) -> String {
    let year = source.year.map(|year| year.to_string()).unwrap_or_default();
    let parts = [source.authors, source.title, source.place, &year];
    let citation: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    format!(
        "{}: {}",
        copy::source_kind(source.kind).name,
        citation.join(", ")
    )
}
