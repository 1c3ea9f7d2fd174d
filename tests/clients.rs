//! Sixty scripted clients: what a careful clinician would do, and what the rules give.

use std::collections::BTreeMap;

use serde::Deserialize;
use tapeline::assessment::{Assessment, Outcome, Setting, assess, open_files};
use tapeline::explain::alarm_tables;
use tapeline::garment::Schemes;
use tapeline::input::Source;

use crate::screened::{ARM_GROUPS, LEG_GROUPS, TODAY, day, rules};
use crate::source::root;

#[derive(Deserialize)]
struct Caseload {
    clients: Vec<Client>,
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct Client {
    id: u32,
    who: String,
    limb: String,
    present: Vec<String>,
    unknown: Vec<String>,
    observed: String,
    arterial: String,
    taken_on: String,
    cleared: Vec<String>,
    allergies: String,
    cause: String,
    age_band: String,
    affected: String,
    asked_on: String,
    more: String,
    chart: Garment,
    does: String,
    why: String,
    rules: String,
    differs: String,
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct Garment {
    materials: Option<String>,
    hand_part: String,
}

fn caseload() -> Vec<Client> {
    let text = std::fs::read_to_string(root().join("tests/clients.yaml")).unwrap();
    serde_yaml::from_str::<Caseload>(&text).unwrap().clients
}

fn or<'t>(text: &'t str, otherwise: &'t str) -> &'t str {
    if text.is_empty() { otherwise } else { text }
}

/// Girths inside size 3 of the example charts (invented).
pub const ARM_MARKS: &str = "  - {landmark: wrist, at: 0, girth: 16.9}
  - {landmark: forearm, at: 14, girth: 25.1}
  - {landmark: elbow, at: 22, girth: 26.6}
  - {landmark: upper-arm, at: 31, girth: 30.2}
  - {landmark: axilla, at: 42, girth: 33.0}
";
pub const LEG_MARKS: &str = "  - {landmark: ankle, at: 11, girth: 23.0}
  - {landmark: lower-calf, at: 20, girth: 30.2}
  - {landmark: calf, at: 31, girth: 38.0}
  - {landmark: below-knee, at: 41, girth: 36.0}
  - {landmark: knee, at: 46, girth: 38.2}
  - {landmark: mid-thigh, at: 58, girth: 51.0}
  - {landmark: upper-thigh, at: 72, girth: 57.5}
";

fn record(client: &Client) -> String {
    let arm = client.limb == "arm";
    let both = client.limb == "both-legs";
    let (limb, groups, marks, from, part) = if arm {
        ("left arm", ARM_GROUPS, ARM_MARKS, "wrist", "hand_swelling")
    } else if both {
        ("both legs", LEG_GROUPS, LEG_MARKS, "floor", "foot_swelling")
    } else {
        ("left leg", LEG_GROUPS, LEG_MARKS, "floor", "foot_swelling")
    };
    let asked = |sided: Option<bool>| {
        let per_side =
            |group: &str| rules().groups.iter().any(|rule| rule.id.word() == group && rule.per_side);
        let own: Vec<&str> = groups
            .split(", ")
            .filter(|group| !client.unknown.iter().any(|one| one == group))
            .filter(|group| sided.is_none_or(|sided| sided == per_side(group)))
            .collect();
        own.join(", ")
    };
    let mut seen: BTreeMap<&str, &str> = BTreeMap::from([
        ("pitting", "none"),
        ("folds", "no"),
        ("distortion", "no"),
        (part, "no"),
        ("swelling_beyond", "no"),
    ]);
    if let Some((key, value)) = client.observed.split_once(": ") {
        seen.insert(key, value);
    }
    let seen: Vec<String> = seen.iter().map(|(key, value)| format!("{key}: {value}")).collect();
    let seen = format!("observed: {{{}}}", seen.join(", "));
    let taken = or(&client.taken_on, "2026-03-10");
    let arterial = match or(&client.arterial, "abpi: 1.05") {
        _ if arm => String::new(),
        "none" => String::new(),
        values => format!("arterial: {{taken_on: {taken}, {values}}}\n"),
    };
    let side = |name: &str| {
        let marks = format!("  {}\n", marks.trim_end().replace('\n', "\n  "));
        let own = asked(Some(true));
        format!("{name}:\n  marks:\n{marks}  {seen}\n  screening: {{absent: [{own}]}}\n  {arterial}")
    };
    let limbs = if both {
        format!("{}{}", side("left"), side("right"))
    } else {
        format!("marks:\n{marks}{seen}\n{arterial}")
    };
    let cleared = match client.cleared.join("}, {") {
        none if none.is_empty() => none,
        some => format!("cleared: [{{{some}}}]\n"),
    };
    let more = if client.more.is_empty() { String::new() } else { format!("{}\n", client.more) };
    format!(
        "tapeline: record/1
client: C-{:03}
measured_on: {TODAY}
measured_by: M2
age_band: {}
units: {{length: cm, pressure: mmHg}}
limb: {limb}
affected: {}
cause: {}
positions_from: {from}
{limbs}screening: {{asked_on: {}, absent: [{}], present: [{}], unknown: [{}]}}
allergies: {}
{cleared}{more}",
        client.id,
        or(&client.age_band, "adult"),
        or(&client.affected, if both { "both" } else { "left" }),
        or(&client.cause, "{known: yes, by: physician}"),
        or(&client.asked_on, TODAY),
        asked(both.then_some(false)),
        client.present.join(", "),
        client.unknown.join(", "),
        or(&client.allergies, "none"),
    )
}

fn chart(client: &Client) -> Source {
    let file = if client.limb == "arm" { "sleeve-example.yaml" } else { "stocking-example.yaml" };
    let path = root().join("garment-tables/charts").join(file);
    let mut source = Source::read(&path).unwrap();
    if let Some(materials) = &client.chart.materials {
        let line = if materials.is_empty() { String::new() } else { format!("materials: {materials}\n") };
        source.text = source.text.replace("materials: [polyamide, elastane]\n", &line);
    }
    if !client.chart.hand_part.is_empty() {
        let line = format!("hand_part: {}", client.chart.hand_part);
        source.text = source.text.replace("hand_part: no", &line);
    }
    source
}

pub fn setting() -> Setting {
    Setting { today: day(TODAY), rules: rules().clone(), schemes: Schemes::default() }
}

/// The check of a record beside a chart, through the library.
#[track_caller]
pub fn check(record: &str, charts: Vec<Source>) -> Assessment {
    let mut sources = vec![Source::of_text("record.yaml", record)];
    sources.extend(charts);
    let setting = setting();
    let opened = open_files(sources, &setting).unwrap_or_else(|problems| {
        let said: Vec<String> = problems.iter().map(ToString::to_string).collect();
        panic!("{}\n{record}", said.join("\n"))
    });
    assess(&opened, &setting).unwrap()
}

fn wanted(does: &str) -> &'static str {
    match does {
        "fit" => "trial-fitting",
        "made-to-measure" => "made-to-measure",
        "ask-first" => "refer",
        "no-fitting" => "stop",
        "ask-more" => "incomplete",
        other => panic!("{other}"),
    }
}

/// Source: tests/clients.yaml, thought through before the rules were run; the limits of the issue: no wrong
/// pass, at most two that are referred or stopped without need.
#[test]
fn the_sixty() {
    let clients = caseload();
    assert_eq!(clients.len(), 60);
    let mut table: BTreeMap<(&str, String), usize> = BTreeMap::new();
    let (mut passed_wrongly, mut too_strict, mut faults) = (Vec::new(), Vec::new(), Vec::new());
    for (place, client) in clients.iter().enumerate() {
        assert_eq!(client.id as usize, place + 1);
        assert!(!client.who.is_empty() && !client.why.is_empty());
        let assessment = check(&record(client), vec![chart(client)]);
        let got = assessment.decision.outcome.unwrap();
        if got.word() != client.rules {
            faults.push(format!(
                "{} {}: {} {:?}",
                client.id,
                client.rules,
                got.word(),
                assessment.decision.reason
            ));
            continue;
        }
        let wanted = wanted(&client.does);
        *table.entry((wanted, got.word().to_owned())).or_default() += 1;
        assert_eq!(client.differs.is_empty(), wanted == client.rules, "{}", client.id);
        let meant = Outcome::ALL.iter().find(|one| one.word() == wanted).unwrap();
        if got > *meant {
            passed_wrongly.push(client.id);
        } else if got < *meant {
            too_strict.push(client.id);
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
    assert_eq!((passed_wrongly.len(), too_strict.len()), (0, 2), "{passed_wrongly:?} {too_strict:?}");
    // The same figures as `explain alarms` prints.
    let order = |word: &str| Outcome::ALL.iter().position(|one| one.word() == word).unwrap();
    let mut rows: Vec<Vec<String>> = table
        .into_iter()
        .map(|((wanted, got), count)| vec![wanted.to_owned(), got, count.to_string()])
        .collect();
    rows.sort_by_key(|row| (order(&row[0]), order(&row[1])));
    let printed = alarm_tables().unwrap().into_iter().find(|one| one.measured_by == "clients::the_sixty");
    let printed = printed.map(|one| one.rows).unwrap_or_default();
    assert_eq!(rows, printed, "alarms-clients.yaml");
}
