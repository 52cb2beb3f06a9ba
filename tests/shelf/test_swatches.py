"""Yarns and swatches on the shelf: kept, changed, taken off, put back; and what cannot be kept."""

from __future__ import annotations

import math
import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopwright.shelf import Shelf, ShelfError, swatches, yarns
from loopwright.shelf.swatches import Swatch
from loopwright.shelf.yarns import Yarn

HDC = Swatch(4.0, "hdc", 17, 100, 13, 100, rounds=True, mass_g=5.5, note="firm", made_at_s=1000.0)
REEDMACE = Yarn("Reedmace", 4, "wool", 100, 200, ("tide", "peat"))


@pytest.fixture
def shelf(tmp_path: Path) -> Shelf:
    return Shelf(tmp_path)


def test_an_empty_shelf_makes_no_file(shelf: Shelf) -> None:
    assert yarns.yarns(shelf) == ()
    assert swatches.swatches(shelf) == ()
    assert swatches.one(shelf, 1) is None
    assert not shelf.path.exists()


def test_a_yarn_and_its_swatch_are_kept(shelf: Shelf) -> None:
    yarn = yarns.put(shelf, REEDMACE)
    kept = swatches.put(shelf, replace(HDC, yarn=yarn.id))
    again = Shelf(shelf.path.parent.parent)
    assert yarns.yarns(again) == (replace(REEDMACE, id=yarn.id),)
    assert swatches.swatches(again) == (replace(HDC, yarn=yarn.id, id=kept.id),)
    assert swatches.one(again, kept.id) == kept


def test_what_a_swatch_comes_to() -> None:
    assert HDC.stitch_mm == pytest.approx(100 / 17)
    assert HDC.row_mm == pytest.approx(100 / 13)
    per = HDC.metres_per_stitch(REEDMACE.metres_per_g)
    assert per == pytest.approx(5.5 * 2 / (17 * 13))
    assert HDC.metres_per_stitch(None) is None
    assert replace(HDC, mass_g=None).metres_per_stitch(2.0) is None


def test_a_change_stands_in_the_place_of_what_was_there(shelf: Shelf) -> None:
    kept = swatches.put(shelf, HDC)
    changed = swatches.put(shelf, replace(kept, stitches=16, washed=True, made_at_s=5000.0))
    assert swatches.swatches(shelf) == (replace(kept, stitches=16, washed=True),)
    assert changed.made_at_s == kept.made_at_s
    yarn = yarns.put(shelf, REEDMACE)
    yarns.put(shelf, replace(yarn, name="Bulrush", colours=()))
    assert [y.name for y in yarns.yarns(shelf)] == ["Bulrush"]


def test_what_is_taken_off_can_be_put_back(shelf: Shelf) -> None:
    yarn, kept = yarns.put(shelf, REEDMACE), swatches.put(shelf, HDC)
    assert swatches.take_off(shelf, kept.id, 2000.0)
    assert yarns.take_off(shelf, yarn.id, 2000.0)
    assert not swatches.take_off(shelf, kept.id, 2000.0)
    assert (yarns.yarns(shelf), swatches.swatches(shelf)) == ((), ())
    with pytest.raises(ShelfError, match="no longer"):
        swatches.put(shelf, kept)
    assert swatches.put_back(shelf, kept.id)
    assert yarns.put_back(shelf, yarn.id)
    assert not yarns.put_back(shelf, yarn.id)
    assert (yarns.yarns(shelf), swatches.swatches(shelf)) == ((yarn,), (kept,))


@pytest.mark.parametrize("bad", [
    replace(HDC, stitches=0), replace(HDC, stitches=-3), replace(HDC, rows=math.nan), replace(HDC, width_mm=math.inf), replace(HDC, hook_mm=0),
    replace(HDC, hook_mm=500), replace(HDC, stitch="  "), replace(HDC, stitch="h\ndc"), replace(HDC, note="x" * 501), replace(HDC, mass_g=-1),
    replace(HDC, stitches=9000), replace(HDC, stitches=0.01), replace(HDC, yarn=77), replace(HDC, mass_g=math.nan),
])
def test_a_swatch_that_cannot_be(shelf: Shelf, bad: Swatch) -> None:
    with pytest.raises(ShelfError):
        swatches.put(shelf, bad)
    assert swatches.swatches(shelf) == ()


@pytest.mark.parametrize("bad", [
    Yarn(" "), Yarn("x" * 201), Yarn("a\nb"), Yarn("a", 8), Yarn("a", -1), Yarn("a", ball_g=0), Yarn("a", ball_m=math.nan), Yarn("a", colours=("x" * 201,)),
    Yarn("a", colours=("c",) * 201),
])
def test_a_yarn_that_cannot_be(shelf: Shelf, bad: Yarn) -> None:
    with pytest.raises(ShelfError):
        yarns.put(shelf, bad)
    assert yarns.yarns(shelf) == ()


def test_a_studio_that_only_reads_writes_nothing(shelf: Shelf) -> None:
    kept = swatches.put(shelf, HDC)
    reading = Shelf(shelf.path.parent.parent, read_only=True)
    assert swatches.swatches(reading) == (kept,)
    for change in (lambda: swatches.put(reading, HDC), lambda: swatches.take_off(reading, kept.id, 1.0), lambda: yarns.put(reading, REEDMACE)):
        with pytest.raises(ShelfError, match="only for reading"):
            change()


def test_a_shelf_of_questions_alone_is_brought_up_to_date(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.path.parent.mkdir()
    first = (Path(__file__).parents[2] / "src/loopwright/shelf/steps/001-questions.sql").read_text(encoding="utf-8")
    held = sqlite3.connect(shelf.path)
    held.executescript(first + "PRAGMA user_version = 1;")
    held.close()
    assert swatches.swatches(shelf) == ()
    assert swatches.put(shelf, HDC).id == 1


names = st.text(st.characters(codec="utf-8", exclude_categories=("Cs", "Cc")), min_size=1, max_size=40).filter(lambda s: s.strip() == s)


@given(names, st.sampled_from([None, *range(8)]), names, st.lists(names, max_size=4), st.floats(0.1, 5000))
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_a_yarn_is_called_comes_back(tmp_path: Path, name: str, weight: int | None, fibre: str, colours: list[str], grams: float) -> None:
    yarn = Yarn(name, weight, fibre, grams, 2 * grams, tuple(colours))
    shelf = Shelf(tmp_path)
    kept = yarns.put(shelf, yarn)
    assert replace(yarn, id=kept.id) == next(y for y in yarns.yarns(shelf) if y.id == kept.id)
