"""Short phrases between instructions that recur from pattern to pattern ("With A", "do not turn"), by what they say in English."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from loopwright.wording.languages.voice import LanguageVoice

# what is said -> frame; named groups fill its slots
_PHRASES: tuple[tuple[re.Pattern[str], str], ...] = tuple((re.compile(ways, re.IGNORECASE), frame) for ways, frame in (
    (r"(?:with|using|in) (?:colou?r )?(?P<colour>(?-i:[A-Z]{1,3}))", "with_colour"),
    (r"change to (?:colou?r )?(?P<colour>(?-i:[A-Z]{1,3}))", "change_to_colour"),
    (r"fasten off (?P<colour>(?-i:[A-Z]{1,3}))", "fasten_off_colour"),
    (r"fasten off", "fasten_off"),
    (r"(?:the )?ch(?:ain)?s? counted", "chains_counted"),
    (r"do not turn", "do_not_turn"),
    (r"do not fasten off", "do_not_fasten_off"),
    (r"do not turn and do not fasten off", "no_turn_no_fasten"),
    (r"(?:piece|work|it) measures (?:about |approx\.? )?(?P<length>\d+(?:\.\d+)?) (?P<unit>cm|mm|in|inches)", "measures"),
    (r"taking care not to twist(?: the ch(?:ain)?)?", "not_twisted"),
    (r"(?:and )?weave in (?:the )?ends", "weave_in"),
    (r"fasten off and weave in (?:the |all )?ends", "fasten_off_weave_in"),
    (r"working (?:along|in|into) the other side of the ch(?:ain)?", "working_underside"),
))


def phrase(voice: LanguageVoice, said: str) -> str | None:
    """The phrase in the language of the voice; None where the book has not got it."""
    words = " ".join(said.strip(" .,;").split())
    for pattern, frame in _PHRASES:
        if m := pattern.fullmatch(words):
            slots: dict[str, object] = dict(m.groupdict())
            if "length" in slots:
                from loopwright.wording.languages.numbers import length  # noqa: PLC0415 - Babel only where a length is said

                slots = {"length": length(float(m["length"]), m["unit"], voice.code)}
            return voice.say(frame, **slots)
    return None


def frames() -> frozenset[str]:
    """The frames that the book needs."""
    return frozenset(frame for _, frame in _PHRASES)
