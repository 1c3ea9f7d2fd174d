//! `tapeline` checks limb girths against garment size charts, estimates the interface pressure
//! along the limb, and says what has to be looked at before a fitting. Everything it says is an
//! estimate; a certified fitter and the treating clinician decide.
//!
//! The modules stand in import order: a module uses only those above it.

#![forbid(unsafe_code)]

pub mod quantity;
pub mod anatomy;
pub mod words;
pub mod document;
pub mod input;
pub mod rules;
pub mod record;
pub mod garment;
pub mod volume;
pub mod sizing;
pub mod pressure;
pub mod gradient;
pub mod screening;
pub mod estimate;
pub mod finding;
pub mod assessment;
pub mod caseload;
pub mod inspection;
pub mod report;
pub mod explain;
pub mod render;
