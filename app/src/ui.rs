//! Parts that pages share.

mod copy_text;
mod error_summary;
mod forget;
mod frame;
mod page;
mod page_links;
mod progress;
mod reading;
mod source;
mod visit;

pub use copy_text::CopyText;
pub use error_summary::ErrorSummary;
pub use forget::Forget;
pub use frame::Frame;
pub use page::{use_page, use_session};
pub use page_links::PageLinks;
pub use progress::{Length, Progress};
pub use reading::{reading, reading_part, reading_with};
pub use source::source_line;
pub use visit::{Visit, use_address, use_visit};
