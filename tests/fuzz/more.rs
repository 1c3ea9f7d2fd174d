//! One more fact: it never improves an outcome.

use std::collections::BTreeMap;

use serde_yaml::{Mapping, Value};
use tapeline::anatomy::Limb;
use tapeline::assessment::{Assessment, ChartAssessment, Outcome};
use tapeline::record::Record;
use tapeline::rules::AnsweredBy;

use crate::random::Dice;
use crate::scene::DEFAULT;

/// A chart of a run: the place of its limb and its printed label, for charts change places with their rank.
type Place = (usize, String);

/// The outcome of the run (none counts as the best).
pub fn of_run(found: &Assessment) -> Outcome {
    found.decision.outcome.unwrap_or(Outcome::TrialFitting)
}

/// The outcome of every chart.
pub fn of_charts(found: &Assessment) -> BTreeMap<Place, Outcome> {
    let charts = found.limbs.iter().enumerate().flat_map(|(place, limb)| {
        limb.charts
            .iter()
            .map(move |chart: &ChartAssessment| ((place, chart.printed.clone()), chart.outcome()))
    });
    charts.collect()
}

/// The record told one fact more that speaks against fitting; none where there is no place for it.
pub fn told(record: &[u8], read: &Record, dice: &mut Dice) -> Option<(String, String)> {
    let mut tree: Value = serde_yaml::from_slice(record).ok()?;
    let root = tree.as_mapping_mut()?;
    let what = match dice.below(8) {
        0 => seen(root, "folds", "no", "yes")?,
        1 => seen(root, "distortion", "no", "yes")?,
        2 => seen(root, "pitting", "none", "strong")?,
        3 => seen(root, "swelling_beyond", "no", "yes")?,
        4 => {
            (root.get("allergies")?.as_str()? == "none").then_some(())?;
            root.insert("allergies".into(), Value::Sequence(vec!["latex".into()]));
            "allergies: [latex]".to_owned()
        }
        _ => item(root, read.limb, dice)?,
    };
    Some((serde_yaml::to_string(&tree).ok()?, what))
}

fn seen(root: &mut Mapping, key: &str, from: &str, to: &str) -> Option<String> {
    let observed = root.get_mut("observed")?.as_mapping_mut()?;
    let had = observed.get(key)?;
    (had.as_str() == Some(from) || (from == "no" && had.as_bool() == Some(false))).then_some(())?;
    observed.insert(key.into(), to.into());
    Some(format!("observed {key}: {to}"))
}

/// An item of a group that was answered no.
fn item(root: &mut Mapping, limb: Limb, dice: &mut Dice) -> Option<String> {
    let screening = root.get_mut("screening")?.as_mapping_mut()?;
    let words = |key: &str| -> Vec<String> {
        let list = screening.get(key).and_then(Value::as_sequence);
        list.into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned)).collect()
    };
    let (absent, present, unknown) = (words("absent"), words("present"), words("unknown"));
    let all: Vec<_> = DEFAULT
        .items
        .iter()
        .filter(|item| item.limbs.include(limb) && item.answered_by == AnsweredBy::Screening)
        .filter(|item| item.group.is_some_and(|group| absent.iter().any(|one| one == group.word())))
        .filter(|item| {
            !absent.contains(&item.id) && !present.contains(&item.id) && !unknown.contains(&item.id)
        })
        .filter(|item| {
            // Two grades of one family exclude each other.
            item.family.is_none()
                || !DEFAULT.items.iter().any(|one| one.family == item.family && present.contains(&one.id))
        })
        .collect();
    (!all.is_empty()).then_some(())?;
    let item = &all[dice.below(all.len())].id;
    let mut list: Vec<Value> = present.iter().map(|one| one.as_str().into()).collect();
    list.push(item.as_str().into());
    screening.insert("present".into(), Value::Sequence(list));
    Some(format!("present {item}"))
}
