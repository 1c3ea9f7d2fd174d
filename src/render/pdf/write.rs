//! Owns the writing of the display list, its tags, outline and metadata.

use std::num::{NonZeroU32, NonZeroU64};

use krilla::configure::{Accessibility, Archival, ConfigurationBuilder, ValidationError, Validator};
use krilla::destination::XyzDestination;
use krilla::error::KrillaError;
use krilla::geom::Point;
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::{NumberingStyle, PageLabel, PageSettings};
use krilla::tagging::{Artifact, ArtifactType, ContentTag, Identifier, SpanTag, Tag, TagGroup, TagTree};
use krilla::{Document, SerializeSettings};

use super::display::{Mark, MarkKind, Node, Slot};
use super::draw::draw;
use super::fault::PdfFault;
use super::fonts::Fonts;
use super::head;
use super::layout::{Bookmark, Layout, MARGIN};
use crate::document::{Reader, Sheet};
use crate::render::Paper;

/// The sheet as a tagged PDF. Same sheet, same bytes.
///
/// # Errors
///
/// [`PdfFault::Characters`] when a text holds a character that the font cannot set: nothing is dropped
/// in silence. [`PdfFault::Writer`] when the writer's validator refuses.
pub fn pdf(sheet: &Sheet, paper: Paper) -> Result<Vec<u8>, PdfFault> {
    let refused = |reason: &str| PdfFault::Writer(vec![reason.to_owned()]);
    let fonts = Fonts::new().ok_or_else(|| refused("the built-in fonts do not parse"))?;
    let mut layout = Layout::new(&fonts, paper, 0.0);
    layout.top = head::top(&fonts, sheet, layout.paper.0);
    let (body, labels) = lay_out(&mut layout, sheet);
    let language = sheet.leaves.first().map_or("en-GB", |leaf| leaf.language.as_str()).to_owned();
    if !layout.missing.is_empty() {
        return Err(PdfFault::Characters(layout.missing.into_iter().collect()));
    }
    let configuration = ConfigurationBuilder::new()
        .with_archival_validator(Archival::A2_A)
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|_| refused("PDF/A-2a and PDF/UA-1 do not go together in this writer"))?;
    let mut document =
        Document::new_with(SerializeSettings { configuration, ..SerializeSettings::default() });
    let identifiers =
        pages(&mut document, &layout, &labels).ok_or_else(|| refused("the paper has no size"))?;
    let mut tree = TagTree::new().with_lang(Some(language.clone()));
    for (nodes, leaf) in body.iter().zip(&sheet.leaves) {
        let children = nodes.iter().filter_map(|node| node.to_writer(&identifiers)).collect();
        let part = Tag::Part.with_lang(Some(leaf.language.clone()));
        tree.push(TagGroup::with_children(part, children));
    }
    document.set_tag_tree(tree);
    document.set_outline(outline(&layout.outline));
    let mut metadata =
        Metadata::new().title(sheet.title.clone()).language(language).producer(sheet.made_by.clone());
    if let Some(date) = date(&sheet.made_on) {
        metadata = metadata.creation_date(date);
    }
    document.set_metadata(metadata);
    document.finish().map_err(|fault| PdfFault::Writer(reasons(&fault)))
}

/// The number of each page and what stands before it.
type Labels = Vec<(u32, Option<String>)>;

fn lay_out(layout: &mut Layout<'_>, sheet: &Sheet) -> (Vec<Vec<Node>>, Labels) {
    let mut body = Vec::new();
    let mut labels: Labels = Vec::new();
    for (run, leaves) in sheet.numbered().into_iter().enumerate() {
        if leaves.first().is_some_and(|leaf| leaf.apart) && layout.pages.len() % 2 == 1 {
            // Empty, so that the next leaf is a sheet of paper of its own.
            layout.page_break();
            labels.push((number(labels.len() + 1), None));
        }
        let before = layout.pages.len();
        let mut of_leaf = Vec::new();
        for leaf in leaves {
            layout.page_break();
            let level = if body.is_empty() { 1 } else { 2 };
            layout.size = match leaf.reader {
                Reader::Fitter => 9.0,
                Reader::Client => 14.0,
            };
            let mut nodes = vec![layout.heading(level, true, &leaf.title, 40.0)];
            nodes.extend(layout.blocks(&leaf.blocks, level + 1));
            body.push(nodes);
            of_leaf.resize(layout.pages.len() - before, leaf);
        }
        let count = of_leaf.len();
        let prefix = (run > 0).then(|| format!("{}-", letter(run)));
        for (place, leaf) in of_leaf.into_iter().enumerate() {
            layout.head(leaf, before + place, &leaf.number(place + 1, count));
            labels.push((number(place + 1), prefix.clone()));
        }
    }
    (body, labels)
}

