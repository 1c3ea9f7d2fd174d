//! Issue 9: what an earlier state of the tool said of the fall that was wrong, where no other module holds it.

use tapeline::anatomy::Landmark;
use tapeline::garment::Outfit;
use tapeline::gradient::Grade;
use tapeline::sizing::ChartVerdict;

use crate::scene::Scene;
use crate::worn_support::{arm, garment, linear, on, piece, together};

use Landmark::{Axilla, Forearm, Hand, UpperArm, Wrist};

/// Source: issue 9: a hand piece over the wrist (relaxed 14.2) hid the certain rise of a sleeve (12.8, 15.7, 22.4,
/// 26.8 on the demo arm). Whatever knit both are of, the set is never graded milder than the sleeve by itself.
#[test]
fn a_hand_piece_over_the_wrist_hides_no_rise_of_the_sleeve_under_it() {
    // By the rule of today that rise is likely (2.10 SDs, 2.13 are certain: derived); a little more is certain.
    for (slope, forearm, wanted) in
        [(150.0, 15.7, Grade::Likely), (258.0, 15.7, Grade::Likely), (400.0, 15.5, Grade::Certain)]
    {
        let cloth = linear("knit", slope, 200.0);
        let relaxed = [(Wrist, 12.8), (Forearm, forearm), (UpperArm, 22.4), (Axilla, 26.8)];
        let sleeve = garment("sleeve", Some(cloth.clone()), &relaxed);
        let hand = garment("hand piece", Some(cloth), &[(Hand, 15.0), (Wrist, 14.2)]);
        let alone = on(&arm(), &Outfit::of(piece(sleeve.clone())), &[]);
        let both = on(&arm(), &together(vec![piece(sleeve), piece(hand)]), &[]);
        assert!(both.grade() <= alone.grade(), "{slope}: {:?} {:?}", alone.grade(), both.grade());
        assert_eq!(both.is_taken_out(), alone.is_taken_out(), "{slope}");
        assert_eq!(alone.grade(), Some(wanted), "{slope} {forearm}");
    }
}

/// A chart whose own rule takes the smaller of a pair, with a gap between the sizes that the arm lies in.
fn between(forearm: &str, picks: &str) -> Scene {
    let relaxed = "relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}";
    Scene::arm()
        .chart_with(
            "girths: {wrist: 14-20, forearm: 22-30, upper-arm: 26-36}",
            "girths: {wrist: 12-16.6, forearm: 20-25.6, upper-arm: 24-30.6}",
        )
        .chart_with(
            "girths: {wrist: 20-26, forearm: 30-38, upper-arm: 36-46}",
            "girths: {wrist: 17.4-26, forearm: 26.4-38, upper-arm: 31.4-46}",
        )
        .chart_with(relaxed, &format!("relaxed: {{wrist: 12.5, forearm: {forearm}, upper-arm: 27}}"))
        .chart_with("units: {length: cm}", &format!("between_sizes: {picks}\nunits: {{length: cm}}"))
}

/// Source: issue 9 and design section 6: `between_sizes: smaller` picked a size that certainly rises.
#[test]
fn a_size_between_that_certainly_rises_is_no_pick() {
    let of = |forearm: &str, picks: &str| {
        let found = between(forearm, picks).check().0;
        let chart = &found.limbs[0].charts[0];
        let grade = chart.shown.iter().find(|one| one.size == 0).and_then(|one| one.estimated.grade());
        (chart.choice.verdict, chart.choice.size, grade)
    };
    let (verdict, size, grade) = of("20.8", "smaller");
    assert_eq!((verdict, size), (ChartVerdict::Between, Some(0)));
    assert!(grade > Some(Grade::Certain));
    let (verdict, size, grade) = of("14.5", "smaller");
    assert_eq!((verdict, grade), (ChartVerdict::Between, Some(Grade::Certain)));
    assert_ne!(size, Some(0));
    // The larger one rises by itself or not; a rule that picks it never takes the risen smaller one instead.
    let (_, size, _) = of("14.5", "larger");
    assert_ne!(size, Some(0));
}
