"""Frames of a language: Fluent messages (wording/frames/*.ftl), with gender and case chosen by what fills them.

Each slot `x` of a frame brings variables with it: `$x` the words, `$x-d` the words as they stand after an article, `$x-p` in the
plural, `$x-g` their gender, `$x-k` which frame made them, `$x-n` the number that decides the plural, `$x-t` "tog" for words that take
no "1" before them: stitches worked together, and what begins with a number. `$full` is "yes" where words are written out.
BY($x-g, f: "die", n: "das", other: "den") chooses by such a variable.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Any, Self, cast

from loopwright.shipped import shipped_text
from loopwright.terms.languages import language

if TYPE_CHECKING:
    from fluent.runtime import FluentBundle

SHARED = "shared"
_COUNTED = frozenset({"make_between", "make_taking"})  # these begin with a number already


class Words(str):
    """Words that fill a slot, with their grammar."""

    __slots__ = ("definite", "gender", "key", "number", "plural", "together")
    definite: str
    gender: str
    key: str
    number: int | None
    together: bool
    plural: str

    def __new__(
        cls, text: str, *, definite: str | None = None, gender: str = "", key: str = "", number: int | None = None, together: bool = False,
        plural: str | None = None,
    ) -> Self:
        """`number`: what number decides the plural; None where the words are no number."""
        made = super().__new__(cls, text)
        made.plural = text if plural is None else plural
        made.definite = text if definite is None else definite
        made.gender, made.key, made.number, made.together = gender, key, number, together
        return made


def _by(value: object, **named: object) -> str:
    """The word for a value ("n1" for the number 1); "other" for one that is not listed."""
    key = str(value)
    return str(named.get(f"n{key}" if key.isdigit() else key, named.get("other", "")))


@cache
def bundle(code: str) -> FluentBundle:
    """The frames of a language: those that all share, then its own. Raises ValueError for a language that there is none of."""
    from fluent.runtime import FluentBundle, FluentResource  # noqa: PLC0415 - brings the plural rules of all languages: only where one is written

    made = FluentBundle([language(code).locale.replace("_", "-")], functions={"BY": cast(Any, _by)}, use_isolating=False)
    for name in (SHARED, code):
        made.add_resource(FluentResource(source(name)), allow_overrides=True)
    return made


def source(name: str) -> str:
    """The text of a file of frames."""
    return shipped_text("loopwright.wording", f"frames/{name}.ftl")


@cache
def keys(code: str) -> frozenset[str]:
    """Which frames a language has."""
    from fluent.syntax import FluentParser  # noqa: PLC0415 - see bundle
    from fluent.syntax.ast import Message  # noqa: PLC0415

    parsed = [FluentParser().parse(source(name)) for name in (SHARED, code)]
    return frozenset(entry.id.name for p in parsed for entry in p.body if isinstance(entry, Message))


def filled(code: str, frame: str, slots: Mapping[str, object], *, full: bool = False, attribute: str = "") -> str:
    """A frame with its slots filled. Raises KeyError for a frame that the language has not, ValueError for one that cannot be filled."""
    frames = bundle(code)
    message = frames.get_message(frame)
    pattern = message.attributes.get(attribute) if attribute else message.value
    if pattern is None:
        raise KeyError(f"{frame}.{attribute}")
    text, errors = frames.format_pattern(pattern, {"full": "yes" if full else "no", **_variables(slots)})
    if errors:
        raise ValueError(f"frame {frame} of {code}: {errors[0]}")
    return str(text)


def _variables(slots: Mapping[str, object]) -> dict[str, object]:
    found: dict[str, object] = {}
    for name, value in slots.items():
        words = value if isinstance(value, Words) else Words(str(value), number=value if isinstance(value, int) else None)
        found[name] = str(words)
        found[f"{name}-d"], found[f"{name}-g"], found[f"{name}-k"] = words.definite, words.gender, words.key
        found[f"{name}-n"] = 2 if words.number is None else words.number
        found[f"{name}-p"] = words.plural
        found[f"{name}-t"] = "tog" if words.together or words.key in _COUNTED else "one"
    return found
