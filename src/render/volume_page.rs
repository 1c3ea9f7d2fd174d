//! Owns the page of the `volume` command as blocks, and as a sheet of one leaf.

use super::course_plot::course_plot;
use super::sheet::wording::{sentence, text};
use crate::document::{Block, Column, Entry, Head, Leaf, Reader, Scene, Sheet, Table, Weight};
use crate::report::{CourseBlock, DetectableBlock, VolumeLimb, VolumeMark, VolumeReport};
use crate::rules::Severity;
use crate::words::capital;

/// What stands on the page, for terminal and paper alike.
pub fn volume_page(report: &VolumeReport) -> Vec<Block> {
    let mut blocks = Vec::new();
    for one in &report.findings {
        let weight = if one.severity <= Severity::ClearFirst { Weight::Thick } else { Weight::Thin };
        let next = Some(&one.next).filter(|next| !next.is_empty()).map(|next| Block::text(sentence(next)));
        let inside = std::iter::once(Block::text(sentence(&one.message))).chain(next).collect();
        blocks.push(Block::frame(weight, format!("{}: {}", one.severity.word(), one.title), inside));
    }
    for limb in &report.limbs {
        blocks.extend(of_limb(limb));
    }
    if let Some(course) = &report.course {
        blocks.extend(of_course(report, course));
    }
    blocks.extend(report.limits.iter().map(|one| Block::small(sentence(one))));
    blocks
}

/// The page as a sheet.
pub fn volume_sheet(report: &VolumeReport) -> Sheet {
    let record = &report.record;
    let by = record.measured_by.as_ref().map(|by| format!(" by {by}")).unwrap_or_default();
    let leaf = Leaf {
        reader: Reader::Fitter,
        head: Head {
            bold: format!("{}, {}: volume", record.client, record.limb),
            plain: format!("measured {}{by}; printed for {}", record.measured_on, report.today),
        },
        title: "Volume and its course".to_owned(),
        blocks: volume_page(report),
        language: "en-GB".to_owned(),
        numbered: "page {page} of {pages}".to_owned(),
        apart: false,
    };
    Sheet {
        title: format!("Volume {} {}", record.client, record.measured_on),
        leaves: vec![leaf],
        made_on: report.today.clone(),
        made_by: format!("{} {}", report.tool.name, report.tool.version),
    }
}

/// The drawing of the first limb that has a course.
pub fn volume_scene(report: &VolumeReport) -> Option<Scene> {
    let course = report.course.as_ref()?;
    report
        .limbs
        .iter()
        .enumerate()
        .find_map(|(place, limb)| course_plot(course, place, &limb.printed))
        .map(|figure| figure.scene)
}

fn of_limb(limb: &VolumeLimb) -> Vec<Block> {
    let mut blocks = vec![Block::heading(capital(&limb.printed)), Block::lead(headline(limb))];
    blocks.push(Block::Keys(keys(limb)));
    blocks.push(Block::Table(marks(limb, "Girths", &limb.detail.marks)));
    if limb.detail.segments.len() > 1 {
        blocks.push(Block::Table(segments(limb)));
    }
    if !limb.detail.hand_or_foot.is_empty() {
        let caption = format!("Girths of the {}, in no volume", limb.limb.extremity());
        blocks.push(Block::Table(marks(limb, &caption, &limb.detail.hand_or_foot)));
    }
    if !limb.detail.detectable.is_empty() {
        blocks.push(Block::Table(detectable(&limb.detail.detectable)));
    }
    if !limb.detail.sets.is_empty() {
        let columns = vec![Column::words("Published set"), Column::words("Result"), Column::words("Source")];
        let mut table =
            Table::new("The excess by published sets; they disagree, and none is a verdict", columns);
        for one in &limb.detail.sets {
            table.push(vec![one.name.clone(), one.result.clone(), one.source.clone()]);
        }
        blocks.push(Block::Table(table));
    }
    blocks
}

/// `2040 mL; right arm 1655 mL; affected minus other 384 mL, 23.2 %.`
fn headline(limb: &VolumeLimb) -> String {
    let volume = &limb.volume;
    let Some(measured) = &volume.measured_ml else {
        return "No volume: it needs two marks of the limb, discs marks at one spacing.".to_owned();
    };
    let mut said = format!("{} mL", measured.text);
    if let Some(other) = &volume.other_ml {
        said = format!("{said}; {} {} mL", limb.other_printed, other.text);
    }
    if let (Some(ml), Some(percent)) = (&volume.excess_ml, &volume.excess_percent) {
        said = format!("{said}; affected minus other {} mL, {} %", ml.text, percent.text);
    }
    said + "."
}

