//! Owns the keys of a garment and of a wrap.

use super::shared::{
    CLASS, FABRIC_FILE, FLAT_WIDTH, HAND_PART, LAYERS, LENGTH, LIMB, MATERIALS, RELAXED, SCHEME_ID, SHARE,
    STYLE, UNITS, kind,
};
use super::{Block, Form, Key};
use crate::quantity::Dimension;

/// The keys of `garment/1`.
pub static GARMENT: Block = Block::of(
    "garment",
    &[
        kind("tapeline: garment/1"),
        Key::required("label", Form::Label, "label: sleeve 1", "the garment's label, as it is printed")
            .also(&["name", "title"]),
        Key::required("limb", LIMB, "limb: arm", "arm or leg"),
        STYLE,
        Key::optional("from", Form::Landmark, "from: wrist", "its end away from the trunk"),
        Key::optional("to", Form::Landmark, "to: axilla", "its end toward the trunk"),
        SCHEME_ID,
        CLASS,
        MATERIALS,
        HAND_PART,
        FABRIC_FILE,
        Key::optional(
            "fabric_at",
            Form::ByLandmark(&Form::File),
            "fabric_at: {wrist: knit-r3.yaml}",
            "the fabric file at a landmark where it is another",
        ),
        LAYERS,
        UNITS,
        RELAXED,
        FLAT_WIDTH,
        Key::optional(
            "top_edge",
            Form::Block(&TOP_EDGE),
            "top_edge: {relaxed: 24 cm}",
            "the band at its upper end, where it is known",
        ),
        Key::optional(
            "worn_together",
            Form::Blocks(&PIECE),
            "worn_together: [{garment: sleeve.yaml}, {garment: hand.yaml, from: hand, to: wrist}]",
            "the garments or wraps that are worn one over another or side by side",
        ),
    ],
)
.one_of(&[&["relaxed", "flat_width", "worn_together"]])
.not_both(&[("relaxed", "flat_width")]);

static TOP_EDGE: Block = Block::of(
    "top edge",
    &[
        Key::optional("relaxed", Form::OneOrMore(&LENGTH), "relaxed: 24 cm", "its relaxed girth"),
        Key::optional(
            "flat_width",
            Form::OneOrMore(&LENGTH),
            "flat_width: 12 cm",
            "its flat width, half of it",
        ),
        FABRIC_FILE,
        LAYERS,
    ],
)
.one_of(&[&["relaxed", "flat_width"]])
.not_both(&[("relaxed", "flat_width")]);

static PIECE: Block = Block::of(
    "piece",
    &[
        Key::required("garment", Form::File, "garment: sleeve.yaml", "a garment or wrap file")
            .also(&["wrap", "file"]),
        Key::optional("from", Form::Landmark, "from: hand", "where it starts, if not where the file says"),
        Key::optional("to", Form::Landmark, "to: wrist", "where it ends, if not where the file says"),
    ],
);

/// The keys of `wrap/1`.
pub static WRAP: Block = Block::of(
    "wrap",
    &[
        kind("tapeline: wrap/1"),
        Key::optional("label", Form::Label, "label: calf wrap", "the wrap's label, as it is printed"),
        Key::optional("limb", LIMB, "limb: leg", "arm or leg; needed where landmarks are letters"),
        Key::required(
            "tension",
            Form::Quantity(Dimension::Force),
            "tension: 0.5 kgf",
            "the pull on the strip",
        )
        .also(&["pull", "force"]),
        Key::optional("tension_sd", SHARE, "tension_sd: 20 %", "how much the pull varies from turn to turn"),
        Key::required("width", LENGTH, "width: 10 cm", "the strip's width"),
        Key::optional("overlap", SHARE, "overlap: 50 %", "how far each turn covers the one before"),
        Key::optional("layers", Form::Number, "layers: 2", "layers at one place, in place of the overlap"),
        Key::optional("thickness", LENGTH, "thickness: 1 mm", "the strip's thickness"),
        MATERIALS,
        UNITS,
        Key::required("from", Form::Landmark, "from: ankle", "where it starts"),
        Key::required("to", Form::Landmark, "to: below-knee", "where it ends"),
    ],
)
.one_of(&[&["overlap", "layers"]])
.not_both(&[("overlap", "layers")]);
