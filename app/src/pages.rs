//! The pages, one file each.

mod about;
mod check;
mod distance;
mod keys;
mod learn;
mod look_over;
mod not_found;
mod picture;
mod question;
mod result;
mod room;
mod ruler;
mod start;
mod to_read;

pub use about::About;
pub use check::{check, is_beyond, lead_back};
pub use distance::Distance;
pub use keys::{Keys, KeysPage};
pub use learn::{Learn, Read};
pub use not_found::not_found;
pub use picture::Picture;
pub use room::Room;
pub use ruler::Ruler;
pub use start::start;
