//! Faults of charts: one fault in each, and none in a clean one.

use tapeline::garment::{Chart, Schemes, open_chart};
use tapeline::input::Source;
use tapeline::inspection::{chart_faults, range_lines, range_scenes};

use crate::caseload::fabric_file;
use crate::made::rules;
use crate::sizing::chart;

const HEAD: &str = "tapeline: chart/1\nlabel: a\nlimb: arm\nunits: {length: cm}\n";

fn ids(chart: &Chart) -> Vec<&'static str> {
    let mut ids: Vec<&str> = chart_faults(chart, &rules()).iter().map(|fault| fault.kind.id()).collect();
    ids.dedup();
    ids
}

fn of(sizes: &str) -> Vec<&'static str> {
    ids(&chart(&format!("{HEAD}sizes: [{sizes}]\n")))
}

// Source: derived, each from the chart's own figures; bands of plausible girths for the slip of a unit.
#[test]
fn each_fault_is_found_alone() {
    let sound = "{size: \"1\", girths: {wrist: 14-16, forearm: 22-25}}, {size: \"2\", girths: {wrist: 16-18, forearm: 25-28}}, {size: \"3\", girths: {wrist: 18-20, forearm: 28-31}}, {size: \"4\", girths: {wrist: 20-22, forearm: 31-34}}";
    assert_eq!(of(sound), Vec::<&str>::new());
    assert_eq!(of(&sound.replace("wrist: 16-18", "wrist: 16.3-18")), ["gap"]);
    assert_eq!(of(&sound.replace("wrist: 16-18", "wrist: 15.8-18")), ["overlap"]);
    assert_eq!(of(&sound.replace("forearm: 28-31", "forearm: 26-31")), ["overlap"]);
    assert_eq!(of(&sound.replace("wrist: 16-18", "wrist: 13-15")), ["out-of-order", "gap"]);
    assert_eq!(of(&sound.replace("wrist: 14-16", "wrist: 15-16")), ["narrow-range"]);
    assert_eq!(of(&sound.replace("wrist: 14-16", "wrist: 10.5-16")), ["wide-range", "step-jump"]);
    assert_eq!(
        of(&sound.replace("forearm: 31-34", "forearm: 131-134")),
        ["implausible-range", "gap", "step-jump"]
    );
    assert_eq!(of("{size: \"1\", girths: {wrist: 14-16}}"), ["one-girth"]);
    let relaxed = sound.replace("forearm: 22-25}", "forearm: 22-25}, relaxed: {wrist: 14, forearm: 17}");
    assert_eq!(of(&relaxed), ["relaxed-not-below", "reversed-in-the-middle"]);
}

// Source: derived (what is printed 16–17.9 and 18–19.9 leaves nothing out when girths are read to 0.1 cm).
#[test]
fn a_printed_step_is_no_gap() {
    let sizes = "sizes: [{size: \"1\", girths: {wrist: 14-15.9, forearm: 22-24.9}}, {size: \"2\", girths: {wrist: 16-17.9, forearm: 25-27.9}}]\n";
    assert_eq!(ids(&chart(&format!("{HEAD}printed_step: 0.1 cm\n{sizes}"))), Vec::<&str>::new());
    assert_eq!(ids(&chart(&format!("{HEAD}{sizes}"))), ["gap", "gap"][..1]);
}

// Source: derived (a slim and a wide size share the wrist; each is held against its own kind).
#[test]
fn slim_and_wide_sizes_are_of_one_step() {
    let sizes = "{size: \"1\", girths: {wrist: 14-16, forearm: 22-25}}, {size: \"1 wide\", girths: {wrist: 14-16, forearm: 25-28}}, {size: \"2\", girths: {wrist: 16-18, forearm: 25-28}}, {size: \"2 wide\", girths: {wrist: 16-18, forearm: 28-31}}";
    assert_eq!(of(sizes), Vec::<&str>::new());
}

// Source: derived by the rule of the fall (a forearm far tighter than the wrist) and the class of RAL-GZ 387/2, 23 to 32 mmHg.
#[test]
fn the_limb_in_the_middle() {
    let folder = tempfile::tempdir().unwrap();
    let fabric = fabric_file(folder.path());
    let text = format!(
        "{HEAD}from: wrist\nto: axilla\nscheme: ral-gz-387-2\nclass: \"2\"\nfabric: {fabric}\nsizes: [{{size: \"1\", girths: {{wrist: 15-17, forearm: 24-27, axilla: 30-34}}, relaxed: {{wrist: 14.5, forearm: 14, axilla: 22}}}}]\n"
    );
    let source = Source::from_bytes("c.yaml".to_owned(), text.into_bytes()).unwrap();
    let chart = open_chart(source, &Schemes::default()).map_err(|_| ()).unwrap().chart;
    assert_eq!(ids(&chart), ["reversed-in-the-middle", "off-class-in-the-middle"]);
}

#[test]
fn the_drawing_shows_gap_and_overlap() {
    let chart = chart(&format!(
        "{HEAD}sizes: [{{size: \"1\", girths: {{wrist: 14-16}}}}, {{size: \"2\", girths: {{wrist: 17-19}}}}]\n"
    ));
    let lines = range_lines(&chart, 60);
    let column = |line: &str| line.chars().position(|c| c == '━').unwrap();
    let last = |line: &str| line.chars().count() - line.chars().rev().position(|c| c == '━').unwrap();
    assert!(last(&lines[1]) < column(&lines[2]), "{lines:?}");
    assert!(lines.iter().all(|line| line.chars().count() <= 60));
    let scenes = range_scenes(&chart);
    assert_eq!(scenes.len(), 1);
    let scene = &scenes[0];
    assert!(scene.description.contains("1 14.0–16.0, 2 17.0–19.0"));
}
