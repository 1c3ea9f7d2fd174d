//! One decision: no two sentences of a report contradict each other, whatever the record and the charts.
//! Each law looks at a report as JSON and as the sheet prints it, and says what is wrong.

use std::sync::LazyLock;

use serde_json::Value;
use tapeline::render::{Language, Paper, plain, sheet, terminal_report};
use tapeline::report::{Report, build};

use crate::random::scene;
use crate::scene::Scene;

/// How many random runs.
const RUNS: u64 = 2000;

/// A report in both forms.
pub struct Seen {
    pub report: Value,
    pub fitter: String,
    pub client: String,
    pub terminal: String,
}

impl Seen {
    fn of(scene: &Scene) -> Option<Self> {
        let checked = scene.try_check().ok()?;
        Some(Self::of_report(&build(&checked.0)))
    }

    pub fn of_report(report: &Report) -> Self {
        let pages = sheet(report, Language::English);
        let (client, fitter): (Vec<_>, Vec<_>) = pages.leaves.iter().cloned().partition(|leaf| leaf.apart);
        let text = |leaves| flat(&plain(&tapeline::document::Sheet { leaves, ..pages.clone() }, Paper::A4));
        Self {
            report: serde_json::to_value(report).unwrap(),
            fitter: text(fitter),
            client: text(client),
            terminal: flat(&terminal_report(report, 100)),
        }
    }

    fn decision(&self) -> &Value {
        &self.report["decision"]
    }

    pub fn outcome(&self) -> &str {
        self.decision()["outcome"].as_str().unwrap_or("none")
    }

    pub fn findings(&self) -> &[Value] {
        list(&self.report["findings"])
    }

    fn limbs(&self) -> &[Value] {
        list(&self.report["limbs"])
    }

    fn charts(&self) -> impl Iterator<Item = (usize, usize, &Value)> {
        self.limbs().iter().enumerate().flat_map(|(limb, one)| {
            list(&one["charts"]).iter().enumerate().map(move |(chart, one)| (limb, chart, one))
        })
    }
}

pub fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn word(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

pub fn rank(outcome: &str) -> usize {
    const WORST_FIRST: [&str; 7] =
        ["stop", "refer", "incomplete", "made-to-measure", "fall-unknown", "trial-fitting", "none"];
    WORST_FIRST.iter().position(|one| *one == outcome).unwrap()
}

/// Every random report, made once for all laws.
static SEEN: LazyLock<Vec<(u64, Seen)>> = LazyLock::new(|| {
    const THREADS: u64 = 2;
    std::thread::scope(|scope| {
        let part = |part| {
            move || -> Vec<(u64, Seen)> {
                let own = (0..RUNS).filter(|seed| seed % THREADS == part);
                own.filter_map(|seed| Some((seed, Seen::of(&scene(seed))?))).collect()
            }
        };
        let parts: Vec<_> = (0..THREADS).map(|at| scope.spawn(part(at))).collect();
        parts.into_iter().flat_map(|part| part.join().unwrap()).collect()
    })
});

/// Runs a law over the random reports; each that breaks it is told by its seed.
#[track_caller]
fn law(check: impl Fn(&Seen, &mut Vec<String>)) {
    let mut wrong = Vec::new();
    for (seed, seen) in SEEN.iter() {
        let mut own = Vec::new();
        check(seen, &mut own);
        wrong.extend(own.into_iter().map(|what| format!("seed {seed}: {what}")));
    }
    let shown: Vec<&String> = wrong.iter().take(12).collect();
    assert!(wrong.is_empty(), "{} contradictions, such as {shown:#?}", wrong.len());
}

/// A law: what is wrong with a report is added to the list.
pub type Law = fn(&Seen, &mut Vec<String>);

/// Every law by its name.
pub const LAWS: [(&str, Law); 8] = [
    ("invites", no_line_invites_to_fit),
    ("takes", takes_means_takes),
    ("answered", answered_means_answered),
    ("basis", a_basis_named_is_the_basis_used),
    ("headline", the_headline_names_who_acts),
    ("worst", the_outcome_is_the_worst_that_holds),
    ("sheet", the_sheet_says_the_same),
    ("fall", findings_and_fall_agree),
];

/// Words that invite to fit, each only under the outcome that it belongs to.
const INVITES: [&str; 4] = ["go on to a trial fitting", "Trial fitting:", "TRIAL FITTING", "fit it on trial"];

fn no_line_invites_to_fit(seen: &Seen, wrong: &mut Vec<String>) {
    if seen.outcome() == "trial-fitting" {
        return;
    }
    let mut lines: Vec<&str> = vec![word(&seen.decision()["reason"]), word(&seen.decision()["next"])];
    lines.extend(seen.charts().map(|(_, _, chart)| word(&chart["line"])));
    lines.extend([seen.fitter.as_str(), seen.client.as_str(), seen.terminal.as_str()]);
    for line in lines {
        for invite in INVITES {
            if line.contains(invite) {
                wrong.push(format!("`{invite}` under {}: {}", seen.outcome(), cut(line, invite)));
            }
        }
    }
    if matches!(seen.outcome(), "stop" | "refer") && seen.charts().next().is_some() {
        for text in [&seen.fitter, &seen.terminal] {
            if !text.to_lowercase().contains("figures only") {
                wrong.push(format!("not figures only under {}", seen.outcome()));
            }
        }
    }
}

fn cut<'a>(text: &'a str, part: &str) -> &'a str {
    let at = text.find(part).unwrap_or(0);
    let from = (0..=at.saturating_sub(60)).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
    let to = (at..=text.len().min(at + 90)).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(text.len());
    &text[from..to]
}

