//! `tapeline pattern`: relaxed girths of a made-to-measure garment.

use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use tapeline::anatomy::{Landmark, Limb};
use tapeline::assessment::{NoPatternHere, PatternAsked, assess_pattern};
use tapeline::estimate::{NoPattern, Target, WantedFall};
use tapeline::garment::{Claim, garment_file};
use tapeline::input::{Text, landmark_fault};
use tapeline::quantity::{Dimension, PASCAL_PER_MMHG, Units, read_quantity};
use tapeline::record::Wanted;
use tapeline::report::build_pattern;
use tapeline::rules::Severity;
use tapeline::words;

use super::exit::{Exit, Failure};
use super::options::{Day, Form, Place, Sets};
use super::session::{Session, WITH_FABRIC};
use super::writer;

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline pattern leg.yaml knit.yaml --class 2 --scheme ral-gz-387-1
  tapeline pattern arm.yaml knit.yaml --pressure 27mmHg --fall-to 60%
  tapeline pattern arm.yaml knit.yaml --at wrist=27mmHg --at axilla=15mmHg --garment-out sleeve.yaml

The garment written with --garment-out is read by `tapeline gradient`. A made-to-measure order is made and
checked by a certified fitter.";

/// `pattern`.
#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("wanted").args(["pressure", "class", "at"]))]
pub(crate) struct Pattern {
    /// A record and a fabric, in any order; `-` is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// The wanted pressure at the wrist or ankle, as 27mmHg; what was prescribed otherwise
    #[arg(long, value_name = "PRESSURE")]
    pressure: Option<String>,
    /// The wanted class
    #[arg(long, value_name = "CLASS")]
    class: Option<String>,
    /// The wanted pressure at a landmark, as wrist=27mmHg; may be given several times
    #[arg(long, value_name = "LANDMARK=PRESSURE")]
    at: Vec<String>,
    /// A straight fall to this share of the reference at the top, as 60%; the scheme's limits otherwise
    #[arg(long, value_name = "SHARE", conflicts_with = "at")]
    fall_to: Option<String>,
    /// The scheme of --class; that of the prescription otherwise
    #[arg(long, value_name = "ID")]
    scheme: Option<String>,
    /// Layers of the fabric
    #[arg(long, value_name = "COUNT", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=10))]
    layers: u32,
    /// The garment's upper end, a landmark; the last measured one otherwise
    #[arg(long, value_name = "LANDMARK")]
    to: Option<String>,
    /// The garment's label
    #[arg(long, value_name = "TEXT", default_value = "made-to-measure pattern")]
    label: String,
    /// Write the garment to a file
    #[arg(long, value_name = "FILE")]
    garment_out: Option<PathBuf>,
    #[command(flatten)]
    day: Day,
    #[command(flatten)]
    sets: Sets,
    #[command(flatten)]
    form: Form,
    #[command(flatten)]
    place: Place,
}

/// Runs the command.
pub(crate) fn run(args: &Pattern) -> Result<Exit, Failure> {
    let session = Session::open(&args.files, &args.day, &args.sets, None, "pattern", &WITH_FABRIC)?;
    let record = session.opened.record().ok_or_else(|| anyhow!("no record is named"))?;
    let limb = record.limb;
    let asked = PatternAsked {
        label: Text::new(&args.label).map_err(|fault| anyhow!("--label {fault}"))?,
        layers: args.layers,
        target: target(args, limb)?,
        fall_to: args.fall_to.as_deref().map(share).transpose()?,
        claim: claim(args, &session, limb)?,
        to: args.to.as_deref().map(|text| landmark(text, limb)).transpose()?,
    };
    let found =
        assess_pattern(&session.opened, asked, &session.setting).map_err(|why| anyhow!(said(&why)))?;
    if let Some(path) = &args.garment_out {
        let garment = found.pattern.garment.as_ref().ok_or_else(|| {
            anyhow!("no garment can be made of this fabric for this pressure; nothing is written")
        })?;
        let fabric = session.fabric_beside(path)?;
        writer::write(garment_file(garment, &fabric).as_bytes(), path, args.place.force)?;
    }
    let report = build_pattern(&found);
    args.place.write(&super::text_of(&report, args.form.format)?)?;
    if report.decision.outcome.is_some() {
        return Ok(Exit::of_outcome(report.decision.outcome));
    }
    let faulty =
        found.assessment.findings.iter().any(|one| one.place.garment && one.severity <= Severity::Caution);
    Ok(Exit::of_faults(faulty))
}

