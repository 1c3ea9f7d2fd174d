//! The page model: lines, columns of figures, the four forms.

use proptest::prelude::*;
use tapeline::document::{
    Align, Block, Column, Entry, Head, Leaf, Lined, Reader, Sheet, Table, Tick, Weight, held, wrap,
};
use tapeline::render::{self, Paper};

fn letters(width: usize) -> impl Fn(&str) -> Vec<String> {
    move |text| wrap(text, width as f32, &|_| 1.0)
}

proptest! {
    /// Source: what breaking a text means: nothing is lost, no line is too long.
    #[test]
    fn lines_keep_every_letter_and_the_width(text in "[a-z\u{a0}.0-9 ]{0,120}", width in 1_usize..40) {
        let lines = letters(width)(&text);
        prop_assert!(!lines.is_empty());
        for line in &lines {
            prop_assert!(line.trim_end_matches(' ').chars().count() <= width, "`{line}`");
        }
        let kept: String = lines.concat().chars().filter(|c| *c != ' ').collect();
        let given: String = text.chars().filter(|c| *c != ' ').collect();
        prop_assert_eq!(kept, given);
    }

    /// Source: each figure of a column has its point in one place once the column is filled up.
    #[test]
    fn figures_stand_at_the_point(values in prop::collection::vec((0_u32..2000, 0_usize..3), 1..9)) {
        let mut table = Table::new("", vec![Column::numbers("Girth", "cm")]);
        for (value, decimals) in values {
            table.push(vec![format!("{:.decimals$}", f64::from(value) / 10.0)]);
        }
        let places: Vec<usize> = table
            .filled()
            .iter()
            .map(|row| {
                let cell: Vec<char> = row[0].chars().collect();
                let point = cell.iter().position(|c| *c == '.');
                let end = cell.iter().position(|c| !c.is_ascii_digit()).unwrap_or(cell.len());
                cell.len() - point.unwrap_or(end)
            })
            .collect();
        prop_assert!(places.windows(2).all(|pair| pair[0] == pair[1]), "{places:?}");
    }
}

#[test]
fn a_unit_stays_with_its_number() {
    assert_eq!(held("at 16.9 cm or 20 mmHg, 3 cmx"), "at 16.9\u{a0}cm or 20\u{a0}mmHg, 3 cmx");
}

#[test]
fn ranges_stand_at_the_dash() {
    let lined = Lined::of(["9.0\u{2013}18", "28.5\u{2013}33.5", "under 20"], Align::Dash, &|_| 1.0);
    assert_eq!((lined.before, lined.after), (8.0, 5.0));
}

fn sheet(blocks: &[Block]) -> Sheet {
    let leaf = |apart| Leaf {
        reader: if apart { Reader::Client } else { Reader::Fitter },
        head: Head { bold: "K-1 \u{b7} LEFT ARM".to_owned(), plain: "measured 2026-03-14".to_owned() },
        title: "A page".to_owned(),
        blocks: blocks.to_vec(),
        language: "en-GB".to_owned(),
        numbered: "page {page} of {pages}".to_owned(),
        apart,
    };
    Sheet {
        title: "K-1".to_owned(),
        leaves: vec![leaf(false), leaf(true)],
        made_on: "2026-03-14".to_owned(),
        made_by: "tapeline".to_owned(),
    }
}

#[test]
fn no_text_becomes_markup() {
    let evil = "<script>\"'&</script>";
    let mut table = Table::new(evil, vec![Column::words(evil), Column::numbers(evil, evil)]);
    table.push(vec![evil.to_owned(), evil.to_owned()]);
    let page = render::html(
        &sheet(&[
            Block::heading(evil),
            Block::frame(Weight::Black, evil, vec![Block::text(evil)]),
            Block::Keys(vec![Entry::new(evil, evil)]),
            Block::entry(evil, evil),
            Block::blanks(&[&[evil]]),
            Block::Ticks { boxes: vec![evil.to_owned()], items: vec![Tick::open(evil)] },
            Block::Square { label: evil.to_owned(), lines: 3 },
            Block::Verbatim(evil.to_owned()),
            Block::Table(table),
        ]),
        Paper::A4,
    );
    assert!(!page.contains("<script"));
    assert!(!page.contains("http"));
}

#[test]
fn the_text_sheet_has_pages_of_a_size_and_the_second_part_on_an_odd_one() {
    let many: Vec<Block> = (0..90).map(|at| Block::text(format!("Line {at}."))).collect();
    for (paper, most) in [(Paper::A4, 66), (Paper::Letter, 62)] {
        let text = render::plain(&sheet(&many), paper);
        let pages: Vec<&str> = text.split('\u{c}').collect();
        assert!(pages.iter().all(|page| page.lines().count() <= most));
        let first = pages.iter().rposition(|page| page.contains("page 1 of")).unwrap();
        assert_eq!(first % 2, 0, "the second part begins on page {}", first + 1);
        assert!(pages.concat().lines().all(|line| line.chars().count() <= 78));
    }
}

#[cfg(feature = "pdf")]
#[test]
fn a_letter_that_the_font_lacks_is_told_and_not_dropped() {
    let fault = render::pdf(&sheet(&[Block::text("client \u{4e2d}")]), Paper::A4).unwrap_err();
    assert!(fault.to_string().contains("U+4E2D"), "{fault}");
}
