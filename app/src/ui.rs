//! Parts that pages share.

mod error_summary;
mod figure;
mod frame;
mod page;
mod page_links;
mod progress;
mod reading;
mod regions;
mod source;

pub use error_summary::ErrorSummary;
pub use frame::Frame;
pub use page::{use_page, use_session};
pub use page_links::PageLinks;
pub use progress::{Length, Progress};
pub use reading::{reading, reading_part};
pub use source::source_line;
