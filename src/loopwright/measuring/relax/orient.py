"""Faces turned so that neighbours agree and the right side lies outward."""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

from loopwright.measuring.relax.tops import Flags, Ints


def oriented(faces: Ints, flip: Flags) -> Ints:
    """Faces (f, 4) with those of `flip` turned over, then mended so that neighbours across an edge agree.

    Agreement is a two-colouring: each face and its reverse are two nodes of a graph, joined over shared edges; the half that holds more
    faces as they were given is kept. A band with a twist has no such colouring and stays as given. Edges of three faces say nothing.
    """
    if not len(faces):
        return faces
    faces = np.where(flip[:, None], _reversed(faces), faces)
    one, two, against = _neighbours(faces)
    f = len(faces)
    rows = np.concatenate([one, one + f])
    cols = np.concatenate([np.where(against, two + f, two), np.where(against, two, two + f)])
    _, part = connected_components(coo_matrix((np.ones(len(rows)), (rows, cols)), shape=(2 * f, 2 * f)), directed=False)
    own, other = part[:f], part[f:]
    kept = np.bincount(own, minlength=int(part.max()) + 1)
    turn = kept[own] < kept[other]
    turn |= (kept[own] == kept[other]) & (own > other)
    turn &= own != other
    return np.where(turn[:, None], _reversed(faces), faces)


def _reversed(faces: Ints) -> Ints:
    """The same faces the other way round; the -1 of a triangle stays last."""
    turned = faces[:, ::-1].copy()
    tri = faces[:, 3] < 0
    turned[tri, :3] = faces[tri, 2::-1]
    turned[tri, 3] = -1
    return turned


def _neighbours(faces: Ints) -> tuple[Ints, Ints, Flags]:
    """Faces that share an edge, and whether both run along it the same way (then one is turned over)."""
    tri = faces[:, 3] < 0
    nxt = faces[:, [1, 2, 3, 0]].copy()
    nxt[tri, 2] = faces[tri, 0]
    valid = np.ones(faces.shape, bool)
    valid[tri, 3] = False
    begin, end = faces[valid], nxt[valid]
    owner = np.repeat(np.arange(len(faces)), valid.sum(axis=1))
    low, high = np.minimum(begin, end), np.maximum(begin, end)
    key = low * (int(faces.max()) + 1) + high
    by = np.argsort(key, kind="stable")
    key, owner, forward = key[by], owner[by], (begin < end)[by]
    _, first, count = np.unique(key, return_index=True, return_counts=True)
    pair = first[count == 2]
    return owner[pair], owner[pair + 1], forward[pair] == forward[pair + 1]
