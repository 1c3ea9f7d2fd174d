//! Owns whether what was cleared counts: role, condition, decision, dates, cap.

use jiff::civil::Date;

use super::{Case, cap_mmhg};
use crate::record::{ByProtocol, ClearDecision, Cleared};
use crate::rules::{ClearRule, ClearWhen, NumberId, Role};

/// Why a clearing does not count.
#[derive(Clone, Debug, PartialEq)]
pub enum WhyVain {
    /// Nobody may clear it.
    Nobody,
    /// That role may not.
    Role(Vec<ClearRule>),
    /// That role may only under a condition that does not hold.
    Condition(ClearWhen),
    /// That role may only by a protocol, and `by` does not name it.
    ProtocolNotNamed,
    /// It is dated ahead of today.
    Ahead,
    /// It is dated before the answer.
    BeforeAnswer(Date),
    /// It has run out.
    RunOut(Date),
    /// It states no cap where one is needed, or one without an upper end.
    NoCap,
    /// Its cap lies above what a protocol allows, mmHg.
    CapAboveProtocol(f64),
    /// It names no referral, or one ahead of today.
    NoReferral,
    /// It names no side where each side is cleared by itself.
    NoSide,
    /// It names a stop.
    Stop,
    /// It names something that is not there.
    NotThere,
}

impl WhyVain {
    /// Whether it is the role that may not, or not so.
    fn is_about_the_role(&self) -> bool {
        matches!(self, Self::Nobody | Self::Role(_) | Self::Condition(_) | Self::ProtocolNotNamed)
    }
}

/// What was decided on something.
#[derive(Clone, Debug)]
pub enum Clearing {
    /// Nothing.
    Open,
    /// Cleared, until that day (none = beyond the calendar), with entries of others who may not clear it.
    Cleared(Box<Cleared>, Option<Date>, Vec<(Cleared, WhyVain)>),
    /// Refused by one who may clear it: it stays.
    Refused(Box<Cleared>),
    /// Entries that do not count, each with its reason.
    Vain(Vec<(Cleared, WhyVain)>),
}

impl Clearing {
    /// Whether it may go on.
    pub fn is_cleared(&self) -> bool {
        matches!(self, Self::Cleared(..))
    }

    /// The entry that counts.
    pub fn counting(&self) -> Option<&Cleared> {
        match self {
            Self::Cleared(entry, ..) => Some(entry),
            _ => None,
        }
    }

    /// The entries that do not count, each with its reason.
    pub fn vain(&self) -> &[(Cleared, WhyVain)] {
        match self {
            Self::Cleared(_, _, vain) | Self::Vain(vain) => vain,
            Self::Open | Self::Refused(_) => &[],
        }
    }
}

/// What is to be cleared.
#[derive(Clone, Copy, Debug)]
#[expect(clippy::struct_excessive_bools, reason = "four facts that have nothing in common")]
pub(super) struct Asked<'a> {
    /// Item, arterial value or finding.
    pub(super) id: &'a str,
    /// When it was answered, taken or measured.
    pub(super) on: Option<Date>,
    /// Whether it is cleared for each side by itself.
    pub(super) sided: bool,
    /// Whether a cap is needed.
    pub(super) capped: bool,
    /// The cap written with the arterial values, mmHg.
    pub(super) written_cap: Option<f64>,
    /// Whether light touch is felt.
    pub(super) light_touch: bool,
    /// Whether the arterial decision passes.
    pub(super) arterial_pass: bool,
}

/// The entries of a case, with whether each names its side.
pub(super) fn entries<'a>(case: &Case<'a>) -> impl Iterator<Item = (&'a Cleared, bool)> {
    let both = case.record.is_both();
    let client = case.record.cleared.iter().map(move |one| (one, !both));
    client.chain(case.limb.cleared.iter().map(|one| (one, true)))
}

