import numpy as np
import pytest

from loopwright.drawing.scene.body import Body
from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.surface import loops, rim
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.drawing.scene.rounds import TALL_MM, body_of, disc, rounds_of, sphere, tube

LEVELS = ["yarn", "strand", "facets", "plain"]


def outward(drawn) -> np.ndarray:
    """Of every triangle: how far its face looks the way that the normals of its corners do, from -1 to 1."""
    a, b, c = (drawn.positions[drawn.indices[:, k]].astype(float) for k in range(3))
    face = np.cross(b - a, c - a)
    face /= np.maximum(np.linalg.norm(face, axis=1, keepdims=True), 1e-12)
    return np.asarray(np.einsum("ij,ij->i", face, drawn.normals[drawn.indices].mean(axis=1)))


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("body", [disc, tube, sphere])
def test_what_is_drawn_is_sound(body, level):
    fabric, shape = body()
    drawn = buffers(fabric, shape, level=level)
    assert np.isfinite(drawn.positions).all()
    assert np.isfinite(drawn.normals).all()
    assert np.allclose(np.linalg.norm(drawn.normals, axis=1), 1, atol=1e-4)
    assert drawn.indices.max() == len(drawn.positions) - 1
    assert np.array_equal(np.unique(drawn.indices), np.arange(len(drawn.positions))), "every vertex is used"
    assert (outward(drawn) > 0).mean() > 0.97, "triangles and normals look the same way"


@pytest.mark.parametrize("level", LEVELS)
def test_every_stitch_with_a_top_can_be_found(level):
    fabric, shape = disc(5)
    drawn = buffers(fabric, shape, level=level)
    made = [s for row in rounds_of(fabric) for s in row]
    assert sorted(set(drawn.triangle_stitch.tolist())) == made
    assert [fabric.row[s] for s in drawn.triangle_stitch.tolist()] == drawn.triangle_row.tolist()
    assert drawn.row_labels == tuple(f"Rnd {i}" for i in range(1, 6))


@pytest.mark.parametrize("level", ["yarn", "strand"])
def test_yarn_of_a_stitch_lies_where_the_stitch_is(level):
    fabric, shape = disc(6)
    drawn = buffers(fabric, shape, level=level)
    own = drawn.vertex_stitch == rounds_of(fabric)[4][7]
    assert own.sum() > 10
    far = np.linalg.norm(drawn.positions[own] - shape.points[shape.node_of[rounds_of(fabric)[4][7]]], axis=1)
    assert far.max() < 2.0 * TALL_MM


def test_right_side_outward_and_the_wrong_one_muted():
    fabric, shape = sphere(24)
    drawn = buffers(fabric, shape, level="facets", palette={"": (200, 60, 60)})
    middle = drawn.positions[drawn.indices].mean(axis=1)
    colour = drawn.colours[drawn.indices[:, 0]]
    right, wrong = drawn.triangle_side == 1, drawn.triangle_side == -1
    assert {tuple(c) for c in colour[right].tolist()} == {(200, 60, 60), (160, 48, 48)}, "darker at the foot of a stitch"
    spread = np.ptp(colour[wrong].astype(int), axis=1)
    assert len(spread)
    assert spread.max() < 140 * 0.7, "less colourful"
    assert np.linalg.norm(middle[right], axis=1).mean() > np.linalg.norm(middle[wrong], axis=1).mean() + 1


def test_facets_have_thickness_closed_at_the_rim():
    """A tube open below: every side of every triangle is met by another, so nothing shows through."""
    fabric, shape = tube(12, 5)
    drawn = buffers(fabric, shape, level="facets")
    _, number = np.unique(np.round(drawn.positions, 3), axis=0, return_inverse=True)
    corners = number[drawn.indices]
    sides = np.sort(np.concatenate([corners[:, [0, 1]], corners[:, [1, 2]], corners[:, [2, 0]]]), axis=1)
    _, times = np.unique(sides, axis=0, return_counts=True)
    assert set(times.tolist()) == {2}


def test_pieces_are_parts_of_their_own():
    fabric, shape = tube(16, 8)
    lower = (np.arange(len(shape.points)) > 64).astype(np.int64)
    shape = Body(shape.points, shape.node_of, shape.pairs, shape.rest_mm, shape.strain, shape.faces, shape.face_stitch, lower)
    drawn = buffers(fabric, shape)
    assert [p.piece for p in drawn.parts] == [0, 1]
    assert sum(p.triangles for p in drawn.parts) == len(drawn.indices)
    for part in drawn.parts:
        mine = drawn.indices[part.first_triangle: part.first_triangle + part.triangles]
        assert mine.min() == part.first_vertex
        assert mine.max() == part.first_vertex + part.vertices - 1
        owners = drawn.triangle_stitch[part.first_triangle: part.first_triangle + part.triangles]
        assert set(lower[shape.node_of[owners]].tolist()) == {part.piece}


