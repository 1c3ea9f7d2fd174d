//! Owns the keys of a fabric.

use super::shared::{BASIS, LENGTH, SHARE, UNITS, kind};
use super::{Block, Form, Key};
use crate::quantity::Dimension;

/// The keys of `fabric/1`.
pub static FABRIC: Block = Block::of(
    "fabric",
    &[
        kind("tapeline: fabric/1"),
        Key::required("label", Form::Label, "label: knit R2", "the fabric's label, as it is printed")
            .also(&["name", "title"]),
        Key::optional("basis", BASIS, "basis: user-supplied", "what the curve rests on"),
        Key::optional("note", Form::Prose, "note: bench test of 2026-02-01", "a remark"),
        Key::optional("tension_sd", SHARE, "tension_sd: 5 %", "the standard deviation of the tension"),
        Key::optional(
            "relaxed_sd",
            LENGTH,
            "relaxed_sd: 0.3 cm",
            "the standard deviation of a relaxed girth",
        ),
        Key::optional(
            "exponent",
            Form::Either(&Form::Number, &Form::Block(&EXPONENT)),
            "exponent: 1.05",
            "how the tension grows with the stretch where no curve is known",
        ),
        Key::optional(
            "strip",
            Form::Block(&STRIP),
            "strip: {relaxed: 20 cm, pulls: [{weight: 500 g, length: 27.1 cm}, {weight: 200 g, length: 23.2 cm}]}",
            "two pulls on a strip, the heaviest weight first, in place of the exponent",
        ),
        Key::optional(
            "branch",
            Form::Word(&["return", "loading"]),
            "branch: return",
            "whether lengths were read while the weights came off or went on",
        ),
        UNITS,
        Key::optional(
            "curve",
            Form::Blocks(&POINT),
            "curve: [{stretch: 0 %, tension: 0 N/m}, {stretch: 20 %, tension: 62 N/m}]",
            "its points, from 0 % up: one layer, return branch, per unit worn width",
        ),
        Key::optional(
            "bench",
            Form::Block(&BENCH),
            "bench: {kind: strip, width: 5 cm, relaxed: 20 cm, pulls: [{weight: 200 g, length: 23.1 cm}]}",
            "a test with weights, in place of the curve",
        ),
    ],
)
.one_of(&[&["curve", "bench", "exponent", "strip"]])
.not_both(&[("curve", "bench"), ("exponent", "strip")]);

static EXPONENT: Block = Block::of(
    "exponent",
    &[
        Key::required("value", Form::Number, "value: 1.05", "the exponent"),
        Key::optional("sd", Form::Number, "sd: 0.05", "its standard deviation"),
    ],
);

static STRIP: Block = Block::of(
    "strip",
    &[
        Key::required("relaxed", LENGTH, "relaxed: 20 cm", "its length without a weight"),
        Key::required(
            "pulls",
            Form::Blocks(&PULL),
            "pulls: [{weight: 500 g, length: 27.1 cm}, {weight: 200 g, length: 23.2 cm}]",
            "two weights, the heaviest hung first, each with its length",
        ),
    ],
);

static POINT: Block = Block::of(
    "point",
    &[
        Key::required("stretch", SHARE, "stretch: 20 %", "the stretch"),
        Key::required("tension", Form::Quantity(Dimension::Tension), "tension: 62 N/m", "the tension at it"),
    ],
);

static BENCH: Block = Block::of(
    "bench test",
    &[
        Key::required(
            "kind",
            Form::Word(&["strip", "loop"]),
            "kind: strip",
            "how the piece hung: a strip, or a loop over two bars",
        ),
        Key::required("width", LENGTH, "width: 5 cm", "the piece's width"),
        Key::required("relaxed", LENGTH, "relaxed: 20 cm", "its length without a weight"),
        Key::required(
            "pulls",
            Form::Blocks(&PULL),
            "pulls: [{weight: 200 g, length: [23.1 cm, 23.3 cm]}]",
            "the weights, the heaviest hung first, with the length under each as they come off",
        ),
        Key::optional(
            "loading",
            Form::Blocks(&PULL),
            "loading: [{weight: 200 g, length: 22.8 cm}]",
            "the same while the weights went on, where both were read",
        ),
    ],
);

static PULL: Block = Block::of(
    "pull",
    &[
        Key::optional(
            "weight",
            Form::Quantity(Dimension::Mass),
            "weight: 200 g",
            "the weight that hung from it",
        ),
        Key::optional(
            "force",
            Form::Quantity(Dimension::Force),
            "force: 2 N",
            "the pull, in place of a weight",
        ),
        Key::required(
            "length",
            Form::OneOrMore(&LENGTH),
            "length: 23.1 cm",
            "the length under it; a list is repeats",
        ),
    ],
)
.one_of(&[&["weight", "force"]])
.not_both(&[("weight", "force")]);
