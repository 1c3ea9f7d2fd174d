//! Owns the screening of one limb, settled: every question answered or open, every item that is there
//! with its weight and what was decided on it.

use std::cell::OnceCell;
use std::collections::BTreeMap;

use jiff::civil::Date;

use super::arterial::{arterial, block_of, is_toe_sound, values_pass};
use super::clearing::{Asked, clearing, entries};
use super::re_order::{answer_with, re_order};
use super::{
    AllergyWords, Answer, ArterialDecision, Case, Clearing, Present, ReOrder, WhyOpen, WhyVain,
    allergy_words, cap_mmhg,
};
use crate::anatomy::{Limb, Side};
use crate::input::YesNo;
use crate::record::{Allergies, Cleared, Observed, Pitting};
use crate::rules::{AnsweredBy, ArterialValue, Group, ItemRule, NumberId, Severity, Urgency, WeighWhen};

/// A question that is open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unanswered {
    /// An item, a key of `observed`, `allergies` or `cause`.
    pub id: String,
    /// The group that it is asked in, if any.
    pub group: Option<Group>,
    /// Why.
    pub why: WhyOpen,
}

/// A group whose answers are old enough for a caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stale {
    /// Which.
    pub group: Group,
    /// The oldest answer that counts.
    pub on: Date,
}

/// The screening of one limb, settled.
#[derive(Clone, Debug)]
pub struct Screened {
    /// Arm or leg.
    pub limb: Limb,
    /// Left or right.
    pub side: Side,
    /// Whether anything at all was answered.
    pub asked: bool,
    /// How many questions are answered.
    pub answered: usize,
    /// Questions that are open, in the order they are asked.
    pub unanswered: Vec<Unanswered>,
    /// Items that are there, in the order they are asked.
    pub present: Vec<Present>,
    /// Groups with old answers.
    pub stale: Vec<Stale>,
    /// Items named present that belong to the other kind of limb: a note.
    pub of_other_limb: Vec<String>,
    /// What was seen on the limb.
    pub observed: Observed,
    /// The allergies stated, by the table of materials.
    pub allergies: AllergyWords,
    /// Whether an answer puts off measuring: girths taken now are not used.
    pub postpone: bool,
    /// A re-order with nothing changed, if the record states one.
    pub re_order: Option<ReOrder>,
    /// The arterial decision; none on an arm.
    pub arterial: Option<ArterialDecision>,
    /// Entries of `cleared` for screening or arteries that name nothing that is there.
    pub not_there: Vec<(Cleared, WhyVain)>,
    /// What is printed as the date of `soon`.
    pub soon: Option<Date>,
    /// The least cap of all that holds for this limb, mmHg.
    pub cap_mmhg: Option<f64>,
}

impl Screened {
    /// An item that is there.
    pub fn present(&self, id: &str) -> Option<&Present> {
        self.present.iter().find(|one| one.item == id)
    }

    /// Whether a question is open.
    pub fn is_open(&self, id: &str) -> bool {
        self.unanswered.iter().any(|one| one.id == id)
    }

    /// Whether a stop is there, of the items or the arterial values.
    pub fn has_stop(&self) -> bool {
        let values = self.arterial.iter().flat_map(|one| &one.values);
        self.present.iter().any(|one| one.severity == Severity::Stop)
            || values.into_iter().any(|one| one.severity == Some(Severity::Stop))
    }
}

