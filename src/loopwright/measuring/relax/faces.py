"""Faces between neighbouring stitches and what they stand on: quadrangles, triangles, filled gaps, and holes where chains bridge.

Parents are followed along the order of the rows, not by name: a foundation that is worked along both sides is met twice.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from loopwright.measuring.relax.tops import UNDERSIDE, Flags, Floats, Ints, Tops
from loopwright.measuring.relax.wales import Wales

# A gap of so few skipped stitches under neighbouring stitches closes by itself; a wider one is a hole.
CLOSES_OVER = 3
# A gap with more nodes around it is an opening (a neck, an armhole), not a hole in the fabric.
LARGEST_HOLE = 48
# Chains around a corner span this share of their length: two legs at right angles, their tip cut (derived: 1.35 sqrt 2 of 3 widths).
CORNER_SPAN = 0.63


@dataclass(slots=True)
class Gaps:
    """Between each two neighbours a, b of a row. All (g,) but the two lists of nodes.

    `a`, `b`: nodes; `stitch`: of a; `foot_a`, `foot_b`: the nodes they stand on, at this side; `a_mm`, `b_mm`: their posts; `a_lean`,
    `b_lean`: how far they lie ahead of their feet, mm; `below`: steps along the row below between the feet (0: the same foot); `above`:
    chains between a and b; `below_at`, `above_at`: place of foot_a and of a; `step`: 1 or -1 along the row below, 0 where the feet lie in
    different rows; `reverse`: the wrong side faced the maker.
    """

    a: Ints
    b: Ints
    stitch: Ints
    foot_a: Ints
    foot_b: Ints
    a_mm: Floats
    b_mm: Floats
    a_lean: Floats
    b_lean: Floats
    below: Ints
    above: Ints
    below_at: Ints
    above_at: Ints
    step: Ints
    reverse: Flags


@dataclass(slots=True)
class Along:
    """The tops as nodes; t places along all of them.

    `node`, `row`: (t,) of each place; `start`: (r + 1,); `place`: (nodes,) place of each node, -1 for none; `length_mm`: (t,) from each
    place to the next one of its row, round to the first for the last of a ring (0 where the row ends); `closed`: (r,).
    """

    node: Ints
    row: Ints
    start: Ints
    place: Ints
    length_mm: Floats
    closed: Flags

    def size(self, place: Ints) -> Ints:
        """How many places the row of each place has."""
        row = self.row[place]
        return self.start[row + 1] - self.start[row]

    def at(self, place: Ints, steps: Ints) -> Ints:
        """The place so many steps further along the same row, round a ring."""
        row = self.row[place]
        first, size = self.start[row], self.start[row + 1] - self.start[row]
        return first + (place - first + steps) % size

# Stitches of a round that is drawn together lie so close, in widths: the end runs through their tops (a judgement).
DRAWN_WIDTHS = 0.3


def along_of(tops: Tops, wales: Wales, cluster_width: float, drawn: frozenset[int] = frozenset()) -> Along:
    """The tops as nodes with the lengths between them; chains drawn into a ring's centre are left out. `drawn`: rounds drawn together."""
    keep = (wales.node_of[tops.order] >= 0) & (wales.node_of[tops.order] < wales.nodes - len(wales.centre))
    stitches = tops.order[keep]
    begun = np.concatenate([[0], np.cumsum(keep)])
    start = begun[tops.start]
    row = np.repeat(np.arange(len(tops.closed)), np.diff(start))
    place = np.full(wales.nodes, -1, np.int64)
    place[wales.node_of[stitches]] = np.arange(len(stitches))
    nxt = np.arange(1, len(stitches) + 1)
    last = start[1:][np.diff(start) > 0] - 1
    closed = tops.closed & (np.diff(start) > 2)
    nxt[last] = np.where(closed[row[last]], start[row[last]], last)
    width = tops.width_mm[stitches]
    length = (width + width[nxt]) / 2 if len(stitches) else width
    crowd = wales.crowd[stitches]
    if len(stitches):
        length = np.where((crowd >= 0) & (crowd == crowd[nxt]), length * cluster_width, length)
        length[last] = np.where(closed[row[last]], length[last], 0.0)
        together = np.isin(row, list(drawn)) & closed[row]
        length = np.where(together, length * DRAWN_WIDTHS, length)
    return Along(wales.node_of[stitches], row, start, place, length, closed)


