//! Owns whether the readings of a record name a garment of the run.

use crate::garment::{Chart, Outfit, printed_labels};
use crate::input::Problem;
use crate::record::{Reading, Record};
use crate::words;

/// A reading that names no garment of the run, with what is wrong.
pub(super) struct Unnamed<'r> {
    /// The reading.
    pub reading: &'r Reading,
    /// What is wrong and what would be accepted.
    pub what: String,
}

/// The names that a reading may bear: `LABEL, size S` for every size, and the label of every garment file.
fn names(charts: &[Chart], outfits: &[Outfit]) -> Vec<String> {
    let refs: Vec<&Chart> = charts.iter().collect();
    let printed = printed_labels(&refs);
    let mut all = Vec::new();
    for (chart, printed) in charts.iter().zip(printed) {
        for size in &chart.sizes {
            all.push(format!("{}, size {}", chart.label, size.label));
            if printed != *chart.label {
                all.push(format!("{printed}, size {}", size.label));
            }
        }
    }
    all.extend(outfits.iter().map(|one| one.label.to_string()));
    all
}

/// The names, told apart by their files, of the charts' sizes that a name without a file would mean.
fn shared(charts: &[Chart], name: &str) -> Vec<String> {
    let refs: Vec<&Chart> = charts.iter().collect();
    let printed = printed_labels(&refs);
    let sizes = charts.iter().zip(printed).flat_map(|(chart, printed)| {
        chart.sizes.iter().map(move |size| {
            (format!("{}, size {}", chart.label, size.label), format!("`{printed}, size {}`", size.label))
        })
    });
    sizes.filter(|(plain, _)| plain == name).map(|(_, full)| full).collect()
}

/// Readings that would be dropped, or count twice, in silence. Without a garment in the run none is asked for.
pub(super) fn unnamed<'r>(record: &'r Record, charts: &[Chart], outfits: &[Outfit]) -> Vec<Unnamed<'r>> {
    let names = names(charts, outfits);
    if names.is_empty() {
        return Vec::new();
    }
    let readings = record.limbs.iter().flat_map(|limb| &limb.readings);
    readings
        .filter_map(|reading| {
            let accepted = names.first().map_or("", String::as_str);
            let what = match &reading.garment {
                Some(garment) if shared(charts, &garment.text).len() > 1 => format!(
                    "`{}` is a size of several charts of this run; write {}",
                    garment.text,
                    words::list_or(&shared(charts, &garment.text))
                ),
                Some(garment) if outfits.iter().filter(|one| *one.label == garment.text).count() > 1 => {
                    format!(
                        "`{}` is the label of several garments of this run; give each a label of its own",
                        garment.text
                    )
                }
                Some(garment) if names.contains(&garment.text) => return None,
                Some(garment) => format!(
                    "`{}` is no garment of this run; write its label and size as `{accepted}`",
                    garment.text
                ),
                None if names.len() == 1 => return None,
                None => format!("names no garment, and this run has several; add `garment: \"{accepted}\"`"),
            };
            Some(Unnamed { reading, what })
        })
        .collect()
}

/// Such readings as problems of a file without places.
pub(super) fn without_place(record: &Record, found: &[Unnamed<'_>]) -> Vec<Problem> {
    found.iter().map(|one| Problem::of_file(&record.file, format!("readings: {}", one.what))).collect()
}
