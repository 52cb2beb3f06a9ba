"""A small writer of elements. What is not markup already is escaped; what XML cannot hold is left out."""

from __future__ import annotations

import re
from collections.abc import Iterable

_ILLEGAL = re.compile("[^\t\n\r\u0020-\u007e\u00a0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_.:-]*")

Attribute = str | int | bool | None


class Markup(str):
    """Text that is markup: made by the functions of this file, or checked."""

    __slots__ = ()


def escaped(text: str) -> str:
    """Text as it may stand in an element or in an attribute in double quotes."""
    clean = text if text.isascii() and text.isprintable() else _ILLEGAL.sub("", text)
    return clean.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


def el(name: str, /, *children: str, **attributes: Attribute) -> Markup:
    """An element with its children in order; plain text among them is escaped.

    Attributes: `class_` is class, `aria_label` is aria-label, `epub__type` is epub:type; None and False are left out, True is said by its
    name alone. Raises ValueError for a name that is none.
    """
    inside = "".join(c if isinstance(c, Markup) else escaped(c) for c in children)
    return Markup(f"<{_named(name)}{_said(attributes)}>{inside}</{name}>")


def void(name: str, /, *, xml: bool = False, **attributes: Attribute) -> Markup:
    """An element that never has children, such as img; `xml`: closed as XML asks for. Attributes as of `el`."""
    return Markup(f"<{_named(name)}{_said(attributes)}{'/' if xml else ''}>")


def join(parts: Iterable[str]) -> Markup:
    """Elements and text, one after the other."""
    return Markup("".join(p if isinstance(p, Markup) else escaped(p) for p in parts))


def _named(name: str) -> str:
    if not _NAME.fullmatch(name):
        raise ValueError(f"'{name}' is no name of an element or attribute")
    return name


def _said(attributes: dict[str, Attribute]) -> str:
    found = []
    for key, value in attributes.items():
        if value is None or value is False:
            continue
        name = _named(key.rstrip("_").replace("__", ":").replace("_", "-"))
        found.append(f' {name}="{"" if value is True else escaped(str(value))}"')
    return "".join(found)
