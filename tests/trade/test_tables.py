"""The shape of the tables: every file loads, and a fault in one is told with its place."""

from importlib.resources import files

import pytest

from loopwright.trade import body, cautions, ease, hooks, patterns, sizes, stitches, tables, yarn

FILES = sorted(p.name.removesuffix(".toml") for p in files("loopwright.trade").joinpath("data").iterdir() if p.name.endswith(".toml"))
LOADERS = [hooks.hooks, yarn.weights, stitches.swatches, ease.items, ease.fits, cautions.cautions, patterns.patterns, body.names, sizes.measures]


@pytest.mark.parametrize("load", LOADERS)
def test_every_loader_gives_something(load):
    assert load()


@pytest.mark.parametrize("name", FILES)
def test_every_file_names_its_schema_and_no_registry(name):
    text = files("loopwright.trade").joinpath("data", f"{name}.toml").read_text(encoding="utf-8")
    assert "\nschema = 1\n" in text
    assert "pypi.org" not in text


CHART = """
schema = 1
title = "t"
about = "a"
[sources]
here = "somewhere"
[[row]]
measure = "chest"
source = "here"
[row.cm]
adult = 96
"""


def test_a_chart_in_order_is_read():
    chart = sizes.read_table("mine", tables.parse("mine", CHART))
    assert chart.find("adult").measure("bust").mm == 960


@pytest.mark.parametrize(
    ("was", "now", "told"),
    [
        ("schema = 1", "schema = 2", "mine.toml, the file: only schema 1"),
        ("schema = 1", "", "'schema' is missing"),
        ('title = "t"', "title = 3", "'title' must be a text"),
        ('measure = "chest"', 'measure = "chess"', "row 1: 'chess' is no measurement"),
        ('source = "here"', 'source = "there"', "row 1: 'there' is no source"),
        ('source = "here"', "", "row 1: 'source' is missing"),
        ("adult = 96", "adlt = 96", "row 1: 'adlt' is no size"),
        ("adult = 96", "adult = -1", "row 1 cm: 'adult' must be a number of 0 or more"),
        ("adult = 96", "adult = [98, 96]", "row 1 cm: 'adult' runs from 98 down to 96"),
        ("adult = 96", "adult = [1, 2, 3]", "a number or a pair"),
        ("adult = 96", "adult = true", "must be a number"),
        ("adult = 96", "adult = inf", "must be a number of 0 or more"),
        ("[row.cm]", "[row.feet]", "row 1: the figures must stand in one of inches, cm, mm"),
        ("[row.cm]", 'size = "x"\n[row.cm]', "row 1: unknown: size"),
        ("[row.cm]", 'weak = "yes"\n[row.cm]', "'weak' must be true or false"),
        ("[[row]]", "[[row", "not readable as TOML"),
        ("adult = 96", "adult = 96\n[[row]]\nmeasure = 'chest'\nsource = 'here'\n[row.cm]\nadult = 97", "row 2: chest of adult is given twice"),
    ],
)
def test_a_fault_is_told_with_its_place(was, now, told):
    with pytest.raises(tables.TableError) as found:
        sizes.read_table("mine", tables.parse("mine", CHART.replace(was, now, 1)))
    assert told in str(found.value)


def test_lists_pairs_and_figures_are_checked():
    entry = tables.Entry("mine", "row 1", {"a": [1, 2], "b": "x", "c": [[1, 2], [3]], "d": [["x"], []], "e": float("nan"), "f": 1.5, "g": {"h": 1}})
    assert entry.pair("a") == (1, 2)
    for key, take in (("b", entry.pairs), ("c", entry.pairs), ("d", entry.text_groups), ("e", entry.signed), ("f", entry.whole)):
        with pytest.raises(tables.TableError, match=f"'{key}' must be"):
            take(key)
    with pytest.raises(tables.TableError, match="unknown: g"):
        entry.done()
