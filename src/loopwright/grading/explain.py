"""Why a number is what it is, in plain words, with what its neighbours would make."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from loopwright.grading.bodies import Body
from loopwright.grading.choose import Linked, Problem, Sought
from loopwright.grading.fit import Fit
from loopwright.grading.kept import kept_in
from loopwright.grading.lengths import in_cm
from loopwright.grading.number import Neighbour, Number
from loopwright.grading.reach import Setting
from loopwright.grading.targets import measures_in

_COUNT_WORDS = frozenset("sts st rounds rnds rows round row rnd chain ch stitches repeats".split())
_UNIT_WORDS = {"st": "sts", "row": "rows", "ch": "ch", "repeat": "repeats"}
EQUAL_MM = 1e-6


def explained(fit: Fit, problem: Problem, values: Mapping[str, int], size: int, setting: Setting) -> Number:
    """The chosen number of a blank with everything to be shown of it."""
    sought = next((s for s in problem.sought if s.name == fit.blank), None)
    if sought is None:
        return _linked(fit, next(x for x in problem.linked if x.name == fit.blank), values)
    return _sought(fit, sought, problem, values, size, setting)


def name_of(fit: Fit) -> str:
    """What a blank measures: the subject of its sentence, or its own name without the counting word."""
    if fit.subject:
        return fit.subject
    words = fit.blank.split()
    return " ".join(words[:-1]) if len(words) > 1 and words[-1].lower() in _COUNT_WORDS else fit.blank


def way_of(fit: Fit) -> str:
    """How the trade calls what is measured."""
    if fit.opening:
        return "opening around"
    if fit.across:
        return "across"
    if fit.way == "around" or fit.side == "around":
        return "around"
    if fit.side:
        return fit.side
    if fit.unit == "ch" or any("length" in a.name for _, a in fit.target.terms):
        return "length"
    return "depth" if fit.unit == "row" else "width"


def _before_clauses(sentence: str) -> str:
    """The sentence up to its first comma outside brackets."""
    depth = 0
    sentence = kept_in(sentence)[0]
    for i, c in enumerate(sentence):
        depth += (c in "([") - (c in ")]")
        if c == "," and depth == 0:
            return sentence[:i].strip()
    return sentence.strip()


def _word(fit: Fit, value: int) -> str:
    word = _UNIT_WORDS[fit.unit]
    if fit.unit == "row" and re.search(r"\b(?:rnds?|rounds?)\b", f"{fit.sentence} {fit.blank}", re.IGNORECASE):
        word = "rnds"
    return word[:-1] if value == 1 and word.endswith("s") else word


def _sought(fit: Fit, s: Sought, problem: Problem, values: Mapping[str, int], size: int, setting: Setting) -> Number:
    value = values[s.name]
    reached = s.reached_mm(values)
    around = [Neighbour(n, s.reached_mm({**values, s.name: n})) for n in (value - s.multiple, value + s.multiple) if s.low <= n <= s.high]
    equal = next((n.value for n in around if abs(abs(n.achieved_mm - s.target_mm) - abs(reached - s.target_mm)) < EQUAL_MM), None)
    held = _held_back(fit, s, problem, values, around)
    bodies = measures_in(fit.target, size, setting)
    why = _why(fit, s, values, around, equal, bodies, setting)
    return Number(
        fit.blank, value, name_of(fit), way_of(fit), fit.unit, s.target_mm, reached, s.step_mm * s.multiple, s.wanted(values), s.multiple,
        tuple(around), "; ".join([why, *held]), equal, "; ".join(held), tuple(dict(bodies).items()), s.kept is not None,
    )


def _why(
    fit: Fit, s: Sought, values: Mapping[str, int], around: list[Neighbour], equal: int | None, bodies: list[tuple[str, Body]],
    setting: Setting,
) -> str:
    value, reached = values[s.name], s.reached_mm(values)
    target = f"{_before_clauses(fit.sentence)}: {in_cm(s.target_mm)}"
    told = "; ".join(dict.fromkeys(f"{n} is {in_cm(body.mm)}" for n, body in bodies))
    before = s.before.at(values)
    with_before = f" with the {before} before" if before else ""
    made = f"{value} {_word(fit, value)}{with_before}{_each(fit, s, setting)} {'makes' if value == 1 else 'make'} {in_cm(reached)}"
    made += _off(reached - s.target_mm)
    others = ", ".join(f"{n.value} would make {in_cm(n.achieved_mm)}" for n in around)
    said = [f"{target} ({told})" if told else target, made, others]
    if s.multiple > 1:
        said.append(f"only multiples of {s.multiple}{f' plus {s.rest}' if s.rest else ''} are legal")
    if equal is not None and s.kept is None:
        said.append(f"{equal} is as near: of two equals the larger is taken" if equal < value else f"{equal} is as near, and was not open")
    return "; ".join(x for x in said if x)


def _each(fit: Fit, s: Sought, setting: Setting) -> str:
    """How tall the rows are, where their stitches are not as tall as the gauge's row."""
    own = next((r for r in s.runs if r.name == fit.blank), None)
    row = setting.gauge.row_mm
    if own is None or row is None or not own.turn_mm:
        return ""
    mean = sum(own.turn_mm) / len(own.turn_mm) / (2 if fit.across else 1)
    return "" if abs(mean - row) < EQUAL_MM else f", {mean:.1f} mm each,"


