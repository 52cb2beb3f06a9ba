"""What makes commands start up quickly: records, shipped tables, expressions that wait; and what is not loaded."""

from __future__ import annotations

import copy
import pickle
import re
import subprocess
import sys
from dataclasses import asdict, field, fields, replace

import pytest

from loopwright.record import record
from loopwright.shipped import shipped_table, shipped_text
from loopwright.source.expressions import Expression


@record
class Place:
    """Made for these tests."""

    name: str
    at: tuple[int, int] = (0, 0)
    seen: int = field(default=0, compare=False)


@record
class Other:
    """With the same fields."""

    name: str
    at: tuple[int, int] = (0, 0)


def test_records_are_equal_by_value_and_kind_and_can_be_kept_in_sets():
    assert Place("creek", (1, 2), 5) == Place("creek", (1, 2), 6)
    assert Place("creek") != Place("marsh")
    assert Place("creek") != Other("creek")  # type: ignore[comparison-overlap]
    assert len({Place("creek", seen=1), Place("creek", seen=2), Place("marsh")}) == 2
    with pytest.raises(TypeError):
        hash(Place("creek", [1, 2]))  # type: ignore[arg-type]


def test_records_are_dataclasses_in_slots():
    place = Place("creek", (1, 2), 5)
    assert replace(place, name="marsh") == Place("marsh", (1, 2))
    assert asdict(place) == {"name": "creek", "at": (1, 2), "seen": 5}
    assert [f.name for f in fields(place)] == ["name", "at", "seen"]
    assert repr(place) == "Place(name='creek', at=(1, 2), seen=5)"
    assert pickle.loads(pickle.dumps(place)) == copy.deepcopy(place) == place  # noqa: S301 -- our own bytes
    with pytest.raises(AttributeError):
        place.depth = 3  # type: ignore[attr-defined]


def test_an_expression_is_compiled_when_it_is_first_used():
    waits = Expression(r"(\d+) sts", re.IGNORECASE)
    assert "compiled" not in vars(waits)
    assert [m[1] for m in waits.finditer("8 sts, 9 STS")] == ["8", "9"]
    assert "compiled" in vars(waits)
    assert (waits.search("then 8 sts"), waits.match("then 8 sts"), waits.fullmatch("8 sts.")) != (None, None, None)
    assert waits.match("then 8 sts") is None
    assert waits.sub("-", "8 sts, 9 sts") == "-, -"


def test_tables_are_read_from_beside_their_package():
    assert shipped_table("loopwright.findings", "codes.toml")["N001"]
    assert "schema" in shipped_text("loopwright.trade", "data/stitches.toml")
    with pytest.raises(FileNotFoundError):
        shipped_text("loopwright.trade", "nothing.toml")


@pytest.mark.parametrize("verb", ["check", "grade", "measure"])
def test_commands_load_no_heavy_module_and_nothing_that_reads_archives(verb):
    hat = "Gauge: 20 sc and 22 rows = 10 cm\n\nRnd 1: 6 sc in magic ring. (6)\n"
    heavy = "('numpy', 'scipy', 'PIL', 'zipfile', 'importlib.resources')"
    code = f"import sys; from loopwright.cli.main import main; main([{verb!r}, '-']); print([m for m in {heavy} if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], input=hat, capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"
