//! The only key patterns that are ever drawn: the core's invented ones.

pub use self_check_core::demonstration::DemonstrationPattern as DrawnPattern;
