//! Units against their definitions, and against a general-purpose units library.

use tapeline::quantity::{Dimension, PASCAL_PER_MMHG, STANDARD_GRAVITY, Unit, Units, read_quantity};

/// Whether two figures agree to a relative tolerance.
fn near(found: f64, wanted: f64, tolerance: f64) {
    let gap = (found - wanted).abs();
    assert!(gap <= tolerance * wanted.abs(), "{found} instead of {wanted}");
}

#[test]
fn units_are_what_they_are_defined_to_be() {
    // Definitions: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s², mercury 13 595.1 kg/m³.
    near(PASCAL_PER_MMHG, 13_595.1 * 9.806_65 / 1_000.0, 1e-12);
    near(STANDARD_GRAVITY, 9.806_65, 0.0);
    for (symbol, si) in [
        ("mm", 1e-3),
        ("cm", 1e-2),
        ("m", 1.0),
        ("in", 0.0254),
        ("hPa", 100.0),
        ("kPa", 1000.0),
        ("N/cm", 100.0),
        ("cN/cm", 1.0),
        ("gf/cm", 0.009_806_65 / 0.01),
        ("kgf", 9.806_65),
        ("lb", 0.453_592_37),
        ("%", 0.01),
        ("mL", 1e-6),
        ("L", 1e-3),
    ] {
        near(Unit::parse(symbol).unwrap().si(), si, 1e-15);
    }
    // 1 kPa is 7.50061575845657 mmHg (derived).
    near(1000.0 / PASCAL_PER_MMHG, 7.500_615_758_456_57, 1e-14);
}

#[test]
fn a_unit_stands_for_one_dimension_only() {
    for unit in Unit::ALL {
        for wanted in Dimension::ALL {
            let read = read_quantity(&format!("12.5 {}", unit.symbol()), wanted, Units::default());
            assert_eq!(read.is_ok(), unit.dimension() == wanted, "{} as {wanted:?}", unit.symbol());
        }
    }
}

#[test]
#[ignore = "needs the units library; .ci/units fetches it and runs this"]
fn a_units_library_agrees() {
    // Source: PyPI `pint` (BSD), whose own definitions of these units `.ci/units` writes as `symbol,factor`.
    let path = std::env::var_os("TAPELINE_UNITS").expect("TAPELINE_UNITS names the table; run .ci/units");
    let text = std::fs::read_to_string(path).unwrap();
    let mut seen = 0;
    let mut worst: f64 = 0.0;
    for line in text.lines() {
        let (symbol, factor) = line.split_once(',').unwrap();
        let (unit, factor) = (Unit::parse(symbol).unwrap(), factor.parse::<f64>().unwrap());
        let gap = (unit.si() / factor - 1.0).abs();
        worst = worst.max(gap);
        assert!(gap < 1e-9, "{symbol}: {} here, {factor} there", unit.si());
        seen += 1;
    }
    assert_eq!(seen, Unit::ALL.len(), "every unit has to be in the table");
    println!("{seen} units, worst relative gap {worst:.1e}");
}
