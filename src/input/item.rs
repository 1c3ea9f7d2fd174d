//! Owns the reading of one value: text, word, number with unit, date, list, block. Each reader
//! gives none after it has raised the problem.

use jiff::civil::Date;

use super::keys::{Form, Key};
use super::suggest::nearest_word;
use super::text::{TextFault, is_refused};
use super::{Fields, Kind, Named, Node, Reader, Spot, Text};
use crate::anatomy::{Landmark, Limb};
use crate::quantity::{
    Dimension, Girth, Position, QuantityFault, Range, RangeFault, Span, Step, Written, read_quantity,
    read_range,
};

/// Words that are listed beside a suggestion as well; a longer list hides it.
const SHORT_LIST: usize = 8;

/// What is said of a key without a value.
pub(super) const NO_VALUE: &str = "has no value behind it; fill it in or take the key out";

/// An answer in three states; a missing answer is not one of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum YesNo {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Asked, and not known.
    Unknown,
}

/// One value with its place.
#[derive(Clone)]
pub struct Item<'r> {
    pub(super) reader: &'r Reader,
    node: &'r Node,
    pub(super) field: String,
    /// What may stand here, where the file's keys say it.
    form: Option<Form>,
    /// The key that it stands behind, for one correct line to copy.
    key: Option<&'static Key>,
}

impl<'r> Item<'r> {
    pub(super) fn new(reader: &'r Reader, node: &'r Node, field: String) -> Self {
        Self { reader, node, field, form: None, key: None }
    }

    /// The same value with what is known of its key.
    pub(super) fn under(self, key: Option<&'static Key>) -> Self {
        Self { form: key.map(|key| key.form), key, ..self }
    }

    /// The same value with what may stand here.
    pub(super) fn of_form(self, form: Option<Form>) -> Self {
        Self { form, ..self }
    }

    /// One correct line to copy, as the end of a sentence, where one is known.
    fn as_line(&self) -> String {
        self.key.map_or(String::new(), |key| format!("; as `{}`", key.example))
    }

    /// Where it stands.
    pub fn spot(&self) -> Spot {
        self.node.spot
    }

    /// The words for where it stands, as problems print them.
    pub fn field_name(&self) -> &str {
        &self.field
    }