def _off(error: float) -> str:
    if abs(error) < 0.5:
        return ""
    return f", {in_cm(abs(error))} {'over' if error > 0 else 'under'}"


def _held_back(fit: Fit, s: Sought, problem: Problem, values: Mapping[str, int], around: list[Neighbour]) -> list[str]:
    """Where a neighbour would be nearer: which limit forbids it."""
    error = abs(s.reached_mm(values) - s.target_mm)
    if s.kept is not None:
        return [f"{s.kept} is given for this size in its sentence"]
    found = []
    for n in around:
        if abs(n.achieved_mm - s.target_mm) < error - EQUAL_MM:
            trial = _with(problem, values, s.name, n.value)
            why = [limit.why for limit in problem.limits if limit.names <= trial.keys() and not limit.holds(trial)]
            alike = "all sizes are to be even or all odd" if fit.same_parity and s.multiple % 2 else "the sizes must stay in order"
            found.append(f"{n.value} would be nearer, but {why[0] if why else alike}")
    return found


def _with(problem: Problem, values: Mapping[str, int], name: str, value: int) -> dict[str, int]:
    """The numbers with one changed and what follows from it worked out again."""
    trial = {s.name: values[s.name] for s in problem.sought if s.name in values} | {name: value}
    for _ in problem.linked:
        for x in problem.linked:
            if x.formula.names <= trial.keys():
                follows = x.value(trial)
                if follows is not None:
                    trial[x.name] = follows
    return trial


def _linked(fit: Fit, x: Linked, values: Mapping[str, int]) -> Number:
    value = values[x.name]
    exact = x.formula.at(values)
    sentence = kept_in(fit.sentence)[0]
    filled = re.sub(r"\{([^{}]+)\}", lambda m: str(values.get(" ".join(m[1].split()), m[0])), sentence)
    reason = f"{sentence} = {filled}" if filled != sentence else sentence
    if x.kept is not None:
        reason += f"; {x.kept} is given for this size in its sentence"
    elif exact != value:
        how = {"down": "rounded down", "up": "rounded up", "nearest": "nearest"}[x.rounding]
        legal = f" multiple of {x.multiple}{f' plus {x.rest}' if x.rest else ''}" if x.multiple > 1 else ""
        reason += f"; {_plain(exact)}, {how}{legal}: {value}"
    else:
        reason += f": {value}"
    around = tuple(Neighbour(value + d * x.multiple, 0.0) for d in (-1, 1)) if x.multiple > 1 else ()
    name, kept = name_of(fit), x.kept is not None
    return Number(fit.blank, value, name, "count", fit.unit, None, None, None, float(exact), x.multiple, around, reason, kept=kept)


def _plain(exact: Fraction) -> str:
    return str(exact.numerator) if exact.denominator == 1 else f"{float(exact):.2f}".rstrip("0")
