//! Pictures from anywhere: files and strips that are good, broken and made up.
#![allow(clippy::unwrap_used)]

#[path = "picture/files.rs"]
mod files;
#[path = "picture/floods.rs"]
mod floods;
#[path = "picture/heif.rs"]
mod heif;
#[path = "picture/hostile.rs"]
mod hostile;
#[path = "picture/interface.rs"]
mod interface;
#[path = "picture/strips.rs"]
mod strips;
#[path = "picture/unread.rs"]
mod unread;
