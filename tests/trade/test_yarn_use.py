"""The table of yarn use and speeds: it loads, names its sources, and tells its faults."""

from importlib.resources import files

import pytest

from loopwright.trade import tables
from loopwright.trade.yarn_use import read_table, yarn_use

TEXT = files("loopwright.trade").joinpath("data", "yarn_use.toml").read_text(encoding="utf-8")


def test_every_stitch_has_a_source_and_what_was_not_measured_is_weak():
    table = yarn_use()
    for strands in table.stitches.values():
        assert strands.weak == ("not measured" in strands.source)
    assert {m.kind for m in table.measured if not m.weak} == {"ch", "sc", "hdc", "dc", "fsc"}
    assert all("http" in m.source for m in table.measured)


@pytest.mark.parametrize(
    ("was", "now", "told"),
    [
        ("turns = 2", "turns = 0.5", "'turns' must be 1 or more"),
        ('of = "hdc", many = 3', 'of = "hdx", many = 3', "'hdx' is no stitch"),
        ("fast = 2.2", "fast = 9", "must rise"),
        ("range = [0.7, 0.9]", "range = [0.9, 0.7]", "runs from 0.9 down to 0.7"),
        ("[stitch.sc]", "[stitch.scx]", "'sc' is no stitch of this file"),
        ("plain = 0.10", 'plain = "x"', "'plain' must be a number"),
        ("[post]", "[post]\nextra = 1", "unknown: extra"),
        ('source = "speed"', 'source = "sped"', "'sped' is no source"),
    ],
)  # fmt: skip
def test_a_fault_is_told_with_its_place(was, now, told):
    assert was in TEXT
    with pytest.raises(tables.TableError) as found:
        read_table("mine", tables.parse("mine", TEXT.replace(was, now, 1)))
    assert told in str(found.value)
    assert str(found.value).startswith("mine.toml")
