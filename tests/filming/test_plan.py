"""The plan: the same rows, names and counts as the written pattern, each shot long enough for its words."""

import csv
import io

import pytest

from loopwright.filming import speech
from loopwright.filming.pages.camera import camera
from loopwright.filming.pages.printed import printed
from loopwright.filming.phrases import Phrases, languages
from loopwright.filming.shots import plan
from loopwright.filming.table import COLUMNS, clock, table
from loopwright.source import Source
from loopwright.terms.languages import LANGUAGES
from loopwright.workshop.designs import shipped
from loopwright.workshop.film.gather import CannotFilm, gather
from loopwright.workshop.measure import measure_source

ALL = [s.name for s in shipped()]


def _any(filmed, name, **how):
    try:
        return filmed(name, None, **how)
    except CannotFilm as e:
        return filmed(name, str(e).rpartition("one of: ")[2].split(",")[0], **how)


@pytest.mark.parametrize("name", ALL)
def test_counts_of_every_row_are_those_of_the_fabric(filmed, name):
    found = _any(filmed, name)
    fabric = found.facts.fabric
    rows = [r for s in plan(found.facts).sections for r in s.rows]
    assert rows
    counted = [(r, sum(fabric.counted(fabric.rows[r.fabric]).values())) for r in rows if r.count is not None and r.fabric >= 0]
    wrong = [(r.label, r.count, n) for r, n in counted if n and r.count != n]
    report = {c for r in found.measured.graded.report.rows for c in (*r.counts, *(r.with_chains or ()))}
    assert all(have in report for _, have, _ in wrong), wrong  # chains that are counted with the stitches, and nothing else


@pytest.mark.parametrize("name", ALL)
def test_every_shot_is_as_long_as_its_words(filmed, name):
    for s in plan(_any(filmed, name).facts).shots:
        assert s.length_s >= speech.seconds(s.say)
        assert not set("*[]{}") & set(s.say), s.say


def test_the_hat_in_the_size_on_camera(hat_plan):
    crown = hat_plan.sections[0]
    assert [(r.label, r.count) for r in crown.rows] == [
        ("Rnd 1", 8), ("Rnd 2", 16), ("Rnd 3", 24), ("Rnd 4", 32), ("Rnd 5", 40), ("Rnd 6", 48), ("Rnd 7", 56), ("Rnd 8", 64), ("Rnd 9", 72),
        ("Next rnd", 80),
    ]
    assert crown.rows[4].words == "hdc in 3, 2 hdc in next, 8 times in all"
    assert [(s.section, s.label, s.count) for s in hat_plan.swaps] == [("Crown", "Rnd 9", 72), ("Body", "Rnd 12 of 12", 80), ("Band", "Rnd 4", 80)]


def test_swaps_hold_all_the_work_of_the_piece_so_far(hat_plan):
    rows = [r for s in hat_plan.sections for r in s.rows]
    assert hat_plan.swaps[-1].work_s == pytest.approx(sum(r.work_s for r in rows))


def test_each_section_has_its_kinds_of_shots(hat_plan):
    for i in range(len(hat_plan.sections)):
        kinds = [s.kind for s in hat_plan.shots if s.section == i]
        assert kinds[0] == "goal"
        assert {"start", "end", "count", "wrong", "meet", "measure"} <= set(kinds)


def test_the_tape_shows_the_measure_and_what_other_sizes_aim_for(hat, hat_plan):
    tape = next(s for s in hat_plan.shots if s.kind == "measure")
    across = {m.size: d.value_mm for m in hat.measured.sizes for d in m.dimensions if (d.section, d.name) == ("Crown", "across")}
    assert f"{across['child'] / 10:.1f} cm" in tape.show
    assert all(f"{size} {value / 10:.1f}".removesuffix(".0") in tape.show for size, value in across.items() if size != "child")


def test_her_own_speed_makes_the_shots_longer(hat):
    text = hat.measured.source.text.replace("Turning chain:", "Timed: 10 hdc in 100 seconds\nTurning chain:")
    slow = plan(gather(Source.of(text, "slow"), "child").facts)
    usual = plan(hat.facts)
    assert slow.length_s > 1.5 * usual.length_s
    assert slow.swaps[0].work_s > 2 * usual.swaps[0].work_s


