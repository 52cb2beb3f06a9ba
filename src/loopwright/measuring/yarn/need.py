"""Yarn of a worked fabric: by row, section and colour, with its range, mass and balls."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterable, Mapping

from loopwright.grading.gauge import StitchSizes, plain_kind
from loopwright.grading.gauge.sizes import WIDE
from loopwright.measuring.yarn.calibrate import Calibration
from loopwright.measuring.yarn.known import YarnKnown
from loopwright.measuring.yarn.strands import known_kind, stitch_yarn_mm, thickness_mm
from loopwright.model.fabric import ROLES, Fabric
from loopwright.model.measures import YarnNeed
from loopwright.model.tree import Document, Section
from loopwright.record import record
from loopwright.trade.yarn_use import yarn_use

_ASSUMED = ROLES.index("assumed")
_MAKE = re.compile(r"\bmake\s+(?P<n>\d{1,4})(?:\s*[(\[](?P<more>[\d,\s:;–-]+)[)\]])?|\((?P<x>\d{1,4})\s*x\)", re.IGNORECASE)
# Width and height both lengthen a stitch, each in about this share of its yarn (the rest is turns); from the strands of a dc.
_BY_GAUGE = 0.4
Copies = Mapping[str | None, int]


@record
class RowYarn:
    """Yarn of one row of the fabric: mm of stitches by colour ("" where none is said) and tails left, for all copies of its section."""

    row: int
    section: str | None
    stitches_mm: Mapping[str, float]
    tails: Mapping[str, float]

    @property
    def total_mm(self) -> float:
        """Everything in it, tails too."""
        return sum(self.stitches_mm.values()) + sum(self.tails.values())


@record
class FabricYarn:
    """All rows of a fabric. `untold`: stitches that no words made. `strange`: kinds taken as the stitch of the swatch."""

    rows: tuple[RowYarn, ...]
    untold: int
    strange: tuple[str, ...]


def copies_of(document: Document, size: int = 0) -> dict[str | None, int]:
    """How often each section is made, for a size by index: "Wing (make 2)", "Joined squares (make 62 (107, 179))"."""
    found: dict[str | None, int] = {}
    for item in document.items:
        if isinstance(item, Section):
            line = document.text[item.span.start :].split("\n", 1)[0]
            m = _MAKE.search(line) or _MAKE.search(item.title)
            many = item.copies
            if m is not None:
                each = [int(m["n"] or m["x"]), *(int(n) for n in re.findall(r"\d{1,4}", m["more"] or ""))]
                many = each[size if size < len(each) else 0]
            found[item.title] = max(1, many)
    return found


def fabric_yarn(
    fabric: Fabric, sizes: StitchSizes, yarn: YarnKnown, copies: Copies | None = None, calibrated: Calibration | None = None
) -> FabricYarn:
    """Yarn of every row. Stitches that must have been there but that no words made are not counted."""
    lengths = _Lengths(sizes, yarn, calibrated)
    tail = sum(yarn_use().tail_mm) / 2 * yarn.strands
    found: list[RowYarn] = []
    untold, last, piece = 0, "", -1
    for index, row in enumerate(fabric.rows):
        many = (copies or {}).get(row.section, 1)
        made: dict[str, float] = {}
        columns = zip(fabric.kind[row.start : row.end], fabric.colour[row.start : row.end], fabric.role[row.start : row.end], strict=True)
        for (kind, colour, role), n in Counter(columns).items():
            if role == _ASSUMED:
                untold += n
            else:
                name = fabric.colours[colour]
                made[name] = made.get(name, 0.0) + n * many * lengths.of(fabric.kinds[kind])
        tails: dict[str, float] = {}
        if made and row.piece != piece:  # a new piece: one tail where it begins, one where it ends
            piece, last = row.piece, next(iter(made))
            tails[last] = 2 * tail * many
        for name in made:
            if name != last:  # a change of colour: the old one's tail and the new one's
                tails[name] = tails.get(name, 0.0) + tail * many
                tails[last] = tails.get(last, 0.0) + tail * many
                last = name
        found.append(RowYarn(index, row.section, made, tails))
    return FabricYarn(tuple(found), untold, tuple(sorted(lengths.strange)))


class _Lengths:
    """Yarn by kind, mm, each worked out once."""

    def __init__(self, sizes: StitchSizes, yarn: YarnKnown, calibrated: Calibration | None) -> None:
        self.sizes, self.calibrated, self.strands = sizes, calibrated or Calibration(), yarn.strands
        self.thick = thickness_mm(sizes.width_mm, yarn.weight, yarn.metres_per_100g)
        self.strange: set[str] = set()
        self._known: dict[str, float] = {}

    def of(self, kind: str) -> float:
        found = self._known.get(kind)
        if found is None:
            if not known_kind(kind):
                self.strange.add(kind)
            one = stitch_yarn_mm(kind, self.sizes, self.thick)
            found = self._known[kind] = one * self.strands * self.calibrated.of(plain_kind(kind))
        return found


def yarn_need(
    fabric: Fabric, sizes: StitchSizes, yarn: YarnKnown, copies: Copies | None = None, calibrated: Calibration | None = None
) -> tuple[YarnNeed, ...]:
    """Yarn of a fabric by colour, in the order the colours come in: length with its range, mass, balls.

    `copies`: how often each section is made. The range holds the true length in about nineteen of twenty; where lace thread was guessed
    from the hook it runs from half to double.
    """
    return needs_of(fabric_yarn(fabric, sizes, yarn, copies, calibrated), sizes, yarn, calibrated)


def yarn_by_section(
    fabric: Fabric, sizes: StitchSizes, yarn: YarnKnown, copies: Copies | None = None, calibrated: Calibration | None = None
) -> dict[str | None, tuple[YarnNeed, ...]]:
    """The same, section by section; balls are None there, since a ball runs on into the next section."""
    return sections_of(fabric_yarn(fabric, sizes, yarn, copies, calibrated), sizes, yarn, calibrated)


def sections_of(
    found: FabricYarn, sizes: StitchSizes, yarn: YarnKnown, calibrated: Calibration | None = None
) -> dict[str | None, tuple[YarnNeed, ...]]:
    """`yarn_by_section` of rows whose yarn is known already."""
    sections: dict[str | None, list[RowYarn]] = {}
    for row in found.rows:
        sections.setdefault(row.section, []).append(row)
    return {name: needs_of(FabricYarn(tuple(rows), 0, ()), sizes, yarn, calibrated, balls=False) for name, rows in sections.items()}


def needs_of(
    found: FabricYarn, sizes: StitchSizes, yarn: YarnKnown, calibrated: Calibration | None = None, *, balls: bool = True
) -> tuple[YarnNeed, ...]:
    """`yarn_need` of rows whose yarn is known already; `calibrated` as it was for them. Without `balls`, none are counted."""
    share = spread(sizes, yarn, calibrated)
    made, tails = totals(found.rows)
    said = _how(found, sizes, yarn, calibrated)
    needs = []
    for colour in made:
        length = made[colour] / 1000 + tails.get(colour, 0.0) / 1000
        low, high = length * math.exp(-WIDE * share), length * math.exp(WIDE * share)
        mass = length * 100 / yarn.metres_per_100g if yarn.metres_per_100g else None
        many = balls_to_buy(length, yarn.ball_m, yarn_use().plain) if balls and yarn.ball_m else None
        needs.append(YarnNeed(colour, length, low, high, mass, many, _with_balls(said, tails.get(colour, 0.0), many, high, yarn)))
    return tuple(needs)


def totals(rows: Iterable[RowYarn]) -> tuple[dict[str, float], dict[str, float]]:
    """Stitches and tails by colour over some rows, mm."""
    made: dict[str, float] = {}
    tails: dict[str, float] = {}
    for row in rows:
        for colour, mm in row.stitches_mm.items():
            made[colour] = made.get(colour, 0.0) + mm
        for colour, mm in row.tails.items():
            tails[colour] = tails.get(colour, 0.0) + mm
    return made, tails


def spread(sizes: StitchSizes, yarn: YarnKnown, calibrated: Calibration | None) -> float:
    """Standard deviation of a length as a share: the sum's own, and what the gauge's uncertainty adds."""
    table = yarn_use().spread
    if sizes.guessed and thread(sizes, yarn):
        return table.thread
    own = calibrated.share if calibrated is not None and calibrated.share else table.counted
    return math.hypot(own, _BY_GAUGE * sizes.width_share, _BY_GAUGE * sizes.height_share)


def thread(sizes: StitchSizes, yarn: YarnKnown) -> bool:
    """True for lace thread: by its class, or by stitches as narrow as only thread makes."""
    return (yarn.weight is not None and yarn.weight.number == 0) or sizes.width_mm < 3.0


def balls_to_buy(length_m: float, ball_m: float, contingency: float) -> int:
    """Whole balls for a length and the share added to it for mishaps. Raises ValueError for a ball of nothing."""
    if not ball_m > 0:
        raise ValueError("a ball must hold more than nought")
    return math.ceil(length_m * (1 + contingency) / ball_m - 1e-9)


def _how(found: FabricYarn, sizes: StitchSizes, yarn: YarnKnown, calibrated: Calibration | None) -> str:
    by = calibrated.how if calibrated is not None else ""
    said = [f"counted stitch by stitch {by}" if by else "counted stitch by stitch, not weighed"]
    if sizes.guessed:
        said.append("with a guessed gauge")
        if thread(sizes, yarn):
            said.append("thread lace without a gauge: half to double, no nearer; weigh a motif")
    if yarn.strands > 1:
        said.append(f"{yarn.strands} strands held together")
    if found.untold:
        said.append(f"without {found.untold} sts that the words do not tell")
    if found.strange:
        said.append(f"{', '.join(found.strange)} taken as {sizes.kind}")
    return "; ".join(said)


def _with_balls(said: str, tails_mm: float, many: int | None, high_m: float, yarn: YarnKnown) -> str:
    if tails_mm:
        said += f"; {tails_mm / 1000:.1f} m of tails in it, sewing up not"
    if many is not None and yarn.ball_m:
        more = balls_to_buy(high_m, yarn.ball_m, 0.0)
        said += f"; balls with {100 * yarn_use().plain:.0f} % more" + (f", {more} if it comes to the most" if more > many else "")
    return said