/// Settles the screening of the limb of `case`.
pub fn settle(case: &Case<'_>) -> Screened {
    let re_order = re_order(case);
    let earlier = re_order.as_ref().and_then(|(_, earlier)| *earlier);
    let earlier = earlier.as_ref();
    let asked_items: Vec<&ItemRule> = asked_items(case, re_order.is_some());
    let by_id: BTreeMap<&str, Answer> =
        asked_items.iter().map(|item| (item.id.as_str(), answer_with(case, earlier, item))).collect();
    let answers = |id: &str| by_id.get(id).copied().unwrap_or(Answer::Open(WhyOpen::NotAnswered));
    let block = block_of(case, earlier);
    let passes: OnceCell<bool> = OnceCell::new();
    let arterial_pass = || match case.record.limb {
        Limb::Arm => true,
        Limb::Leg => *passes.get_or_init(|| values_pass(block, case, &answers)),
    };
    let holds = |when: WeighWhen| match when {
        WeighWhen::Always => true,
        WeighWhen::CauseKnown => answers("cause-not-known").is_absent(),
        WeighWhen::ToeSoundNoFootWound => is_toe_sound(block, case) && answers("foot-wound").is_absent(),
    };
    // Feeling lost with diabetes is light touch lost; it is asked of a leg only.
    let light_touch = || {
        let asked = |id: &&str| by_id.contains_key(id);
        ["feeling-reduced", "feeling-lost-diabetes"]
            .into_iter()
            .filter(asked)
            .all(|id| answers(id).is_absent())
    };
    let mut unanswered = Vec::new();
    let mut present = Vec::new();
    let mut answered = 0;
    for item in &asked_items {
        match answers(&item.id) {
            Answer::Open(why) => {
                let id = if item.answered_by == AnsweredBy::Cause { "cause" } else { &item.id };
                unanswered.push(Unanswered { id: id.to_owned(), group: item.group, why });
            }
            Answer::Absent { .. } => answered += 1,
            Answer::Present { on, of_side } => {
                answered += 1;
                let severity = item.weight(case.record.limb, holds);
                let asked = Asked {
                    id: &item.id,
                    on: on.filter(|on| *on <= case.today && item.answered_by != AnsweredBy::AgeBand),
                    sided: item.group.is_some_and(|group| case.is_sided(group)),
                    capped: false,
                    written_cap: None,
                    light_touch: light_touch(),
                    arterial_pass: arterial_pass(),
                };
                present.push(Present {
                    item: item.id.clone(),
                    side: of_side.then_some(case.limb.side),
                    severity,
                    urgency: urgency(item, severity),
                    on,
                    clearing: match severity {
                        Severity::ClearFirst => clearing(case, earlier, asked),
                        _ => Clearing::Open,
                    },
                    postpone: item.postpone,
                });
            }
        }
    }
    let seen = seen(case, earlier);
    answered += observed(case, &seen, &mut unanswered);
    let allergies = stated_allergies(case, earlier);
    let why_open = match allergies {
        Allergies::NotAsked => Some(WhyOpen::NotAnswered),
        some => allergy_words(some, case.rules).is_open.then_some(WhyOpen::Unknown),
    };
    match why_open {
        Some(why) => unanswered.push(open("allergies", why)),
        None => answered += 1,
    }
    let arterial = (case.record.limb == Limb::Leg).then(|| arterial(case, earlier, &answers));
    let cap_mmhg = least_cap(case, &present, arterial.as_ref());
    Screened {
        limb: case.record.limb,
        side: case.limb.side,
        asked: is_asked(case),
        answered,
        unanswered,
        stale: stale(case, &asked_items, &by_id),
        of_other_limb: of_other_limb(case),
        postpone: present.iter().any(|one: &Present| one.postpone),
        allergies: allergy_words(allergies, case.rules),
        observed: seen,
        re_order: re_order.map(|(one, _)| one),
        not_there: not_there(case, &present, arterial.as_ref()),
        soon: case.rules.time(NumberId::SoonDays).last_day(case.today),
        present,
        arterial,
        cap_mmhg,
    }
}

/// The items of the limb; those of a re-order only where one is stated, or where they are named.
fn asked_items<'a>(case: &Case<'a>, re_order: bool) -> Vec<&'a ItemRule> {
    let named = |id: &str| {
        let blocks = [&case.record.screening, &case.limb.screening];
        blocks.into_iter().flat_map(|block| &block.present).any(|one| one.text == id)
    };
    let own = case.rules.items.iter().filter(|item| item.limbs.include(case.record.limb));
    own.filter(|item| re_order || named(&item.id) || !item.group.is_some_and(Group::is_of_re_order)).collect()
}

/// A milder weight than a stop takes no emergency with it.
fn urgency(item: &ItemRule, severity: Severity) -> Urgency {
    match severity {
        Severity::Stop | Severity::ClearFirst => item.urgency,
        Severity::Caution | Severity::Note => Urgency::Routine,
    }
}

/// What was seen on the limb; gives how many are answered.
fn observed(case: &Case<'_>, seen: &Observed, unanswered: &mut Vec<Unanswered>) -> usize {
    let mut answered = 0;
    for rule in case.rules.observed.iter().filter(|rule| rule.limbs.include(case.record.limb)) {
        match seen_answer(seen, &rule.key) {
            None => unanswered.push(open(&rule.key, WhyOpen::NotAnswered)),
            Some(YesNo::Unknown) => unanswered.push(open(&rule.key, WhyOpen::Unknown)),
            Some(YesNo::Yes | YesNo::No) => answered += 1,
        }
    }
    answered
}

fn seen_answer(seen: &Observed, key: &str) -> Option<YesNo> {
    match key {
        "pitting" => seen.pitting.map(Pitting::is_some),
        "folds" => seen.folds,
        "distortion" => seen.distortion,
        "hand_swelling" | "foot_swelling" => seen.extremity_swelling,
        "swelling_beyond" => seen.swelling_beyond,
        _ => None,
    }
}

fn open(id: &str, why: WhyOpen) -> Unanswered {
    Unanswered { id: id.to_owned(), group: None, why }
}

/// The allergies of the record, else of the one that it rests on.
fn stated_allergies<'a>(case: &Case<'a>, earlier: Option<&Case<'a>>) -> &'a Allergies {
    match (&case.record.allergies, earlier) {
        (Allergies::NotAsked, Some(earlier)) => &earlier.record.allergies,
        (own, _) => own,
    }
}

