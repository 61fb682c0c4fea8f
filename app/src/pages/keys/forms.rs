//! The forms of the board. A form holds a draft; saving makes all of its changes in one step, or
//! says why not and keeps the draft.

mod door;
mod edit;
mod filing;
mod holder;
mod key;
mod lock;
mod needs;
mod place;
mod tick_list;
mod way;

pub use door::DoorForm;
pub use holder::HolderForm;
pub use key::KeyForm;
pub use lock::LockForm;
pub use needs::NeedsForm;
pub use way::{WayForm, keys_in};
