"""Texts for the shop and the film: only what was counted, measured, or said by the designer."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from loopwright.publishing.listing import MEDIUM, SHORT, ListingFacts, bounded, listing
from loopwright.source import Source
from loopwright.workshop.listing import facts_of, listing_of
from loopwright.workshop.measure import Measured, measure_source

FOLDER = Path(__file__).parents[2] / "designs"
DESIGNS = sorted(p.stem for p in FOLDER.glob("*.txt"))
PLAIN = "Thrift Disc\nGauge: 20 sc and 22 rnds = 10 cm\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *Sc in next st, sc2tog; rep from * around. (8)\n"


@cache
def measured(name: str) -> Measured:
    return measure_source(Source.of((FOLDER / f"{name}.txt").read_text(encoding="utf-8")))


def of(text: str) -> Measured:
    return measure_source(Source.of(text))


@pytest.mark.parametrize("name", DESIGNS)
def test_lengths_hold_and_nothing_is_left_unfilled(name):
    found = listing_of(measured(name))
    assert 20 < len(found.short) <= SHORT
    assert len(found.short) <= len(found.medium) <= MEDIUM
    for text in (found.short, found.medium, found.full, found.film):
        assert not re.search(r"[{}]|None|nan|inf\b", text), text


def test_her_own_description_comes_first_then_her_introduction_then_the_facts():
    hat = (FOLDER / "samphire-beanie.txt").read_text(encoding="utf-8")
    assert listing_of(of(hat)).short.startswith("A close hat from Saltmarsh Studio")
    assert listing_of(of(hat.replace("Terms: US", "Terms: US\nDescription: Warm, plain and quick."))).short == "Warm, plain and quick."
    bare = hat.replace("A close hat from Saltmarsh Studio, worked from the crown down in joined rounds, with a band of raised ribbing.\n", "")
    assert listing_of(of(bare)).short == "Samphire Beanie, a crochet pattern in 10 sizes, preemie to adult large, worked in joined rounds."
    assert listing_of(of(PLAIN)).short == "Thrift Disc, a crochet pattern in one size, worked in a spiral."


def test_sizes_are_those_measured():
    found = listing_of(measured("samphire-beanie"))
    around = [next(d.value_mm for d in m.dimensions if d.section is None and d.name == "around" and not d.worn) for m in measured("samphire-beanie").sizes]
    lines = found.part("sizes").split("\n")
    for name, value, line in zip(measured("samphire-beanie").document.sizes, around, lines, strict=False):
        assert line.startswith(f"{name}: ")
        assert f"around {value / 10:.1f}".removesuffix(".0") in line
        inches = re.search(r"around [\d.]+ cm \((\d+)(?: (\d)/(\d))? in\)", line)
        assert inches is not None
        said = int(inches[1]) + (int(inches[2]) / int(inches[3]) if inches[2] else 0)
        assert abs(said - value / 25.4) <= 0.125 + 1e-9


def test_yarn_is_the_range_that_was_reckoned_in_metres_and_yards():
    need = measured("samphire-beanie").sizes[6].yarn[0]
    line = listing_of(measured("samphire-beanie")).part("yarn").split("\n")[6]
    assert line == f"child: {need.low_m:.0f} to {need.high_m:.0f} m ({need.low_m / 0.9144:.0f} to {need.high_m / 0.9144:.0f} yd), {need.balls} ball"


@pytest.mark.parametrize(("terms", "said", "not_said"), [("us", "half double crochet (hdc)", "half treble"), ("uk", "half treble (htr)", "half double")])
def test_skills_in_the_terms_asked_for(terms, said, not_said):
    found = listing_of(measured("samphire-beanie"), terms)
    skills = found.part("skills").split("\n")
    assert said in skills
    assert not_said not in found.part("skills")
    assert {"joining rounds", "increasing", "working around posts"} <= set(skills)
    assert not {"decreasing", "changing colours", "working in a spiral"} & set(skills)
    assert found.part("terms") == f"The pattern is written in {terms.upper()} terms."
    assert ("htr" in found.part("gauge")) is (terms == "uk")


def test_skills_come_from_what_was_made():
    disc = listing_of(of(PLAIN)).part("skills").split("\n")
    assert disc == ["single crochet (sc)", "single crochet 2 together (sc2tog)", "starting in a magic ring", "working in a spiral", "increasing", "decreasing"]
    assert "changing colours" in listing_of(measured("sea-lavender-blanket")).part("skills")
    assert "working along the ends of rows" in listing_of(measured("plover-cardigan")).part("skills")


def test_a_babys_item_says_its_cautions_and_where_rules_are_to_be_asked():
    bonnet = listing_of(measured("avocet-bonnet")).part("cautions")
    assert "Ties near a baby's neck can strangle" in bonnet
    assert "go by those of the place" in bonnet
    assert listing_of(of(PLAIN)).part("cautions") == ""
    quiet = listing(ListingFacts(of(PLAIN).document, of(PLAIN).sizes, of(PLAIN).fabrics))
    assert "Please note" not in quiet.full


def test_what_is_included_and_the_version_are_listed():
    hat = (FOLDER / "samphire-beanie.txt").read_text(encoding="utf-8").replace("Terms: US", "Terms: US\nVersion: 1.3 (2026-11-20)")
    found = listing_of(of(hat), files=(("hat-a4.pdf", "all sizes, A4"), ("hat.epub", "")))
    assert found.part("included") == "hat-a4.pdf: all sizes, A4\nhat.epub"
    assert found.part("version") == "1.3 (2026-11-20)"


def test_the_film_has_its_block_and_room_for_chapters():
    film = listing_of(measured("samphire-beanie"), filmed="child").film
    assert "Size filmed: child\n" in film
    assert "Terms: US\n" in film
    assert film.endswith("Chapters\n0:00 Beginning\n--:-- Crown\n--:-- Body\n--:-- Band\n")
    given = listing_of(measured("samphire-beanie"), chapters=(("0:00", "Start"), ("2:10", "Crown"))).film
    assert given.endswith("Chapters\n0:00 Start\n2:10 Crown\n")


def test_a_pattern_that_tells_nothing_says_nothing_wrong():
    found = listing_of(of("Rnd 1: 6 sc in magic ring. (6)\n"))
    assert found.short == "A crochet pattern in one size, worked in a spiral."
    assert found.part("yarn") == found.part("gauge") == found.part("materials") == ""
    empty = listing_of(of(""))
    assert empty.film
    assert empty.part("skills") == ""
    with pytest.raises(ValueError, match="no terms"):
        listing_of(of(PLAIN), "martian")


@pytest.mark.parametrize(
    ("text", "most", "kept"),
    [
        ("One. Two. Three.", 9, "One. Two."), ("One. Two.", 100, "One. Two."), ("A very long sentence indeed", 12, "A very…"),
        ("Supercalifragilistic", 6, "Super…"), ("", 5, ""), ("Costs 1.50 in all. More.", 20, "Costs 1.50 in all."),
    ],
)
def test_texts_are_cut_at_sentences_else_at_words(text, most, kept):
    assert bounded(text, most) == kept
    assert len(bounded(text, most)) <= most


def test_facts_are_those_of_what_was_measured():
    facts = facts_of(measured("glasswort-bag"))
    assert facts.measures is measured("glasswort-bag").sizes
    assert facts.version == ""
