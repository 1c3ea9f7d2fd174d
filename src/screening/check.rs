//! Owns what is wrong with the answers of a record as a file: names, lists, grades, clearings of a stop.

use super::{Case, settle};
use crate::garment::Schemes;
use crate::input::{Named, Problem, Reader, nearest_word};
use crate::record::{Cap, Cleared, LimbRecord, Record, Screening};
use crate::rules::{AnsweredBy, ArterialValue, Group, Rules, Severity};

/// Every problem of the answers of `record`, raised in `reader` at its place. `today` decides which
/// weight a condition gives (a stop cannot be cleared).
pub fn check_answers(
    reader: &Reader,
    record: &Record,
    rules: &Rules,
    schemes: &Schemes,
    today: jiff::civil::Date,
) -> Vec<Problem> {
    let mut raised = Raised { reader, problems: Vec::new() };
    check_block(&mut raised, &record.screening, "screening", rules);
    for limb in &record.limbs {
        let cases = [(&record.cleared, String::new()), (&limb.cleared, format!("{}, ", limb.side.name()))];
        let under = if record.is_both() { format!("{}, ", limb.side.name()) } else { String::new() };
        if record.is_both() {
            check_block(&mut raised, &limb.screening, &format!("{under}screening"), rules);
            check_sides(&mut raised, record, limb, rules);
        }
        let case = Case { record, limb, earlier: &[], rules, schemes, today, worsening: false, grown: false };
        for (entries, under) in cases {
            for entry in entries {
                check_cleared(&mut raised, &case, entry, &under);
            }
        }
        if let Some(block) = &limb.arterial
            && let Some(cap) = &block.cap
        {
            check_cap(&mut raised, &case, cap, &format!("{under}arterial, cap"));
        }
    }
    raised.problems
}

struct Raised<'r> {
    reader: &'r Reader,
    problems: Vec<Problem>,
}

impl Raised<'_> {
    fn at(&mut self, named: &Named, field: &str, what: String) {
        let problem = self.reader.problem_at(named.spot, field, what);
        if !self.problems.contains(&problem) {
            self.problems.push(problem);
        }
    }
}

fn check_block(raised: &mut Raised<'_>, block: &Screening, field: &str, rules: &Rules) {
    let lists = [("absent", &block.absent), ("present", &block.present), ("unknown", &block.unknown)];
    let mut seen: Vec<(&str, &str)> = Vec::new();
    let mut grades: Vec<(&str, &str)> = Vec::new();
    for (list, names) in lists {
        let field = format!("{field}, {list}");
        for one in names {
            check_name(raised, one, list, &field, rules);
            if let Some((_, earlier)) = seen.iter().find(|(id, _)| *id == one.text) {
                let what = if *earlier == list {
                    format!("`{}` stands twice under `{list}`; keep one", one.text)
                } else {
                    format!("`{}` stands under `{earlier}` as well; one question has one answer", one.text)
                };
                raised.at(one, &field, what);
            }
            seen.push((&one.text, list));
            let family = rules.item(&one.text).and_then(|item| item.family.as_deref());
            if let Some(family) = family.filter(|_| list == "present") {
                if let Some((_, other)) =
                    grades.iter().find(|(known, id)| *known == family && *id != one.text)
                {
                    let what = format!("`{}` is another grade than `{other}`; name one grade", one.text);
                    raised.at(one, &field, what);
                }
                grades.push((family, &one.text));
            }
        }
    }
    for (one, _) in &block.asked {
        if Group::parse(&one.text).is_none() && rules.item(&one.text).is_none() {
            raised.at(one, &format!("{field}, asked"), unknown_name(&one.text, rules));
        }
    }
}

/// An item of a side that stands without a side as well, and says otherwise there.
fn check_sides(raised: &mut Raised<'_>, record: &Record, limb: &LimbRecord, rules: &Rules) {
    let (client, own) = (&record.screening, &limb.screening);
    let lists = [("absent", &client.absent), ("present", &client.present), ("unknown", &client.unknown)];
    let of_side = [("absent", &own.absent), ("present", &own.present), ("unknown", &own.unknown)];
    for (list, names) in lists {
        for one in names.iter().filter(|one| rules.item(&one.text).is_some()) {
            let other = of_side
                .iter()
                .find(|(word, all)| *word != list && all.iter().any(|other| other.text == one.text));
            if let Some((word, _)) = other {
                let what = format!(
                    "`{}` stands under `{word}` for the {} side; one question has one answer: write it for each side",
                    one.text,
                    limb.side.name()
                );
                raised.at(one, &format!("screening, {list}"), what);
            }
        }
    }
}