def gaps_of(tops: Tops, wales: Wales, along: Along, right_side: Flags) -> Gaps:
    """Every two neighbours of a row that both stand on something."""
    keep = (wales.node_of[tops.order] >= 0) & (wales.node_of[tops.order] < wales.nodes - len(wales.centre))
    stitches = tops.order[keep]
    solid = np.flatnonzero(wales.first[stitches] >= 0)
    if len(solid) < 2:
        empty = np.zeros(0, np.int64)
        return Gaps(*(empty,) * 5, *(np.zeros(0),) * 4, *(empty,) * 5, np.zeros(0, bool))
    nxt = _next_solid(along, solid)
    ok = nxt >= 0
    place_a, place_b = solid[ok], nxt[ok]
    a, b = stitches[place_a], stitches[place_b]
    row = along.row[place_a]
    size = along.start[row + 1] - along.start[row]
    above = (place_b - place_a) % size - 1
    foot_a, foot_b = wales.last[a], wales.first[b]
    below, step = _path(along, foot_a, foot_b)
    return Gaps(
        wales.node_of[a], wales.node_of[b], a, foot_a, foot_b, wales.last_mm[a], wales.first_mm[b],
        wales.last_lean_mm[a], wales.first_lean_mm[b], below, above,
        along.place[foot_a], place_a, step, ~right_side[row],
    )


def _next_solid(along: Along, solid: Ints) -> Ints:
    """Place of the next stitch of the same row that stands on something, round a ring; -1 for none."""
    row = along.row[solid]
    nxt = np.append(solid[1:], -1)
    same = np.append(row[1:] == row[:-1], False)
    begin = np.append(True, row[1:] != row[:-1])
    first = solid[begin][np.cumsum(begin) - 1]
    around = along.closed[row] & (first != solid)
    return np.where(same, nxt, np.where(around, first, -1))


