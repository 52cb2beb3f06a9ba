"""What a swatch says in the heading of a pattern, and which patterns are worked to it."""

from __future__ import annotations

from loopwright.grading import GaugeError, parse_gauge
from loopwright.model.tree import HeadLine
from loopwright.notation import read
from loopwright.record import record
from loopwright.source import Source
from loopwright.terms import dialect
from loopwright.trade.hooks import hooks
from loopwright.trade.yarn import weights
from loopwright.workshop.resize import with_gauge, with_line

SAME = 0.005  # share by which two gauges may differ and be one: half a stitch in a hundred


@record
class Worked:
    """What a heading needs of a swatch: counts with the lengths that they come to (mm), stitch (US key or her own words), hook, yarn.

    `yarn`: its name, class, fibre, grams and metres of a ball; "" or None where not known.
    """

    stitches: float
    width_mm: float
    rows: float
    height_mm: float
    stitch: str
    hook_mm: float
    rounds: bool = False
    washed: bool = False
    yarn: str = ""
    weight: int | None = None
    fibre: str = ""
    ball_g: float | None = None
    ball_m: float | None = None


def lines(worked: Worked, terms: str = "us") -> dict[str, str]:
    """The lines Gauge, Hook and Yarn, in the terms of a pattern ("us", "uk", "old"); no Yarn line where no yarn is known."""
    found = {"Gauge": gauge_words(worked, terms), "Hook": hook_words(worked.hook_mm)}
    yarn = yarn_words(worked)
    return {**found, "Yarn": yarn} if yarn else found


def gauge_words(worked: Worked, terms: str = "us") -> str:
    """As "17 hdc and 13 rnds = 10 cm": her own counts where both stand to one length, else both to 10 cm."""
    stitch, row = _stitch(worked.stitch, terms), "rnds" if worked.rounds else "rows"
    wide, high, length = worked.stitches, worked.rows, worked.width_mm
    if abs(worked.width_mm - worked.height_mm) > 1e-6:
        wide, high, length = 100 * wide / worked.width_mm, 100 * high / worked.height_mm, 100.0
    after = " after washing" if worked.washed else ""
    return f"{_short(wide)} {stitch} and {_short(high)} {row} = {_short(length / 10)} cm{after}"


def hook_words(mm: float) -> str:
    """As "4 mm (G-6)": with the label that the trade prints on it, where there is one."""
    label = next((h.us for h in hooks() if not h.steel and abs(h.mm - mm) < 1e-6 and h.us), "")
    return f"{_short(mm)} mm ({label})" if label else f"{_short(mm)} mm"


def yarn_words(worked: Worked) -> str:
    """As "Reedmace, medium, wool, 100 g = 200 m"; "" where nothing is known of it."""
    named = next((w.name for w in weights() if w.number == worked.weight), "")
    ball = f"{_short(worked.ball_g)} g = {_short(worked.ball_m)} m" if worked.ball_g and worked.ball_m else ""
    return ", ".join(x for x in (worked.yarn, named, worked.fibre, ball) if x)


def written_in(text: str, worked: Worked) -> str:
    """The text with the lines of a swatch in its heading, in its own terms. Raises CannotChange."""
    terms = read(Source.of(text)).terms
    said = lines(worked, terms)
    changed = with_gauge(text, f"{said['Gauge']}, {_short(worked.hook_mm)} mm hook")
    for name in ("Hook", "Yarn"):
        if name in said:
            changed = with_line(changed, name, said[name])
    return changed


@record
class Heading:
    """What a design's heading says of gauge (mm, None where not told) and yarn (in lower case)."""

    title: str
    stitch_mm: float | None
    row_mm: float | None
    yarn: str


def heading_of(text: str, name: str) -> Heading:
    """Gauge and yarn of a design as its heading has them; `name` where it has no title. Never raises."""
    document = read(Source.of(text))
    heads = {i.name: i.value for i in reversed(document.items) if isinstance(i, HeadLine)}
    try:
        gauge = parse_gauge(heads.get("gauge") or heads.get("tension") or "")
    except GaugeError:
        gauge = None
    stitch, row = (gauge.stitch_mm, gauge.row_mm) if gauge is not None else (None, None)
    return Heading(document.title or name, stitch, row, heads.get("yarn", "").lower())


def same_gauge(heading: Heading, stitch_mm: float, row_mm: float) -> bool:
    """Whether a design is worked to this gauge."""
    if heading.stitch_mm is None or heading.row_mm is None:
        return False
    return abs(heading.stitch_mm / stitch_mm - 1) <= SAME and abs(heading.row_mm / row_mm - 1) <= SAME


def _stitch(said: str, terms: str) -> str:
    try:
        return dialect(terms).term(said.strip().lower()).short
    except (KeyError, LookupError):
        return said.strip()


def _short(value: float | None) -> str:
    return f"{round(value or 0.0, 2):g}"
