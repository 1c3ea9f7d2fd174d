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

// What tests share.
mod made;
mod source;
mod strip;
mod support;
mod same_size;
mod same_step;
mod scene;
mod random;
mod screened;
mod fall_support;
mod worn_garments;
mod worn_harm;
mod worn_support;
mod sheet_others;
mod sheet_blocks;
mod sheet_reports;

// The tests.
mod adults;
mod arteries;
mod batch_check;
mod batch_ids;
mod caseload;
mod caseload_command;
mod chance;
mod chance_volume;
mod chart_faults;
mod charts;
mod cli;
mod clients;
mod conformance;
mod conformance_volume;
mod contradictions;
mod demo;
mod document;
mod entry;
mod estimate;
mod explain;
mod fall;
mod fall_chances;
mod fall_laws;
mod fall_outside;
mod fall_wrong_before;
mod findings;
mod fuzz;
mod gradient_vectors;
mod guards;
mod hazards;
mod headings;
mod input;
mod inspection;
mod interrupted;
mod labels;
mod laws_screening;
mod laws_volume;
mod layering;
mod limbs;
mod malformed;
mod mangled;
mod misreadings;
mod odd_charts;
mod pdf_text;
mod offered;
mod one_truth;
mod pattern;
mod ranking;
mod rates;
mod readings;
mod readme;
mod robust;
mod rules;
mod said_once;
mod screening;
mod sheet;
mod settled_words;
mod shipped;
mod urgent_first;
mod sizing;
mod tape;
mod turns;
mod unheld;
mod units;
mod visits;
mod volume_command;
mod worked_course;
mod worked_pressure;
mod worked_volume;
mod whose;
mod worn_words;
mod wrong_before;
