//! The names of the report's JSON: every key is always there, each word is one of its list.
//! Source: the report model as the README and `explain` name it; written by hand, not read from a report.

use serde_json::Value;

/// Blocks by their path (`[]` = each item), with the keys that are always there.
const KEYS: [(&str, &str); 30] = [
    (
        "",
        "schema tool today decision record rules screening arterial allergies prescribed findings limbs course pattern limits",
    ),
    ("tool", "name version"),
    ("decision", "outcome also urgency subject next who reason by findings"),
    ("decision.subject", "kind limb chart name"),
    ("record", "client measured_on measured_by limb file"),
    ("screening", "answered unanswered present cleared groups questions paste"),
    ("screening.present[]", "item side"),
    ("screening.questions[]", "id question side"),
    ("arterial", "legs"),
    ("arterial.legs[]", "limb taken_on values cap_mmhg words"),
    (
        "findings[]",
        "id severity urgency where limb chart size landmark message next who basis title source cleared open confirm",
    ),
    ("limbs[]", "limb side outcome marks lengths charts pressure gradient volume needs"),
    (
        "limbs[].charts[]",
        "label file part counted outcome verdict size variant nearest between runner_up same_again_chance sizes wanted line printed",
    ),
    ("limbs[].charts[].sizes[]", "size verdict reversed inside_chance measures"),
    ("limbs[].charts[].sizes[].measures[]", "measure girth_cm low_cm high_cm margin_cm verdict direction"),
    ("limbs[].charts[].wanted[]", "measure sizes"),
    ("limbs[].pressure[]", "chart size garment basis marks reference"),
    (
        "limbs[].pressure[].marks[]",
        "landmark at_cm girth_cm relaxed_cm stretch_percent tension_n_per_m pressure_mmhg bound sd_mmhg low_mmhg high_mmhg low_worn_mmhg high_worn_mmhg",
    ),
    (
        "limbs[].pressure[].reference",
        "landmark pressure_mmhg scheme class claimed_class claimed_chance claimed_chance_worn stiffness_mmhg_per_cm",
    ),
    (
        "limbs[].gradient[]",
        "chart size garment basis grade judged chance rise_somewhere usual trend_low trend_high end_low end_high place against pairs decide residual sentence",
    ),
    ("limbs[].gradient[].pairs[]", "distal proximal rise_mmhg sd_mmhg"),
    ("limbs[].gradient[].decide[]", "action landmark chance"),
    ("limbs[].gradient[].residual[]", "landmark percent low high inside"),
    ("limbs[].volume", "method spacing_cm measured_ml other_ml excess_ml excess_percent sd_ml grades parts"),
    ("limbs[].volume.grades[]", "set grade"),
    ("course", "visits changes ready due drift infections"),
    ("course.visits[]", "measured_on limb volume_ml other_ml excess_ml excess_percent sd_ml series"),
    ("course.changes[]", "from to limb change_percent detectable_percent beyond"),
    ("course.ready[]", "limb state loss_percent_a_week low high visits decide"),
    ("course.due[]", "what on basis"),
];

/// Closed lists of words; null is allowed where it stands first.
const WORDS: [(&str, &str); 11] = [
    ("decision.outcome", "null stop refer incomplete made-to-measure fall-unknown trial-fitting"),
    ("decision.urgency", "emergency same-day soon routine"),
    ("findings[].severity", "stop clear-first caution note"),
    ("findings[].urgency", "emergency same-day soon routine"),
    ("findings[].basis", "published secondary memory derived common-practice house-rule invented"),
    ("limbs[].charts[].verdict", "size between measure-again made-to-measure not-judged"),
    ("limbs[].charts[].sizes[].verdict", "inside outside open"),
    ("limbs[].charts[].sizes[].measures[].verdict", "inside close outside missing"),
    ("limbs[].charts[].sizes[].measures[].direction", "null tight loose"),
    ("limbs[].gradient[].grade", "null certain likely possible undecided none"),
    ("limbs[].gradient[].basis", "null readings fabric stretch"),
];

/// Figures that have to lie between two values wherever they stand.
const BETWEEN: [(&str, f64, f64); 10] = [
    ("limbs[].charts[].same_again_chance", 0.0, 1.0),
    ("limbs[].charts[].sizes[].inside_chance", 0.0, 1.0),
    ("limbs[].gradient[].chance", 0.0, 1.0),
    ("limbs[].gradient[].rise_somewhere", 0.0, 1.0),
    ("limbs[].gradient[].decide[].chance", 0.0, 1.0),
    ("limbs[].pressure[].reference.claimed_chance", 0.0, 1.0),
    ("limbs[].pressure[].marks[].pressure_mmhg", 0.0, f64::MAX),
    ("limbs[].pressure[].marks[].low_mmhg", 0.0, f64::MAX),
    ("limbs[].pressure[].marks[].sd_mmhg", 0.0, f64::MAX),
    ("limbs[].volume.measured_ml", 0.0, f64::MAX),
];

/// What is wrong with the names of a report.
pub fn check(report: &Value, wrong: &mut Vec<String>) {
    walk(report, "", wrong);
    // An index names something that is there.
    let findings = report["findings"].as_array().map_or(0, Vec::len);
    let limbs = report["limbs"].as_array().map_or(0, Vec::len);
    for at in report["decision"]["findings"].as_array().into_iter().flatten() {
        if at.as_u64().is_none_or(|at| at as usize >= findings) {
            wrong.push(format!("decision.findings names {at} of {findings}"));
        }
    }
    for one in report["findings"].as_array().into_iter().flatten() {
        if one["limb"].as_u64().is_some_and(|at| at as usize >= limbs) {
            wrong.push(format!("a finding names limb {} of {limbs}", one["limb"]));
        }
        let charts = one["limb"].as_u64().and_then(|at| report["limbs"][at as usize]["charts"].as_array());
        if let (Some(at), Some(charts)) = (one["chart"].as_u64(), charts)
            && at as usize >= charts.len()
        {
            wrong.push(format!("a finding names chart {at} of {}", charts.len()));
        }
    }
}

fn walk(value: &Value, path: &str, wrong: &mut Vec<String>) {
    if let Some((_, words)) = WORDS.iter().find(|(at, _)| *at == path) {
        let word = value.as_str().unwrap_or(if value.is_null() { "null" } else { "?" });
        let word = word.replace(' ', "-");
        if !words.split(' ').any(|one| one == word) {
            wrong.push(format!("{path} is {value}"));
        }
    }
    if let (Some((_, low, high)), Some(number)) =
        (BETWEEN.iter().find(|(at, ..)| *at == path), value.as_f64())
        && !(*low..=*high).contains(&number)
    {
        wrong.push(format!("{path} is {number}"));
    }
    match value {
        Value::Object(all) => {
            if let Some((_, keys)) = KEYS.iter().find(|(at, _)| *at == path) {
                for key in keys.split(' ').filter(|key| !all.contains_key(*key)) {
                    wrong.push(format!("{path}: no key {key}"));
                }
            }
            for (key, value) in all {
                let below = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
                walk(value, &below, wrong);
            }
        }
        Value::Array(all) => {
            let below = format!("{path}[]");
            all.iter().for_each(|one| walk(one, &below, wrong));
        }
        _ => {}
    }
}
