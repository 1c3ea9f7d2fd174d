//! Owns the entries of the pressure schemes and their classes.

use super::of_rules::limbs;
use super::{Entry, Kind};
use crate::garment::{ClassBand, GraduationLimit, Scheme, Schemes};
use crate::words;

pub(super) fn entries(schemes: &Schemes) -> Vec<Entry> {
    let all: Vec<Scheme> = schemes.ids().into_iter().filter_map(|id| schemes.find(id)).collect();
    let classes = all.iter().flat_map(|scheme| scheme.classes.iter().map(|class| of_class(class, scheme)));
    all.iter().map(of).chain(classes).collect()
}

fn of(scheme: &Scheme) -> Entry {
    let reference =
        scheme.reference.map_or_else(|| "the limb's reference, wrist or ankle".to_owned(), words::the);
    let mut rule = vec![format!(
        "Classes refer to {reference}; the estimate is judged before rounding, and a value between two classes is said so."
    )];
    rule.extend(scheme.classes.iter().map(|class| {
        let source = if class.source.is_empty() { String::new() } else { format!(", {}", class.source) };
        format!("class {}: {} ({}{source})", class.class, class.spoken(), class.basis.word())
    }));
    rule.extend(scheme.graduation.iter().map(limit));
    Entry::new(
        Kind::Scheme,
        &scheme.id,
        format!("{}; pressure classes for {}.", scheme.label, limbs(scheme.limbs)),
    )
    .rules(rule)
    .rests_on("beside each value", &scheme.source)
    .then("Name a class only with its scheme; another scheme uses the same class for another pressure.")
    .said([scheme.label.clone()])
}

fn limit(limit: &GraduationLimit) -> String {
    let range = match (limit.low, limit.high) {
        (Some(low), Some(high)) => format!("{} to {}", words::plain(low), words::percent(high)),
        (Some(low), None) => format!("at least {}", words::percent(low)),
        (None, Some(high)) => format!("at most {}", words::percent(high)),
        (None, None) => "no limit".to_owned(),
    };
    format!(
        "class {}, {}: {range} of {} ({})",
        limit.class,
        words::at(limit.landmark),
        words::the(limit.of),
        limit.basis.word()
    )
}

fn of_class(class: &ClassBand, scheme: &Scheme) -> Entry {
    Entry::new(
        Kind::Class,
        format!("class {} of {}", class.class, scheme.id),
        format!("{} at the reference, of {}.", class.spoken(), limbs(scheme.limbs)),
    )
    .rests_on(class.basis.word(), if class.source.is_empty() { &scheme.source } else { &class.source })
    .typed([
        format!("class {}", class.class),
        format!("ccl {}", class.class),
        class.class.clone(),
        format!("{} {}", scheme.id, class.class),
    ])
}
