//! Owns the keys of a record.

use super::shared::{LENGTH, PRESSURE, ROLE, UNITS, kind};
use super::{Block, Form, Key};
use crate::quantity::Dimension;

/// The keys of `record/1`.
pub static RECORD: Block = Block::of(
    "record",
    &[
        kind("tapeline: record/1"),
        Key::required("client", Form::Label, "client: L-0417", "the clinic's reference code, never a name")
            .also(&["name", "patient", "id"]),
        Key::required("measured_on", Form::DateTime, "measured_on: 2026-03-14", "the day of the measurement")
            .also(&["measured", "date", "on"]),
        Key::optional("measured_by", Form::Label, "measured_by: M2", "who measured, as initials or a code")
            .also(&["by"]),
        Key::optional("age_band", Form::Word(&["adult", "child"]), "age_band: adult", "adult or child")
            .also(&["age"]),
        UNITS,
        Key::required("limb", Form::Limb, "limb: left arm", "which limb was measured: side and limb"),
        Key::required(
            "affected",
            Form::Word(&["left", "right", "both", "none"]),
            "affected: left",
            "which side is affected by the swelling",
        ),
        Key::optional(
            "cause",
            Form::Block(&CAUSE),
            "cause: {known: yes, by: physician}",
            "whether the cause of the swelling is known, and who said so",
        ),
        Key::optional(
            "posture",
            Form::Label,
            "posture: seated, arm supported, palm down",
            "how the limb was held while it was measured",
        ),
        Key::required(
            "positions_from",
            Form::Word(&["wrist", "styloid", "fingertip", "heel", "floor"]),
            "positions_from: wrist",
            "the zero of `at`; positions rise from there toward the trunk",
        )
        .also(&["origin", "from"]),
        MARKS,
        OTHER_LIMB,
        side("left", "left: {marks: [{landmark: wrist, at: 0 cm, girth: 16.9 cm}]}"),
        side("right", "right: {marks: [{landmark: wrist, at: 0 cm, girth: 16.9 cm}]}"),
        LENGTHS_KEY,
        OBSERVED_KEY,
        PRESCRIBED_KEY,
        SCREENING_KEY,
        ARTERIAL_KEY,
        Key::optional(
            "allergies",
            Form::Either(&Form::Word(&["none", "unknown", "not asked"]), &Form::List(&Form::Label)),
            "allergies: none",
            "materials that the client does not bear; `none` when asked and there is none; an empty list says nothing",
        )
        .or_blank()
        .also(&["allergy"]),
        CONFIRMED,
        CLEARED_KEY,
        READINGS,
        GARMENTS,
        INFECTIONS,
        Key::optional(
            "dominance",
            Form::Word(&["left", "right", "both"]),
            "dominance: right",
            "the hand that is used more",
        )
        .also(&["dominant_side", "handedness"]),
        Key::optional("baseline", Form::YesNo, "baseline: no", "whether it was measured before treatment"),
        Key::optional(
            "shown",
            Form::List(&Form::Label),
            "shown: [simple-lymphatic-drainage]",
            "what the client was shown to do at home",
        )
        .or_blank()
        .also(&["taught"]),
        Key::optional("weight", Form::Quantity(Dimension::Mass), "weight: 71 kg", "body weight"),
        Key::optional(
            "volume_method",
            Form::Word(&["frustum", "disc"]),
            "volume_method: frustum",
            "how the volume is worked out from the girths",
        ),
    ],
)
.one_of(&[&["marks", "left", "right"]])
.not_both(&[("marks", "left"), ("marks", "right"), ("other_limb", "left"), ("observed", "left")]);

const MARKS: Key = Key::optional(
    "marks",
    Form::Blocks(&MARK),
    "marks: [{landmark: wrist, at: 0 cm, girth: 16.9 cm}]",
    "the measured marks, in any order",
)
.also(&["girths", "measurements"]);

const OTHER_LIMB: Key = Key::optional(
    "other_limb",
    Form::Block(&OTHER),
    "other_limb: {marks: [{landmark: wrist, at: 0 cm, girth: 15.8 cm}]}",
    "the marks of the other side, at the same positions",
)
.also(&["other_side", "contralateral"]);

