//! Files that once broke a law, each with its command in the first line.

use super::case::{Case, Command};
use super::run::run;
use crate::made;
use crate::random::Dice;
use crate::source::root;
use tapeline::assessment::Setting;
use tapeline::garment::Schemes;

#[test]
fn what_was_found_stays_mended() {
    let setting =
        Setting { today: made::day("2026-03-14"), rules: made::rules(), schemes: Schemes::default() };
    let mut seen = 0;
    for entry in std::fs::read_dir(root().join("tests/found")).unwrap() {
        let path = entry.unwrap().path();
        let bytes = std::fs::read(&path).unwrap();
        let name = path.strip_prefix(root()).unwrap().display().to_string();
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let command = match text.split([':', ' ']).nth(1) {
            Some("new") => Command::New,
            Some("check") => Command::Check,
            Some("volume") => Command::Volume,
            Some("gradient") => Command::Gradient,
            Some("inspect") => Command::Inspect,
            other => panic!("{name}: no command in its first line: {other:?}"),
        };
        // Each form of the report comes up among these.
        for seed in 0..20 {
            let mut wrong = Vec::new();
            let case = Case { command, files: vec![(name.clone(), bytes.clone())] };
            run(&case, &setting, &mut Dice::of(seed), &mut wrong);
            assert!(wrong.is_empty(), "{name}: {wrong:#?}");
        }
        seen += 1;
    }
    assert!(seen > 0);
}
