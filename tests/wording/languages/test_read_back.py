"""What is written in German, French and Spanish is read again and gives the same rows: counts, and stitches of every kind."""

import pytest
from spoken import graded, said  # type: ignore[import-not-found,unused-ignore]

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.designs import shipped

READ = ("de", "fr", "es")


def facts(report, size=None):
    rows = [(r.counts if size is None else r.counts[size], {k: v if size is None else v[size] for k, v in r.made.items()}) for r in report.rows]
    return [(c, {k: n for k, n in made.items() if n}) for c, made in rows if c is not None]


@pytest.mark.parametrize("code", READ)
@pytest.mark.parametrize("name", [s.name for s in shipped()])
def test_the_first_size_is_the_same_fabric(name, code):
    again = work(read(Source.of(said(name, code, 0)), code))
    assert [c for c, _ in facts(again, 0)] == [c for c, _ in facts(graded(name)[1], 0)]


@pytest.mark.parametrize("code", READ)
@pytest.mark.parametrize("name", ["samphire-beanie", "thrift-shawl", "sea-lavender-blanket", "bulrush-hat"])
def test_all_sizes_at_once_are_the_same_fabric(name, code):
    again = work(read(Source.of(said(name, code)), code))
    assert [c for c, _ in facts(again)] == [c for c, _ in facts(graded(name)[1])]


@pytest.mark.parametrize("code", READ)
@pytest.mark.parametrize("name", ["samphire-beanie", "thrift-shawl", "bulrush-hat"])
def test_every_kind_of_stitch_is_the_same(name, code):
    again = work(read(Source.of(said(name, code, 0)), code))
    assert facts(again, 0) == facts(graded(name)[1], 0)
