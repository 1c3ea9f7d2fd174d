//! Owns the reading of what is worn: a garment file, a wrap file, or garments worn together.

use super::read_claim::{read_claim, read_fabric, read_hand_part, read_label, read_materials, read_repeats};
use super::read_sizes::{Ends, by_landmark};
use super::read_wrap::read_wrap;
use super::{Fabric, Garment, MOST_FABRICS, MOST_PIECES, Outfit, Piece, Relaxed, Schemes, TopEdge, Worn};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Fields, Item, Problem, Reader, Source, Spot, Text};
use crate::quantity::Girth;
use crate::record::read_landmark;

/// What is worn, with its file, for problems that show only against a record.
pub struct OpenOutfit {
    /// What is worn.
    pub outfit: Outfit,
    reader: Reader,
    limb_spot: Spot,
}

impl OpenOutfit {
    /// A problem when it is for another limb than the record's.
    pub fn limb_problem(&self, limb: Limb) -> Option<Problem> {
        (self.outfit.limb != limb).then(|| {
            let what = format!(
                "this garment is for the {}, but the record measures {} {}; name another garment",
                self.outfit.limb.name(),
                if limb == Limb::Arm { "an" } else { "a" },
                limb.name()
            );
            self.reader.problem_at(self.limb_spot, "limb", what)
        })
    }
}

/// Reads a `garment/1` or `wrap/1` file, with the files that it names.
///
/// # Errors
/// Every problem of the file and of the files it names.
pub fn open_outfit(source: Source, schemes: &Schemes) -> Result<OpenOutfit, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let mut elsewhere = Vec::new();
    let outfit = read(&reader, schemes, true, &mut elsewhere);
    if let Some((outfit, spot)) = &outfit {
        let wraps = outfit.pieces.len() - outfit.garments().count();
        if outfit.fabrics().len() + wraps > MOST_FABRICS {
            reader.raise(
                *spot,
                "",
                format!("is made of more than {MOST_FABRICS} fabrics and wraps; leave some out"),
            );
        }
    }
    let mut problems = reader.problems();
    problems.extend(elsewhere);
    match outfit {
        Some((outfit, limb_spot)) if problems.is_empty() => Ok(OpenOutfit { outfit, reader, limb_spot }),
        _ => Err(problems),
    }
}

fn read(
    reader: &Reader,
    schemes: &Schemes,
    whole: bool,
    elsewhere: &mut Vec<Problem>,
) -> Option<(Outfit, Spot)> {
    if reader.kind().is_some_and(|kind| kind.starts_with("wrap/")) {
        let wrap = read_wrap(reader)?;
        return Some((Outfit::of(Piece::Wrap(wrap)), Spot(0)));
    }
    let fields = reader.fields("garment/1")?;
    let label = fields
        .required("label", "the garment's label, as `label: sleeve 1`")
        .and_then(|one| read_label(&one));
    let limb_item = fields.required("limb", "arm or leg, as `limb: arm`");
    let limb = limb_item.as_ref().and_then(|one| one.word(&[("arm", Limb::Arm), ("leg", Limb::Leg)]));
    let limb_spot = limb_item.as_ref().map_or(fields.spot(), Item::spot);
    let style = fields.optional("style").and_then(|one| read_label(&one));
    let claim = read_claim(reader, &fields, schemes, limb);
    if let Some(together) = fields.optional("worn_together") {
        if !whole {
            together.refuse("stands in a file that is itself worn together with others; name the single garments in one file");
            return None;
        }
        fields.finish();
        let pieces = limb.and_then(|limb| read_together(&together, limb, schemes, elsewhere))?;
        return Some((Outfit { label: label?, limb: limb?, style, claim, pieces }, limb_spot));
    }
    let garment = read_single(&fields, limb, elsewhere);
    fields.finish();
    let parts = garment?;
    let garment = Garment {
        label: label?,
        file: reader.source().name.clone(),
        limb: limb?,
        style,
        from: parts.from,
        to: parts.to,
        claim,
        materials: parts.materials,
        hand_part: parts.hand_part,
        fabric: parts.fabric,
        fabric_at: parts.fabric_at,
        layers: parts.layers,
        relaxed: parts.relaxed,
        top_edge: parts.top_edge,
    };
    Some((Outfit::of(Piece::Garment(Box::new(garment))), limb_spot))
}

