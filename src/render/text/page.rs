//! Owns the page: headings, wrapped lines, tables within a width.

use comfy_table::{ContentArrangement, LineStyle, Table, TableStyle};
use textwrap::Options;
use unicode_width::UnicodeWidthStr as _;

/// Fewest columns that a page is laid out for (house rule: narrower terminals wrap by themselves).
const FEWEST_COLUMNS: usize = 60;
/// Most columns that a page uses (house rule: longer lines are hard to read).
pub const MOST_COLUMNS: usize = 120;

/// A page of text.
pub struct Page {
    width: usize,
    text: String,
}

impl Page {
    /// An empty page; the width is kept within 60 to 120 columns.
    pub fn new(width: usize) -> Self {
        Self { width: width.clamp(FEWEST_COLUMNS, MOST_COLUMNS), text: String::new() }
    }

    /// Its width in columns.
    pub fn width(&self) -> usize {
        self.width
    }

    /// The text; no line ends in blanks.
    pub fn finish(self) -> String {
        self.text
    }

    /// One line as it is.
    pub fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// An empty line.
    pub fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    /// A heading with a rule to the right edge.
    pub fn heading(&mut self, heading: &str) {
        self.gap();
        let rest = self.width.saturating_sub(heading.width() + 1);
        self.line(&format!("{heading} {}", "─".repeat(rest)));
    }

    /// Running text behind a lead, continued under its own beginning.
    pub fn led(&mut self, lead: &str, text: &str) {
        let hang = " ".repeat(lead.width());
        let options =
            Options::new(self.width).initial_indent(lead).subsequent_indent(&hang).break_words(true);
        for line in textwrap::wrap(text, options) {
            self.line(&line);
        }
    }

    /// Running text.
    pub fn paragraph(&mut self, text: &str) {
        self.led("", text);
    }

    /// A table, as wide as it needs within the page.
    pub fn table(&mut self, head: &[String], rows: &[Vec<String>], right: &[usize]) {
        let mut table = Table::new();
        let ruled = TableStyle::new().header_separator(LineStyle::none().fill('─').junction('─'));
        table.load_style(ruled).set_content_arrangement(ContentArrangement::Dynamic);
        table.set_width(u16::try_from(self.width).unwrap_or(80));
        table.set_header(head);
        for row in rows {
            table.add_row(row);
        }
        for (at, column) in table.column_iter_mut().enumerate() {
            column.set_padding((0, 1));
            if right.contains(&at) {
                column.set_cell_alignment(comfy_table::CellAlignment::Right);
            }
        }
        let drawn = table.to_string();
        for line in drawn.lines() {
            self.line(line);
        }
    }
}
