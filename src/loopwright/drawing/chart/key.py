"""The key: what is used and nothing else, in the terms asked for; below it what is to be told."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from html import escape

from loopwright.drawing.chart.drawn import ChartOptions, Laid, Mark
from loopwright.drawing.chart.ink import is_filled, is_own, number, sample, symbol_path
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.sheet import MARGIN, Sheet
from loopwright.drawing.chart.signs import cut_at, cut_sign, join_sign, joined_at
from loopwright.drawing.chart.style import TEXT_PX
from loopwright.drawing.chart.symbols import changes_places, marks, place_seen
from loopwright.drawing.chart.yarns import coloured, yarns_used
from loopwright.drawing.lettering import plain, width_px, wrapped
from loopwright.drawing.speech import Speech
from loopwright.model.fabric import Fabric
from loopwright.record import record

LINE = 20.0
ENTRY, LOW_ENTRY = 58.0, 34.0  # height of an entry, of one without a tall symbol
BESIDE = 24.0  # from the middle of a symbol to its words
SHORT = 60  # letters of what a pattern says of a stitch that has its symbol
LONGEST = 160  # letters of what a pattern says of its own stitch
_OTHER_POST = {"fp": "bp", "bp": "fp"}
PLACES = {"back": "back-loop", "front": "front-loop", "third": "third-loop"}


@record
class _Entry:
    """A line of the key: what kind of sign, its words, and what the sign is drawn from."""

    what: str
    words: str
    kind: str = ""
    place: str = "none"
    feet: int = 1


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
    speech = options.words
    found = _stitches(fabric, laid, options)
    if laid.ring:
        found.append(_Entry("ring", speech.say("ring-sign")))
    if cut_at(fabric, section, laid) is not None:
        found.append(_Entry("cut", speech.say("cut-sign")))
    if joined_at(fabric, laid, options.joins):
        found.append(_Entry("join", speech.say("join-sign")))
    if coloured(fabric, laid, options):
        yarns = yarns_used(fabric, laid, options)
        for letter, name in yarns:
            key = "yarn-named" if name == letter else "yarn-sign"
            found.append(_Entry("yarn", speech.say(key, sign=letter, name=name), letter))
    return found


def _stitches(fabric: Fabric, laid: Laid, options: ChartOptions) -> list[_Entry]:
    """An entry for every symbol as it is seen, and what is worked for it in wrong-side rows, where that is something else."""
    speech = options.words
    worked: dict[tuple[str, str], set[str]] = {}
    feet: dict[tuple[str, str], Counter[int]] = {}
    for m in laid.marks:
        feet.setdefault(_seen(m), Counter())[1 if m.kind in ("ch", "sl st") else len(set(m.feet))] += 1
        told = _name(m.kind, m.place.removeprefix("ws:"), speech, short=True) if changes_places(m) else ""
        worked.setdefault(_seen(m), set()).add(told)
    order = {kind: n for n, kind in enumerate(fabric.kinds)}
    found = []

    def place_of(e: tuple[str, str]) -> tuple[int, str, bool, str]:
        return order.get(e[0], order.get(_other_post(e[0]), len(order))), e[0], e[1] != "none", e[1]

    for kind, place in sorted(worked, key=place_of):
        text = _name(kind, place, speech, short=False) + _explained(kind, options)
        other = sorted(worked[kind, place] - {""})
        if other:
            text = speech.say("worked-on-ws", seen=text, worked=speech.listed(other))
        post = "front-post" if kind.startswith("fp") else "back-post" if kind.startswith("bp") else place
        found.append(_Entry("stitch", text, kind, post if post in marks() else "none", feet[kind, place].most_common(1)[0][0]))
    return found


def _explained(kind: str, options: ChartOptions) -> str:
    """What the pattern says of a stitch that has a symbol: ": dc5tog in one st", where that is short."""
    said = {name.lower(): text for name, text in options.special.items()}.get(kind.lower(), "")
    words = plain(options.words.own(said)) if said else ""
    return f": {words}" if 0 < len(words) <= SHORT and not is_own(kind) else ""


def _seen(m: Mark) -> tuple[str, str]:
    """The stitch and the loop that a symbol shows, as the fabric looks from its right side."""
    if m.kind in ("ch", "sl st"):
        return m.kind, "none"
    place = place_seen(m.place.removeprefix("ws:"), right_side=not changes_places(m))
    kind = _other_post(m.kind) if changes_places(m) and place.endswith("-post") else m.kind
    return kind, place if place in marks() and not kind.startswith(("fp", "bp")) else "none"


def _other_post(kind: str) -> str:
    return _OTHER_POST[kind[:2]] + kind[2:] if kind[:2] in _OTHER_POST else kind


def _name(kind: str, place: str, speech: Speech, *, short: bool) -> str:
    text = speech.stitch(kind) if short else speech.named(kind)
    return f"{text}, {speech.say(PLACES[place])}" if place in PLACES and not kind.startswith(("fp", "bp")) else text


def key_of(
    fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, at: tuple[float, float, float],
) -> tuple[list[str], float]:
    """Elements of the key and how high it is; `at`: where it begins, how wide the sheet is, how large its type."""
    top, wide, px = at
    entries = _entries(fabric, section, laid, options)
    room = wide - 2 * MARGIN - 16 - BESIDE
    step = min(room, max(width_px(e.words, px) for e in entries)) + BESIDE + 32
    across = max(1, int((wide - 2 * MARGIN) // step))
    found, y = ['<g class="key">'], top
    for n in range(0, len(entries), across):
        line = entries[n : n + across]
        high = ENTRY if any(e.what == "stitch" and e.kind not in ("ch", "sl st") for e in line) else LOW_ENTRY
        for k, e in enumerate(line):
            at_sign = MARGIN + k * step + 16, y + high / 2 + 5
            found += [*_entry(e, at_sign, own_numbers(fabric), options), *_words(e, at_sign, room, px)]
        y += high
    return [*found, "</g>"], y - top + 12


def _entry(e: _Entry, at: tuple[float, float], own: dict[str, int], options: ChartOptions) -> list[str]:
    (x, y), mirror = at, -1 if options.left_handed else 1
    if e.what == "ring":
        return [f'<circle class="ring" cx="{number(x)}" cy="{number(y)}" r="9"/>']
    if e.what == "cut":
        return [cut_sign((x, y))]
    if e.what == "join":
        return [join_sign((x, y))]
    if e.what == "yarn":
        return [f'<path class="y{e.kind}" d="M{number(x - 16)} {number(y)}L{number(x + 16)} {number(y)}" data-yarn="{e.kind}"/>']
    turn = Sheet(mirror * x - x, 0.0, mirror)
    class_ = ' class="f"' if is_filled(e.kind) else ""
    found = [f'<path{class_} d="{symbol_path(sample(e.kind, e.place, (x, -y), e.feet), turn.at)}" data-key="{escape(plain(e.kind))}"/>']
    if e.kind in own:
        found.append(f'<text class="mid" x="{number(x)}" y="{number(y - 2)}">{own[e.kind]}</text>')
    return found


def _words(e: _Entry, at: tuple[float, float], room: float, px: float) -> list[str]:
    """What an entry says, beside the middle of its sign, on as many lines as there is room for."""
    lines, step = wrapped(plain(e.words), px, room), 1.15 * px
    x, y = at[0] + BESIDE, at[1] + 4.5 - step * (len(lines) - 1) / 2
    return [f'<text x="{number(x)}" y="{number(y + step * n)}">{escape(line)}</text>' for n, line in enumerate(lines)]


def below_key(said: Sequence[str], at: tuple[float, float, float]) -> tuple[list[str], float]:
    """Notes and counts, broken to the width, and how high they are; `at`: where they begin, how wide the sheet is, how large its type."""
    top, wide, px = at
    lines = [line for text in said for line in wrapped(plain(text), px, wide - 2 * MARGIN)]
    high = LINE * px / TEXT_PX
    found = [
        f'<text class="said" x="{number(MARGIN)}" y="{number(top + 14 + high * n)}">{escape(plain(t))}</text>' for n, t in enumerate(lines)
    ]
    return found, len(lines) * high + MARGIN
