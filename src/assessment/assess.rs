//! Owns the whole check of one run.

use super::chart::{ChartInRun, assess_chart};
use super::chart_outcomes::counted;
use super::clearings::Clearings;
use super::clearings_not_counted::vain_clearings;
use super::client_findings::{ClientAsked, of_client};
use super::course_findings::{is_grown, is_worse, of_limb_course, of_volume};
use super::followed::followed;
use super::garment_assessment::assess_garment;
use super::record_findings::of_record;
use super::set_findings::{end_need_of_part, has_part, of_set};
use super::wanted::{PrescribedHere, claimed_band};
use super::weigh::{decide, hold_orders, limb_outcome};
use super::worn_findings::InUse;
use super::worn_harm::take_off_once;
use super::{
    Assessment, ChartAssessment, ChartOutcomes, LimbAssessment, LimbContext, LimbOutcomes, Opened, Outcome,
    Setting,
};
use crate::finding::{self, Finding, Place};
use crate::garment::{Chart, printed_labels};
use crate::input::YesNo;
use crate::record::Record;
use crate::screening::{Case, carried_over, settle};
use crate::sizing::parts;
use crate::volume::{Course, measure};

/// Checks the newest visit of a run against its charts and garments; none without a record.
pub fn assess(opened: &Opened, setting: &Setting) -> Option<Assessment> {
    let record = opened.record()?;
    let earlier = opened.earlier();
    let earlier_refs: Vec<&Record> = earlier.iter().collect();
    let followed = followed(&opened.visits, setting);
    let carried = carried(record, earlier, followed.as_ref(), setting);
    let record = &carried;
    let mut findings = of_record(record, &earlier_refs, setting);
    findings.extend(lowered(setting));
    let mut limbs = Vec::new();
    let mut garments = Vec::new();
    let mut in_use = InUse::default();
    for (index, limb) in record.limbs.iter().enumerate() {
        let case = Case {
            record,
            limb,
            earlier,
            rules: &setting.rules,
            schemes: &setting.schemes,
            today: setting.today,
            worsening: is_worse(followed.as_ref(), limb.side),
            grown: is_grown(followed.as_ref(), limb.side),
        };
        let screened = settle(&case);
        let prescribed = PrescribedHere::of(record.prescribed_for(limb), record.limb, &setting.schemes);
        let context = LimbContext {
            setting,
            record,
            limb,
            index,
            wanted: prescribed.pressure().cloned(),
            postponed: screened.postpone,
            made_to_measure: is_yes(limb.observed.folds) || is_yes(limb.observed.distortion),
            extremity_swollen: is_yes(limb.observed.extremity_swelling),
            cap_mmhg: screened.cap_mmhg,
            clearings: Clearings { case },
            only_garment: is_only(opened),
        };
        if let PrescribedHere::OtherLimb(scheme) = &prescribed {
            let one = finding::prescription_other_limb::prescription_other_limb(
                Place::limb(index),
                scheme,
                record.limb.name(),
            );
            findings.push(context.clearings.decide(one));
        }
        let (charts, of_charts) = charts_of(&context, &opened.charts);
        let (own, of_garments) = garments_of(&context, opened);
        garments.extend(own);
        let volume = measure(record, limb, &setting.rules);
        findings.extend(of_volume(&context, &volume));
        let asked =
            ClientAsked { case, screened: &screened, index, held: held(&charts, &context, opened), setting };
        findings.extend(of_client(&asked));
        if let Some(course) =
            followed.as_ref().and_then(|one| one.limbs.iter().find(|one| one.side == limb.side))
        {
            let made =
                context.made_to_measure || charts.iter().any(|one| one.outcome() == Outcome::MadeToMeasure);
            let own = of_limb_course(record.limb, course, Place::limb(index), made);
            findings.extend(own.into_iter().map(|one| context.clearings.decide(one)));
            findings.extend(in_use.look(course, &context, &screened, opened));
        }
        findings.extend(of_set(&context, &charts));
        findings.extend(of_charts);
        findings.extend(of_garments);
        end_need_of_part(index, &charts, opened, &mut findings);
        let vain = vain_clearings(case, index, &findings);
        findings.extend(vain);
        limbs.push(LimbAssessment {
            side: limb.side,
            outcome: None,
            wanted: prescribed.pressure().cloned(),
            cap_mmhg: screened.cap_mmhg,
            screened,
            charts,
            volume,
        });
    }
    if let Some(one) = followed.as_ref().and_then(|one| one.weight) {
        findings.push(finding::weight_changed::weight_changed(Place::CLIENT, one.was_kg, one.now_kg, one.on));
    }
    let mut findings = take_off_once(findings);
    sort(&mut findings);
    settle_outcomes(&mut limbs, &findings);
    let outcomes: Vec<LimbOutcomes> = limbs.iter().map(|limb| outcomes_of(record, limb)).collect();
    let decision = decide(&findings, &outcomes);
    hold_orders(&mut findings, decision.outcome);
    in_use.mark_same_again(&limbs, followed.as_ref(), &findings);
    Some(Assessment {
        setting: setting.clone(),
        record: record.clone(),
        earlier: earlier.to_vec(),
        limbs,
        garments,
        findings,
        course: followed,
        drift: in_use.drift,
        worn: in_use.worn,
        decision,
    })
}

