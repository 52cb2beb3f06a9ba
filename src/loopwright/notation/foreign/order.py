"""Words put into the order that the English reader wants: rules as data (`terms/reading`), and the few moves that rules cannot tell."""

from __future__ import annotations

import re
from functools import cache
from itertools import count, pairwise
from typing import NamedTuple

from loopwright.notation.foreign.words import Word
from loopwright.terms.reading import Order, Table

_CODES: dict[str, str] = {}
_NEXT = count(0x4E00)
MACROS = {
    "NOUN": "(?:st|sp|kind|chain|ring|thing|tch|line|course|edge)",
    "WHICH": "(?:each|next|last|same|ord|num|lp|of|any|centre|dash)",
    "PLACE": "(?:in WHICH*NOUN(?:of WHICH*NOUN)*(?:fromhook)?(?:(?:around|toend))?)",
}


class Rule(NamedTuple):
    """A compiled rule: where it fits, what it makes."""

    found: re.Pattern[str]
    made: str
    end: str


def code(sort: str) -> str:
    """The one letter that stands for a sort of word."""
    known = _CODES.get(sort)
    if known is None:
        known = _CODES[sort] = chr(next(_NEXT))
    return known


def coded(found: str) -> str:
    """An expression over sorts of words as one over their letters."""
    for _ in range(3):
        for name, what in MACROS.items():
            found = found.replace(name, what)
    return re.sub(r"[a-z]+", lambda m: code(m.group()), found).replace(" ", "")


def coded_words(words: list[Word]) -> str:
    """The sorts of words as letters, words that are left out left out."""
    return "".join(code(w.sort) for w in words if w.sort != "drop")


def _beside(sorts: str, form: str) -> str:
    return form.format("".join(code(s) for s in sorts.split())) if sorts else ""


def _rule(order: Order) -> Rule:
    behind = _beside(order.after, "(?<=[{}])") + _beside(order.unless_after, "(?<![{}])")
    ahead = _beside(order.before, "(?=[{}])") + _beside(order.unless_before, "(?![{}])")
    return Rule(re.compile(behind + coded(order.found) + ahead), order.made, order.end)


@cache
def _rules(table: Table) -> tuple[Rule, ...]:
    return tuple(_rule(o) for o in table.orders)


def ordered(words: list[Word], table: Table) -> list[Word]:
    """The words of a row in the reader's order."""
    words = [w for w in words if w.sort != "drop"]
    words = [w for before, w in pairwise([Word("", "", 0, 0), *words]) if not (w.sort == "num" and w.made == "1" and before.sort in _COUNTING)]
    words = _brackets_before_times(_verbs_first(words, table.verbs_last))
    said = coded_words(words)
    for rule in _rules(table):
        if rule.found.search(said):
            words = _applied(words, rule, said)
            said = coded_words(words)
    return [w._replace(made="dec") if w.made == "2 sts tog" else w for w in _alternated(words)]


def _applied(words: list[Word], rule: Rule, said: str) -> list[Word]:
    """The words with a rule put to use wherever it fits; `said`: their sorts as letters."""
    made: list[Word] = []
    late: list[Word] = []
    at = 0
    for m in rule.found.finditer(said):
        if m.end() == m.start():
            continue
        made.extend(words[at : m.start()])
        made.extend(_filled(rule.made, m, words))
        if rule.end:
            late.extend(_filled(rule.end, m, words))
        at = m.end()
    return [*made, *words[at:], *late] if at else words


def _filled(form: str, m: re.Match[str], words: list[Word]) -> list[Word]:
    """What a rule makes: "{2}" is the words of a group, "dc:…" a word of a sort; letters stand for all that was found."""
    all_of = words[m.start() : m.end()]
    start, end = min(w.start for w in all_of), max(w.end for w in all_of)
    made: list[Word] = []
    for part in form.split():
        group = re.fullmatch(r"\{(\d)\}", part)
        if group:
            a, b = m.span(int(group[1]))
            made.extend(w._replace(gap=True) if i == 0 else w for i, w in enumerate(words[max(0, a) : max(0, b)]))
            continue
        glued = re.sub(r"\{(\d)\}", lambda g: " ".join(w.made for w in words[m.start(int(g[1])) : m.end(int(g[1]))]), part)
        sort, _, said = glued.rpartition(":")
        made.append(Word(sort or "word", said.replace("_", " "), start, end))
    return made


_COUNTING = frozenset({"countsas", "countsnot", "eq"})  # "zählt als 1 Stb": as a dc
_BOUNDS = frozenset("sep open close star and then end".split())


def _verbs_first(words: list[Word], verbs: frozenset[str]) -> list[Word]:
    """A verb that ends its clause goes to the clause's beginning: "2 M überspringen" as "überspringen 2 M"."""
    made: list[Word] = []
    begin = 0
    for w in words:
        if w.sort in verbs and len(made) > begin and any(x.sort != "word" for x in made[begin:]):
            made.insert(begin, w._replace(gap=True))
        else:
            made.append(w)
        if w.sort in _BOUNDS:
            begin = len(made)
    return made


def _closing(words: list[Word], at: int) -> int | None:
    """The index of the bracket that closes the one at an index."""
    depth = 0
    for i in range(at, len(words)):
        depth += {"open": 1, "close": -1}.get(words[i].sort, 0)
        if depth == 0:
            return i
    return None


def _brackets_before_times(words: list[Word]) -> list[Word]:
    """ "6x (1 fM, 1 Zun)" as "(1 fM, 1 Zun) 6x"; "(…) 6x (…)" stays."""
    at = 0
    while at + 1 < len(words):
        gap = 2 if words[at + 1].sort == "sep" and words[at + 1].made == ":" and at + 2 < len(words) else 1
        before = words[at - 1].sort if at else "sep"
        if words[at].sort == "times" and at + gap < len(words) and words[at + gap].sort == "open" and before not in ("close", "star", "rep", "more"):
            close = _closing(words, at + gap)
            if close is not None:
                times = words[at]._replace(gap=True)
                words = [*words[:at], *words[at + gap : close + 1], times, *words[close + 1 :]]
        at += 1
    return words


def _alternated(words: list[Word]) -> list[Word]:
    """ "1 fM, 1 Zun im Wechsel": the clauses of the sentence in turn, to the end of the row."""
    at = next((i for i, w in enumerate(words) if w.sort == "alt"), None)
    if at is None:
        return words
    alt = words[at]
    begin = at
    while begin and not (words[begin - 1].sort == "sep" and words[begin - 1].made in ".;:"):
        begin -= 1
    end = at + 1
    while end < len(words) and not (words[end].sort == "sep" and words[end].made in ".;" or words[end].sort in ("eq", "join", "turn") or words[end].sort == "open" and end > at + 3):
        end += 1
    inside = [w for w in words[begin:end] if w is not alt]
    while inside and inside[-1].sort in ("sep", "word", "in", "around", "toend", "and"):
        inside.pop()
    lead = next((i for i, w in enumerate(inside) if w.sort == "chain" and i == 0 and len(inside) > 3 and inside[1].sort == "sep"), None)
    kept = inside[:2] if lead is not None else []
    star = alt._replace(sort="star", made="*")
    again = [Word("sep", ";", alt.start, alt.end, gap=False), Word("rep", "rep from * around", alt.start, alt.end)]
    return [*words[:begin], *kept, star, *inside[len(kept) :], *again, *words[end:]]
