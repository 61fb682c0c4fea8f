//! Drawings: geometry in millimetres from the families' own spacing, and thin views of it.
//!
//! No drawing knows a word: titles, descriptions and labels come in as properties. A drawing with a
//! title is `role="img"` with `<title>` and `<desc>`; one that stands beside words saying the same
//! is hidden from assistive technology. Only [`DrawnPattern`]'s own constants are ever drawn.
//!
//! What the first program draws are plain functions: a component costs it about two kilobytes, and none of
//! these has a state.
//!
//! | function or component | takes |
//! |---|---|
//! | [`key_drawing`], [`KeyDrawing`] | `title` `desc` (both optional) `pattern` `stamp: Stamp` `frame: bool` |
//! | [`KeyParts`] | `title` `desc` `parts: Vec<(Part, AttrValue)>` |
//! | [`NumberedCuts`] | `title` `desc` `pattern` `under: Vec<AttrValue>` `stamp` |
//! | [`question_drawing`] | `question` `title` `desc` (draws nothing where [`is_drawn_by_choices`]) |
//! | [`choice_drawing`] | `choice`: silent, goes into `.opt` or `.starts`; nothing where none helps |
//! | [`pouch()`] | `level`: silent, the level's word stands beside it |
//! | [`brass_rule`] | `title` `desc`, and a [`BrassRule`]: `now: (fewest, most)` `now_word` `before: Option<(keys, word)>` `numbers` `marks: Vec<RuleMark>` |
//! | [`progress_rule`] | `done` `total`: silent |
//! | [`urgency_mark`] | `urgency`: silent, goes into `.when` before the word |
//! | [`DistanceChart`] | `title` `desc` `plot: Rc<Plot>` `you: Tick` |

mod bars;
mod blade;
mod chart;
mod choice;
#[cfg(test)]
mod class_list;
#[cfg(test)]
mod contrast;
mod key;
mod kinds;
mod marking;
mod parts;
mod path;
mod pattern;
mod pouch;
mod progress;
mod question;
mod rule;
mod ruler;
mod scenes;
mod urgency;
mod view;

pub use bars::{Bar, Bars};
pub use chart::{ChartLine, DistanceChart, LogAxis, Plot, Tick};
pub use choice::choice_drawing;
pub use key::{KeyDrawing, Stamp, key_drawing};
pub use parts::{KeyParts, NumberedCuts, Part};
pub use pattern::DrawnPattern;
pub use pouch::pouch;
pub use progress::progress_rule;
pub use question::{is_drawn_by_choices, question_drawing};
pub use rule::{BrassRule, RuleMark, brass_rule};
pub use ruler::{CARD_SHORT_SIDE, length as ruler_length, true_ruler};
pub use urgency::urgency_mark;
