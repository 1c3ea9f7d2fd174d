//! One case run in process, and what is wrong with what came out.

use tapeline::anatomy::Landmark;
use tapeline::assessment::{
    AskedGarment, Assessment, Opened, PatternAsked, Setting, assess, assess_one, assess_pattern, open_files,
};
use tapeline::caseload::{Batch, BatchForm, LimbColumns, Prepared, cover, design, girths, run_batch};
use tapeline::document::Sheet;
use tapeline::estimate::{Target, WantedFall, calibrate};
use tapeline::garment::{
    Chart, Schemes, fabric_file, garment_file, open_chart, open_fabric, open_outfit, printed_labels,
};
use tapeline::input::{Draft, FileKind, Problem, RowBlocks, Source, Table, Text};
use tapeline::inspection::{chart_faults, range_lines};
use tapeline::render::{
    Language, Paper, html, json, plain, sheet, svg_file, terminal, terminal_report, volume_page,
    volume_scene, volume_sheet,
};
use tapeline::report::{Report, VolumeReport, build, build_pattern};
use tapeline::rules::read_rules;
use tapeline::sizing::parts;

use super::case::{Case, Command};
use super::{laws, more};
use crate::random::Dice;
use crate::source::root;

/// What became of a case.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Came {
    /// A report or another page.
    Out,
    /// Problems.
    Refused,
    /// The files do not hold what the command needs.
    Nothing,
}

/// Runs a case.
pub fn run(case: &Case, setting: &Setting, dice: &mut Dice, wrong: &mut Vec<String>) -> Came {
    let mut sources = Vec::new();
    for (name, bytes) in &case.files {
        match Source::from_bytes(root().join(name).display().to_string(), bytes.clone()) {
            Ok(source) => sources.push(source),
            Err(problem) => {
                laws::of_problems(&[problem], &case.files, wrong);
                return Came::Refused;
            }
        }
    }
    let done = match case.command {
        Command::Inspect => inspect(sources, setting, wrong),
        Command::New => new(sources, wrong),
        Command::Batch | Command::Cover => caseload(case, sources, setting, dice, wrong),
        command => match open_files(sources, setting) {
            Ok(opened) => Ok(limbs(command, case, &opened, setting, dice, wrong)),
            Err(problems) => Err(problems),
        },
    };
    match done {
        Ok(true) => Came::Out,
        Ok(false) => Came::Nothing,
        Err(problems) => {
            laws::of_problems(&problems, &case.files, wrong);
            Came::Refused
        }
    }
}

/// The commands about a record.
fn limbs(
    command: Command,
    case: &Case,
    opened: &Opened,
    setting: &Setting,
    dice: &mut Dice,
    wrong: &mut Vec<String>,
) -> bool {
    match command {
        Command::Check => {
            let Some(found) = assess(opened, setting) else { return false };
            let report = build(&found);
            laws::of_report(&report, false, dice, wrong);
            forms(&report, dice, wrong);
            if dice.luck(0.05) {
                laws::finite(&found, wrong);
            }
            if dice.luck(0.25) {
                one_more(case, opened, &found, setting, dice, wrong);
            }
        }
        Command::Volume => {
            let Some(found) = assess(opened, setting) else { return false };
            let report = VolumeReport::of(&found);
            let text = terminal(&volume_page(&report), 40 + dice.below(120));
            printable(&text, wrong);
            if serde_json::to_string(&report).is_err() {
                wrong.push("volume: no JSON".to_owned());
            }
            let pages = volume_sheet(&report);
            laws::of_page(&pages, wrong);
            if let Some(scene) = volume_scene(&report) {
                printable(&svg_file(&scene), wrong);
            }
            paper(&pages, dice, wrong);
        }
        Command::Gradient => {
            let size = opened.charts.first().filter(|chart| !chart.sizes.is_empty()).map(|chart| {
                AskedGarment::Size(chart.sizes[dice.below(chart.sizes.len())].label.to_string())
            });
            let asked = match size {
                Some(size) if opened.outfits.is_empty() => size,
                _ if dice.luck(0.3) => AskedGarment::Readings(None),
                _ => AskedGarment::Files,
            };
            let Ok(found) = assess_one(opened, &asked, setting) else { return false };
            for garment in &found.garments {
                if let Some(read) = &garment.estimated.readings {
                    let _ = calibrate(&read.against);
                }
            }
            let report = build(&found);
            laws::of_report(&report, true, dice, wrong);
            forms(&report, dice, wrong);
            if dice.luck(0.05) {
                laws::finite(&found, wrong);
            }
        }
        _ => return made(opened, setting, dice, wrong),
    }
    true
}