/// What was seen; a re-order looks at hand or foot anew and takes the rest from the earlier record.
fn seen(case: &Case<'_>, earlier: Option<&Case<'_>>) -> Observed {
    let mut seen = case.limb.observed.clone();
    if let Some(then) = earlier.map(|one| &one.limb.observed) {
        seen.pitting = seen.pitting.or(then.pitting);
        seen.folds = seen.folds.or(then.folds);
        seen.distortion = seen.distortion.or(then.distortion);
        seen.swelling_beyond = seen.swelling_beyond.or(then.swelling_beyond);
    }
    seen
}

fn is_asked(case: &Case<'_>) -> bool {
    [&case.record.screening, &case.limb.screening].into_iter().any(|block| {
        block.asked_on.is_some()
            || [&block.absent, &block.present, &block.unknown].into_iter().any(|list| !list.is_empty())
    })
}

/// Groups whose oldest answer that counts is old enough for a caution.
fn stale(case: &Case<'_>, items: &[&ItemRule], by_id: &BTreeMap<&str, Answer>) -> Vec<Stale> {
    let mut all = Vec::new();
    for group in &case.rules.groups {
        let Some(limit) = group.caution else { continue };
        let own = items
            .iter()
            .filter(|item| item.group == Some(group.id) && item.answered_by == AnsweredBy::Screening);
        let oldest = own.filter_map(|item| match by_id.get(item.id.as_str())? {
            Answer::Absent { on } => Some(*on),
            Answer::Present { on, .. } => *on,
            Answer::Open(_) => None,
        });
        if let Some(on) = oldest.min().filter(|on| limit.is_over(*on, case.today)) {
            all.push(Stale { group: group.id, on });
        }
    }
    all
}

fn of_other_limb(case: &Case<'_>) -> Vec<String> {
    let mut blocks = vec![&case.record.screening];
    if case.is_both() {
        blocks.push(&case.limb.screening);
    }
    let named = blocks.into_iter().flat_map(|block| &block.present);
    let mut other: Vec<String> = named
        .filter(|one| case.rules.item(&one.text).is_some_and(|item| !item.limbs.include(case.record.limb)))
        .map(|one| one.text.clone())
        .collect();
    other.sort_unstable();
    other.dedup();
    other
}

/// Entries that name an item or an arterial value which is not there. Findings are not known here.
fn not_there(
    case: &Case<'_>,
    present: &[Present],
    arterial: Option<&ArterialDecision>,
) -> Vec<(Cleared, WhyVain)> {
    let mut all = Vec::new();
    for (entry, names_side) in entries(case) {
        let id = entry.item.text.as_str();
        // Without a side under `limb: both` it may be about the other one; where it is on neither, the first
        // limb says so.
        let elsewhere = || !is_first(case) || is_named(case, id) || ArterialValue::parse(id).is_some();
        if case.is_both() && !names_side && !is_here(id, present, arterial) && elsewhere() {
            continue;
        }
        let why = match (case.rules.item(id), ArterialValue::parse(id)) {
            (_, Some(ArterialValue::Unknown)) => WhyVain::Nobody,
            (None, None) => continue,
            _ if is_here(id, present, arterial) => continue,
            _ => WhyVain::NotThere,
        };
        all.push((entry.clone(), why));
    }
    all
}

fn is_first(case: &Case<'_>) -> bool {
    case.record.limbs.first().is_some_and(|limb| limb.side == case.limb.side)
}

/// Whether an item is named present anywhere in the record.
fn is_named(case: &Case<'_>, id: &str) -> bool {
    let sides = case.record.limbs.iter().map(|limb| &limb.screening);
    let blocks = std::iter::once(&case.record.screening).chain(sides);
    blocks.flat_map(|block| &block.present).any(|one| one.text == id)
}

fn is_here(id: &str, present: &[Present], arterial: Option<&ArterialDecision>) -> bool {
    let value = |one: &super::JudgedValue| {
        one.value.word() == id && one.severity.is_some_and(|severity| severity <= Severity::ClearFirst)
    };
    present.iter().any(|one| one.item == id && one.severity <= Severity::ClearFirst)
        || arterial.is_some_and(|one| one.values.iter().any(value))
}

/// The least of the arterial cap and of every clearing that counts.
fn least_cap(case: &Case<'_>, present: &[Present], arterial: Option<&ArterialDecision>) -> Option<f64> {
    let written = arterial.and_then(|one| one.cap).map(|cap| cap.mmhg);
    let cleared = present.iter().filter_map(|one| one.clearing.counting());
    let cleared =
        cleared.filter_map(|entry| entry.cap.as_ref()).filter_map(|cap| cap_mmhg(cap, case.schemes));
    written.into_iter().chain(cleared).reduce(f64::min)
}

/// What was decided on a finding that is no item and no arterial value, as `rise` on a chart.
pub fn finding_clearing(case: &Case<'_>, id: &str) -> Clearing {
    let asked = Asked {
        id,
        on: Some(case.record.measured_on),
        sided: false,
        capped: false,
        written_cap: None,
        light_touch: false,
        arterial_pass: false,
    };
    clearing(case, None, asked)
}
