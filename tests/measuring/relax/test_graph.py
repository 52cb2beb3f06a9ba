"""What stands on what, how long it is, which faces there are."""

import numpy as np
import pytest

from loopwright.measuring.relax import stitch_graph
from tests.measuring.relax import forms


def edge_mm(graph, i, j):
    at = np.flatnonzero((graph.pairs == sorted((i, j))).all(axis=1))
    assert len(at) == 1
    return graph.rest_mm[at[0]]


def directed_edges(faces):
    found = []
    for face in faces.tolist():
        nodes = [n for n in face if n >= 0]
        found += list(zip(nodes, nodes[1:] + nodes[:1], strict=True))
    return found


def test_every_stitch_has_a_node_but_chains_that_turn_and_joins():
    fabric = forms.made(forms.tube("sc", 12, 4).replace("Rnds 2", "Rnds 2").replace("sc in each st around; join", "Ch 1, sc in each st around; join"))
    graph = stitch_graph(fabric, forms.sizes("sc"))
    for stitch in range(len(fabric)):
        has = fabric.part_of(stitch) in ("edge", "counts", "assumed")
        assert (graph.node_of[stitch] >= 0) == has
    assert len(graph) == 12 * 5


def test_a_magic_ring_has_a_centre_that_is_no_stitch():
    graph = forms.graph_of("Rnd 1: 6 sc in magic ring; join with sl st to first sc.", "sc")
    assert len(graph) == 7
    assert (graph.stitch_of < 0).sum() == 1
    assert np.allclose(np.sort(graph.rest_mm), [9.2] * 6 + [10.0] * 6)


def test_a_small_ring_of_chains_is_drawn_to_one_node_and_a_long_one_stays_a_ring():
    small = forms.graph_of("Ch 4, join with sl st to form a ring.\nRnd 1: Ch 1, 12 sc in ring; join with sl st to first sc.", "sc")
    assert len(small) == 13
    assert (small.node_of[:4] == small.node_of[0]).all()
    long = forms.graph_of("Ch 20, join with sl st to form a ring.\nRnd 1: Ch 1, 40 sc in ring; join with sl st to first sc.", "sc")
    assert len(long) == 60
    assert long.along.closed.tolist() == [True, True]


def test_rows_are_as_long_as_their_stitches_and_as_far_apart_as_they_are_tall():
    graph = forms.graph_of(forms.rectangle("dc", 8, 3), "dc")
    assert np.allclose(np.unique(np.round(graph.rest_mm, 6)), [10.0, 18.8])
    assert len(graph) == 8 * 4
    assert len(graph.faces) == 7 * 3
    assert (graph.faces[:, 3] >= 0).all()


def test_the_chains_skipped_in_a_foundation_stand_as_its_first_stitch():
    fabric = forms.made("Ch 10.\nRow 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn.")
    graph = stitch_graph(fabric, forms.sizes("dc"))
    assert len(forms.ring(graph, 1)) == 8
    assert len(forms.ring(graph, 0)) == 8
    assert edge_mm(graph, graph.node_of[9], graph.node_of[7]) == pytest.approx(18.8)
    assert graph.node_of[8] == -1


def test_a_foundations_turning_chain_is_no_part_of_the_shape():
    graph = forms.graph_of("Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.", "sc")
    assert len(graph) == 10
    assert graph.node_of[5] == -1


def test_two_stitches_in_one_lean_to_both_sides():
    graph = forms.graph_of("Rnd 1: 6 sc in magic ring; join with sl st to first sc.\nRnd 2: 2 sc in each st around; join.", "sc")
    posts = graph.wale_mm[graph.row[graph.wales[:, 0]] == 1]
    assert np.allclose(posts, posts[0])
    assert posts[0] == pytest.approx(np.hypot(9.2, 5.0), rel=0.02)  # half a stitch to each side


def test_a_decrease_stands_on_all_that_it_draws_together():
    fabric = forms.made("Rnd 1: 12 sc in magic ring; join with sl st to first sc.\nRnd 2: sc2tog 6 times; join.")
    graph = stitch_graph(fabric, forms.sizes("sc"))
    child, count = np.unique(graph.wales[graph.row[graph.wales[:, 0]] == 1][:, 0], return_counts=True)
    assert len(child) == 6
    assert (count == 2).all()


def test_chains_bridge_skipped_stitches_with_a_hole():
    fabric = forms.made(
        "Ch 14.\nRow 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (12 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in each of next 4 sts, ch 2, sk 2 sts, dc in each of next 5 sts, turn."
    )
    graph = stitch_graph(fabric, forms.sizes("dc"))
    assert len(graph.faces) == 11 + 8
    chains = [s for s in range(len(fabric)) if fabric.row[s] == 2 and fabric.name(s) == "ch" and fabric.part_of(s) == "edge"]
    assert edge_mm(graph, *graph.node_of[chains]) == pytest.approx(10.0)
    assert not np.isin(graph.node_of[chains], graph.faces).any()


def test_a_chain_worked_along_both_sides_joins_them():
    graph = forms.graph_of(forms.oval(6, 3), "sc")
    chain = forms.ring(graph, 0)
    foot = np.bincount(graph.wales[:, 1], minlength=len(graph))[chain]
    assert len(chain) == 8
    assert (foot[1:-1] == 2).all()
    assert not graph.along.closed[0]
    assert graph.along.closed[1:].all()


@pytest.mark.parametrize("text", [forms.disc("dc", 12, 5, 3), forms.rectangle("sc", 6, 7), forms.oval(6, 4), forms.MITT])
def test_neighbouring_faces_run_against_each_other_along_their_edge(text):
    graph = forms.graph_of(text, "dc")
    edges = directed_edges(graph.faces)
    assert len(edges) == len(set(edges))


def test_every_face_belongs_to_a_stitch_of_its_own_corners():
    graph = forms.graph_of(forms.disc("dc", 12, 5), "dc")
    assert len(graph.faces) == len(graph.face_stitch)
    assert (graph.faces == graph.node_of[graph.face_stitch][:, None]).any(axis=1).all()


def test_a_thumb_joins_both_edges_of_its_opening():
    fabric = forms.made(forms.MITT)
    graph = stitch_graph(fabric, forms.sizes("hdc"))
    thumb = next(i for i, r in enumerate(fabric.rows) if r.section == "Thumb")
    feet = graph.wales[graph.row[graph.wales[:, 0]] == thumb][:, 1]
    assert len(set(graph.row[feet].tolist())) == 2
    assert len(feet) == 12


def test_the_last_round_of_a_repeat_told_by_its_end_stands_over_the_rounds_between():
    fabric = forms.made(forms.disc("sc", 6, 4, 2) + "\nFasten off.")
    graph = stitch_graph(fabric, forms.sizes("sc"))
    assert len(graph) == 1 + 6 + 12 + 18 + 24 * 3


def test_equal_fabrics_have_equal_graphs():
    one, two = (forms.graph_of(forms.granny(4), "dc") for _ in range(2))
    assert (one.pairs == two.pairs).all()
    assert (one.rest_mm == two.rest_mm).all()
    assert (one.faces == two.faces).all()