/// A garment for a wanted pressure; its file reads back.
fn made(opened: &Opened, setting: &Setting, dice: &mut Dice, wrong: &mut Vec<String>) -> bool {
    let fall = if dice.luck(0.5) { WantedFall::Scheme } else { WantedFall::To(dice.between(1.0, 100.0)) };
    let target = match dice.below(4) {
        0 => None,
        1 => Some(Target::Class(fall)),
        2 => Some(Target::Reference(dice.between(1.0, 90.0), fall)),
        _ => {
            let marks =
                [Landmark::Wrist, Landmark::Forearm, Landmark::Axilla, Landmark::Ankle, Landmark::Calf];
            let list =
                (0..=dice.below(3)).map(|at| (marks[(at + dice.below(3)) % 5], dice.between(1.0, 90.0)));
            Some(Target::List(list.collect()))
        }
    };
    let asked = PatternAsked {
        label: Text::new("a pattern").unwrap(),
        layers: 1 + dice.below(3) as u32,
        target,
        fall_to: None,
        claim: None,
        to: None,
    };
    let Ok(found) = assess_pattern(opened, asked, setting) else { return false };
    let report = build_pattern(&found);
    laws::of_report(&report, true, dice, wrong);
    if let Some(garment) = &found.pattern.garment {
        let text = garment_file(garment, "demo/knit-r2.yaml");
        let name = root().join("pattern.yaml").display().to_string();
        if let Err(problems) = open_outfit(Source::of_text(name, text.clone()), &setting.schemes) {
            wrong.push(format!("pattern: its file is refused: {} in {text}", problems[0]));
        }
    }
    true
}

/// Every form of a report; the PDF of one in a hundred.
fn forms(report: &Report, dice: &mut Dice, wrong: &mut Vec<String>) {
    if dice.luck(0.1) {
        printable(&terminal_report(report, 20 + dice.below(160)), wrong);
    }
    if dice.luck(0.05) {
        let _ = json(report).map_err(|fault| wrong.push(format!("json: {fault}")));
    }
    if dice.luck(0.01) {
        let language = if dice.luck(0.3) { Language::German } else { Language::English };
        let pages = sheet(report, language);
        pdf_of(&pages, if dice.luck(0.5) { Paper::A4 } else { Paper::Letter }, wrong);
    }
}

/// A PDF, or the letter that its font lacks.
#[cfg(feature = "pdf")]
fn pdf_of(pages: &Sheet, paper: Paper, wrong: &mut Vec<String>) {
    if let Err(fault) = tapeline::render::pdf(pages, paper)
        && !fault.to_string().contains("cannot be set in the sheet's font")
    {
        wrong.push(format!("pdf: {fault}"));
    }
}

#[cfg(not(feature = "pdf"))]
fn pdf_of(_: &Sheet, _: Paper, _: &mut Vec<String>) {}

fn paper(pages: &Sheet, dice: &mut Dice, wrong: &mut Vec<String>) {
    printable(&plain(pages, Paper::A4), wrong);
    if dice.luck(0.01) {
        pdf_of(pages, Paper::A4, wrong);
    }
    if dice.luck(0.05) {
        let _ = html(pages, Paper::Letter);
    }
}

fn printable(text: &str, wrong: &mut Vec<String>) {
    // A line printer's form feed stands between leaves.
    if let Some(c) = text.chars().find(|c| laws::obeyed(*c) && !matches!(c, '\n' | '\u{c}')) {
        wrong.push(format!("obeyed: U+{:04X} is printed", u32::from(c)));
    }
}

