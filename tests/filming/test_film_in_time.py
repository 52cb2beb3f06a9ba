"""Log, captions, chapters, links: what is in the film when."""

import itertools

import pytest

from loopwright.filming.captioned import LINE, LINES, PER_SECOND, SHORTEST_S
from loopwright.filming.captions import captions, srt, vtt
from loopwright.filming.cards.kit import cards
from loopwright.filming.chapters import FEWEST, LONGEST_TITLE, chapters
from loopwright.filming.chapters import SHORTEST_S as CHAPTER_S
from loopwright.filming.log import read_log
from loopwright.filming.overlays import overlays
from loopwright.filming.shots import plan
from loopwright.filming.timed import timed
from loopwright.workshop.film.links import at_moment, links

LOG = """# Samphire Beanie
0:00 Crown
0:40 Rnd 2
01:30 - round 3
2:50,5 Rnd 4 count
3m05s Rnd 6
3:10 R9
3:30 next rnd
4:20 tape
4:40 Body
[7:00] Band
7:50 Rnd 4
500 s done
"""


@pytest.fixture(scope="module")
def log(hat_plan):
    return read_log(LOG, hat_plan)


@pytest.fixture(scope="module")
def film(hat_plan, log):
    return timed(hat_plan, log)


def test_the_log_is_read_with_patience(hat_plan, log):
    assert log.notes == ()
    named = [(e.at_s, hat_plan.sections[e.section].own if e.section >= 0 else "", hat_plan.sections[e.section].rows[e.row].label if e.row >= 0 else "") for e in log.entries]
    assert named == [
        (0, "Crown", ""), (40, "Crown", "Rnd 2"), (90, "Crown", "Rnd 3"), (170.5, "Crown", "Rnd 4"), (185, "Crown", "Rnd 6"), (190, "Crown", "Rnd 9"),
        (210, "Crown", "Next rnd"), (260, "Crown", ""), (280, "Body", ""), (420, "Band", ""), (470, "Band", "Rnd 4"), (500, "", ""),
    ]
    assert hat_plan.shots[log.entries[3].shot - 1].kind == "count"


def test_the_log_of_the_page_beside_the_camera(hat_plan):
    text = "".join(f"{i}:00.5 shot {i + 1} {s.label}\n" for i, s in enumerate(hat_plan.shots))
    found = read_log(text + "99:00 # shot 3 a word went wrong\n", hat_plan)
    assert found.exact
    assert found.notes == ()
    assert [e.shot for e in found.entries] == [s.number for s in hat_plan.shots]


@pytest.mark.parametrize(("text", "said"), [
    ("0:00 Crown\n0:30 Rnd 77\n", "line 2 of the log: nothing in the plan is called 'Rnd 77'"),
    ("0:00 Crown\nRnd 2\n", "line 2 of the log has no time in front"),
    ("0:00 Crown\n1:00 Body\n0:30 Rnd 2\n", "line 3 of the log is earlier"),
    ("0:00 Crown\n9:00 Band\n", "line 2 of the log: '9:00 Band' is after the end of the video"),
    ("0:00 Crown\n0:10 Crown\n", "the same shot again"),
])
def test_what_is_odd_in_a_log_is_told_with_its_line(hat_plan, text, said):
    assert any(said in n for n in read_log(text, hat_plan, 300.0).notes)


def test_shots_follow_one_another_and_end_with_the_film(hat_plan, film):
    for a, b in itertools.pairwise(film.shots):
        assert a.start_s < a.end_s <= b.start_s + 0.002
    assert film.shots[-1].end_s <= film.length_s + 0.001
    assert film.rows[0, 2] == 90
    assert film.rows[0, 5] == 185
    assert timed(hat_plan, read_log("0:00 Crown\n", hat_plan), 60.0).length_s == 60


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("text", [LOG, "0:00 Crown\n0:03 Rnd 2\n0:05 Body\n0:20 Band\n", ""])
def test_captions_keep_to_their_limits(filmed, terms, text):
    made = plan(filmed("samphire-beanie", "child", terms=terms).facts)
    cues = captions(timed(made, read_log(text, made))).cues
    assert cues
    for c in cues:
        assert len(c.lines) <= LINES
        assert all(0 < len(x) <= LINE for x in c.lines)
        assert len("\n".join(c.lines)) / (c.end_s - c.start_s) <= PER_SECOND
        assert c.end_s - c.start_s >= SHORTEST_S
    assert all(a.end_s <= b.start_s for a, b in itertools.pairwise(cues))


