//! Owns the reading of a chart file and of the fabric it names.

use super::read_claim::{read_claim, read_fabric, read_hand_part, read_label, read_materials};
use super::read_sizes::{Ends, read_sizes};
use super::read_table::read_table;
use super::turned::small_to_large;
use super::{BetweenSizes, Chart, Schemes, Size};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Item, Problem, Reader, Source, Spot, Text, TextFault};
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
    if source.is_table() {
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
    let label = fields
        .required("label", "the chart's label, as `label: sleeve chart A`")
        .and_then(|one| read_label(&one));
    let limb_item = fields.required("limb", "arm or leg, as `limb: arm`");
    let limb = limb_item.as_ref().and_then(|one| one.word(&[("arm", Limb::Arm), ("leg", Limb::Leg)]));
    let limb_spot = limb_item.as_ref().map_or(fields.spot(), Item::spot);
    let style = fields.optional("style").and_then(|one| read_label(&one));
    let end = |key| {
        let item = fields.optional(key);
        limb.and_then(|limb| item.and_then(|one| read_landmark(&one, limb)))
    };
    let (from, to) = (end("from"), end("to"));
    let claim = read_claim(reader, &fields, schemes, limb);
    let materials = read_materials(&fields);
    let hand_part = read_hand_part(&fields);
    let fabric = fields.optional("fabric").and_then(|one| read_fabric(&one, elsewhere));
    let layers = fields.optional("layers").map(|one| one.whole(1, 10));
    let between_sizes =
        fields.optional("between_sizes").and_then(|one| one.word(&BetweenSizes::WORDS)).unwrap_or_default();
    // House rule: a chart printed in steps above 5 cm is a slip of the unit.
    let printed_step = fields.optional("printed_step").and_then(|one| one.step(500));
    let ends = Ends { from, to };
    let table = fields.optional("sizes_from");
    let sizes = if let Some(table) = &table {
        if let Some(both) = fields.optional("sizes") {
            both.refuse("stands beside `sizes_from`; keep one of the two");
        }
        limb.and_then(|limb| read_beside(table, limb, ends, elsewhere))
    } else {
        let sizes = fields.required("sizes", "the sizes, small to large, or `sizes_from: sizes.csv`");
        limb.and_then(|limb| sizes.and_then(|one| read_sizes(&one, limb, ends)))
    };
    fields.finish();
    let (limb, sizes) = (limb?, sizes?);
    let (sizes, turned) = small_to_large(sizes);
    let (first, last) = reach(&sizes)?;
    let (from, to) =
        (from.unwrap_or(first.min(to.unwrap_or(first))), to.unwrap_or(last.max(from.unwrap_or(last))));
    if from > to || (from == to && ends.from.is_some() && ends.to.is_some()) {
        reader.raise(
            fields.spot_of("to"),
            "to",
            format!("`{}` is not nearer the trunk than `from`, `{}`", to.name(), from.name()),
        );
    }
    let chart = Chart {
        label: label?,
        file: reader.source().name.clone(),
        limb,
        style,
        from,
        to,
        claim,
        materials,
        hand_part,
        fabric,
        layers: layers.map_or(Some(1), |layers| layers)?,
        between_sizes,
        printed_step,
        sizes,
        turned,
        measured: Vec::new(),
    };
    Some((chart, limb_spot))
}

/// The most distal and the most proximal landmark that a size states, as a range or relaxed.
fn reach(sizes: &[Size]) -> Option<(Landmark, Landmark)> {
    let all = || {
        sizes.iter().flat_map(|size| {
            let ranges = size.girths.iter().map(|(landmark, _)| *landmark);
            ranges.chain(size.relaxed.iter().map(|(landmark, _)| *landmark))
        })
    };
    Some((all().min()?, all().max()?))
}

fn read_beside(item: &Item<'_>, limb: Limb, ends: Ends, elsewhere: &mut Vec<Problem>) -> Option<Vec<Size>> {
    let name = item.text()?;
    let source = match Source::read_as(&item.reader().source().beside(&name), "a table of sizes") {
        Ok(source) => source,
        Err(problem) => {
            item.refuse(format!("the table `{}`: {}", problem.file, problem.what));
            return None;
        }
    };
    if !source.is_table() {
        item.refuse(format!("`{name}` is no table; save the sheet as `.csv`, `.xlsx` or `.ods`"));
        return None;
    }
    let read = read_table(item.reader().source().names_table(source), Some(limb), ends);
    read.map_err(|problems| elsewhere.extend(problems)).ok().map(|(_, sizes)| sizes)
}

/// A chart from a table alone: limb from its measures, no scheme, no class.
fn chart_of_table(source: Source) -> Result<Chart, Vec<Problem>> {
    let file = source.name.clone();
    let stem = std::path::Path::new(&file).file_stem();
    let label = stem.map_or_else(|| file.clone(), |stem| stem.to_string_lossy().into_owned());
    let label = Text::new(&label).or_else(|_| Text::new("chart"));
    let (limb, sizes) = read_table(source, None, Ends::default())?;
    let (sizes, turned) = small_to_large(sizes);
    let no_label = |fault: TextFault| vec![Problem::of_file(&file, format!("the file's name {fault}"))];
    let (from, to) = reach(&sizes).unwrap_or((limb.reference(), limb.reference()));
    Ok(Chart {
        label: label.map_err(no_label)?,
        file,
        limb,
        style: None,
        from,
        to,
        claim: None,
        materials: None,
        hand_part: None,
        fabric: None,
        layers: 1,
        between_sizes: BetweenSizes::default(),
        printed_step: None,
        sizes,
        turned,
        measured: Vec::new(),
    })
}