fn one_more(
    case: &Case,
    opened: &Opened,
    found: &Assessment,
    setting: &Setting,
    dice: &mut Dice,
    wrong: &mut Vec<String>,
) {
    let Some(record) = opened.record() else { return };
    let place = case.files.iter().position(|(name, _)| record.file.ends_with(name.as_str()));
    let Some(place) = place else { return };
    let Some((text, what)) = more::told(&case.files[place].1, record, dice) else { return };
    let mut files = case.files.clone();
    files[place].1 = text.into_bytes();
    let sources = files.into_iter().map(|(name, bytes)| {
        Source::of_text(root().join(name).display().to_string(), String::from_utf8(bytes).unwrap())
    });
    let Ok(opened) = open_files(sources.collect(), setting) else { return };
    let Some(after) = assess(&opened, setting) else { return };
    // An infection keeps a chart from being judged at all; an allergy takes a chart out, and another one counts.
    let mut pairs = Vec::new();
    if !what.starts_with("allergies") {
        pairs.push((more::of_run(found), more::of_run(&after)));
    }
    if !what.contains("infection") {
        let after = more::of_charts(&after);
        let both = more::of_charts(found).into_iter();
        pairs.extend(both.filter_map(|(chart, before)| Some((before, *after.get(&chart)?))));
    }
    for (before, after) in pairs {
        if after > before {
            wrong.push(format!("more: {what} made {} to {}", before.word(), after.word()));
        }
    }
}

fn inspect(sources: Vec<Source>, setting: &Setting, wrong: &mut Vec<String>) -> Result<bool, Vec<Problem>> {
    let mut problems = Vec::new();
    for source in sources {
        let done = if source.is_table() {
            Table::read(source.clone())
                .map_err(|problem| vec![problem])
                .map(|table| _ = table.understood())
                .and_then(|()| {
                    open_chart(source, &setting.schemes).map(|one| chart(&one.chart, setting, wrong))
                })
        } else {
            match source.kind() {
                Some(FileKind::Chart) => {
                    open_chart(source, &setting.schemes).map(|one| chart(&one.chart, setting, wrong))
                }
                Some(FileKind::Garment | FileKind::Wrap) => open_outfit(source, &setting.schemes).map(|_| ()),
                Some(FileKind::Fabric) => open_fabric(source).map(|fabric| {
                    let text = fabric_file(&fabric);
                    if let Err(problems) = open_fabric(Source::of_text("again.yaml", text)) {
                        wrong.push(format!("fabric: its file is refused: {}", problems[0]));
                    }
                }),
                Some(FileKind::Scheme) => Schemes::with_files(vec![source]).map(|_| ()),
                Some(FileKind::Rules) => read_rules(Some(source)).map(|_| ()),
                _ => open_files(vec![source], setting).map(|_| ()),
            }
        };
        problems.extend(done.err().unwrap_or_default());
    }
    if problems.is_empty() { Ok(true) } else { Err(problems) }
}

fn chart(chart: &Chart, setting: &Setting, wrong: &mut Vec<String>) {
    for fault in chart_faults(chart, &setting.rules) {
        printable(&fault.sentence(chart), wrong);
    }
    for line in range_lines(chart, 80) {
        printable(&line, wrong);
    }
}

/// A file that is being written is the same when it is read again.
fn new(sources: Vec<Source>, wrong: &mut Vec<String>) -> Result<bool, Vec<Problem>> {
    for source in sources {
        let Some(kind) = source.kind() else { return Ok(false) };
        let draft = Draft::read(&source, kind).map_err(|problem| vec![problem])?;
        for (path, text) in [("client", "K-1"), ("marks.0.girth", "17"), ("label", "one")] {
            let mut more = draft.clone();
            more.set(path, text);
            let _ = more.to_text(false);
        }
        let text = draft.to_text(true);
        let again = Draft::read(&Source::of_text(source.name.clone(), text.clone()), kind);
        match again {
            Ok(again) if again.to_text(true) == text => {}
            Ok(again) => wrong.push(format!("new: a draft changes: {text}\n{}", again.to_text(true))),
            Err(problem) => wrong.push(format!("new: a draft is refused: {problem} in\n{text}")),
        }
    }
    Ok(true)
}

