//! Owns the keys that several kinds of file share.

use super::{Block, Form, Key};
use crate::quantity::Dimension;

/// `arm` or `leg`.
pub(super) const LIMB: Form = Form::Word(&["arm", "leg"]);

/// What a value rests on.
pub(super) const BASIS: Form = Form::Word(&[
    "published",
    "secondary",
    "memory",
    "derived",
    "common practice",
    "house rule",
    "invented",
    "user-supplied",
]);

/// Who may clear or decide something.
pub(super) const ROLE: Form = Form::Word(&[
    "physician",
    "vascular",
    "cardiology",
    "renal",
    "oncology",
    "surgery",
    "podiatry",
    "palliative",
    "therapist",
    "fitter",
    "prescriber",
]);

/// A length.
pub(super) const LENGTH: Form = Form::Quantity(Dimension::Length);
/// A range of lengths.
pub(super) const LENGTHS: Form = Form::Range(Dimension::Length);
/// A pressure.
pub(super) const PRESSURE: Form = Form::Quantity(Dimension::Pressure);
/// A share in per cent.
pub(super) const SHARE: Form = Form::Quantity(Dimension::Ratio);

/// The first key of every file.
pub(super) const fn kind(example: &'static str) -> Key {
    Key::required("tapeline", Form::Kind, example, "the kind of the file, always its first key")
}

/// The block of declared units.
pub(super) const UNITS: Key = Key::optional(
    "units",
    Form::Block(&UNIT_BLOCK),
    "units: {length: cm, pressure: mmHg}",
    "the units of this file's bare numbers",
);

static UNIT_BLOCK: Block = Block::of(
    "units",
    &[
        unit("length", &["cm", "mm", "m", "in"], "length: cm"),
        unit("pressure", &["mmHg", "hPa", "kPa", "Pa"], "pressure: mmHg"),
        unit("tension", &["N/m", "N/cm", "cN/cm", "gf/cm"], "tension: N/m"),
        unit("force", &["N", "kgf"], "force: N"),
        unit("mass", &["kg", "g", "lb"], "mass: kg"),
        unit("ratio", &["%"], "ratio: \"%\""),
        unit("volume", &["mL", "L"], "volume: mL"),
    ],
);

const fn unit(name: &'static str, words: &'static [&'static str], example: &'static str) -> Key {
    Key::optional(name, Form::Word(words), example, "the unit of bare numbers of this dimension")
}

/// Relaxed girths, or flat widths, by landmark; a list is repeats.
pub(super) const RELAXED: Key = Key::optional(
    "relaxed",
    Form::ByLandmark(&Form::OneOrMore(&LENGTH)),
    "relaxed: {wrist: 13.1 cm, forearm: 19.4 cm}",
    "the girths of the unstretched garment at its landmarks",
);

/// Flat widths by landmark.
pub(super) const FLAT_WIDTH: Key = Key::optional(
    "flat_width",
    Form::ByLandmark(&Form::OneOrMore(&LENGTH)),
    "flat_width: {wrist: 6.5 cm, forearm: 9.7 cm}",
    "the widths of the garment laid flat, half its relaxed girths; a list is repeats",
)
.also(&["width", "widths", "flat_widths"]);

/// The materials of a garment.
pub(super) const MATERIALS: Key = Key::optional(
    "materials",
    Form::List(&Form::Label),
    "materials: [elastane, polyamide]",
    "what the garment is made of; absent where it is not known",
)
.also(&["contains", "material"]);

/// Whether a garment has a hand or foot part.
pub(super) const HAND_PART: Key = Key::optional(
    "hand_part",
    Form::YesNoUnknown,
    "hand_part: no",
    "whether the garment covers the hand or the foot",
)
.also(&["foot_part", "glove", "gauntlet"]);

/// The fabric file of a garment or chart.
pub(super) const FABRIC_FILE: Key =
    Key::optional("fabric", Form::File, "fabric: knit-r2.yaml", "the file with the fabric's tension curve")
        .also(&["knit"]);

/// Layers of a fabric.
pub(super) const LAYERS: Key =
    Key::optional("layers", Form::Whole(1, 10), "layers: 1", "how many layers of the fabric lie on the limb");

/// The scheme of a class.
pub(super) const SCHEME_ID: Key = Key::optional(
    "scheme",
    Form::Label,
    "scheme: ral-gz-387-2",
    "the pressure scheme that the class belongs to",
);

/// A compression class.
pub(super) const CLASS: Key =
    Key::optional("class", Form::Label, "class: \"2\"", "the class claimed, in the words of its scheme");

/// A style of garment.
pub(super) const STYLE: Key =
    Key::optional("style", Form::Label, "style: sleeve", "what kind of garment it is, in a word or two");

/// Where a value was read.
pub(super) const SOURCE: Key =
    Key::required("source", Form::Prose, "source: \"Rabe 2020, Phlebology 35:447\"", "where it was read");

/// Where a value was read, where it may be absent.
pub(super) const MAYBE_SOURCE: Key =
    Key::optional("source", Form::Prose, "source: \"RAL-GZ 387/1\"", "where it was read");

/// What a value rests on.
pub(super) const NEEDED_BASIS: Key = Key::required("basis", BASIS, "basis: published", "what it rests on");
