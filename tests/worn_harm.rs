//! What is recorded of the client against a garment in use itself: numbness, an allergy. Must never be said: wear it on.

use tapeline::assessment::Outcome;
use tapeline::render::{Language, Paper, plain, sheet};
use tapeline::report::build;

use crate::scene::{Checked, SLEEVE, Scene};

const IN_USE: &str = "[{label: sleeves, size: \"1\", given_on: 2026-02-16, quantity: 2}]";

fn client_page(checked: &Checked) -> String {
    let pages = plain(&sheet(&build(&checked.0), Language::English), Paper::A4);
    let at = pages.find("FOR THE CLIENT").unwrap();
    pages[at..].split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

fn never_worn_on(page: &str) {
    for milder in ["Keep wearing it", "Wear it as they told you", "if it still fits", "Ask us if you should"]
    {
        assert!(!page.contains(&milder.to_lowercase()), "{milder}: {page}");
    }
}

// Combined with what else decides: nothing, a stop, a refer, an open question, no size.
#[test]
fn numb_fingers_under_a_garment_take_it_off_whatever_the_outcome() {
    let also = |items: &str| Scene::arm().present(&format!("feeling-altered{items}")).set("garments", IN_USE);
    let numb = || also("");
    let scenes = [
        (numb(), Outcome::TrialFitting),
        (also(", active-cancer"), Outcome::Refer),
        (numb().unknown("open-wound"), Outcome::Incomplete),
        (numb().girths("wrist@0=17 forearm@14=26 upper-arm@33=39"), Outcome::MadeToMeasure),
        (also(", acute-infection"), Outcome::Stop),
    ];
    for (scene, outcome) in scenes {
        let checked = scene.check();
        let decision = &checked.0.decision;
        assert_eq!(decision.outcome, Some(outcome));
        assert!(
            // A stop of the same day is said first, and the finding stands below it.
            outcome == Outcome::Stop || decision.next.contains("The garment in use comes off now"),
            "{outcome:?}: {} {}",
            decision.reason,
            decision.next
        );
        assert_eq!(checked.severities("worn-feeling"), ["caution"]);
        let page = client_page(&checked);
        never_worn_on(&page);
        assert!(page.contains("the garment you wear now take it off now."), "{outcome:?}: {page}");
        assert!(!checked.0.worn.iter().any(|one| one.again_since.is_some()));
    }
}

// Numb fingers without a garment listed: one may be worn all the same.
#[test]
fn numb_fingers_never_keep_an_unlisted_garment_on() {
    for scene in [Scene::arm(), Scene::arm().unknown("open-wound")] {
        let page = client_page(&scene.present("feeling-altered").check());
        never_worn_on(&page);
        assert!(page.contains("take it off if you feel numb or it tingles, and call us."), "{page}");
    }
}

// An emergency stays first, and the garment is still off.
#[test]
fn an_emergency_is_said_before_numbness() {
    let scene = Scene::arm().present("feeling-altered, septic-signs").set("garments", IN_USE);
    let checked = scene.check();
    let page = client_page(&checked);
    assert!(page.contains("call for emergency help now"), "{page}");
    assert!(page.find("emergency help now").unwrap() < page.find("tingling or numbness").unwrap());
    never_worn_on(&page);
}

#[test]
fn an_allergen_worn_is_told_of_its_own_garment_only() {
    let latex = SLEEVE.replace("[polyamide]", "[polyamide, elastodiene]");
    let other = latex.replace("label: sleeves", "label: other sleeves");
    let scene = Scene::arm().set("allergies", "[latex]").set("garments", IN_USE);
    // The garment offered holds latex, the one worn does not, and the other way about.
    let offered = scene.clone().only_chart(&other).chart(SLEEVE).check();
    assert!(offered.severities("worn-allergen").is_empty());
    let own =
        scene.clone().only_chart(&latex).chart(&SLEEVE.replace("label: sleeves", "label: other sleeves"));
    let worn = own.check();
    assert_eq!(worn.severities("worn-allergen"), ["caution"]);
    assert_eq!(worn.0.decision.outcome, Some(Outcome::TrialFitting));
    let said = &worn.0.decision.reason;
    assert!(said.contains("Today, beside it: An allergy to latex is recorded"), "{said}");
    let page = client_page(&worn);
    never_worn_on(&page);
    assert!(page.contains("take it off now. do not wear it again."), "{page}");
    // Two charts of its label, one of them with latex: which is worn is not known, so it is told.
    let twice = scene.only_chart(&latex).chart(SLEEVE).check();
    assert_eq!(twice.severities("worn-allergen"), ["caution"]);
}

// Each of both arms has its own answer and its own garments.
#[test]
fn numbness_of_one_arm_is_told_of_that_arm() {
    let both = Scene::arm().set("garments", IN_USE).both("both arms");
    let checked =
        both.change("right", "{absent: [skin", "{present: [feeling-altered], absent: [skin").check();
    let places: Vec<Option<usize>> = checked.of("worn-feeling").map(|one| one.place.limb).collect();
    assert_eq!(places, [Some(1)]);
}

// House rule: growth within two weeks is asked about as a sudden one; a day more is not.
#[test]
fn growth_of_a_few_days_asks_for_a_sudden_cause() {
    let other = "wrist@0=16 forearm@14=25 upper-arm@33=30";
    let before = |day: &str| {
        Scene::arm()
            .set("measured_on", day)
            .girths("wrist@0=16.5 forearm@14=25.2 upper-arm@33=30.1")
            .other(other)
    };
    let next = |day: &str| {
        let checked = Scene::arm().other(other).earlier(&before(day)).check();
        checked.of("worsening").next().unwrap().next.clone()
    };
    assert!(next("2026-02-28").ends_with("It came within 14 days: ask again about a clot and an infection."));
    assert!(!next("2026-02-27").contains("clot"));
    assert!(next("2026-03-13").contains("within 1 day:"));
}

/// Readings at wrist, forearm and upper arm under a size.
fn read(size: &str, mmhg: [&str; 3]) -> String {
    let one = |(landmark, mmhg): (&str, &str)| {
        format!("{{landmark: {landmark}, pressure: {mmhg}, garment: \"sleeves, size {size}\"}}")
    };
    let all: Vec<String> = ["wrist", "forearm", "upper-arm"].into_iter().zip(mmhg).map(one).collect();
    format!("[{}]", all.join(", "))
}

// What is read under the garment in use is judged, whether its size is in question (1) or not (2).
#[test]
fn readings_under_a_garment_in_use_take_it_off() {
    let use_of = |size: &str| format!("[{{label: sleeves, size: \"{size}\", given_on: 2026-02-16}}]");
    for size in ["1", "2"] {
        let scene = |mmhg| Scene::arm().set("garments", &use_of(size)).set("readings", &read(size, mmhg));
        for mmhg in [["72", "30", "20"], ["14", "22", "30"]] {
            let checked = scene(mmhg).check();
            assert_eq!(checked.severities("worn-reading"), ["caution"], "{size} {mmhg:?}");
            let next = &checked.0.decision.next;
            assert!(next.contains("The garment in use comes off now"), "{size} {mmhg:?}: {next}");
            assert!(!next.contains("Take the garment off"), "told twice: {next}");
            let page = client_page(&checked);
            never_worn_on(&page);
            assert!(page.contains("take it off now."), "{size} {mmhg:?}: {page}");
        }
        assert!(scene(["30", "22", "14"]).check().severities("worn-reading").is_empty(), "{size}");
        // Read under another size than the one in use.
        let other = if size == "1" { "2" } else { "1" };
        let elsewhere =
            Scene::arm().set("garments", &use_of(other)).set("readings", &read(size, ["72", "30", "20"]));
        assert!(elsewhere.check().severities("worn-reading").is_empty());
    }
}

// A stop on a limb with a garment in use is told of that garment too; each of two limbs has its own.
#[test]
fn a_stop_is_told_of_the_garment_in_use() {
    let stop = Scene::arm().present("acute-infection");
    assert!(stop.check().severities("worn-stop").is_empty());
    let checked = stop.set("garments", IN_USE).check();
    assert!(checked.of("worn-stop").next().unwrap().message.contains("sleeves, size 1"));
}

// Harm by the garment in use: it is not ordered again before the cause is found.
#[test]
fn what_harms_is_not_ordered_again() {
    let before = Scene::arm().set("measured_on", "2026-02-14");
    let again = |scene: Scene| {
        let checked = scene.set("garments", IN_USE).earlier(&before).check();
        let pages = plain(&sheet(&build(&checked.0), Language::English), Paper::A4);
        (checked.0.worn[0].again_since.is_some(), pages.contains("NOTHING IS ORDERED FROM THIS SHEET"))
    };
    assert_eq!(again(Scene::arm()), (true, false));
    assert_eq!(again(Scene::arm().present("feeling-altered")), (false, true));
    assert_eq!(again(Scene::arm().set("readings", &read("1", ["72", "30", "20"]))), (false, true));
    // Of two charts of one label nobody knows which it is of.
    assert!(!again(Scene::arm().chart(SLEEVE)).0);
}
