//! Parts that pages share.

mod copy_text;
mod error_summary;
mod fields;
mod forget;
mod frame;
mod household;
mod page;
mod page_links;
mod progress;
mod reading;
mod source;
mod visit;

pub use copy_text::CopyText;
pub use error_summary::{ERROR_SUMMARY, error_summary, go_to_error_summary};
pub use fields::{Field, choose, choose_among, choose_if_known, count_field, text_field, tick};
pub use forget::Forget;
pub use frame::frame;
pub use household::use_household;
pub use page::{Titled, use_page, use_session};
pub use page_links::page_links;
pub use progress::{Length, progress};
pub use reading::{reading, reading_part, reading_with};
pub use source::source_line;
pub use visit::{Visit, use_address, use_visit};
