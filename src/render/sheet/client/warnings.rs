//! Owns the signs that do not wait. Basis: published (consensus on infection of a swollen limb;
//! numbness means off at once) and common practice.

use super::super::language::Texts;
use crate::anatomy::Limb;
use crate::document::Block;
use crate::report::Report;

/// The signs for which a garment comes off, worded for arm or leg.
pub(super) fn off(report: &Report, texts: &Texts) -> Block {
    let arm = report.limbs.iter().any(|limb| limb.limb == Limb::Arm);
    Block::list(texts.list(if arm { "off-arm" } else { "off-leg" }).iter().cloned())
}

/// The signs for a doctor the same day and for emergency help.
pub(super) fn signs(texts: &Texts) -> Vec<Block> {
    vec![
        Block::strong(texts.text("doctor-title")),
        Block::text(texts.text("doctor")),
        Block::strong(texts.text("emergency-title")),
        Block::text(texts.text("emergency")),
    ]
}
