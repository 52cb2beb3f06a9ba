"""Counts of a made row, as the trade counts, and whether a printed count fits them."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from loopwright.model.tree import Chain, Count
from loopwright.working.kinds import CHAIN, HEIGHT, code, name, plain
from loopwright.working.run import Run
from loopwright.working.seeking import SPACES
from loopwright.working.slots import HOW, NOTHING

if TYPE_CHECKING:
    from loopwright.working.rows import Made


OPENING = 20  # so many stitches left out under a chain make an opening, whatever the chain's length
FEW_OPENINGS, SOLID = 4, 5  # openings of a row; stitches of it for each of them, so that it is no lace
LEAST_OPENING, FEW = 4, 2  # so many, under a chain or two of the row, may: a thumb's, whose chains its printed count has among the stitches
SINGLES, LONG_END = 4, 6  # so many single chains, and a chain of so many at a row's end, may be counted with the stitches
SLIP = code("sl st")
_OWN = HOW["own-chain"]
_WIDE = frozenset((HOW["space"], HOW["ring"], NOTHING))  # what was worked into them stands over no stitch of the row below


TALL = frozenset(("hdc", "dc", "tr", "dtr"))
SHAPES = frozenset(("shell", "fan", "scallop", "v-st", "cluster", "group"))
_STARS = frozenset(("star", "star st"))  # drawn together from their loops; the first of a row is told in other words


def makes_opening(run: Run) -> bool:
    """Whether a chain of the row bridges an opening: a sleeve's, a thumb's, a handle's, whose chains the next row works into."""
    starts, ends, hows, made = run.into.start, run.into.end, run.into.how, len(run.out)
    gaps = [(starts[e] - ends[s - 1], e - s) for s, e in run.runs if s > 0 and e < made and e - s > 1 and hows[s - 1] and hows[e]]
    if any(gap >= OPENING for gap, _ in gaps):
        return True
    if run.runs and run.runs[0][0] == 0 and run.in_rounds and (first := run.runs[0][1]) < made and hows[first] and first > 1:
        gaps.append((starts[first] - run.start, first))  # "ch 5, skip 5 sts for thumb, sc in each st around"
    if run.runs and run.in_rounds and run.runs[-1][1] == made and (last := run.runs[-1][0]) > 0 and hows[last - 1] and made - last > 1:
        gaps.append((run.pos - ends[last - 1], made - last))  # "sc in next 24 sts, ch 6, skip 6 sts"
    solid = 0 < len(run.runs) == len(gaps) <= FEW_OPENINGS and made - run.out.count(CHAIN) >= SOLID * len(gaps)
    return solid and all(gap > 1 and long >= gap // 2 for gap, long in gaps)


def slips_along_own_chain(run: Run, out: bytes) -> int:
    """Slip stitches back along a chain that the row itself made, a tie or a knob: no stitches of the row."""
    if SLIP not in out or _OWN not in run.into.how:
        return 0
    return sum(1 for kind, how in zip(out, run.into.how, strict=True) if kind == SLIP and how == _OWN)


def main_of(out: bytes, default: str) -> str:
    """The plain kind that most items of a row have."""
    counts = Counter(out)
    del counts[CHAIN], counts[SLIP]
    if not counts:
        return default
    kind = plain(name(counts.most_common(1)[0][0]))
    return kind if kind in HEIGHT else default


def bridged_chains(run: Run, stitches: int) -> int:
    """Chains that stand over just as many skipped places of the row below, or over an opening; `stitches`: those that the row has besides."""
    total = short = many = 0
    starts, ends, hows, made = run.into.start, run.into.end, run.into.how, len(run.out)
    for s, e in run.runs:
        if not 0 < s <= made or hows[s - 1] in _WIDE or starts[s - 1] < 0:
            continue  # at the start of the row, or taken back since
        if e >= made:
            total += e - s if run.pos - ends[s - 1] == e - s > 0 else 0
            continue
        if hows[e] in _WIDE or starts[e] < 0:
            continue
        gap = starts[e] - ends[s - 1]
        if gap == e - s or gap >= OPENING or gap > 4 and abs(gap - (e - s)) <= gap // 4:  # an opening may have a chain more or less
            total += e - s
        elif gap >= LEAST_OPENING:
            short += e - s
            many += 1
    told = 0 < many <= FEW and run.printed.ask() == stitches + total + short  # the count tells that the chains are stitches
    return total + short if told else _counted_chains(run, stitches) or total


def _counted_chains(run: Run, stitches: int) -> int:
    """Chains of a row that has many, which the printed count has among the stitches, "(sc2tog, ch 1) across": all of them, or the single ones.

    Rows without a count after it are counted so too.
    """
    single = sum(1 for s, e in run.runs if e - s == 1)
    if single < SINGLES:
        return 0
    chains = {"single": single, "all": sum(e - s for s, e in run.runs)}
    printed = run.printed.ask()
    told = next((which for which, many in chains.items() if printed == stitches + many and run.printed.of_all), "") if printed else run.conventions.get("chains-counted", "")
    if told and printed:
        run.conventions["chains-counted"] = told
    run.named["chains-counted"] = int(bool(told))
    return chains.get(told, 0)


def counted_end(run: Run, stitches: int, pending: Chain | None) -> int:
    """The long chain at a row's end, for the next row to begin on, where the printed count has it among the stitches: "hdc in 40 sts, ch 20. (60)"."""
    start, end = run.runs[-1] if run.runs else (0, 0)
    length = pending.n.at(0) or 0 if pending is not None else end - start if end >= len(run.out) else 0
    return length if length >= LONG_END and run.printed.ask() == stitches + length else 0


def kinds_made(run: Run, out: bytes) -> dict[str, int]:
    """How many of each kind, group and chain space a row made, by the names that reports use."""
    found: dict[str, int] = {}
    for number, many in Counter(out).items():
        if number not in (CHAIN, SLIP):
            found[name(number)] = many
    if out.count(SLIP):
        found["sl st"] = out.count(SLIP)
    if run.runs:
        found["ch-sp"] = len(run.runs)
    for called, many in Counter(g.name for g in run.groups if g.name).items():
        found[called] = max(found.get(called, 0), many)
    unnamed = sum(1 for g in run.groups if not g.name and g.end - g.start > 1)
    unnamed = _clumps(run) or unnamed
    if unnamed:
        found["group"] = unnamed
    if run.named.get("picot"):
        found["picot"] = run.named["picot"]
    if run.named.get("meshes"):
        found["mesh"] = run.named["meshes"]
    if run.named.get("own-blocks"):
        found["block"] = max(found.get("block", 0), sum(1 for s, e in run.runs if e - s >= 2))
    if run.repeats:
        found["repeat"] = run.repeats
    return found


def _clumps(run: Run) -> int:
    """Groups as the eye counts them: two and more stitches between chains, where the row has chains between."""
    inside = {i for g in run.groups for i in range(g.start, g.end)}
    cuts = [r for r in run.runs if r[0] not in inside]
    if len(cuts) < 2:
        return 0
    edges = [0, *(x for s, e in cuts for x in (s, e)), len(run.out)]
    return sum(1 for a, b in zip(edges[::2], edges[1::2], strict=True) if sum(1 for i in range(a, b) if run.out[i] not in (CHAIN, SLIP)) > 1)


def agrees(made: Made, printed: tuple[Count, ...]) -> bool | None:
    """Whether the printed counts fit what was made; None where nothing printed can be compared."""
    verdicts = [v for v in (_fits(made, c, printed) for c in printed) if v is not None]
    return all(verdicts) if verdicts else None


def _beside(made: Made, noun: str, printed: tuple[Count, ...]) -> int | None:
    """Stitches of a kind outside the groups that are counted by themselves: "(19 V sts and 2 htr)"; None where none are."""
    grouped = {g.name for g in made.view.groups}
    named = {c.noun for c in printed if c.noun in made.made and (plain(c.noun or "") not in HEIGHT or c.noun in grouped)}
    unnamed = [g for g in made.view.groups if not g.name and g.end - g.start > 1]
    if not named and len(unnamed) > 1 and any(c.noun in SHAPES and c.n.at(0) == len(unnamed) for c in printed):
        named = {""}  # "(63 dc, 20 shells)", where nothing said that those groups are shells
    if not named:
        return None
    within = {i for g in made.view.groups if g.name in named for i in range(g.start, g.end)}
    return sum(1 for i, kind in enumerate(made.view.items) if name(kind) == noun and i not in within)


def _in_meshes(made: Made) -> set[int]:
    """A solid row in meshes of two or of three stitches, and the stitch that closes the last."""
    return {(made.count - 1) // k for k in (2, 3) if made.count > k and (made.count - 1) % k == 0}


def _drawn_together(made: Made, noun: str) -> int:
    """How many stitches of a kind the row draws together: "(10 sc)" counts them with the others, unless they are counted by themselves."""
    return sum(many for kind, many in made.made.items() if kind.endswith("tog") and plain(kind) == noun)


def _start_chain(printed: tuple[Count, ...]) -> int:
    """The chains in "(12 tr + 3 ch)", which are those that the round began with; 0 where the counts are others."""
    if len(printed) < 2 or printed[-1].noun != "ch" or printed[-2].noun not in TALL:
        return 0
    chains = printed[-1].n.at(0) or 0
    return chains if chains == HEIGHT[printed[-2].noun or ""] else 0


def _stands(made: Made, chain: int) -> bool:
    """Whether such a chain is a stitch in this pattern."""
    held = dict(made.conventions)
    told = held.get(f"told-ch-{chain}", held.get("told-ch"))
    begun = any(isinstance(value, tuple) for name, value in held.items() if name.startswith(f"start-{chain}-"))
    return told is True or begun or any(value == "yes" for name, value in held.items() if name.startswith(f"skipped-{chain}-"))


def _fits(made: Made, count: Count, printed: tuple[Count, ...]) -> bool | None:
    number = count.n.at(0)
    if number is None or count.scope != "row":
        return None
    noun = count.noun
    if noun in ("mesh", "block") and noun not in made.made and number in _in_meshes(made):
        return True
    if noun is not None and "mesh" in noun and number == made.count - 1 and not made.in_rounds:
        return True  # a stitch closes each, and the first has one more
    totals = {made.count, made.count + made.bridged}
    if noun == "group" and count.length and number * count.length == made.count and len({k for k in made.made if plain(k) in HEIGHT}) == 1:
        return True  # "12 groups of 3 dc", two of them in each corner
    if noun in (None, "st", "sts"):
        return number in totals or (made.view.foundation and number == len(made.view.items))
    if noun == "ch":
        return number == made.made.get("ch") if made.view.foundation else None
    if noun in SPACES or noun == "ch-sp":
        if count.length and number == sum(1 for s, e in made.view.runs if e - s == count.length):
            return True  # "2 ch-5 loops" where there are others too
        number = sum(c.n.at(0) or 0 for c in printed if c.noun == noun and c.scope == "row")  # "4 2-ch sps and 8 1-ch sps"
        return number == (made.made.get("ch-sp") or made.made["group"]) if made.made.get("ch-sp") or made.made.get("group") else None
    if plain(noun) in HEIGHT and noun != "sl st" and (chain := _start_chain(printed)) and _stands(made, chain):
        return number + 1 in totals if len(printed) == 2 else number + (count is printed[-2]) == made.made.get(noun, 0)  # "(12 tr + 3 ch)": the chain is a stitch more
    if plain(noun) in HEIGHT and noun != "sl st":
        in_parts = sum(c.n.at(0) or 0 for c in printed if c.noun == noun and c.scope == "row")  # "10 hdc, 53 dc, 15 hdc", in the order they are made
        alone = made.made.get(noun, 0) if len(printed) > 1 or not _drawn_together(made, noun) else 0
        over = made.bridged if made.view.mesh & 2 else 0  # chains over an opening may be counted with the stitches, those of a mesh are none of the kind
        return number in (alone, made.count, made.count + over) or number == _beside(made, noun, printed) or in_parts == made.made.get(noun, 0) > number
    if noun in made.made:
        return number == made.made[noun] or noun in _STARS and number == made.made.get("cluster") or number == made.made[noun] + 1 == made.made.get("group")
    near = [v for k, v in made.made.items() if k not in HEIGHT and k not in ("ch", "picot")]
    return number in near if near else None


def ends_low(run: Run) -> bool:
    """Whether a row to be turned ends with one slip stitch in a stitch of its own, "sc in next 9 ch, sl st in last ch, turn": the next row may be worked into it."""
    slot, before = (run.into[-1], run.into[-2]) if len(run.out) > 1 else (None, None)
    if slot is None or before is None or run.out[-1] != SLIP or not run.turned or run.in_rounds or run.joined or run.slip_row:
        return False
    return slot.how == "top" and slot.end - slot.start == 1 and slot.start >= before.end
