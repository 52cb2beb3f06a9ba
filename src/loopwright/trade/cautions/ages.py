"""For whom a thing is: by the names of its sizes, and by words, where the sizes tell no age."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.trade import sizes

_MONTHS = re.compile(r"(?<![\d.])(\d{1,2})\s*(?:(?:-|–|/|to)\s*(\d{1,2})\s*)?-?(?:months?|mos?|mths?|mnths?|m)\b", re.IGNORECASE)
_YEARS = re.compile(r"(?<![\d.])(\d{1,2})\s*(?:(?:-|–|/|to)\s*(\d{1,2})\s*)?-?(?:years?|yrs?|y|t)\b", re.IGNORECASE)
# names of sizes that tell an age by themselves, in months; a blanket for a pram is for a baby. Common practice, no source.
_NAMED = (
    (re.compile(r"\b(?:pre-?em(?:ie|y)|premature|new ?born|nb|birth|baby|babies|infants?|pram|cot|crib|bassinet|moses|stroller)\b"), 0),
    (re.compile(r"\b(?:toddlers?)\b"), 24),
    (re.compile(r"\b(?:child|children|kids?|girls?|boys?)\b"), 72),
)
_GROWN = re.compile(r"\b(?:adults?|wom[ae]n|m[ae]n|lad(?:y|ies)|gentlem[ae]n|grown-?ups?|teens?|teenagers?|unisex)\b")
_LETTERS = re.compile(r"(?:x{0,3}[sml]|[1-6]xl?|(?:x-?|extra )?(?:small|medium|large)(?:er|est)?|size \d+|one size|\d{1,2})")
# what is for a baby without saying so, and words that speak of another thing
_BABY = re.compile(
    r"\b(?:bab(?:y|ies)"
    r"(?![ -](?:yarn|wool|weight|alpaca|blue|pink|merino|llama|camel|cashmere|cotton|dolls?|hook|shells?|bobbles?|soft|shower))"
    r"|infants?|newborns?|pre-?em(?:ie|y)s?|neonatal|nicu|pram|cot|crib|nursery|layette|christening|baptism|rompers?|onesies?|bibs?|boot(?:ie|ee)s?"
    r"|pacifiers?|dumm(?:y|ies) clips?|teethers?|rattles?|love(?:y|ys|ies))\b",
)
_SHAPED = re.compile(r"\b(?:pin ?cushion|ornament|bauble|garland)s?\b")  # a bootie to look at is for nobody's foot
_TODDLER = re.compile(r"\b(?:toddlers?|under three|small child(?:ren)?|pinafore)\b")
_CHILD = re.compile(r"\b(?:child|children|childrens|kids|boys?|girls?)\b")
YOUNGEST, BABY, TODDLER, CHILD = 0, 12, 36, 168


def months_of(size_name: str) -> int | None:
    """The age in months that a size is for, the upper end of a range; None for a size that tells none."""
    said = " ".join(size_name.lower().split())
    for pattern, each in ((_MONTHS, 1), (_YEARS, 12)):
        m = pattern.search(said)
        if m:
            return int(m[2] or m[1]) * each
    if _LETTERS.fullmatch(said):
        return None
    name = sizes.size_name(size_name)
    m = re.fullmatch(r"(\d+) (months|years)", name)
    if m:
        return int(m[1]) * (12 if m[2] == "years" else 1)
    return None if is_grown(said) else next((months for words, months in _NAMED if words.search(said)), None)


def is_grown(size_name: str) -> bool:
    """Whether the name says that the size is for a grown-up or nearly."""
    return _GROWN.search(size_name.lower()) is not None


def ages_of(size_name: str) -> frozenset[str]:
    """The ages a size is for: "baby" to 12 months, "toddler" to 3 years, "child" to 14 years; none for a grown-up's."""
    months = months_of(size_name)
    if months is None:
        return frozenset()
    bands = (("baby", YOUNGEST, BABY), ("toddler", BABY, TODDLER), ("child", TODDLER, CHILD))
    return frozenset(age for age, low, high in bands if low <= months <= high)


def spoken_of(text: str) -> frozenset[str]:
    """The ages that words in lower case speak of."""
    if _SHAPED.search(text) or _GROWN.search(text) and not _BABY.search(text.replace("bootie", "").replace("bootee", "")):
        return frozenset()
    months = [int(m[2] or m[1]) for m in _MONTHS.finditer(text) if m.group()[-1] != "m" or m[2]]
    found = {age for age, words in (("baby", _BABY), ("toddler", _TODDLER), ("child", _CHILD)) if words.search(text)}
    return frozenset(found | {"baby" for n in months if n <= BABY} | {"toddler" for n in months if BABY <= n <= TODDLER})


def by_size(names: Sequence[str], spoken: frozenset[str]) -> tuple[frozenset[str], ...]:
    """The ages of every size: its own; where no size tells an age or a grown-up, those that the words speak of."""
    told = [ages_of(name) for name in names]
    silent = not any(told) and not any(is_grown(name) for name in names)
    return tuple(spoken if silent else ages for ages in told)