def test_level_follows_the_budget():
    fabric, shape = disc(10)
    sizes = [len(buffers(fabric, shape, level=level).indices) for level in LEVELS]
    assert sizes == sorted(sizes, reverse=True)
    assert [buffers(fabric, shape, budget=most).level for most in (sizes[0], sizes[0] - 200, sizes[2], 1)] == LEVELS
    assert buffers(fabric, shape, budget=1).level_about


def test_front_and_back_post_stitches_make_ribs():
    lines = ["Rib", "Terms: US", "", "Rnd 1: 24 dc in magic ring; join. (24 dc)", "Rnd 2: *fpdc around next st, bpdc around next st; rep from * around; join. (24 sts)"]
    (fabric,) = work(read(Source.of("\n".join(lines)))).fabrics
    assert fabric is not None
    shape = body_of(fabric, [0.0, 0.0, -10.0], [20.0, 20.0])
    drawn = buffers(fabric, shape, level="yarn")
    reach = {}
    for place in ("front-post", "back-post"):
        posts = [s for s in range(len(fabric)) if fabric.where(s) == place]
        mine = np.isin(drawn.vertex_stitch, posts) & (np.abs(drawn.positions[:, 2] + 5) < 1.5)
        reach[place] = np.linalg.norm(drawn.positions[mine, :2], axis=1).mean()
    assert reach["front-post"] > 20 > reach["back-post"]


def test_edges_of_a_tube_and_a_disc():
    _, shape = tube(20, 6)
    (edge,) = loops(shape.faces)
    assert sorted(edge.tolist()) == list(range(101, 121))
    assert len(rim(shape.faces)) == 20
    fabric, ball = sphere(24)
    assert [len(loop) for loop in loops(ball.faces)] == [len(rounds_of(fabric)[-1])]


# --- what goes wrong ----------------------------------------------------------------------------------------------------------


def test_a_place_that_is_no_number_is_left_out_and_said():
    fabric, shape = disc(5)
    points = shape.points.copy()
    points[[9, 20]] = [[np.nan], [np.inf]]
    drawn = buffers(fabric, shape.at(points))
    assert np.isfinite(drawn.positions).all()
    assert "2 places of the shape are no numbers and are not drawn" in drawn.notes
    assert 0 < len(drawn.indices) < len(buffers(fabric, shape).indices)


def test_a_collapsed_shape_gives_no_nan():
    fabric, shape = disc(4)
    for level in LEVELS:
        drawn = buffers(fabric, shape.at(np.zeros_like(shape.points)), level=level)
        assert np.isfinite(drawn.positions).all()
        assert np.isfinite(drawn.normals).all()


def test_numbers_of_nodes_that_are_not_there_are_passed_over():
    fabric, shape = disc(3)
    faces, pairs = shape.faces.copy(), shape.pairs.copy()
    faces[0, 0], pairs[0, 1] = 10_000, -7
    wrong = Body(shape.points, shape.node_of, pairs, shape.rest_mm, shape.strain, faces, shape.face_stitch, shape.piece)
    assert 0 < len(buffers(fabric, wrong).indices) < len(buffers(fabric, shape).indices)


def test_a_shape_of_another_fabric_is_refused():
    fabric, _ = disc(3)
    with pytest.raises(ValueError, match="of another fabric"):
        buffers(fabric, disc(4)[1])


def test_an_unknown_level_or_colouring_is_refused_by_name():
    fabric, shape = disc(2)
    with pytest.raises(ValueError, match="'fluff' is no level of detail; there are yarn, strand, facets, plain"):
        buffers(fabric, shape, level="fluff")
    with pytest.raises(ValueError, match="'mood' is no way to colour"):
        buffers(fabric, shape, by="mood")  # type: ignore[arg-type]


def test_unsettled_is_said():
    fabric, shape = disc(2)
    restless = Body(shape.points, shape.node_of, shape.pairs, shape.rest_mm, shape.strain, shape.faces, shape.face_stitch, shape.piece, settled=False)
    assert buffers(fabric, restless).notes == ("the shape had not come to rest when it was drawn",)
