//! Owns the reading of what chart and garment files share: the class claimed, the fabric named.

use super::{Claim, Fabric, Relaxed, Schemes, open_fabric};
use crate::anatomy::Limb;
use crate::input::{Fields, Item, Problem, Reader, Source, Text, YesNo};
use crate::quantity::Girth;

/// Reads a label.
pub(super) fn read_label(item: &Item<'_>) -> Option<Text> {
    let text = item.text()?;
    Text::new(&text).map_err(|fault| item.refuse(fault.to_string())).ok()
}

/// Reads `materials`; none where it does not stand.
pub(super) fn read_materials(fields: &Fields<'_>) -> Option<Vec<Text>> {
    let list = fields.optional("materials")?.list()?;
    Some(list.iter().filter_map(read_label).collect())
}

/// Reads `hand_part`; none where it is not stated or not known.
pub(super) fn read_hand_part(fields: &Fields<'_>) -> Option<bool> {
    match fields.optional("hand_part")?.yes_no_unknown()? {
        YesNo::Yes => Some(true),
        YesNo::No => Some(false),
        YesNo::Unknown => None,
    }
}

/// Reads one relaxed girth, or a list of its repeats.
pub(super) fn read_repeats<'r>(
    item: &Item<'r>,
    girth: impl Fn(&Item<'r>) -> Option<Girth>,
) -> Option<Relaxed> {
    if !item.is_list() {
        return girth(item).map(Relaxed::once);
    }
    let list = item.list()?;
    if list.is_empty() {
        item.refuse("holds no value; write one, or several as `[6.5, 6.6]`");
    }
    let girths: Vec<Girth> = list.iter().map(girth).collect::<Option<_>>()?;
    Relaxed::mean(&girths)
}

/// Reads `scheme` with `class`; none where neither stands or after the problem has been raised.
pub(super) fn read_claim(
    reader: &Reader,
    fields: &Fields<'_>,
    schemes: &Schemes,
    limb: Option<Limb>,
) -> Option<Claim> {
    let scheme = fields.optional("scheme").and_then(|one| one.named());
    let class = fields.optional("class").and_then(|one| one.named());
    match (scheme, class) {
        (Some(scheme), Some(class)) => limb
            .and_then(|limb| schemes.claimed(reader, "", &scheme, &class, limb))
            .map(|scheme| Claim { scheme, class: class.text }),
        (None, None) => None,
        (Some(one), None) => {
            reader.raise(
                one.spot,
                "scheme",
                "a scheme without its class; add `class`, or take the scheme out",
            );
            None
        }
        (None, Some(one)) => {
            reader.raise(
                one.spot,
                "class",
                "a class without its scheme; the same number is another pressure elsewhere, so add `scheme`",
            );
            None
        }
    }
}

/// Opens the fabric file that a value names.
pub(super) fn read_fabric(item: &Item<'_>, elsewhere: &mut Vec<Problem>) -> Option<Fabric> {
    let name = item.text()?;
    let source = match Source::read_as(&item.reader().source().beside(&name), "a fabric file") {
        Ok(source) => source,
        Err(problem) => {
            item.refuse(format!("the fabric file `{}`: {}", problem.file, problem.what));
            return None;
        }
    };
    match open_fabric(source) {
        Ok(fabric) => Some(fabric),
        Err(problems) => {
            elsewhere.extend(problems);
            None
        }
    }
}