def _path(along: Along, foot_a: Ints, foot_b: Ints) -> tuple[Ints, Ints]:
    """Steps between two feet along the row they share, the shorter way round a ring; 1 where they lie in different rows."""
    place_a, place_b = along.place[foot_a], along.place[foot_b]
    known = (place_a >= 0) & (place_b >= 0)
    row_a, row_b = along.row[np.maximum(place_a, 0)], along.row[np.maximum(place_b, 0)]
    same = known & (row_a == row_b)
    delta = np.where(same, place_b - place_a, 1)
    size = np.maximum(along.start[row_a + 1] - along.start[row_a], 1)
    half = (delta + size // 2) % size - size // 2
    delta = np.where(same & along.closed[row_a], half, delta)
    delta = np.where(foot_a == foot_b, 0, delta)
    return np.abs(delta), np.where(same, np.sign(delta), 0)


@dataclass(slots=True)
class Strips:
    """Polygons as pairs of paths.

    `low`, `high`: nodes of the lower and upper paths end to end; `low_xy`, `high_xy`: where they lie in a flat template, mm; `low_start`,
    `high_start`: where each polygon's path begins; `stitch`, `reverse`, `hole` per polygon.
    """

    low: Ints
    high: Ints
    low_xy: Floats
    high_xy: Floats
    low_start: Ints
    high_start: Ints
    stitch: Ints
    reverse: Flags
    hole: Flags


def strips_of(tops: Tops, wales: Wales, along: Along, gaps: Gaps) -> Strips:
    """The gaps that are neither triangle nor quadrangle: filled where they close by themselves, holes else, openings left out."""
    plain = (gaps.above == 0) & (gaps.below <= 1)
    at = np.flatnonzero(~plain & (gaps.below + gaps.above <= LARGEST_HOLE) & ((gaps.below == 0) | (gaps.step != 0) | (gaps.below == 1)))
    at = at[~_worked_into(tops, wales, along, gaps, at)]
    low_n, high_n = gaps.below[at] + 1, gaps.above[at] + 2
    low, low_start, low_len = _walk(along, gaps.below_at[at], gaps.step[at], low_n, gaps.foot_a[at], gaps.foot_b[at])
    ones = np.ones(len(at), np.int64)
    high, high_start, high_len = _walk(along, gaps.above_at[at], ones, high_n, gaps.a[at], gaps.b[at])
    leans = gaps.b_lean[at] - gaps.a_lean[at]
    low_xy, high_xy = _template((low_start, low_len), (high_start, high_len), np.stack([gaps.a_mm[at], gaps.b_mm[at]]), leans)
    hole = (gaps.above[at] > 0) | (gaps.below[at] > CLOSES_OVER)
    return Strips(low, high, low_xy, high_xy, low_start, high_start, gaps.stitch[at], gaps.reverse[at], hole)


def _worked_into(tops: Tops, wales: Wales, along: Along, gaps: Gaps, at: Ints) -> Flags:
    """Openings: something else is worked into what was skipped, or into the other side of the chains."""
    taken = np.zeros(len(along.node) + 1, np.int64)
    places = along.place[wales.parent]
    taken[1:] = np.cumsum(np.bincount(places[places >= 0], minlength=len(along.node)) > 0)
    inner = np.maximum(gaps.below[at] - 1, 0)
    begin = np.where(gaps.step[at] >= 0, gaps.below_at[at] + 1, gaps.below_at[at] - inner)
    end = np.minimum(begin + inner, len(along.node))  # a path round the end of a ring is taken as it lies: openings seldom do
    begin = np.clip(begin, 0, end)
    skipped = (inner > 0) & (gaps.step[at] != 0) & (taken[end] - taken[begin] > 0)
    under = np.zeros(len(along.node) + 1, np.int64)
    from_below = wales.first[(tops.place == UNDERSIDE) & (wales.first >= 0)]
    places = along.place[from_below]
    under[1:] = np.cumsum(np.bincount(places[places >= 0], minlength=len(along.node)) > 0)
    top_end = np.minimum(gaps.above_at[at] + 1 + gaps.above[at], len(along.node))
    top_begin = np.minimum(gaps.above_at[at] + 1, top_end)
    flags: Flags = skipped | (under[top_end] - under[top_begin] > 0)
    return flags


def _walk(along: Along, begin: Ints, step: Ints, count: Ints, first: Ints, last: Ints) -> tuple[Ints, Ints, Floats]:
    """Nodes of paths end to end, where each path begins, and the length from each node to the next (0 at a path's end)."""
    start = np.cumsum(count) - count
    inside = np.arange(int(count.sum())) - np.repeat(start, count)
    begin_r, step_r = np.repeat(np.maximum(begin, 0), count), np.repeat(step, count)
    place = along.at(begin_r, inside * step_r)
    nodes = along.node[place]
    nodes[start] = first
    nodes[start + count - 1] = last
    forward = np.where(step_r >= 0, place, along.at(begin_r, (inside + 1) * step_r))
    length = along.length_mm[forward]
    length[start + count - 1] = 0.0
    apart = np.repeat((step == 0) & (count > 1), count)
    if apart.any():
        length[apart & (inside == 0)] = along.length_mm.mean()  # feet in different rows: about a stitch apart
    return nodes, start, length


def _template(low: tuple[Ints, Floats], high: tuple[Ints, Floats], posts: Floats, leans: Floats) -> tuple[Floats, Floats]:
    """How a gap lies when flat: the lower path straight, the upper one over it as wide as its posts lean, on an arc where it is longer.

    `low`, `high`: where each path begins, and lengths along it. `leans`: what the second post leans ahead of the first, mm.
    """
    if not len(low[0]):
        return np.zeros((0, 2)), np.zeros((0, 2))
    low_x, low_total, low_id = _mileage(*low)
    high_x, high_total, high_id = _mileage(*high)
    post = posts.mean(axis=0)
    span = np.clip(low_total + leans, CORNER_SPAN * high_total, high_total)
    up = np.sqrt(np.maximum(post**2 - ((span - low_total) / 2) ** 2, (0.3 * post) ** 2))
    rise = np.sqrt(np.maximum(3 / 8 * span * (high_total - span), 0.0))  # height of a flat parabola of that length
    share = high_x / np.maximum(high_total[high_id], 1e-9)
    low_xy = np.stack([low_x - low_total[low_id] / 2, np.zeros(len(low_x))], axis=1)
    high_xy = np.stack([(share - 0.5) * span[high_id], up[high_id] + 4 * rise[high_id] * share * (1 - share)], axis=1)
    return low_xy, high_xy


def _mileage(start: Ints, length: Floats) -> tuple[Floats, Floats, Ints]:
    """Way along its own path to each node, length of each path, and the path of each node."""
    number = np.zeros(len(length), np.int64)
    number[start[1:]] = 1
    path = np.cumsum(number)
    run = np.cumsum(length) - length
    total = np.add.reduceat(length, start)
    return run - run[start][path], total, path


def zipped(strips: Strips, *, low_first: bool) -> tuple[Ints, Ints, Floats]:
    """Triangles that close the strips: (f, 3) nodes, (f,) polygon, (f, 3, 2) template. Ties go to the lower path first, or last."""
    low_n = np.diff(np.append(strips.low_start, len(strips.low)))
    high_n = np.diff(np.append(strips.high_start, len(strips.high)))
    pol_l = np.repeat(np.arange(len(low_n)), low_n - 1)
    pol_h = np.repeat(np.arange(len(high_n)), high_n - 1)
    in_l = np.arange(len(pol_l)) - np.repeat(np.cumsum(low_n - 1) - (low_n - 1), low_n - 1)
    in_h = np.arange(len(pol_h)) - np.repeat(np.cumsum(high_n - 1) - (high_n - 1), high_n - 1)
    share_l = (in_l + 0.5) / np.maximum(low_n[pol_l] - 1, 1)
    share_h = (in_h + 0.5) / np.maximum(high_n[pol_h] - 1, 1)
    is_low = np.append(np.ones(len(pol_l), bool), np.zeros(len(pol_h), bool))
    pol, share = np.append(pol_l, pol_h), np.append(share_l, share_h)
    inside = np.append(in_l, in_h)
    by = np.lexsort((~is_low if low_first else is_low, share, pol))
    pol, is_low, inside = pol[by], is_low[by], inside[by]
    begin = np.searchsorted(pol, np.arange(len(low_n)))
    lows = np.cumsum(is_low) - is_low
    lows -= lows[begin][pol] if len(pol) else 0
    highs = np.arange(len(pol)) - begin[pol] - lows if len(pol) else lows
    low_at, high_at = strips.low_start[pol] + lows, strips.high_start[pol] + highs
    third_low = np.minimum(low_at + 1, len(strips.low) - 1)
    third_high = np.minimum(high_at + 1, len(strips.high) - 1)
    nodes = np.stack([strips.low[low_at], np.where(is_low, strips.low[third_low], strips.high[third_high]), strips.high[high_at]], axis=1)
    third = np.where(is_low[:, None], strips.low_xy[third_low], strips.high_xy[third_high])
    template = np.stack([strips.low_xy[low_at], third, strips.high_xy[high_at]], axis=1)
    return nodes, pol, template
