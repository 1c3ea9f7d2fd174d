//! The order box and the other sizes on the sheet: what is not ordered yet has no order line, each size its limb.

use tapeline::assessment::Outcome;
use tapeline::render::{Language, Paper, plain, sheet};
use tapeline::report::build;

use crate::scene::Scene;

fn page(scene: &Scene) -> (Option<Outcome>, String) {
    let checked = scene.check();
    let text = plain(&sheet(&build(&checked.0), Language::English), Paper::A4);
    (checked.0.decision.outcome, text.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[test]
fn what_is_still_open_is_not_ordered() {
    let (outcome, open) = page(&Scene::arm().unknown("open-wound"));
    assert_eq!(outcome, Some(Outcome::Incomplete));
    assert!(open.contains("NOTHING IS ORDERED FROM THIS SHEET") && !open.contains("Quantity"), "{open}");
    let (outcome, trial) = page(&Scene::arm());
    assert_eq!(outcome, Some(Outcome::TrialFitting));
    assert!(trial.contains("Quantity") && !trial.contains("NOTHING IS ORDERED"), "{trial}");
}

const CHART: &str = "tapeline: chart/1
label: stockings
limb: leg
style: stocking
from: ankle
to: below-knee
materials: [polyamide]
units: {length: cm}
sizes:
  - {size: \"1\", girths: {ankle: 19-27, calf: 33-43, below-knee: 30-40}}
  - {size: \"2\", girths: {ankle: 27-35, calf: 43-53, below-knee: 40-50}}
";

#[test]
fn other_sizes_name_their_limb_and_place() {
    let leg = || Scene::leg().girths("ankle@11=23 calf@31=38 below-knee@39=36").only_chart(CHART);
    let (_, both) = page(&leg().both("both legs"));
    for limb in ["Left leg: stockings 2", "Right leg: stockings 2"] {
        assert!(both.contains(limb), "{limb}: {both}");
    }
    assert!(both.contains("4.0 cm too loose below the knee"), "{both}");
    let (_, one) = page(&leg());
    assert!(!one.contains("leg: stockings 2"), "{one}");
}
