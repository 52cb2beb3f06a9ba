"""Hooks by label and thickness, yarn classes by name, metres and wraps, stitches by key."""

import math

import pytest

from loopwright.trade import hooks, stitches, yarn


@pytest.mark.parametrize(
    ("label", "mm"),
    [
        ("H-8", [5.0]), ("H/8", [5.0]), ("h", [5.0]), ("US 8", [5.0]), ("7", [4.5]), ("steel 7", [1.65]), ("K-10 1/2", [6.5]),
        ("K/10½", [6.5]), ("10 1/2", [6.5]), ("M/N-13", [9.0]), ("N/P 15", [10.0]), ("I 9", [5.5]), ("Z", []), ("steel 99", []),
    ],
)  # fmt: skip
def test_hooks_are_found_by_label(label, mm):
    assert [h.mm for h in hooks.of_label(label)] == mm


def test_hooks_are_found_by_old_number_and_by_thickness():
    assert [h.mm for h in hooks.of_old_uk("9")] == [3.5]
    assert hooks.nearest(5.1).us == "H-8"
    assert hooks.nearest(4.75).mm == 4.5


def test_every_hook_has_a_source_and_recalled_ones_are_weak():
    for hook in hooks.hooks():
        assert hook.source
        assert hook.weak or "memory" not in hook.source


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("worsted", 4), ("DK", 3), ("4", 4), ("4 ply", 2), ("4-ply", 2), ("chunky", 5), ("UK aran", 4), ("double knitting", 3), ("super chunky", 6),
        ("sock yarn", 1), ("bulky weight", 5), ("light worsted", 3), ("Lace", 0), ("super-bulky", 6),
    ],
)  # fmt: skip
def test_yarn_classes_are_found_by_name(said, number):
    found = yarn.weight(said)
    assert found is not None
    assert found.number == number


def test_yarn_classes_by_metres_and_wraps():
    assert [w.number for w in yarn.by_metres(240)] == [3]
    assert [w.number for w in yarn.by_metres(205)] == [3, 4]
    assert [w.number for w in yarn.by_wraps(12)] == [2, 3, 4]
    assert yarn.weight("moss") is None


def test_stitches():
    dc, circle, shape = stitches.stitch("dc"), stitches.circle("dc"), stitches.shape("tr")
    assert dc is not None
    assert circle is not None
    assert shape is not None
    assert (dc.turning_chains, dc.first_chain, dc.counts) == (3, 4, True)
    assert stitches.stitch("shell") is None
    assert circle.usual == 12
    assert shape.weak
    assert stitches.flat_rate(5, 5) == pytest.approx(2 * math.pi)
    with pytest.raises(ValueError, match="nought"):
        stitches.flat_rate(0, 5)
