//! Owns the keys of a set of rules.

use super::shared::{LENGTH, NEEDED_BASIS, ROLE, SHARE, SOURCE, UNITS, kind};
use super::{Block, Form, Key};

const LIMBS: Form = Form::Word(&["arm", "leg", "both"]);
const SEVERITY: Form = Form::Word(&["stop", "clear-first", "caution", "note"]);
const URGENCY: Form = Form::Word(&["emergency", "same-day", "soon", "routine"]);
const GROUPS: Form = Form::Word(&[
    "today",
    "skin",
    "feeling",
    "cause",
    "operations",
    "heart-kidneys",
    "circulation",
    "devices",
    "daily-life",
    "changes",
    "wear",
]);

/// The keys of `rules/1`.
pub static RULES: Block = Block::of(
    "rules",
    &[
        kind("tapeline: rules/1"),
        Key::required("id", Form::Label, "id: our-clinic", "the set's short name"),
        Key::optional("extends", Form::Label, "extends: default", "the shipped set that it starts from"),
        Key::required("label", Form::Label, "label: our clinic's rules", "how it is printed"),
        SOURCE,
        UNITS,
        list("groups", Form::Blocks(&GROUP), "groups: []", "the questions, one for each group of items"),
        list("items", Form::Blocks(&ITEM), "items: []", "screening items"),
        list("findings", Form::Blocks(&FINDING), "findings: []", "who may clear a finding that is no item"),
        list("arterial", Form::Blocks(&ARTERIAL), "arterial: []", "what an arterial value means"),
        Key::optional(
            "assessment",
            Form::Block(&ASSESSMENT),
            "assessment: {by: [podiatry], basis: house rule, source: \"our team\"}",
            "who may judge the blood supply by hand and eye",
        ),
        list("observed", Form::Blocks(&OBSERVED), "observed: []", "questions answered by looking"),
        list("materials", Form::Blocks(&MATERIAL), "materials: []", "materials and the words for them"),
        list("numbers", Form::Blocks(&NUMBER), "numbers: []", "single numbers"),
        list(
            "tape_sd",
            Form::Blocks(&TAPE),
            "tape_sd: []",
            "the error of one tape value, by landmark or limb",
        ),
        list("plausible", Form::Blocks(&BAND), "plausible: []", "girths that raise no question"),
        list("ratios", Form::Blocks(&RATIO), "ratios: []", "ratios of girths that raise no question"),
        list("nearness", Form::Blocks(&NEARNESS), "nearness: []", "how girths go together"),
        list("severity_sets", Form::Blocks(&SET), "severity_sets: []", "grades of swelling"),
        list("cutoffs", Form::Blocks(&CUTOFF), "cutoffs: []", "two cut-offs of an excess"),
        list("raised", Form::Blocks(&RAISED), "raised: []", "findings of another severity"),
    ],
);

const fn list(name: &'static str, form: Form, example: &'static str, about: &'static str) -> Key {
    Key::optional(name, form, example, about)
}

const fn sentence(name: &'static str, example: &'static str, about: &'static str) -> Key {
    Key::required(name, Form::Prose, example, about)
}

const WHY: Key = Key::optional(
    "why",
    Form::Prose,
    "why: \"agreed on 2026-01-10\"",
    "the reason, needed where it is milder than the shipped rule",
);

const CLEARED_BY: Key = Key::optional(
    "cleared_by",
    Form::List(&Form::Label),
    "cleared_by: [physician]",
    "who may clear it, each role with its condition",
);

static GROUP: Block = Block::of(
    "group",
    &[
        Key::required("id", GROUPS, "id: skin", "which group"),
        sentence("question", "question: \"What did I see on the skin?\"", "how it is asked"),
        Key::required("per_side", Form::YesNo, "per_side: yes", "whether each side is asked for itself"),
        Key::required("valid", Form::Label, "valid: 3 months", "how long an answer holds"),
        Key::optional("caution", Form::Label, "caution: 2 months", "from what age an answer is a caution"),
        NEEDED_BASIS,
        SOURCE,
        WHY,
    ],
);

static ITEM: Block = Block::of(
    "screening item",
    &[
        Key::required("id", Form::Label, "id: weak-hands", "its short name"),
        Key::required("limb", LIMBS, "limb: both", "on which limbs it is asked"),
        Key::optional("group", GROUPS, "group: daily-life", "its group"),
        Key::optional(
            "answered_by",
            Form::Word(&["screening", "cause", "age-band"]),
            "answered_by: screening",
            "which part of the record answers it",
        ),
        sentence("condition", "condition: \"weak or stiff hands\"", "what may be there"),
        Key::optional("help", Form::Prose, "help: \"try to lift a full cup\"", "what is meant"),
        Key::required("severity", SEVERITY, "severity: caution", "what its presence means"),
        Key::optional(
            "otherwise",
            Form::Blocks(&OTHERWISE),
            "otherwise: [{limb: leg, severity: clear-first}]",
            "where it means something else",
        ),
        Key::optional("urgency", URGENCY, "urgency: routine", "how soon somebody has to act"),
        Key::optional("postpone", Form::YesNo, "postpone: no", "whether fitting waits for it to pass"),
        Key::optional("family", Form::Label, "family: heart", "items of one family are said together"),
        CLEARED_BY,
        sentence("finding", "finding: \"Weak hands are recorded.\"", "what is said of it"),
        sentence("next", "next: \"Try on with an aid.\"", "what follows"),
        NEEDED_BASIS,
        SOURCE,
        WHY,
    ],
);

