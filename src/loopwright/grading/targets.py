"""From sentences, gauge and bodies to one problem per size: what is sought, what follows, what must hold."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from loopwright.findings import Finding
from loopwright.grading.bodies import Body, NoMeasurementError
from loopwright.grading.choose import LARGEST, Limit, Linked, Problem, Sought, Sum, assignments, nearest_legal
from loopwright.grading.fit import Fit, Linear
from loopwright.grading.lengths import in_cm
from loopwright.grading.reach import Setting, UnusableError, before, reach
from loopwright.grading.structure import Structure

# Where a row ties stitches to rounds ("increasing evenly to {body sts}" after {crown rounds}), what goes around has to fit and the
# rounds give way: an error in stitches counts as much as one twenty times as long in rows. Common practice, no source.
STITCHES_WEIGH = 20


def problems(fits: Mapping[str, Fit], setting: Setting, findings: list[Finding]) -> tuple[list[Problem], dict[str, Fit]]:
    """One problem per size, and the sentences that are in them."""
    usable = dict(fits)
    for name, fit in fits.items():
        for i, size in enumerate(setting.sizes):
            try:
                _number(fit, i, setting)
            except UnusableError as e:
                sizes = None if e.code in ("G005", "G006", "G015", "G017") else (size,)
                findings.append(Finding(e.code, fit.span, {"blank": name, "size": size, **e.facts}, sizes=sizes))
                usable.pop(name, None)
                break
    _drop_followers(usable, setting.plan)
    return [_problem(usable, i, setting) for i in range(len(setting.sizes))], usable


def _drop_followers(usable: dict[str, Fit], plan: Structure) -> None:
    """Leaves out what stands on a blank that has no number."""
    again = True
    while again:
        again = False
        for name in list(usable):
            needs = usable[name].target.blanks() | before(usable[name], plan).blanks()
            if any(n not in usable for n in needs):
                del usable[name]
                again = True


def _problem(fits: Mapping[str, Fit], size: int, setting: Setting) -> Problem:
    sought: list[Sought] = []
    linked: list[Linked] = []
    limits: list[Limit] = []
    for fit in fits.values():
        number = _number(fit, size, setting)
        (sought if isinstance(number, Sought) else linked).append(number)  # type: ignore[arg-type]
        limits += _limits(fit, number, size, setting)
    for total, why in setting.plan.limits:
        if total.blanks() <= fits.keys():
            limits.append(Limit(_sum(total, size), why))
    return Problem(tuple(sought), tuple(linked), tuple(limits))


def _number(fit: Fit, size: int, setting: Setting) -> Sought | Linked:
    kept = fit.kept_in(setting.sizes[size])
    if not fit.target.is_length:
        return Linked(fit.blank, _sum(fit.target, size, setting), fit.multiple, fit.rest % fit.multiple, fit.rounding, fit.whole, kept)
    found = reach(fit, size, setting)
    target = target_mm(fit.target, size, setting)
    if target <= 0:
        raise UnusableError("G031", target=in_cm(target))
    low, high = _bounds(fit, size, setting, found.step_mm)
    weight = 1 if fit.unit == "row" else STITCHES_WEIGH
    return Sought(
        fit.blank, found.step_mm, target, fit.multiple, fit.rest % fit.multiple, low, high, _sum(found.before, size), weight, found.runs,
        found.const_mm, kept,
    )


def target_mm(total: Linear, size: int, setting: Setting) -> float:
    """A sum of lengths in mm for one size."""
    result = 0.0
    for factor, atom in total.terms:
        if atom.kind == "length":
            if len(atom.lengths_mm) not in (1, len(setting.sizes)):
                raise UnusableError("G015", many=len(atom.lengths_mm), sizes=len(setting.sizes))
            result += float(factor) * atom.lengths_mm[size if len(atom.lengths_mm) > 1 else 0]
        elif atom.kind == "measure":
            result += float(factor) * _measured(atom.name, size, setting).mm
        else:
            raise UnusableError("G017")
    return result


def _measured(name: str, size: int, setting: Setting) -> Body:
    try:
        body = setting.measure(setting.sizes[size], name)
    except NoMeasurementError as e:
        raise UnusableError("G021", what=name, why=str(e)) from None
    if body.mm <= 0:
        raise UnusableError("G022", what=name, mm=in_cm(body.mm))
    return body


def measures_in(total: Linear, size: int, setting: Setting) -> list[tuple[str, Body]]:
    """The body measurements of a sum."""
    return [(a.name, _measured(a.name, size, setting)) for _, a in total.terms if a.kind == "measure"]


def _sum(total: Linear, size: int, setting: Setting | None = None) -> Sum:
    """A sum of numbers and blanks for one size. Raises UnusableError where a list per size has another length."""
    const = Fraction(0)
    parts: dict[str, Fraction] = {}
    for factor, atom in total.terms:
        if atom.kind == "blank":
            parts[atom.name] = parts.get(atom.name, Fraction(0)) + factor
        elif atom.lengths_mm:
            if setting is not None and len(atom.lengths_mm) != len(setting.sizes):
                raise UnusableError("G015", many=len(atom.lengths_mm), sizes=len(setting.sizes))
            const += factor * Fraction(atom.lengths_mm[size])
        else:
            const += factor
    return Sum(const, tuple(parts.items()))


def _lowest(fit: Fit, plan: Structure) -> int:
    """The least that the rows leave room for: a range may be empty, "for 0 rnds" too; a count of stitches may not."""
    use = plan.uses.get(fit.blank)
    if use is None or use.role == "count":
        return 1
    return 0 if use.role == "times" else max(1, use.first - 1)


def _bounds(fit: Fit, size: int, setting: Setting, step: float) -> tuple[int, int]:
    """The least and the most that plain limits allow; limits with blanks are kept apart."""
    low, high = _lowest(fit, setting.plan), LARGEST
    for total in fit.at_least:
        if not total.blanks():
            low = max(low, _ceil(_plain(total, size, setting, step)))
    for total in fit.at_most:
        if not total.blanks():
            high = min(high, -_ceil(-_plain(total, size, setting, step)))
    return low, high


def _ceil(value: Fraction) -> int:
    return -((-value.numerator) // value.denominator)


def _plain(total: Linear, size: int, setting: Setting, step: float) -> Fraction:
    if total.is_length:
        return Fraction(target_mm(total, size, setting) / step).limit_denominator(10**6)
    return _sum(total, size, setting).const


def _limits(fit: Fit, number: Sought | Linked, size: int, setting: Setting) -> list[Limit]:
    found = [Limit(Sum(), f"{{{fit.blank}}} must divide {{{n}}}", fit.blank, n) for n in fit.divides]
    own = Sum(Fraction(0), ((fit.blank, Fraction(1)),))
    if isinstance(number, Linked):
        low, high = _bounds(fit, size, setting, setting.gauge.stitch_mm or 1.0)
        found.append(Limit(Sum(Fraction(-low), own.parts), f"{{{fit.blank}}} must be at least {low}"))
        if high < LARGEST:
            found.append(Limit(Sum(Fraction(high), ((fit.blank, Fraction(-1)),)), f"{{{fit.blank}}} must be at most {high}"))
    for totals, sign, word in ((fit.at_least, 1, "at least"), (fit.at_most, -1, "at most")):
        for total in totals:
            if total.blanks():
                other = _sum(total, size, setting)
                parts = ((fit.blank, Fraction(sign)), *((n, -sign * f) for n, f in other.parts))
                why = f"{{{fit.blank}}} must be {word} what its sentence says of {', '.join(sorted(total.blanks()))}"
                found.append(Limit(Sum(-sign * other.const, parts), why))
    return found


def impossible(problem: Problem, size: str, fits: Mapping[str, Fit]) -> Finding:
    """The finding for a part that has no legal numbers: what forbids them, and the numbers nearest to what is wanted."""
    for s in problem.sought:
        first, last = s.low + (s.rest - s.low) % s.multiple, s.high - (s.high - s.rest) % s.multiple
        if first > last:
            return Finding("G030", fits[s.name].span, _facts(s.name, size, _asked(s), _said(sorted({last, first}))), sizes=(size,))
        if s.kept is not None and not (first <= s.kept <= last and (s.kept - s.rest) % s.multiple == 0):
            nearest = min(max(nearest_legal(Fraction(s.kept), s.multiple, s.rest), first), last)
            why = f"{s.kept} is given for it, which is not {_asked(s)}"
            return Finding("G030", fits[s.name].span, _facts(s.name, size, why, str(nearest)), sizes=(size,))
    for x in problem.linked:
        if x.kept is not None and (x.kept - x.rest) % x.multiple:
            why = f"{x.kept} is given for it, which is not a multiple of {x.multiple}{f' plus {x.rest}' if x.rest else ''}"
            legal = str(nearest_legal(Fraction(x.kept), x.multiple, x.rest))
            return Finding("G030", fits[x.name].span, _facts(x.name, size, why, legal), sizes=(size,))
    best, broken = _without_limits(problem)
    names = [n for limit in broken for n in sorted(limit.names) if n in fits]
    names = names or [s.name for s in problem.sought] or [problem.linked[0].name]
    blank = next((n for n in names if any(limit.why.startswith(f"{{{n}}}") for limit in broken)), names[0])
    why = "; ".join(dict.fromkeys(limit.why for limit in broken)) or "it does not come out whole"
    near = ", ".join(f"{{{n}}} {best[n]}" for n in dict.fromkeys((blank, *names)) if n in best)
    return Finding("G030", fits[blank].span, _facts(blank, size, why, near or "none"), sizes=(size,))


def _without_limits(problem: Problem) -> tuple[dict[str, int], list[Limit]]:
    """The numbers nearest to their targets if no limit stood between them, and the limits that they break."""
    free = replace(problem, limits=(), linked=tuple(replace(x, whole=False) for x in problem.linked))
    best = next((values for _, values in assignments(free)), {})
    return best, [limit for limit in problem.limits if limit.names <= best.keys() and not limit.holds(best)]


def _facts(blank: str, size: str, why: str, near: str) -> dict[str, object]:
    return {"blank": blank, "size": size, "why": why, "near": near}


def _asked(s: Sought) -> str:
    rest = f" plus {s.rest}" if s.rest else ""
    until = f"from {s.low} to {s.high}" if s.high < LARGEST else f"from {s.low}"
    return f"a multiple of {s.multiple}{rest} {until}"


def _said(numbers: Sequence[int]) -> str:
    return " or ".join(map(str, numbers))
