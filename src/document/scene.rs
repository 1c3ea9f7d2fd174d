//! Owns a drawing as shapes: lengths in points, origin at the top left, y downwards.

/// A drawing with its words for those who cannot see it.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// Width, points.
    pub width: f64,
    /// Height, points.
    pub height: f64,
    /// What it shows.
    pub title: String,
    /// The same in sentences.
    pub description: String,
    /// The shapes, lowest first.
    pub shapes: Vec<Shape>,
}

/// One shape, in black, grey and white.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Straight lines from point to point.
    Path {
        /// The points.
        points: Vec<(f64, f64)>,
        /// Whether the last joins the first.
        closed: bool,
        /// What fills it.
        fill: Ink,
        /// What draws its line.
        pen: Option<Pen>,
    },
    /// Words on one line.
    Label {
        /// Where: the baseline's start, middle or end.
        at: (f64, f64),
        /// Which of these.
        anchor: Anchor,
        /// Height of the letters, points.
        size: f64,
        /// Whether in bold.
        bold: bool,
        /// The words.
        text: String,
    },
}

/// What fills a shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// Nothing.
    Clear,
    /// Paper.
    White,
    /// A light grey.
    Light,
    /// Black.
    Black,
}

impl Ink {
    /// Grey level, 0 black to 255 white; none when clear.
    pub fn grey(self) -> Option<u8> {
        match self {
            Self::Clear => None,
            Self::White => Some(255),
            Self::Light => Some(232),
            Self::Black => Some(0),
        }
    }
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Width, points.
    pub width: f64,
    /// Length of dashes and gaps, points; none for a solid line.
    pub dash: Option<f64>,
}

/// Which point of a label is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The start.
    Start,
    /// The middle.
    Middle,
    /// The end.
    End,
}

impl Shape {
    /// Straight lines from point to point, `width` points wide.
    pub fn line(points: Vec<(f64, f64)>, width: f64) -> Self {
        Self::Path { points, closed: false, fill: Ink::Clear, pen: Some(Pen { width, dash: None }) }
    }

    /// The same in dashes of `dash` points.
    pub fn dashed(points: Vec<(f64, f64)>, width: f64, dash: f64) -> Self {
        Self::Path { points, closed: false, fill: Ink::Clear, pen: Some(Pen { width, dash: Some(dash) }) }
    }

    /// A filled shape with its edge.
    pub fn area(points: Vec<(f64, f64)>, fill: Ink, width: f64) -> Self {
        Self::Path { points, closed: true, fill, pen: Some(Pen { width, dash: None }) }
    }

    /// Words on one line.
    pub fn label(at: (f64, f64), anchor: Anchor, size: f64, text: impl Into<String>) -> Self {
        Self::Label { at, anchor, size, bold: false, text: text.into() }
    }
}
