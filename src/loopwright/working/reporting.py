"""From the outcomes of all sizes to the report: rows with counts per size, findings, assumptions."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from typing import Any

from loopwright.findings import Finding
from loopwright.kept import Kept, kept
from loopwright.model.fabric import Fabric
from loopwright.model.report import Report, RowReport
from loopwright.model.still import Stills
from loopwright.model.tree import Document, EdgeRun, Evenly, Group, Make, Mark, Node, PatternRun, Repeat, Row, Skip, Unknown
from loopwright.source import Span
from loopwright.trade.counted import counted
from loopwright.working.assumptions import assumptions
from loopwright.working.colours import Colours
from loopwright.working.definitions import definitions
from loopwright.working.doubted import SLIP_OF_COUNT, bridged_to_join, far_off, follows, off_by
from loopwright.working.explanations import Outcome
from loopwright.working.fabrics import Fabrics
from loopwright.working.layouts import bordered
from loopwright.working.looked import Looked
from loopwright.working.lower import places
from loopwright.working.motifs import Joins, of_another
from loopwright.working.numbered import count_of
from loopwright.working.open_starts import opened
from loopwright.working.openings import leaves_any
from loopwright.working.rivals import Rival
from loopwright.working.rows import Made
from loopwright.working.said import said
from loopwright.working.search import Decoder
from loopwright.working.seeking import SPACES
from loopwright.working.steps import Step, expand
from loopwright.working.weave import Weaver
from loopwright.working.woven import Woven, fabric_of

UNCERTAIN_FROM, DOUBTED_FROM = 4, 2  # so many words that are not understood; where a count is far out, so many are enough
WOVEN = 20_000  # rows kept in a memo; more of them belong to other patterns
_CODES = {
    "runs-out": "W003", "too-many": "W008", "too-many-rows": "W008", "unknown-row": "W009", "blank": "W010",
    "shaping-too-long": "W012", "nothing-below": "W005", "endless": "W007", "open": "D001", "otherwise": "N005", "edge-unknown": "D002", "corner-not-told": "D003",
}


def work(document: Document, memo: dict[Any, Any] | None = None) -> Report:
    """Works a document in all its sizes. Accepts any document; gives counts where they can be known and says why not elsewhere.

    `memo` keeps decoded rows between calls: after a small change only what changed is decoded again.
    """
    names = definitions(document)
    decoder = Decoder(names, memo)
    conventions = said(document)
    per_size: list[list[Outcome]] = []
    rivals: list[list[Rival]] = []
    fabrics: list[Callable[[], Fabric | None]] = []
    shared = kept(memo, "woven", WOVEN)
    colours, joins = Colours.of(document), Joins.of(document.text)
    stills, before = Stills(memo), Woven(memo)
    for size in range(max(1, len(document.sizes))):
        steps = opened(bordered(expand(document, size, stills), document, size), decoder, conventions)
        best, near = decoder.decode(steps, conventions)
        conventions = best.state.conventions if size == 0 else conventions
        per_size.append(best.outcomes())
        rivals.append(near)
        fabrics.append(partial(fabric_of, best, Weaver(shared, colours, joins, Looked(document.text)), decoder, before))
    rows = _rows(document, per_size, kept(memo, "tallies", WOVEN))
    return Report(
        document.title, document.terms, document.sizes, tuple(rows), tuple(assumptions(document, per_size)),
        tuple(sorted([*_not_understood(document), *_findings(document, per_size, rivals)], key=lambda f: f.span.start)), Fabrics(fabrics),
    )


# --- rows ------------------------------------------------------------------------------------------------------------


def _rows(document: Document, per_size: Sequence[Sequence[Outcome]], tallies: Kept[Any, Any]) -> list[RowReport]:
    keys: dict[tuple[int, int], list[Outcome | None]] = {}
    sure: dict[tuple[int, int], bool] = {}
    most: dict[int, int] = {}
    for outcomes in per_size:
        for o in outcomes:
            most[o.step.item] = max(most.get(o.step.item, 0), o.step.part)
    for size, outcomes in enumerate(per_size):
        for o, confirmed in zip(outcomes, _confirmed(outcomes), strict=True):
            part = most[o.step.item] if o.step.last_of_item else o.step.part  # ranges of unlike length end together
            key = (o.step.item, part)
            keys.setdefault(key, [None] * len(per_size))[size] = o
            sure[key] = sure.get(key, True) and confirmed
    told = _told(per_size)
    return [_row(document, keys[k], sure[k], k[0] in told, tallies) for k in sorted(keys) if not k[1] or not _alternates(document, k[0])]


def _alternates(document: Document, item: int) -> bool:
    """Whether a row stands for every second one: it is told once, however often it comes."""
    row = document.items[item]
    return isinstance(row, Row) and row.label is not None and bool(row.label.alternate)


def _row(document: Document, outcomes: list[Outcome | None], confirmed: bool, told_a_start: bool, tallies: Kept[Any, Any]) -> RowReport:
    some = next(o for o in outcomes if o is not None)
    step = some.step
    read = all(o is None or o.made is not None for o in outcomes)
    counts = tuple(o.made.count if o and o.made else None for o in outcomes)
    chains = tuple(o.made.count + o.made.bridged if o and o.made else None for o in outcomes)
    made = _tally([o.made if o is not None else None for o in outcomes], tallies)
    read = read and bool(made)
    printed, noun = _printed(document, outcomes)
    if noun in ("mesh", "block") and noun not in made and printed and all(o is None or o.agrees for o in outcomes):
        made = {**made, noun: printed}  # a solid row counted in meshes
    if noun == "ch-sp" and (length := _length(document, step)) and printed and made.get("ch-sp") != printed and all(o is None or o.agrees for o in outcomes):
        made = {**made, f"ch-{length} sp": printed}  # "54 ch-3 loops", where there are others too
    verdicts = [o.agrees for o in outcomes if o is not None and o.agrees is not None]
    agrees = all(verdicts) if verdicts else None
    if agrees and told_a_start or any(_own_count_used(o) for o in outcomes if o):
        agrees = None  # a count that told a start cannot confirm it
    if not read:
        counts = (None,) * len(outcomes)
    return RowReport(
        step.section, _label(outcomes), step.span, step.item, read, counts, chains if chains != counts else None, made, printed, noun, agrees,
        confirmed and read, None if read else some.problem,
    )


def _length(document: Document, step: Step) -> int | None:
    """Of how many chains the spaces are that a row's printed count is of; None where it does not tell."""
    item = document.items[step.item]
    count = count_of(item, step.part) if isinstance(item, Row) else None
    return count.length if count is not None else None


