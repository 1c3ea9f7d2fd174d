//! Owns the reading of what `pattern` is asked for: a pressure, a class or a list, and how it falls.

use anyhow::anyhow;
use tapeline::anatomy::{Landmark, Limb};
use tapeline::assessment::class_printed;
use tapeline::estimate::{Target, WantedFall};
use tapeline::garment::{Claim, Scheme, Schemes};
use tapeline::input::landmark_fault;
use tapeline::quantity::{Dimension, PASCAL_PER_MMHG, Unit, Units, mmhg, read_quantity};
use tapeline::record::{LimbRecord, Record, Wanted as Prescribed};
use tapeline::words;

/// What the command line asks for.
pub(crate) struct Asked<'a> {
    /// `--pressure`.
    pub(crate) pressure: Option<&'a str>,
    /// `--class`.
    pub(crate) class: Option<&'a str>,
    /// `--at`, each.
    pub(crate) at: &'a [String],
    /// `--fall-to`.
    pub(crate) fall_to: Option<&'a str>,
    /// `--scheme`.
    pub(crate) scheme: Option<&'a str>,
}

/// The target, the class that it is to claim, and the target in words; what was prescribed where nothing is
/// asked for.
pub(crate) fn read(
    asked: &Asked<'_>,
    record: &Record,
    limb: &LimbRecord,
    schemes: &Schemes,
) -> anyhow::Result<(Target, Option<Claim>, String)> {
    let fall = asked.fall_to.map_or(Ok(WantedFall::Scheme), |text| share(text).map(WantedFall::To))?;
    let prescribed = record.prescribed_for(limb).and_then(|one| one.wanted.as_ref());
    let of_prescription = prescribed_claim(prescribed, schemes);
    if let Some(class) = asked.class {
        let scheme = match asked.scheme {
            Some(id) => find(id, record.limb, schemes)?,
            None => of_prescription.map(|claim| claim.scheme).ok_or_else(|| {
                anyhow!(
                    "the class `{class}` is read only with its scheme; add `--scheme ID`, one of {}",
                    ids(record.limb, schemes)
                )
            })?,
        };
        let class = class.trim().trim_matches('"').to_owned();
        let Some(band) = scheme.class(&class) else {
            let names: Vec<&str> = scheme.classes.iter().map(|one| one.class.as_str()).collect();
            return Err(anyhow!("`{class}` is no class of {}; its classes: {}", scheme.id, names.join(", ")));
        };
        let said = format!("the middle of {}", class_printed(&scheme.label, band));
        return Ok((Target::Class(fall), Some(Claim { scheme, class }), said));
    }
    if !asked.at.is_empty() {
        let list = asked.at.iter().map(|one| listed(one, record.limb)).collect::<anyhow::Result<Vec<_>>>()?;
        for (number, (landmark, _)) in list.iter().enumerate() {
            if list.iter().take(number).any(|(other, _)| other == landmark) {
                return Err(anyhow!("`--at` names {} twice; keep one", words::the(*landmark)));
            }
        }
        let said: Vec<String> = list
            .iter()
            .map(|(landmark, value)| format!("{} {}", words::mmhg(*value), words::at(*landmark)))
            .collect();
        return Ok((Target::List(list), of_prescription, words::list(&said)));
    }
    let reference = words::at(record.limb.reference());
    if let Some(text) = asked.pressure {
        let value = pressure(text, Units::default(), "--pressure")?;
        let said = format!("{} {reference}", words::mmhg(value));
        return Ok((Target::Reference(value, fall), of_prescription, said));
    }
    match (prescribed, of_prescription) {
        (_, Some(claim)) => {
            let printed =
                claim.scheme.class(&claim.class).map(|band| class_printed(&claim.scheme.label, band));
            let said = format!("the middle of {}, as prescribed", printed.unwrap_or_default());
            Ok((Target::Class(fall), Some(claim), said))
        }
        (Some(Prescribed::Range { low, high }), None) => {
            let value = f64::midpoint(mmhg(*low), mmhg(*high));
            let said = format!("{} {reference}, the middle of what is prescribed", words::mmhg(value));
            Ok((Target::Reference(value, fall), None, said))
        }
        _ => Err(anyhow!(
            "nothing is prescribed in the record; say what is wanted, as `--pressure 27mmHg --fall-to 60%`"
        )),
    }
}

fn prescribed_claim(prescribed: Option<&Prescribed>, schemes: &Schemes) -> Option<Claim> {
    match prescribed {
        Some(Prescribed::Class { scheme, class }) => {
            Some(Claim { scheme: schemes.find(&scheme.text)?, class: class.text.clone() })
        }
        _ => None,
    }
}

/// A landmark of the limb.
pub(crate) fn landmark(text: &str, limb: Limb) -> anyhow::Result<Landmark> {
    Landmark::parse(limb, text).ok_or_else(|| anyhow!(landmark_fault(limb, text.trim())))
}

fn listed(text: &str, limb: Limb) -> anyhow::Result<(Landmark, f64)> {
    let (name, value) = text.split_once('=').ok_or_else(|| {
        anyhow!("`--at {}` is no pressure at a landmark; write `--at wrist=27mmHg`", text.trim())
    })?;
    Ok((landmark(name, limb)?, pressure(value, Units::default().with(Unit::MmHg), "--at")?))
}

/// A pressure above 0, mmHg.
fn pressure(text: &str, units: Units, option: &str) -> anyhow::Result<f64> {
    let written = read_quantity(text, Dimension::Pressure, units)
        .map_err(|fault| anyhow!("`{option}`: `{}` {fault}; as `27mmHg`", text.trim()))?;
    let value = written.si() / PASCAL_PER_MMHG;
    // House rule: beyond 200 mmHg no garment is wanted; a unit slip is likelier.
    if !(value > 0.0 && value <= 200.0) {
        return Err(anyhow!("a wanted pressure of `{}` is not above 0 and at most 200 mmHg", text.trim()));
    }
    Ok(value)
}

/// A share above 0 and at most 100, per cent.
fn share(text: &str) -> anyhow::Result<f64> {
    let fault = || anyhow!("`--fall-to {text}` is no share above 0 and at most 100 %; write `--fall-to 60%`");
    let written = read_quantity(text, Dimension::Ratio, Units::default()).map_err(|_| fault())?;
    let percent = written.si() * 100.0;
    if percent > 0.0 && percent <= 100.0 { Ok(percent) } else { Err(fault()) }
}

fn find(id: &str, limb: Limb, schemes: &Schemes) -> anyhow::Result<Scheme> {
    schemes
        .find(id)
        .filter(|scheme| scheme.limbs.include(limb))
        .ok_or_else(|| anyhow!("`{id}` is no scheme for the {}; known: {}", limb.name(), ids(limb, schemes)))
}

fn ids(limb: Limb, schemes: &Schemes) -> String {
    let own: Vec<&str> = schemes
        .ids()
        .into_iter()
        .filter(|id| schemes.find(id).is_some_and(|scheme| scheme.limbs.include(limb)))
        .collect();
    own.join(", ")
}
