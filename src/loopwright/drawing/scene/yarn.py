"""How a stitch is drawn as yarn: its post from the stitch below to its own top, and the two loops along the top.

The shares of the stitch's width used here are drawing, not measurement: chosen by eye so that the fabric reads as fabric.
"""

from __future__ import annotations

import numpy as np

from loopwright.drawing.scene.body import Body, Bools, Floats, Ints
from loopwright.model.fabric import PLACES, Fabric
from loopwright.record import record

POST_SHARE, LOOP_SHARE = 0.47, 0.13
"""Half the breadth of a post, and the radius of a loop of the top, as shares of the stitch's width."""
RAISED_SHARE = 0.3
"""How far a post stitch stands out of the fabric, as a share of the stitch's width."""
PUFFED = ("popcorn", "bobble", "puff", "cluster")


@record
class Links:
    """Pairs told apart. `posts` (p, 2): lower and upper node; `tops` (q, 2): neighbours along a row, in the order of making.

    `post_stitch` (p,), `top_stitch` (q,): the stitch that owns each.
    """

    posts: Ints
    post_stitch: Ints
    tops: Ints
    top_stitch: Ints


@record
class Paths:
    """Middle lines of strands (m, s, 3) mm with their radius (m, s) mm, the surface normal (m, 3) and the owning stitch (m,)."""

    lines: Floats
    thick: Floats
    surface: Floats
    stitch: Ints


def stitch_of_node(body: Body) -> Ints:
    """The first stitch whose top each node is (n,), -1 for a node that is no stitch's top (the middle of a ring)."""
    owner = np.full(len(body.points), len(body.node_of), dtype=np.int64)
    made = np.flatnonzero(body.node_of >= 0)
    np.minimum.at(owner, body.node_of[made], made)
    return np.where(owner < len(body.node_of), owner, -1)


def links(fabric: Fabric, body: Body) -> Links:
    """Which pairs are posts and which run along a row."""
    owner = stitch_of_node(body)
    ends = owner[body.pairs]
    order = np.argsort(ends, axis=1, kind="stable")
    pairs = np.take_along_axis(body.pairs, order, axis=1)
    low, high = np.take_along_axis(ends, order, axis=1).T
    real = high >= 0
    pairs, low, high = pairs[real], low[real], high[real]
    row = np.asarray(fabric.row, dtype=np.int64)
    upright = (low < 0) | (row[low] != row[high]) | _worked_into(fabric, high, low)
    return Links(pairs[upright], high[upright], pairs[~upright], high[~upright])


def _worked_into(fabric: Fabric, stitch: Ints, parent: Ints) -> Bools:
    into = np.asarray(fabric.into, dtype=np.int64)[stitch]
    many = np.asarray(fabric.many, dtype=np.int64)[stitch]
    near, far = np.minimum(into, into + many), np.maximum(into, into + many)
    found: Bools = (into >= 0) & (near <= parent) & (parent <= far)
    for place in np.flatnonzero(np.isin(stitch, np.fromiter(fabric.extra, dtype=np.int64, count=len(fabric.extra)))):
        found[place] = int(parent[place]) in fabric.parents(int(stitch[place]))
    return found


def widths(body: Body, tied: Links) -> Floats:
    """Width of the stitch at each node (n,) mm: the mean length of its links along the row, else that of the whole fabric."""
    count = len(body.points)
    length = np.linalg.norm(body.points[tied.tops[:, 0]] - body.points[tied.tops[:, 1]], axis=1)
    nodes = tied.tops.T.reshape(-1)
    times = np.bincount(nodes, minlength=count)
    total = np.bincount(nodes, np.concatenate((length, length)), count)
    every = float(np.median(length)) if len(length) else _usual(body)
    own = np.divide(total, times, out=np.full(count, every), where=times > 0)
    return np.asarray(np.clip(own, 0.4 * every, 1.6 * every))


def _usual(body: Body) -> float:
    return float(np.median(body.rest_mm)) if len(body.rest_mm) else 1.0


