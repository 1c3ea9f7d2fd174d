//! Owns the reading of `--target`, `--fall-to`, `--scheme` and `--to`.

use anyhow::{Context as _, anyhow};
use tapeline::anatomy::{Landmark, Limb};
use tapeline::assessment::{Fall, OpenRecord, Target};
use tapeline::garment::{Claim, Scheme, Schemes};
use tapeline::quantity::{Dimension, PASCAL_PER_MMHG, Unit, Units, mmhg, read_quantity};
use tapeline::record::Wanted as Prescribed;

use super::args::Pattern;

/// What the arguments and the prescription ask for.
pub(crate) fn read(
    args: &Pattern,
    open: &OpenRecord,
    schemes: &Schemes,
) -> anyhow::Result<(Target, Option<Claim>)> {
    let fall = match &args.fall_to {
        Some(text) => Fall::Straight(share(text)?),
        None => Fall::Scheme,
    };
    let limb = open.record.limb;
    let prescribed = open.record.prescribed.as_ref().and_then(|one| one.wanted.as_ref());
    let prescribed_claim = || match (prescribed, &open.prescribed_scheme) {
        (Some(Prescribed::Class { class, .. }), Some(scheme)) => {
            Some(Claim { scheme: scheme.clone(), class: class.text.clone() })
        }
        _ => None,
    };
    let Some(text) = args.target.as_deref().map(str::trim) else {
        return match (prescribed, prescribed_claim()) {
            (_, Some(claim)) => Ok((Target::Class(fall), Some(claim))),
            (Some(Prescribed::Range { low, high }), None) => {
                Ok((Target::Reference(f64::midpoint(mmhg(*low), mmhg(*high)), fall), None))
            }
            _ => Err(anyhow!(
                "nothing is prescribed in the record; say what is wanted, as `--target 27mmHg --fall-to 60%`"
            )),
        };
    };
    if let Some(class) = text.strip_prefix("class=") {
        let scheme = match &args.scheme {
            Some(id) => find(id, limb, schemes)?,
            None => open.prescribed_scheme.clone().ok_or_else(|| {
                anyhow!(
                    "the class `{class}` is read only with its scheme; add `--scheme ID`, one of {}",
                    ids(limb, schemes)
                )
            })?,
        };
        let class = class.trim().trim_matches('"').to_owned();
        if scheme.class(&class).is_none() {
            let names: Vec<&str> = scheme.classes.iter().map(|one| one.class.as_str()).collect();
            return Err(anyhow!("`{class}` is no class of {}; its classes: {}", scheme.id, names.join(", ")));
        }
        return Ok((Target::Class(fall), Some(Claim { scheme, class })));
    }
    if text.contains('=') {
        if args.fall_to.is_some() {
            return Err(anyhow!("`--fall-to` stands beside a list of pressures; keep one of the two"));
        }
        let list = text.split(',').map(|one| listed(one, limb)).collect::<anyhow::Result<Vec<_>>>()?;
        for (number, (landmark, _)) in list.iter().enumerate() {
            if list.iter().take(number).any(|(other, _)| other == landmark) {
                return Err(anyhow!("`{}` stands twice in `--target`", landmark.name()));
            }
        }
        return Ok((Target::List(list), prescribed_claim()));
    }
    Ok((Target::Reference(pressure(text, Units::default())?, fall), prescribed_claim()))
}

/// A landmark of the limb.
pub(crate) fn landmark(text: &str, limb: Limb) -> anyhow::Result<Landmark> {
    Landmark::parse(limb, text).ok_or_else(|| {
        let names: Vec<&str> = Landmark::of(limb).iter().map(|one| one.name()).collect();
        anyhow!("`{}` is no landmark of the {}; accepted: {}", text.trim(), limb.name(), names.join(", "))
    })
}

fn listed(text: &str, limb: Limb) -> anyhow::Result<(Landmark, f64)> {
    let (name, value) = text.split_once('=').ok_or_else(|| {
        anyhow!("`{}` is no pressure at a landmark; write `wrist=27,forearm=22`", text.trim())
    })?;
    Ok((landmark(name, limb)?, pressure(value, Units::default().with(Unit::MmHg))?))
}

/// A pressure above 0, mmHg.
fn pressure(text: &str, units: Units) -> anyhow::Result<f64> {
    let written = read_quantity(text, Dimension::Pressure, units)
        .map_err(|fault| anyhow!("`{}` {fault}", text.trim()))
        .context("`--target` is no pressure; write `27mmHg`, `class=2` or `wrist=27,forearm=22`")?;
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
