//! One fault in a garment, wrap or bench file: told with its line and what would be accepted.

use tapeline::garment::{Schemes, open_fabric, open_outfit};
use tapeline::input::Problem;

use crate::direct::source;

/// The problems of a text, as printed; the text has exactly one.
#[track_caller]
fn one(problems: Option<Vec<Problem>>, text: &str) -> String {
    let problems = problems.unwrap_or_else(|| panic!("no problem in\n{text}"));
    let said: Vec<String> = problems.iter().map(Problem::to_string).collect();
    assert_eq!(said.len(), 1, "{}\n{text}", said.join("\n"));
    assert!(said[0].contains(".yaml:"), "no line: {}", said[0]);
    said[0].clone()
}

const GARMENT: &str = "tapeline: garment/1
label: sleeve G
limb: arm
from: wrist
to: axilla
layers: 1
relaxed: {wrist: 13 cm, axilla: 26 cm}
";

const WRAP: &str = "tapeline: wrap/1
tension: 5 N
width: 10 cm
overlap: 50 %
from: ankle
to: calf
";

const BENCH: &str = "tapeline: fabric/1
label: knit
bench:
  kind: strip
  width: 5 cm
  relaxed: 20 cm
  pulls:
    - {weight: 100 g, length: 22 cm}
    - {weight: 200 g, length: [24 cm, 24.2 cm]}
";

#[test]
fn the_whole_files_are_read() {
    let garment = open_outfit(source("g.yaml", GARMENT), &Schemes::default()).ok().unwrap();
    assert_eq!(garment.outfit.label, "sleeve G");
    assert!(open_outfit(source("w.yaml", WRAP), &Schemes::default()).is_ok());
    assert_eq!(open_fabric(source("b.yaml", BENCH)).unwrap().curve.len(), 3);
}

#[test]
fn garments() {
    for (from, to, said) in [
        ("limb: arm\n", "", "the key `limb` is missing"),
        ("label: sleeve G\n", "", "the key `label` is missing"),
        ("layers: 1", "layers: 0", "no whole number from 1 to 10"),
        ("layers: 1", "layer: 1", "did you mean `layers`?"),
        ("from: wrist", "from: ankle", "is a landmark of the leg"),
        ("from: wrist", "from: hand\nflat_width: {wrist: 6 cm}", "stands beside `relaxed`"),
        ("to: axilla", "to: elbow", "a relaxed girth is stated at axilla"),
        ("relaxed: {wrist: 13 cm, axilla: 26 cm}\n", "", "or `flat_width`, half of them"),
        ("13 cm", "13", "has no unit"),
        ("13 cm", "0 cm", "not above 0"),
        ("layers: 1", "class: \"2\"", "a class without its scheme"),
        ("layers: 1", "scheme: ral-gz-387-1\nclass: \"2\"", "is not for the arm"),
        ("layers: 1", "fabric: none.yaml", "there is no such file"),
        ("layers: 1", "fabric_at: {wrist: none.yaml}", "there is no such file"),
        ("layers: 1", "top_edge: {}", "the key `relaxed` is missing"),
        ("layers: 1", "top_edge: {relaxed: 20 cm, colour: red}", "the key `colour` is not known here"),
        ("layers: 1", "worn_together: [{garment: a.yaml}]", "two to 4 pieces"),
        ("tapeline: garment/1", "tapeline: garment/2", "version `2`"),
    ] {
        let mut text = GARMENT.replacen(from, to, 1);
        if to.contains("worn_together") {
            text = "tapeline: garment/1\nlabel: both\nlimb: arm\n".to_owned() + to + "\n";
        }
        assert_ne!(text, GARMENT);
        let told = one(open_outfit(source("g.yaml", &text), &Schemes::default()).err(), &text);
        assert!(told.contains(said), "{told}\n{text}");
    }
}

#[test]
fn wraps() {
    for (from, to, said) in [
        ("tension: 5 N", "tension: 5 N/m", "a force is wanted"),
        ("tension: 5 N", "tension: 0 N", "is zero"),
        ("tension: 5 N", "tension: -5 N", "below zero"),
        ("tension: 5 N\n", "", "the key `tension` is missing"),
        ("overlap: 50 %\n", "", "or `layers: 2`"),
        ("overlap: 50 %", "overlap: 100 %", "leaves no turn to move on"),
        ("overlap: 50 %", "overlap: 50 %\nlayers: 2", "stands beside `overlap`"),
        ("overlap: 50 %", "layers: 0.5", "is not from 1 to 20"),
        ("to: calf", "to: instep", "is not nearer the trunk than"),
        ("from: ankle", "from: B", "letters need `limb: arm` or `limb: leg`"),
        ("width: 10 cm", "width: 10 kgf", "a length is wanted"),
    ] {
        let text = WRAP.replacen(from, to, 1);
        let told = one(open_outfit(source("w.yaml", &text), &Schemes::default()).err(), &text);
        assert!(told.contains(said), "{told}\n{text}");
    }
}

#[test]
fn bench_tests() {
    for (from, to, said) in [
        ("kind: strip", "kind: sheet", "accepted: strip, loop"),
        ("weight: 100 g", "weight: 100 N", "a mass is wanted"),
        ("weight: 100 g", "weight: 100 g, force: 1 N", "stands beside `weight`"),
        ("weight: 100 g, ", "", "has neither `weight` nor `force`"),
        ("weight: 100 g", "weight: 0 g", "is no pull"),
        ("length: 22 cm", "length: 19 cm", "is shorter than the piece without a weight"),
        ("    - {weight: 100 g, length: 22 cm}\n", "", "gives no rising curve"),
        ("bench:", "curve: []\nbench:", "stands beside `bench`"),
        ("  relaxed: 20 cm\n", "", "the key `relaxed` is missing"),
    ] {
        let text = BENCH.replacen(from, to, 1);
        let told = one(open_fabric(source("b.yaml", &text)).err(), &text);
        assert!(told.contains(said), "{told}\n{text}");
    }
}
