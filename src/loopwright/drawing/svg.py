"""Writing SVG: elements as text, numbers short and always alike."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from xml.sax.saxutils import escape, quoteattr

Point = tuple[float, float]
_IDENT = re.compile(r"[A-Za-z_][A-Za-z0-9_-]*")


def number(value: float) -> str:
    """To a hundredth of a pixel, without noughts at the end, and never -0."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def path(name: str, points: Sequence[Point], *, closed: bool = False, more: str = "") -> str:
    """A line of a class through points."""
    places = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    return f'<path class="{name}"{more} d="M{places}{"Z" if closed else ""}"/>'


def text(name: str, at: Point, words: str, *, anchor: str = "start") -> str:
    """A line of text of a class."""
    place = "" if anchor == "start" else f' text-anchor="{anchor}"'
    return f'<text class="{name}" x="{number(at[0])}" y="{number(at[1])}"{place}>{escape(words)}</text>'


def rect(name: str, at: Point, size: tuple[float, float]) -> str:
    """An upright rectangle of a class."""
    return f'<rect class="{name}" x="{number(at[0])}" y="{number(at[1])}" width="{number(size[0])}" height="{number(size[1])}"/>'


def data(**values: str | float) -> str:
    """Attributes data-…, in the order given."""
    return "".join(f" data-{k.replace('_', '-')}={quoteattr(v if isinstance(v, str) else f'{v:.4f}')}" for k, v in values.items())


def group(inside: Iterable[str], attributes: str = "") -> str:
    """Elements together."""
    return f"<g{attributes}>{''.join(inside)}</g>"


def document(
    ident: str, scope: str, size_px: tuple[float, float], told: tuple[str, str], inside: Iterable[str], *, shown_px: float = 0.0,
) -> str:
    """A whole file.

    `ident`: begins its ids; `scope`: the class of its root; `told`: its title and its description in words; `shown_px`: how wide it is
    shown, 0 for as large as it is drawn. Raises ValueError for an ident that is no name: ids of two drawings in one page must differ.
    """
    if not _IDENT.fullmatch(ident):
        raise ValueError(f"'{ident}' cannot begin an id: letters, digits, - and _, a letter first")
    wide, high = (number(v) for v in size_px)
    shown = f'width="{wide}" height="{high}"'
    if shown_px > 0:
        shown = f'width="{number(shown_px)}" height="{number(shown_px * size_px[1] / size_px[0])}"'
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{scope}" role="img" aria-labelledby="{ident}-title {ident}-desc" '
        f'viewBox="0 0 {wide} {high}" {shown}>'
    )
    title, desc = f'<title id="{ident}-title">{escape(told[0])}</title>', f'<desc id="{ident}-desc">{escape(told[1])}</desc>'
    return "".join([head, title, desc, *inside, "</svg>\n"])