const LENGTHS_KEY: Key = Key::optional(
    "lengths",
    Form::ByName(&LENGTH),
    "lengths: {wrist to axilla: 41.5 cm}",
    "lengths along the limb, from the positions where absent",
)
.also(&["length"])
.or_blank();

const OBSERVED_KEY: Key = Key::optional(
    "observed",
    Form::Block(&OBSERVED),
    "observed: {pitting: none, folds: no, distortion: no, hand_swelling: no, swelling_beyond: no}",
    "what was seen on the limb",
)
.or_blank();

const PRESCRIBED_KEY: Key = Key::optional(
    "prescribed",
    Form::Block(&PRESCRIBED),
    "prescribed: {scheme: ral-gz-387-2, class: \"2\", style: sleeve, by: consultant}",
    "what was prescribed, by class or by range",
)
.also(&["prescription"]);

const SCREENING_KEY: Key = Key::optional(
    "screening",
    Form::Block(&SCREENING),
    "screening: {asked_on: 2026-03-14, by: M2, absent: [today, skin, feeling]}",
    "the answers to the screening questions, as groups or single items",
)
.or_blank();

const ARTERIAL_KEY: Key = Key::optional(
    "arterial",
    Form::Block(&ARTERIAL),
    "arterial: {taken_on: 2026-03-10, abpi: 1.04}",
    "what is known of the arteries of a leg",
)
.or_blank();

const CONFIRMED: Key = Key::optional(
    "confirmed",
    Form::List(&Form::Label),
    "confirmed: [wrist]",
    "landmarks or questions that were looked at again and hold",
)
.or_blank();

const CLEARED_KEY: Key = Key::optional(
    "cleared",
    Form::Blocks(&CLEARED),
    "cleared: [{item: feeling-reduced, role: physician, reason: seen and agreed, cleared_on: 2026-03-14}]",
    "what someone of a named role has cleared or refused",
)
.or_blank();

const READINGS: Key = Key::optional(
    "readings",
    Form::Blocks(&READING),
    "readings: [{landmark: wrist, pressure: 24 mmHg, posture: supine}]",
    "what a pressure sensor read under a garment",
)
.or_blank();

const GARMENTS: Key = Key::optional(
    "garments",
    Form::Blocks(&GIVEN),
    "garments: [{label: sleeve chart A, size: \"3\", given_on: 2026-03-20}]",
    "garments that the client was given",
)
.or_blank();

const INFECTIONS: Key = Key::optional(
    "infections",
    Form::List(&Form::Date),
    "infections: [2025-11-02]",
    "the days of infections of this limb",
)
.or_blank();

const fn side(name: &'static str, example: &'static str) -> Key {
    Key::optional(
        name,
        Form::Block(&SIDE),
        example,
        "what belongs to this side, under `limb: both arms` or `both legs`",
    )
}

static SIDE: Block = Block::of(
    "side",
    &[
        MARKS,
        LENGTHS_KEY,
        OBSERVED_KEY,
        PRESCRIBED_KEY,
        SCREENING_KEY,
        ARTERIAL_KEY,
        CONFIRMED,
        CLEARED_KEY,
        READINGS,
        GARMENTS,
        INFECTIONS,
    ],
);

static OTHER: Block = Block::of(
    "other limb",
    &[Key::required(
        "marks",
        Form::Blocks(&MARK),
        "marks: [{landmark: wrist, at: 0 cm, girth: 15.8 cm}]",
        "the marks of the other side",
    )],
);

static MARK: Block = Block::of(
    "mark",
    &[
        Key::optional("landmark", Form::Landmark, "landmark: wrist", "where it is; absent for a serial mark")
            .also(&["place", "point", "name"]),
        Key::required("at", LENGTH, "at: 14 cm", "its distance along the limb")
            .also(&["position", "distance"]),
        Key::required(
            "girth",
            Form::OneOrMore(&LENGTH),
            "girth: 25.6 cm",
            "the tape value; a list, as `[25.6 cm, 25.8 cm]`, is repeats of one girth",
        )
        .also(&["circumference", "tape", "again"]),
        Key::optional(
            "calipers",
            Form::Block(&CALIPERS),
            "calipers: {wide: 9 cm, deep: 7 cm}",
            "two diameters where the limb is not round",
        ),
    ],
);

