"""Ease by item and fit; cautions come up by words and ages and always defer."""

from pathlib import Path

import pytest

from loopwright.trade import cautions, ease, sizes

DESIGNS = Path(__file__).parents[2] / "designs"


def test_ease_by_item_and_fit():
    hat, sock, classic = ease.of_item("beanie"), ease.of_item("sock"), ease.of_fit("classic")
    assert hat is not None
    assert sock is not None
    assert classic is not None
    assert hat.range_mm(560) == (-75, -25)
    assert sock.range_mm(240) == pytest.approx((-24, -24))
    assert classic.high == 100
    assert ease.of_item("kite") is None
    assert [e.low for e in ease.fits()] == sorted(e.low for e in ease.fits())


def test_every_item_goes_by_a_measurement_of_the_charts():
    for item in ease.items():
        assert sizes.measure_name(item.measure) == item.measure
        assert item.source


def keys(text, names=()):
    return {c.key for c in cautions.about(text, names)}


def test_ties_on_a_babys_bonnet_bring_up_a_caution():
    assert {"neck-ties", "sleep-hat"} <= keys("Bonnet with ties", ["newborn", "6 months"])
    assert not {"neck-ties", "sleep-hat"} & keys("Hat with ties", ["adult"])


def test_toys_bring_up_theirs_at_any_age():
    assert {"soft-toy", "toy-filling", "toy-eyes"} <= keys("Curlew toy. Stuff the body. Two safety eyes.")


def test_without_sizes_the_text_tells_the_age():
    assert "sleep-bedding" in keys("A pram blanket in ripples")
    assert "sleep-bedding" not in keys("A throw blanket in ripples")


@pytest.mark.parametrize(
    ("name", "ages"),
    [("newborn", {"baby"}), ("12 months", {"baby", "toddler"}), ("3-6 months", {"baby"}), ("toddler", {"toddler"}), ("child", {"child"}), ("adult", set()), ("lap", set())],
)
def test_ages_of_sizes(name, ages):
    assert cautions.ages_of(name) == ages


def test_every_caution_defers_and_has_a_source():
    for caution in cautions.cautions():
        assert caution.said.startswith(caution.text)
        assert "qualified" in caution.said
        assert caution.source
        assert caution.weak or "from memory" not in caution.source or "from memory of figure 1" in caution.source
        if caution.source.startswith(("from memory", "common practice")):
            assert caution.weak
