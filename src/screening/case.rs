//! Owns what a screening is about: one limb of one record on one day.

use jiff::civil::Date;

use crate::garment::Schemes;
use crate::record::{LimbRecord, Record};
use crate::rules::{Group, Rules};

/// One limb of one record on one day, with the earlier records of the same run.
#[derive(Clone, Copy, Debug)]
pub struct Case<'a> {
    /// The record.
    pub record: &'a Record,
    /// The limb, one of the record's.
    pub limb: &'a LimbRecord,
    /// Earlier records of the same client and limb, in any order.
    pub earlier: &'a [Record],
    /// The rules.
    pub rules: &'a Rules,
    /// The pressure schemes, for a cap that is written as a class.
    pub schemes: &'a Schemes,
    /// Today.
    pub today: Date,
    /// Whether the course has found the swelling worse: older answers on the cause are open again, and
    /// a re-order does not hold.
    pub worsening: bool,
    /// Whether the limb has grown beyond measuring while nothing tells whether its swelling has: a re-order
    /// does not hold.
    pub grown: bool,
}

impl Case<'_> {
    /// Whether a group is answered for each side here.
    pub(super) fn is_sided(&self, group: Group) -> bool {
        self.record.is_both() && self.rules.group_rule(group).is_some_and(|rule| rule.per_side)
    }

    /// Whether both limbs are fitted.
    pub(super) fn is_both(&self) -> bool {
        self.record.is_both()
    }
}
