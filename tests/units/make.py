"""Makes conversions.csv: figures converted by an independent library, in exact fractions.

The library is pint (PyPI), whose unit definitions are its own; with Fraction as its number type
nothing is rounded. Run from any folder:

    pip install pint
    python tests/units/make.py

The numbers are drawn from a fixed start, so that the same table comes out every time.
"""

import csv
import random
from fractions import Fraction
from pathlib import Path

import pint

# Our spelling of each unit, and the library's name for it.
KINDS = [
    {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot", "yd": "yard"},
    {
        "mm²": "millimeter**2",
        "cm²": "centimeter**2",
        "m²": "meter**2",
        "in²": "inch**2",
        "yd²": "yard**2",
    },
    {"°C": "degC", "°F": "degF"},
    {"s": "second", "min": "minute", "h": "hour"},
    {"g": "gram", "kg": "kilogram", "oz": "ounce"},
]
EACH = 5


def number(draw: random.Random) -> str:
    """A number as an author writes it: whole, decimal, or whole and fraction."""
    form = draw.randrange(3)
    if form == 0:
        return str(draw.randrange(0, 2000))
    if form == 1:
        return f"{draw.randrange(0, 500)}.{draw.randrange(0, 1000):03}"
    bottom = draw.choice([2, 3, 4, 8, 16, 32, 64])
    return f"{draw.randrange(1, 100)} {draw.randrange(1, bottom)}/{bottom}"


def value(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def main() -> None:
    units = pint.UnitRegistry(non_int_type=Fraction)
    draw = random.Random(1959)
    path = Path(__file__).with_name("conversions.csv")
    with path.open("w", newline="", encoding="utf-8") as file:
        rows = csv.writer(file, lineterminator="\n")
        rows.writerow(["number", "from", "to", "numerator", "denominator"])
        for kind in KINDS:
            for source in kind:
                for target in kind:
                    for _ in range(EACH if len(kind) > 2 else 5 * EACH):
                        text = number(draw)
                        figure = units.Quantity(value(text), kind[source])
                        result = figure.to(kind[target]).magnitude
                        if not isinstance(result, (Fraction, int)):
                            raise TypeError(f"{text} {source} came back rounded: {result!r}")
                        result = Fraction(result)
                        rows.writerow([text, source, target, result.numerator, result.denominator])


if __name__ == "__main__":
    main()
