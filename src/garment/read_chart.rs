//! Owns the reading of a chart file and of the fabric it names.

use super::read_claim::{read_claim, read_fabric};
use super::read_sizes::read_sizes;
use super::read_table::read_table;
use super::{BetweenSizes, Chart, Schemes, Size};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Item, Problem, Reader, Source, Spot};
use crate::record::read_landmark;

/// A chart with its file, for problems that show only against a record.
pub struct OpenChart {
    /// The chart.
    pub chart: Chart,
    file: File,
}

enum File {
    Yaml(Box<Reader>, Spot),
    Table(String),
}

impl OpenChart {
    /// A problem when the chart is for another limb than the record's.
    pub fn limb_problem(&self, limb: Limb) -> Option<Problem> {
        (self.chart.limb != limb).then(|| {
            let what = format!(
                "this chart is for the {}, but the record measures {} {}; leave this chart out",
                self.chart.limb.name(),
                if limb == Limb::Arm { "an" } else { "a" },
                limb.name()
            );
            match &self.file {
                File::Yaml(reader, spot) => reader.problem_at(*spot, "limb", what),
                File::Table(name) => Problem::of_file(name, what),
            }
        })
    }
}

/// Reads a chart file, and the fabric file that it names.
///
/// # Errors
/// Every problem of the file and of its fabric.
pub fn open_chart(source: Source, schemes: &Schemes) -> Result<OpenChart, Vec<Problem>> {
    if is_table(&source.name) {
        let name = source.name.clone();
        return Ok(OpenChart { chart: chart_of_table(source)?, file: File::Table(name) });
    }
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let mut elsewhere = Vec::new();
    let chart = read(&reader, schemes, &mut elsewhere);
    let mut problems = reader.problems();
    problems.extend(elsewhere);
    match chart {
        Some((chart, limb_spot)) if problems.is_empty() => {
            Ok(OpenChart { chart, file: File::Yaml(Box::new(reader), limb_spot) })
        }
        _ => Err(problems),
    }
}

fn read(reader: &Reader, schemes: &Schemes, elsewhere: &mut Vec<Problem>) -> Option<(Chart, Spot)> {
    let fields = reader.fields("chart/1")?;
    let label =
        fields.required("label", "the chart's label, as `label: sleeve chart A`").and_then(|one| one.text());
    let limb_item = fields.required("limb", "arm or leg, as `limb: arm`");
    let limb = limb_item.as_ref().and_then(|one| one.word(&[("arm", Limb::Arm), ("leg", Limb::Leg)]));
    let limb_spot = limb_item.as_ref().map_or(fields.spot(), Item::spot);
    let style = fields.optional("style").and_then(|one| one.text());
    let end = |key| {
        let item = fields.optional(key);
        limb.and_then(|limb| item.and_then(|one| read_landmark(&one, limb)))
    };
    let (from, to) = (end("from"), end("to"));
    let claim = read_claim(reader, &fields, schemes, limb);
    let contains = fields.optional("contains").and_then(|one| one.names());
    let hand_part = fields
        .optional("hand_part")
        .and_then(|one| one.word(&[("yes", Some(true)), ("no", Some(false)), ("unknown", None)]))
        .flatten();
    let fabric = fields.optional("fabric").and_then(|one| read_fabric(&one, elsewhere));
    let layers = fields.optional("layers").map(|one| one.whole(1, 10));
    let between_sizes = fields.optional("between_sizes").and_then(|one| {
        one.word(&[
            ("smaller", BetweenSizes::Smaller),
            ("larger", BetweenSizes::Larger),
            ("refer", BetweenSizes::Refer),
        ])
    });
    // House rule: a chart printed in steps above 5 cm is a slip of the unit.
    let printed_step = fields.optional("printed_step").and_then(|one| one.step(500));
    let table = fields.optional("sizes_from");
    let sizes = if let Some(table) = &table {
        if let Some(both) = fields.optional("sizes") {
            both.refuse("stands beside `sizes_from`; keep one of the two");
        }
        limb.and_then(|limb| read_beside(table, limb, elsewhere))
    } else {
        let sizes = fields.required("sizes", "the sizes, small to large, or `sizes_from: sizes.csv`");
        limb.and_then(|limb| sizes.and_then(|one| read_sizes(&one, limb)))
    };
    fields.finish();
    if let (Some(from), Some(to)) = (from, to)
        && from >= to
    {
        reader.raise(
            fields.spot_of("to"),
            "to",
            format!("`{}` is not nearer the trunk than `from`, `{}`", to.name(), from.name()),
        );
    }
    let (limb, sizes) = (limb?, sizes?);
    let last: Option<Landmark> =
        sizes.first().and_then(|size| size.girths.last()).map(|(landmark, _)| *landmark);
    let chart = Chart {
        label: label?,
        limb,
        style,
        from,
        to: to.or(last)?,
        claim,
        contains: contains.map(|list| list.into_iter().map(|one| one.text).collect()),
        hand_part,
        fabric,
        layers: layers.map_or(Some(1), |layers| layers)?,
        between_sizes: between_sizes.unwrap_or(BetweenSizes::Refer),
        printed_step,
        sizes,
    };
    Some((chart, limb_spot))
}

fn read_beside(item: &Item<'_>, limb: Limb, elsewhere: &mut Vec<Problem>) -> Option<Vec<Size>> {
    let name = item.text()?;
    let source = match Source::read(&item.reader().source().beside(&name)) {
        Ok(source) => source,
        Err(problem) => {
            item.refuse(format!("the table `{}`: {}", problem.file, problem.what));
            return None;
        }
    };
    if !is_table(&source.name) {
        item.refuse(format!("`{name}` is no `.csv` file; save the sheet as CSV with commas"));
        return None;
    }
    read_table(source, Some(limb)).map_err(|problems| elsewhere.extend(problems)).ok().map(|(_, sizes)| sizes)
}

fn is_table(name: &str) -> bool {
    std::path::Path::new(name).extension().is_some_and(|ext| ext.eq_ignore_ascii_case("csv"))
}

/// A chart from a table alone: limb from its measures, no scheme, no class.
fn chart_of_table(source: Source) -> Result<Chart, Vec<Problem>> {
    let label = std::path::Path::new(&source.name)
        .file_stem()
        .map_or_else(|| source.name.clone(), |stem| stem.to_string_lossy().into_owned());
    let (limb, sizes) = read_table(source, None)?;
    let last = sizes.first().and_then(|size| size.girths.last()).map(|(landmark, _)| *landmark);
    Ok(Chart {
        label,
        limb,
        style: None,
        from: None,
        to: last.unwrap_or(limb.reference()),
        claim: None,
        contains: None,
        hand_part: None,
        fabric: None,
        layers: 1,
        between_sizes: BetweenSizes::Refer,
        printed_step: None,
        sizes,
    })
}
