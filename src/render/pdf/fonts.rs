//! Owns the two weights of the font: glyphs and widths, for measuring and for drawing alike, so that a
//! measured width is the drawn width.

use krilla::surface::Location;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use skrifa::MetadataProvider as _;
use skrifa::charmap::Charmap;
use skrifa::instance::{LocationRef, Size};
use skrifa::metrics::GlyphMetrics;

use super::characters::is_simple;
use crate::document;

/// A weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Weight {
    Regular,
    Bold,
}

/// One font.
pub(super) struct Face {
    /// As the writer has it.
    pub(super) font: Font,
    charmap: Charmap<'static>,
    /// Glyph and width of the first characters, which most texts are made of.
    first: Vec<(GlyphId, f32)>,
    metrics: GlyphMetrics<'static>,
    units_per_em: f32,
}

impl Face {
    fn new(data: &'static [u8]) -> Option<Self> {
        let parsed = skrifa::FontRef::new(data).ok()?;
        let font = Font::new(data.into(), 0)?;
        let mut face = Self {
            charmap: parsed.charmap(),
            first: Vec::new(),
            metrics: parsed.glyph_metrics(Size::unscaled(), LocationRef::default()),
            units_per_em: font.units_per_em(),
            font,
        };
        face.first = ('\0'..'\u{100}').map(|c| face.glyph(c)).collect();
        Some(face)
    }

    /// Whether a character can be set by placing one glyph after the other.
    fn has(&self, c: char) -> bool {
        is_simple(c) && self.charmap.map(c).is_some_and(|id| id.to_u32() != 0)
    }

    fn glyph(&self, c: char) -> (GlyphId, f32) {
        let early = usize::try_from(u32::from(c)).ok().and_then(|place| self.first.get(place));
        if let Some(known) = early {
            return *known;
        }
        let id = self.charmap.map(c).unwrap_or(skrifa::GlyphId::NOTDEF);
        let advance = self.metrics.advance_width(id).unwrap_or(0.0);
        (GlyphId::new(id.to_u32()), advance / self.units_per_em)
    }

    /// Glyphs for the writer; each carries its place, which comes back in the writer's errors.
    pub(super) fn glyphs(&self, text: &str, location: Option<Location>) -> Vec<KrillaGlyph> {
        text.char_indices()
            .map(|(at, c)| {
                let (id, advance) = self.glyph(c);
                KrillaGlyph::new(id, advance, 0.0, 0.0, 0.0, at..at + c.len_utf8(), location)
            })
            .collect()
    }

    /// Width in points.
    pub(super) fn width(&self, text: &str, size: f32) -> f32 {
        text.chars().map(|c| self.glyph(c).1).sum::<f32>() * size
    }

    /// Width of one character, points.
    pub(super) fn letter(&self, c: char, size: f32) -> f32 {
        self.glyph(c).1 * size
    }

    /// Breaks a text into lines that fit a width.
    pub(super) fn wrap(&self, text: &str, size: f32, width: f32) -> Vec<String> {
        // A line's width is a sum of roundings.
        document::wrap(text, width + 0.01, &|c| self.letter(c, size))
    }
}

/// Both weights.
pub(super) struct Fonts {
    regular: Face,
    bold: Face,
}

impl Fonts {
    /// The fonts built in.
    pub(super) fn new() -> Option<Self> {
        Some(Self { regular: Face::new(dejavu::sans::regular())?, bold: Face::new(dejavu::sans::bold())? })
    }

    /// One weight.
    pub(super) fn face(&self, weight: Weight) -> &Face {
        match weight {
            Weight::Regular => &self.regular,
            Weight::Bold => &self.bold,
        }
    }

    /// The first character that either weight cannot set. Line ends are layout, not characters.
    pub(super) fn unprintable(&self, text: &str) -> Option<char> {
        text.chars().find(|&c| c != '\n' && !(self.regular.has(c) && self.bold.has(c)))
    }
}
