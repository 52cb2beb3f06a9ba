"""From what is said to the draft: single rows, further rows, when she stops, doubts, and talk in which there is no row."""

import random
from pathlib import Path

import pytest

from loopwright.listening import listen
from loopwright.workshop.listen import clock, listen_to

LESSONS = Path(__file__).parents[1] / "outside" / "lessons"
START = "We crochet today, so take your yarn and hook. Make a magic ring. Round one: six single crochet into the ring. Pull it closed. "
ROWS = "We crochet today, so take your yarn and hook. Chain twenty one. Row one: single crochet in the second chain from the hook and in each chain across. Turn. "


def made(text):
    return [(r["label"], r["counts"][0]) for r in listen_to(text).rows()]


@pytest.mark.parametrize(("said", "count"), [
    ("Round two: two single crochet in every stitch.", 12),
    ("Round two, increase in each stitch around, so that's twelve.", 12),
    ("Round two. One single, then an increase, all the way around. Nine stitches.", 9),
    ("Round two, it's just one in each stitch around.", 6),
    ("For round two decrease around, so three stitches.", 3),
])
def test_a_round(said, count):
    assert made(START + said) == [("Rnd 1", 6), ("Rnd 2", count)]


@pytest.mark.parametrize(("said", "rows"), [
    ("Row two: chain one, single crochet in each stitch across. Turn. And you do that for every row from here until you have six rows.", 6),
    ("Row two: chain one, single crochet in each stitch across. Turn. Do that two more times.", 4),
    ("Rows two to five: chain one, single crochet in each stitch across, turn.", 5),
    ("Rows two, three and four: chain one, single crochet in each stitch across, turn.", 4),
    ("Row two: chain one, single crochet in each stitch across. Turn. So let me show you that once more: chain one, single crochet across.", 2),
    ("Chain one, single crochet in each stitch across, and turn. Chain one, single crochet in each stitch again. Turn.", 3),
])
def test_further_rows(said, rows):
    assert made(ROWS + said) == [(f"Row {n + 1}", 20) for n in range(rows)]


def test_the_chain_that_counts_and_stitches_left():
    text = ROWS + "Row two: chain three, which counts as a double crochet, double crochet in the next nine stitches and leave the rest unworked. Turn."
    heard = listen_to(text)
    assert "Ch 3 (counts as dc)" in heard.draft.text
    assert heard.rows()[-1]["counts"] == [10]


def test_when_she_stops_becomes_a_fit_sentence():
    text = (
        "I get fourteen single crochets and ten rounds to ten centimetres. I'm making the two year old size. " + START
        + "Round two: two single crochet in every stitch. Round three: single crochet in each stitch around. "
        "And you keep going, every round from here is the same, until it measures eighteen centimetres."
    )
    heard = listen_to(text)
    assert "Sizes: 2 years" in heard.draft.text
    assert "rounds}: rnds until piece measures 18 cm" in heard.draft.text
    assert len(heard.rows()) == 18


def test_without_a_gauge_the_length_stays_and_is_a_doubt():
    heard = listen_to(ROWS + "Row two: chain one, single crochet across, turn. Repeat row two until it measures thirty centimetres.")
    assert "Rep Row 2 until piece measures 30 cm." in heard.draft.text
    assert any("how many rows" in d.assumed for d in heard.draft.doubts)


def test_a_count_that_does_not_come_out_is_a_doubt_and_is_found():
    heard = listen_to(START + "Round two: two single crochet in every stitch. You should have thirteen stitches.")
    assert any("she counts 13" in d.assumed for d in heard.draft.doubts)
    assert any(f.code == "W001" for f in heard.report.findings)


def test_uk_terms_stay_uk():
    text = "I use UK terms. Take your yarn and hook. Make a magic ring. Round one: six double crochet into the ring. Round two: two half trebles in each stitch."
    heard = listen_to(text)
    assert heard.draft.terms == "uk"
    assert [r["made"].get(kind) for r, kind in zip(heard.rows(), ("sc", "hdc"), strict=True)] == [[6], [12]]


@pytest.mark.parametrize(("text", "why"), [
    ("", "no words"),
    ("WEBVTT\n\n", "no words"),
    ("0:01 Add two cups of flour, chain the dog, turn the oven up, double the salt and repeat six times. Round two: knead it again.", "crochet"),
    ("0:01 Cast on eighty. Round one: knit two, purl two around. Round two: knit and purl again, until you have nine rounds.", "knitting"),
    ("0:01 Yarn and hook and stitch are lovely words, and I crochet every day of the week, but today we only chat about the weather.", "no row"),
    (("Hallo und willkommen, wir häkeln heute eine Mütze. Wir machen sechs feste Maschen in den Ring, und die zweite Runde wird verdoppelt, "
     "also zwölf Maschen, und jetzt die nächste Reihe, nicht vergessen, und die Masche, und die Runde, und eine Luftmasche und die Maschen."), "German"),
])
def test_no_row_is_made_up(text, why):
    heard = listen_to(text)
    assert heard.rows() == []
    assert heard.draft.text == ""
    assert why in (heard.draft.note or "")


def test_rows_follow_one_another_in_time():
    for captions in sorted(LESSONS.glob("*.vtt")):
        rows = listen_to(captions.read_text(encoding="utf-8")).rows()
        times = [r["at_s"] for r in rows]
        assert times == sorted(times)
        assert all(r["until_s"] >= r["at_s"] for r in rows)


def test_without_times_the_rows_have_none():
    rows = listen_to(START + "Round two: two single crochet in every stitch.").rows()
    assert [(r["at_s"], r["until_s"]) for r in rows] == [(None, None), (None, None)]


def test_the_clock():
    assert [clock(t) for t in (None, 0.0, 65.9, 3725.0)] == ["-", "0:00", "1:05", "1:02:05"]


@pytest.mark.parametrize("seed", range(40))
def test_anything_may_be_said(seed):
    chance = random.Random(seed)  # noqa: S311 -- no secret is made
    text = chance.choice(sorted(p for p in LESSONS.iterdir() if p.suffix != ".toml")).read_text(encoding="utf-8")
    for _ in range(30):
        at = chance.randrange(len(text))
        cut = chance.randrange(1, 60)
        piece = chance.choice(["", "no sorry ", "9999 ", "-->", "round 2000 ", "\n\n", "<c>", "[", "chain zero ", text[at : at + 40], "\u0000", "ſ²½"])
        text = text[:at] + piece + text[at + cut * chance.randrange(2) :]
    draft = listen(text[: chance.randrange(200, 6000)])
    assert all(t.at_s is None or t.at_s >= 0 for t in draft.rows)
    assert draft.text or draft.note


@pytest.mark.parametrize("text", [
    "round one " * 4000, "single crochet yarn hook stitch " * 4000, "chain two " * 5000 + "crochet hook yarn", "1 " * 9000 + "crochet yarn hook",
    "magic ring yarn hook crochet " * 2000, "0:00 " * 3000, "no sorry " * 5000, "<" * 100000, "[" * 50000, "row 1 to 2000 single crochet yarn hook in each stitch",
])
def test_monotony_ends(text):
    draft = listen(text)
    assert draft.text or draft.note
