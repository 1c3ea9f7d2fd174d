//! The shipped rules, held against what reference texts state, and rules files of a user.

use tapeline::anatomy::Limb;
use tapeline::input::Source;
use tapeline::rules::{
    ArterialValue, ClearRule, Group, LoweredWhat, NumberId, Rules, Severity, Urgency, Validity, read_rules,
    read_shipped_rules,
};

fn default_rules() -> Rules {
    read_shipped_rules("default").unwrap_or_else(|problems| panic!("{problems:#?}"))
}

fn of(text: &str) -> Result<Rules, String> {
    let source = Source::of_text("clinic.yaml", text);
    read_rules(Some(source))
        .map_err(|problems| problems.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))
}

#[test]
fn shipped_sets_are_read() {
    let rules = default_rules();
    assert!(rules.lowered.is_empty());
    let other = read_shipped_rules("awmf-037-005").unwrap_or_else(|problems| panic!("{problems:#?}"));
    assert!(other.lowered.iter().all(|one| !one.why.is_empty()), "{:?}", other.lowered);
    let ids: Vec<&str> = other.lowered.iter().map(|one| one.id.as_str()).collect();
    assert!(ids.contains(&"abpi") && ids.contains(&"feeling-lost-diabetes"), "{:?}", other.lowered);
    for id in NumberId::ALL {
        let (low, high) = id.sane();
        let value = rules.number(*id);
        assert!((low..=high).contains(&value), "{} {value}", id.id());
    }
}

/// Source: the questions' table, restated: id, limb, group, severity on arm and leg, urgency, who clears.
#[test]
fn each_item_weighs_what_the_table_says() {
    const ROWS: &str = "
acute-infection|both|today|stop|stop|same-day|
septic-signs|both|today|stop|stop|emergency|
suspected-clot|both|today|stop|stop|same-day|
cold-or-blue-limb|both|today|stop|stop|emergency|
new-weakness|both|today|stop|stop|emergency|
caval-obstruction|both|today|stop|stop|emergency|
new-breathlessness|both|today|stop|stop|emergency|
pregnancy-warning|both|today|stop|stop|emergency|
fragile-skin|both|skin|clear-first|clear-first|routine|physician, therapist, podiatry
radiotherapy-sore|both|skin|clear-first|clear-first|routine|oncology, therapist
radiotherapy-recent|both|skin|caution|caution|routine|
open-wound|both|skin|clear-first|clear-first|soon|physician, vascular, podiatry, therapist after a passing arterial decision
foot-wound|leg|skin||clear-first|same-day|podiatry, vascular
suspected-skin-cancer|both|skin|stop|stop|soon|
thick-warty-skin|both|skin|caution|caution|routine|
axillary-cords|arm|skin|caution||routine|
bony-prominence|leg|skin||caution|routine|
feeling-altered|both|feeling|caution|caution|routine|
feeling-reduced|both|feeling|clear-first|clear-first|routine|physician, podiatry, therapist by protocol
feeling-lost-diabetes|leg|feeling||stop|soon|physician, podiatry
paralysis|both|feeling|clear-first|clear-first|routine|physician, therapist where light touch is felt
cause-not-known|both|cause|clear-first|clear-first|soon|physician, oncology, vascular, therapist
suspected-recurrence|both|cause|clear-first|clear-first|soon|oncology, physician
active-cancer|both|cause|clear-first|clear-first|routine|oncology, palliative, physician
node-surgery|both|operations|clear-first|clear-first|routine|surgery
recent-surgery|both|operations|clear-first|clear-first|routine|surgery, therapist by protocol
healed-surgery|both|operations|caution|caution|routine|
heart-failure-mild|both|heart-kidneys|caution|caution|routine|
heart-failure-moderate|both|heart-kidneys|caution|clear-first|routine|cardiology, physician
heart-failure-severe|both|heart-kidneys|stop|stop|same-day|
kidney-liver|both|heart-kidneys|clear-first|clear-first|routine|renal, physician
general-swelling|both|heart-kidneys|clear-first|clear-first|soon|physician
diabetes|both|heart-kidneys|note|caution|routine|
anticoagulant|both|heart-kidneys|note|note|routine|
arterial-rest-pain|leg|circulation||stop|same-day|
arterial-walking-pain|leg|circulation||clear-first|soon|vascular, physician after a passing arterial decision
arm-artery-disease|arm|circulation|clear-first||soon|vascular, physician
raynaud|arm|circulation|caution||routine|
bypass-shallow|both|circulation|stop|stop|soon|
bypass-deep-or-stent|both|circulation|clear-first|clear-first|routine|vascular
dialysis-access|arm|devices|clear-first||routine|renal, vascular
line-under-garment|arm|devices|clear-first||routine|physician, oncology, cardiology
port-or-pacemaker|arm|devices|caution||routine|
glucose-sensor|arm|devices|caution||routine|
weak-hands|both|daily-life|caution|caution|routine|
cannot-remove-alone|both|daily-life|clear-first|clear-first|routine|therapist
cannot-report|both|daily-life|clear-first|clear-first|routine|physician, therapist
pregnancy|both|daily-life|caution|caution|routine|
frail|both|daily-life|caution|caution|routine|
earlier-harm|both|daily-life|caution|caution|routine|
any-change|both|changes|note|note|routine|
wear-harm|both|wear|caution|caution|routine|
child|both||clear-first|clear-first|routine|physician, prescriber";
    let rules = default_rules();
    let rows: Vec<Vec<&str>> = ROWS.trim().lines().map(|row| row.split('|').collect()).collect();
    assert_eq!(rows.len(), rules.items.len());
    for (row, item) in rows.iter().zip(&rules.items) {
        let weight = |limb| {
            if item.limbs.include(limb) { item.weight(limb, |_| false).word() } else { "" }
        };
        let who: Vec<String> = item.cleared_by.iter().map(|one: &ClearRule| one.spoken()).collect();
        let found = [
            item.id.as_str(),
            item.limbs.word(),
            item.group.map_or("", Group::word),
            weight(Limb::Arm),
            weight(Limb::Leg),
            item.urgency.word(),
            &who.join(", "),
        ];
        assert_eq!(row.as_slice(), found);
    }
}