def posts(fabric: Fabric, body: Body, tied: Links, up: Floats, width: Floats, *, steps: int, strands: int) -> Paths:
    """The posts as one strand each, or as two: a V where the stitch is short, twisted round each other where it is tall.

    `up` (n, 3): the surface normal at each node; `width` (n,) mm of the stitch there.
    """
    foot, head = body.points[tied.posts[:, 0]], body.points[tied.posts[:, 1]]
    surface = up[tied.posts].mean(axis=1)
    surface /= np.maximum(np.linalg.norm(surface, axis=1, keepdims=True), 1e-9)
    wide = width[tied.posts[:, 1]]
    along = head - foot
    tall = np.linalg.norm(along, axis=1)
    across = np.cross(along, surface)
    across /= np.maximum(np.linalg.norm(across, axis=1, keepdims=True), 1e-9)
    turns = np.maximum(np.round(tall / np.maximum(wide, 1e-9)) - 1, 0)
    time = np.linspace(-0.08, 1.02, steps)
    middle = foot[:, None] + time[None, :, None] * along[:, None]
    arch = np.sin(np.pi * np.clip(time, 0, 1))
    middle += (_standing_out(fabric, tied) * wide)[:, None, None] * arch[None, :, None] ** 0.7 * surface[:, None]
    swell = 0.66 + 0.34 * arch
    if strands == 1:
        return Paths(middle, POST_SHARE * wide[:, None] * swell, surface, tied.post_stitch)
    spread = np.where(turns == 0, 1.0, 0.0)[:, None]
    reach = wide[:, None] * (spread * (0.15 + 0.13 * time) + (1 - spread) * 0.22)
    phase = np.pi * turns[:, None] * time
    lines = []
    for sign in (1.0, -1.0):
        aside = (sign * reach * np.cos(phase))[:, :, None] * across[:, None]
        lines.append(middle + aside + (sign * 0.7 * reach * np.sin(phase))[:, :, None] * surface[:, None])
    thick = 0.56 * POST_SHARE * wide[:, None] * swell
    return Paths(np.concatenate(lines), np.tile(thick, (2, 1)), np.tile(surface, (2, 1)), np.tile(tied.post_stitch, 2))


def _standing_out(fabric: Fabric, tied: Links) -> Floats:
    """How far each post stands out of the right side, as a share of the stitch's width (p,)."""
    stitch = tied.post_stitch
    if not len(stitch):
        return np.zeros(0)
    place = np.frombuffer(bytes(fabric.place), dtype=np.uint8)[stitch]
    right = np.asarray([row.right_side for row in fabric.rows])[np.asarray(fabric.row, dtype=np.int64)[stitch]]
    way = np.where(right, 1.0, -1.0)
    out = np.where(place == PLACES.index("front-post"), way, 0.0) - np.where(place == PLACES.index("back-post"), way, 0.0)
    puffed = np.asarray([any(word in kind for word in PUFFED) for kind in fabric.kinds])
    kind = np.frombuffer(bytes(fabric.kind), dtype=np.uint8)[stitch]
    return RAISED_SHARE * np.where(puffed[kind], way * 1.2, out)


def sinking(fabric: Fabric, body: Body, tied: Links, width: Floats) -> Floats:
    """How far the surface behind the yarn follows its post stitches out or in, at each node (n,) mm, so that it does not hide them."""
    heads = tied.posts[:, 1]
    times = np.bincount(heads, minlength=len(body.points))
    total = np.bincount(heads, _standing_out(fabric, tied), len(body.points))
    return np.asarray(0.7 * width * total / np.maximum(times, 1))


def tops(body: Body, tied: Links, up: Floats, width: Floats, *, steps: int, strands: int) -> Paths:
    """The loops along the top of a row (and chains): one strand between neighbours, or two side by side that pinch at each stitch."""
    first, second = body.points[tied.tops[:, 0]], body.points[tied.tops[:, 1]]
    surface = up[tied.tops].mean(axis=1)
    surface /= np.maximum(np.linalg.norm(surface, axis=1, keepdims=True), 1e-9)
    wide = width[tied.tops].mean(axis=1)
    time = np.linspace(-0.12, 1.12, steps)
    middle = first[:, None] + time[None, :, None] * (second - first)[:, None]
    arch = np.sin(np.pi * np.clip(time, 0, 1))
    thick = LOOP_SHARE * wide[:, None] * (0.75 + 0.35 * arch)
    if strands == 1:
        return Paths(middle, 1.35 * thick, surface, tied.top_stitch)
    lines = [middle + (sign * wide)[:, None, None] * ((0.02 + 0.07 * arch)[None, :, None] * surface[:, None]) for sign in (1.0, -1.0)]
    return Paths(np.concatenate(lines), np.tile(thick, (2, 1)), np.tile(surface, (2, 1)), np.tile(tied.top_stitch, 2))