fn keys(limb: &VolumeLimb) -> Vec<Entry> {
    let volume = &limb.volume;
    let spacing =
        volume.spacing_cm.as_ref().map(|one| format!(", every {} cm", one.text)).unwrap_or_default();
    let mut keys = vec![Entry::new("Method", format!("{}{spacing}", volume.method))];
    if let Some(sd) = &volume.sd_ml {
        let of = if volume.excess_ml.is_some() { "the difference" } else { "the volume" };
        keys.push(Entry::new("Error of the tape", format!("SD of {of} {} mL", sd.text)));
    }
    for part in &volume.parts {
        let other = part
            .other_ml
            .as_ref()
            .map(|one| format!("; {} {} mL", limb.other_printed, one.text))
            .unwrap_or_default();
        let percent = part
            .excess_percent
            .as_ref()
            .map(|one| format!("; affected minus other {} %", one.text))
            .unwrap_or_default();
        let measured = text(part.measured_ml.as_ref());
        keys.push(Entry::new(capital(&part.part), format!("{measured} mL{other}{percent}")));
    }
    if let Some(why) = &volume.not_compared {
        keys.push(Entry::new("Not compared", why.clone()));
    }
    keys
}

fn marks(limb: &VolumeLimb, caption: &str, marks: &[VolumeMark]) -> Table {
    let beside = marks.iter().any(|one| one.other_cm.is_some());
    let signed = marks.iter().any(|one| one.difference_cm.is_some());
    let mut columns = vec![
        Column::words("Mark"),
        Column::numbers("At", "cm"),
        Column::numbers(capital(&limb.printed), "cm"),
    ];
    if beside {
        columns.push(Column::numbers(capital(&limb.other_printed), "cm"));
    }
    if signed {
        columns.push(Column::numbers("Affected minus other", "cm"));
    }
    let mut table = Table::new(caption, columns);
    for one in marks {
        let mut row = vec![one.mark.clone(), text(one.at_cm.as_ref()), one.girth_cm.text.clone()];
        if beside {
            row.push(text(one.other_cm.as_ref()));
        }
        if signed {
            row.push(text(one.difference_cm.as_ref()));
        }
        table.push(row);
    }
    table
}

fn segments(limb: &VolumeLimb) -> Table {
    let all = &limb.detail.segments;
    let beside = all.iter().any(|one| one.other_ml.is_some());
    let signed = all.iter().any(|one| one.excess_ml.is_some());
    let mut columns = vec![Column::words("Segment"), Column::numbers(capital(&limb.printed), "mL")];
    if beside {
        columns.push(Column::numbers(capital(&limb.other_printed), "mL"));
    }
    if signed {
        columns.push(Column::numbers("Affected minus other", "mL"));
        columns.push(Column::numbers("The same", "%"));
    }
    let mut table = Table::new("Segments", columns);
    for one in all {
        let name = if one.from == one.to { one.from.clone() } else { format!("{} to {}", one.from, one.to) };
        let mut row = vec![name, text(one.measured_ml.as_ref())];
        if beside {
            row.push(text(one.other_ml.as_ref()));
        }
        if signed {
            row.push(text(one.excess_ml.as_ref()));
            row.push(text(one.excess_percent.as_ref()));
        }
        table.push(row);
    }
    table
}

fn detectable(all: &[DetectableBlock]) -> Table {
    let columns = vec![
        Column::words("Measured"),
        Column::numbers("SD", "mL"),
        Column::numbers("Least change that is more than measuring", "mL"),
        Column::numbers("The same", "%"),
    ];
    let mut table = Table::new("What the volume can tell", columns);
    for one in all {
        table.push(vec![
            one.words.to_owned(),
            text(one.sd_ml.as_ref()),
            text(one.change_ml.as_ref()),
            text(one.change_percent.as_ref()),
        ]);
    }
    table
}

fn of_course(report: &VolumeReport, course: &CourseBlock) -> Vec<Block> {
    let mut blocks = vec![Block::heading("Course")];
    for (place, limb) in report.limbs.iter().enumerate() {
        blocks.extend(course_plot(course, place, &limb.printed).map(Block::Figure));
        let visits: Vec<_> = course.visits.iter().filter(|one| one.limb == place).collect();
        if visits.len() < 2 {
            continue;
        }
        let columns = vec![
            Column::words("Visit"),
            Column::numbers("Volume", "mL"),
            Column::numbers("Other side", "mL"),
            Column::numbers("Excess", "mL"),
            Column::numbers("Excess", "%"),
            Column::words("Series"),
        ];
        let mut table = Table::new(capital(&limb.printed), columns);
        for one in visits {
            table.push(vec![
                one.measured_on.clone(),
                text(one.compared_ml.as_ref()),
                text(one.compared_other_ml.as_ref()),
                text(one.compared_excess_ml.as_ref()),
                text(one.compared_excess_percent.as_ref()),
                (one.series + 1).to_string(),
            ]);
        }
        blocks.push(Block::Table(table));
    }
    let said: Vec<String> = course.said().iter().map(|one| sentence(one)).collect();
    if !said.is_empty() {
        blocks.push(Block::List(said));
    }
    blocks
}
