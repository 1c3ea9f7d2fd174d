"""Writes `symbol,factor` for every unit of the input files: what one of it is in the coherent SI unit, as
the library `pint` defines it."""

import pint

UNITS = {
    "cm": ("centimeter", "meter"),
    "mm": ("millimeter", "meter"),
    "m": ("meter", "meter"),
    "in": ("inch", "meter"),
    "mmHg": ("millimeter_Hg", "pascal"),
    "hPa": ("hectopascal", "pascal"),
    "kPa": ("kilopascal", "pascal"),
    "Pa": ("pascal", "pascal"),
    "N/m": ("newton / meter", "newton / meter"),
    "N/cm": ("newton / centimeter", "newton / meter"),
    "cN/cm": ("centinewton / centimeter", "newton / meter"),
    "gf/cm": ("gram * standard_gravity / centimeter", "newton / meter"),
    "N": ("newton", "newton"),
    "kgf": ("kilogram_force", "newton"),
    "kg": ("kilogram", "kilogram"),
    "g": ("gram", "kilogram"),
    "gf": ("gram * standard_gravity", "newton"),
    "lb": ("pound", "kilogram"),
    "%": ("percent", "dimensionless"),
    "mL": ("milliliter", "meter ** 3"),
    "L": ("liter", "meter ** 3"),
}

registry = pint.UnitRegistry()
for symbol, (unit, coherent) in UNITS.items():
    print(f"{symbol},{registry.Quantity(1.0, unit).to(coherent).magnitude!r}")
