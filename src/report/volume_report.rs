//! Owns the report of the `volume` command: volumes, sides and the course, without a decision.

use serde::Serialize;

use super::{CourseBlock, FindingRow, LIMITS, Tool, VolumeBlock, VolumeDetail, build_finding};
use crate::anatomy::{Limb, Side};
use crate::assessment::Assessment;
use crate::volume::VolumeNumbers;
use crate::words;

/// Findings of volumes, of their course and of girths; the others are the check's.
const SHOWN: [&str; 22] = [
    "worsening",
    "not-settled",
    "protocol-differs",
    "change-beyond-error",
    "distal-hidden",
    "volume-not-compared",
    "other-limb-not-measured",
    "both-affected",
    "affected",
    "thinner",
    "weight-changed",
    "infections",
    "infection-recent",
    "garment-due",
    "garment-outgrown",
    "girths-old",
    "girth-changed",
    "girth-falls",
    "unusual-girth",
    "unusual-proportion",
    "repeats-apart",
    "positions",
];

/// What the figures are.
const ESTIMATES: &str = "Volumes are estimates from girths; hand and foot are left out. Changes within measurement error say nothing.";

/// The report of volumes.
#[derive(Clone, Debug, Serialize)]
pub struct VolumeReport {
    /// `tapeline.volume/1`.
    pub schema: &'static str,
    /// The program.
    pub tool: Tool,
    /// The day.
    pub today: String,
    /// The newest record.
    pub record: VolumeRecord,
    /// What was found of the volumes, of their course and of the girths behind them, worst first.
    pub findings: Vec<FindingRow>,
    /// One limb or two.
    pub limbs: Vec<VolumeLimb>,
    /// The course over the visits; null where there is nothing to follow.
    pub course: Option<CourseBlock>,
    /// Sentences that go with every report.
    pub limits: Vec<String>,
}

/// The newest record.
#[derive(Clone, Debug, Serialize)]
pub struct VolumeRecord {
    /// The clinic's reference.
    pub client: String,
    /// The day of measuring.
    pub measured_on: String,
    /// Who measured.
    pub measured_by: Option<String>,
    /// The limb as files write it.
    pub limb: String,
    /// Which side is affected: `left`, `right`, `both`, `none`.
    pub affected: &'static str,
}

/// One limb.
#[derive(Clone, Debug, Serialize)]
pub struct VolumeLimb {
    /// Arm or leg.
    pub limb: Limb,
    /// Left or right.
    pub side: Side,
    /// As printed: `left arm`.
    pub printed: String,
    /// As printed: `right arm`.
    pub other_printed: String,
    /// Its volume.
    pub volume: VolumeBlock,
    /// Beyond the block of every report.
    pub detail: VolumeDetail,
}

impl VolumeReport {
    /// Of an assessment: volumes, course, and what was found of them and of the girths behind them.
    pub fn of(found: &Assessment) -> Self {
        let (record, setting) = (&found.record, &found.setting);
        let limbs = record
            .limbs
            .iter()
            .zip(&found.limbs)
            .map(|(limb, assessed)| {
                let volume = &assessed.volume;
                let other = match limb.side {
                    Side::Left => Side::Right,
                    Side::Right => Side::Left,
                };
                VolumeLimb {
                    limb: record.limb,
                    side: limb.side,
                    printed: format!("{} {}", limb.side.name(), record.limb.name()),
                    other_printed: format!("{} {}", other.name(), record.limb.name()),
                    volume: VolumeBlock::of(record.limb, volume, record.tells_pair(limb)),
                    detail: VolumeDetail::of(volume),
                }
            })
            .collect();
        let numbers = VolumeNumbers::of(&setting.rules);
        Self {
            schema: "tapeline.volume/1",
            tool: Tool { name: "tapeline", version: env!("CARGO_PKG_VERSION") },
            today: words::date_short(setting.today),
            record: VolumeRecord {
                client: record.client.to_string(),
                measured_on: words::date_short(record.measured_on),
                measured_by: record.measured_by.as_ref().map(ToString::to_string),
                limb: record.limb_words(),
                affected: record.affected.word(),
            },
            limbs,
            findings: found
                .findings
                .iter()
                .filter(|one| SHOWN.contains(&one.id.text()))
                .map(|one| build_finding::finding(found, one))
                .collect(),
            course: found
                .course
                .as_ref()
                .map(|one| CourseBlock::of(one, found.record.limb, &found.drift, &[], &numbers)),
            limits: ([ESTIMATES].iter().chain(LIMITS.get(1)).map(|one| (*one).to_owned()))
                .chain(setting.rules.tape_sentence(record.limb))
                .collect(),
        }
    }
}