def _tally(mades: list[Made | None], tallies: Kept[Any, Any]) -> dict[str, tuple[int | None, ...]]:
    """What was made, by kind, in each size."""
    key = tuple([id(m) for m in mades])
    held: tuple[list[Made | None], dict[str, tuple[int | None, ...]]] | None = tallies.get(key)
    if held is None:
        kinds = sorted({k for m in mades if m is not None for k in m.made})
        held = tallies[key] = mades, {k: tuple(m.made.get(k, 0) if m is not None else None for m in mades) for k in kinds}
    return held[1]  # the rows made keep their ids while this is kept


def _label(outcomes: list[Outcome | None]) -> str:
    """The label of a row; "Rnd 5-11" where it is another number in other sizes, as the last row of a range is."""
    labels = list(dict.fromkeys(o.step.label or "" for o in outcomes if o is not None))
    numbers = [o.step.number for o in outcomes if o is not None and o.step.number is not None]
    first, number = labels[0], str(min(numbers, default=""))
    if len(labels) == 1 or not all(n[: n.rfind(" ")] == first[: first.rfind(" ")] for n in labels) or not number:
        return first
    return f"{first[: first.rfind(' ') + 1]}{number}-{max(numbers)}"


def _told(per_size: Sequence[Sequence[Outcome]]) -> set[int]:
    """Items whose printed count told how many stitches an earlier row began with."""
    return {
        o.step.item + by for outcomes in per_size for o in outcomes if o.assumed and (by := dict(o.assumed).get("told-by")) is not None
    }


def _own_count_used(o: Outcome) -> bool:
    """Whether the printed count of the row itself was needed to tell what it stands on."""
    if not o.assumed:
        return False
    assumed = dict(o.assumed)
    return bool(assumed.get("start-by-count")) and assumed.get("told-by") is None


def _confirmed(outcomes: Sequence[Outcome]) -> list[bool]:
    """Of each row of a size, whether its printed count says the same, or else whether a confirmed row needs just what it leaves."""
    told = _told([outcomes])
    result = [bool(o.agrees) and not _own_count_used(o) and o.step.item not in told for o in outcomes]
    for i in range(len(outcomes) - 2, -1, -1):
        if not result[i] and outcomes[i].agrees is None and not outcomes[i].assumed:
            result[i] = result[i + 1] and _needs_all(outcomes[i + 1], outcomes[i])
    return result


