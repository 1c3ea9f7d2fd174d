//! Owns the two weights of the font: glyphs and widths, for measuring and for drawing alike, so that a
//! measured width is the drawn width.

use krilla::surface::Location;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use skrifa::MetadataProvider as _;
use skrifa::charmap::Charmap;
use skrifa::instance::{LocationRef, Size};
use skrifa::metrics::GlyphMetrics;

use super::characters::is_simple;

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
    metrics: GlyphMetrics<'static>,
    units_per_em: f32,
}

impl Face {
    fn new(data: &'static [u8]) -> Option<Self> {
        let parsed = skrifa::FontRef::new(data).ok()?;
        let font = Font::new(data.into(), 0)?;
        Some(Self {
            charmap: parsed.charmap(),
            metrics: parsed.glyph_metrics(Size::unscaled(), LocationRef::default()),
            units_per_em: font.units_per_em(),
            font,
        })
    }

    /// Whether a character can be set by placing one glyph after the other.
    fn has(&self, c: char) -> bool {
        is_simple(c) && self.charmap.map(c).is_some_and(|id| id.to_u32() != 0)
    }

    fn glyph(&self, c: char) -> (GlyphId, f32) {
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

    /// Breaks a text into lines that fit a width. Each line but the last keeps its final space: level A
    /// of PDF/A wants word ends as characters. A word wider than the line is cut.
    pub(super) fn wrap(&self, text: &str, size: f32, width: f32) -> Vec<String> {
        let mut lines = Vec::new();
        let mut line = String::new();
        for word in text.split_inclusive([' ', '\n']) {
            let both = self.width(&line, size) + self.width(word.trim_end_matches([' ', '\n']), size);
            if !line.is_empty() && both > width {
                lines.push(std::mem::take(&mut line));
            }
            line.push_str(&word.replace('\n', " "));
            while self.width(line.trim_end(), size) > width && line.chars().count() > 1 {
                let rest = line.split_off(self.fitting(&line, size, width));
                lines.push(std::mem::replace(&mut line, rest));
            }
        }
        if !line.is_empty() || lines.is_empty() {
            lines.push(line);
        }
        lines
    }

    /// Bytes of the longest beginning that fits, at least one character.
    fn fitting(&self, text: &str, size: f32, width: f32) -> usize {
        let mut used = 0.0;
        for (at, c) in text.char_indices() {
            used += self.glyph(c).1 * size;
            if used > width && at > 0 {
                return at;
            }
        }
        text.len()
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
