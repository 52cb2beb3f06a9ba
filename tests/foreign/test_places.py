"""Findings, quoted words, labels and mends of a pattern in another language stand in the writer's own text."""

import pytest

from loopwright.findings.fixes import apply
from loopwright.findings.registry import message
from loopwright.notation import read
from loopwright.source import Source
from loopwright.workshop.check import as_json, check_source
from loopwright.workshop.mend import mend_text

WRONG = {
    "de": ("Rd 1: 6 fM in einen Fadenring. (6)\nRd 2: 2 fM in jede M. (12)\nRd 3: *1 fM, schnurren, 2 fM in die nächste M; ab * wdh. (19 fM)\nRd 4-5: 1 fM in jede M. (18)", "19 fM", "schnurren"),
    "fr": ("Tour 1 : 6 ms dans un cercle magique. (6)\nTour 2 : 2 ms dans chaque m. (12)\nTour 3 : *1 ms, ronronner, 2 ms dans la m suivante ; répéter à partir de *. (19 ms)\nTour 4 et 5 : 1 ms dans chaque m. (18)", "19 ms", "ronronner"),
    "es": ("Vuelta 1: 6 pb en un anillo mágico. (6)\nVuelta 2: 2 pb en cada p. (12)\nVuelta 3: *1 pb, ronronear, 2 pb en el siguiente p; repetir desde *. (19 pb)\nVuelta 4-5: 1 pb en cada p. (18)", "19 pb", "ronronear"),
}


@pytest.mark.parametrize("language", WRONG)
def test_a_wrong_count_is_pointed_at(language):
    text, count, _ = WRONG[language]
    source = Source.of(text)
    found = [f for f in check_source(source).findings if f.code == "W001"]
    assert [source.cut(f.span) for f in found] == [count]
    assert source.position(found[0].span.start).line == 3
    assert "19" in message(found[0])
    assert "18" in message(found[0])


@pytest.mark.parametrize("language", WRONG)
def test_words_not_understood_are_the_writers(language):
    text, _, word = WRONG[language]
    source = Source.of(text)
    found = [f for f in check_source(source).findings if f.code == "N002"]
    assert [source.cut(f.span) for f in found] == [word]
    assert word in message(found[0])


@pytest.mark.parametrize("language", WRONG)
def test_a_mend_changes_the_writers_figures_alone(language):
    text = WRONG[language][0]
    found = [f for f in check_source(Source.of(text)).findings if f.fix]
    edits = [(e.span, e.text) for f in found for e in f.fix.edits]
    assert [(text[span.start : span.end], new) for span, new in edits] == [("19", "18")]


@pytest.mark.parametrize("language", WRONG)
def test_no_safe_mend_writes_english(language):
    text, _, _ = WRONG[language]
    source = Source.of(text)
    mended, done = mend_text(source)
    assert mended == apply(text, [f for f in check_source(source).findings if f.fix and f.fix.safe])[0]
    assert all(not any(c.isalpha() for c in e.text) for f in check_source(source).findings if f.fix for e in f.fix.edits)
    assert len(done) == 0 or mended != text


@pytest.mark.parametrize(
    ("language", "labels"),
    [("de", ["Rd 1", "Rd 2", "Rd 3", "Rd 4", "Rd 5"]), ("fr", ["Tour 1", "Tour 2", "Tour 3", "Tour 4", "Tour 5"]), ("es", ["Vuelta 1", "Vuelta 2", "Vuelta 3"])],
)
def test_labels_are_the_writers(language, labels):
    source = Source.of(WRONG[language][0])
    rows = as_json(source, check_source(source))["rows"]
    assert [r["label"] for r in rows][: len(labels)] == labels
    assert [r["line"] for r in rows] == [1, 2, 3, 4, 4]


@pytest.mark.parametrize("language", WRONG)
def test_the_language_is_told_and_noted(language):
    source = Source.of(WRONG[language][0])
    entry = as_json(source, check_source(source))
    assert entry["language"] == language
    assert any("read as" in a["message"] and a["line"] == 1 for a in entry["assumptions"])
    said = as_json(source, check_source(source, language))
    assert not any("read as" in a["message"] for a in said["assumptions"])


@pytest.mark.parametrize(("name", "code"), [("Sprache: Deutsch", "de"), ("Langue : français", "fr"), ("Idioma: español", "es"), ("Language: German", "de")])
def test_the_heading_says_the_language(name, code):
    document = read(Source.of(f"Sandläufer\n{name}\n\n1 : 6\n"))
    assert document.language == code
    assert not any("read as" in m for _, m in document.assumptions)


def test_a_line_broken_for_its_length_is_one_row():
    text = "Rd 1: 6 fM in einen Fadenring. (6)\nRd 2: 2 fM in jede M. (12)\nRd 3: 1 fM in die nächste M, 2 fM in die nächste M, 1 fM in die nächste M,\n    2 fM in die nächste M, fauchen, 1 fM in jede M. (15)\nRd 4: 1 fM in jede M. (14)\n"
    source = Source.of(text)
    entry = as_json(source, check_source(source))
    assert [(r["line"], r["counts"]) for r in entry["rows"]] == [(1, [6]), (2, [12]), (3, [14]), (5, [14])]
    assert [(f["line"], f["column"]) for f in entry["findings"] if f["code"] == "N002"] == [(4, 28)]


def test_english_said_is_english():
    assert read(Source.of("Language: English\nRnd 1: 6 sc in magic ring.\nRd 2: 6 fM, 2 Lm, Stb, wdh, jede M\n")).language == "en"
    assert read(Source.of("Rd 1: 6 fM in einen Fadenring, jede Masche\n"), "us").language == "en"


def test_spans_of_every_row_cover_the_line():
    text = WRONG["de"][0]
    report = check_source(Source.of(text))
    lines = text.split("\n")
    assert [text[r.span.start : r.span.end] for r in report.rows[:3]] == lines[:3]
