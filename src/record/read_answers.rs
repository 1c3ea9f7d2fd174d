//! Owns the reading of answers: what was seen, screening, cause, allergies, confirmations, clearings.

use super::read_pressure::read_cap;
use super::{
    Allergies, ByProtocol, Cause, ClearDecision, Cleared, Confirmable, Observed, Pitting, Screening,
};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Item, Named, YesNo};
use crate::rules::Role;

/// The block `observed` of one limb.
pub(super) fn read_observed(item: &Item<'_>, limb: Limb) -> Option<Observed> {
    let fields = item.fields()?;
    let read = |key| fields.blank_or(key).and_then(|one| one.yes_no_unknown());
    let (extremity, other, other_limb) = match limb {
        Limb::Arm => ("hand_swelling", "foot_swelling", "a leg"),
        Limb::Leg => ("foot_swelling", "hand_swelling", "an arm"),
    };
    if let Some(item) = fields.optional(other) {
        item.refuse(format!("is asked of {other_limb}; write `{extremity}`"));
    }
    let observed = Observed {
        pitting: fields.blank_or("pitting").and_then(|one| read_pitting(&one)),
        folds: read("folds"),
        distortion: read("distortion"),
        extremity_swelling: read(extremity),
        swelling_beyond: read("swelling_beyond"),
    };
    fields.finish();
    Some(observed)
}

/// How the skin keeps a dent. `no` is none; `yes` does not say how much.
fn read_pitting(item: &Item<'_>) -> Option<Pitting> {
    let text = item.text()?;
    match text.as_str() {
        "no" | "false" => Some(Pitting::None),
        "yes" | "true" => {
            item.refuse(format!("`{text}` does not say how much; write `none`, `minor` or `strong`"));
            None
        }
        _ => item.word(&Pitting::WORDS),
    }
}

/// The block `cause`.
pub(super) fn read_cause(item: &Item<'_>) -> Option<Cause> {
    let fields = item.fields()?;
    let cause = Cause {
        known: fields.blank_or("known").and_then(|one| one.yes_no_unknown()),
        note: fields.blank_or("note").and_then(|one| one.label()),
        by: fields.blank_or("by").and_then(|one| one.word(&Role::WORDS)),
    };
    fields.finish();
    Some(cause)
}

/// A block `screening`.
pub(super) fn read_screening(item: &Item<'_>) -> Option<Screening> {
    let fields = item.fields()?;
    let names = |key| fields.blank_or(key).and_then(|one| one.names()).unwrap_or_default();
    let block = Screening {
        asked_on: fields.blank_or("asked_on").and_then(|one| one.date()),
        by: fields.blank_or("by").and_then(|one| one.label()),
        unchanged_since: fields
            .blank_or("unchanged_since")
            .and_then(|one| one.date().map(|date| (date, one.spot()))),
        absent: names("absent"),
        present: names("present"),
        unknown: names("unknown"),
        asked: fields.blank_or("asked").and_then(|one| read_asked(&one)).unwrap_or_default(),
    };
    fields.finish();
    Some(block)
}

/// Groups with a date of their own.
fn read_asked(item: &Item<'_>) -> Option<Vec<(Named, jiff::civil::Date)>> {
    let fields = item.fields()?;
    Some(
        fields
            .each()
            .filter_map(|(text, spot, value)| value.date().map(|date| (Named { text, spot }, date)))
            .collect(),
    )
}

/// Materials; `none` when asked and there is none. An empty list says nothing, and neither does `unknown`
/// or `not asked`: the question stays open. A word that answers the question is no material.
pub(super) fn read_allergies(item: &Item<'_>) -> Option<Allergies> {
    if !item.is_list() {
        if item.is_block() {
            item.refuse_kind("write a list, as `[latex]`, or `none` when asked and there is none");
            return None;
        }
        let text = item.text()?;
        if text == "none" {
            return Some(Allergies::None);
        }
        if says_nothing(&text) {
            return Some(Allergies::NotAsked);
        }
        item.refuse(match text.as_str() {
            "no" | "false" => format!("`{text}` is no list; write `none` when asked and there is none"),
            "yes" | "true" => format!("`{text}` names no material; name the materials, as `[latex]`"),
            _ => format!("`{text}` is no list; write `[{text}]`, or `none` when asked and there is none"),
        });
        return None;
    }
    let names = item.names()?;
    if names.is_empty() {
        return Some(Allergies::NotAsked);
    }
    let mut whole = true;
    for one in &names {
        let word = one.text.to_lowercase();
        let what = match word.as_str() {
            "none" | "no" | "nil" | "false" if names.len() == 1 => {
                format!("`{}` is no material; write `allergies: none` when there is none", one.text)
            }
            "none" | "no" | "nil" | "yes" | "true" | "false" => {
                format!("`{}` is no material; keep the materials alone", one.text)
            }
            _ => continue,
        };
        whole = false;
        item.reader().raise(one.spot, item.field_name(), what);
    }
    if !whole {
        return None;
    }
    Some(Allergies::Some(names))
}