/// The wanted pressure: `--pressure`, `--class` or `--at`; none of them = what was prescribed.
fn target(args: &Pattern, limb: Limb) -> anyhow::Result<Option<Target>> {
    let fall = args.fall_to.as_deref().map(share).transpose()?.map_or(WantedFall::Scheme, WantedFall::To);
    if let Some(text) = &args.pressure {
        return Ok(Some(Target::Reference(pressure(text)?, fall)));
    }
    if args.class.is_some() {
        return Ok(Some(Target::Class(fall)));
    }
    if args.at.is_empty() {
        return Ok(None);
    }
    let list = args.at.iter().map(|text| {
        let (place, value) = text.split_once('=').ok_or_else(|| {
            anyhow!("`--at {text}` has no `=`; write landmark and pressure, as wrist=27mmHg")
        })?;
        Ok((landmark(place, limb)?, pressure(value)?))
    });
    Ok(Some(Target::List(list.collect::<anyhow::Result<Vec<_>>>()?)))
}

fn pressure(text: &str) -> anyhow::Result<f64> {
    let written = read_quantity(text, Dimension::Pressure, Units::default())
        .map_err(|fault| anyhow!("`{text}` {fault}; write it as 27mmHg"))?;
    let mmhg = written.si() / PASCAL_PER_MMHG;
    if mmhg > 0.0 && mmhg <= 400.0 {
        Ok(mmhg)
    } else {
        Err(anyhow!("`{text}` is no pressure above 0 and up to 400 mmHg"))
    }
}

fn share(text: &str) -> anyhow::Result<f64> {
    let written = read_quantity(text, Dimension::Ratio, Units::default())
        .map_err(|fault| anyhow!("`{text}` {fault}; write it as 60%"))?;
    let percent = written.si() * 100.0;
    if (1.0..=100.0).contains(&percent) {
        Ok(percent)
    } else {
        Err(anyhow!("`{text}` is no share from 1 to 100 %"))
    }
}

fn landmark(text: &str, limb: Limb) -> anyhow::Result<Landmark> {
    Landmark::parse(limb, text).ok_or_else(|| anyhow!(landmark_fault(limb, text)))
}

fn claim(args: &Pattern, session: &Session, limb: Limb) -> anyhow::Result<Option<Claim>> {
    let Some(class) = &args.class else { return Ok(None) };
    let prescribed = session.opened.record().and_then(|record| {
        let wanted = record.limbs.first().and_then(|limb| record.prescribed_for(limb))?.wanted.as_ref()?;
        match wanted {
            Wanted::Class { scheme, .. } => Some(scheme.text.clone()),
            Wanted::Range { .. } => None,
        }
    });
    let id =
        args.scheme.clone().or(prescribed).ok_or_else(|| {
            anyhow!("a class is read only with its scheme; add `--scheme`, as ral-gz-387-1")
        })?;
    let scheme = session.setting.schemes.find(&id).ok_or_else(|| {
        anyhow!("the scheme `{id}` is not known; known are {}", session.setting.schemes.ids().join(", "))
    })?;
    if !scheme.limbs.include(limb) {
        return Err(anyhow!("{} has no classes for the {}", scheme.label, limb.name()));
    }
    if scheme.class(class).is_none() {
        let all: Vec<&str> = scheme.classes.iter().map(|one| one.class.as_str()).collect();
        return Err(anyhow!("`{class}` is no class of {}; it has {}", scheme.label, all.join(", ")));
    }
    Ok(Some(Claim { scheme, class: class.clone() }))
}

/// Why there is no pattern, with what would be accepted.
fn said(why: &NoPatternHere) -> String {
    match why {
        NoPatternHere::NoRecord => "no record is named; a record starts with `tapeline: record/1`".to_owned(),
        NoPatternHere::Fabric(0) => "no fabric is named; a fabric starts with `tapeline: fabric/1`".to_owned(),
        NoPatternHere::Fabric(_) => "several fabrics are named; a pattern is worked out for one".to_owned(),
        NoPatternHere::NothingWanted => {
            "no pressure is wanted: say `--pressure 27mmHg`, `--class 2 --scheme ID` or `--at wrist=27mmHg`, or prescribe one in the record".to_owned()
        }
        NoPatternHere::Pattern(why) => match why {
            NoPattern::NotMeasured(landmark) => format!("the limb is not measured {}", words::at(*landmark)),
            NoPattern::Twice(landmark) => {
                format!("two pressures are wanted {}; say one with `--at`", words::at(*landmark))
            }
            NoPattern::NoClass => "a class is wanted and none is named".to_owned(),
            NoPattern::OpenClass(class) => format!("class {class} has an open end, so it has no middle; say `--pressure`"),
            NoPattern::NoShare(landmark) => {
                format!("the scheme sets no share {}; say `--fall-to 60%`", words::at(*landmark))
            }
            NoPattern::TooFew => "fewer than two marks are measured from the reference toward the trunk".to_owned(),
            NoPattern::NoCurve => "the fabric has no curve; `tapeline fabric` makes one of a bench test".to_owned(),
        },
    }
}
