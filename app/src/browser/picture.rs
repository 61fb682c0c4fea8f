//! Pictures: taking a file in, having the browser decode it, reading parts of it, and making a copy.
//! Nothing leaves the browser; large pictures are drawn in strips, so that the page never stands still.

mod copy;
mod decode;
mod show;
mod take;

/// A part of a picture, in whole pixels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Area {
    /// First column.
    pub left: u32,
    /// First row.
    pub top: u32,
    /// Number of columns.
    pub width: u32,
    /// Number of rows.
    pub height: u32,
}

pub use copy::{CopyFormat, SafeCopy};
pub use decode::{Decoded, Working, breathe, has_worked_long, spare_canvas, work_begins};
pub use show::{show, show_enlarged};
pub use take::{LocalFile, dropped_file, input_file, part_of_file, when_pasted};
pub use web_sys::HtmlCanvasElement as Canvas;