fn takes_means_takes(seen: &Seen, wrong: &mut Vec<String>) {
    for (limb, place, chart) in seen.charts() {
        let line = word(&chart["line"]);
        let sizes = list(&chart["sizes"]);
        let at = |key: &str| chart[key].as_u64().map(|at| &sizes[at as usize]);
        let all_inside = |size: &Value| {
            list(&size["measures"]).iter().all(|one| matches!(word(&one["verdict"]), "inside" | "close"))
        };
        let says_takes =
            line.contains("takes every girth") && !line.contains("no size") && !line.contains("No size");
        let chosen = at("size");
        if says_takes && !line.contains("sizes that take") && !chosen.is_some_and(all_inside) {
            wrong.push(format!("limb {limb} chart {place}: {line}"));
        }
        if let Some(size) = chosen {
            let picked = word(&chart["verdict"]) == "between";
            let misses = list(&size["measures"])
                .iter()
                .filter_map(|one| one["margin_cm"]["value"].as_f64().or(one["margin_cm"].as_f64()));
            if picked && (misses.fold(0.0, f64::min) < -0.5 - 1e-9 || line.contains("takes")) {
                wrong.push(format!("picked between: {line}"));
            }
            if !picked && (!all_inside(size) || size["reversed"] == true) {
                wrong.push(format!("a chosen size that does not take the limb: {size}"));
            }
            if !matches!(word(&chart["verdict"]), "size" | "between") {
                wrong.push(format!("a size under `{}`", word(&chart["verdict"])));
            }
        } else if word(&chart["verdict"]) == "size" {
            wrong.push("verdict `size` without a size".to_owned());
        }
        let no_size = line.contains("o size takes every girth");
        if no_size && sizes.iter().any(|size| word(&size["verdict"]) == "inside" && size["reversed"] != true)
        {
            wrong.push(format!("a size takes every girth: {line}"));
        }
        for size in sizes {
            let verdicts: Vec<&str> =
                list(&size["measures"]).iter().map(|one| word(&one["verdict"])).collect();
            let should = if verdicts.contains(&"outside") {
                "outside"
            } else if verdicts.contains(&"missing") {
                "open"
            } else {
                "inside"
            };
            if word(&size["verdict"]) != should {
                wrong.push(format!("size {} is `{}`: {verdicts:?}", size["size"], word(&size["verdict"])));
            }
        }
    }
}

fn answered_means_answered(seen: &Seen, wrong: &mut Vec<String>) {
    let open = list(&seen.report["screening"]["unanswered"]);
    let found = seen.findings().iter().any(|one| one["id"] == "not-answered");
    if found == open.is_empty() {
        wrong.push(format!("not-answered {found}, open {open:?}"));
    }
    for text in [&seen.fitter, &seen.client, &seen.terminal] {
        for all in [
            "every question was answered",
            "Every question was answered",
            "all answered",
            "every question answered",
        ] {
            if text.contains(all) && !open.is_empty() {
                wrong.push(format!("`{all}` with {} open: {}", open.len(), cut(text, all)));
            }
        }
    }
    if !open.is_empty() && rank(seen.outcome()) > rank("incomplete") {
        wrong.push(format!("{} with open questions", seen.outcome()));
    }
}

/// The words of each basis.
const BASES: [(&str, &str); 3] =
    [("readings", "by the readings"), ("fabric", "by the fabric curve"), ("stretch", "by stretch alone")];