fn number(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// B for the second run of pages, C for the third.
fn letter(run: usize) -> char {
    u8::try_from(run).ok().and_then(|run| b'A'.checked_add(run)).map_or('Z', char::from)
}

/// Draws every page; what each slot became.
fn pages(document: &mut Document, layout: &Layout<'_>, labels: &Labels) -> Option<Vec<Option<Identifier>>> {
    let mut identifiers = vec![None; layout.slots];
    let mut drawn = 0_u64;
    for (marks, (number, prefix)) in layout.pages.iter().zip(labels) {
        let label = PageLabel::new(Some(NumberingStyle::Arabic), prefix.clone(), NonZeroU32::new(*number));
        let settings = PageSettings::from_wh(layout.paper.0, layout.paper.1)?.with_page_label(label);
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        for Mark { kind, ops } in marks {
            // The number of the mark comes back in the validator's errors.
            drawn += 1;
            let location = NonZeroU64::new(drawn);
            if let Some(location) = location {
                surface.set_location(location);
            }
            let identifier = surface.start_tagged(match kind {
                MarkKind::Head => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Header)),
                MarkKind::Decoration => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)),
                MarkKind::Text(_) => ContentTag::Span(SpanTag::empty()),
                MarkKind::Graphic(_) => ContentTag::Other,
            });
            for op in ops {
                draw(&mut surface, layout.fonts, op, location);
            }
            surface.end_tagged();
            if let MarkKind::Text(Slot(slot)) | MarkKind::Graphic(Slot(slot)) = kind
                && let Some(place) = identifiers.get_mut(*slot)
            {
                *place = Some(identifier);
            }
        }
        surface.finish();
        page.finish();
    }
    Some(identifiers)
}

fn outline(entries: &[Bookmark]) -> Outline {
    let node = |entry: &Bookmark| {
        OutlineNode::new(
            entry.title.clone(),
            XyzDestination::new(entry.page, Point::from_xy(MARGIN, entry.y)),
        )
    };
    let mut outline = Outline::new();
    let mut chapter: Option<OutlineNode> = None;
    for entry in entries {
        match chapter.as_mut() {
            Some(open) if !entry.of_leaf => open.push_child(node(entry)),
            _ => {
                if let Some(done) = chapter.replace(node(entry)) {
                    outline.push_child(done);
                }
            }
        }
    }
    if let Some(done) = chapter {
        outline.push_child(done);
    }
    outline
}

/// Midnight of a day written as 2026-03-14.
fn date(text: &str) -> Option<DateTime> {
    let mut parts = text.split('-');
    let year = parts.next()?.parse().ok()?;
    let month = parts.next()?.parse().ok()?;
    let day = parts.next()?.parse().ok()?;
    Some(DateTime::new(year).month(month).day(day))
}

/// The writer's error in words, in a fixed order, since the writer collects some in no order.
fn reasons(fault: &KrillaError) -> Vec<String> {
    let KrillaError::Validation(all) = fault else { return vec![fault.to_string()] };
    let mut reasons: Vec<String> = all
        .iter()
        .map(|(error, by)| {
            let standards: Vec<_> = by.into_iter().map(Validator::as_str).collect();
            let what = match error {
                ValidationError::ContainsNotDefGlyph(_, location, text) => {
                    format!("no glyph for {text:?} in mark {location:?}")
                }
                other => format!("{other:?}"),
            };
            format!("{}: {what}", standards.join(" and "))
        })
        .collect();
    reasons.sort();
    reasons
}