static CALIPERS: Block = Block::of(
    "calipers",
    &[
        Key::required("wide", LENGTH, "wide: 9 cm", "the widest diameter"),
        Key::required("deep", LENGTH, "deep: 7 cm", "the diameter across it"),
    ],
);

static CAUSE: Block = Block::of(
    "cause",
    &[
        Key::optional("known", Form::YesNoUnknown, "known: yes", "whether the cause is known").or_blank(),
        Key::optional(
            "note",
            Form::Prose,
            "note: after breast cancer treatment",
            "what it is, in a few words",
        )
        .or_blank(),
        Key::optional("by", ROLE, "by: physician", "who established it").or_blank(),
    ],
);

static OBSERVED: Block = Block::of(
    "observed",
    &[
        Key::optional(
            "pitting",
            Form::Word(&["none", "minor", "strong", "unknown"]),
            "pitting: none",
            "whether a finger leaves a pit",
        )
        .or_blank(),
        Key::optional("folds", Form::YesNoUnknown, "folds: no", "whether the skin lies in folds").or_blank(),
        Key::optional(
            "distortion",
            Form::YesNoUnknown,
            "distortion: no",
            "whether the limb has lost its shape",
        )
        .or_blank(),
        Key::optional(
            "hand_swelling",
            Form::YesNoUnknown,
            "hand_swelling: no",
            "whether the hand is swollen (arms)",
        )
        .or_blank(),
        Key::optional(
            "foot_swelling",
            Form::YesNoUnknown,
            "foot_swelling: no",
            "whether the foot is swollen (legs)",
        )
        .or_blank(),
        Key::optional(
            "swelling_beyond",
            Form::YesNoUnknown,
            "swelling_beyond: no",
            "whether there is swelling beyond the limb's root",
        )
        .or_blank(),
    ],
);

static PRESCRIBED: Block = Block::of(
    "prescribed",
    &[
        Key::optional("scheme", Form::Label, "scheme: ral-gz-387-2", "the pressure scheme of the class"),
        Key::optional("class", Form::Label, "class: \"2\"", "the class, in the words of its scheme"),
        Key::optional(
            "range",
            Form::Range(Dimension::Pressure),
            "range: 20-25 mmHg",
            "the pressure at the wrist or ankle, in place of scheme and class",
        ),
        Key::optional("style", Form::Label, "style: sleeve", "what kind of garment"),
        Key::optional("by", Form::Label, "by: consultant", "who prescribed it"),
    ],
)
.not_both(&[("scheme", "range"), ("class", "range")]);

static SCREENING: Block = Block::of(
    "screening",
    &[
        Key::optional("asked_on", Form::Date, "asked_on: 2026-03-14", "the day the questions were asked")
            .or_blank(),
        Key::optional("by", Form::Label, "by: M2", "who asked").or_blank(),
        Key::optional(
            "unchanged_since",
            Form::Date,
            "unchanged_since: 2026-03-14",
            "at a re-order: the day of the full screening that still holds",
        )
        .or_blank(),
        Key::optional(
            "absent",
            Form::List(&Form::Label),
            "absent: [today, skin, feeling]",
            "groups or items that were asked about and are not there",
        )
        .or_blank()
        .also(&["no"]),
        Key::optional("present", Form::List(&Form::Label), "present: [weak-hands]", "items that are there")
            .or_blank()
            .also(&["yes"]),
        Key::optional("unknown", Form::List(&Form::Label), "unknown: []", "items asked about and not known")
            .or_blank(),
        Key::optional(
            "asked",
            Form::ByName(&Form::Date),
            "asked: {today: 2026-03-20}",
            "the day of a group or item that was asked on a day of its own",
        )
        .or_blank(),
    ],
);

