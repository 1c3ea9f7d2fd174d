//! Owns a size that was obtained and measured: a garment file of the run that bears the label of a chart's
//! size, as `sleeve chart A, size 3`, is that size on the table. Its relaxed girths count in the chart; it
//! is no garment beside it.

use crate::garment::{Chart, MeasuredSize, Outfit, Piece, printed_labels};

/// Puts the relaxed girths of measured sizes into their charts and takes those garments out of the others.
pub(super) fn take_measured(charts: &mut [Chart], outfits: &mut Vec<Outfit>) {
    let refs: Vec<&Chart> = charts.iter().collect();
    let printed = printed_labels(&refs);
    outfits.retain(|outfit| {
        !charts.iter_mut().zip(&printed).any(|(chart, printed)| is_of(chart, printed, outfit))
    });
}

/// Whether a garment is one size of a chart; its girths are then in it.
fn is_of(chart: &mut Chart, printed: &str, outfit: &Outfit) -> bool {
    let [only] = outfit.pieces.as_slice() else { return false };
    let Piece::Garment(garment) = &only.piece else { return false };
    if garment.limb != chart.limb {
        return false;
    }
    let place = chart
        .sizes
        .iter()
        .position(|size| garment.label.as_str() == format!("{printed}, size {}", size.label));
    let Some((place, size)) = place.and_then(|place| Some((place, chart.sizes.get_mut(place)?))) else {
        return false;
    };
    size.relaxed.retain(|(landmark, _)| garment.relaxed_at(*landmark).is_none());
    size.relaxed.extend(garment.relaxed.iter().copied());
    size.relaxed.sort_by_key(|(landmark, _)| *landmark);
    chart.measured.push(MeasuredSize { size: place, file: garment.file.clone() });
    true
}
