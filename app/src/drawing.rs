//! Drawings: geometry in millimetres from the families' own spacing, and thin views of it.
//!
//! No drawing knows a word: titles, descriptions and labels come in as properties. A drawing with a
//! title is `role="img"` with `<title>` and `<desc>`; one that stands beside words saying the same
//! is hidden from assistive technology. Only [`DrawnPattern`]'s own constants are ever drawn.
//!
//! | component | properties |
//! |---|---|
//! | [`KeyDrawing`] | `title` `desc` (both optional) `pattern` `stamp: Stamp` `frame: bool` |
//! | [`KeyParts`] | `title` `desc` `parts: Vec<(Part, AttrValue)>` |
//! | [`NumberedCuts`] | `title` `desc` `pattern` `under: Vec<AttrValue>` `stamp` |
//! | [`QuestionDrawing`] | `question` `title` `desc` (draws nothing where [`is_drawn_by_choices`]) |
//! | [`ChoiceDrawing`] | `choice`: silent, goes into `.opt` or `.starts`; nothing where none helps |
//! | [`Pouch`] | `level`: silent, the level's word stands beside it |
//! | [`BrassRule`] | `title` `desc` `now: (fewest, most)` `now_word` `before: Option<(keys, word)>` `numbers` `marks: Vec<RuleMark>` |
//! | [`ProgressRule`] | `done` `total`: silent |
//! | [`UrgencyMark`] | `urgency`: silent, goes into `.when` before the word |
//! | [`HungKey`] | `is_marked`: silent |
//! | [`DoorDrawing`] | `kind` `is_marked`: silent |
//! | [`DistanceChart`] | `title` `desc` `distance`, `keys: LogAxis` `distances`, `numbers`, `levels: Vec<Tick>` `lines: Vec<ChartLine>` `you: Option<Tick>` |

mod bars;
mod blade;
mod board;
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
pub use board::{DoorDrawing, HungKey};
pub use chart::{ChartLine, DistanceChart, LogAxis, Tick};
pub use choice::ChoiceDrawing;
pub use key::{KeyDrawing, Stamp};
pub use parts::{KeyParts, NumberedCuts, Part};
pub use pattern::DrawnPattern;
pub use pouch::Pouch;
pub use progress::ProgressRule;
pub use question::{QuestionDrawing, is_drawn_by_choices};
pub use rule::{BrassRule, RuleMark};
pub use ruler::{CARD_SHORT_SIDE, TrueRuler, length as ruler_length};
pub use urgency::UrgencyMark;
