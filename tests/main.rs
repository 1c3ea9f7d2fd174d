//! All tests, one binary; each module is one kind.

#![allow(
    missing_docs,
    unreachable_pub,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::print_stdout,
    clippy::assigning_clones,
    clippy::cast_lossless,
    clippy::doc_markdown,
    clippy::format_push_string,
    clippy::items_after_statements,
    clippy::manual_contains,
    clippy::needless_for_each,
    clippy::needless_pass_by_value,
    clippy::semicolon_if_nothing_returned,
    clippy::too_many_lines,
    clippy::unreadable_literal,
    reason = "a test that cannot go on should stop with a panic that says where"
)]

mod made;

mod input;

mod source;
mod scene;
mod random;
mod contradictions;
mod one_truth;
mod findings;
mod layering;
mod explain;
mod labels;
mod fall;
mod fall_support;
mod gradient_vectors;
mod worked_course;
mod worked_volume;
mod laws_volume;
mod volume_command;
mod conformance_volume;
mod arteries;
mod rules;
mod chance;
mod limbs;
mod misreadings;
mod chance_volume;
mod screened;
mod estimate;
mod worn_support;
mod pattern;
mod visits;

mod caseload;
mod inspection;
mod charts;
mod sizing;
mod screening;
mod malformed;
mod clients;
mod wrong_before;
mod laws_screening;
mod guards;
mod adults;
mod hazards;
mod demo;
mod readme;
mod support;
mod cli;
mod robust;
mod document;
mod sheet;
mod sheet_reports;
mod rates;
mod fall_laws;
mod fall_outside;
mod worked_pressure;
mod mangled;
