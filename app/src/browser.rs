//! All that touches the browser itself. Nothing outside these files uses `web_sys`.

mod addresses;
mod arrival;
mod canvas;
mod failure;
mod leaving;
mod picture;
mod place;
mod requests;
mod screen;
mod sharing;

pub use addresses::keep_to_addresses;
pub use arrival::{arrive, focus_id, set_title};
pub use canvas::paint_grey;
pub use failure::{app_root, report_panics};
pub use leaving::{forget_when_hidden, leave_now};
pub use picture::{
    Canvas, CopyFormat, Decoded, LocalFile, SafeCopy, Working, breathe, dropped_file, file_bytes,
    has_worked_long, input_file, show, show_enlarged, spare_canvas, when_pasted, work_begins,
};
pub use place::{hold_pointer, place_on};
pub use requests::{Requests, mark_ready, requests};
pub use screen::{page_width, slider_value};
pub use sharing::{copy_text, print};