fn check_name(raised: &mut Raised<'_>, one: &Named, list: &str, field: &str, rules: &Rules) {
    if Group::parse(&one.text).is_some() {
        if list == "present" {
            let what = format!("`{}` is a group; name the items of it that are present", one.text);
            raised.at(one, field, what);
        }
        return;
    }
    let what = match rules.item(&one.text).map(|item| item.answered_by) {
        Some(AnsweredBy::Screening) => return,
        Some(AnsweredBy::Cause) => {
            format!(
                "`{}` is answered by the record's `cause`; write `cause: {{known: yes, by: physician}}`",
                one.text
            )
        }
        Some(AnsweredBy::AgeBand) => {
            format!("`{}` is answered by the record's `age_band`; write `age_band: child`", one.text)
        }
        None => match elsewhere(&one.text) {
            Some(key) => format!("`{}` is answered by the record's `{key}`", one.text),
            None => unknown_name(&one.text, rules),
        },
    };
    raised.at(one, field, what);
}

/// Facts that the record states elsewhere.
fn elsewhere(text: &str) -> Option<&'static str> {
    match text {
        "allergies" | "allergy" | "material-allergy" => Some("allergies"),
        "pitting" | "folds" | "distortion" | "hand_swelling" | "foot_swelling" | "swelling_beyond"
        | "hand-swelling" | "foot-swelling" | "swelling-beyond" => Some("observed"),
        "arterial" | "abpi" => Some("arterial"),
        _ => None,
    }
}

fn unknown_name(text: &str, rules: &Rules) -> String {
    let groups = Group::WORDS.iter().map(|(word, _)| *word);
    match nearest_word(text, rules.items.iter().map(|item| item.id.as_str()).chain(groups)) {
        Some(near) => format!("`{text}` is no item and no group; did you mean `{near}`?"),
        None => format!("`{text}` is no item and no group; `tapeline explain screening` lists all"),
    }
}

fn check_cleared(raised: &mut Raised<'_>, case: &Case<'_>, entry: &Cleared, under: &str) {
    let id = entry.item.text.as_str();
    let field = format!("{under}cleared, item");
    if case.rules.cleared_by(id).is_none() {
        let findings = case.rules.findings.iter().map(|one| one.finding.as_str());
        let values = ArterialValue::WORDS.iter().map(|(word, _)| *word);
        let items = case.rules.items.iter().map(|item| item.id.as_str());
        let what = match nearest_word(id, items.chain(values).chain(findings)) {
            _ if Group::parse(id).is_some() => format!("`{id}` is a group; name the item that is cleared"),
            Some(near) => format!("`{id}` is nothing that is cleared; did you mean `{near}`?"),
            None => {
                format!("`{id}` is nothing that is cleared; name an item, an arterial value or a finding")
            }
        };
        raised.at(&entry.item, &field, what);
    } else if id == "allergen" {
        let what = "`allergen` cannot be cleared; a garment with the material is taken out".to_owned();
        raised.at(&entry.item, &field, what);
    } else if is_stop(case, id) {
        let what =
            format!("`{id}` is a stop, and a stop cannot be cleared; it ends only when its answer changes");
        raised.at(&entry.item, &field, what);
    }
    if let Some(until) = entry.until.filter(|until| *until < entry.cleared_on) {
        let what =
            format!("ends on {until}, before it was cleared on {}; check both dates", entry.cleared_on);
        raised.at(&entry.item, &format!("{under}cleared, until"), what);
    }
    if let Some(cap) = &entry.cap {
        check_cap(raised, case, cap, &format!("{under}cleared, cap"));
    }
}

/// Whether an item, or the value given, is a stop on this limb.
fn is_stop(case: &Case<'_>, id: &str) -> bool {
    if let Some(item) = case.rules.item(id) {
        // One that is there weighs what the record makes of it; one that is not, what it can weigh at best.
        let here = settle(case).present(id).map(|one| one.severity);
        return here.unwrap_or(item.mildest(case.record.limb)) == Severity::Stop;
    }
    let values = settle(case).arterial.map(|one| one.values).unwrap_or_default();
    values.iter().any(|one| one.value.word() == id && one.severity == Some(Severity::Stop))
}

/// A class of a cap has to be known to its scheme, and has to end somewhere.
fn check_cap(raised: &mut Raised<'_>, case: &Case<'_>, cap: &Cap, field: &str) {
    let Cap::Class { class, scheme } = cap else { return };
    let Some(found) = case.schemes.find(&scheme.text) else {
        let ids = case.schemes.ids();
        let what = match nearest_word(&scheme.text, ids.iter().copied()) {
            Some(near) => format!("the scheme `{}` is not known; did you mean `{near}`?", scheme.text),
            None => format!("the scheme `{}` is not known; known: {}", scheme.text, ids.join(", ")),
        };
        raised.at(scheme, field, what);
        return;
    };
    match found.class(&class.text) {
        None => {
            raised.at(class, field, found.no_such_class(&class.text));
        }
        Some(band) if band.high.is_none() => {
            let what =
                format!("the class `{}` of {} has no upper end; write a pressure", class.text, found.id);
            raised.at(class, field, what);
        }
        Some(_) => {}
    }
}
