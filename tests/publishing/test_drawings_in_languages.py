"""Drawings in every language: each phrase is there and filled, each thing of a row has words, and no English is left unmarked."""

from __future__ import annotations

import pickle
import re
import string
from typing import Any

import pytest

from loopwright.drawing.speech import Again, Each, Made, in_english
from loopwright.drawing.speech.english import frames
from loopwright.notation import read
from loopwright.publishing.document.speech import spoken
from loopwright.publishing.phrases import Phrases, languages
from loopwright.source import Source
from loopwright.wording.languages.numbers import decimal
from tests.publishing.made import published

LANGUAGES = sorted(set(languages()) - {"en"})
PATTERN = "Hat\nTerms: US\n\nCrown\nRnd 1: 6 sc in magic ring. (6 sc)\n"
FRAMES_OF_ONE = ("motifs-row-one", "unread-one")  # names of their own, not the singular of another
THINGS = (
    Made("stitch", 2, "dc", "in"), Each(Made("stitch", 1, "hdc", "in"), 5), Made("chain", 3), Made("skip", 2), Made("join"),
    Made("stitch", 8, "sc", "ring"), Each(Made("stitch", 3, "dc", "space"), 4), Made("stitch", 1, "dc", "row-end"),
    Made("stitch", 1, "sc2tog", "in", over=2), Made("stitch", 1, "fpdc", "around"), Made("stitch", 1, "sc", "back"),
    Made("stitch", 1, "sc", "in", of_chain=True, hook=2), Made("stitch", 1, "dc", "underside", of_chain=True), Made("stitch", 4, "dc"),
    Made("stitch", 1, "dc", "space", same=True), Made("stitch", 1, "dc", "between", over=2), Made("stitch", 1, "sc", "in", picot=True),
    Again((Each(Made("stitch", 1, "hdc", "in"), 2), Made("stitch", 2, "hdc", "in")), 8),
)


def slots(frame: str) -> dict[str, Any]:
    return {name: 3 if name == "n" else f"<{name}>" for _, name, _, _ in string.Formatter().parse(frame) if name}


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_phrase_of_drawings_is_there_and_filled(code):
    phrases = Phrases(code)
    keys = {k if k in FRAMES_OF_ONE else k.removesuffix("-one") for k in frames()}
    for key in sorted(keys):
        given = slots(frames()[key])
        assert phrases.has(f"drawn-{key}"), key
        said = phrases.say(f"drawn-{key}", **given, **({} if "n" in given else {"n": 3}))
        assert said.strip(), key
        assert "{" not in said, key
        for name in given:
            if name not in ("n", "many"):
                assert f"<{name}>" in said, (key, name)


@pytest.mark.parametrize("code", LANGUAGES)
def test_everything_in_a_row_has_words_with_its_numbers(code):
    speech = spoken(read(Source(PATTERN, "hat")), code)
    assert speech is not None
    english = in_english("us")
    for thing in THINGS:
        said = speech.worked([thing])
        assert "[en" not in said
        wanted = re.findall(r"\d+", english.worked([thing]))
        assert set(wanted) - {"1"} <= set(re.findall(r"\d+", said)), (thing, said)
    assert len({speech.worked([t]) for t in THINGS}) == len(THINGS)


@pytest.mark.parametrize("code", LANGUAGES)
def test_names_rows_and_counts_are_in_the_language(code):
    speech = spoken(read(Source(PATTERN, "hat")), code)
    assert speech is not None
    assert speech.row("Rnd 12").endswith(" 12")
    assert speech.row("Rnd 12") != "Rnd 12"
    assert speech.name("Sleeve (make 2)") not in ("", "Sleeve (make 2)")
    assert speech.measure("around") != "around"
    assert speech.decimal("10.5") == str(decimal(10.5, code))
    assert speech.named("hdc") != in_english("us").named("hdc")
    assert pickle.loads(pickle.dumps(speech)).row("Row 3") == speech.row("Row 3")  # noqa: S301 - our own: charts are drawn in another process too


def test_english_is_drawn_by_drawings_themselves():
    assert spoken(read(Source(PATTERN, "hat")), "en") is None


@pytest.mark.parametrize("code", LANGUAGES)
@pytest.mark.parametrize("design", ["avocet-bonnet", "reedbed-panel", "sea-lavender-blanket"])
def test_charts_and_schematics_speak_the_language_of_their_document(design, code):
    """No stitch of the English words is left in their descriptions, captions and signs."""
    told = []
    for part in published(design, language=code).parts:
        if part.key in ("charts", "schematic"):
            for figure in part.blocks:
                drawn = re.findall(r"<text[^>]*>([^<]*)</text>", figure.picture.data.decode())
                told += [figure.alt, figure.caption, figure.description, *drawn]
    assert told
    text = re.sub(r"\[en: [^]]*\]", "", "\n".join(told))
    assert re.findall(r"\b(?:in next|each of|sts|skip|seen from|right side|wrong side|Shown|worked|Outline|drawn|turn)\b", text) == []
