"""What was measured, as text: sizes across, measures down; for one size also the ranges and where each value comes from."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.measures import Dimension, Measures, YarnNeed
from loopwright.workshop.measure import Measured

WIDE = 112


def text(measured: Measured) -> str:
    """The whole table."""
    sizes = measured.gauge.sizes
    held = "no gauge" if sizes is None else f"{sizes.text or 'a gauge'}{' (a guess)' if sizes.guessed else ''}"
    many = len(measured.sizes)
    head = f"{measured.document.title or measured.source.name} at {held}; lengths in cm"
    blocks = [_one(measured.sizes[0]) if many == 1 else _several(measured.sizes)]
    blocks += [_rounds(measured.sizes[0]), _cautions(measured), _notes(measured)]
    return "\n\n".join([head, *(b for b in blocks if b)]) + "\n"


def _key(d: Dimension) -> tuple[str, str]:
    if d.worn:
        return "Worn", d.name.removesuffix(" worn")
    if d.relaxed:
        name = d.name.removesuffix(" relaxed")
        return "Relaxed", f"{name}, {d.section}" if d.section else name
    return d.section or "Whole", d.name


def _keys(sizes: Sequence[Measures]) -> list[tuple[str, str]]:
    """Section and name of every dimension, in the order of making; the whole, the relaxed and the worn last."""
    keys = list(dict.fromkeys(_key(d) for m in sizes for d in m.dimensions))
    last = ("Whole", "Relaxed", "Worn")
    sections = [s for s in dict.fromkeys(k[0] for k in keys) if s not in last] + [s for s in last if any(k[0] == s for k in keys)]
    return [k for s in sections for k in keys if k[0] == s]


def _one(m: Measures) -> str:
    rows: list[tuple[str, ...]] = []
    section = ""
    for key in _keys([m]):
        for d in (d for d in m.dimensions if _key(d) == key):
            if key[0] != section:
                section = key[0]
                rows.append((section, "", "", ""))
            rows.append((f"  {key[1]}", _cm(d.value_mm), f"{_cm(d.low_mm)}-{_cm(d.high_mm)}", d.how))
    if m.shape is not None:
        rows.append(("Shape", "", "", ""))
        whole = f"{_cm(m.shape.width_mm)} x {_cm(m.shape.depth_mm)} x {_cm(m.shape.height_mm)}"
        rest = "" if m.shape.settled else "; not settled"
        rows.append(("  laid flat" if m.shape.laid_flat else "  as it lies", whole, "", f"strain {100 * m.shape.strain_mean:.1f} %{rest}"))
    rows += _where_it_ends(m)
    rows += _needs([m])
    return _laid([("", "cm", "range", ""), *rows])


def _where_it_ends(m: Measures) -> list[tuple[str, ...]]:
    """On the form: its edge in front and behind, against the brow line or the wrist."""
    if m.worn is None:
        return []
    line = "wrist crease" if "hand" in m.worn.form else "brow line"
    rows: list[tuple[str, ...]] = []
    stretch = f"; the edge {100 * m.worn.stretch:.0f} % of its own length"
    for name, mm, more in (("front", m.worn.front_mm, stretch), ("back", m.worn.back_mm, "")):
        rows.append((f"  {name} edge", _cm(abs(mm)), "", f"{'above' if mm >= 0 else 'below'} the {line} on {m.worn.form}{more}"))
    return rows


def _several(sizes: Sequence[Measures]) -> str:
    """Sheets of as many sizes as fit side by side."""
    lead = [*_keys(sizes)]
    names = [f"  {k[1]}" for k in lead] + [s for s, _ in lead]
    width = max([len(n) for n in names] + [10])
    sheets: list[list[Measures]] = [[]]
    for m in sizes:
        if sheets[-1] and width + sum(2 + max(7, len(x.size)) for x in [*sheets[-1], m]) > WIDE:
            sheets.append([])
        sheets[-1].append(m)
    return "\n\n".join(_sheet(lead, sheet) for sheet in sheets)


def _sheet(keys: Sequence[tuple[str, str]], sizes: Sequence[Measures]) -> str:
    rows: list[tuple[str, ...]] = [("", *(m.size for m in sizes))]
    section = ""
    for key in keys:
        if key[0] != section:
            section = key[0]
            rows.append((section,))
        values = [next((_cm(d.value_mm) for d in m.dimensions if _key(d) == key), "-") for m in sizes]
        rows.append((f"  {key[1]}", *values))
    rows += _needs(sizes)
    return _laid(rows)


def _needs(sizes: Sequence[Measures]) -> list[tuple[str, ...]]:
    """Yarn by colour, stitches and time."""
    rows: list[tuple[str, ...]] = []
    colours = list(dict.fromkeys(y.colour for m in sizes for y in m.yarn))
    if colours:
        rows.append(("Yarn, m",))
    alone = len(sizes) == 1
    for colour in colours:
        found = [next((y for y in m.yarn if y.colour == colour), None) for m in sizes]
        rows.append((f"  {colour or 'yarn'}", *(f"{y.length_m:.0f}" if y else "-" for y in found), *(_detail(found[0]) if alone else ())))
        if not alone:
            rows.append(("    range", *(f"{y.low_m:.0f}-{y.high_m:.0f}" if y else "-" for y in found)))
        if any(y is not None and y.balls is not None for y in found):
            rows.append(("    balls", *(str(y.balls) if y and y.balls is not None else "-" for y in found)))
        if any(y is not None and y.other_balls is not None for y in found):
            rows.append(("    of the other", *(str(y.other_balls) if y and y.other_balls is not None else "-" for y in found)))
    if any(m.at_hand is not None for m in sizes):
        rows.append(("  at hand", *(m.at_hand.verdict if m.at_hand else "-" for m in sizes)))
        rows.append(("    spare, m", *(f"{m.at_hand.spare_m:.0f}" if m.at_hand else "-" for m in sizes)))
    rows.append(("Stitches", *(f"{sum(m.stitches.values()):,}" for m in sizes)))
    times = [m.time for m in sizes if m.time is not None]
    if times:
        unit, digits, per_min = ("hours", 1, 60) if max(t.high_min for t in times) >= 60 else ("minutes", 0, 1)
        told = [f"{t.low_min / per_min:.{digits}f}-{t.high_min / per_min:.{digits}f}" if (t := m.time) else "-" for m in sizes]
        rows.append((f"Time, {unit}", *told))
    return rows


def _detail(y: YarnNeed | None) -> tuple[str, ...]:
    if y is None:
        return ()
    grams = f", {y.mass_g:.0f} g" if y.mass_g is not None else ""
    return f"{y.low_m:.0f}-{y.high_m:.0f}", f"{y.how}{grams}"


def _rounds(m: Measures) -> str:
    """How the rounds lie, of the first size; alike ones in one line."""
    if not m.rounds:
        return ""
    rows: list[tuple[str, ...]] = [("round", "sts", "gains", "flat gains", "lies", "")]
    rows += [(r.label or "-", str(r.stitches), f"{r.rate:g}", f"{r.flat_rate:.1f}", r.lies, r.mend) for r in m.rounds]
    return f"How the rounds lie ({m.size})\n{_laid(rows)}"


def _cautions(measured: Measured) -> str:
    """Cautions that are due, each with where it comes from, what was found beside its limit, and whom to ask."""
    if not measured.cautions:
        return ""
    lines = []
    for c in measured.cautions:
        hidden = " [hidden from the written pattern]" if c.hidden else ""
        lines.append(f"  {c.text}{hidden}\n    source: {c.standard or c.source}{' [weak]' if c.weak else ''}")
        lines += [f"    {f.size}: {f.what} {_cm(f.found_mm)} cm{' OVER THE LIMIT' if f.over else ''} ({f.how})" for f in c.figures]
    return "Cautions\n" + "\n".join([*lines, f"  {measured.cautions[0].defer}"])


def _notes(measured: Measured) -> str:
    ends = (
        f"{m.size}: the yarn at hand ends in {m.at_hand.label}{f' of {m.at_hand.section}' if m.at_hand.section else ''} "
        f"(between {m.at_hand.earliest} and {m.at_hand.latest}), at {100 * m.at_hand.share:.0f} % of what it takes"
        for m in measured.sizes if m.at_hand is not None and m.at_hand.label
    )
    notes = list(dict.fromkeys([*measured.notes, *(n for m in measured.sizes for n in m.notes), *ends]))
    return "Notes\n" + "\n".join(f"  {n}" for n in notes) if notes else ""


def _laid(rows: Sequence[Sequence[str]]) -> str:
    """Columns: the first to the left, figures to the right, a last column of words to the left."""
    wide = max(len(r) for r in rows)
    words = wide - 1 if any(len(r) == wide and " " in r[-1] and not r[-1][0].isdigit() for r in rows) else wide
    widths = [max((len(r[i]) for r in rows if i < len(r) and len(r) > 1), default=0) for i in range(wide)]
    widths[0] = max(widths[0], *(len(r[0]) for r in rows))
    lines = []
    for r in rows:
        cells = [f"{r[0]:<{widths[0]}}"]
        cells += [f"{c:>{widths[i]}}" if i < words else c for i, c in enumerate(r[1:], 1)]
        lines.append("  ".join(cells).rstrip())
    return "\n".join(lines)


def _cm(mm: float) -> str:
    return f"{mm / 10:.1f}"