def _needs_all(o: Outcome, before: Outcome) -> bool:
    """Whether a row is worked on every stitch of the one before, so that another number there would not come out."""
    base, below = (o.made.base if o.made else None), (before.made.view if before.made else None)
    if base is None or below is None or o.made is None or before.made is None or not below.items or below.foundation or o.made.left:
        return False
    if set(before.made.made) <= {"ch"}:
        return False  # a ring takes any number of stitches
    if o.assumed or leaves_any(o.step.body) or any(isinstance(n, Evenly) for n in o.step.body):
        return False
    return base.items in (below.items, below.items[::-1])


def _printed(document: Document, outcomes: list[Outcome | None]) -> tuple[tuple[int | None, ...] | None, str | None]:
    """The printed count of each size that ends its rows here; a range may end in one size and go on in the next."""
    ends = [o is not None and bool(o.step.printed) for o in outcomes]
    step = next(o.step for o in outcomes if o is not None)
    item = document.items[step.item] if True in ends else None
    count = count_of(item, step.part) if isinstance(item, Row) else None
    if count is None:
        return None, None
    return tuple(count.n.at(s) if end else None for s, end in enumerate(ends)), count.noun


# --- findings --------------------------------------------------------------------------------------------------------


def _findings(document: Document, per_size: Sequence[Sequence[Outcome]], rivals: Sequence[Sequence[Rival]]) -> list[Finding]:
    grouped: dict[tuple[str, int], list[tuple[int, Outcome, Finding]]] = {}
    for size, outcomes in enumerate(per_size):
        shaken = unread = False
        off: tuple[int, int] | None = None  # what the row that shook the others prints and makes
        before: Outcome | None = None
        for o in outcomes:
            found = _finding(document, o, size) or _asks_more(before, o) or _other_space(document, before, o)
            if found is not None and found.code == "W001" and far_off(found, o.step.body) and (o.step.doubt or before is None or before.agrees is not True or before.assumed):
                found = replace(found, severity="warning")  # a misprint is seldom so far off: it may be the words that were not understood
            before = o
            if unread and found is not None and found.code == "D001" and "family" not in found.args:
                found = None  # said of the row before already
            unread = o.made is None
            if shaken and found is not None and follows(found, off):
                found = None
            elif shaken and found is not None and found.code == "W001":
                found = replace(found, severity="warning")  # the row below is in doubt: so is this verdict
            shaken = o.made is None or not o.made.made or o.agrees is False or o.agrees is None and o.step.doubt > UNCERTAIN_FROM and bool(o.step.label) or "otherwise" in dict(o.assumed) or shaken and o.agrees is not True
            off = (off or off_by(found)) if shaken else None
            if found is not None:
                grouped.setdefault((found.code, o.step.item), []).append((size, o, found))
        for rival in rivals[size]:
            told = next((f for s, o, f in grouped.get(("W001", rival.fault.step.item), ()) if s == size and o.step.part == rival.fault.step.part), None)
            found = _either(document, rival, told, size)
            if found is not None:
                grouped.setdefault((found.code, rival.row.step.item), []).append((size, rival.row, found))
    result = []
    for entries in grouped.values():
        sizes = tuple(document.sizes[s] for s, _, _ in entries if s < len(document.sizes))
        first = entries[0][2]
        only = sizes if 0 < len(set(sizes)) < len(document.sizes) else None
        result.append(Finding(first.code, first.span, first.args, first.hints, only, first.fix, first.severity))
    return sorted(result, key=lambda f: f.span.start)


def _either(document: Document, rival: Rival, told: Finding | None, size: int) -> Finding | None:
    """A count taken as right that would be wrong if the one that disagrees were right. `told`: what is said of that one, if anything is."""
    if told is None or max(rival.row.step.doubt, rival.fault.step.doubt) >= UNCERTAIN_FROM:
        return None
    here = _disagreement(document, rival.otherwise, size)
    if here is None or (off := off_by(here)) is None or (fault := off_by(told)) is None:
        return None
    facts = {**here.args, "printed": off[0], "made": off[1], "other": told.args["label"], "there": fault[0]}
    return Finding("W016", here.span, facts, severity=told.severity)


