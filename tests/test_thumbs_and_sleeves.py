"""Thumbs and sleeves: the yarn is joined where an earlier round left stitches, and the round goes over those and the chains that bridge them."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts

HAND = """Rnd 1: Ch 34, join to form a ring, ch 1, sc in each ch around, join. (34)
Rnd 2: Ch 1, sc in next 13 sts, ch 3, skip next 8 sts, sc in next 13 sts, join. (26)
Rnd 3: Ch 1, sc in each st and ch around, join. (29)
Thumb
"""


@pytest.mark.parametrize("row", [
    "Join yarn in first skipped st, sc in each of 8 skipped sts, 3 sc in ch-3 sp, join.",
    "Join yarn at the skipped sts, ch 1, sc in each of 8 skipped sts, sc in each of 3 ch, join.",
    "Join yarn to any of the unused sts, ch 1, sc in each of 8 unused sts, sc in each of 3 ch, join.",
    "With RS facing, join yarn to first skipped st of Rnd 2, ch 1, sc in same st and in next 7 skipped sts, sc in each of next 3 ch, join. (11)",
    "Join yarn at thumb hole, ch 1, sc in 8 skipped sts, sc in 3 chs, join. (11)",
])
def test_thumbs(row):
    assert first_counts(f"{HAND}Rnd 1: {row}\nRnd 2: Ch 1, sc in each st around, join.\n")[-2:] == [11, 11]


@pytest.mark.parametrize("row", [
    "Join yarn at center of underarm, ch 2, hdc in next 3 ch, hdc in each of 12 skipped sts, hdc in next 3 ch, join.",
    "Join yarn at underarm, ch 2, work 18 hdc evenly around armhole, join.",
    "Join yarn in first ch of underarm, ch 2, hdc in same ch and in each of next 5 ch, hdc in each of 12 sts of sleeve, join. (18)",
])
def test_sleeves(row):
    yoke = """Rnd 1: Ch 56, join to form a ring, ch 2, hdc in each ch around, join. (56)
Body
Rnd 1: Ch 2, hdc in next 16 sts, ch 6, skip next 12 sts, hdc in next 16 sts, ch 6, skip next 12 sts, join. (32)
Rnd 2: Ch 2, hdc in each st and ch around, join. (44)
Sleeves (make 2)
"""
    assert first_counts(f"{yoke}Rnd 1: {row}\nRnd 2: Ch 2, hdc in each st around, join.\n")[-2:] == [18, 18]
