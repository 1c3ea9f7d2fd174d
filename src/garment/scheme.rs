//! Owns one pressure scheme and its reading.

use super::class_band::place_of;
use super::read_claim::read_label;
use super::{ClassBand, ClassPlace, GraduationLimit};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Item, Reader};
use crate::quantity::{Dimension, PASCAL_PER_MMHG, Unit, Units};
use crate::rules::{Basis, Limbs};

/// A pressure scheme: classes, and limits of the fall along the limb where the scheme has any.
#[derive(Clone, Debug)]
pub struct Scheme {
    /// Its id.
    pub id: String,
    /// How it is printed.
    pub label: String,
    /// For which limbs.
    pub limbs: Limbs,
    /// The landmark that the classes refer to; none = the limb's reference.
    pub reference: Option<Landmark>,
    /// Where it was read.
    pub source: String,
    /// Its classes, small to large.
    pub classes: Vec<ClassBand>,
    /// Its graduation limits.
    pub graduation: Vec<GraduationLimit>,
}

impl Scheme {
    /// A class by name.
    pub fn class(&self, name: &str) -> Option<&ClassBand> {
        self.classes.iter().find(|class| class.class == name)
    }

    /// Where a pressure, unrounded mmHg, lies among the classes.
    pub fn place_of(&self, mmhg: f64, claimed: Option<&str>) -> Option<ClassPlace> {
        place_of(&self.classes, mmhg, claimed)
    }

    /// The limit of a landmark for a class.
    pub fn limit(&self, class: &str, landmark: Landmark) -> Option<&GraduationLimit> {
        self.graduation.iter().find(|limit| limit.class == class && limit.landmark == landmark)
    }

    /// That it has no such class, and which it has; `II`, `CCL2` or `class 2` is asked about where there is a class 2.
    pub fn no_such_class(&self, text: &str) -> String {
        let meant = meant_class(text).filter(|class| self.class(class).is_some());
        let names: Vec<String> = self.classes.iter().map(|one| format!("`{}`", one.class)).collect();
        let then = meant.map_or_else(
            || format!("its classes: {}", names.join(", ")),
            |class| format!("did you mean `{class}`? write it as the scheme does"),
        );
        format!("`{text}` is no class of {}; {then}", self.id)
    }

    /// Reads a scheme file. Bare pressures are mmHg and bare shares %, by the format itself.
    pub(super) fn read(reader: &Reader) -> Option<Self> {
        let fields = reader.fields("scheme/1")?;
        let units = reader.units();
        let units = if units.of(Dimension::Pressure).is_none() { units.with(Unit::MmHg) } else { units };
        reader.set_default_units(Units::with(units, Unit::Percent));
        let limbs = fields.required("limb", "arm, leg or both").and_then(|one| {
            one.word(&[
                ("arm", Limbs::Only(Limb::Arm)),
                ("leg", Limbs::Only(Limb::Leg)),
                ("both", Limbs::Both),
            ])
        });
        let id = fields.required("id", "the scheme's short name").and_then(|one| read_text(&one));
        let label = fields.optional("label").and_then(|one| read_text(&one));
        let reference = fields.optional("reference").and_then(|one| read_landmark(&one, limbs));
        let source = fields.required("source", "where the values were read").and_then(|one| one.text());
        let classes = fields
            .required("classes", "at least one class, small to large")
            .and_then(|one| read_classes(&one))
            .unwrap_or_default();
        let graduation = fields.optional("graduation").and_then(|one| one.list()).unwrap_or_default();
        let graduation = graduation.iter().filter_map(|one| read_limit(one, &classes, limbs)).collect();
        fields.finish();
        let id = id?;
        Some(Self {
            label: label.unwrap_or_else(|| id.clone()),
            id,
            limbs: limbs?,
            reference,
            source: source?,
            classes,
            graduation,
        })
    }
}

/// The number of a class as it is often written: in Roman figures, or with its kind before it.
fn meant_class(text: &str) -> Option<String> {
    let lower = text.trim().trim_end_matches('.').to_lowercase();
    let kinds = ["class", "klasse", "ccl", "kkl"];
    let bare = kinds.iter().find_map(|kind| lower.strip_prefix(kind)).unwrap_or(&lower).trim();
    let romans = ["i", "ii", "iii", "iv"];
    match romans.iter().position(|one| *one == bare) {
        Some(at) => Some((at + 1).to_string()),
        None => (bare != lower).then(|| bare.to_owned()),
    }
}

