//! A strip pull from the file to the words: its exponent is printed, and asked about where it cannot be right.
//!
//! Source: b = ln(F2/F1)/ln(e2/e1) (derived); which exponents and SDs are asked about are house rules.

use crate::scene::Scene;
use crate::support::{Ran, folder, run_in};

/// 2.5 times the weight at 35.5 and 16 %: ln 2.5/ln(7.1/3.2) = 1.15.
const GOOD: &str = "{weight: 500 g, length: 27.1 cm}, {weight: 200 g, length: 23.2 cm}";
/// 500 over 450 g at 35.5 and 32.5 %: ln(500/450)/ln(7.1/6.5) = 1.19, each millimetre changing it by a fifth.
const NEAR: &str = "{weight: 500 g, length: 27.1 cm}, {weight: 450 g, length: 26.5 cm}";
/// 2.5 times the weight at 35.5 and 25 %: ln 2.5/ln(7.1/5) = 2.61.
const ODD: &str = "{weight: 500 g, length: 27.1 cm}, {weight: 200 g, length: 25 cm}";

const GARMENT: &str = "tapeline: garment/1\nlabel: g\nlimb: arm\nfrom: wrist\nto: axilla\nmaterials: [polyamide]\nfabric: knit.yaml\nunits: {length: cm}\nrelaxed: {wrist: 12.4, forearm: 18.6, upper-arm: 22.2, axilla: 25.2}\n";

fn run(pulls: &str, args: &[&str]) -> Ran {
    let arm = Scene::arm().girths("wrist@0=17 forearm@14=26 upper-arm@33=31 axilla@42=35").record();
    let knit = format!("tapeline: fabric/1\nlabel: k\nstrip: {{relaxed: 20 cm, pulls: [{pulls}]}}\n");
    let folder = folder(&[("arm.yaml", &arm), ("g.yaml", GARMENT), ("knit.yaml", &knit)]);
    run_in(folder.path(), args, None)
}

const GRADIENT: [&str; 5] = ["gradient", "arm.yaml", "g.yaml", "--today", "2026-03-14"];

#[test]
fn a_pulled_exponent_is_printed_with_its_sd() {
    for args in [&["fabric", "knit.yaml"][..], &["inspect", "knit.yaml"]] {
        let ran = run(GOOD, args);
        assert_eq!(ran.status, 0, "{}", ran.stdout);
        assert!(ran.stdout.contains("1.15 (SD 0.06), by a strip pull"), "{}", ran.stdout);
        assert!(!ran.stdout.contains("To look at"), "{}", ran.stdout);
    }
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = flat(&run(GOOD, &GRADIENT).stdout);
    assert!(text.contains("The exponent of k is 1.15 (SD 0.06), by a strip pull."), "{text}");
    let json = run(GOOD, &[&GRADIENT[..], &["--format", "json"]].concat()).json();
    let one = &json["limbs"][0]["gradient"][0]["exponents"][0];
    assert!((one["value"].as_f64().unwrap() - 2.5_f64.ln() / (7.1_f64 / 3.2).ln()).abs() < 1e-12, "{one}");
    assert_eq!(one["by_pull"], true);
}

#[test]
fn an_exponent_that_cannot_be_right_is_asked_about() {
    for (pulls, said) in
        [(NEAR, "both weights stretched the strip nearly alike"), (ODD, "an exponent of 2.61")]
    {
        for args in [&["fabric", "knit.yaml"][..], &["inspect", "knit.yaml"]] {
            let ran = run(pulls, args);
            let text = ran.stdout.split_whitespace().collect::<Vec<_>>().join(" ");
            assert_eq!(ran.status, 1, "{text}");
            assert!(text.contains("To look at") && text.contains(said), "{text}");
        }
        let json = run(pulls, &[&GRADIENT[..], &["--format", "json"]].concat()).json();
        let findings = json["findings"].as_array().unwrap();
        let own: Vec<_> = findings.iter().filter(|one| one["id"] == "exponent-doubt").collect();
        assert!(own.len() == 1 && own[0]["message"].as_str().unwrap().contains(said), "{findings:?}");
    }
    let json = run(GOOD, &[&GRADIENT[..], &["--format", "json"]].concat()).json();
    assert!(!json["findings"].to_string().contains("exponent-doubt"));
}

#[test]
fn heaviest_first_is_said_alike_everywhere() {
    let told = [
        run(GOOD, &["fabric", "--help"]).stdout,
        run(GOOD, &["explain", "bench"]).stdout,
        run(GOOD, &["explain", "strip-pull"]).stdout,
        run(GOOD, &["new", "fabric"]).stdout,
    ];
    for text in told {
        let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains("heaviest"), "{flat}");
        assert!(!flat.contains("rising order"), "{flat}");
    }
    let template = run(GOOD, &["new", "fabric"]).stdout;
    assert!(
        template.contains("# exponent: 1.05") && template.contains("# strip: {relaxed: 20 cm"),
        "{template}"
    );
}
