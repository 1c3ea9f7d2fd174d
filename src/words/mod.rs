//! Owns how a figure, a band of pressure, a landmark, a count, a list and a date are said: one place
//! each, for text, sheets and sentences.
//!
//! Decides nothing: it says what it is given.

mod figure;
mod band;
mod landmark;
mod count;
mod date;

pub use band::{band, band_figures};
pub use count::{capital, counted, list, list_or, lower_first, number_word, ordinal_of};
pub use date::{date_long, date_short};
pub use figure::{
    chance, cm, cm_of_tenths, cm_short, decimal, exponent, fraction_percent, kilogram, millilitre, mmhg,
    percent, plain, trimmed, whole,
};
pub use landmark::{against, at, label, noun, the};
