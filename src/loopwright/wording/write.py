"""A whole pattern in words, out of its tree."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial

from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Document, FitLine, HeadLine, Join, Make, Node, Num, Prose, Ring, Row, Section, SpecialStitch
from loopwright.wording.as_written import translate
from loopwright.wording.choices import chooser, repeats_of
from loopwright.wording.heading import heading
from loopwright.wording.rows import row
from loopwright.wording.stitches import Scene
from loopwright.wording.voice import Voice


def write(
    document: Document, report: Report | None = None, *, terms: str, size: int | None = None, full_words: bool = False,
    spelled_out: bool = False, measurements: Mapping[str, Sequence[float | None]] | None = None,
) -> str:
    """The pattern as the trade writes it.

    `terms` is us, uk or old; `size` an index for one size alone, None for all in brackets; `full_words` writes stitches
    out; `spelled_out` writes repeats out where their number is known. `measurements`: millimetres per size by name.
    """
    voice = Voice(terms, document.terms, max(1, len(document.sizes)), size, full_words, spelled_out)
    body = _body(voice, document, report)
    head = heading(voice, document, report, body, measurements)
    return head + "\n" + body


def _body(voice: Voice, document: Document, report: Report | None) -> str:
    """Everything from the first section or row on."""
    lines: list[str] = []
    worked = _by_item(report)
    ring = "magic_ring"
    pending = ""
    for index, item in enumerate(_after_heading(document)):
        number = index + len(document.items) - len(_after_heading(document))
        if isinstance(item, Section):
            following = document.items[number + 1] if number + 1 < len(document.items) else None
            title = translate(voice, item.title)
            if isinstance(following, Row) and following.label is None and "\n" not in document.text[item.span.end : following.span.start] and item.span.end:
                pending = f"{title}: "
                continue
            lines += ["", title]
            ring = "magic_ring"
        elif isinstance(item, Row):
            scene = _scene(voice, document, report, item, worked.get(number, ()), ring)
            said = row(scene, item, worked.get(number, ()))
            ring = scene.ring if not _makes(item.body) else "magic_ring"
            if said:
                lines.append(pending + said)
            pending = ""
        elif isinstance(item, Prose):
            lines.append(translate(voice, item.text))
    return "\n".join(lines).strip("\n") + "\n"


def _makes(nodes: tuple[Node, ...]) -> bool:
    return any(not isinstance(n, Ring) and type(n).__name__ not in ("Chain", "Mark") for n in nodes)


def _after_heading(document: Document) -> tuple[object, ...]:
    items = document.items
    at = 0
    for i, item in enumerate(items):
        if isinstance(item, (HeadLine, FitLine, SpecialStitch)):
            at = i + 1
        elif isinstance(item, (Section, Row)):
            break
        elif isinstance(item, Prose) and (i == 0 or at == i):
            at = i + 1
    return items[at:]


def _by_item(report: Report | None) -> dict[int, tuple[RowReport, ...]]:
    found: dict[int, tuple[RowReport, ...]] = {}
    for r in report.rows if report else ():
        found[r.item] = (*found.get(r.item, ()), r)
    return found


def _scene(voice: Voice, document: Document, report: Report | None, item: Row, worked: Sequence[RowReport], ring: str) -> Scene:
    in_round = item.label is not None and item.label.kind == "rnd" or any(isinstance(n, Join) for n in item.body)
    end = voice.say("around" if in_round else "across")
    in_ring = ring == "ring"
    return Scene(
        voice, end, ring, document.text, partial(translate, voice), chooser(report, voice.size), repeats_of(worked, voice), in_ring,
    )


__all__ = ["Make", "Num", "write"]