fn a_basis_named_is_the_basis_used(seen: &Seen, wrong: &mut Vec<String>) {
    for limb in seen.limbs() {
        for fall in list(&limb["gradient"]) {
            let sentence = word(&fall["sentence"]).to_lowercase();
            for (basis, said) in BASES {
                if sentence.contains(said) && word(&fall["basis"]) != basis && fall["beside"].is_null() {
                    wrong.push(format!("basis {}: {sentence}", fall["basis"]));
                }
            }
            let falls = sentence.contains("it falls");
            let rises = sentence.contains("rises, as sure") || sentence.contains("probably rises");
            match word(&fall["grade"]) {
                "none" | "possible" if !falls || rises => {
                    wrong.push(format!("{}: {sentence}", fall["grade"]));
                }
                "certain" if falls || !rises => wrong.push(format!("certain: {sentence}")),
                "likely" | "undecided" if falls => wrong.push(format!("{}: {sentence}", fall["grade"])),
                _ => {}
            }
        }
        for pressure in list(&limb["pressure"]) {
            let read = list(&pressure["marks"]).iter().any(|mark| !mark["reading_mmhg"].is_null());
            if pressure["basis"] == "readings" && !read {
                wrong.push("basis `readings` without a reading".to_owned());
            }
        }
    }
    if !seen.fitter.contains("by the readings") && seen.fitter.contains("sensor readings of") {
        wrong.push("readings named".to_owned());
    }
}

fn the_headline_names_who_acts(seen: &Seen, wrong: &mut Vec<String>) {
    let decision = seen.decision();
    let who: Vec<&str> = list(&decision["who"]).iter().map(word).collect();
    let deciding: Vec<&Value> = list(&decision["findings"])
        .iter()
        .map(|at| &seen.findings()[at.as_u64().unwrap() as usize])
        .collect();
    match (seen.outcome(), deciding.first()) {
        ("stop" | "refer" | "incomplete" | "fall-unknown", None) => {
            wrong.push(format!("{} that nothing brings: {}", seen.outcome(), decision["reason"]));
        }
        ("stop" | "refer" | "incomplete" | "fall-unknown", Some(first)) => {
            let own: Vec<&str> = list(&first["who"]).iter().map(word).collect();
            // Others may act beside it, on what shares its rank or is more urgent.
            let named = own.iter().all(|one| who.contains(one));
            if !named || !word(&decision["next"]).contains(word(&first["next"])) {
                wrong.push(format!(
                    "headline {who:?} {}, finding {own:?} {}",
                    decision["next"], first["next"]
                ));
            }
            if !word(&decision["reason"]).contains(word(&first["message"])) {
                wrong.push(format!("reason {} of {}", decision["reason"], first["message"]));
            }
            for other in &deciding {
                if urgency(other) < urgency(decision) {
                    wrong.push(format!("{} under {}", other["urgency"], decision["urgency"]));
                }
            }
            if !deciding.iter().any(|one| urgency(one) == urgency(decision)) {
                wrong.push(format!("{} of no finding that decided", decision["urgency"]));
            }
        }
        _ => {}
    }
    if who.is_empty() && !deciding.iter().any(|one| one["id"] == "cap-exceeded") {
        wrong.push(format!("nobody acts: {decision}"));
    }
    for one in seen.findings() {
        let nobody = list(&one["who"]).is_empty();
        if one["severity"] != "note" && nobody && one["id"] != "cap-exceeded" {
            wrong.push(format!("nobody acts: {}", one["message"]));
        }
    }
}

fn urgency(of: &Value) -> usize {
    ["emergency", "same-day", "soon", "routine"].iter().position(|one| of["urgency"] == *one).unwrap()
}

fn the_outcome_is_the_worst_that_holds(seen: &Seen, wrong: &mut Vec<String>) {
    let outcome = seen.outcome();
    for limb in seen.limbs() {
        let own = limb["outcome"].as_str().unwrap_or("none");
        if rank(own) < rank(outcome) {
            wrong.push(format!("{outcome}, and a limb {own}"));
        }
        let counted = list(&limb["charts"]).iter().filter(|chart| chart["counted"] == true);
        for chart in counted {
            if rank(word(&chart["outcome"])) < rank(own) {
                wrong.push(format!("limb {own}, and its chart {}", chart["outcome"]));
            }
        }
    }
    let standing = |severity: &str| {
        seen.findings().iter().any(|one| {
            one["chart"].is_null()
                && one["severity"] == severity
                && one["cleared"] != true
                && one["open"] != true
        })
    };
    if standing("stop") && outcome != "stop" {
        wrong.push(format!("{outcome} over a stop"));
    }
    if standing("clear-first") && rank(outcome) > rank("refer") {
        wrong.push(format!("{outcome} over something to be cleared first"));
    }
    let open = seen.findings().iter().any(|one| one["chart"].is_null() && one["open"] == true);
    if open && rank(outcome) > rank("incomplete") {
        wrong.push(format!("{outcome} over an open question"));
    }
    let also: Vec<&str> = list(&seen.decision()["also"]).iter().map(word).collect();
    let ranks: Vec<usize> = also.iter().map(|one| rank(one)).collect();
    if also.contains(&outcome) || also.contains(&"trial-fitting") || !ranks.is_sorted() {
        wrong.push(format!("{outcome}, also {also:?}"));
    }
    if ranks.first().is_some_and(|first| *first < rank(outcome)) {
        wrong.push(format!("{outcome}, also {also:?}"));
    }
}

