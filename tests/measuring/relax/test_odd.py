"""Weird input, bounds, stopping: a clear word, never a number that is none."""

import numpy as np
import pytest

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import RelaxOptions, relax
from loopwright.measuring.relax.solve import _stalled
from loopwright.model.fabric import Fabric
from tests.measuring.relax import forms

ODD = [
    "Ch 1.", "Ch 2.", "Ch 3, join with sl st to form a ring.", "Rnd 1: 1 sc in magic ring.", "Rnd 1: 2 sc in magic ring.\nRnd 2: 2 sc in each st.",
    "Ch 4.\nRow 1: Sc in 2nd ch from hook, turn.\nRow 2: Ch 1, sc in next st.", "Rnd 1: 6 sc in magic ring.\nRnd 2: Sc2tog 3 times.\nRnd 3: Sc3tog.",
    "Ch 30.\nRow 1: 20 dc in 4th ch from hook.", "Row 1: Sk 5 sts, ch 40, sc in next st.", "Ch 300.\nRow 1: Sc in 2nd ch from hook, ch 100, sc in last ch.",
]


def finite(shape):
    return bool(np.isfinite(shape.points).all() and np.isfinite(shape.strain).all() and np.isfinite(shape.rest_mm).all())


@pytest.mark.parametrize("flat", [False, True])
@pytest.mark.parametrize("text", ODD)
def test_odd_fabrics_have_a_shape(text, flat):
    fabric = forms.made(text)
    shape = relax(fabric, forms.sizes("dc"), RelaxOptions(flat=flat))
    assert finite(shape)
    assert shape.node_of.shape == (len(fabric),)
    assert all(np.isfinite(v) for v in shape.box_mm())
    assert shape.settled == (not shape.why)


def test_no_stitches_no_shape():
    shape = relax(Fabric(), forms.sizes("sc"))
    assert (shape.settled, shape.why, len(shape.points)) == (False, "no stitches", 0)
    assert shape.measures().width_mm == 0


@pytest.mark.parametrize(("width", "row"), [(1e-3, 5e3), (1e6, 1e-6), (1e-9, 1e-9), (1e9, 1e9)])
def test_an_absurd_gauge_is_no_number_beyond_numbers(width, row):
    assert finite(relax(forms.made(forms.disc("dc", 12, 4)), StitchSizes(width, row, "dc")))


def test_lengths_that_cannot_fit_are_not_passed_off_as_settled():
    shape = relax(forms.made(forms.disc("dc", 12, 4)), StitchSizes(0.001, 5000.0, "dc"))
    assert shape.why == "lengths do not fit together"


def test_thousands_of_stitches_in_one_ring_stop_in_time():
    shape = relax(forms.made("Rnd 1: 3000 dc in magic ring; join with sl st to first dc."), forms.sizes("dc"), RelaxOptions(budget_s=0.5))
    assert finite(shape)
    assert len(shape.points) == 3001


def test_out_of_time_gives_the_start_and_says_so():
    shape = relax(forms.made(forms.disc("dc", 12, 20)), forms.sizes("dc"), RelaxOptions(budget_s=0))
    assert (shape.settled, shape.why) == (False, "time")
    assert finite(shape)


def test_stuffing_in_an_open_piece_is_left_out_and_told():
    shape = relax(forms.made(forms.rectangle("sc", 8, 8)), forms.sizes("sc"), RelaxOptions(stuffed=frozenset({0})))
    assert shape.why == "stuffing in an open piece"
    assert shape.box_mm()[2] < 1


@pytest.mark.parametrize("pressure", [0.0, -3.0, float("nan"), float("inf")])
def test_a_pressure_that_is_none_fills_nothing(pressure):
    fabric = forms.made(forms.rounds([6, 12, 18, 18, 12, 6]))
    shape, plain = (relax(fabric, forms.sizes("sc"), RelaxOptions(stuffed=s)) for s in ({0: pressure}, {}))
    assert (shape.points == plain.points).all()


def test_pieces_joined_at_a_single_stitch_hold_together():
    text = forms.rectangle("sc", 6, 6) + "\nCh 20, sl st in first st of Row 6."
    assert finite(relax(forms.made(text), forms.sizes("sc")))


def test_a_seed_gives_one_shape_and_the_start_does_not_decide_it():
    fabric = forms.made(forms.disc("dc", 14, 6))
    one, same, other = (relax(fabric, forms.sizes("dc"), RelaxOptions(seed=s)) for s in (1, 1, 2))
    assert (one.points == same.points).all()
    assert not (one.points == other.points).all()
    assert np.allclose(one.box_mm(), other.box_mm(), rtol=0.02)


def test_progress_goes_up_to_one():
    told: list[float] = []
    relax(forms.made(forms.disc("dc", 12, 6, 4)), forms.sizes("dc"), RelaxOptions(progress=told.append))
    assert told == sorted(told)
    assert told[0] < told[-1] == 1.0


def test_stopping_by_hand_passes_through():
    def stop(_share):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        relax(forms.made(forms.disc("dc", 12, 6)), forms.sizes("dc"), RelaxOptions(progress=stop))


def test_a_shape_that_hardly_gets_on_is_given_up_and_says_so():
    assert not _stalled([10.0, 9.0, 8.0, 7.0, 6.0, 5.0])
    assert not _stalled([10.0, 9.0, 8.0, 7.0, 6.0, 5.0, 4.0, 3.0])
    assert _stalled([10.0, 9.99, 9.98, 9.97, 9.96, 9.95, 9.94])
    assert not _stalled([10.0, 10.1, 10.2, 10.1, 10.0, 9.9, 9.0])