/// A label, as plain text.
fn read_text(item: &Item<'_>) -> Option<String> {
    read_label(item).map(|text| text.to_string())
}

fn read_landmark(item: &Item<'_>, limbs: Option<Limbs>) -> Option<Landmark> {
    let landmark = item.landmark()?;
    let holds = limbs.is_none_or(|limbs| limbs.include(landmark.limb()));
    if !holds {
        item.refuse(format!(
            "`{}` is a landmark of the {}, but the scheme is not for it",
            landmark.name(),
            landmark.limb().name()
        ));
    }
    holds.then_some(landmark)
}

fn read_classes(item: &Item<'_>) -> Option<Vec<ClassBand>> {
    let list = item.list()?;
    if list.is_empty() {
        item.refuse(
            "holds no class; add at least one, as `- {class: \"1\", low: 15, high: 21, basis: published}`",
        );
    }
    let mut classes: Vec<ClassBand> = Vec::new();
    for one in &list {
        let Some(class) = read_class(one) else { continue };
        if classes.iter().any(|other| other.class == class.class) {
            one.refuse(format!("the class `{}` stands twice; give each class its own name", class.class));
        } else if let Some(before) = classes.last()
            && class.low.zip(before.low).is_some_and(|(low, below)| low < below)
        {
            one.refuse(format!(
                "the class `{}` lies below the class `{}` before it; write the classes from small to large",
                class.class, before.class
            ));
        }
        classes.push(class);
    }
    Some(classes)
}

fn read_class(item: &Item<'_>) -> Option<ClassBand> {
    let fields = item.fields()?;
    let mmhg = |key| {
        fields
            .optional(key)
            .and_then(|one| one.not_negative(Dimension::Pressure))
            .map(|pascal| pascal / PASCAL_PER_MMHG)
    };
    let open = |key| fields.optional(key).and_then(|one| one.yes_no()).unwrap_or(false);
    let class = fields.required("class", "its name").and_then(|one| read_text(&one));
    let (low, high, low_open, high_open) = (mmhg("low"), mmhg("high"), open("low_open"), open("high_open"));
    let basis = fields
        .required("basis", "what it rests on, as `basis: published`")
        .and_then(|one| one.word(&Basis::WORDS));
    let source = fields.optional("source").and_then(|one| one.text());
    fields.finish();
    if let (Some(low), Some(high)) = (low, high)
        && low > high
    {
        item.refuse("`low` is above `high`; write the smaller first");
    } else if !fields.has("low") && !fields.has("high") {
        item.refuse("states no pressure; give `low`, `high` or both, as `low: 23 mmHg`");
    }
    Some(ClassBand {
        class: class?,
        low,
        high,
        low_open,
        high_open,
        basis: basis?,
        source: source.unwrap_or_default(),
    })
}

fn read_limit(item: &Item<'_>, classes: &[ClassBand], limbs: Option<Limbs>) -> Option<GraduationLimit> {
    let fields = item.fields()?;
    let share = |key| {
        fields.optional(key).and_then(|one| one.not_negative(Dimension::Ratio)).map(|share| share * 100.0)
    };
    let class = fields.required("class", "a class of this scheme").and_then(|one| {
        let name = one.text()?;
        let known = classes.iter().any(|class| class.class == name);
        if !known {
            one.refuse(format!("`{name}` is no class of this scheme"));
        }
        known.then_some(name)
    });
    let landmark = fields.required("landmark", "where").and_then(|one| read_landmark(&one, limbs));
    let of = fields.required("of", "of which landmark's pressure").and_then(|one| read_landmark(&one, limbs));
    let (low, high) = (share("low"), share("high"));
    if let (Some(low), Some(high)) = (low, high)
        && low > high
    {
        item.refuse("`low` is above `high`; write the smaller first");
    } else if !fields.has("low") && !fields.has("high") {
        item.refuse("states no share; give `low`, `high` or both, as `low: 50 %`");
    }
    let basis = fields
        .required("basis", "what it rests on, as `basis: published`")
        .and_then(|one| one.word(&Basis::WORDS));
    let source = fields.optional("source").and_then(|one| one.text());
    fields.finish();
    Some(GraduationLimit {
        class: class?,
        landmark: landmark?,
        of: of?,
        low,
        high,
        basis: basis?,
        source: source.unwrap_or_default(),
    })
}