#[test]
fn each_group_holds_as_long_as_stated() {
    let rules = default_rules();
    for group in &rules.groups {
        let wanted = match group.id {
            Group::Today | Group::Changes | Group::Wear => (Validity::Days(7), None),
            Group::Skin | Group::Feeling => (Validity::Months(3), None),
            _ => (Validity::Months(12), Some(Validity::Months(3))),
        };
        assert_eq!((group.valid, group.caution), wanted, "{:?}", group.id);
    }
    let sided: Vec<&str> = rules.groups.iter().filter(|one| one.per_side).map(|one| one.id.word()).collect();
    assert_eq!(sided, ["skin", "feeling", "cause", "operations", "circulation", "devices"]);
    let asked = |limb| rules.groups_of(limb).count();
    assert_eq!((asked(Limb::Arm), asked(Limb::Leg)), (9, 8));
}

#[test]
fn what_becomes_milder_says_why_or_is_a_problem() {
    const HEAD: &str = "tapeline: rules/1\nid: ours\nextends: default\nlabel: ours\nsource: ours\n";
    let item = |severity: &str, why: &str| {
        format!(
            "{HEAD}items:\n  - {{id: suspected-clot, limb: both, group: today, condition: c, severity: {severity}, urgency: same-day, finding: f, next: n, basis: house rule, source: s{why}}}\n"
        )
    };
    let refused = of(&item("note", "")).unwrap_err();
    assert!(refused.contains("clinic.yaml:7:5: suspected-clot: is milder"), "{refused}");
    let taken = of(&item("note", ", why: agreed")).unwrap();
    assert_eq!(taken.lowered.len(), 1);
    let one = &taken.lowered[0];
    assert_eq!(
        (one.what, one.id.as_str(), one.was.as_str(), one.now.as_str(), one.why.as_str()),
        (LoweredWhat::Severity, "suspected-clot", "stop", "note", "agreed")
    );
    assert!(of(&item("stop", "")).unwrap().lowered.is_empty());
    // A number inside its sane range is no matter, one outside is said with its reason.
    let number = |value: &str| {
        format!("{HEAD}numbers:\n  - {{id: pressure-limit, value: {value}, basis: house rule, why: ours}}\n")
    };
    assert!(of(&number("50 mmHg")).unwrap().lowered.is_empty());
    let said = of(&number("90 mmHg")).unwrap().lowered;
    assert_eq!(
        (said[0].what, said[0].was.as_str(), said[0].now.as_str()),
        (LoweredWhat::Number, "60 mmHg", "90 mmHg")
    );
    // A role more is milder as well.
    let roles =
        format!("{HEAD}findings:\n  - {{finding: rise, cleared_by: [fitter, therapist, physician]}}\n");
    assert!(of(&roles).unwrap_err().contains("is milder"));
    // A set that extends nothing is refused.
    assert!(of("tapeline: rules/1\nid: ours\nlabel: ours\nsource: ours\n").is_err());
}

