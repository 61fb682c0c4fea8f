//! Journeys through the finished site; see the crate's documentation for how to write one.

#[path = "journeys/walking.rs"]
mod walking;

#[path = "journeys/accessible.rs"]
mod accessible;
#[path = "journeys/around.rs"]
mod around;
#[path = "journeys/check.rs"]
mod check;
#[path = "journeys/distance.rs"]
mod distance;
#[path = "journeys/estate.rs"]
mod estate;
#[path = "journeys/faults.rs"]
mod faults;
#[path = "journeys/fits.rs"]
mod fits;
#[path = "journeys/forgetting.rs"]
mod forgetting;
#[path = "journeys/hosting.rs"]
mod hosting;
#[path = "journeys/keeping.rs"]
mod keeping;
#[path = "journeys/keys.rs"]
mod keys;
#[path = "journeys/larger.rs"]
mod larger;
#[path = "journeys/list.rs"]
mod list;
#[path = "journeys/losses.rs"]
mod losses;
#[path = "journeys/offline.rs"]
mod offline;
#[path = "journeys/one_file.rs"]
mod one_file;
#[path = "journeys/picture.rs"]
mod picture;
#[path = "journeys/picture_reading.rs"]
mod picture_reading;
#[path = "journeys/print.rs"]
mod print;
#[path = "journeys/privacy.rs"]
mod privacy;
#[path = "journeys/rooms.rs"]
mod rooms;
#[path = "journeys/wishes.rs"]
mod wishes;