struct Parts {
    from: Landmark,
    to: Landmark,
    materials: Option<Vec<Text>>,
    hand_part: Option<bool>,
    fabric: Option<Fabric>,
    fabric_at: Vec<(Landmark, Fabric)>,
    layers: u32,
    relaxed: Vec<(Landmark, Relaxed)>,
    top_edge: Option<TopEdge>,
}

fn read_single(fields: &Fields<'_>, limb: Option<Limb>, elsewhere: &mut Vec<Problem>) -> Option<Parts> {
    let end = |key| {
        let item = fields.optional(key);
        limb.and_then(|limb| item.map(|one| read_landmark(&one, limb)))
    };
    let (from, to) = (end("from"), end("to"));
    let materials = read_materials(fields);
    let hand_part = read_hand_part(fields);
    let fabric = fields.optional("fabric").map(|one| read_fabric(&one, elsewhere));
    let fabric_at_item = fields.optional("fabric_at");
    let layers = fields.optional("layers").map(|one| one.whole(1, 10));
    let relaxed_item = fields.optional("relaxed");
    let flat_item = fields.optional("flat_width");
    let edge_item = fields.optional("top_edge");
    let limb = limb?;
    let fabric_at = fabric_at_item.map(|item| {
        let read = std::cell::RefCell::new(Vec::new());
        let list = by_landmark(&item, limb, |one| read_fabric(one, &mut read.borrow_mut()));
        elsewhere.extend(read.into_inner());
        list
    });
    let relaxed = read_relaxed(fields, relaxed_item, flat_item, |item, girth| {
        by_landmark(item, limb, |one| read_repeats(one, girth))
    });
    let layers = layers.map_or(Some(1), |one| one);
    let top_edge = edge_item.map(|item| read_edge(&item, layers.unwrap_or(1), elsewhere));
    let relaxed = relaxed?;
    let (Some((first, _)), Some((last, _))) = (relaxed.first(), relaxed.last()) else {
        fields.required(
            "relaxed",
            "at least one relaxed girth, as `relaxed: {wrist: 13.1 cm}`, or `flat_width`",
        );
        return None;
    };
    let from = from.map_or(Some(*first), |one| one)?;
    let to = to.map_or(Some(*last), |one| one)?;
    check_ends(fields, from, to, &relaxed);
    Some(Parts {
        from,
        to,
        materials,
        hand_part,
        fabric: fabric.map_or(Some(None), |one| one.map(Some))?,
        fabric_at: fabric_at.map_or(Some(Vec::new()), |one| one)?,
        layers: layers?,
        relaxed,
        top_edge: top_edge.map_or(Some(None), |one| one.map(Some))?,
    })
}

/// `relaxed` or `flat_width`, one of the two.
fn read_relaxed<'r, T>(
    fields: &Fields<'r>,
    relaxed: Option<Item<'r>>,
    flat: Option<Item<'r>>,
    value: impl Fn(&Item<'r>, fn(&Item<'r>) -> Option<Girth>) -> Option<T>,
) -> Option<T> {
    match (relaxed, flat) {
        (Some(_), Some(flat)) => {
            flat.refuse(
                "stands beside `relaxed`; a flat width is half a relaxed girth, so keep one of the two",
            );
            None
        }
        (Some(one), None) => value(&one, Item::girth),
        (None, Some(one)) => value(&one, Item::flat_width),
        (None, None) => {
            fields.required(
                "relaxed",
                "the relaxed girths, as `relaxed: {wrist: 13.1 cm}`, or `flat_width`, half of them",
            );
            None
        }
    }
}

