//! Owns how the cells of a column stand under one another.

use super::held::FIGURE_SPACE;

/// How the cells of a column stand under one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Words, from the left; they may run over several lines.
    Words,
    /// Numbers, at the decimal point; never broken.
    Point,
    /// Ranges such as 16–18, at the dash; never broken.
    Dash,
}

impl Align {
    /// Whether cells may not be broken.
    pub fn is_whole(self) -> bool {
        self != Self::Words
    }

    /// Where a text is cut in two, bytes: what stands before hangs to the left of the line along which
    /// the column stands, the rest to the right.
    pub fn cut(self, text: &str) -> usize {
        let digits = || {
            let start = text.find(|c: char| c.is_ascii_digit())?;
            let rest = text.get(start..)?;
            Some(start + rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len()))
        };
        match self {
            Self::Words => 0,
            Self::Dash => text.find('\u{2013}').or_else(digits).unwrap_or(text.len()),
            Self::Point => digits().unwrap_or(text.len()),
        }
    }
}

/// The cells of one column, each cut in two, with the width of the widest half on each side.
#[derive(Clone, Debug, PartialEq)]
pub struct Lined {
    /// Width left of the line.
    pub before: f32,
    /// Width right of the line.
    pub after: f32,
}

impl Lined {
    /// Measures a column.
    pub fn of<'c>(
        cells: impl IntoIterator<Item = &'c str>,
        align: Align,
        measure: &dyn Fn(char) -> f32,
    ) -> Self {
        let wide = |text: &str| text.chars().map(measure).sum::<f32>();
        let mut lined = Self { before: 0.0, after: 0.0 };
        for cell in cells {
            let (before, after) = cell.split_at(align.cut(cell));
            lined.before = lined.before.max(wide(before));
            lined.after = lined.after.max(wide(after));
        }
        lined
    }

    /// Width of the column's text.
    pub fn width(&self) -> f32 {
        self.before + self.after
    }
}

/// A column's cells filled up at the right so that, set from the right, they stand at the point; for
/// forms whose figures all have one width.
pub(super) fn filled(cells: &[&str], align: Align) -> Vec<String> {
    if !align.is_whole() {
        return cells.iter().map(|cell| (*cell).to_owned()).collect();
    }
    let after = |cell: &str| cell.get(align.cut(cell)..).unwrap_or_default().chars().count();
    let most = cells.iter().map(|cell| after(cell)).max().unwrap_or_default();
    cells
        .iter()
        .map(|cell| {
            let mut cell = (*cell).to_owned();
            let fill = most - after(&cell);
            cell.extend(std::iter::repeat_n(FIGURE_SPACE, fill));
            cell
        })
        .collect()
}
