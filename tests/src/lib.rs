//! Journeys.
