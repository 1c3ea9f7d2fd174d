//! Owns the reading of a wrap file.

use super::read_claim::{read_label, read_materials};
use super::{WRAP_TENSION_SD, Wrap};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Fields, Item, Reader, Text};
use crate::quantity::Dimension;
use crate::record::landmark_fault;

/// Most layers taken (house rule: beyond any bandage).
const MOST_LAYERS: f64 = 20.0;

/// Reads a wrap; none after its problems have been raised.
pub(super) fn read_wrap(reader: &Reader) -> Option<Wrap> {
    let fields = reader.fields("wrap/1")?;
    let label = fields.optional("label").map(|one| read_label(&one));
    let limb = fields.optional("limb").map(|one| one.word(&[("arm", Limb::Arm), ("leg", Limb::Leg)]));
    let pull_n = fields
        .required("tension", "the pull on the strip, as `tension: 0.5 kgf` or `5 N`")
        .and_then(|one| above_zero(&one, Dimension::Force));
    let tension_sd = fields.optional("tension_sd").map(|one| {
        let share = one.not_negative(Dimension::Ratio)?;
        if share >= 1.0 {
            one.refuse("is 100 % or more; the spread of one pull about the mean is meant, as `20 %`");
            return None;
        }
        Some(share)
    });
    let width = fields.required("width", "the strip's width, as `width: 10 cm`").and_then(|one| one.girth());
    let (layers, overlap) = read_layers(&fields);
    let thickness = fields.optional("thickness").and_then(|one| one.not_negative(Dimension::Length));
    let materials = read_materials(&fields);
    let end = |key, what| fields.required(key, what);
    let from = end("from", "where it starts, as `from: ankle`");
    let to = end("to", "where it ends, as `to: below-knee`");
    fields.finish();
    let (from_item, to_item) = (from?, to?);
    let limb = match limb {
        Some(limb) => limb?,
        None => limb_of(&from_item)?,
    };
    let from = crate::record::read_landmark(&from_item, limb)?;
    let to = crate::record::read_landmark(&to_item, limb)?;
    if from >= to {
        to_item.refuse(format!("`{}` is not nearer the trunk than `from`, `{}`", to.name(), from.name()));
        return None;
    }
    Some(Wrap {
        label: label.unwrap_or_else(|| Text::new("wrap").ok())?,
        file: reader.source().name.clone(),
        limb,
        pull_n: pull_n?,
        tension_sd: tension_sd.unwrap_or(Some(WRAP_TENSION_SD))?,
        width_cm: width?.cm(),
        layers: layers?,
        overlap,
        thickness_cm: thickness.map(|metres| metres * 100.0),
        materials,
        from,
        to,
    })
}

fn above_zero(item: &Item<'_>, wanted: Dimension) -> Option<f64> {
    let value = item.not_negative(wanted)?;
    if value <= 0.0 {
        item.refuse("is zero; a wrap without a pull does not press");
        return None;
    }
    Some(value)
}

/// Layers at one place, from `overlap` or `layers`.
fn read_layers(fields: &Fields<'_>) -> (Option<f64>, Option<f64>) {
    let overlap = fields.optional("overlap");
    let layers = fields.optional("layers");
    match (overlap, layers) {
        (Some(one), None) => {
            let Some(share) = one.not_negative(Dimension::Ratio) else { return (None, None) };
            // n = 1/(1 − overlap) (derived).
            let layers = 1.0 / (1.0 - share);
            if share >= 1.0 || layers > MOST_LAYERS {
                one.refuse("leaves no turn to move on; a share of the width below 95 % is meant, as `50 %`");
                return (None, None);
            }
            (Some(layers), Some(share))
        }
        (None, Some(one)) => {
            let Some(layers) = one.number() else { return (None, None) };
            if !(1.0..=MOST_LAYERS).contains(&layers) {
                one.refuse(format!("`{layers}` layers is not from 1 to {MOST_LAYERS}"));
                return (None, None);
            }
            (Some(layers), None)
        }
        (Some(_), Some(one)) => {
            one.refuse("stands beside `overlap`; the layers follow from the overlap, so keep one of the two");
            (None, None)
        }
        (None, None) => {
            fields.required(
                "overlap",
                "how far each turn covers the one before, as `overlap: 50 %`, or `layers: 2`",
            );
            (None, None)
        }
    }
}

/// The limb that a landmark's word belongs to.
fn limb_of(item: &Item<'_>) -> Option<Limb> {
    let text = item.text()?;
    let found = Landmark::parse_word(&text).map(Landmark::limb);
    if found.is_none() {
        item.refuse(format!(
            "{}; letters need `limb: arm` or `limb: leg` beside them",
            landmark_fault(&text, Limb::Arm)
        ));
    }
    found
}