fn the_sheet_says_the_same(seen: &Seen, wrong: &mut Vec<String>) {
    let next = flat(word(&seen.decision()["next"]));
    for (name, text) in [("sheet", &seen.fitter), ("terminal", &seen.terminal)] {
        if !next.is_empty() && !text.contains(&next) {
            wrong.push(format!("the {name} lacks `{next}`"));
        }
    }
    for one in seen.findings() {
        let message = flat(word(&one["message"]));
        if !seen.terminal.contains(&message) {
            wrong.push(format!("the terminal lacks `{message}`"));
        }
    }
    if matches!(seen.outcome(), "stop" | "refer") {
        for order in ["Order ", "Made-to-measure order"] {
            if seen.fitter.contains(&format!(" {order} Limb")) {
                wrong.push(format!("an order under {}", seen.outcome()));
            }
        }
    }
    // No size, class or material on the client's pages unless it goes on to a trial fitting.
    if seen.outcome() != "trial-fitting" {
        for named in ["size 1", "size 2", "size 3", "class 1", "class 2", "class 3", "mmHg"] {
            if seen.client.contains(named) {
                wrong.push(format!(
                    "`{named}` for the client under {}: {}",
                    seen.outcome(),
                    cut(&seen.client, named)
                ));
            }
        }
    }
    let emergency = seen.decision()["urgency"] == "emergency";
    let said = seen.client.to_lowercase();
    if emergency && !said.contains("emergency") && !said.contains("ambulance") {
        wrong.push(format!("an emergency that the client does not read: {}", cut(&seen.client, "")));
    }
    if !emergency && said.contains("call an ambulance now") {
        wrong.push("an ambulance for no emergency".to_owned());
    }
}

fn findings_and_fall_agree(seen: &Seen, wrong: &mut Vec<String>) {
    for (limb, place, chart) in seen.charts() {
        let own = |id: &str| {
            seen.findings().iter().any(|one| one["id"] == id && one["limb"] == limb && one["chart"] == place)
        };
        let Some(size) = chart["size"].as_u64() else { continue };
        let fall = list(&seen.limbs()[limb]["gradient"])
            .iter()
            .find(|one| one["chart"] == place && one["size"] == size);
        let Some(fall) = fall else {
            wrong.push(format!("no fall of the chosen size {size}"));
            continue;
        };
        let grade = word(&fall["grade"]);
        let rise = own("rise");
        if matches!(grade, "certain" | "likely" | "possible") && !rise
            || grade == "none" && rise && fall["beside"].is_null()
        {
            wrong.push(format!("grade {grade}, finding `rise` {rise}"));
        }
        let unknown = own("fall-unknown");
        if fall["judged"] == false && !unknown && !matches!(grade, "certain" | "likely") {
            wrong.push(format!("not judged ({grade}), and not said"));
        }
        if fall["judged"] == true && unknown {
            wrong.push("judged, and said not to be".to_owned());
        }
        if word(&chart["outcome"]) == "trial-fitting" && fall["judged"] == false {
            wrong.push("a trial fitting whose fall is not judged".to_owned());
        }
    }
}

#[test]
fn no_line_invites_to_fit_but_under_a_trial_fitting() {
    law(no_line_invites_to_fit);
}

#[test]
fn takes_every_girth_stands_only_where_no_girth_is_outside() {
    law(takes_means_takes);
}

#[test]
fn answered_stands_only_where_nothing_is_open() {
    law(answered_means_answered);
}

#[test]
fn the_basis_named_is_the_basis_used() {
    law(a_basis_named_is_the_basis_used);
}

#[test]
fn the_headline_names_who_the_finding_names() {
    law(the_headline_names_who_acts);
}

#[test]
fn the_outcome_is_the_worst() {
    law(the_outcome_is_the_worst_that_holds);
}

#[test]
fn sheet_and_report_say_one_thing() {
    law(the_sheet_says_the_same);
}

#[test]
fn findings_and_gradient_agree() {
    law(findings_and_fall_agree);
}
