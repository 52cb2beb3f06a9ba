"""Laid flat and blocked."""

import numpy as np
import pytest

from loopwright.measuring.relax import RelaxOptions, relax, stitch_graph
from tests.measuring.relax import forms

FLAT = RelaxOptions(flat=True)


def areas(shape):
    t = forms.triangles(shape)
    a, b, c = (shape.points[t[:, i]] for i in range(3))
    return np.cross(b - a, c - a)[:, 2] / 2


@pytest.mark.parametrize(
    ("text", "kind"),
    [(forms.disc("dc", 12, 6), "dc"), (forms.disc("dc", 15, 6), "dc"), (forms.rectangle("dc", 10, 8), "dc"), (forms.granny(5), "dc"), (forms.oval(10, 5), "sc")],
)
def test_what_can_lie_flat_lies_in_the_plane_right_side_up_without_a_fold(text, kind):
    shape = relax(forms.made(text), forms.sizes(kind), FLAT)
    assert (shape.points[:, 2] == 0).all()
    assert (areas(shape) > 0).all()
    assert shape.settled


def test_a_hat_laid_flat_lies_in_two_layers_and_says_so():
    fabric = forms.made(forms.disc("dc", 12, 5, 9))
    flat, free = relax(fabric, forms.sizes("dc"), FLAT), relax(fabric, forms.sizes("dc"))
    assert flat.why == "lies in layers"
    assert not flat.settled
    assert flat.box_mm()[2] < 0.5 * free.box_mm()[2]
    assert flat.box_mm()[0] > free.box_mm()[0]


def test_a_ruffle_blocked_flat_is_pressed_together():
    fabric = forms.made(forms.disc("dc", 15, 6))
    shape = relax(fabric, forms.sizes("dc"), FLAT)
    assert forms.around_mm(shape, stitch_graph(fabric, forms.sizes("dc")), 5) < 0.95 * 15 * 6 * forms.WIDTH_MM
