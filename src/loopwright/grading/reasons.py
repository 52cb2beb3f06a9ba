"""The Fit section read: one understood sentence per blank; what is missing, doubled, circular or not understood is a finding."""

from __future__ import annotations

import difflib
from dataclasses import replace

from loopwright.findings import Finding
from loopwright.grading.fit import Atom, Fit, Linear
from loopwright.grading.sentence import NotUnderstoodError, parse_fit
from loopwright.grading.structure import Structure
from loopwright.model.tree import Document, FitLine


def read_reasons(document: Document, plan: Structure, findings: list[Finding]) -> dict[str, Fit]:
    """Sentences by blank, in the order of the text, without those that cannot be used."""
    fits: dict[str, Fit] = {}
    lines: dict[str, FitLine] = {}
    for item in document.items:
        if not isinstance(item, FitLine):
            continue
        if item.blank in lines:
            findings.append(Finding("G011", item.span, {"blank": item.blank}))
            continue
        lines[item.blank] = item
        try:
            fits[item.blank] = parse_fit(item.blank, item.sentence, item.sentence_span)
        except (NotUnderstoodError, ValueError) as e:
            words = e.words if isinstance(e, NotUnderstoodError) else item.sentence
            findings.append(Finding("G010", item.sentence_span, {"blank": item.blank, "words": words}))
    for name in list(fits):
        fits[name] = _braced(fits[name], lines)
    _match(plan, fits, lines, findings)
    _drop_circles(fits, lines, findings)
    return fits


def _braced(fit: Fit, lines: dict[str, FitLine]) -> Fit:
    """A blank named without its braces ("half of body sts") is that blank all the same."""
    known = {n.lower(): n for n in lines}
    def braced(atom: Atom) -> Atom:
        return Atom("blank", known[atom.name]) if atom.kind == "measure" and atom.name in known else atom

    terms = tuple((factor, braced(atom)) for factor, atom in fit.target.terms)
    return replace(fit, target=Linear(terms)) if terms != fit.target.terms else fit


def _match(plan: Structure, fits: dict[str, Fit], lines: dict[str, FitLine], findings: list[Finding]) -> None:
    """Blanks without a sentence, sentences without a blank, links to blanks that are not there."""
    spoken_of = {n for f in fits.values() for n in _links(f)}
    for name, span in plan.spans.items():
        if name not in lines:
            findings.append(Finding("G012", span, {"blank": name, "near": _near(name, lines)}))
    for name, line in lines.items():
        if name not in plan.spans and name not in spoken_of:
            findings.append(Finding("G013", line.span, {"blank": name, "near": _near(name, plan.spans)}))
    for name in list(fits):
        missing = [n for n in sorted(_links(fits[name])) if n not in lines]
        if missing:
            facts = {"blank": name, "missing": missing[0], "near": _near(missing[0], lines)}
            findings.append(Finding("G016", lines[name].sentence_span, facts))
            del fits[name]


def _links(fit: Fit) -> frozenset[str]:
    sums = (fit.target, *fit.at_least, *fit.at_most)
    return frozenset(fit.divides).union(*(s.blanks() for s in sums))


def _near(name: str, known: object) -> str:
    close = difflib.get_close_matches(name, list(known), n=1, cutoff=0.5)  # type: ignore[call-overload]
    return f"; did you mean {{{close[0]}}}?" if close else ""


def _drop_circles(fits: dict[str, Fit], lines: dict[str, FitLine], findings: list[Finding]) -> None:
    """Sentences that follow from each other: the first of each circle is reported, all of it is left out."""
    for name in list(fits):
        circle = _circle(name, fits)
        if circle:
            findings.append(Finding("G014", lines[name].sentence_span, {"blank": name, "circle": " → ".join(f"{{{n}}}" for n in circle)}))
            for n in circle:
                fits.pop(n, None)
    again = True
    while again:
        again = False
        for name in list(fits):
            if any(n not in fits for n in _links(fits[name])):
                del fits[name]
                again = True


def _circle(name: str, fits: dict[str, Fit]) -> list[str]:
    """The way from a blank back to itself over the targets, empty when there is none."""
    paths = [[name]]
    seen = {name}
    while paths:
        path = paths.pop()
        for n in sorted(fits[path[-1]].target.blanks()) if path[-1] in fits else ():
            if n == name:
                return [*path, name]
            if n not in seen:
                seen.add(n)
                paths.append([*path, n])
    return []