fn read_edge(item: &Item<'_>, inherited: u32, elsewhere: &mut Vec<Problem>) -> Option<TopEdge> {
    let fields = item.fields()?;
    let (relaxed, flat) = (fields.optional("relaxed"), fields.optional("flat_width"));
    let relaxed = read_relaxed(&fields, relaxed, flat, |one, girth| read_repeats(one, girth));
    let fabric = fields.optional("fabric").map(|one| read_fabric(&one, elsewhere));
    let layers = fields.optional("layers").map(|one| one.whole(1, 10));
    fields.finish();
    Some(TopEdge {
        relaxed: relaxed?,
        fabric: fabric.map_or(Some(None), |one| one.map(Some))?,
        layers: layers.map_or(Some(inherited), |one| one)?,
    })
}

fn check_ends(fields: &Fields<'_>, from: Landmark, to: Landmark, relaxed: &[(Landmark, Relaxed)]) {
    let raise = |key: &'static str, what: String| {
        if let Some(item) = fields.optional(key) {
            item.refuse(what);
        }
    };
    if from > to {
        raise("to", format!("`{}` is not nearer the trunk than `from`, `{}`", to.name(), from.name()));
    } else if let Some(what) = (Ends { from: Some(from), to: Some(to) }).fault(relaxed) {
        let short = relaxed.iter().any(|(landmark, _)| *landmark < from);
        raise(if short { "from" } else { "to" }, what);
    }
}

fn read_together(
    item: &Item<'_>,
    limb: Limb,
    schemes: &Schemes,
    elsewhere: &mut Vec<Problem>,
) -> Option<Vec<Worn>> {
    let list = item.list()?;
    if list.len() < 2 || list.len() > MOST_PIECES {
        item.refuse(format!(
            "holds {}; two to {MOST_PIECES} pieces are worn together, as `- {{garment: sleeve.yaml}}`",
            if list.len() == 1 { "one piece".to_owned() } else { format!("{} pieces", list.len()) }
        ));
        return None;
    }
    let read: Vec<Option<Worn>> = list.iter().map(|one| read_piece(one, limb, schemes, elsewhere)).collect();
    read.into_iter().collect()
}

fn read_piece(item: &Item<'_>, limb: Limb, schemes: &Schemes, elsewhere: &mut Vec<Problem>) -> Option<Worn> {
    let fields = item.fields()?;
    let named = fields.required("garment", "a garment or wrap file, as `garment: sleeve.yaml`");
    let end = |key| fields.optional(key).map(|one| read_landmark(&one, limb));
    let (from, to) = (end("from"), end("to"));
    fields.finish();
    let named = named?;
    let name = named.text()?;
    let source = match Source::read_as(&item.reader().source().beside(&name), "a garment or wrap file") {
        Ok(source) => source,
        Err(problem) => {
            named.refuse(format!("the garment file `{}`: {}", problem.file, problem.what));
            return None;
        }
    };
    let reader = match Reader::new(source) {
        Ok(reader) => reader,
        Err(problem) => {
            elsewhere.push(problem);
            return None;
        }
    };
    let outfit = read(&reader, schemes, false, elsewhere);
    elsewhere.extend(reader.problems());
    let (outfit, _) = outfit?;
    if outfit.limb != limb {
        named.refuse(format!("`{name}` is for the {}, not the {}", outfit.limb.name(), limb.name()));
        return None;
    }
    let mut worn = outfit.pieces.into_iter().next()?;
    worn.from = from.map_or(Some(worn.from), |one| one)?;
    worn.to = to.map_or(Some(worn.to), |one| one)?;
    if worn.from > worn.to {
        item.refuse(format!(
            "`to`, {}, is not nearer the trunk than `from`, {}",
            worn.to.name(),
            worn.from.name()
        ));
        return None;
    }
    Some(worn)
}
