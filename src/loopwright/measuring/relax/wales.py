"""What each stitch stands on: its wale edges, how far it leans, the centre of a ring.

Row height is the gauge's row height, not the length of a post. Stitches that share a parent lean, so that their posts are longer by
Pythagoras; a fan of many stitches bends instead of stretching, so that the lean ends at one stitch width (our own reading; no source).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from loopwright.measuring.relax.tops import JOIN, PICOT, RING, ROW_END, SPACE, Flags, Floats, Ints, Tops

LEAN_WIDTHS = 1.0
# A lean is told against so many neighbours on both sides; a gain of so many at once is a corner, where a new side begins.
AROUND = 3
CORNER = 3
# Between neighbours tops widen against feet, or narrow, by no more than this.
WIDENING = (0.5, 2.5)
DECREASE_WIDTHS = 1.5
# A ring of so few chains is drawn to a point and covered; a longer one stays a ring.
SMALL_RING = 8
# Half the chains' own radius stays open under the stitches that cover a small ring (our own reading; no source).
RING_OPEN = 0.5
# Three and more stitches in one space crowd: 2 * (0.88 + 1) widths are two row heights of double crochet, so that the square made of such
# groups lies flat, as it is known to (derived from the usual shape of double crochet, height 1.88 widths).
CLUSTER_WIDTH = 0.88
LARGEST_CROWD = 5
# More parents than this are no decrease.
MOST_PARENTS = 64


@dataclass(slots=True)
class Wales:
    """What stands on what; n stitches, p pairs.

    `node_of`: (n,) node of each stitch, -1 for none; `nodes`: how many, centres of rings among them; `centre`: which these are, the last
    ones. `child`, `parent`: (p,) nodes; `rest_mm`: (p,). `first`, `last`: (n,) the first and last node a stitch stands on in the order it
    took them, -1 for none; `first_mm`, `last_mm`: lengths of these posts; `first_lean_mm`, `last_lean_mm`: how far the top lies ahead of
    them, in the direction of making. `crowd`: (n,) number of the group that crowds in one space, -1.
    """

    node_of: Ints
    nodes: int
    centre: Ints
    child: Ints
    parent: Ints
    rest_mm: Floats
    first: Ints
    last: Ints
    first_mm: Floats
    last_mm: Floats
    first_lean_mm: Floats
    last_lean_mm: Floats
    crowd: Ints


def wales_of(tops: Tops) -> Wales:
    """The wale edges of a fabric."""
    n = len(tops.row)
    node_of = np.full(n, -1, np.int64)
    has_node = tops.live | tops.base
    ring_chain, ring_row = _small_rings(tops)
    has_node &= ~ring_chain
    node_of[has_node] = np.arange(int(has_node.sum()))
    nodes = int(has_node.sum())
    centres = np.unique(ring_row[ring_row >= 0])
    node_of_ring = {int(c): nodes + i for i, c in enumerate(centres)}
    centre_of = np.full(len(tops.closed) + n + 1, -1, np.int64)
    for key, node in node_of_ring.items():
        centre_of[key] = node
    node_of[ring_chain] = _centre_of_chains(tops, ring_chain, ring_row, centre_of)
    found = Wales(
        node_of, nodes + len(centres), np.arange(nodes, nodes + len(centres)), np.zeros(0, np.int64), np.zeros(0, np.int64),
        np.zeros(0), _none(n), _none(n), np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n), _none(n),
    )
    _fill(found, tops, ring_row, centre_of)
    return found


def _none(n: int) -> Ints:
    return np.full(n, -1, np.int64)


def _small_rings(tops: Tops) -> tuple[Flags, Ints]:
    """Chains of small rings, and per stitch worked into one the key of its centre: the row for a magic ring, rows + first chain else."""
    n, rows = len(tops.row), len(tops.closed)
    chains = np.zeros(n, bool)
    key = np.full(n, -1, np.int64)
    ring = (tops.place == RING) & tops.live
    magic = ring & (tops.into < 0)
    key[magic] = tops.row[magic]
    many = np.abs(tops.many) + 1
    small = ring & (tops.into >= 0) & (many <= SMALL_RING)
    first = np.minimum(tops.into, tops.into + tops.many)
    key[small] = rows + first[small]
    for at in np.unique(first[small]):
        stitch = np.flatnonzero(small & (first == at))[0]
        chains[at : at + many[stitch]] = True
    return chains & tops.live, key


def _centre_of_chains(tops: Tops, chains: Flags, key: Ints, centre_of: Ints) -> Ints:
    rows = len(tops.closed)
    keys = np.unique(key[key >= rows]) - rows
    at = np.flatnonzero(chains)
    return centre_of[rows + keys[np.searchsorted(keys, at, side="right") - 1]] if len(keys) else at


def _fill(found: Wales, tops: Tops, ring_row: Ints, centre_of: Ints) -> None:
    """Parents of all stitches of the tops: in the order of the tops."""
    stand = _stand_ins(tops, found.node_of)
    order = tops.order[found.node_of[tops.order] >= 0]
    in_ring = ring_row[order] >= 0
    around = order[in_ring]
    height = _heights(tops)
    centre = centre_of[ring_row[around]]
    rest = height[around] + _ring_radius_mm(tops, around)
    found.first[around] = found.last[around] = centre
    found.first_mm[around] = found.last_mm[around] = rest
    solid = order[~in_ring & (tops.into[order] >= 0)]
    child, parent, taken = _expand(tops, solid, stand)
    for top, foot in tops.stands_on.items():
        child, parent, taken = np.append(child, top), np.append(parent, stand[foot]), np.append(taken, 0)
    keep = (parent >= 0) & (parent != found.node_of[child])
    child, parent = child[keep], parent[keep]
    by = np.argsort(_places(tops)[child], kind="stable")
    child, parent = child[by], parent[by]
    count = np.bincount(child, minlength=len(tops.row))
    lengths, lean = _lengths(found, tops, child, parent, count, height)
    found.child = np.concatenate([found.node_of[around], found.node_of[child]])
    found.parent = np.concatenate([centre, parent])
    found.rest_mm = np.concatenate([rest, lengths])
    _ends(found, child, parent, lengths, lean)
    _crowds(found, tops)


def _places(tops: Tops) -> Ints:
    """Place of each stitch along all tops, -1 for none."""
    at = np.full(len(tops.row), -1, np.int64)
    at[tops.order] = np.arange(len(tops.order))
    return at


def _ends(found: Wales, child: Ints, parent: Ints, lengths: Floats, lean: Floats) -> None:
    found.last[child], found.last_mm[child], found.last_lean_mm[child] = parent, lengths, lean
    back = child[::-1]  # the first of several is written last
    found.first[back], found.first_mm[back], found.first_lean_mm[back] = parent[::-1], lengths[::-1], lean[::-1]


def _heights(tops: Tops) -> Floats:
    """Height of each stitch; one that should have a height but has none gets the tallest of its row."""
    height = tops.height_mm.copy()
    tallest = np.zeros(len(tops.closed))
    np.maximum.at(tallest, tops.row, height)
    lacking = (height <= 0) & ((tops.into >= 0) | (tops.place == RING)) & tops.live
    spare = height[height > 0].min() if (height > 0).any() else (tops.width_mm.mean() if len(height) else 1.0)
    height[lacking] = np.where(tallest[tops.row[lacking]] > 0, tallest[tops.row[lacking]], spare)
    return height


def _ring_radius_mm(tops: Tops, around: Ints) -> Floats:
    chains = np.where(tops.into[around] >= 0, np.abs(tops.many[around]) + 1, 0)
    return RING_OPEN * chains * tops.width_mm[around] / (2 * np.pi)


def _stand_ins(tops: Tops, node_of: Ints) -> Ints:
    """Node of each stitch, or of its neighbour in the row where it has none: the next one for what begins a row, else the one before."""
    n = len(node_of)
    at = np.arange(n)
    has = node_of >= 0
    after = np.minimum.accumulate(np.where(has, at, n)[::-1])[::-1]
    before = np.maximum.accumulate(np.where(has, at, -1))
    after_ok = (after < n) & (tops.row[np.minimum(after, n - 1)] == tops.row)
    before_ok = (before >= 0) & (tops.row[np.maximum(before, 0)] == tops.row)
    ends = np.isin(tops.role, (JOIN, PICOT)) | tops.live  # a join or a picot stands by what was made before it
    best = np.where(ends & before_ok, before, np.where(after_ok, after, np.where(before_ok, before, -1)))
    return np.where(has, node_of, np.where(best >= 0, node_of[np.maximum(best, 0)], -1))


def _expand(tops: Tops, solid: Ints, stand: Ints) -> tuple[Ints, Ints, Ints]:
    """Child and parent of every pair; a stitch in a space or a long ring takes one chain of it, its share of the way along."""
    in_space = np.isin(tops.place[solid], (SPACE, RING))
    spaced = solid[in_space]
    plain = solid[~in_space]
    count = np.minimum(np.abs(tops.many[plain]) + 1, MOST_PARENTS)
    beyond = np.array([s in tops.extra for s in plain.tolist()], bool) if tops.extra else np.zeros(len(plain), bool)
    child = np.repeat(plain[~beyond], count[~beyond])
    taken = np.arange(len(child)) - np.repeat(np.cumsum(count[~beyond]) - count[~beyond], count[~beyond])
    parent = tops.into[child] + np.sign(tops.many[child]) * taken
    for s in plain[beyond].tolist():
        more = (int(tops.into[s]), *tops.extra[s])[:MOST_PARENTS]
        child, parent = np.append(child, [s] * len(more)), np.append(parent, more)
        taken = np.append(taken, np.arange(len(more)))
    child, parent = np.append(child, spaced), np.append(parent, _share_of_space(tops, spaced))
    taken = np.append(taken, np.zeros(len(spaced), np.int64))
    inside = (parent >= 0) & (parent < len(stand))
    return child[inside], stand[parent[inside]], taken[inside]


def _share_of_space(tops: Tops, spaced: Ints) -> Ints:
    if not len(spaced):
        return spaced
    key = np.stack([tops.row[spaced], tops.into[spaced], tops.many[spaced]])
    new = np.append(True, (key[:, 1:] != key[:, :-1]).any(axis=0))
    group = np.cumsum(new) - 1
    size = np.bincount(group)
    place = np.arange(len(spaced)) - np.flatnonzero(new)[group]
    chains = np.abs(tops.many[spaced]) + 1
    step = np.minimum(((place + 0.5) / size[group] * chains).astype(np.int64), chains - 1)
    chosen: Ints = tops.into[spaced] + np.sign(tops.many[spaced]) * step
    for i in np.flatnonzero([int(s) in tops.extra for s in spaced]) if tops.extra else ():
        parents = (int(tops.into[spaced[i]]), *tops.extra[int(spaced[i])])
        chosen[i] = parents[min(len(parents) - 1, int((place[i] + 0.5) / size[group[i]] * len(parents)))]
    return chosen


def _lengths(found: Wales, tops: Tops, child: Ints, parent: Ints, count: Ints, height: Floats) -> tuple[Floats, Floats]:
    """Rest length of each pair, mm: the row's height, and sideways what the top lies off its parent; and that, ahead or behind."""
    width = tops.width_mm[child]
    most = np.where(count[child] > 1, DECREASE_WIDTHS, LEAN_WIDTHS)
    lean = np.clip(_lean(found, tops, child, parent), -most, most) * width
    beside = np.where(tops.place[child] == ROW_END, width / 2, 0.0)  # a row's end lies half a stitch beyond its last top
    return np.sqrt((height[child] + beside) ** 2 + lean**2), lean


