//! All that touches the browser itself. Nothing outside these files uses `web_sys`.

mod addresses;
mod arrival;
mod canvas;
mod failure;
mod keeping;
mod leaving;
mod picture;
mod place;
mod requests;
mod rooms;
mod screen;
mod sharing;

pub use addresses::{address, go_instead_to, go_to, keep_to_addresses, on_move};
pub use arrival::{arrive, comes_first, focus_id, set_arrived, set_title};
pub use canvas::paint_grey;
pub use failure::{app_root, report_panics};
pub use keeping::{Wish, forbid_keeping, is_kept, may_offer_to_keep, one_file};
pub use leaving::{forget_when_hidden, forget_when_left, leave_now};
pub use picture::{
    Canvas, CopyFormat, Decoded, LocalFile, SafeCopy, Working, breathe, dropped_file,
    has_worked_long, input_file, part_of_file, show, show_enlarged, spare_canvas, when_pasted,
    work_begins,
};
pub use place::{hold_pointer, place_on};
pub use requests::{Requests, mark_ready, requests};
pub use rooms::{Host, open_rooms, room_element, stand_in, take_out};
pub use screen::{on_resize, place_in_list, room_in, slider_value};
pub use sharing::{copy_text, print};
