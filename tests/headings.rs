//! Headings of tables: any case, blanks for hyphens, `the`; what is refused is told at its column.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::caseload::LimbColumns;
use tapeline::garment::{Chart, Schemes, open_chart};
use tapeline::input::{RowBlocks, Source};

use crate::support::{folder, run_in};

fn table(text: &str) -> Result<Chart, Vec<String>> {
    let source = Source::from_bytes("leaflet.csv".to_owned(), text.as_bytes().to_vec()).unwrap();
    open_chart(source, &Schemes::default())
        .map(|open| open.chart)
        .map_err(|all| all.iter().map(ToString::to_string).collect())
}

// Source: derived; one landmark however it is written.
#[test]
fn landmarks_of_a_heading() {
    for (text, mark) in [
        ("below-knee", Landmark::BelowKnee),
        ("Below knee", Landmark::BelowKnee),
        ("below the knee", Landmark::BelowKnee),
        ("BELOW_THE_KNEE", Landmark::BelowKnee),
        ("d", Landmark::BelowKnee),
        ("b1", Landmark::LowerCalf),
        (" mid  thigh ", Landmark::MidThigh),
    ] {
        assert_eq!(Landmark::of_heading(Limb::Leg, text), Some(mark), "{text}");
    }
    for text in ["knee below", "", "the", "midthigh", "wrist"] {
        assert_eq!(Landmark::of_heading(Limb::Leg, text), None, "{text}");
    }
}

#[test]
fn every_form_of_a_size_table_takes_any_case() {
    let plain = table("size,ankle_cm,below-knee_cm,ankle to below-knee_cm\n1,20-22,34-38,30-34\n").unwrap();
    for text in [
        "Size,Ankle_cm,Below the knee_CM,Ankle to Below Knee (cm)\n1,20-22,34-38,30-34\n",
        "SIZE,Ankle_low_cm,ANKLE HIGH CM,Below knee Low (cm),below_knee High cm,ankle_to_below_knee_cm\n1,20,22,34,38,30-34\n",
        "size,Measure,Low_cm,High_cm\n1,Ankle,20,22\n1,Below the Knee,34,38\n1,Ankle to below knee,30,34\n",
    ] {
        let chart = table(text).unwrap_or_else(|all| panic!("{text}{all:?}"));
        assert_eq!(format!("{:?}", chart.sizes), format!("{:?}", plain.sizes), "{text}");
    }
    // A table that names no limb yet: the words say which.
    assert_eq!(table("Size,Wrist low cm,Wrist high cm\n1,14,16\n").unwrap().limb, Limb::Arm);
}

#[test]
fn what_is_refused_is_told_at_its_column() {
    for (text, place, what) in [
        ("size,ankle_cm,thigh_cm\n1,20-22,50-56\n", "leaflet.csv:1:15", "`thigh`"),
        ("size,ankle_cm,colour\n1,20-22,red\n", "leaflet.csv:1:15", "`colour`"),
        ("size,ankle_cm,Ankle cm\n1,20-22,20-22\n", "leaflet.csv:2:", "twice"),
        ("size,ankle_cm,\n1,20-22,3\n", "leaflet.csv:1:15", "without a name"),
    ] {
        let problems = table(text).expect_err(text);
        assert!(problems[0].starts_with(place) && problems[0].contains(what), "{text}{problems:?}");
    }
}

#[test]
fn a_table_of_limbs_takes_any_case() {
    let text = "ID,Ankle_CM,Below the knee (cm),Ankle AT cm,Floor to Below Knee cm\na,21,36,11,40\n";
    let columns = LimbColumns::of(&RowBlocks::from_text("t.csv", text).unwrap(), Limb::Leg, false).unwrap();
    assert_eq!(columns.landmarks(), [Landmark::Ankle, Landmark::BelowKnee]);
    assert_eq!(columns.unused, Vec::<String>::new());
    for (header, place, what) in [
        ("id,Ankle_cm,Wrist_cm", "t.csv:1:13", "not of the leg"),
        ("id,ankle_cm,Below Knee", "t.csv:1:13", "no unit"),
        ("id,ankle_cm,B_mm", "t.csv:1:13", "two columns"),
    ] {
        let blocks = RowBlocks::from_text("t.csv", &format!("{header}\n")).unwrap();
        let problem = LimbColumns::of(&blocks, Limb::Leg, false).unwrap_err().to_string();
        assert!(problem.starts_with(place) && problem.contains(what), "{problem}");
    }
}

// By the command, a table of visits whose header has capitals.
#[test]
fn a_table_of_visits_takes_any_case() {
    let low = "date,side,affected,positions_from,client,wrist at 0 cm (cm),upper-arm at 33 cm (cm)\n2026-03-14,left,left,wrist,K-1,17,31\n2026-03-14,right,left,wrist,K-1,16,29\n";
    let high = low
        .replace("wrist at 0 cm (cm),upper-arm at 33 cm (cm)", "Wrist at 0 cm (cm),Upper Arm At 33 cm (CM)");
    let both = folder(&[("low.csv", low), ("high.csv", &high)]);
    let ran = |name: &str| run_in(both.path(), &["volume", name, "--today", "2026-03-14"], None);
    let (one, other) = (ran("low.csv"), ran("high.csv"));
    assert_eq!(one.status, other.status, "{}", other.stderr);
    assert!(!one.stdout.is_empty(), "{}", one.stderr);
    assert_eq!(one.stdout, other.stdout);
}
