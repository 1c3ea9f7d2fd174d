//! Owns the questions for a pressure: what is prescribed, or what a garment claims, by scheme and class
//! from a list, or by range.

use tapeline::anatomy::Limb;
use tapeline::garment::{Scheme, Schemes};
use tapeline::input::Draft;

use super::answer;
use super::step::Step;

/// What is prescribed.
pub(super) fn prescribed<'s>(draft: &Draft, limb: Limb, schemes: &Schemes) -> Vec<Step<'s>> {
    let prompt = "Prescribed: scheme and class by number, as 1 2, or a range, as 20-25:";
    let mut steps = vec![by_class(draft, "prescribed", prompt, limb, schemes)];
    if draft.has("prescribed.class") || draft.has("prescribed.range") {
        steps.push(Step::text(draft, "prescribed.style", "Style, as sleeve or stocking:").or_skip());
        steps.push(Step::text(draft, "prescribed.by", "Prescribed by (a role):").or_skip());
    }
    steps
}

/// The class that a garment or a chart claims.
pub(super) fn claimed<'s>(draft: &Draft, limb: Limb, schemes: &Schemes) -> Step<'s> {
    let prompt = "Claims which scheme and class, by number, as 1 2:";
    by_class(draft, "", prompt, limb, schemes)
}

/// A scheme and a class of it in one answer; under a block a range too.
fn by_class<'s>(draft: &Draft, block: &str, prompt: &str, limb: Limb, schemes: &Schemes) -> Step<'s> {
    let known: Vec<Scheme> = schemes
        .ids()
        .into_iter()
        .filter_map(|id| schemes.find(id))
        .filter(|scheme| scheme.limbs.include(limb))
        .collect();
    let mut lines = Vec::new();
    for (at, scheme) in known.iter().enumerate() {
        lines.push(format!("  {} {}: {}", at + 1, scheme.id, scheme.label));
        let classes = scheme.classes.iter().map(|band| format!("class {} {}", band.class, band.spoken()));
        lines.push(format!("      {}", classes.collect::<Vec<_>>().join(" · ")));
    }
    let path = |key: &str| if block.is_empty() { key.to_owned() } else { format!("{block}.{key}") };
    let (scheme_path, class_path) = (path("scheme"), path("class"));
    let range_path = (!block.is_empty()).then(|| path("range"));
    let has = |path: &str| draft.text(path).is_some_and(|text| !text.is_empty());
    let done = has(&class_path) || range_path.as_deref().is_some_and(has);
    let name = if block.is_empty() { "class" } else { block };
    Step::new(draft, name, prompt, move |text, draft| {
        if let Some(path) = &range_path
            && let Some(range) = range(text)
        {
            draft.set(path, &range);
            return Ok(());
        }
        let (scheme, class) = pick(text, &known)?;
        draft.set(&scheme_path, &scheme);
        draft.set(&class_path, &class);
        Ok(())
    })
    .above(lines)
    .help("The number of the scheme, a blank, the class as it is printed there. The same class has another pressure in another scheme. Enter passes over.")
    .or_skip()
    .done_if(done)
}

/// A range of pressures with its unit, mmHg where none is typed; none for anything else.
fn range(text: &str) -> Option<String> {
    let text = answer::pointed(text);
    let (low, high) =
        text.split_once('-').or_else(|| text.split_once('\u{2013}')).or_else(|| text.split_once(" to "))?;
    let starts = |part: &str| part.trim().starts_with(|c: char| c.is_ascii_digit());
    if !starts(low) || !starts(high) {
        return None;
    }
    let unit = if text.contains("Hg") || text.contains("Pa") { "" } else { " mmHg" };
    Some(format!("{text}{unit}"))
}

fn pick(text: &str, known: &[Scheme]) -> Result<(String, String), String> {
    // A class may be two words, as `very strong`.
    let Some((scheme, class)) = text.trim().split_once([' ', ',']) else {
        return Err("Type the number of the scheme and the class, as 1 2.".to_owned());
    };
    let class = class.trim();
    let ids: Vec<&str> = known.iter().map(|one| one.id.as_str()).collect();
    let id = answer::word(scheme, &ids)?;
    let classes = known.iter().filter(|one| one.id == id).flat_map(|one| &one.classes);
    let classes: Vec<&str> = classes.map(|band| band.class.as_str()).collect();
    let class = classes
        .iter()
        .find(|one| one.eq_ignore_ascii_case(class))
        .ok_or_else(|| format!("`{class}` is no class of {id}; it has {}.", classes.join(", ")))?;
    Ok((id.to_owned(), (*class).to_owned()))
}

/// Takes the answer out again; whether the name was this question's.
pub(super) fn open_again(draft: &mut Draft, name: &str) -> bool {
    if name != "class" {
        return false;
    }
    draft.remove("scheme");
    draft.remove("class");
    true
}