/// Whether a single word leaves the question open.
fn says_nothing(text: &str) -> bool {
    const WORDS: [&str; 4] = ["unknown", "not known", "not asked", "not answered"];
    let text = text.trim().to_lowercase().replace(['-', '_'], " ");
    WORDS.contains(&text.as_str())
}

/// Questions answered by their word.
pub(super) fn read_confirmed(item: &Item<'_>, limb: Limb) -> Option<Vec<Named>> {
    let names = item.names()?;
    for one in &names {
        if Confirmable::parse(limb, &one.text).is_none() {
            let landmarks = Landmark::of(limb).iter().map(|one| one.name());
            let words = Confirmable::WORDS.iter().map(|(word, _)| *word);
            let accepted: Vec<&str> = words.chain(landmarks).collect();
            let what = match crate::input::nearest_word(&one.text, accepted.iter().copied()) {
                Some(near) => format!("`{}` answers no question; did you mean `{near}`?", one.text),
                None => format!("`{}` answers no question; accepted: {}", one.text, accepted.join(", ")),
            };
            item.reader().raise(one.spot, item.field_name(), what);
        }
    }
    Some(names)
}

/// One entry of `cleared`.
pub(super) fn read_cleared(item: &Item<'_>, limb: Limb) -> Option<Cleared> {
    let fields = item.fields()?;
    let name =
        fields.required("item", "what is cleared, as `item: feeling-reduced`").and_then(|one| one.named());
    let role = fields
        .required("role", "who cleared it, as `role: physician`")
        .and_then(|one| one.word(&Role::WORDS));
    let decision = fields.optional("decision").map(|one| one.word(&ClearDecision::WORDS));
    let reason = fields.required("reason", "why, in a few words").and_then(|one| one.label());
    let cleared_on =
        fields.required("cleared_on", "the date, as `cleared_on: 2026-03-14`").and_then(|one| one.date());
    let until = fields.optional("until").and_then(|one| one.date());
    let by_protocol = fields.optional("by").and_then(|one| {
        let text = one.label()?;
        if text.split_whitespace().next() == Some("protocol") {
            let named = text.split_whitespace().nth(1).is_some();
            return Some(if named { ByProtocol::Named(text) } else { ByProtocol::Unnamed });
        }
        one.refuse(format!("`{text}` names no protocol; write `by: protocol` and its name, or take the key out; who it was stands in `role`"));
        None
    });
    let cap = fields.optional("cap").and_then(|one| read_cap(&one, limb));
    let referred_on = fields.optional("referred_on").and_then(|one| one.date());
    fields.finish();
    Some(Cleared {
        item: name?,
        role: role?,
        decision: decision.unwrap_or(Some(ClearDecision::Cleared))?,
        reason: reason?,
        cleared_on: cleared_on?,
        until,
        by_protocol,
        cap,
        referred_on,
        spot: item.spot(),
    })
}

impl Confirmable {
    /// The words beside landmarks that `confirmed` takes.
    pub const WORDS: [(&'static str, Self); 6] = [
        ("affected", Self::Affected),
        ("thinner", Self::Thinner),
        ("lengths", Self::Lengths),
        ("positions", Self::Positions),
        ("arterial", Self::Arterial),
        ("client", Self::Client),
    ];

    /// Reads a word of `confirmed`.
    pub fn parse(limb: Limb, text: &str) -> Option<Self> {
        let text = text.trim();
        let word = Self::WORDS.iter().find(|(word, _)| *word == text).map(|(_, one)| *one);
        word.or_else(|| Landmark::parse(limb, text).map(Self::Mark))
    }

    /// The word that answers the question.
    pub fn word(self) -> &'static str {
        match self {
            Self::Mark(landmark) => landmark.name(),
            other => Self::WORDS.iter().find(|(_, one)| *one == other).map_or("", |(word, _)| word),
        }
    }
}

impl Pitting {
    /// The words that files and reports use.
    pub const WORDS: [(&'static str, Self); 4] =
        [("none", Self::None), ("minor", Self::Minor), ("strong", Self::Strong), ("unknown", Self::Unknown)];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, one)| *one == self).map_or("", |(word, _)| word)
    }

    /// Whether the skin pits; the strongest answer counts.
    pub fn is_some(self) -> YesNo {
        match self {
            Self::None => YesNo::No,
            Self::Minor | Self::Strong => YesNo::Yes,
            Self::Unknown => YesNo::Unknown,
        }
    }
}

impl ClearDecision {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 2] = [("cleared", Self::Cleared), ("refused", Self::Refused)];
}
