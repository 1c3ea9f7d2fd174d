//! `tapeline new`: a record, chart, garment or fabric, step by step or as a template.

mod command;
mod ask;
mod kept;
mod step;
mod engine;
mod answer;
mod record;
mod marks;
mod questions;
mod seen;
mod arteries;
mod claimed;
mod chart;
mod garment;
mod fabric;
mod template;
mod blank;

pub(super) use command::{EXAMPLES, New, run};