/// What was decided on `asked`. A refusal by one who may clear goes before any clearing; of the clearings
/// the first that counts is taken.
pub(super) fn clearing<'a>(case: &Case<'a>, earlier: Option<&Case<'a>>, asked: Asked<'_>) -> Clearing {
    let all: Vec<(&Cleared, bool)> = entries(case)
        .chain(earlier.into_iter().flat_map(|one| entries(one)))
        .filter(|(entry, _)| entry.item.text == asked.id)
        .collect();
    let may = case.rules.cleared_by(asked.id).unwrap_or_default();
    let may_refuse = |entry: &Cleared| may.is_empty() || may.iter().any(|one| one.role == entry.role);
    let refused = all.iter().find(|(entry, _)| entry.decision == ClearDecision::Refused && may_refuse(entry));
    if let Some((entry, _)) = refused {
        return Clearing::Refused(Box::new((*entry).clone()));
    }
    let mut vain = Vec::new();
    let mut counts: Option<&Cleared> = None;
    for (entry, names_side) in all {
        match why_vain(case, entry, names_side, asked) {
            None => {
                let _first = counts.get_or_insert(entry);
            }
            Some(why) => vain.push((entry.clone(), why)),
        }
    }
    if let Some(entry) = counts {
        // One that has run out or lacks something is replaced by one that counts; a role that may not is said.
        vain.retain(|(_, why)| why.is_about_the_role());
        return Clearing::Cleared(Box::new(entry.clone()), last_day(case, entry), vain);
    }
    if vain.is_empty() { Clearing::Open } else { Clearing::Vain(vain) }
}

fn last_day(case: &Case<'_>, entry: &Cleared) -> Option<Date> {
    entry.until.or_else(|| case.rules.time(NumberId::ClearingValid).last_day(entry.cleared_on))
}

fn why_vain(case: &Case<'_>, entry: &Cleared, names_side: bool, asked: Asked<'_>) -> Option<WhyVain> {
    let may = case.rules.cleared_by(asked.id).unwrap_or_default();
    if may.is_empty() {
        return Some(WhyVain::Nobody);
    }
    let own: Vec<&ClearRule> = may.iter().filter(|one| one.role == entry.role).collect();
    if own.is_empty() {
        return Some(WhyVain::Role(may));
    }
    let holds = |when: ClearWhen| match when {
        ClearWhen::Always => true,
        ClearWhen::ByProtocol => matches!(entry.by_protocol, Some(ByProtocol::Named(_))),
        ClearWhen::AfterArterialPass => asked.arterial_pass,
        ClearWhen::LightTouchFelt => asked.light_touch,
    };
    let Some(rule) = own.iter().find(|one| holds(one.when)) else {
        let unnamed = entry.by_protocol == Some(ByProtocol::Unnamed);
        return own.first().map(|one| match one.when {
            ClearWhen::ByProtocol if unnamed => WhyVain::ProtocolNotNamed,
            when => WhyVain::Condition(when),
        });
    };
    if asked.sided && !names_side {
        return Some(WhyVain::NoSide);
    }
    if entry.cleared_on > case.today {
        return Some(WhyVain::Ahead);
    }
    if let Some(on) = asked.on.filter(|on| entry.cleared_on < *on) {
        return Some(WhyVain::BeforeAnswer(on));
    }
    if let Some(last) = last_day(case, entry).filter(|last| case.today > *last) {
        return Some(WhyVain::RunOut(last));
    }
    if asked.capped { why_uncapped(case, entry, rule.when, asked.written_cap) } else { None }
}

/// A band of an arterial value is cleared only with a cap, its own or the one written with the values.
fn why_uncapped(case: &Case<'_>, entry: &Cleared, when: ClearWhen, written: Option<f64>) -> Option<WhyVain> {
    let own = entry.cap.as_ref().and_then(|cap| cap_mmhg(cap, case.schemes));
    let Some(cap) = own.into_iter().chain(written).reduce(f64::min) else {
        return Some(WhyVain::NoCap);
    };
    if when != ClearWhen::ByProtocol || entry.role != Role::Podiatry {
        return None;
    }
    if cap > case.rules.number(NumberId::ProtocolCap) + 1e-9 {
        return Some(WhyVain::CapAboveProtocol(cap));
    }
    entry.referred_on.is_none_or(|on| on > case.today).then_some(WhyVain::NoReferral)
}
