//! Owns a garment worked out for a wanted pressure: the pattern, and the check of the garment that it gives.

use super::wanted::PrescribedHere;
use super::{Assessment, Opened, Setting, assess};
use crate::anatomy::Landmark;
use crate::estimate::{EstimateRules, NoPattern, OnLimb, Pattern, Target, Wanted, WantedFall, pattern};
use crate::finding::{self, Place};
use crate::garment::{Claim, Outfit, Piece};
use crate::input::Text;
use crate::words;

/// What is asked for.
#[derive(Clone, Debug)]
pub struct PatternAsked {
    /// The garment's label.
    pub label: Text,
    /// Layers of the fabric.
    pub layers: u32,
    /// The pressure wanted; none = what was prescribed.
    pub target: Option<Target>,
    /// A straight fall to this share at the top, %; none = the scheme's limits.
    pub fall_to: Option<f64>,
    /// The class claimed; none = what was prescribed, if it was a class.
    pub claim: Option<Claim>,
    /// The garment's proximal end; none = the last measured landmark.
    pub to: Option<Landmark>,
}

/// A pattern with the check of its garment.
#[derive(Clone, Debug)]
pub struct PatternAssessment {
    /// The pattern.
    pub pattern: Pattern,
    /// What was aimed at, in words.
    pub target: String,
    /// The garment's label.
    pub label: String,
    /// The fabric's label.
    pub fabric: String,
    /// Layers.
    pub layers: u32,
    /// The check of the garment, with the client's findings.
    pub assessment: Assessment,
}

/// Why there is no pattern.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoPatternHere {
    /// No record.
    NoRecord,
    /// Not exactly one fabric.
    Fabric(usize),
    /// Nothing is wanted: neither asked nor prescribed.
    NothingWanted,
    /// The estimate gives none.
    Pattern(NoPattern),
}

/// Works out a garment for the first limb of the record and checks it as any other.
///
/// # Errors
/// A [`NoPatternHere`] that says what is missing.
pub fn assess_pattern(
    opened: &Opened,
    asked: PatternAsked,
    setting: &Setting,
) -> Result<PatternAssessment, NoPatternHere> {
    let record = opened.record().ok_or(NoPatternHere::NoRecord)?;
    let limb = record.limbs.first().ok_or(NoPatternHere::NoRecord)?;
    let fabric = match opened.fabrics.as_slice() {
        [one] => one.clone(),
        all => return Err(NoPatternHere::Fabric(all.len())),
    };
    let prescribed = PrescribedHere::of(record.prescribed_for(limb), record.limb, &setting.schemes);
    let prescribed = prescribed.pressure().cloned();
    let claim = asked.claim.or_else(|| {
        let (scheme, class) = prescribed.as_ref()?.class.clone()?;
        Some(Claim { scheme: setting.schemes.find(&scheme)?, class })
    });
    let fall = asked.fall_to.map_or(WantedFall::Scheme, WantedFall::To);
    let target = match asked.target {
        Some(target) => target,
        None if claim.is_some() => Target::Class(fall),
        None => {
            let (low, high) = prescribed
                .as_ref()
                .and_then(|wanted| Some((wanted.low?, wanted.high?)))
                .ok_or(NoPatternHere::NothingWanted)?;
            Target::Reference(f64::midpoint(low, high), fall)
        }
    };
    let target_words = target_words(&target, claim.as_ref());
    let on = OnLimb { limb: record.limb, marks: &limb.marks };
    let wanted = Wanted {
        label: asked.label.clone(),
        fabric: fabric.clone(),
        layers: asked.layers,
        claim,
        style: None,
        target,
        to: asked.to,
    };
    let pattern =
        pattern(&on, &wanted, &EstimateRules::of(&setting.rules)).map_err(NoPatternHere::Pattern)?;
    let outfits =
        pattern.garment.iter().map(|garment| Outfit::of(Piece::Garment(Box::new(garment.clone())))).collect();
    let run = Opened {
        visits: opened.visits.clone(),
        charts: Vec::new(),
        outfits,
        fabrics: opened.fabrics.clone(),
    };
    let mut assessment = assess(&run, setting).ok_or(NoPatternHere::NoRecord)?;
    let place = Place::limb(0).garment();
    let rises: Vec<String> = pattern
        .rises
        .iter()
        .map(|(distal, proximal)| format!("from {} to {}", words::the(*distal), words::the(*proximal)))
        .collect();
    if !rises.is_empty() {
        assessment.findings.push(finding::target_rises::target_rises(place, &words::list(&rises)));
    }
    let beyond: Vec<String> = pattern
        .marks
        .iter()
        .filter(|mark| mark.relaxed.is_none())
        .map(|mark| {
            format!(
                "{} wanted {}, at most {}",
                words::mmhg(mark.wanted),
                words::at(mark.landmark),
                words::mmhg(mark.most)
            )
        })
        .collect();
    if !beyond.is_empty() {
        assessment.findings.push(finding::target_beyond::target_beyond(place, &beyond));
    }
    assessment.decision = super::weigh::decide(&assessment.findings, &[super::LimbOutcomes::default()]);
    super::weigh::hold_orders(&mut assessment.findings, assessment.decision.outcome);
    super::one_garment::said_of_garment(&mut assessment);
    Ok(PatternAssessment {
        pattern,
        target: target_words,
        label: asked.label.to_string(),
        fabric: fabric.label.to_string(),
        layers: asked.layers,
        assessment,
    })
}

fn target_words(target: &Target, claim: Option<&Claim>) -> String {
    let fall = |fall: &WantedFall| match fall {
        WantedFall::To(share) => format!(", falling to {} at the top", words::percent(*share)),
        WantedFall::Scheme => ", falling within the scheme's limits".to_owned(),
    };
    match target {
        Target::Reference(mmhg, to) => format!("{}{}", words::mmhg(*mmhg), fall(to)),
        Target::Class(to) => {
            let class = claim.map(super::claim_printed).unwrap_or_default();
            format!("the middle of {class}{}", fall(to))
        }
        Target::List(list) => {
            let all: Vec<String> = list
                .iter()
                .map(|(landmark, mmhg)| format!("{} {}", words::mmhg(*mmhg), words::at(*landmark)))
                .collect();
            words::list(&all)
        }
    }
}
