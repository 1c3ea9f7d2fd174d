//! Owns the display list and the tag tree: what is drawn where, and what it is.

use krilla::tagging::{Identifier, Node as WriterNode, TagGroup, TagKind};

use super::fonts::Weight;

/// One drawing. Points, origin at the top left of the page.
#[derive(Clone, Debug)]
pub(super) enum Op {
    /// Words from the start of their baseline.
    Text { at: (f32, f32), weight: Weight, size: f32, grey: u8, text: String },
    /// Straight lines; fill and line as grey levels, the line with its width and dash.
    Path { points: Vec<(f32, f32)>, closed: bool, fill: Option<u8>, pen: Option<Pen> },
}

/// How a line is drawn, in black.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pen {
    pub(super) width: f32,
    pub(super) dash: Option<f32>,
}

impl Op {
    /// Words. A no-break space has done its work once lines are broken; readers of the text expect
    /// plain ones.
    pub(super) fn text(at: (f32, f32), weight: Weight, size: f32, text: &str) -> Self {
        Self::Text { at, weight, size, grey: 0, text: text.replace('\u{A0}', " ") }
    }

    /// A straight line.
    pub(super) fn line(from: (f32, f32), to: (f32, f32), width: f32) -> Self {
        Self::Path { points: vec![from, to], closed: false, fill: None, pen: Some(Pen { width, dash: None }) }
    }

    /// A frame.
    pub(super) fn frame(left: f32, top: f32, right: f32, bottom: f32, width: f32) -> Self {
        let points = vec![(left, top), (right, top), (right, bottom), (left, bottom)];
        Self::Path { points, closed: true, fill: None, pen: Some(Pen { width, dash: None }) }
    }
}

/// Index of a piece of content that the tag tree points to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Slot(pub(super) usize);

/// What a mark is.
#[derive(Clone, Copy, Debug)]
pub(super) enum MarkKind {
    /// The head of a page.
    Head,
    /// Rules, frames, repeated heads of tables.
    Decoration,
    /// Text.
    Text(Slot),
    /// Any other content.
    Graphic(Slot),
}

/// Drawings under one content mark.
#[derive(Clone, Debug)]
pub(super) struct Mark {
    pub(super) kind: MarkKind,
    pub(super) ops: Vec<Op>,
}

/// A node of the tag tree.
#[derive(Clone, Debug)]
pub(super) enum Node {
    Group(TagKind, Vec<Node>),
    Leaf(Slot),
}

impl Node {
    pub(super) fn group(tag: impl Into<TagKind>, children: Vec<Self>) -> Self {
        Self::Group(tag.into(), children)
    }

    /// The writer's node; none where a slot was never drawn.
    pub(super) fn to_writer(&self, identifiers: &[Option<Identifier>]) -> Option<WriterNode> {
        match self {
            Self::Group(tag, children) => {
                let children = children.iter().filter_map(|child| child.to_writer(identifiers)).collect();
                Some(TagGroup::with_children(tag.clone(), children).into())
            }
            Self::Leaf(Slot(at)) => Some(identifiers.get(*at).copied().flatten()?.into()),
        }
    }
}
