//! Owns the how-to of a fabric test at the bench.
//!
//! Source: strip and loop relations are derived; taking the return branch after conditioning is
//! recalled (memory, medium); the rest is our own practice.

/// How a fitter without supplier data gets a tension curve.
const STEPS: [&str; 9] = [
    "You need: a spare strip or tube of the knit, a ruler, a clamp, and five or six weights from 100 g to about 1 kg.",
    "1. Cut or mark a strip in the direction that goes round the limb, 5 cm wide, 20 cm between two marks. Or lay a tube over two bars (a loop); its width is along the limb.",
    "2. Stretch it five times by hand to the longest you mean to test, and let it come back.",
    "3. Measure the distance of the marks without a weight: `relaxed`.",
    "4. Hang the heaviest weight, wait a minute, then take weights off one by one; wait half a minute and measure each time. A worn garment sits on this way back.",
    "5. Do it three times, better on two pieces. Write repeats as one list.",
    "6. Go as far as the garment is stretched on a limb: nothing is estimated beyond the last weight.",
    "7. Write the lengths into a fabric file:\n\n   tapeline: fabric/1\n   label: our knit\n   bench:\n     kind: strip            # or loop\n     width: 5 cm\n     relaxed: 20 cm\n     pulls:\n       - {weight: 200 g, length: [23.4 cm, 23.6 cm, 23.5 cm]}\n",
    "8. `tapeline fabric FILE` shows the curve, the spread and a plot; the file serves wherever a fabric is named.",
];

/// The how-to as it is printed.
pub fn bench_text() -> String {
    let mut text = String::from("A fabric test at the bench\n\n");
    for step in STEPS {
        text.push_str(step);
        text.push('\n');
    }
    text.push_str(
        "\nStrip: tension = weight / width. Loop over two bars: half of that, since both sides carry (derived).\n\
         Repeats are pooled into one curve that never falls; with three pulls more than points their spread about\n\
         it is the SD of the tension, else 5 % (house rule).\n",
    );
    text
}
