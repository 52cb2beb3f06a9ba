"""Numbers, units and lists as a language writes them: CLDR's rules, through Babel."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.terms.languages import language

_UNITS = {
    "cm": "length-centimeter", "mm": "length-millimeter", "m": "length-meter", "in": "length-inch", "inches": "length-inch",
    "g": "mass-gram", "yd": "length-yard",
}


def decimal(value: float, code: str, digits: int = 1) -> str:
    """A number with at most so many digits after the decimal sign, without a sign for thousands: "7,7"."""
    from babel.numbers import format_decimal  # noqa: PLC0415 - carries all languages: only where one is written

    return str(format_decimal(round(value, digits), format=f"0.{'#' * digits}" if digits else "0", locale=language(code).locale))


def length(value: float, unit: str, code: str, digits: int = 2) -> str:
    """A length or mass with its unit: "7,7 cm". Raises ValueError for a unit that is none of mm, cm, m, in, yd, g."""
    from babel.units import format_unit  # noqa: PLC0415 - see decimal

    if unit not in _UNITS:
        raise ValueError(f"no unit {unit!r}")
    return str(format_unit(round(value, digits), _UNITS[unit], length="short", format=f"0.{'#' * digits}", locale=language(code).locale))


def unit_sign(unit: str, code: str) -> str:
    """A unit as it stands behind several numbers: "cm"."""
    said = length(5, unit, code)
    return said.replace("5", "").strip()


def listed(parts: Sequence[str], code: str) -> str:
    """A list with the language's word before the last: "A, B und C"."""
    from babel.lists import format_list  # noqa: PLC0415 - see decimal

    return str(format_list(list(parts), locale=language(code).locale))
