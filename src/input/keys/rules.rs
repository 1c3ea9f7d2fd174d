//! Owns the keys of a set of rules.

use super::shared::{LENGTH, NEEDED_BASIS, SOURCE, kind};
use super::{Block, Form, Key};

const LIMBS: Form = Form::Word(&["arm", "leg", "both"]);
const SEVERITY: Form = Form::Word(&["stop", "clear-first", "caution", "note"]);

/// The keys of `rules/1`.
pub static RULES: Block = Block::of(
    "rules",
    &[
        kind("tapeline: rules/1"),
        Key::required("id", Form::Label, "id: our-clinic", "the set's short name"),
        Key::optional("extends", Form::Label, "extends: default", "the shipped set that it starts from"),
        Key::required("label", Form::Label, "label: our clinic's rules", "how it is printed"),
        SOURCE,
        list("items", Form::Blocks(&ITEM), "items: []", "screening items"),
        list("arterial", Form::Blocks(&ARTERIAL), "arterial: []", "what an arterial value means"),
        list("observed", Form::Blocks(&OBSERVED), "observed: []", "questions answered by looking"),
        list("numbers", Form::Blocks(&NUMBER), "numbers: []", "single numbers"),
        list("plausible", Form::Blocks(&BAND), "plausible: []", "girths that raise no question"),
        list("ratios", Form::Blocks(&RATIO), "ratios: []", "ratios of girths that raise no question"),
        list("nearness", Form::Blocks(&NEARNESS), "nearness: []", "how girths go together"),
        list("severity_sets", Form::Blocks(&SET), "severity_sets: []", "grades of swelling"),
        list("raised", Form::Blocks(&RAISED), "raised: []", "findings of another severity"),
        Key::optional("dominance", Form::Label, "dominance: right", "kept for volumes over time"),
    ],
);

const fn list(name: &'static str, form: Form, example: &'static str, about: &'static str) -> Key {
    Key::optional(name, form, example, about)
}

const fn sentence(name: &'static str, example: &'static str, about: &'static str) -> Key {
    Key::required(name, Form::Prose, example, about)
}

static ITEM: Block = Block::of(
    "screening item",
    &[
        Key::required("id", Form::Label, "id: weak-hands", "its short name"),
        Key::required("limb", LIMBS, "limb: both", "on which limbs it is asked"),
        Key::required("group", Form::Label, "group: daily-life", "its group, or `none`"),
        Key::required("severity", SEVERITY, "severity: caution", "what its presence means"),
        Key::optional("emergency", Form::YesNo, "emergency: no", "whether it is an emergency"),
        Key::optional("postpone", Form::YesNo, "postpone: no", "whether fitting waits for it to pass"),
        Key::optional("cleared_by", Form::List(&Form::Label), "cleared_by: [physician]", "who may clear it"),
        sentence("question", "question: \"Are the hands weak?\"", "how it is asked"),
        sentence("finding", "finding: \"Weak hands are recorded.\"", "what is said of it"),
        sentence("next", "next: \"Try on with an aid.\"", "what follows"),
        NEEDED_BASIS,
        SOURCE,
    ],
);

static ARTERIAL: Block = Block::of(
    "arterial rule",
    &[
        Key::required("id", Form::Label, "id: abpi", "which value"),
        Key::optional("at_least", Form::Label, "at_least: 0.5", "from this value on"),
        Key::optional("above", Form::Label, "above: 1.3", "above this value"),
        Key::optional("below", Form::Label, "below: 0.5", "below this value"),
        Key::required("severity", SEVERITY, "severity: stop", "what it means"),
        sentence("finding", "finding: \"The index is below 0.5.\"", "what is said of it"),
        sentence("next", "next: \"Opinion of the vascular team first.\"", "what follows"),
        NEEDED_BASIS,
        SOURCE,
    ],
);

static OBSERVED: Block = Block::of(
    "observed rule",
    &[
        Key::required("key", Form::Label, "key: pitting", "the record's key under `observed`"),
        Key::required("limb", LIMBS, "limb: both", "on which limbs it is asked"),
        sentence("question", "question: \"Does a finger leave a pit?\"", "how it is asked"),
        NEEDED_BASIS,
        SOURCE,
    ],
);

static NUMBER: Block = Block::of(
    "number",
    &[
        Key::required("id", Form::Label, "id: close-margin", "the number's name"),
        Key::required("value", Form::Label, "value: 0.5 cm", "its value, with its unit"),
        NEEDED_BASIS,
        sentence("why", "why: \"one step of the tape\"", "why it is this"),
    ],
);

static BAND: Block = Block::of(
    "plausible girth",
    &[
        Key::required("landmark", Form::Landmark, "landmark: wrist", "where"),
        Key::required("low", LENGTH, "low: 12 cm", "the least girth"),
        Key::required("high", LENGTH, "high: 24 cm", "the greatest girth"),
        NEEDED_BASIS,
        SOURCE,
    ],
);

static RATIO: Block = Block::of(
    "plausible ratio",
    &[
        Key::required("of", Form::Landmark, "of: forearm", "the girth above the line"),
        Key::required("to", Form::Landmark, "to: wrist", "the girth below the line"),
        Key::required("low", Form::Number, "low: 1.2", "the least ratio"),
        Key::required("high", Form::Number, "high: 2.1", "the greatest ratio"),
        NEEDED_BASIS,
        SOURCE,
    ],
);

static NEARNESS: Block = Block::of(
    "nearness",
    &[
        Key::required("limb", Form::Word(&["arm", "leg"]), "limb: arm", "of which limb"),
        Key::required(
            "landmarks",
            Form::List(&Form::Landmark),
            "landmarks: [wrist, forearm]",
            "its landmarks",
        ),
        Key::required("mean", Form::List(&Form::Number), "mean: [2.8, 3.2]", "the mean of each"),
        Key::required(
            "cov",
            Form::List(&Form::List(&Form::Number)),
            "cov: [[1, 0], [0, 1]]",
            "their covariance",
        ),
        NEEDED_BASIS,
        SOURCE,
    ],
);

static RAISED: Block = Block::of(
    "raised finding",
    &[
        Key::required("finding", Form::Label, "finding: top-edge", "which finding"),
        Key::required("severity", SEVERITY, "severity: clear-first", "its severity here"),
        NEEDED_BASIS,
        sentence("why", "why: \"decided by our team\"", "why it is this"),
    ],
);

static SET: Block = Block::of(
    "severity set",
    &[
        Key::required("set", Form::Label, "set: by-percent", "its name"),
        Key::required(
            "of",
            Form::Word(&["excess-percent", "excess-ml", "girth-difference-cm"]),
            "of: excess-percent",
            "what it grades",
        ),
        SOURCE,
        Key::required(
            "grades",
            Form::Blocks(&GRADE),
            "grades: [{grade: mild, at_least: 5, below: 20, basis: published}]",
            "its grades",
        ),
    ],
);

static GRADE: Block = Block::of(
    "grade",
    &[
        Key::required("grade", Form::Label, "grade: mild", "its name"),
        Key::optional("at_least", Form::Number, "at_least: 5", "from this value on"),
        Key::optional("above", Form::Number, "above: 5", "above this value"),
        Key::optional("at_most", Form::Number, "at_most: 20", "up to this value"),
        Key::optional("below", Form::Number, "below: 20", "below this value"),
        NEEDED_BASIS,
    ],
);