def _lean(found: Wales, tops: Tops, child: Ints, parent: Ints) -> Floats:
    """How many widths each top lies off what it stands on, against the stitches around it.

    Along the row, tops gain on their parents where there are increases; what a stitch is ahead of the mean of its neighbours is its lean.
    So rounds that gain evenly lie in the plane, one row height apart, without any strain.
    """
    if not len(child):
        return np.zeros(0)
    where = _places(tops)
    of_node = np.full(found.nodes, -1, np.int64)
    has = found.node_of[tops.order] >= 0
    of_node[found.node_of[tops.order[has]]] = np.flatnonzero(has)
    place, foot, row = where[child], of_node[parent], tops.row[child]
    foot_row = np.where(foot >= 0, tops.row[tops.order[np.maximum(foot, 0)]], -1)
    step = np.append(0, np.diff(foot))
    size = np.diff(tops.start)
    under = np.maximum(foot_row, 0)
    ring = np.maximum(size[under], 1)
    step = np.where(tops.closed[under] & (foot_row >= 0), (step + ring // 2) % ring - ring // 2, step)
    same = np.append(False, (row[1:] == row[:-1]) & (foot_row[1:] == foot_row[:-1]) & (foot[1:] >= 0))
    step = np.abs(step)  # a foundation worked along both sides is walked back on the second
    onward = np.append(0, np.diff(place))
    bridged = (onward > 1) & (step != 0)  # by chains, to another foot
    turn = _turns(tops, foot, row, foot_row)
    new = ~same | (np.abs(onward - step) >= CORNER) | (bridged & (onward - step >= CORNER - 1)) | turn | np.append(False, turn[:-1])
    walked = np.cumsum(np.where(new, 0, np.stack([onward, step])), axis=1).astype(float)
    begin = np.flatnonzero(new)
    runs = np.bincount(row[begin], minlength=len(size))
    whole = (runs[row[begin]] == 1) & tops.closed[row[begin]] & (foot_row[begin] >= 0) & tops.closed[under[begin]]
    laps = np.where(whole, np.stack([size[row[begin]], size[under[begin]]]), 0)
    return _ahead_of_mean(begin, walked, laps)


def _turns(tops: Tops, foot: Ints, row: Ints, foot_row: Ints) -> Flags:
    """Stitches at the end of a chain that a round goes around: they fan about it and lean nowhere."""
    under = np.maximum(foot_row, 0)
    ends = (foot == tops.start[under]) | (foot == tops.start[under + 1] - 1)
    return np.asarray(ends & (foot_row >= 0) & tops.closed[row] & ~tops.closed[under], dtype=bool)


def _ahead_of_mean(begin: Ints, walked: Floats, laps: Ints) -> Floats:
    """How far each stitch is ahead of the mean of its neighbours, in widths at the top.

    `begin`: where each run of stitches begins; `walked`: (2, p) the way along the tops and along their feet; `laps`: (2, runs) the same
    once around, for a run that is a whole ring upon a ring; 0 for one that ends at its ends.
    """
    end = np.append(begin[1:], walked.shape[1])
    wrapped = np.where(laps[0] > 0, np.minimum(AROUND, end - begin), 0)
    size = end - begin + 2 * wrapped
    start = np.cumsum(size) - size
    run = np.repeat(np.arange(len(begin)), size)
    count = (end - begin)[run]
    inside = np.arange(int(size.sum())) - start[run] - wrapped[run]
    top, low = walked[:, begin[run] + inside % count] + (inside // count) * laps[:, run]
    reach = np.minimum(np.minimum(inside + wrapped[run], count + wrapped[run] - 1 - inside), AROUND)
    here = np.arange(len(run))
    level = top - low
    total = np.append(0.0, np.cumsum(level))
    ends = (level[here + reach] + level[here - reach]) / 2  # count half, so that even groups leave no bias
    mean = np.where(reach > 0, (total[here + reach + 1] - total[here - reach] - ends) / np.maximum(2 * reach, 1), level)
    widening = (top[here + reach] - top[here - reach]) / np.maximum(np.abs(low[here + reach] - low[here - reach]), 1)
    ahead = (level - mean) * np.where(reach > 0, np.clip(widening, *WIDENING), 1.0)
    own: Floats = ahead[(inside >= 0) & (inside < count)]
    return own


def _crowds(found: Wales, tops: Tops) -> None:
    """Groups of three and more that share a space, and such groups with chains between them in a ring."""
    order = tops.order
    crowd = np.isin(tops.place[order], (SPACE, RING)) & (found.first[order] >= 0)
    at = np.flatnonzero(crowd)
    if not len(at):
        return
    stitch = order[at]
    row, foot = tops.row[stitch], found.first[stitch]
    same = (foot[1:] == foot[:-1]) & (row[1:] == row[:-1]) & (np.diff(at) == 1)
    low, high = _spans(at, same)
    group = (high - low >= 2) & (high - low < LARGEST_CROWD)
    found.crowd[stitch[group]] = low[group]


def _spans(place: Ints, same: Flags) -> tuple[Ints, Ints]:
    """First and last place of the group that each belongs to."""
    new = np.append(True, ~same)
    group = np.cumsum(new) - 1
    begin = np.flatnonzero(new)
    end = np.append(begin[1:], len(place)) - 1
    return place[begin][group], place[end][group]
