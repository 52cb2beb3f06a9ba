"""What a log calls shots and rows is read back as those very ones; a plan that has changed since; rows and shots in one log."""

from itertools import pairwise
from pathlib import Path

import pytest

from loopwright.filming.captioned import least_s
from loopwright.filming.log import read_log, row_name, shot_name
from loopwright.filming.shots import Plan
from loopwright.filming.timed import timed
from loopwright.workshop.files import open_source
from loopwright.workshop.film.choice import Choice
from loopwright.workshop.film.planned import planned

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))


def plan_of(path: Path, **choice: object) -> Plan:
    source = open_source(str(path))
    size = next((s for s in ("child", "small", "adult") if s in source.text), "")
    for wanted in (size, ""):
        try:
            return planned(source, Choice(wanted, **choice))[1]  # type: ignore[arg-type]
        except Exception as e:  # noqa: BLE001 - another size is tried
            last = str(e)
    names = last.rpartition(": ")[2].split(", ")
    return planned(source, Choice(names[0], **choice))[1]  # type: ignore[arg-type]


@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_every_shot_and_row_is_read_back_under_its_name(path):
    plan = plan_of(path)
    shots = "".join(f"{n} s {shot_name(plan, s)}\n" for n, s in enumerate(plan.shots))
    found = read_log(shots, plan)
    assert found.notes == ()
    assert [e.shot for e in found.entries] == [s.number for s in plan.shots]
    rows = [(i, n) for i, s in enumerate(plan.sections) for n in range(len(s.rows))]
    found = read_log("".join(f"{k} s {row_name(plan, i, n)}\n" for k, (i, n) in enumerate(rows)), plan)
    assert found.notes == ()
    assert [(e.section, e.row) for e in found.entries] == rows


@pytest.mark.parametrize("language", ["de", "fr"])
def test_names_in_other_languages_are_read_back_too(language):
    plan = plan_of(next(p for p in DESIGNS if p.stem == "samphire-beanie"), language=language)
    found = read_log("".join(f"{n} s {shot_name(plan, s)}\n" for n, s in enumerate(plan.shots)), plan)
    assert [e.shot for e in found.entries] == [s.number for s in plan.shots]


@pytest.fixture(scope="module")
def beanie() -> Plan:
    return plan_of(next(p for p in DESIGNS if p.stem == "samphire-beanie"))


def test_a_shot_that_has_another_number_now_is_taken_by_its_name(beanie):
    shot = next(s for s in beanie.shots if s.kind == "count" and s.label == "Rnd 3")
    found = read_log(f"0:10 shot {shot.number - 3} Crown, Rnd 3, count\n", beanie)
    assert [e.shot for e in found.entries] == [shot.number]
    assert "the plan has changed since" in found.notes[0]
    found = read_log(f"0:10 shot {len(beanie.shots) + 9} Crown, Rnd 3, count\n", beanie)
    assert [e.shot for e in found.entries] == [shot.number]


def test_a_remark_behind_a_number_changes_nothing(beanie):
    found = read_log("0:10 shot 7 here the hook fell down\n0:20 shot 9 done\n", beanie)
    assert [e.shot for e in found.entries] == [7, 9]
    assert found.notes == ()


def test_a_row_named_whole_has_all_its_shots_among_shots_named_by_number(beanie):
    own = [s for s in beanie.shots if s.label == "Rnd 3" and s.section == 0]
    after = next(s for s in beanie.shots if s.number == own[-1].number + 1)
    need = sum(least_s(s.say) for s in own)
    film = timed(beanie, read_log(f"0:00 shot 1\n1:00 Crown, Rnd 3\n{60 + need + 10:.0f} s shot {after.number}\n", beanie))
    starts = {t.shot.number: (t.start_s, t.end_s) for t in film.shots}
    assert set(starts) == {1, *(s.number for s in own), after.number}
    times = [starts[s.number] for s in own]
    assert times[0][0] == 60
    assert all(a[1] <= b[0] + 0.001 for a, b in pairwise(times))
    assert times[-1][1] == pytest.approx(starts[after.number][0])


def test_a_log_of_numbers_alone_has_no_other_shots(beanie):
    film = timed(beanie, read_log("0:00 shot 1\n1:00 shot 9\n", beanie))
    assert [t.shot.number for t in film.shots] == [1, 9]
