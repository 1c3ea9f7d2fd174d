//! Owns what differs between a terminal and a line printer.

/// For what the lines are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Look {
    /// A terminal: rules and bars by box-drawing signs.
    Terminal,
    /// A line printer: letters of ASCII, but for the words themselves.
    Printer,
}

impl Look {
    /// The sign of a rule.
    pub(super) fn rule(self) -> char {
        match self {
            Self::Terminal => '─',
            Self::Printer => '-',
        }
    }

    /// The sign before an item.
    pub(super) fn bullet(self) -> &'static str {
        match self {
            Self::Terminal => "·",
            Self::Printer => "-",
        }
    }
}
