//! The pages, one file each.

mod about;
mod check;
mod distance;
mod learn;
mod look_over;
mod next_hour;
mod not_found;
mod picture;
mod question;
mod result;
mod room;
mod ruler;
mod safety;
mod start;

pub use about::About;
pub use check::Check;
pub use distance::Distance;
pub use learn::{Learn, Read};
pub use not_found::NotFound;
pub use picture::Picture;
pub use room::Room;
pub use ruler::Ruler;
pub use start::Start;
