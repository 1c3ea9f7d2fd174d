//! Owns the how-to of a fabric test at the bench, and of the short form, two pulls of a strip.
//!
//! Source: strip, loop and exponent are derived; taking the way back after conditioning is recalled
//! (memory, medium); the rest is our own practice.

use crate::document::Block;

/// A fabric file with a bench test, to copy.
const BENCH_FILE: &str = "\
tapeline: fabric/1
label: our knit
bench:
  kind: strip            # or loop
  width: 5 cm
  relaxed: 20 cm
  pulls:
    - {weight: 400 g, length: [26.2 cm, 26.3 cm, 26.1 cm]}   # the heaviest first
    - {weight: 200 g, length: [23.4 cm, 23.6 cm, 23.5 cm]}
";

/// A fabric file with two pulls, to copy.
const STRIP_FILE: &str = "\
tapeline: fabric/1
label: our knit
strip:
  relaxed: 20 cm
  pulls:
    - {weight: 500 g, length: 27.1 cm}
    - {weight: 200 g, length: 23.2 cm}
";

/// How a fitter without supplier data gets a tension curve.
pub(super) fn bench_test() -> Vec<Block> {
    vec![
        Block::heading("A fabric test at the bench"),
        Block::text(
            "You need a spare strip or tube of the knit, a ruler, a clamp, and five or six weights from 100 g to about 1 kg.",
        ),
        Block::list([
            "Cut or mark a strip in the direction that goes round the limb, 5 cm wide, 20 cm between two marks. Or lay a tube over two bars, a loop; its width is along the limb.",
            "Stretch it five times by hand to the longest you mean to test, and let it come back.",
            "Measure the distance of the marks without a weight: that is `relaxed`.",
            "Hang the heaviest weight and wait a minute. Then take weights off one by one; wait half a minute and measure each time. A worn garment sits on this way back.",
            "Do it three times, better on two pieces. Write the repeats of a weight as one list.",
            "Go as far as the garment is stretched on a limb: beyond the last weight there is only a bound.",
            "Write the lengths into a fabric file, as below. `tapeline fabric FILE` shows the curve, its spread and a drawing; the file serves wherever a fabric is named.",
        ]),
        Block::Verbatim(BENCH_FILE.to_owned()),
        Block::small(
            "Strip: tension is weight over width. Loop over two bars: half of that, since both sides carry (derived). Repeats are pooled into one curve that never falls; their spread about it is the SD of the tension, never below 2 % (house rule). A free strip narrows as it is pulled, which a knit round a limb does not; its tension reads a little low.",
        ),
    ]
}

/// Two pulls of a strip instead of a curve.
pub(super) fn strip_pull() -> Vec<Block> {
    vec![
        Block::heading("Two pulls of a strip"),
        Block::text(
            "Where the fall by stretch alone stays undecided, two weights on a strip of the knit often decide it. They need no known width and no known pressure: they give only the power by which tension grows with stretch.",
        ),
        Block::list([
            "Take a strip in the direction that goes round the limb, from a spare or returned garment of the same knit. Mark two lines about 20 cm apart.",
            "Stretch it five times by hand to about half as long again, and let it come back. Measure between the lines without a weight: that is `relaxed`.",
            "Hang the heaviest weight first: enough for the stretch that the garment has at the reference. Wait a minute, measure.",
            "Take weight off until about two fifths of it is left. Wait half a minute, measure again: the lengths are read while the weights come off, because a worn garment sits on that way back.",
            "A free strip narrows as it is pulled. On a limb its width is held, so keep the strip broad, 5 cm or more, and measure at its middle.",
            "Write both pulls into a fabric file, as below, and name it in the chart or garment: `fabric: our-knit.yaml`.",
        ]),
        Block::Verbatim(STRIP_FILE.to_owned()),
        Block::small(
            "b = ln(F2/F1)/ln(e2/e1), with F the weight and e the stretch, length over relaxed length less one (derived). Without the pull b is taken from 0.7 to 1.5, after it within 0.1 of what it gave (house rules). `tapeline fabric FILE` prints it with its SD by the lengths read, 0.1 cm each; an SD above 0.1, or an exponent outside 0.7 to 1.5, is asked about and narrows nothing beyond what it tells. `exponent: 1.05` in the fabric file states the same.",
        ),
    ]
}