static ARTERIAL: Block = Block::of(
    "arterial",
    &[
        Key::optional("taken_on", Form::Date, "taken_on: 2026-03-10", "the day the values were taken")
            .or_blank()
            .also(&["on"]),
        Key::optional(
            "abpi",
            Form::Either(&Form::Number, &Form::Word(&["not-compressible"])),
            "abpi: 1.04",
            "the ankle-brachial pressure index, or `not-compressible`",
        )
        .or_blank()
        .also(&["abi"]),
        Key::optional(
            "ankle_systolic",
            PRESSURE,
            "ankle_systolic: 128 mmHg",
            "the systolic pressure at the ankle",
        )
        .or_blank(),
        Key::optional(
            "brachial_systolic",
            PRESSURE,
            "brachial_systolic: 124 mmHg",
            "the systolic pressure at the arm",
        )
        .or_blank(),
        Key::optional("toe", PRESSURE, "toe: 80 mmHg", "the systolic pressure at the big toe").or_blank(),
        Key::optional("toe_brachial", Form::Number, "toe_brachial: 0.72", "the toe-brachial pressure index")
            .or_blank()
            .also(&["tbi", "tbpi"]),
        Key::optional("tcpo2", PRESSURE, "tcpo2: 45 mmHg", "oxygen pressure through the skin").or_blank(),
        Key::optional(
            "clinical",
            Form::Word(&["adequate", "doubtful", "inadequate"]),
            "clinical: adequate",
            "the clinical judgement of the blood supply",
        )
        .or_blank(),
        Key::optional("clinical_by", ROLE, "clinical_by: podiatry", "the role of the one who judged it")
            .or_blank(),
        Key::optional(
            "clinical_found",
            Form::Prose,
            "clinical_found: both foot pulses felt",
            "what was found",
        )
        .or_blank(),
        Key::optional(
            "cap",
            Form::Label,
            "cap: 20 mmHg",
            "the most pressure agreed, as a pressure or `class 1 of SCHEME`",
        )
        .or_blank(),
    ],
);

static CLEARED: Block = Block::of(
    "cleared",
    &[
        Key::required("item", Form::Label, "item: feeling-reduced", "what was cleared, by its id"),
        Key::required("role", ROLE, "role: physician", "the role of the one who decided"),
        Key::optional(
            "decision",
            Form::Word(&["cleared", "refused"]),
            "decision: cleared",
            "cleared or refused",
        ),
        Key::required("reason", Form::Prose, "reason: seen and agreed", "why, in a few words"),
        Key::required("cleared_on", Form::Date, "cleared_on: 2026-03-14", "the day of the decision")
            .also(&["on"]),
        Key::optional("until", Form::Date, "until: 2026-09-14", "the last day it holds"),
        Key::optional("by", Form::Label, "by: protocol 7", "the protocol it follows"),
        Key::optional(
            "cap",
            Form::Label,
            "cap: 20 mmHg",
            "the most pressure agreed, as a pressure or `class 1 of SCHEME`",
        ),
        Key::optional("referred_on", Form::Date, "referred_on: 2026-03-14", "the day of the referral"),
    ],
);

static READING: Block = Block::of(
    "reading",
    &[
        Key::required("landmark", Form::Landmark, "landmark: wrist", "where the sensor lay"),
        Key::required("pressure", PRESSURE, "pressure: 24 mmHg", "what it read"),
        Key::optional("sensor_side", Form::Label, "sensor_side: palm", "on which side of the limb"),
        Key::optional("posture", Form::Label, "posture: supine", "how the client lay or stood"),
        Key::optional("minutes_worn", Form::Number, "minutes_worn: 20", "how long the garment had been worn"),
        Key::optional("sd", PRESSURE, "sd: 2.5 mmHg", "the standard deviation of the sensor"),
        Key::optional(
            "garment",
            Form::Label,
            "garment: \"sleeve chart A, size 3\"",
            "which garment, where several are asked about",
        ),
    ],
);

static GIVEN: Block = Block::of(
    "garment given",
    &[
        Key::required("label", Form::Label, "label: sleeve chart A", "the garment's or chart's label"),
        Key::optional("size", Form::Label, "size: \"3\"", "its size"),
        Key::required("given_on", Form::Date, "given_on: 2026-03-20", "the day it was given"),
        Key::optional("quantity", Form::Whole(1, 20), "quantity: 2", "how many"),
        Key::optional("hours_a_day", Form::Number, "hours_a_day: 12", "how long it is worn"),
    ],
);