#[test]
fn the_second_set_differs_where_it_says() {
    let other = read_shipped_rules("awmf-037-005").unwrap();
    let worst = |at: f64| {
        let lines = other.arterial.iter().filter(|one| one.value == ArterialValue::Abpi && one.holds(at));
        lines.map(|one| one.severity).min()
    };
    assert_eq!(worst(0.49), Some(Severity::Stop));
    assert_eq!(worst(0.5), Some(Severity::ClearFirst));
    let item = other.item("feeling-lost-diabetes").unwrap();
    assert_eq!((item.severity, item.urgency), (Severity::ClearFirst, Urgency::Soon));
    assert_eq!(other.item("heart-failure-moderate").unwrap().severity, Severity::ClearFirst);
}

/// Source: where the user's own role may clear it, the words are "you decide and sign".
#[test]
fn who_may_clear_it_is_told_to_decide_and_sign() {
    let rules = default_rules();
    for item in &rules.items {
        let own = item.cleared_by.iter().any(|one| one.role.word() == "therapist");
        assert_eq!(own, item.next.contains("you decide and sign"), "{}", item.id);
    }
    assert!(
        rules.label_with_counts().starts_with("tapeline's questions, after Rabe 2020 and others (53 items: ")
    );
}

/// Source: each number restated where it was set down: tape and volumes from Tánori-Tapia 2020 and Lymphat Res
/// Biol 2022, layers from Ann Vasc Dis 2012, spread and sensor from Partsch 2006, the rest house rules.
#[test]
fn the_numbers_are_the_ones_set_down() {
    const ROWS: &str = "
tape-sd 0.35 cm|relaxed-sd 0.3 cm|tension-sd 5 %|wrap-sd 20 %|reading-sd 2.5 mmHg|hollow-sd 5 mmHg|worn-sd 4.1 mmHg
repeat-gap 0.5 cm|repeat-limit 2 cm|length-gap 1 cm|position-gap 2 cm|edge-margin 0.5 cm|pick-miss 0.5 cm
inside-chance 0.5|same-again 0.9|sizes-apart 2|chart-wide 40 %|rise-step 10 %|rise-certain 0.95|rise-likely 0.5
rise-possible 0.05|pair-beyond-chance 0.05|fall-sure 0.02|even-fall 40 %|graded-odds 9|rise-removes 3 mmHg
stretch-exponent-low 0.7|stretch-exponent-high 1.5|strip-exponent 0.1|decide-least 0.2|decide-cheaper 0.1
ratio-chance 0.95|pressure-limit 60 mmHg|pressure-least 5 mmHg|class-chance 0.05|band-tolerance 20 %
unheld-limit 20 mmHg|layers-low 0.83|layers-high 1|sensor-bias -2.1 mmHg|sensor-low -10.1 mmHg|sensor-high 5.8 mmHg
no-value-limit 20 mmHg|protocol-cap 20 mmHg|index-gap 0.15|slope-caution 1.5|slope-strong 2.5
girth-age-caution 3 months|girth-age-limit 6 months|arterial-age-caution 6 months|arterial-age-limit 12 months
clearing-valid 6 months|re-order-age 12 months|soon-days 14 days|infection-rest 28 days|weight-change 5 %
thinner-side 4 %|visit-change-sd 2.6|natural-change 1.5 %|neighbour-low 0.6|neighbour-high 1.6
other-girth-low 11 cm|other-girth-high 75 cm|girth-asked-above 200 cm|visit-volume-sd 1.2 %
visit-volume-sd-repeats 0.8 %|ready-loss 2 %|ready-days 14 days|ready-days-long 28 days|ready-visits 3
ready-span 7 days|early-change 3 %|early-change-published 5 %|recheck-from 28 days|recheck-to 42 days
recheck-later-from 3 months|recheck-later-to 6 months|first-look 7 days|renew-in-turn 6 months|renew-alone 3 months
renew-child 3 months|wear-day 12|infections-a-year 2";
    let rules = default_rules();
    let wanted: Vec<&str> = ROWS.trim().lines().flat_map(|row| row.split('|')).collect();
    let found: Vec<String> =
        rules.numbers.iter().map(|number| format!("{} {}", number.id.id(), number.text)).collect();
    assert_eq!(found, wanted);
    assert_eq!(found.len(), NumberId::ALL.len());
}
