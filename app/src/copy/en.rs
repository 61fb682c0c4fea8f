//! English.

pub mod actions;
pub mod choices;
pub mod findings;
pub mod headline;
pub mod household;
pub mod keep;
pub mod learn;
pub mod numbers;
pub mod picture;
pub mod questions;
pub mod reading;
pub mod regions;
pub mod rules;
pub mod sight;
pub mod site;
pub mod terms;

#[cfg(test)]
pub use actions::AROUND_AN_ACTION;
pub use actions::{action, advised, how, what_if};
pub use choices::choice;
pub use findings::{
    event, is_open, knows_the_door, level, level_meaning, no_count, reading, source_kind, standing,
    urgency, waits_for,
};
pub use headline::{headline, headline_groups, number_on_the_key};
pub use household::Names;
pub use learn::{figure, learn};
#[cfg(test)]
pub use questions::{OTHER_WAYS_TO_FIND_OUT, find_out};
pub use questions::{caption, find_out_on, not_sure_hint, question, question_on, short};
pub use reading::{about, landlord_letter, matters_more, next_hour, safety};
pub use regions::{licensing, region, regions_compared, tenancy_rule, tenancy_scope};
pub use rules::rule;
pub use sight::{
    assumption, dimension, distance, distance_and_tries, figure_with_unit, metres, number_legible,
    planned_to_identify, property, scene, seen_from, tries_left,
};
pub use terms::term;
