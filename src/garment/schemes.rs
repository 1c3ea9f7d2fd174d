//! Owns the known pressure schemes: the user's first, then those inside the program, each read
//! only when it is asked for.

use super::Scheme;
use crate::anatomy::Limb;
use crate::input::{Named, Problem, Reader, Source, nearest_word};

/// The schemes inside the program: id and table, as JSON.
pub const SHIPPED_SCHEMES: [(&str, &str); 8] = [
    ("ral-gz-387-1", include_str!(concat!(env!("OUT_DIR"), "/ral-gz-387-1.json"))),
    ("ral-gz-387-2", include_str!(concat!(env!("OUT_DIR"), "/ral-gz-387-2.json"))),
    ("env-12718", include_str!(concat!(env!("OUT_DIR"), "/env-12718.json"))),
    ("bs-6612", include_str!(concat!(env!("OUT_DIR"), "/bs-6612.json"))),
    ("nf-g30-102", include_str!(concat!(env!("OUT_DIR"), "/nf-g30-102.json"))),
    ("us-customary", include_str!(concat!(env!("OUT_DIR"), "/us-customary.json"))),
    ("au-guideline", include_str!(concat!(env!("OUT_DIR"), "/au-guideline.json"))),
    ("icc-2006", include_str!(concat!(env!("OUT_DIR"), "/icc-2006.json"))),
];

/// The known schemes.
#[derive(Clone, Debug, Default)]
pub struct Schemes {
    own: Vec<Scheme>,
}

impl Schemes {
    /// The schemes of the user's files, which go before shipped ones of the same id.
    ///
    /// # Errors
    /// Every problem of the files.
    pub fn with_files(sources: Vec<Source>) -> Result<Self, Vec<Problem>> {
        let mut own = Vec::new();
        let mut problems = Vec::new();
        for source in sources {
            match read(Reader::new(source)) {
                Ok(scheme) => own.push(scheme),
                Err(found) => problems.extend(found),
            }
        }
        if problems.is_empty() { Ok(Self { own }) } else { Err(problems) }
    }

    /// A scheme by id.
    pub fn find(&self, id: &str) -> Option<Scheme> {
        let own = self.own.iter().find(|scheme| scheme.id == id).cloned();
        own.or_else(|| {
            let (id, text) = SHIPPED_SCHEMES.iter().find(|(shipped, _)| *shipped == id)?;
            let source = Source::of_text(format!("shipped scheme {id}"), *text);
            read(Reader::shipped(source)).ok()
        })
    }

    /// The ids known.
    pub fn ids(&self) -> Vec<&str> {
        let mut ids: Vec<&str> = self.own.iter().map(|scheme| scheme.id.as_str()).collect();
        ids.extend(
            SHIPPED_SCHEMES.iter().map(|(id, _)| *id).filter(|id| !self.own.iter().any(|own| own.id == *id)),
        );
        ids
    }

    /// The scheme that a file claims, held against the limb and the class; none after the problem
    /// has been raised.
    pub fn claimed(
        &self,
        reader: &Reader,
        field: &str,
        scheme: &Named,
        class: &Named,
        limb: Limb,
    ) -> Option<Scheme> {
        let under = |key: &str| if field.is_empty() { key.to_owned() } else { format!("{field}, {key}") };
        let Some(found) = self.find(&scheme.text) else {
            let ids = self.ids();
            let what = match nearest_word(&scheme.text, ids.iter().copied()) {
                Some(near) => format!("the scheme `{}` is not known; did you mean `{near}`?", scheme.text),
                None => format!(
                    "the scheme `{}` is not known; known: {}; add your own with `--scheme-file FILE`",
                    scheme.text,
                    ids.join(", ")
                ),
            };
            reader.raise(scheme.spot, under("scheme"), what);
            return None;
        };
        if !found.limbs.include(limb) {
            let own: Vec<String> = self
                .ids()
                .into_iter()
                .filter(|id| self.find(id).is_some_and(|scheme| scheme.limbs.include(limb)))
                .map(|id| format!("`{id}`"))
                .collect();
            reader.raise(
                scheme.spot,
                under("scheme"),
                format!(
                    "the scheme `{}` is not for the {}; known for it: {}",
                    scheme.text,
                    limb.name(),
                    own.join(", ")
                ),
            );
            return None;
        }
        if found.class(&class.text).is_none() {
            reader.raise(class.spot, under("class"), found.no_such_class(&class.text));
            return None;
        }
        Some(found)
    }
}

fn read(reader: Result<Reader, Problem>) -> Result<Scheme, Vec<Problem>> {
    let reader = reader.map_err(|problem| vec![problem])?;
    let scheme = Scheme::read(&reader);
    let problems = reader.problems();
    match scheme {
        Some(scheme) if problems.is_empty() => Ok(scheme),
        _ => Err(problems),
    }
}