def _asks_more(before: Outcome | None, o: Outcome) -> Finding | None:
    """A row that needs another number of stitches than the row right before it has, where that one is in no doubt."""
    needs = dict(o.assumed).get("start") if o.assumed else None
    if before is None or before.made is None or needs is None or int(needs) == before.made.count or o.step.gap or o.step.new_section or o.step.doubt or before.step.doubt:
        return None
    follows = o.step.number is not None and before.step.number is not None and o.step.number == before.step.number + 1
    if not follows or before.agrees is False or before.made.left or "start" in dict(before.assumed) or not before.made.out:
        return None
    facts = {"label": o.step.label or "this row", "wanted": int(needs), "thing": "st", "found": before.made.count}
    return Finding("W003", o.step.span, facts, severity="warning")


def _other_space(document: Document, before: Outcome | None, o: Outcome) -> Finding | None:
    """A row that names chain spaces of a length that the row right before it has none of, where that one is in no doubt."""
    if before is None or before.made is None or o.made is None or o.made.base is None or o.assumed or before.agrees is False or o.step.doubt or before.step.doubt:
        return None
    if o.made.base.half:
        return None  # the loop that closed the round is called by its few chains
    looked_for = {c.key.removeprefix("space-") for c in o.made.log if c.key.startswith("space-")}
    if not looked_for:
        return None
    asked = sorted({p.thing.length for p in places(o.step.body) if p.thing.kind in SPACES and p.thing.length and str(p.thing.length) in looked_for})
    below = document.text[before.step.span.start : before.step.span.end]  # its turning chain may make a space that is called by its length
    asked = [n for n in asked if not re.search(rf"\bch(?:ain)?s?[- ]?{n}\b|\b{n}[- ]?ch", below, re.IGNORECASE)]
    if not asked:
        return None
    there = " and ".join(f"ch-{n}" for n in sorted(o.made.base.index.lengths))
    return Finding("W014", o.step.span, {"label": o.step.label or "this row", "asked": asked[0], "there": there})


def _not_understood(document: Document) -> list[Finding]:
    """Words in rows that mean nothing here, each run of them once; and what reading itself found."""
    found = [f for f in document.findings if isinstance(f, Finding)]
    for item in document.items:
        if not isinstance(item, Row) or not item.doubt:
            continue
        found += [Finding("N002", words, {"words": document.text[words.start : words.end]}) for words in _unknown(item.body) if not of_another(document.text[words.start : words.end])]
    return found


def _unknown(nodes: tuple[Node, ...]) -> list[Span]:
    """Spans of unknown words, neighbours joined, wherever they stand among the nodes."""
    spans: list[Span] = []
    for node in nodes:
        if isinstance(node, Unknown) and node.span.end:
            if spans and 0 <= node.span.start - spans[-1].end <= 2:
                spans[-1] = Span(spans[-1].start, node.span.end)
            else:
                spans.append(node.span)
        elif isinstance(node, (Repeat, Group)):
            spans += _unknown(node.nodes)
    return spans


def _only_a_place(body: tuple[Node, ...]) -> bool:
    """ "Skip next 20 sts of Row 50, join yarn in next st" in a line of its own: where the rows that follow begin, which they show themselves."""
    return all(isinstance(n, (Skip, Mark, Unknown)) for n in body) and any(isinstance(n, Mark) and n.what == "attach" for n in body)


