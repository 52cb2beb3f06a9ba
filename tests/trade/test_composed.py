"""Kinds that are put together out of others."""

from __future__ import annotations

import pytest

from loopwright.terms import dialect
from loopwright.trade.composed import MOST_LEGS, Composed, composed


@pytest.mark.parametrize(("kind", "made"), [
    ("dc", Composed("dc")), ("sc2tog", Composed("sc", 2)), ("dc3tog", Composed("dc", 3)), ("fpdc", Composed("dc", post="fp")),
    ("bpdc2tog", Composed("dc", 2, "bp")), ("blsc", Composed("sc", loop="bl")), ("flhdc2tog", Composed("hdc", 2, loop="fl")),
    ("fsc", Composed("sc", foundation=True)), ("fdc", Composed("dc", foundation=True)), ("sl st", Composed("sl st")),
])
def test_a_kind_is_taken_apart(kind, made):
    assert composed(kind) == made


@pytest.mark.parametrize("kind", ["ch", "st", "block", "fan", "cluster", "v-st", "bobble", "flower", "", "2tog", "tog", "fp", "bl"])
def test_what_is_not_put_together_is_its_own_plain_stitch(kind):
    assert composed(kind) == Composed(kind)


def test_legs_have_a_bound():
    assert composed("dc9999999tog").legs == MOST_LEGS


@pytest.mark.parametrize("terms", ["us", "uk", "old"])
def test_no_stitch_of_the_dialects_but_a_foundation_stitch_is_taken_for_another(terms):
    assert {k for k in dialect(terms).terms if composed(k).plain != k} <= {"fsc", "fhdc", "fdc", "ftr"}


@pytest.mark.parametrize("said", ["sc2tog", "dc3tog", "fpdc", "bpdc2tog", "front post hdc"])
def test_what_the_dialects_put_together_is_taken_apart(said):
    kind = dialect("us").kind_of(said)
    assert kind is not None
    made = composed(kind)
    assert f"{made.post}{made.plain}" + (f"{made.legs}tog" if made.legs > 1 else "") == kind
