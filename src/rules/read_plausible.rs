//! Owns the reading of plausible bands, ratios and the usual limb.

use super::read::{LOW_ABOVE_HIGH, basis, text};
use super::{Nearness, PlausibleBand, PlausibleRatio};
use crate::anatomy::{Landmark, Limb};
use crate::input::Item;

pub(super) fn read_band(item: &Item<'_>) -> Option<PlausibleBand> {
    let fields = item.fields()?;
    let cm = |key| Some(fields.required(key, "a girth")?.girth()?.cm());
    let band = PlausibleBand {
        landmark: fields.required("landmark", "where")?.landmark()?,
        low_cm: cm("low")?,
        high_cm: cm("high")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    if band.low_cm > band.high_cm {
        item.refuse(LOW_ABOVE_HIGH);
    }
    Some(band)
}

pub(super) fn read_ratio(item: &Item<'_>) -> Option<PlausibleRatio> {
    let fields = item.fields()?;
    let ratio = PlausibleRatio {
        of: fields.required("of", "the girth above the line")?.landmark()?,
        to: fields.required("to", "the girth below the line")?.landmark()?,
        low: fields.required("low", "a ratio")?.number()?,
        high: fields.required("high", "a ratio")?.number()?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    if ratio.low > ratio.high {
        item.refuse(LOW_ABOVE_HIGH);
    }
    Some(ratio)
}

fn numbers(item: &Item<'_>) -> Option<Vec<f64>> {
    item.list()?.iter().map(Item::number).collect()
}

pub(super) fn read_nearness(item: &Item<'_>) -> Option<Nearness> {
    let fields = item.fields()?;
    let limb = fields.required("limb", "arm or leg")?.word(&[("arm", Limb::Arm), ("leg", Limb::Leg)])?;
    let landmarks: Vec<Landmark> =
        fields.required("landmarks", "a list")?.list()?.iter().map(Item::landmark).collect::<Option<_>>()?;
    let mean = numbers(&fields.required("mean", "a list")?)?;
    let cov: Vec<Vec<f64>> =
        fields.required("cov", "a square")?.list()?.iter().map(numbers).collect::<Option<_>>()?;
    if mean.len() != landmarks.len()
        || cov.len() != landmarks.len()
        || cov.iter().any(|row| row.len() != landmarks.len())
    {
        item.refuse("`mean` and `cov` do not have as many rows as there are landmarks");
        return None;
    }
    let nearness =
        Nearness { limb, landmarks, mean, cov, basis: basis(&fields)?, source: text(&fields, "source")? };
    fields.finish();
    Some(nearness)
}
