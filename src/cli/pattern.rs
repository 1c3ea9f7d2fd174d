//! `tapeline pattern`: relaxed girths of a made-to-measure garment.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use clap::Args;
use tapeline::anatomy::Limb;
use tapeline::estimate::{EstimateRules, NoPattern, OnLimb, Wanted};
use tapeline::garment::{Outfit, Piece, garment_file};
use tapeline::input::{FileKind, Text};
use tapeline::report::{build_with, pattern_block};
use tapeline::words;

use super::exit::{Exit, Failure};
use super::files::What;
use super::options::{Day, Form, Place, Sets};
use super::session::Session;
use super::target::{self, Asked};
use super::writer;

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline pattern leg.yaml knit.yaml --class 2 --scheme ral-gz-387-1
  tapeline pattern arm.yaml knit.yaml --pressure 27mmHg --fall-to 60%
  tapeline pattern arm.yaml knit.yaml --at wrist=27mmHg --at axilla=15mmHg --garment-out sleeve.yaml

The garment written with --garment-out is read by `tapeline gradient`. A made-to-measure order is made and
checked by a certified fitter.";

/// The kinds of files that it takes.
const KINDS: [What; 2] = [What::Kind(FileKind::Record), What::Kind(FileKind::Fabric)];

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
    let mut session = Session::open(&args.files, &args.day, &args.sets, None, "pattern", &KINDS)?;
    let record = session.opened.record().ok_or_else(|| anyhow!("no record is named"))?.clone();
    let limb = record.limbs.first().ok_or_else(|| anyhow!("the record has no limb"))?;
    let fabric = match session.opened.fabrics.as_slice() {
        [one] => one.clone(),
        [] => return Err(anyhow!("no fabric is named; a fabric starts with `tapeline: fabric/1`").into()),
        _ => return Err(anyhow!("several fabrics are named; a pattern is of one").into()),
    };
    let asked = Asked {
        pressure: args.pressure.as_deref(),
        class: args.class.as_deref(),
        at: &args.at,
        fall_to: args.fall_to.as_deref(),
        scheme: args.scheme.as_deref(),
    };
    let (target, claim, said) = target::read(&asked, &record, limb, &session.setting.schemes)?;
    let wanted = Wanted {
        label: Text::new(&args.label).map_err(|fault| anyhow!("the label {fault}"))?,
        fabric,
        layers: args.layers,
        claim,
        style: record.prescribed_for(limb).and_then(|one| one.style.clone()),
        target,
        to: args.to.as_deref().map(|to| target::landmark(to, record.limb)).transpose()?,
    };
    let on = OnLimb { limb: record.limb, marks: &limb.marks };
    let rules = EstimateRules::of(&session.setting.rules);
    let found =
        tapeline::estimate::pattern(&on, &wanted, &rules).map_err(|why| refused(&why, record.limb))?;
    if let Some(path) = &args.garment_out {
        let garment = found.garment.as_ref().ok_or_else(|| {
            anyhow!("there is no garment to write: this fabric does not give the wanted pressure within its tested stretch at every mark; leave out `--garment-out` to see where")
        })?;
        let named = named_from(path.parent().unwrap_or(Path::new("")), Path::new(&wanted.fabric.file));
        writer::write(
            garment_file(garment, &named.display().to_string()).as_bytes(),
            path,
            args.place.force,
        )?;
    }
    let garment = found.garment.clone().map(|garment| Outfit::of(Piece::Garment(Box::new(garment))));
    session.opened.outfits = garment.into_iter().collect();
    let report = build_with(&session.assess()?, Some(pattern_block(&found, &wanted, &said)));
    args.place.write(&super::text_of(&report, args.form.format)?)?;
    Ok(Exit::of_faults(found.garment.is_none()))
}

fn refused(why: &NoPattern, limb: Limb) -> anyhow::Error {
    match why {
        NoPattern::NotMeasured(landmark) => {
            anyhow!("the record has no girth {}; measure it, or leave it out", words::at(*landmark))
        }
        NoPattern::NoClass => anyhow!("no class is named; write `--class 2 --scheme ID`"),
        NoPattern::OpenClass(class) => anyhow!(
            "class {class} is open at one end, so it has no middle; name a pressure, as `--pressure 52mmHg`"
        ),
        NoPattern::NoShare(landmark) => anyhow!(
            "no scheme sets a share {} for this; say how far the pressure falls, as `--fall-to 60%`",
            words::at(*landmark)
        ),
        NoPattern::TooFew => anyhow!(
            "fewer than two landmarks are measured from {} toward the trunk; a fall needs two",
            words::the(limb.reference())
        ),
        NoPattern::NoCurve => {
            anyhow!(
                "the fabric has no curve, so no pressure can be aimed at; see `tapeline explain bench-test`"
            )
        }
    }
}

/// `file` as seen from `folder`; the full path where the two have no folder in common.
fn named_from(folder: &Path, file: &Path) -> PathBuf {
    let here = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    let (Ok(folder), Ok(full)) = (here.canonicalize(), file.canonicalize()) else {
        return file.to_path_buf();
    };
    let shared = folder.components().zip(full.components()).take_while(|(one, other)| one == other).count();
    if shared <= 1 {
        return full;
    }
    let up = folder.components().skip(shared).map(|_| std::path::Component::ParentDir);
    up.chain(full.components().skip(shared)).collect()
}
