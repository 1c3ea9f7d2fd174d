//! Owns the keys of a size chart.

use super::shared::{
    CLASS, FABRIC_FILE, FLAT_WIDTH, HAND_PART, LAYERS, LENGTH, LENGTHS, LIMB, MATERIALS, RELAXED, SCHEME_ID,
    STYLE, UNITS, kind,
};
use super::{Block, Form, Key};

/// The keys of `chart/1`.
pub static CHART: Block = Block::of(
    "chart",
    &[
        kind("tapeline: chart/1"),
        Key::required("label", Form::Label, "label: sleeve chart A", "the chart's label, as it is printed")
            .also(&["name", "title"]),
        Key::required("limb", LIMB, "limb: arm", "arm or leg"),
        STYLE,
        Key::optional("from", Form::Landmark, "from: wrist", "the garment's end away from the trunk"),
        Key::optional("to", Form::Landmark, "to: axilla", "the garment's end toward the trunk"),
        SCHEME_ID,
        CLASS,
        MATERIALS,
        HAND_PART,
        FABRIC_FILE,
        LAYERS,
        Key::optional(
            "between_sizes",
            Form::Word(&["smaller", "larger", "fitter"]),
            "between_sizes: fitter",
            "which of two sizes is taken where both would do",
        ),
        Key::optional(
            "printed_step",
            LENGTH,
            "printed_step: 0.1 cm",
            "the step in which the chart's girths are printed",
        ),
        UNITS,
        Key::optional(
            "sizes",
            Form::Blocks(&SIZE),
            "sizes: [{size: \"3\", girths: {wrist: 16-18 cm}}]",
            "the sizes, small to large",
        ),
        Key::optional(
            "sizes_from",
            Form::File,
            "sizes_from: leaflet.csv",
            "a table with the sizes, in place of `sizes`: .csv, .xlsx or .ods",
        ),
    ],
)
.one_of(&[&["sizes", "sizes_from"]])
.not_both(&[("sizes", "sizes_from")]);

static SIZE: Block = Block::of(
    "size",
    &[
        Key::required("size", Form::Label, "size: \"3\"", "the size's label").also(&["label", "name"]),
        Key::required(
            "girths",
            Form::ByLandmark(&LENGTHS),
            "girths: {wrist: 16-18 cm, forearm: 24-27 cm}",
            "the girths that the size is made for",
        )
        .also(&["ranges", "girth", "circumferences"]),
        RELAXED,
        FLAT_WIDTH,
        Key::optional(
            "lengths",
            Form::Blocks(&VARIANT),
            "lengths: [{variant: regular, wrist to axilla: 40-44 cm}]",
            "the lengths that the size is made in",
        )
        .also(&["length", "variants"]),
    ],
)
.not_both(&[("relaxed", "flat_width")]);

static VARIANT: Block = Block {
    name: "variant",
    keys: &[Key::optional("variant", Form::Label, "variant: regular", "the name of this length")],
    open: Some(LENGTHS),
    one_needed: &[],
    not_both: &[],
};