static OTHERWISE: Block = Block::of(
    "otherwise",
    &[
        Key::optional("limb", LIMBS, "limb: leg", "on which limbs"),
        Key::optional(
            "when",
            Form::Word(&["always", "cause-known", "toe-sound-no-foot-wound"]),
            "when: cause-known",
            "under which condition",
        ),
        Key::required("severity", SEVERITY, "severity: clear-first", "what it means there"),
    ],
);

static FINDING: Block = Block::of(
    "finding",
    &[Key::required("finding", Form::Label, "finding: between", "which finding"), CLEARED_BY, WHY],
);

static ASSESSMENT: Block = Block::of(
    "assessment",
    &[
        Key::optional("by", Form::List(&ROLE), "by: [podiatry]", "whose judgement counts"),
        CLEARED_BY,
        NEEDED_BASIS,
        SOURCE,
        WHY,
    ],
);

static MATERIAL: Block = Block::of(
    "material",
    &[
        Key::required("word", Form::Label, "word: latex", "its name"),
        Key::required(
            "kind",
            Form::Word(&["material", "other-thing", "open", "nothing"]),
            "kind: material",
            "whether it is a material, another thing, an open answer or none",
        ),
        Key::optional(
            "synonyms",
            Form::List(&Form::Label),
            "synonyms: [natural rubber]",
            "other words for it",
        ),
        Key::optional("covers", Form::List(&Form::Label), "covers: [rubber]", "materials that it is part of"),
    ],
);

static CUTOFF: Block = Block::of(
    "cut-off",
    &[
        Key::required("limb", Form::Word(&["arm", "leg"]), "limb: arm", "of which limb"),
        Key::optional("dominant", Form::YesNo, "dominant: yes", "of the dominant side or the other"),
        Key::required("moderate", SHARE, "moderate: 6 %", "the first cut-off"),
        Key::required("severe", SHARE, "severe: 20 %", "the second cut-off"),
        NEEDED_BASIS,
        SOURCE,
    ],
);

static ARTERIAL: Block = Block::of(
    "arterial rule",
    &[
        Key::required(
            "id",
            Form::Word(&["abpi", "ankle-pressure", "toe-pressure", "toe-brachial", "tcpo2"]),
            "id: abpi",
            "which value",
        ),
        Key::optional("at_least", Form::Label, "at_least: 0.5", "from this value on"),
        Key::optional("above", Form::Label, "above: 1.3", "above this value"),
        Key::optional("at_most", Form::Label, "at_most: 0.5", "up to this value"),
        Key::optional("below", Form::Label, "below: 0.5", "below this value"),
        Key::optional(
            "when",
            Form::Word(&["always", "diabetes-or-kidneys", "not-decided-at-toe"]),
            "when: always",
            "under which condition",
        ),
        Key::required("severity", SEVERITY, "severity: stop", "what it means"),
        CLEARED_BY,
        sentence("finding", "finding: \"The index is below 0.5.\"", "what is said of it"),
        sentence("next", "next: \"Opinion of the vascular team first.\"", "what follows"),
        NEEDED_BASIS,
        SOURCE,
        WHY,
    ],
)
.one_of(&[&["at_least", "above", "at_most", "below"]]);

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

static TAPE: Block = Block::of(
    "tape error",
    &[
        Key::optional("landmark", Form::Landmark, "landmark: wrist", "where"),
        Key::optional("limb", LIMBS, "limb: arm", "or at every mark of a limb, serial marks too"),
        Key::optional("sd", LENGTH, "sd: 0.25 cm", "SD of one tape value"),
        Key::optional("share", SHARE, "share: 1.5 %", "or as a share of the girth"),
        Key::optional("least", LENGTH, "least: 0.25 cm", "with a share, the least SD"),
        Key::optional("most", LENGTH, "most: 0.45 cm", "with a share, the greatest SD"),
        NEEDED_BASIS,
        sentence("why", "why: \"our own repeats, 2026\"", "why it is this"),
    ],
)
.one_of(&[&["landmark", "limb"], &["sd", "share"]])
.not_both(&[("sd", "share")]);

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
        Key::required("limb", LIMBS, "limb: arm", "on which limbs"),
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
