//! Small scenes in one hand, each on a grid of 48: what a key opens, where it is kept, what
//! happened to it, what ties it to a door.

pub mod doors;
pub mod happenings;
pub mod keeping;
pub mod leaves;
pub mod links;
pub mod pictures;

use super::view::Layer;

/// A scene: layers on a grid of 48 by 48, the ground at 44.
pub type Scene = &'static [Layer];