/// The record with what a re-order carries over, for each of its limbs.
fn carried(record: &Record, earlier: &[Record], course: Option<&Course>, setting: &Setting) -> Record {
    let mut whole = record.clone();
    for place in 0..record.limbs.len() {
        let Some(limb) = whole.limbs.get(place) else { continue };
        let case = Case {
            record: &whole,
            limb,
            earlier,
            rules: &setting.rules,
            schemes: &setting.schemes,
            today: setting.today,
            worsening: is_worse(course, limb.side),
            grown: is_grown(course, limb.side),
        };
        if let Some(with) = carried_over(&case) {
            whole = with;
        }
    }
    whole
}

fn is_yes(answer: Option<YesNo>) -> bool {
    answer == Some(YesNo::Yes)
}

/// Whether the run holds one garment only: a reading need not name it then.
fn is_only(opened: &Opened) -> bool {
    let sizes: usize = opened.charts.iter().map(|chart| chart.sizes.len()).sum();
    sizes + opened.outfits.len() == 1
}

/// What a rules file lowers, said at the top of every report.
fn lowered(setting: &Setting) -> Vec<Finding> {
    setting
        .rules
        .lowered
        .iter()
        .map(|one| {
            let what = format!("{} is {} instead of {}", one.id.replace('-', " "), one.now, one.was);
            finding::rules_lowered::rules_lowered(Place::CLIENT, &what, &one.why)
        })
        .collect()
}

/// Every chart on a limb, with the counted ones marked.
fn charts_of(context: &LimbContext<'_>, charts: &[Chart]) -> (Vec<ChartAssessment>, Vec<Finding>) {
    let refs: Vec<&Chart> = charts.iter().collect();
    let part = parts(&refs);
    let printed = printed_labels(&refs);
    let mut assessed = Vec::new();
    let mut found = Vec::new();
    for (place, chart) in charts.iter().enumerate() {
        let own = part.get(place).copied().unwrap_or_default();
        let elsewhere = charts.iter().zip(&part).any(|(other, of)| *of != own && has_part(other));
        let run = ChartInRun {
            chart: chart.clone(),
            printed: printed.get(place).cloned().unwrap_or_default(),
            part: own,
            place,
            part_elsewhere: elsewhere,
        };
        let (one, own) = assess_chart(context, run);
        assessed.push(one);
        found.extend(own);
    }
    let outcomes: Vec<ChartOutcomes> = assessed.iter().map(|one| one.outcomes.clone()).collect();
    for place in counted(&outcomes) {
        if let Some(chart) = assessed.get_mut(place) {
            chart.counted = true;
        }
    }
    (assessed, found)
}

fn garments_of(context: &LimbContext<'_>, opened: &Opened) -> (Vec<super::GarmentAssessment>, Vec<Finding>) {
    let only = is_only(opened);
    let mut all = Vec::new();
    let mut found = Vec::new();
    for outfit in &opened.outfits {
        let (one, own) = assess_garment(context, outfit, only);
        all.push(one);
        found.extend(own);
    }
    (all, found)
}

/// The highest pressure in question on a leg, mmHg; none = unknown or open at its end.
fn held(charts: &[ChartAssessment], context: &LimbContext<'_>, opened: &Opened) -> Option<f64> {
    let mut ends: Vec<Option<f64>> = Vec::new();
    if let Some(wanted) = &context.wanted {
        ends.push(wanted.high);
    }
    for chart in charts.iter().filter(|chart| chart.counted) {
        ends.push(match claimed_band(chart.chart.claim.as_ref()) {
            Some(band) => band.high,
            None => chart
                .size()
                .and_then(|size| chart.shown(size))
                .and_then(|shown| shown.estimated.reference.mmhg),
        });
    }
    for outfit in &opened.outfits {
        ends.push(claimed_band(outfit.claim.as_ref()).and_then(|band| band.high));
    }
    if ends.is_empty() {
        return None;
    }
    ends.into_iter().try_fold(f64::NEG_INFINITY, |highest, end| end.map(|end| highest.max(end)))
}

/// Client before garments; worst first; what is open before what is only to be borne in mind.
fn sort(findings: &mut [Finding]) {
    findings.sort_by_key(|one| {
        (
            !one.place.is_client(),
            one.place.limb.unwrap_or(0),
            one.place.chart,
            one.severity,
            one.is_cleared(),
            !one.is_open,
            one.urgency,
        )
    });
}

fn outcomes_of(record: &Record, limb: &LimbAssessment) -> LimbOutcomes {
    let name =
        if record.is_both() { format!("{} {}", limb.side.name(), record.limb.name()) } else { String::new() };
    LimbOutcomes { name, charts: limb.charts.iter().map(|chart| chart.outcomes.clone()).collect() }
}

fn settle_outcomes(limbs: &mut [LimbAssessment], findings: &[Finding]) {
    for (index, limb) in limbs.iter_mut().enumerate() {
        let charts: Vec<ChartOutcomes> = limb.charts.iter().map(|chart| chart.outcomes.clone()).collect();
        limb.outcome = limb_outcome(findings, index, &charts);
    }
}
