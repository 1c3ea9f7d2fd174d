//! Owns the units that input files may use and their exact factors. Does not read numbers.

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dimension {
    /// Girths, positions and lengths.
    Length,
    /// Interface and blood pressure.
    Pressure,
    /// Fabric tension per unit worn width.
    Tension,
    /// A pull, as of a hanging weight or a bandage.
    Force,
    /// Body weight.
    Mass,
    /// A share, in per cent.
    Ratio,
    /// Limb volume.
    Volume,
}

impl Dimension {
    /// All dimensions, in the order of the `units:` block.
    pub const ALL: [Self; 7] =
        [Self::Length, Self::Pressure, Self::Tension, Self::Force, Self::Mass, Self::Ratio, Self::Volume];

    /// The key under `units:`.
    pub fn key(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Pressure => "pressure",
            Self::Tension => "tension",
            Self::Force => "force",
            Self::Mass => "mass",
            Self::Ratio => "ratio",
            Self::Volume => "volume",
        }
    }

    /// The symbols accepted, as a sentence part: `cm, mm, m or in`.
    pub fn accepted(self) -> String {
        let symbols: Vec<&str> =
            Unit::ALL.iter().filter(|unit| unit.dimension() == self).map(|unit| unit.symbol()).collect();
        match symbols.split_last() {
            Some((last, [])) => (*last).to_owned(),
            Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
            None => String::new(),
        }
    }
}

/// A unit that input files may use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the variants are the units' names")]
pub enum Unit {
    Centimetre,
    Millimetre,
    Metre,
    Inch,
    MmHg,
    Hectopascal,
    Kilopascal,
    Pascal,
    NewtonPerMetre,
    NewtonPerCentimetre,
    CentinewtonPerCentimetre,
    GramForcePerCentimetre,
    Newton,
    KilogramForce,
    GramForce,
    Kilogram,
    Gram,
    Pound,
    Percent,
    Millilitre,
    Litre,
}

impl Unit {
    /// Every unit.
    pub const ALL: [Self; 21] = [
        Self::Centimetre,
        Self::Millimetre,
        Self::Metre,
        Self::Inch,
        Self::MmHg,
        Self::Hectopascal,
        Self::Kilopascal,
        Self::Pascal,
        Self::NewtonPerMetre,
        Self::NewtonPerCentimetre,
        Self::CentinewtonPerCentimetre,
        Self::GramForcePerCentimetre,
        Self::Newton,
        Self::KilogramForce,
        Self::GramForce,
        Self::Kilogram,
        Self::Gram,
        Self::Pound,
        Self::Percent,
        Self::Millilitre,
        Self::Litre,
    ];

    /// What it measures.
    pub fn dimension(self) -> Dimension {
        match self {
            Self::Centimetre | Self::Millimetre | Self::Metre | Self::Inch => Dimension::Length,
            Self::MmHg | Self::Hectopascal | Self::Kilopascal | Self::Pascal => Dimension::Pressure,
            Self::NewtonPerMetre
            | Self::NewtonPerCentimetre
            | Self::CentinewtonPerCentimetre
            | Self::GramForcePerCentimetre => Dimension::Tension,
            Self::Newton | Self::KilogramForce | Self::GramForce => Dimension::Force,
            Self::Kilogram | Self::Gram | Self::Pound => Dimension::Mass,
            Self::Percent => Dimension::Ratio,
            Self::Millilitre | Self::Litre => Dimension::Volume,
        }
    }

    /// How it is written.
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Centimetre => "cm",
            Self::Millimetre => "mm",
            Self::Metre => "m",
            Self::Inch => "in",
            Self::MmHg => "mmHg",
            Self::Hectopascal => "hPa",
            Self::Kilopascal => "kPa",
            Self::Pascal => "Pa",
            Self::NewtonPerMetre => "N/m",
            Self::NewtonPerCentimetre => "N/cm",
            Self::CentinewtonPerCentimetre => "cN/cm",
            Self::GramForcePerCentimetre => "gf/cm",
            Self::Newton => "N",
            Self::KilogramForce => "kgf",
            Self::GramForce => "gf",
            Self::Kilogram => "kg",
            Self::Gram => "g",
            Self::Pound => "lb",
            Self::Percent => "%",
            Self::Millilitre => "mL",
            Self::Litre => "L",
        }
    }

    /// Reads a unit; a few everyday spellings are taken, letter case counts.
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim();
        match text {
            "inch" | "inches" => Some(Self::Inch),
            "mm Hg" => Some(Self::MmHg),
            "ml" => Some(Self::Millilitre),
            "l" => Some(Self::Litre),
            "lbs" => Some(Self::Pound),
            _ => Self::ALL.into_iter().find(|unit| unit.symbol() == text),
        }
    }

    /// Reads the unit of a column of lengths: in any case, as `CM`.
    pub fn of_heading(text: &str) -> Option<Self> {
        let found = Self::parse(text).or_else(|| Self::parse(&text.trim().to_ascii_lowercase()));
        found.filter(|unit| unit.tenth_millimetres().is_some())
    }

    /// Tenths of a millimetre in one unit of length, exact (an inch is 25.4 mm); none for others.
    pub fn tenth_millimetres(self) -> Option<i64> {
        match self {
            Self::Millimetre => Some(10),
            Self::Centimetre => Some(100),
            Self::Metre => Some(10_000),
            Self::Inch => Some(254),
            _ => None,
        }
    }

    /// What one unit is in the coherent SI unit of its dimension (m, Pa, N/m, N, kg, 1, m³).
    ///
    /// Basis: derived (unit definitions: inch 25.4 mm, pound 0.45359237 kg, standard gravity
    /// 9.80665 m/s², conventional mmHg 133.322387415 Pa).
    pub fn si(self) -> f64 {
        match self {
            Self::Centimetre | Self::Percent => 0.01,
            Self::Millimetre | Self::Gram | Self::Litre => 0.001,
            Self::Metre
            | Self::Pascal
            | Self::NewtonPerMetre
            | Self::CentinewtonPerCentimetre
            | Self::Newton
            | Self::Kilogram => 1.0,
            Self::Inch => 0.0254,
            Self::MmHg => super::PASCAL_PER_MMHG,
            Self::Hectopascal | Self::NewtonPerCentimetre => 100.0,
            Self::Kilopascal => 1000.0,
            Self::GramForcePerCentimetre => 0.980_665,
            Self::KilogramForce => super::STANDARD_GRAVITY,
            Self::GramForce => super::STANDARD_GRAVITY / 1000.0,
            Self::Pound => 0.453_592_37,
            Self::Millilitre => 1e-6,
        }
    }
}

/// The units that a file declares for its bare numbers; none where it declares none.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Units {
    declared: [Option<Unit>; 7],
}

impl Units {
    fn slot(dimension: Dimension) -> usize {
        Dimension::ALL.iter().position(|other| *other == dimension).unwrap_or_default()
    }

    /// The same units with `unit` declared for its dimension.
    #[must_use]
    pub fn with(mut self, unit: Unit) -> Self {
        if let Some(place) = self.declared.get_mut(Self::slot(unit.dimension())) {
            *place = Some(unit);
        }
        self
    }

    /// The unit declared for `dimension`.
    pub fn of(self, dimension: Dimension) -> Option<Unit> {
        self.declared.get(Self::slot(dimension)).copied().flatten()
    }
}