def test_words_without_room_are_told_not_hurried(hat_plan):
    found = captions(timed(hat_plan, read_log("0:00 Crown\n0:01 Body\n0:02 Band\n", hat_plan), 30.0))
    assert found.notes
    assert "shorter than the words" in found.notes[0]


def test_all_words_are_in_the_captions_where_there_is_time(hat_plan):
    film = timed(hat_plan, read_log("", hat_plan))
    said = " ".join(c.text for c in captions(film).cues).split()
    assert said == " ".join(s.shot.say for s in film.shots).split()


def test_signs_of_the_formats_are_written_as_such():
    from loopwright.filming.captions import Cue

    cue = Cue(3661.5, 3663.25, ("a <b> & c --> d",))
    assert vtt([cue]).splitlines()[-2:] == ["01:01:01.500 --> 01:01:03.250", "a &lt;b&gt; &amp; c --&gt; d"]
    assert srt([cue]).splitlines()[1] == "01:01:01,500 --> 01:01:03,250"


@pytest.mark.parametrize("text", [LOG, "", "0:00 Crown\n0:04 Body\n0:08 Band\n", "0:12 Crown\n5:00 Body\n"])
def test_chapters_keep_to_the_convention(hat_plan, text):
    film = timed(hat_plan, read_log(text, hat_plan))
    found = chapters(hat_plan, film)
    starts = [c.start_s for c in found.chapters]
    assert starts[0] == 0
    assert all(b - a >= CHAPTER_S for a, b in itertools.pairwise([*starts, film.length_s]))
    assert all(len(c.title) <= LONGEST_TITLE for c in found.chapters)
    assert len(starts) >= FEWEST or found.notes


def test_chapters_are_called_as_the_sections_are(hat_plan, film):
    assert chapters(hat_plan, film).lines() == (("0:00", "Crown"), ("4:40", "Body"), ("7:00", "Band"))


def test_a_film_too_short_for_three_chapters_says_so(hat_plan):
    found = chapters(hat_plan, timed(hat_plan, read_log("0:00 Crown\n0:05 Body\n", hat_plan), 15.0))
    assert found.notes[0].startswith("only 1 chapters")


def test_rows_link_to_their_moment(hat, hat_plan, film):
    found = links(hat_plan, film, hat.facts.document, hat.measured.source)
    rows = {(r["section"], r["label"]): r for r in found["rows"]}
    assert rows["Crown", "Rnd 3"]["at_s"] == 90
    assert rows["Crown", "Rnd 7"]["at_s"] == rows["Crown", "Rnd 4"]["at_s"]  # one instruction, filmed once
    lines = hat.measured.source.text.splitlines()
    assert lines[rows["Crown", "Rnd 3"]["line"] - 1].startswith("Rnd 3:")


@pytest.mark.parametrize(("address", "at"), [
    ("https://films.example/hat.mp4", "https://films.example/hat.mp4#t=72"),
    ("https://films.example/watch?v=abc", "https://films.example/watch?v=abc&t=72"),
    ("https://films.example/watch?t=3&v=abc", "https://films.example/watch?v=abc&t=72"),
])
def test_addresses_open_at_the_second(address, at):
    assert at_moment(address, 72.9) == at


def test_cards_stand_without_a_gap_and_each_row_has_its_own(hat, hat_plan, film):
    of_shape = cards(hat.facts, hat_plan, shapes=("16x9",))
    shown = overlays(film, of_shape)
    assert shown[0].start_s == 0
    assert shown[-1].end_s == pytest.approx(film.length_s)
    assert all(a.end_s == b.start_s for a, b in itertools.pairwise(shown))
    at = {s.start_s: (s.card.section, s.card.row, s.card.kind) for s in shown if s.card is not None}
    assert at[90] == (0, 2, "row")
    assert at[185] == (0, 5, "row")


def test_a_row_whose_shots_are_very_short_still_has_its_card(hat, hat_plan):
    film = timed(hat_plan, read_log("0:00 Crown\n0:03 Rnd 2\n0:06 Rnd 3\n0:09 Body\n", hat_plan), 40.0)
    shown = overlays(film, cards(hat.facts, hat_plan, shapes=("16x9",)))
    assert any(s.card is not None and (s.card.section, s.card.row) == (0, 2) and s.end_s - s.start_s > 2 for s in shown)
