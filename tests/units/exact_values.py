"""usage: exact_values.py FILE: for each line "kind<tab>number<tab>unit" the nearest double in the kind's base unit.

An oracle of its own: the factors stand here once more, as fractions, and Python rounds them. π to 110 digits.
"""
import sys
from fractions import Fraction as F

PI = F("3.141592653589793238462643383279502884197169399375105820974944592307816406286208998628034825342117067982148086513282")
INCH = F("25.4")
LBF = F("0.45359237") * F("9.80665")
FOOT = F("0.3048")

FACTORS = {
    "mm": 1, "µm": F(1, 1000), "cm": 10, "m": 1000, "in": INCH, "thou": INCH / 1000, "ft": 12 * INCH,
    "rad": 1, "mrad": F(1, 1000), "°": PI / 180, "turn": 2 * PI, "flat": PI / 3, "arcmin": PI / 180 / 60,
    "arcsec": PI / 180 / 3600,
    "km": 1, "mi": F("1.609344"),
    "1/K": 1, "ppm/K": F(1, 10**6), "1/°F": F(9, 5), "ppm/°F": F(9, 5) / 10**6,
    "N": 1, "kN": 1000, "lbf": LBF,
    "N·m": 1, "lbf·ft": LBF * FOOT, "lbf·in": LBF * FOOT / 12,
    "Pa": 1, "kPa": 1000, "MPa": 10**6, "bar": 10**5, "psi": LBF / (FOOT / 12) ** 2,
    "min": 1, "s": F(1, 60), "h": 60,
}
DISTANCE, TEMPERATURE, DIFFERENCE = 3, 4, 5


def number(text):
    sign = -1 if text.startswith("-") else 1
    text = text.lstrip("-")
    if "/" in text:
        whole, _, fraction = text.rpartition("-")
        return sign * (F(whole or 0) + F(fraction))
    return sign * F(text)


def base(kind, value, unit):
    if kind == TEMPERATURE:
        return {"°C": value, "K": value - F("273.15"), "°F": (value - 32) * 5 / 9}[unit]
    if kind == DIFFERENCE:
        return {"K": value, "°F": value * 5 / 9}[unit]
    if kind == DISTANCE and unit == "m":
        return value / 1000
    if unit in ("tpi", "DP"):
        return INCH / value
    return value * FACTORS[unit]


for line in open(sys.argv[1], encoding="utf-8"):
    kind_number, text, unit_symbol = line.rstrip("\n").split("\t")
    exact = base(int(kind_number), number(text), unit_symbol)
    print(float(exact).hex() if exact else "0x0p+0")
