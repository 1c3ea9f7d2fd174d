//! Owns the entries of the pressure schemes.

use super::{Entry, Kind};
use crate::anatomy::Limb;
use crate::garment::{ClassBand, Scheme, Schemes};
use crate::rules::Limbs;

pub(super) fn entries(schemes: &Schemes) -> Vec<Entry> {
    schemes.ids().into_iter().filter_map(|id| schemes.find(id)).map(|scheme| of_scheme(&scheme)).collect()
}

/// The band with its open ends said.
fn ends(class: &ClassBand) -> String {
    match (class.low, class.high) {
        (Some(low), Some(high)) => format!(
            "{}{low} to {}{high} mmHg",
            if class.low_open { "over " } else { "" },
            if class.high_open { "under " } else { "" }
        ),
        _ => class.spoken(),
    }
}

fn of_scheme(scheme: &Scheme) -> Entry {
    let limb = match scheme.limbs {
        Limbs::Only(Limb::Arm) => "arms",
        Limbs::Only(Limb::Leg) => "legs",
        Limbs::Both => "arms and legs",
    };
    let reference = scheme.reference.map_or_else(
        || "the limb's reference, wrist or ankle".to_owned(),
        |landmark| format!("the {}", landmark.spoken()),
    );
    let mut rule = vec![format!(
        "Classes refer to {reference}; they are judged on the estimate before rounding, and a value between two classes is said so."
    )];
    rule.extend(scheme.classes.iter().map(|class| {
        let source = if class.source.is_empty() { String::new() } else { format!(", {}", class.source) };
        format!("class {}: {} ({}{source})", class.class, ends(class), class.basis.word())
    }));
    rule.extend(scheme.graduation.iter().map(|limit| {
        let range = match (limit.low, limit.high) {
            (Some(low), Some(high)) => format!("{low:.0} to {high:.0} %"),
            (Some(low), None) => format!("at least {low:.0} %"),
            (None, Some(high)) => format!("at most {high:.0} %"),
            (None, None) => "no limit".to_owned(),
        };
        format!(
            "class {}, {}: {range} of the {} ({})",
            limit.class,
            limit.landmark.spoken(),
            limit.of.spoken(),
            limit.basis.word()
        )
    }));
    Entry {
        id: scheme.id.clone(),
        kind: Kind::Scheme,
        meaning: format!("{}; pressure classes for {limb}.", scheme.label),
        rule,
        severity: "none of its own; `class-missed`, `band-missed` and `ratio-outside` use it".to_owned(),
        basis: "beside each value".to_owned(),
        source: scheme.source.clone(),
        next: "Name a class only with its scheme; other schemes use the same class for other pressures."
            .to_owned(),
    }
}