def _finding(document: Document, o: Outcome, size: int) -> Finding | None:
    step = o.step
    if o.made is None:
        if not step.label and _only_a_place(step.body):
            return None
        code = _CODES.get(o.problem or "", "W007")
        if code == "W003" and o.facts.get("thing") in ("corner", "row-end") and not step.order:
            code = "D002"  # a piece worked in rows has corners: how many stitches lie between them is what nobody tells
        elsewhere = step.order is not None and step.order.section is not None  # a part that may be told outside of this text
        severity: Any = None if code in ("N005", "W008", "W009", "W010") and not elsewhere else "warning"
        if code in ("W003", "W007") and step.doubt > UNCERTAIN_FROM:
            severity = "advice"  # with so many words not understood, what it asks for is not known
        return Finding(code, step.span, {"label": step.label or "this row", **o.facts}, severity=severity)
    if o.agrees is False and step.printed:
        return _disagreement(document, o, size)
    if not o.made.made and not o.step.problem:
        marks = not step.label and any(isinstance(n, Mark) for n in step.body)  # "FO and close.": nothing to read stitches from
        return None if marks else Finding("N001", step.span, {"label": step.label or "this row"})
    told = _told_left(step.body)
    if told is not None and o.made.free and told != o.made.free and step.doubt == 0:
        return Finding("W013", step.span, {"label": step.label or "this row", "told": told, "left": o.made.free})
    if o.made.passed and step.doubt == 0 and not o.made.view.foundation:
        return Finding("W015", step.span, {"label": step.label or "this row", "passed": o.made.passed})
    if o.made.left > 1 and o.made.count and step.doubt == 0 and not o.made.view.foundation and not _shaped_at_both(o.made, step.body) and not bridged_to_join(o.made.left, step.body) and (o.agrees is None or _comes_round(o.made)):
        return Finding("W004", step.span, {"label": step.label or "this row", "left": o.made.left, **_uneven(o.made)})
    return None


def _shaped_at_both(made: Made, body: Sequence[Node]) -> bool:
    """ "Ss over 5 tr and into next, 3 ch, 1 tr into each tr to last 5, turn": what is left at the end is told, and as meant as at the start."""
    last = next((n for n in reversed(body) if not isinstance(n, Mark)), None)
    left = last.place.left if isinstance(last, Make) and last.place is not None else None
    return left is not None and left.at(0) == made.left and any(n.what == "move" for n in made.tape)


def _along_edges(body: Sequence[Node]) -> bool:
    """Whether a row goes along edges whose stitches nobody counts: one that is not understood is missing from its count."""
    return any(isinstance(n, EdgeRun) and n.n is None for n in body)


def _told_left(body: Sequence[Node]) -> int | None:
    """How many stitches a row says that it leaves, where it ends there; None where it does not say."""
    told = [n for n in body if isinstance(n, Mark) and n.what == "leave"]
    return told[0].n.at(0) if len(told) == 1 and told[0].n is not None else None


def _times_told(body: Sequence[Node], size: int) -> int | None:
    """How often the one repeat of a row is worked in all, where the words tell it beyond doubt."""
    repeats = [n for n in body if isinstance(n, Repeat)]
    times = repeats[0].times.at(size) if len(repeats) == 1 and repeats[0].times is not None else None
    begun = any(isinstance(n, (Make, Group)) for n in body[: body.index(repeats[0])]) if times is not None else False
    return None if times is None or begun and repeats[0].mode == "times" else {"times": times, "more": times + 1}.get(repeats[0].mode)


def _comes_round(made: Made) -> bool:
    """Whether a row whose count is as printed has to use every stitch all the same: a round, and a repeat that goes to the end."""
    return made.uneven is not None or (made.in_rounds and not made.turned)


def _uneven(made: Made) -> dict[str, int]:
    """Why stitches are left: a repeat takes so many, so many were there for it, and what would come out even."""
    if made.uneven is None:
        return {}
    takes, room = made.uneven
    fewer = room - room % takes
    return {"takes": takes, "room": room, "fewer": fewer, "more": fewer + takes}


def _disagreement(document: Document, o: Outcome, size: int) -> Finding | None:
    assert o.made is not None
    item = document.items[o.step.item]
    span = o.step.span
    printed: int | None = None
    count = None
    if isinstance(item, Row):
        count = count_of(item, o.step.part)
        if count is not None:
            printed = count.n.at(size)
            span = count.span if count.span.end > count.span.start else count.n.span if count.n.span.end else span
    doubtful = o.step.doubt >= UNCERTAIN_FROM or any(isinstance(n, PatternRun) and n.n is None for n in o.step.body)
    noun = count.noun if count is not None else None
    made = counted(o.made.made, noun, o.made.count)
    if noun and noun not in o.made.made and made == _times_told(o.step.body, size) and printed is not None and abs(printed - made) <= SLIP_OF_COUNT:
        doubtful = False  # "repeat 5 times more, making 7 petals": the repeat alone tells, whatever its words mean
    elif (o.step.doubt >= DOUBTED_FROM or o.step.doubt and _along_edges(o.step.body)) and printed is not None and abs(printed - made) > SLIP_OF_COUNT:
        doubtful = True
    facts = {"printed": printed, "made": made, "label": o.step.label or "this row"}
    return Finding("W001", span, facts, severity="warning" if doubtful else None)
