"""A lesson's captions become a draft of the written pattern, each row with its time, each doubt with its words."""

from __future__ import annotations

from loopwright.listening.about import About, about
from loopwright.listening.captions import heard
from loopwright.listening.corrections import TakenBack, settled
from loopwright.listening.hearing import Hearing
from loopwright.listening.rows import Drafted, drafted
from loopwright.listening.words import trade_words
from loopwright.record import record

MOST_WORDS = 60_000


@record
class Doubt:
    """Words that leave something open. `at_s`: the second they are said at; `assumed`: what the draft takes them to mean."""

    at_s: float | None
    words: str
    assumed: str
    line: int | None = None


@record
class Timed:
    """When the rows of a line of the draft are worked. `line`: of the draft, from 1; seconds, None without times."""

    line: int
    at_s: float | None
    until_s: float | None


@record
class Draft:
    """The draft. `text`: the written pattern; `rows`: the times of its lines; `note`: why there are no rows, where there are none."""

    text: str
    rows: tuple[Timed, ...]
    doubts: tuple[Doubt, ...]
    terms: str
    timed: bool
    note: str | None = None


def listen(text: str, terms: str | None = None) -> Draft:
    """The draft of a lesson out of its captions: WebVTT, SRT, lines with a time in front, or plain lines. Never raises.

    `terms`: us or uk, where it is known; else it is found out from the words. A row is only written where words of the lesson ask for it.
    """
    said = heard(text)[:MOST_WORDS]
    timed = any(h.at_s is not None for h in said)
    if not said:
        return Draft("", (), (), terms or "us", timed=False, note="there are no words in these captions")
    line, back = settled(trade_words(said))
    facts = about(said, line)
    which = terms or facts.terms
    if facts.language != "English":
        return Draft("", (), (), which, timed, f"these captions are in {facts.language}; lessons are understood in English only")
    if facts.craft != "crochet":
        spoken = f"is {facts.craft}" if facts.craft else "does not speak of crochet"
        return Draft("", (), (), which, timed, f"no row was heard: this {spoken}, and crochet only is understood")
    hearing = Hearing(said, line, which)
    rows = drafted(hearing, facts)
    if not any(d.label for d in rows):
        return Draft("", (), (), which, timed, "no row was heard in these captions: nothing in them says what to work into what")
    return _put_together(hearing, facts, rows, back, timed=timed, known=terms is not None)


def _put_together(hearing: Hearing, facts: About, rows: list[Drafted], back: tuple[TakenBack, ...], *, timed: bool, known: bool) -> Draft:
    lines = _heading(hearing, facts, rows)
    times: list[Timed] = []
    doubts: list[Doubt] = []
    if not facts.told and not known:
        doubts.append(Doubt(0.0 if timed else None, "", f"{hearing.terms.upper()} terms, as the names of the stitches are said"))
    for d in rows:
        if d.section is not None:
            lines += ["", d.section] if d.section else [""]
        lines += d.before
        if d.label:
            lines.append(d.line)
            times.append(Timed(len(lines), d.at_s, d.until_s))
        doubts += [Doubt(hearing.at_s(i), hearing.words(i, j), assumed, len(lines)) for i, j, assumed in d.doubts]
    doubts += [Doubt(hearing.said[b.first].at_s, hearing.between(b.first, b.last), f"“{b.wrong}” was taken back: {b.right}") for b in back]
    doubts.sort(key=lambda d: d.at_s or 0.0)
    return Draft("\n".join(lines) + "\n", tuple(times), tuple(doubts), hearing.terms, timed)


def _heading(hearing: Hearing, facts: About, rows: list[Drafted]) -> list[str]:
    lines = [facts.title or "A Lesson", "A draft taken down from a filmed lesson; the times of its rows are kept beside it.", ""]
    if facts.size:
        lines.append(f"Sizes: {facts.size}")
    lines.append(f"Terms: {hearing.terms.upper()}")
    for name, value in (("Tension" if hearing.terms == "uk" else "Gauge", facts.gauge), ("Hook", facts.hook), ("Yarn", facts.yarn)):
        if value:
            lines.append(f"{name}: {value}")
    lines += [f"Notes: {n}" for d in rows for n in d.notes]
    fits = [f for d in rows for f in d.fits]
    if fits:
        lines += ["", "Fit", *fits]
    return lines

