"""Motifs that are joined are pictured side by side, as they are laid out."""

from __future__ import annotations

import numpy as np
import pytest

from loopwright.drawing.rounds import fabric_picture
from loopwright.drawing.rounds.motifs import first_motif, tiled
from loopwright.drawing.scene.buffers import buffers
from loopwright.measuring.relax import RelaxOptions, relax


def test_the_first_motif_is_a_fabric_of_its_own(worked):
    fabric = worked("sea-lavender-blanket").fabrics[0]
    motif = first_motif(fabric)
    assert {r.section for r in motif.rows} == {"First square"}
    assert len(motif) == motif.rows[-1].end < len(fabric)
    assert all(p < len(motif) for s in range(len(motif)) for p in motif.parents(s))


def test_motifs_are_laid_out_as_the_pattern_says(worked):
    """Two across and three down: six times as many triangles, sides level, as wide as two and as high as three (they meet)."""
    made = worked("sea-lavender-blanket")
    motif = first_motif(made.fabrics[0])
    one = buffers(motif, relax(motif, made.sizes, RelaxOptions(flat=True)), budget=4_000)
    six = tiled(one, 2, 3)
    assert len(six.indices) == 6 * len(one.indices)
    assert six.indices.max() == len(six.positions) - 1
    single = tiled(one, 1, 1)
    (w1, h1), (w6, h6) = (np.ptp(b.positions[:, :2], axis=0) for b in (single, six))
    assert w6 == pytest.approx(2 * w1, rel=0.02)
    assert h6 == pytest.approx(3 * h1, rel=0.02)
    assert w1 == pytest.approx(h1, rel=0.1)  # a square, standing on its side


def test_the_picture_of_a_blanket_of_motifs_shows_them_all(worked):
    made = worked("sea-lavender-blanket")
    found = fabric_picture(made.fabrics[0], made.sizes, width_px=200, title=made.title)
    assert "Drawn 7 times across and 9 down" in found.description
    assert found.height_px > found.width_px
    assert found.png.startswith(b"\x89PNG")
