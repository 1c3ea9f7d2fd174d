//! Owns the keys of a pressure scheme.

use super::shared::{MAYBE_SOURCE, NEEDED_BASIS, PRESSURE, SHARE, SOURCE, UNITS, kind};
use super::{Block, Form, Key};

/// The keys of `scheme/1`; bare pressures are mmHg and bare shares are % there.
pub static SCHEME: Block = Block::of(
    "scheme",
    &[
        kind("tapeline: scheme/1"),
        Key::required("id", Form::Label, "id: our-scheme", "the scheme's short name"),
        Key::optional("label", Form::Label, "label: our scheme", "how it is printed"),
        Key::required("limb", Form::Word(&["arm", "leg", "both"]), "limb: leg", "which limbs it is for"),
        Key::optional(
            "reference",
            Form::Landmark,
            "reference: ankle",
            "the landmark that its classes refer to",
        ),
        SOURCE,
        UNITS,
        Key::required(
            "classes",
            Form::Blocks(&CLASS_BAND),
            "classes: [{class: \"2\", low: 23, high: 32, basis: published}]",
            "its classes, small to large",
        ),
        Key::optional(
            "graduation",
            Form::Blocks(&LIMIT),
            "graduation: [{class: \"2\", landmark: calf, of: ankle, low: 50, high: 80, basis: published}]",
            "its limits of the fall along the limb",
        ),
    ],
);

static CLASS_BAND: Block = Block::of(
    "class",
    &[
        Key::required("class", Form::Label, "class: \"2\"", "its name"),
        Key::optional("low", PRESSURE, "low: 23", "its lowest pressure, mmHg"),
        Key::optional("high", PRESSURE, "high: 32", "its highest pressure, mmHg"),
        Key::optional(
            "low_open",
            Form::YesNo,
            "low_open: no",
            "whether the lowest pressure itself is outside",
        ),
        Key::optional(
            "high_open",
            Form::YesNo,
            "high_open: no",
            "whether the highest pressure itself is outside",
        ),
        NEEDED_BASIS,
        MAYBE_SOURCE,
    ],
)
.one_of(&[&["low", "high"]]);

static LIMIT: Block = Block::of(
    "graduation limit",
    &[
        Key::required("class", Form::Label, "class: \"2\"", "of which class"),
        Key::required("landmark", Form::Landmark, "landmark: calf", "at which landmark"),
        Key::required("of", Form::Landmark, "of: ankle", "the landmark that the share is taken of"),
        Key::optional("low", SHARE, "low: 50", "the least share, %"),
        Key::optional("high", SHARE, "high: 80", "the greatest share, %"),
        NEEDED_BASIS,
        MAYBE_SOURCE,
    ],
)
.one_of(&[&["low", "high"]]);