    /// The file's reader.
    pub fn reader(&self) -> &'r Reader {
        self.reader
    }

    pub(super) fn child_field(&self, key: &str) -> String {
        if self.field.is_empty() { key.to_owned() } else { format!("{}, {key}", self.field) }
    }

    /// Notes a problem of this value.
    pub fn refuse(&self, what: impl Into<String>) {
        self.reader.raise(self.spot(), self.field.clone(), what);
    }

    /// Notes that it is of the wrong kind: nothing, a single value, a list or a block.
    pub fn refuse_kind(&self, wanted: &str) {
        match self.node.kind {
            Kind::Empty => self.refuse(NO_VALUE),
            _ => self.refuse(format!("holds {}; {wanted}{}", self.node.word(), self.as_line())),
        }
    }

    /// Whether it is a list.
    pub fn is_list(&self) -> bool {
        matches!(self.node.kind, Kind::List(_))
    }

    /// Whether it is a single value.
    pub fn is_single(&self) -> bool {
        matches!(self.node.kind, Kind::Text(_))
    }

    /// Whether it is a block of keys.
    pub fn is_block(&self) -> bool {
        matches!(self.node.kind, Kind::Map(_))
    }

    /// A single value as written, without a word where it is none.
    pub fn plain(&self) -> Option<String> {
        match &self.node.kind {
            Kind::Text(text) => Some(text.trim().to_owned()),
            _ => None,
        }
    }

    /// A non-empty text as written, without what no text holds: control characters, line breaks, what turns the
    /// direction of writing.
    pub fn text(&self) -> Option<String> {
        match &self.node.kind {
            Kind::Text(text) if text.trim().is_empty() => {
                self.refuse("is empty; fill it in or take the key out");
                None
            }
            Kind::Text(text) => {
                let text = text.trim();
                if let Some(c) = text.chars().find(|c| is_refused(*c)) {
                    self.refuse(format!("`{text}` {}", TextFault::Character(c)));
                    return None;
                }
                Some(text.to_owned())
            }
            _ => {
                self.refuse_kind("a single value is wanted");
                None
            }
        }
    }

    /// A label: one line of text that is fit to be printed anywhere, at most 120 columns.
    pub fn label(&self) -> Option<Text> {
        let text = self.text()?;
        match Text::new(&text) {
            Ok(text) => Some(text),
            Err(fault) => {
                self.refuse(format!("`{text}` {fault}"));
                None
            }
        }
    }

    /// A list of labels.
    pub fn labels(&self) -> Option<Vec<Text>> {
        Some(self.list()?.iter().filter_map(Item::label).collect())
    }

    /// A text with its place.
    pub fn named(&self) -> Option<Named> {
        self.label().map(|text| Named { text: text.as_str().to_owned(), spot: self.spot() })
    }

    /// One word of a closed list.
    pub fn word<T: Copy>(&self, words: &[(&str, T)]) -> Option<T> {
        let text = self.text()?;
        if let Some((_, value)) = words.iter().find(|(word, _)| *word == text) {
            return Some(*value);
        }
        let accepted = words.iter().map(|(word, _)| *word).collect::<Vec<_>>().join(", ");
        match nearest_word(&text, words.iter().map(|(word, _)| *word)) {
            Some(near) if words.len() > SHORT_LIST => {
                self.refuse(format!("`{text}` is not known; did you mean `{near}`?"));
            }
            Some(near) => {
                self.refuse(format!("`{text}` is not known; did you mean `{near}`? accepted: {accepted}"));
            }
            None => self.refuse(format!("`{text}` is not known; accepted: {accepted}")),
        }
        None
    }

    /// A landmark of either limb, by its word.
    pub fn landmark(&self) -> Option<Landmark> {
        let text = self.text()?;
        let found = Landmark::parse_word(&text);
        if found.is_none() {
            let names = || [Limb::Arm, Limb::Leg].into_iter().flat_map(Landmark::of).map(|one| one.name());
            match nearest_word(&text, names()) {
                Some(near) => self.refuse(format!("`{text}` is no landmark; did you mean `{near}`?")),
                None => self.refuse(format!(
                    "`{text}` is no landmark; accepted: {}",
                    names().collect::<Vec<_>>().join(", ")
                )),
            }
        }
        found
    }

    /// `yes` or `no`; `true` and `false`, which some programs write for them, are taken.
    pub fn yes_no(&self) -> Option<bool> {
        match self.boolean() {
            Some(boolean) => Some(boolean),
            None => self.word(&[("yes", true), ("no", false)]),
        }
    }

    /// A truth value as programs write it.
    fn boolean(&self) -> Option<bool> {
        match &self.node.kind {
            Kind::Text(text) => match text.trim() {
                "true" | "True" | "TRUE" => Some(true),
                "false" | "False" | "FALSE" => Some(false),
                _ => None,
            },
            _ => None,
        }
    }

    /// `yes`, `no` or `unknown`.
    pub fn yes_no_unknown(&self) -> Option<YesNo> {
        match self.boolean() {
            Some(true) => return Some(YesNo::Yes),
            Some(false) => return Some(YesNo::No),
            None => {}
        }
        self.word(&[("yes", YesNo::Yes), ("no", YesNo::No), ("unknown", YesNo::Unknown)])
    }

    /// A number with its unit.
    pub fn quantity(&self, wanted: Dimension) -> Option<Written> {
        let text = self.text()?;
        match read_quantity(&text, wanted, self.reader.units()) {
            Ok(written) => Some(written),
            // The block that should declare the unit is wrong, and that has been told.
            Err(QuantityFault::NoUnit(_)) if self.reader.units_in_doubt() => None,
            // It is told in its own figures what to write.
            Err(fault @ (QuantityFault::Fraction(_) | QuantityFault::InchSign(_))) => {
                self.refuse(format!("`{text}` {fault}"));
                None
            }
            Err(fault) => {
                self.refuse(format!("`{text}` {fault}{}", self.as_line()));
                None
            }
        }
    }

    /// A quantity of at least zero, in SI.
    pub fn not_negative(&self, wanted: Dimension) -> Option<f64> {
        let written = self.quantity(wanted)?;
        if written.number.is_negative() {
            self.refuse(format!("`{}` is below zero", written.number));
            return None;
        }
        Some(written.si())
    }

    /// A bare number without unit.
    pub fn number(&self) -> Option<f64> {
        let text = self.text()?;
        crate::quantity::Decimal::parse(&text)
            .map_err(|fault| self.refuse(format!("`{text}` {fault}")))
            .ok()
            .map(crate::quantity::Decimal::to_f64)
    }

    /// A whole number from `least` to `most`.
    pub fn whole(&self, least: u32, most: u32) -> Option<u32> {
        let text = self.text()?;
        let found = text.parse::<u32>().ok().filter(|number| (least..=most).contains(number));
        if found.is_none() {
            self.refuse(format!("`{text}` is no whole number from {least} to {most}"));
        }
        found
    }

    /// A girth: above zero, at most 2,000 cm.
    pub fn girth(&self) -> Option<Girth> {
        self.length_called("girth", Girth::MOST_TENTHS)
    }

    /// A length that is held like a girth and is called `noun`: above zero, at most `most` tenths of a
    /// millimetre.
    pub fn length_called(&self, noun: &str, most: i64) -> Option<Girth> {
        let written = self.quantity(Dimension::Length)?;
        let tenths = written.tenth_millimetres().filter(|tenths| *tenths <= most);
        let girth = tenths.and_then(Girth::from_tenths);
        if girth.is_none() {
            self.refuse(format!(
                "a {noun} of `{} {}` is not above 0 and at most {} cm; check number and unit",
                written.number,
                written.unit.symbol(),
                most / 100
            ));
        }
        girth
    }

    /// The step that a chart's lengths are printed in: above zero, at most `most` tenths of a millimetre.
    pub fn step(&self, most: i64) -> Option<Step> {
        let written = self.quantity(Dimension::Length)?;
        let step = Step::of(written, most);
        if step.is_none() {
            self.refuse(format!(
                "a step of `{} {}` is not above 0 and at most {} cm; check number and unit",
                written.number,
                written.unit.symbol(),
                most / 100
            ));
        }
        step
    }

    /// A flat width, as the girth that is twice it.
    pub fn flat_width(&self) -> Option<Girth> {
        let written = self.quantity(Dimension::Length)?;
        let girth = written.tenth_millimetres().and_then(|_| {
            let factor = written.unit.tenth_millimetres()?.checked_mul(2)?;
            let tenths = written.number.times_to_nearest(factor)?;
            Girth::from_tenths(tenths).filter(|_| tenths <= Girth::UNASKED_TENTHS)
        });
        if girth.is_none() {
            self.refuse(format!(
                "a flat width of `{} {}` is not above 0 and at most 100 cm; check number and unit",
                written.number,
                written.unit.symbol()
            ));
        }
        girth
    }

    /// A position along the limb.
    pub fn position(&self) -> Option<Position> {
        let written = self.quantity(Dimension::Length)?;
        let position = written.tenth_millimetres().and_then(Position::from_tenths);
        if position.is_none() {
            self.refuse(format!(
                "a position of `{} {}` is not between -100 and 200 cm; check number and unit",
                written.number,
                written.unit.symbol()
            ));
        }
        position
    }

    /// A length along the limb.
    pub fn span(&self) -> Option<Span> {
        let written = self.quantity(Dimension::Length)?;
        let span = written.tenth_millimetres().and_then(Span::from_tenths);
        if span.is_none() {
            self.refuse(format!(
                "a length of `{} {}` is not above 0 and at most 200 cm; check number and unit",
                written.number,
                written.unit.symbol()
            ));
        }
        span
    }

    /// A range of lengths.
    pub fn range(&self) -> Option<Range> {
        let text = self.text()?;
        match read_range(&text, self.reader.units()) {
            Ok(range) => Some(range),
            Err(RangeFault::End(_, QuantityFault::NoUnit(_))) if self.reader.units_in_doubt() => None,
            Err(fault) => {
                self.refuse(format!("`{text}` {fault}{}", self.as_line()));
                None
            }
        }
    }

    /// A date as `2026-03-14`.
    pub fn date(&self) -> Option<Date> {
        let text = self.text()?;
        let date = read_date(&text);
        if date.is_none() {
            self.refuse(format!("`{text}` is no date; write year-month-day, as `2026-03-14`"));
        }
        date
    }

    /// A date, with a local time or without, as `2026-03-14` or `2026-03-14T09:30`.
    pub fn date_and_time(&self) -> Option<(Date, Option<String>)> {
        let text = self.text()?;
        let (date, time) =
            text.split_once(['T', ' ']).map_or((text.as_str(), None), |(date, time)| (date, Some(time)));
        // Local time, without a zone.
        let is_plain = |time: &str| time.chars().all(|c| c.is_ascii_digit() || matches!(c, ':' | '.'));
        let time_holds = time.is_none_or(|time| is_plain(time) && time.parse::<jiff::civil::Time>().is_ok());
        let Some(date) = read_date(date).filter(|_| time_holds) else {
            self.refuse(format!("`{text}` is no date; write `2026-03-14` or `2026-03-14T09:30`"));
            return None;
        };
        Some((date, time.map(str::to_owned)))
    }

    /// The values of a list; a single value stands for a list of one where `single` is set.
    pub fn list(&self) -> Option<Vec<Item<'r>>> {
        let Kind::List(nodes) = &self.node.kind else {
            self.refuse_kind(if self.key.is_some() {
                "a list is wanted"
            } else {
                "a list is wanted, as `[one, two]`"
            });
            return None;
        };
        let items = nodes.iter().enumerate();
        let form = self.form.and_then(|form| form.item());
        Some(
            items
                .map(|(number, node)| {
                    Item::new(self.reader, node, self.child_field(&format!("item {}", number + 1)))
                        .of_form(form)
                })
                .collect(),
        )
    }

    /// The keys of a block.
    pub fn fields(&self) -> Option<Fields<'r>> {
        let Kind::Map(entries) = &self.node.kind else {
            self.refuse_kind("a block of keys is wanted");
            return None;
        };
        let block = self.form.and_then(|form| form.block());
        let named = self.form.and_then(|form| form.named().copied());
        Some(Fields::new(self.clone(), entries, block, named))
    }

    /// A list of words with their places.
    pub fn names(&self) -> Option<Vec<Named>> {
        Some(self.list()?.iter().filter_map(Item::named).collect())
    }
}

fn read_date(text: &str) -> Option<Date> {
    let shape = text.len() == 10
        && text
            .chars()
            .enumerate()
            .all(|(at, c)| if at == 4 || at == 7 { c == '-' } else { c.is_ascii_digit() });
    if shape { text.parse().ok() } else { None }
}
