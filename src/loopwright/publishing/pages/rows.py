"""Rows of the instructions as the template takes them: their words, and the numbers of every size in lines below."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from loopwright.publishing.document import Instructions, Publication, Remark, Step, Text, Varies, in_brackets
from loopwright.publishing.document.running import varies
from loopwright.publishing.pages.faces import Faces
from loopwright.publishing.pages.sheet import POINT_MM, Sheet, column_mm
from loopwright.publishing.pages.signs import plain
from loopwright.publishing.pages.texts import Blanks, pieces

_NUMBER = re.compile(r"(?P<number>\d[\d.,]*)(?=\s|$)\s*(?P<unit>.*)$", re.DOTALL)
_ANY_NUMBER = re.compile(r"\d")
_JOINS = re.compile(r"[\s,;]+(?:(?:and|und|et|y|e|en|och|og)\s*)?$")  # between two counts, which stand on lines of their own
NOT_WORKED = "–"
MOST_TICKS = 60
LARGEST_PT, LARGEST_BOLD_PT, SMALLEST_PT = 10.0, 10.5, 6.5
_AIR_MM = 2.0  # beside a number in its column


class Rows:
    """Lays the rows of one publication out."""

    def __init__(self, publication: Publication, sheet: Sheet, faces: Faces) -> None:
        self.publication = publication
        self.sheet = sheet
        self.faces = faces
        self.columns = sheet.form == "columns"
        self.room_pt = (column_mm(len(publication.sizes)) - _AIR_MM) / POINT_MM

    def section(self, section: Instructions) -> dict[str, Any]:
        """A section with its rows."""
        rows = [self._remark(s) if isinstance(s, Remark) else self._step(s) for s in section.steps]
        first = next((r for r in rows if r["kind"] == "step"), None)
        if first is not None and not first["film"]:  # so that no heading is left alone with it at the foot of a page
            first["film"] = _address(section.film)
        return {"kind": "instructions", "ident": section.ident, "title": plain(section.title), "rows": rows}

    def _remark(self, remark: Remark) -> dict[str, Any]:
        row: dict[str, Any] = {"kind": "remark", "own": remark.own, "lines": [], "long": self._long(remark.text)}
        if not self.columns or not varies(remark.text):
            return row | {"words": pieces(remark.text)}
        blanks = Blanks()
        words = blanks.pieces(remark.text)
        return row | {"words": words, "lines": [self._line(**line, worked=not remark.own) for line in blanks.lines()]}

    def _step(self, step: Step) -> dict[str, Any]:
        row: dict[str, Any] = {
            "kind": "step", "lead": plain(step.lead).strip(), "ticks": _ticks(step), "film": _address(step.film),
            "long": self._long(step.words), "lines": [], "whole": None,
        }
        if not self.columns:
            return row | {"label": pieces(step.label), "words": pieces(step.words), "whole": _whole(step)}
        blanks = Blanks()
        row |= {"label": blanks.pieces(step.label), "words": blanks.pieces(step.words)}
        if not step.label:  # what stands before the row is all the name it has
            row |= {"label": [row["lead"].removesuffix(":")] if row["lead"] else [], "lead": ""}
        whole, counts = _counts(step, blanks)
        row["lines"] = [self._line(**line) for line in _merged(blanks.lines(), counts, len(self.publication.sizes))]
        if whole is not None and row["lines"]:
            values = [whole["number"] or NOT_WORKED] * len(self.publication.sizes)
            row["lines"].append(self._line(values=values, unit=whole["unit"], worked=whole["worked"], bold=True))
            whole = None
        return row | {"whole": whole}

    def _line(
        self, *, values: list[str], letter: str = "", unit: str = "", worked: bool = False, bold: bool = False,
    ) -> dict[str, Any]:
        """A line of numbers, one to a column, in type that fits the column."""
        widest = max(self.faces.width_em(v) for v in values)
        size_pt = min(LARGEST_BOLD_PT if bold else LARGEST_PT, self.room_pt / widest if widest else LARGEST_PT)
        return {
            "letter": letter, "unit": plain(unit), "values": values, "worked": worked, "bold": bold,
            "size_pt": round(max(SMALLEST_PT, size_pt), 2),
        }

    def _long(self, text: Text) -> bool:
        return len(in_brackets(text)) > self.sheet.longest


def _address(text: str) -> str:
    """An address on the web, as a link may have it; "" for anything else."""
    return text if text.startswith(("https://", "http://")) else ""


def _ticks(step: Step) -> int:
    """How many rows there are to tick: one box each where that is the same in all sizes."""
    known = {len(rows) for rows in step.each}
    count = known.pop() if len(known) == 1 else 1
    return count if 1 <= count <= MOST_TICKS else 1


def _worked(step: Step) -> list[str]:
    return [NOT_WORKED if n is None else str(n) for n in step.counts]


def _whole(step: Step) -> dict[str, Any] | None:
    """The count as one number with what it counts; all sizes in brackets where they differ. None where there is none."""
    said = plain(in_brackets(step.count)).strip()
    counts = _worked(step)
    if not said:
        known = [c for c in counts if c != NOT_WORKED]
        if not known:
            return None
        number = counts[0] if len(set(counts)) == 1 else f"{counts[0]} ({', '.join(counts[1:])})"
        return {"number": number, "unit": "", "worked": True}
    m = _NUMBER.match(said)
    if m is None or varies(step.count):
        return {"number": "", "unit": said, "worked": False}
    return {"number": m["number"], "unit": m["unit"], "worked": all(c == m["number"] for c in counts)}


def _counts(step: Step, blanks: Blanks) -> tuple[dict[str, Any] | None, list[dict[str, Any]]]:
    """The count for columns: one for all sizes, or lines of numbers."""
    counts = _worked(step)
    if varies(step.count):
        return None, list(_varying(step, counts))
    whole = _whole(step)
    if whole is None:
        return None, []
    if not step.count:
        same = len(set(counts)) == 1
        if same and not blanks.lists:
            return whole, []
        if tuple(counts) in blanks.lists or (same and any(_ANY_NUMBER.search(v) is None for v in counts)):
            return None, []
        return None, [{"values": counts, "worked": True, "bold": True}]
    if NOT_WORKED in counts and any(s is None for s in step.by_size):
        number = whole["number"] or whole["unit"]
        values = [NOT_WORKED if s is None else number for s in step.by_size]
        return None, [{"values": values, "unit": whole["unit"] if whole["number"] else "", "worked": whole["worked"], "bold": True}]
    return whole, []


def _varying(step: Step, counts: list[str]) -> Iterator[dict[str, Any]]:
    """A line per list of numbers in the count, each with the words that follow it."""
    before = ""
    held: dict[str, Any] | None = None
    for part in step.count:
        if isinstance(part, Varies):
            if held is not None:
                yield {**held, "unit": _JOINS.sub("", held["unit"] + " ")}
            values = [plain(v) for v in part.values]
            held = {"values": values, "unit": before, "worked": values == counts, "bold": True}
            before = ""
        elif held is None:
            before = part.strip() + " "
        else:
            held["unit"] = f"{held['unit']}{part}".strip()
    if held is not None:
        yield held


def _merged(lettered: list[dict[str, Any]], counts: list[dict[str, Any]], sizes: int) -> Iterator[dict[str, Any]]:
    """Lines of the words, then those of the count; a count that is one of the words' own numbers shares its line."""
    left = list(counts)
    for line in lettered:
        same = next((c for c in left if c["values"] == line["values"]), None)
        if same is not None:
            left.remove(same)
        yield {**line, **same} if same is not None else line
    yield from (c for c in left if len(c["values"]) == sizes)
