//! All that touches the browser itself. Nothing outside these files uses `web_sys`.

mod addresses;
mod arrival;
mod canvas;
mod failure;
mod fields;
mod files;
mod keeping;
mod kept;
mod leaving;
mod left;
mod pause;
mod picture;
mod place;
mod requests;
mod rooms;
mod screen;
mod sharing;
mod tabs;

pub use addresses::{address, go_instead_to, go_to, keep_to_addresses, on_move};
pub use arrival::{arrive, arrive_at, comes_first, focus_first, focus_id, set_arrived, set_title};
pub use canvas::paint_grey;
pub use failure::{app_root, report_panics};
pub use fields::{chosen_value, typed_text};
pub use files::{FileTrouble, chosen_file, empty_field, read_file, save_file, text_in};
pub use keeping::{
    Wish, build, forbid_keeping, is_from_disk, is_kept, may_offer_to_keep, one_file,
};
pub use kept::{
    Expected, Found, KeepTrouble, Mark, Outcome, Record, drop_kept, read_kept, remove_kept,
    write_kept,
};
pub use leaving::{forget_when_hidden, forget_when_left, leave_now};
pub use left::{Left, what_is_left};
pub use pause::until_shown;
pub use picture::{
    Area, Canvas, CopyFormat, Decoded, LocalFile, SafeCopy, Working, breathe, dropped_file,
    has_worked_long, input_file, part_of_file, show, show_enlarged, spare_canvas, when_pasted,
    work_begins,
};
pub use place::{hold_pointer, place_on};
pub use requests::{Requests, mark_ready, requests};
pub use rooms::{
    Host, Opened, begin_anew, on_begin_anew, open_rooms, room_element, stand_in, take_out,
};
pub use screen::{on_resize, place_in_list, room_in, slider_value};
pub use sharing::{copy_text, print};
pub use tabs::{News, Tabs, tell_tabs};
