"""Where an item goes around the body, and how it compares."""

from __future__ import annotations

import pytest

from loopwright.model.measures import Dimension
from loopwright.source import Source
from loopwright.trade.ease import of_item
from loopwright.workshop.measure import bodies_of, item_of, measure_source

ADULT = "Sizes: adult\nGauge: 20 sc and 20 rnds = 10 cm\n\n"
CROWN = (
    "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\n"
    "Rnds 4-{rounds}: Continue as established, inc 6 sts each rnd. ({sts})\n"
)


def worn(text: str) -> dict[str, Dimension]:
    measured = measure_source(Source.of(text))
    return {d.name: d for d in measured.sizes[0].dimensions if d.worn}


def head_mm(text: str) -> float:
    document = measure_source(Source.of(text)).document
    item = item_of(document)
    assert item is not None
    (found,) = bodies_of(document, item.measure, ["adult"])
    assert found is not None
    return found


def test_a_hat_is_stretched_to_the_head_and_gets_shallower():
    text = f"Sanderling Hat\n{ADULT}{CROWN.format(rounds=17, sts=102)}Rnds 18-40: Sc in each st around. (102)\n"
    found, head = worn(text), head_mm(text)
    assert 510 < head < 1.2 * 510
    assert found["around worn"].value_mm == head
    assert found["depth worn"].value_mm == pytest.approx(200 * (1 - 0.3 * (head / 510 - 1)))
    assert f"{(head - 510) / 10:.1f} cm less" in found["around worn"].how


@pytest.mark.parametrize(
    ("name", "rest", "sts"),
    [
        ("a brim that flares", "Rnds 19-38: Sc in each st around. (108)\nRnd 39: *Sc in next 2 sts, 2 sc in next st; rep from * around. (144)\nRnd 40: *Sc in next 2 sts, 2 sc in next st; rep from * around. (192)\n", 108),
        ("a body that droops", "Rnds 19-24: 2 sc in first st, sc in each st around.\nRnds 25-38: Sc in each st around. (114)\nRnd 39: *Sc in next 17 sts, sc2tog; rep from * around. (108)\nRnds 40-44: Sc in each st around. (108)\n", 108),
        ("nothing but a crown", "", 108),
    ],
)
def test_a_hat_goes_by_the_round_above_the_brow(name, rest, sts):
    found = worn(f"Sanderling Hat\n{ADULT}{CROWN.format(rounds=18, sts=108)}{rest}")
    assert f": {sts} sts" in found["around worn"].how, name


def test_a_hat_from_the_brim_up_goes_by_its_band():
    text = (
        f"Sanderling Hat\n{ADULT}Ch 100, join with sl st to form a ring.\nRnd 1: Sc in each ch around. (100)\nRnds 2-6: Sc in each st around. (100)\n"
        "Rnd 7: *Sc in next 4 sts, 2 sc in next st; rep from * around. (120)\nRnds 8-25: Sc in each st around. (120)\nRnd 26: *Sc in next 4 sts, sc2tog; rep from * around. (100)\n"
        "Rnd 27: *Sc in next 3 sts, sc2tog; rep from * around. (80)\nRnd 28: *Sc in next 2 sts, sc2tog; rep from * around. (60)\n"
    )
    assert ": 100 sts, the narrowest past the crown" in worn(text)["around worn"].how


def test_a_bonnet_goes_by_the_last_round_that_closes():
    text = (
        "Sanderling Bonnet\nSizes: newborn\nGauge: 20 sc and 20 rnds = 10 cm\n\n" + CROWN.format(rounds=11, sts=66)
        + "Row 12: Ch 1, sc in next 50 sts, leave remaining sts unworked, turn. (50)\nRow 13: Ch 1, sc in each st across, turn. (50)\n"
    )
    assert ": 66 sts, the last round that closes" in worn(text)["around worn"].how


def test_a_bootee_is_held_against_the_length_of_the_foot():
    text = (
        "Sanderling Booties\nSizes: newborn\nGauge: 20 sc and 20 rnds = 10 cm\n\nSole\nCh 11.\n"
        "Rnd 1: Sc in 2nd ch from hook and in next 8 ch, 4 sc in last ch, working on other side of ch, sc in next 8 ch, 3 sc in last ch; join. (24)\n"
        "Rnd 2: 2 sc in next st, sc in next 8 sts, 2 sc in next 4 sts, sc in next 8 sts, 2 sc in next 3 sts; join. (32)\nSides\nRnds 3-6: Sc in each st around; join. (32)\n"
    )
    found = worn(text)
    assert list(found) == ["length worn"]
    assert found["length worn"].value_mm == pytest.approx(9 * 5 + 4 * 5)
    assert "the foot length of" in found["length worn"].how


def test_nothing_goes_around_by_a_scrap():
    row = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\n"
    for title in ("Hat", "Cardigan", "Booties", "Mittens", "Sock"):
        assert of_item(title.lower()) is not None
        assert worn(f"Sanderling {title}\n{ADULT}{row}") == {}
