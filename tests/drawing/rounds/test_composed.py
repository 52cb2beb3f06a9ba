"""The picture of the fabric: in the size that is asked for, its pieces beside one another, garments from the front."""

from __future__ import annotations

import io

import numpy as np
import pytest
from PIL import Image

from loopwright.drawing.rounds import fabric_picture
from loopwright.drawing.rounds.composed import composed
from loopwright.drawing.rounds.laid import laid_out
from loopwright.grading.gauge import StitchSizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

SC = StitchSizes(5.0, 5.0, "sc")
DISC = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
STRAP = "Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4)\nRows 2-30: Ch 1, sc in each st across, turn. (4)\n"
BAG = f"Sides\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnds 3-8: Sc in each st around. (12)\nFasten off.\n\nStrap\n{STRAP}"


def of(text: str):
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    assert fabric is not None
    return fabric


def pixels(png: bytes) -> np.ndarray:
    return np.asarray(Image.open(io.BytesIO(png)))


@pytest.mark.parametrize("size", [(320, 240), (240, 240), (120, 300)])
def test_a_preview_is_as_large_as_it_must_be_and_holds_all_of_it(size):
    found = fabric_picture(of(DISC), SC, width_px=size[0], height_px=size[1], background=(255, 255, 255, 255))
    image = pixels(found.png)
    assert image.shape[:2] == (size[1], size[0])
    edge = np.concatenate([image[0], image[-1], image[:, 0], image[:, -1]])
    assert (edge[:, :3] == 255).all()
    assert (image[:, :, :3] < 200).any()


def test_the_left_hands_picture_is_the_mirror_image():
    right, left = (fabric_picture(of(DISC), SC, width_px=160, left_handed=hand) for hand in (False, True))
    assert (pixels(right.png)[:, ::-1] == pixels(left.png)).all()
    assert left.description.endswith("Mirrored for the left hand.")


def test_pieces_do_not_cover_one_another_and_a_strap_lies_along():
    laid = laid_out(of(BAG), SC)
    found = composed(laid)
    boxes = [(p[:, :2].min(axis=0), p[:, :2].max(axis=0)) for p in (found.points[laid.body.piece == i] for i in np.unique(laid.body.piece))]
    (low, high), (other_low, other_high) = boxes
    assert (high < other_low).any() or (other_high < low).any()
    wide, tall = other_high - other_low
    assert wide > 4 * tall


def test_a_garment_is_seen_from_the_front_with_both_sleeves(worked):
    design = worked("plover-cardigan")
    laid = laid_out(design.fabrics[0], design.sizes, budget_s=10)
    found = composed(laid)
    assert found.twin is not None
    yoke = next(p for p in laid.parts if p.kind == "flat")
    neck, hem = found.points[laid.nodes_of(yoke.rows[0])], found.points[laid.nodes_of(laid.parts[1].rows[1])]
    assert neck[:, 1].mean() > hem[:, 1].max()
    ends = (hem[0] + hem[-1]) / 2
    assert ends[2] > hem[:, 2].mean()
    picture = fabric_picture(design.fabrics[0], design.sizes, width_px=200, budget_s=10)
    assert "second sleeve" in picture.description
    cover = pixels(picture.png)[:, :, 3] > 0
    share = (cover & cover[:, ::-1]).sum() / cover.sum()
    assert share > 0.9  # about as wide to either side


def test_a_thumb_is_laid_along_its_hand(worked):
    design = worked("sandpiper-mitts")
    laid = laid_out(design.fabrics[0], design.sizes, budget_s=10)
    found = composed(laid)
    thumb = next(p for p in laid.parts if p.branch)
    first, last = (found.points[laid.nodes_of(i)].mean(axis=0) for i in thumb.rows)
    way = last - first
    assert found.bent
    assert way[1] > 0.5 * np.linalg.norm(way)
    hand = found.points[laid.nodes_of(laid.parts[0].rows[0])]
    assert abs(way[0]) < np.ptp(hand[:, 0])


def test_the_other_sleeve_is_set_into_the_other_armhole(worked):
    """What the first one stands on has an image in the same row, as far from its other end."""
    design = worked("plover-cardigan")
    fabric = design.fabrics[0]
    laid = laid_out(fabric, design.sizes, budget_s=10)
    found = composed(laid)
    assert found.twin is not None
    first = fabric.rows[min(found.twin.rows)]
    under = {p for s in range(first.start, first.end) for p in fabric.parents(s)}
    yoke = laid.parts[0].rows[1]
    own = [n for n in laid.nodes_of(yoke).tolist() if n in {int(laid.body.node_of[p]) for p in under}]
    other = laid.nodes_of(yoke)[::-1][[laid.nodes_of(yoke).tolist().index(n) for n in own]]
    assert len(own) > 10
    assert np.abs(found.twin.places(found.points[own]) - found.points[other]).max() < 0.5


def test_a_triangular_shawl_is_pinned_out(worked):
    design = worked("thrift-shawl")
    laid = laid_out(design.fabrics[0], design.sizes, title=design.title, budget_s=5)
    points = laid.body.points
    wide, high = np.ptp(points[:, 0]), np.ptp(points[:, 1])
    assert laid.pinned
    assert wide / high == pytest.approx(2.0, rel=0.06)
    edge = points[points[:, 1] > points[:, 1].max() - 0.01 * high]
    assert np.ptp(edge[:, 0]) > 0.95 * wide  # straight along the top
    assert "Pinned out" in fabric_picture(design.fabrics[0], design.sizes, width_px=120, budget_s=5).description


DOILY = (
    "Ch 6, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st to top of ch-3. (16 dc)\n"
    "Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next st, ch 1; rep from * around; join with sl st to 3rd ch of ch-4. (16 dc)\n"
    "Rnd 3: Ch 1, sc in same st, *ch 5, sk next dc, sc in next dc; rep from * around, ending with ch 5; join with sl st to first sc. (8 sc)\n"
)
GRANNY = (
    "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st to top of ch-3. (12 dc)\n"
    "Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around; join. (24 dc)\n"
)


def test_lace_in_rounds_is_shown_as_it_is_blocked():
    laid = laid_out(of(DOILY), StitchSizes(5.0, 10.0, "dc"))
    deep = np.ptp(laid.body.points, axis=0)
    assert laid.flat
    assert min(deep) < 0.01 * max(deep)


def test_a_motif_with_corners_stands_on_a_side():
    fabric = of(GRANNY)
    laid = laid_out(fabric, StitchSizes(5.0, 10.0, "dc"))
    seen = composed(laid).points
    last = laid.rows[-1].index
    ring = seen[laid.nodes_of(last)]
    middle = seen[laid.body.node_of[laid.body.node_of >= 0]].mean(axis=0)
    far = ring[np.argsort(-np.linalg.norm(ring - middle, axis=1))[:4]] - middle
    flat = [axis for axis in range(3) if np.ptp(ring[:, axis]) > 1.0]
    assert len(flat) >= 2
    across, up = far[:, flat[0]], far[:, flat[1]]
    assert np.abs(np.degrees(np.arctan2(np.abs(up), np.abs(across))) - 45).max() < 12  # corners lie on the diagonals
