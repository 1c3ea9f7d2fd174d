//! `tapeline pattern`.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use tapeline::assessment::{NoPattern, OpenRecord, PatternAssessment, Wanted, assess_pattern};
use tapeline::garment::{garment_file, open_fabric};
use tapeline::input::Source;
use tapeline::render;
use tapeline::report::build_pattern;

use super::args::{Format, Pattern};
use super::exit::{Exit, Failure};
use super::inputs::{Setting, open};
use super::{output, target};

/// Runs the command.
pub(crate) fn run(args: &Pattern) -> Result<Exit, Failure> {
    let setting = Setting::open(&args.rules)?;
    let fabric = Source::read(&args.fabric).map_err(|problem| vec![problem]).and_then(open_fabric);
    let record = open(&args.record, &[], &setting);
    let (record, fabric) = match (record, fabric) {
        (Ok((record, _)), Ok(fabric)) => (record, fabric),
        (Err(Failure::Input(mut problems)), Err(more)) => {
            problems.extend(more);
            return Err(problems.into());
        }
        (Err(failure), _) => return Err(failure),
        (_, Err(problems)) => return Err(problems.into()),
    };
    let (target, claim) = target::read(args, &record, &setting.schemes)?;
    let to = args.to.as_deref().map(|to| target::landmark(to, record.record.limb)).transpose()?;
    let style = record.record.prescribed.as_ref().and_then(|one| one.style.clone());
    let wanted = Wanted { label: args.label.clone(), fabric, layers: args.layers, claim, style, target, to };
    let found = assess_pattern(&record, wanted, setting.today, &setting.rules)
        .map_err(|why| refused(&why, &record))?;
    if let Some(path) = &args.write {
        write_garment(&found, path, &args.fabric, args.output.force)?;
    }
    let report = build_pattern(&record, &found, &setting.rules);
    let text = match args.output.format {
        Format::Json => render::json(&report),
        Format::Text => render::pattern_text(&report, output::columns()),
    };
    output::write(text.as_bytes(), &args.output)?;
    Ok(Exit::of_outcome(report.outcome))
}

fn refused(why: &NoPattern, record: &OpenRecord) -> Failure {
    let limb = record.record.limb;
    let fault = match why {
        NoPattern::NotMeasured(landmark) => {
            anyhow!("the record has no girth at the {}; measure it, or leave it out", landmark.spoken())
        }
        NoPattern::NoClass => anyhow!("no class is named; write `--target class=2 --scheme ID`"),
        NoPattern::OpenClass(class) => anyhow!(
            "class {class} is open at one end, so it has no middle; name a pressure, as `--target 52mmHg`"
        ),
        NoPattern::NoShare(landmark) => anyhow!(
            "no scheme sets a share at the {} for this; say how far the pressure falls, as `--fall-to 60%`",
            landmark.spoken()
        ),
        NoPattern::TooFew => anyhow!(
            "fewer than two landmarks are measured from the {} toward the trunk; a fall needs two",
            limb.reference().spoken()
        ),
    };
    fault.into()
}

/// Writes the garment; its fabric is named from the file's own folder.
fn write_garment(found: &PatternAssessment, path: &Path, fabric: &Path, force: bool) -> Result<(), Failure> {
    let Some(garment) = &found.garment else {
        return Err(anyhow!(
            "there is no garment to write: this fabric does not give the wanted pressure within its tested stretch at every mark; leave out `--write` to see where"
        )
        .into());
    };
    let named = named_from(path.parent().unwrap_or(Path::new("")), fabric);
    output::write_file(garment_file(garment, &named.display().to_string()).as_bytes(), path, force)?;
    Ok(())
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
