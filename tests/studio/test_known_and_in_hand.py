"""What a sheet completes and explains; the rows of one size as a maker works them; the counts of each row of a range."""

from __future__ import annotations

from pathlib import Path

from loopwright.workshop.in_hand import in_hand
from loopwright.workshop.known import known
from loopwright.workshop.live import Live, Seen

DESIGNS = Path(__file__).parents[2] / "designs"


def seen(name: str) -> Seen:
    return Live(name).see((DESIGNS / f"{name}.txt").read_text(encoding="utf-8"))


def test_stitches_are_said_in_the_terms_of_the_pattern() -> None:
    words = {s["key"]: s for s in known(seen("avocet-bonnet"))["stitches"]}  # UK terms
    assert (words["dc"]["short"], words["dc"]["long"]) == ("tr", "treble")
    assert words["hdc"]["used"]
    assert not words["qtr"]["used"]


def test_uses_and_makes() -> None:
    told = {s["key"]: s["says"] for s in known(seen("samphire-beanie"))["stitches"]}
    assert told["hdc"] == "Uses 1 st, makes 1."
    assert told["fpdc"] == "Uses 1 st around its post, from the front, makes 1."
    assert told["inc"] == "Uses 1 st, makes 2."
    assert "group" not in told


def test_special_stitches_of_the_heading_are_known() -> None:
    assert {"V st", "picot"} <= {s["name"] for s in known(seen("avocet-bonnet"))["specials"]}


def test_rows_that_go_on_as_established_are_told_by_what_they_make() -> None:
    hat = seen("samphire-beanie")
    size = list(hat.report.sizes).index("child")
    rows = in_hand(hat, size)["rows"]
    five = next(r for r in rows if r["label"] == "Rnd 5")
    assert (five["count"], five["unit"], five["made"], five["times"]) == (40, "hdc", "hdc in next 3 sts, 2 hdc in next st", 8)
    assert [s - five["repeats"][0] for s in five["repeats"]] == [0, 5, 10, 15, 20, 25, 30, 35]
    assert [r["count"] for r in rows if r["section"] == "Crown"] == [8, 16, 24, 32, 40, 48, 56, 64, 72, 80]


def test_in_every_design_each_row_in_hand_has_the_count_of_the_fabric() -> None:
    for file in DESIGNS.glob("*.txt"):
        found = seen(file.stem)
        for size, fabric in enumerate(found.report.fabrics):
            if fabric is not None:
                counts = [r["count"] for r in in_hand(found, size)["rows"]]
                assert counts == [sum(fabric.counted(r).values()) for r in fabric.rows]


def test_a_size_that_is_not_there_has_no_rows_and_a_word_why() -> None:
    made = in_hand(seen("samphire-beanie"), 99)
    assert made["rows"] == []
    assert "No row" in made["why"]


def test_rows_of_a_range_are_told_one_by_one_where_they_differ() -> None:
    hat = seen("samphire-beanie")
    row = next(r for r in hat.as_wire()["rows"] if r["label"].startswith("Rnds 4-"))
    child, small = list(hat.report.sizes).index("child"), 0
    assert row["labels"][child] == "Rnds 4-9"
    assert row["labels"][small] == "Rnds 4-5"
    assert [n[child] for n in row["series"]][:6] == [32, 40, 48, 56, 64, 72]
    assert [n[small] for n in row["series"]] == [32, 40] + [None] * (len(row["series"]) - 2)
