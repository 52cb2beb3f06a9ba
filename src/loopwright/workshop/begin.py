"""The guided beginning: a plain one-size pattern becomes a design, each reason accepted or changed by the designer."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from loopwright.findings import Finding
from loopwright.findings.registry import hints, message, severity
from loopwright.grading import GaugeError
from loopwright.grading.propose import Reason, item_of
from loopwright.grading.sentence import NotUnderstoodError, parse_fit
from loopwright.model.tree import HeadLine
from loopwright.notation import read
from loopwright.source import Source, Span
from loopwright.trade import sizes as body_sizes
from loopwright.workshop.grade import grade_design
from loopwright.workshop.live import WORDS
from loopwright.workshop.propose import CannotPropose, MadeDesign, Wanted, as_json, propose_design

KEEP = "keep"  # instead of a sentence: her own number stays in the text
HER_WORDS = "her own words"


def look(text: str) -> dict[str, Any]:
    """What a plain pattern tells by itself: title, the size it was worked in, gauge, rows, what it is, usual sizes."""
    document = read(Source.of(text))
    heads = {i.name: i.value for i in reversed(document.items) if isinstance(i, HeadLine)}
    item = item_of(f"{document.title or ''}\n{document.text[:2000]}")
    worked_in = heads.get("worked in") or heads.get("size") or ("" if len(document.sizes) > 1 else heads.get("sizes", ""))
    told = re.search(r"^(?:gauge|tension)\s*:\s*(\S.*)$", text, re.IGNORECASE | re.MULTILINE)
    gauge = told[1].strip() if told else ""
    return {
        "title": document.title or "", "worked_in": worked_in, "gauge": gauge, "item": item.name, "scaled": item.scaled,
        "usual_sizes": list(item.sizes), "known_sizes": _in_order(item.sizes), "sizes": list(document.sizes),
        "graded": bool(re.search(r"\{[^{}\n]+\}", text)),
    }


def _in_order(usual: tuple[str, ...]) -> list[str]:
    """The sizes of the trade's chart and those usual for an item, each once, by the chart's order."""
    chart = [s.name for s in body_sizes.chart("trade").sizes]
    rank = {name: i for i, name in enumerate(chart)}
    last = max((rank.get(body_sizes.size_name(s), 0) for s in usual), default=0)
    mine = {s: rank.get(body_sizes.size_name(s), last) for s in usual}
    others = [s for s in chart if body_sizes.size_name(s) not in {body_sizes.size_name(u) for u in usual}]
    return sorted((*usual, *others), key=lambda s: mine.get(s, rank.get(s, last)))


def begin(text: str, wanted: Mapping[str, Any], choices: Mapping[str, str]) -> dict[str, Any]:
    """The design proposed for a pattern, with what was chosen.

    `wanted`: "worked_in", "sizes" and "gauge", each as it is told, "" or empty where it is not. `choices`: for a blank another sentence, or
    `KEEP`. Gives {"problem": …} with the way out where no design can be made.
    """
    sizes = tuple(s for s in wanted.get("sizes", ()) if s)
    try:
        made = propose_design(Source.of(text), Wanted(wanted.get("worked_in") or None, sizes or None, wanted.get("gauge") or None))
    except CannotPropose as e:
        return {"problem": _without_options(str(e))}
    except GaugeError as e:
        found = Finding(e.code, Span(0, 0), e.facts)
        way = "say it as 17 hdc and 13 rnds = 10 cm" if e.code == "G001" else "; ".join(hints(found))
        return {"problem": f"{message(found)}; {way}"}
    problems = _problems(choices)
    chosen = _chosen(made, {k: v for k, v in choices.items() if k not in problems})
    return {**_told(made, chosen), "problems": problems}


def _chosen(made: MadeDesign, choices: Mapping[str, str]) -> MadeDesign:
    """The design with other sentences for some blanks, or with her number kept."""
    proposal = made.proposal
    for name, said in choices.items():
        if said != KEEP:
            proposal = replace(proposal, blanks=tuple(
                replace(p, reasons=(_reason(p.reasons, said), *(r for r in p.reasons if r.sentence != said))) if p.blank.name == name else p
                for p in proposal.blanks
            ))
    for name, said in choices.items():
        if said == KEEP and any(p.blank.name == name for p in proposal.blanks):
            proposal = proposal.without(name, "because she keeps her number")
    if proposal is made.proposal:
        return made
    text = proposal.text()
    sized = grade_design(Source.of(text))
    own = next((s.blanks for s in sized.graded.sizes if s.size == proposal.task.worked_in), {})
    return replace(made, proposal=proposal, text=text, sized=sized, own=own)


def _reason(reasons: tuple[Reason, ...], said: str) -> Reason:
    return next((r for r in reasons if r.sentence == said), Reason(said, HER_WORDS))


def _problems(choices: Mapping[str, str]) -> dict[str, str]:
    """Sentences that cannot be read, by their blanks."""
    found = {}
    for name, said in choices.items():
        try:
            if said != KEEP:
                parse_fit(name, said)
        except NotUnderstoodError as e:
            found[name] = f'"{e.words}" is not understood here.'
        except ValueError:
            found[name] = "This sentence is not understood."
    return found


def _told(made: MadeDesign, chosen: MadeDesign) -> dict[str, Any]:
    """For the screen: the first proposal with its evidence, the text as chosen, and what its numbers come to in every size."""
    graded = chosen.sized.graded
    now = {p.blank.name: p.reasons[0].sentence for p in chosen.proposal.blanks if p.reasons}
    rows = [f for f in chosen.sized.findings if severity(f) != "advice"]
    return {
        **{k: v for k, v in as_json(made).items() if k in ("title", "item", "worked_in", "sizes", "blanks", "source_of_habits")},
        "text": chosen.text, "kept": list(chosen.proposal.kept), "now": now, "gauge": graded.gauge.text if graded.gauge else "",
        "table": {
            "sizes": [s.size for s in graded.sizes], "blanks": {name: list(values) for name, values in graded.values.items()},
        },
        "own": chosen.own, "findings": [_finding(f) for f in (*made.findings, *rows)],
    }


def _finding(f: Finding) -> dict[str, Any]:
    return {"word": WORDS[severity(f)], "message": message(f), "hints": list(hints(f)), "sizes": list(f.sizes) if f.sizes else None}


def _without_options(said: str) -> str:
    """Words of the command line put as the screen says them."""
    said = re.sub(r", for example: --worked-in \w+|, and name it with --worked-in", "", said)
    return re.sub(r"^--sizes: ", "", said)