/// A table of limbs against charts: a row out for each row in, the same for one and two workers.
fn caseload(
    case: &Case,
    sources: Vec<Source>,
    setting: &Setting,
    dice: &mut Dice,
    wrong: &mut Vec<String>,
) -> Result<bool, Vec<Problem>> {
    let mut charts: Vec<Chart> = Vec::new();
    let mut limbs = None;
    for source in sources {
        if source.name.ends_with("caseload.csv") {
            limbs = Some(source);
        } else {
            charts.push(open_chart(source, &setting.schemes)?.chart);
        }
    }
    let (Some(limbs), Some(limb)) = (limbs, charts.first().map(|chart| chart.limb)) else { return Ok(false) };
    let all: Vec<&Chart> = charts.iter().collect();
    if charts.iter().any(|chart| chart.limb != limb) || parts(&all).iter().any(|part| *part > 0) {
        return Ok(false);
    }
    let rules = &setting.rules;
    let labels = printed_labels(&all);
    let prepared = || -> Vec<Prepared> { charts.iter().map(|chart| Prepared::of(chart, rules)).collect() };
    let blocks = || RowBlocks::from_text(&limbs.name, &limbs.text).map_err(|problem| vec![problem]);
    let columns = LimbColumns::of(&blocks()?, limb, dice.luck(0.1)).map_err(|problem| vec![problem])?;
    if case.command == Command::Cover {
        let prepared = prepared();
        let covered =
            cover(&prepared, &columns, blocks()?, dice.luck(0.5), 2).map_err(|problem| vec![problem])?;
        for chart in 0..charts.len() {
            if covered.coverage.served(chart) > covered.coverage.cases {
                wrong.push("cover: more are served than there are".to_owned());
            }
        }
        let measures: Vec<Landmark> = charts[0].measures().into_iter().collect();
        if let Ok(read) = girths(&measures, &columns, blocks()?, 200)
            && !read.limbs.is_empty()
        {
            let _ = design(&read.limbs, &vec![300; measures.len()], 1 + dice.below(4));
        }
        return Ok(true);
    }
    let json = dice.luck(0.5);
    let mut outs = Vec::new();
    for threads in [1, 2] {
        let form = if json { BatchForm::Jsonl } else { BatchForm::Csv };
        let with = labels.iter().cloned().zip(prepared()).collect();
        let batch = Batch::of(with, columns.clone(), None, form, rules).unwrap();
        let mut out: Vec<u8> = Vec::new();
        let end = run_batch(&batch, blocks()?, threads, &mut out, &mut |_, _| {});
        if let Some(problem) = end.input {
            return Err(vec![problem]);
        }
        outs.push((end.rows, out));
        if dice.luck(0.8) {
            break;
        }
    }
    if outs.len() > 1 && outs[0] != outs[1] {
        wrong.push("batch: two workers give another output than one".to_owned());
    }
    let (rows, out) = &outs[0];
    let Ok(text) = std::str::from_utf8(out) else {
        wrong.push("batch: not UTF-8".to_owned());
        return Ok(true);
    };
    printable(text, wrong);
    if json {
        if text.lines().count() as u64 != *rows {
            wrong.push(format!("batch: {} lines of {rows} rows", text.lines().count()));
        }
        for line in text.lines() {
            if let Err(fault) = serde_json::from_str::<serde_json::Value>(line) {
                wrong.push(format!("batch: {fault}: {line}"));
            }
        }
    } else {
        let read = csv_rows(out);
        if read != Ok(*rows) {
            wrong.push(format!("batch: {read:?} rows of {rows}"));
        }
    }
    Ok(true)
}

/// Rows of a CSV that all have the header's width.
fn csv_rows(out: &[u8]) -> Result<u64, String> {
    let mut reader = csv::Reader::from_reader(out);
    let mut rows = 0;
    for row in reader.records() {
        row.map_err(|fault| fault.to_string())?;
        rows += 1;
    }
    Ok(rows)
}
