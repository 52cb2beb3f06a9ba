"""How long it takes: stitches by kind times seconds a stitch, by her own clock or the table's speeds, and the finishing."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping

from loopwright.grading.gauge.heading import lines
from loopwright.grading.lengths import NUMBER, number
from loopwright.model.fabric import ROLES, Fabric
from loopwright.model.measures import TimeNeed
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.source.expressions import Expression
from loopwright.terms import dialect
from loopwright.trade.composed import composed
from loopwright.trade.stitches import like
from loopwright.trade.yarn_use import yarn_use

_ASSUMED = ROLES.index("assumed")
_TIMED = Expression(
    rf"(?P<n>{NUMBER})\s*(?P<noun>[A-Za-z][A-Za-z .]{{0,30}}?)\s*(?:in|=|took|takes?|:)\s*(?:about\s+)?(?P<t>{NUMBER})\s*"
    r"(?P<unit>s|secs?|seconds?|min|mins|minutes?|h|hours?)\b", re.IGNORECASE,
)
_SECONDS = {"s": 1.0, "m": 60.0, "h": 3600.0}
# A timed swatch is steady work: over a whole piece she is up to a fifth slower, and a tenth quicker once the rows are known. Common
# practice, no source.
_QUICKER, _SLOWER = 0.9, 1.2
_FASTEST_S, _SLOWEST_S = 0.3, 600.0


@record
class Pace:
    """Seconds a stitch by kind: `own` was timed, others follow by the table's ratios."""

    own: Mapping[str, float]

    def seconds(self, kind: str, plain_sc: float) -> float:
        """Seconds for one stitch of a kind, where a single crochet takes `plain_sc`."""
        if kind in self.own:
            return self.own[kind]
        made, table = composed(kind), yarn_use().speed
        usual = table.ratios.get(made.plain, table.ratios.get(like(made.plain) or "sc", 1.0))
        base = self.own.get(made.plain) or plain_sc * usual
        return base * (1 + table.leg * (made.legs - 1)) * (table.post if made.post else 1.0)


def own_speed(document: Document) -> dict[str, float]:
    """Seconds a stitch by kind, from lines such as "Timed: 20 sc in 60 seconds"; empty where nothing was timed or it cannot be."""
    which = dialect(document.terms)
    found: dict[str, float] = {}
    for line in lines(document, "timed", "time"):
        for m in _TIMED.finditer(line.value):
            kind = which.kind_of(m["noun"].strip())
            many = float(number(m["n"]))
            seconds = float(number(m["t"])) * _SECONDS[m["unit"][0].lower()]
            if kind is not None and many > 0 and _FASTEST_S <= seconds / many <= _SLOWEST_S:
                found[kind] = seconds / many
    return found


def time_need(fabric: Fabric, own: Mapping[str, float] | None = None, copies: Mapping[str | None, int] | None = None) -> TimeNeed:
    """Making time in minutes with its range, finishing in it. `own`: seconds a stitch by kind, from her timed swatch.

    Stitches that no words made are not counted. Without her own speed the range runs from a practised maker to a beginner.
    """
    return time_of(stitches_by_kind(fabric, copies), own)


def stitches_by_kind(fabric: Fabric, copies: Mapping[str | None, int] | None = None) -> dict[str, int]:
    """Everything made, chains and joins too, by kind (US key), with copies of sections."""
    found: Counter[str] = Counter()
    for row in fabric.rows:
        many = (copies or {}).get(row.section, 1)
        for (kind, role), n in Counter(zip(fabric.kind[row.start : row.end], fabric.role[row.start : row.end], strict=True)).items():
            if role != _ASSUMED:
                found[fabric.kinds[kind]] += n * many
    return dict(found)


def time_of(made: Mapping[str, int], own: Mapping[str, float] | None = None) -> TimeNeed:
    """Time for so many stitches by kind. Raises ValueError for a speed that is none."""
    speed = yarn_use().speed
    timed = dict(own or {})
    if any(not _FASTEST_S <= s <= _SLOWEST_S for s in timed.values()):
        raise ValueError("seconds a stitch must lie between 0.3 and 600")
    pace = Pace(timed)
    low_share, high_share = speed.finishing
    share = (low_share + high_share) / 2
    if timed:
        by_sc = [s / _ratio(k) for k, s in timed.items()]
        base = sum(by_sc) / len(by_sc)
        worked = sum(n * pace.seconds(kind, base) for kind, n in made.items()) / 60
        low, high, how = worked * _QUICKER, worked * _SLOWER, "by her own timed stitches"
    else:
        paces = (speed.middle_s, speed.fast_s, speed.slow_s)
        worked, low, high = (sum(n * pace.seconds(k, s) for k, n in made.items()) / 60 for s in paces)
        how = f"at {speed.middle_s:g} s a single crochet; from {speed.fast_s:g} s (practised) to {speed.slow_s:g} s (beginner)"
    said = f"{how}; {100 * low_share:.0f} to {100 * high_share:.0f} % of the whole for ends and finishing in it"
    return TimeNeed(worked / (1 - share), low / (1 - low_share), high / (1 - high_share), said)


def _ratio(kind: str) -> float:
    """Time of a kind against a single crochet by the table."""
    return Pace({}).seconds(kind, 1.0) or 1.0
