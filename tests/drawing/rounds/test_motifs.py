"""Motifs that are joined are pictured side by side, as they are laid out."""

from __future__ import annotations

import numpy as np
import pytest

from loopwright.drawing.rounds import fabric_picture, round_drawings
from loopwright.drawing.rounds.joined import joined_flat
from loopwright.drawing.rounds.laid import laid_out
from loopwright.drawing.rounds.motifs import MEETING, first_motif, tiled
from loopwright.drawing.scene.buffers import buffers
from loopwright.measuring.courses import courses
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


@pytest.fixture(scope="module", name="blanket")
def _blanket(worked):
    made = worked("sea-lavender-blanket")
    rows = courses(made.fabrics[0], made.sizes)
    return laid_out(made.fabrics[0], made.sizes), made.sizes, rows


def test_motifs_that_are_joined_lie_in_the_plane_side_by_side(blanket):
    """Each as large as the other, neither on the other; what the second is worked into lies between their middles."""
    laid, sizes, _ = blanket
    found = joined_flat(laid, sizes, 20.0)
    assert np.isfinite(found.points).all()
    first, second = (found.points[laid.body.piece == piece] for piece in (0, 1))
    (x0, x1), (low, high) = ((float(p[:, 0].min()), float(p[:, 0].max())) for p in (first, second))
    assert np.ptp(second[:, 0]) == pytest.approx(np.ptp(first[:, 0]), rel=0.1)
    assert abs(low - x1) < 0.05 * (high - low)
    piece = [laid.fabric.rows[row].piece for row in laid.fabric.row]
    tied = [p for s in range(len(piece)) if piece[s] == 1 for p in laid.fabric.parents(s) if piece[p] == 0]
    assert tied
    assert all(found.points[laid.body.node_of[p], 0] > (x0 + x1) / 2 for p in tied)
    assert list(found.beside) == [max(i for i, r in enumerate(laid.fabric.rows) if r.piece == 1)]


def test_a_border_goes_around_as_many_motifs_as_are_laid_out(blanket):
    laid, sizes, rows = blanket
    found = joined_flat(laid, sizes, 20.0)
    across, down = laid.fabric.layout
    side = found.across_mm[0] * MEETING
    out = 0.0
    for c in (c for c in rows if c.index in found.border and not c.assumed):
        out += c.height_mm
        wide, high = np.ptp(found.points[laid.nodes_of(c.index), :2], axis=0)
        assert wide == pytest.approx(across * side + 2 * out, rel=0.01)
        assert high == pytest.approx(down * side + 2 * out, rel=0.01)
    assert len(found.lines) == across + 1 + down + 1


def test_pictures_of_rounds_say_what_lies_beside_and_within(worked):
    made = worked("sea-lavender-blanket")
    drawn = {(d.section, d.label): d for d in round_drawings(made.fabrics[0], made.sizes)}
    told = {key: d.description for key, d in drawn.items()}
    joining = next(text for (section, label), text in told.items() if section.startswith("Joined") and label == "Rnd 4")
    assert joining.endswith("on its right side, the new stitches told apart. Beside it lies the motif that it is joined to.")
    assert told["Border", "Rnd 1"].endswith("The lines within are the edges of the motifs.")
    assert not any('class="new in"' in d.svg or 'class="old in"' in d.svg for d in drawn.values())


def test_pieces_that_are_not_joined_have_no_layout(worked):
    made = worked("lapwing-cushion")
    assert joined_flat(laid_out(made.fabrics[0], made.sizes), made.sizes, 20.0) is None
