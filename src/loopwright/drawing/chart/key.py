"""The key: what is used and nothing else, in the terms asked for; below it what is to be told."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from loopwright.drawing.chart.drawn import ChartOptions, Laid
from loopwright.drawing.chart.ink import is_filled, is_own, number, sample, symbol_path
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.sheet import MARGIN, Sheet
from loopwright.drawing.chart.signs import cut_at, cut_sign, join_sign, joined_at
from loopwright.drawing.chart.style import TEXT_PX
from loopwright.drawing.chart.symbols import marks, place_seen
from loopwright.drawing.chart.yarns import coloured, yarns_used
from loopwright.drawing.lettering import plain, width_px, wrapped
from loopwright.model.fabric import Fabric
from loopwright.record import record

LINE = 20.0
ENTRY, LOW_ENTRY = 58.0, 34.0  # height of an entry, of one without a tall symbol
BESIDE = 24.0  # from the middle of a symbol to its words
LONGEST = 160  # letters of what a pattern says of its own stitch
PLACES = {"back": "back-loop", "front": "front-loop", "third": "third-loop"}


@record
class _Entry:
    """A line of the key: what kind of sign, its words, and what the sign is drawn from."""

    what: str
    words: str
    kind: str = ""
    place: str = "none"


def own_numbers(fabric: Fabric) -> dict[str, int]:
    """Numbers of the stitches that only this pattern has."""
    return {kind: n for n, kind in enumerate((k for k in fabric.kinds if is_own(k)), 1)}


def own_told(fabric: Fabric, laid: Laid, options: ChartOptions) -> list[str]:
    """What the pattern says of its own stitches, each with its number."""
    used, said = {m.kind for m in laid.marks}, {name.lower(): text for name, text in options.special.items()}
    found = []
    for kind, n in own_numbers(fabric).items():
        if kind in used and kind.lower() in said:
            words = plain(options.words.own(said[kind.lower()]))
            words = words if len(words) <= LONGEST else words[: LONGEST - 4].rsplit(" ", 1)[0] + " ..."
            found.append(options.words.say("own-stitch", n=n, words=words))
    return found


def _entries(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions) -> list[_Entry]:
    used: set[tuple[str, str]] = set()
    speech = options.words
    for m in laid.marks:
        used.add((m.kind, "none"))
        seen = place_seen(m.place.removeprefix("ws:"), right_side=not m.place.startswith("ws:"))
        if seen in PLACES and m.kind not in ("ch", "sl st"):
            used.add((m.kind, seen))
    found = []
    for kind, place in sorted(used, key=lambda e: (fabric.kinds.index(e[0]), e[1] != "none", e[1])):
        text = speech.named(kind)
        post = "front-post" if kind.startswith("fp") else "back-post" if kind.startswith("bp") else place
        text += f", {speech.say(PLACES[place])}" if place in PLACES else ""
        found.append(_Entry("stitch", text, kind, post if post in marks() else "none"))
    if laid.ring:
        found.append(_Entry("ring", speech.say("ring-sign")))
    if cut_at(fabric, section, laid) is not None:
        found.append(_Entry("cut", speech.say("cut-sign")))
    if joined_at(fabric, laid, options.joins):
        found.append(_Entry("join", speech.say("join-sign")))
    if coloured(fabric, laid, options):
        yarns = yarns_used(fabric, laid)
        for letter, name in yarns:
            key = "yarn-named" if name == letter else "yarn-sign"
            found.append(_Entry("yarn", speech.say(key, sign=letter, name=name), letter))
    return found


def key_of(
    fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, at: tuple[float, float, float],
) -> tuple[list[str], float]:
    """Elements of the key and how high it is; `at`: where it begins, how wide the sheet is, how large its type."""
    top, wide, px = at
    entries = _entries(fabric, section, laid, options)
    step = max(width_px(e.words, px) for e in entries) + BESIDE + 32
    across = max(1, int((wide - 2 * MARGIN) // step))
    found, y = ['<g class="key">'], top
    for n in range(0, len(entries), across):
        line = entries[n : n + across]
        high = ENTRY if any(e.what == "stitch" and e.kind not in ("ch", "sl st") for e in line) else LOW_ENTRY
        for k, e in enumerate(line):
            found += _entry(e, (MARGIN + k * step + 16, y + high / 2 + 5), own_numbers(fabric), options)
        y += high
    return [*found, "</g>"], y - top + 12


def _entry(e: _Entry, at: tuple[float, float], own: dict[str, int], options: ChartOptions) -> list[str]:
    (x, y), mirror = at, -1 if options.left_handed else 1
    words = f'<text x="{number(x + BESIDE)}" y="{number(y + 4.5)}">{escape(plain(e.words))}</text>'
    if e.what == "ring":
        return [f'<circle class="ring" cx="{number(x)}" cy="{number(y)}" r="9"/>', words]
    if e.what == "cut":
        return [cut_sign((x, y)), words]
    if e.what == "join":
        return [join_sign((x, y)), words]
    if e.what == "yarn":
        return [f'<path class="y{e.kind}" d="M{number(x - 16)} {number(y)}L{number(x + 16)} {number(y)}" data-yarn="{e.kind}"/>', words]
    turn = Sheet(mirror * x - x, 0.0, mirror)
    class_ = ' class="f"' if is_filled(e.kind) else ""
    found = [f'<path{class_} d="{symbol_path(sample(e.kind, e.place, (x, -y)), turn.at)}" data-key="{escape(plain(e.kind))}"/>']
    if e.kind in own:
        found.append(f'<text class="mid" x="{number(x)}" y="{number(y - 2)}">{own[e.kind]}</text>')
    return [*found, words]


def below_key(said: Sequence[str], at: tuple[float, float, float]) -> tuple[list[str], float]:
    """Notes and counts, broken to the width, and how high they are; `at`: where they begin, how wide the sheet is, how large its type."""
    top, wide, px = at
    lines = [line for text in said for line in wrapped(plain(text), px, wide - 2 * MARGIN)]
    high = LINE * px / TEXT_PX
    found = [
        f'<text class="said" x="{number(MARGIN)}" y="{number(top + 14 + high * n)}">{escape(plain(t))}</text>' for n, t in enumerate(lines)
    ]
    return found, len(lines) * high + MARGIN
