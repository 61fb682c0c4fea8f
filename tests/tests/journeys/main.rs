//! Journeys through the finished site; see the crate's documentation for how to write one.

mod looking;
mod walking;

mod accessible;
mod around;
mod check;
mod distance;
mod estate;
mod faults;
mod fits;
mod focus;
mod forgetting;
mod hosting;
mod keeping;
mod keys;
mod larger;
mod list;
mod locksmith;
mod losses;
mod offline;
mod one_file;
mod picture;
mod picture_reading;
mod print;
mod privacy;
mod rooms;
mod wishes;
