//! Owns the client's leaf as a whole.

use super::super::language::Texts;
use super::super::subject::is_trial;
use super::{clinic, garment, matters, none};
use crate::document::{Block, Head, Leaf, Reader};
use crate::report::Report;

/// The leaf: one sheet of paper, both sides, numbered by itself.
pub(in super::super) fn client(report: &Report, texts: &Texts) -> Leaf {
    let record = &report.record;
    // What comes off now is looked at before anything is worn.
    let (title, mut blocks) = if is_trial(report) && !matters::comes_off(report, texts) {
        (texts.text("title-garment").to_owned(), garment::garment(report, texts))
    } else {
        none::none(report, texts)
    };
    blocks.extend(clinic::clinic(report, texts));
    if !texts.review.is_empty() {
        blocks.push(Block::small(texts.review.clone()));
    }
    let limb = texts.limb(&record.limb).to_uppercase();
    let day = |key: &str, on: &str| texts.filled(key, &[("{date}", &texts.day(on))]);
    Leaf {
        reader: Reader::Client,
        head: Head {
            bold: format!("{} \u{b7} {limb} \u{b7} {}", record.client, texts.text("for-you")),
            plain: format!(
                "{} \u{b7} {}",
                day("measured", &record.measured_on),
                day("printed", &report.today)
            ),
        },
        title,
        blocks,
        language: texts.language.clone(),
        numbered: texts.text("page").to_owned(),
        apart: true,
    }
}