def test_uk_terms_and_the_left_hand(filmed):
    uk = plan(filmed("samphire-beanie", "child", terms="uk", left_handed=True).facts)
    said = " ".join(s.say for s in uk.shots)
    assert "half treble" in said
    assert "double" not in said.replace("front post double", "")
    assert "clockwise" in uk.notes[0]
    assert "mirrored" in next(s.show for s in uk.shots if s.kind == "measure")


@pytest.mark.parametrize("language", LANGUAGES)
def test_other_languages_say_nothing_in_english(filmed, language):
    made = plan(filmed("samphire-beanie", "child", language=language).facts)
    said = " ".join(s.say for s in made.shots if s.kind != "remark").lower()
    assert not {" stitch ", "stitches", " round ", " then ", " count "} & {w for w in (" stitch ", "stitches", " round ", " then ", " count ") if w in said}
    assert made.sections[0].title != "Crown" or language == "en"


def test_every_language_has_the_words_of_films_and_the_same_slots():
    english = Phrases("en").keys()
    keys = [k for k in english if not k.startswith(("show_", "say_terms", "terms_", "way_", "wrong_", "said_"))]
    assert set(languages()) == {"en", *LANGUAGES}
    for code in LANGUAGES:
        own = Phrases(code).keys()
        assert [k for k in keys if k not in own] == []
        for k in keys:
            slots = {w.split("}")[0] for w in english[k].split("{")[1:]}
            assert {w.split("}")[0] for w in own[k].split("{")[1:]} == slots, (code, k)


def test_the_table_has_a_line_a_shot_and_no_formula(hat_plan):
    lines = list(csv.reader(io.StringIO(table(hat_plan).removeprefix("\ufeff"))))
    assert tuple(lines[0]) == COLUMNS
    assert [x[0] for x in lines[1:]] == [str(s.number) for s in hat_plan.shots]
    assert not [c for line in lines for c in line if c.startswith(("=", "+", "-", "@"))]


def test_pages_hold_every_shot_in_one_file(hat_plan):
    for page in (printed(hat_plan), camera(hat_plan)):
        assert all(s.screen.replace("&", "&amp;") in page for s in hat_plan.shots)
        assert "http" not in page.replace("http://www.w3.org", "")
    assert clock(3723) == "1:02:03"
    assert clock(72.9) == "1:12"


def test_pages_are_safe_from_what_a_design_is_called(hat):
    text = hat.measured.source.text.replace("Samphire Beanie", "</script><script>alert(1)</script>", 1)
    made = plan(gather(Source.of(text, "odd"), "child").facts)
    assert "<script>alert" not in printed(made)
    assert "<script>alert" not in camera(made)


def test_a_design_without_gauge_is_planned_without_measures(hat):
    text = "\n".join(x for x in find_plain().splitlines() if not x.startswith(("Gauge", "Hook", "Yarn")))
    found = gather(Source.of(text, "plain"), None)
    made = plan(found.facts)
    assert not [s for s in made.shots if s.kind in ("measure", "gauge")]
    assert [s for s in made.shots if s.kind == "count"]
    assert measure_source(Source.of(text, "plain")).gauge.sizes is None


def find_plain():
    return next(s.text for s in shipped() if s.name == "curlew-toy").replace("Finished size: about 15 cm tall\n", "")


def test_a_size_that_there_is_none_of_names_those_that_there_are():
    text = next(s.text for s in shipped() if s.name == "glasswort-bag")
    with pytest.raises(CannotFilm, match=r"there is no size 'huge'.*small, large"):
        gather(Source.of(text, "bag"), "huge")
    with pytest.raises(CannotFilm, match=r"which size is on camera.*small, large"):
        gather(Source.of(text, "bag"), None)
    with pytest.raises(CannotFilm, match="no row that could be worked"):
        gather(Source.of("Only a title\n", "nothing"), None)
